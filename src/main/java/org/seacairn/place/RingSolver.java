package org.seacairn.place;

import java.util.BitSet;
import java.util.Comparator;
import java.util.PriorityQueue;

/**
 * The best ring of a given evenness: branch and bound over {@link RingRelaxation}.
 *
 * <p>Where two cells of a relaxed ring that are no neighbours stand too near each other, there are two
 * sets of cells about them, each of whose cells is too near every cell of the other. No ring uses both
 * sets, so each branch does without one. Branches are taken best first; the first ring without such a
 * pair is the best there is. When the work runs out, what is left is searched deepest first for good rings,
 * and the best bound that was open stands as the upper bound.
 */
final class RingSolver {
    /** Of a node's work, the part spent on proof before the search turns to finding rings at all. */
    private static final double PROOF_SHARE = 0.7;
    /** So many bits may the excluded sets of all open branches hold. */
    private static final long MOST_BITS = 1L << 31;

    private static final Comparator<Node> BEST_FIRST = Comparator.comparing(Node::path);
    private static final Comparator<Node> DEEPEST_FIRST = Comparator.comparingInt(Node::depth).reversed().thenComparing(Node::path);

    /** A relaxed ring, the best of its first cell without the excluded ones (null: none are). */
    private record Node(RingPath path, BitSet excluded, int depth) {}

    /**
     * What was found.
     *
     * @param best null: none was found
     * @param bound no ring is worth more; -1: there is none
     */
    record Found(RingPath best, long bound) {
        /** Whether {@code best} is the best there is, or none is proved to exist. */
        boolean exact() {
            return best == null ? bound < 0 : best.worth() >= bound;
        }
    }

    private final RingCells cells;
    private final RingRelaxation relaxation;
    private final RingBiclique biclique;
    private final PriorityQueue<Node> bestFirst = new PriorityQueue<>(BEST_FIRST);
    private long openBits;

    RingSolver(RingCells cells, int modules, int evennessDeg) {
        this.cells = cells;
        this.relaxation = new RingRelaxation(cells, modules, evennessDeg);
        this.biclique = new RingBiclique(cells);
    }

    /** Cells looked at so far. */
    long work() {
        return relaxation.work() + biclique.work();
    }

    /** The best ring, as far as {@code mostWork} reaches. */
    Found best(long mostWork) {
        roots();
        while (!bestFirst.isEmpty() && work() < PROOF_SHARE * mostWork && openBits < MOST_BITS) {
            Node node = bestFirst.poll();
            int[] pair = biclique.nearestPair(node.path());
            if (pair == null) {
                return new Found(node.path(), node.path().worth());
            }
            branch(node, pair, bestFirst);
        }
        long bound = bestFirst.isEmpty() ? -1 : bestFirst.peek().path().worth();
        Dive dive = new Dive(false, mostWork);
        // A ring that nothing open can surpass, in worth or in order, is the best.
        return new Found(dive.best, dive.complete ? dive.best == null ? -1 : dive.best.worth() : bound);
    }

    /** Any ring, or the proof that there is none, as far as {@code mostWork} reaches. */
    Found any(long mostWork) {
        roots();
        long bound = bestFirst.isEmpty() ? -1 : bestFirst.peek().path().worth();
        Dive dive = new Dive(true, mostWork);
        return new Found(dive.best, dive.complete && dive.best == null ? -1 : bound);
    }

    private void roots() {
        for (int start = 0; start < cells.size(); start++) {
            RingPath path = relaxation.best(start, null);
            if (path != null) {
                bestFirst.add(new Node(path, null, 0));
            }
        }
    }

    private void branch(Node node, int[] pair, PriorityQueue<Node> open) {
        openBits -= node.excluded == null ? 0 : cells.size();
        for (BitSet without : biclique.about(pair[0], pair[1])) {
            if (node.excluded != null) {
                without.or(node.excluded);
            }
            RingPath path = relaxation.best(node.path.cells()[0], without);
            if (path != null) {
                openBits += cells.size();
                open.add(new Node(path, without, node.depth + 1));
            }
        }
    }

    /** The search for good rings among what is open. */
    private final class Dive {
        private RingPath best;
        private final boolean complete;

        Dive(boolean anyWillDo, long mostWork) {
            PriorityQueue<Node> open = new PriorityQueue<>(DEEPEST_FIRST);
            open.addAll(bestFirst);
            while (!open.isEmpty() && work() < mostWork && !(anyWillDo && best != null)) {
                Node node = open.poll();
                if (best != null && node.path.compareTo(best) >= 0) {
                    continue;
                }
                int[] pair = biclique.nearestPair(node.path);
                if (pair == null) {
                    best = node.path;
                } else {
                    branch(node, pair, open);
                }
            }
            complete = open.isEmpty();
        }
    }
}
