package org.seacairn.place;

import java.util.BitSet;
import java.util.Comparator;
import java.util.PriorityQueue;

/**
 * The best ring of a given evenness: branch and bound over {@link RingRelaxation}.
 *
 * <p>First cells are opened as their bounds come up. Where two cells of a relaxed ring that are no
 * neighbours stand too near each other, there are two sets of cells about them, each of whose cells is too near
 * every cell of the other: no ring uses both sets, so each branch does without one. Branches are taken best
 * first; the first ring without such a pair is the best there is. When the work runs out, what is left is searched
 * deepest first for good rings, and the best bound that was open stands as the upper bound.
 */
final class RingSolver {
    /** The part of the work spent best first; a search that is not through by then turns to finding good rings. */
    private static final double PROOF_SHARE = 0.7;
    /** So many bits may the excluded sets of all open branches hold. */
    private static final long MOST_BITS = 1L << 31;

    private static final Comparator<Node> BEST_FIRST = Comparator.comparing(Node::path);
    private static final Comparator<Node> DEEPEST_FIRST = Comparator.comparingInt(Node::depth).reversed().thenComparing(Node::path);

    /**
     * What is still open of the rings from one first cell.
     *
     * @param path at depth 0 the first cell alone and a bound; else the best relaxed ring
     * @param excluded cells that it does without, or null: none
     */
    private record Node(RingPath path, BitSet excluded, int depth) {}

    /**
     * What was found.
     *
     * @param best null: none was found
     * @param bound no ring is worth more; -1: there is none
     */
    record Found(RingPath best, long bound) {}

    private final RingCells cells;
    private final RingRelaxation relaxation;
    private final RingBiclique biclique;
    private final PriorityQueue<Node> bestFirst = new PriorityQueue<>(BEST_FIRST);
    private long openBits;

    RingSolver(RingCells cells, int modules, int evennessDeg) {
        this.cells = cells;
        this.relaxation = new RingRelaxation(cells, modules, evennessDeg);
        this.biclique = new RingBiclique(cells);
        long[] bounds = RingBearings.bounds(cells, modules, evennessDeg);
        for (int start = 0; start < bounds.length; start++) {
            if (bounds[start] >= 0) {
                bestFirst.add(new Node(new RingPath(bounds[start], new int[] {start}), null, 0));
            }
        }
    }

    /** Cells looked at so far. */
    long work() {
        return relaxation.work() + biclique.work();
    }

    /** The best ring, as far as {@code mostWork} reaches. */
    Found best(long mostWork) {
        while (!bestFirst.isEmpty()) {
            Node node = bestFirst.peek();
            if (node.depth > 0 && biclique.nearestPair(node.path) == null) {
                return new Found(node.path, node.path.worth());
            }
            if (work() > PROOF_SHARE * mostWork || openBits > MOST_BITS) {
                break;
            }
            branch(bestFirst.poll(), bestFirst);
        }
        return dive(false, mostWork);
    }

    /** Any ring, or the proof that there is none, as far as {@code mostWork} reaches. */
    Found any(long mostWork) {
        return dive(true, mostWork);
    }

    /** Searches what is open deepest first. */
    private Found dive(boolean anyWillDo, long mostWork) {
        long bound = bestFirst.isEmpty() ? -1 : bestFirst.peek().path.worth();
        PriorityQueue<Node> open = new PriorityQueue<>(DEEPEST_FIRST);
        open.addAll(bestFirst);
        RingPath best = null;
        while (!open.isEmpty() && work() <= mostWork && !(anyWillDo && best != null)) {
            Node node = open.poll();
            if (best != null && node.path.compareTo(best) >= 0) {
                continue;
            }
            if (node.depth > 0 && biclique.nearestPair(node.path) == null) {
                best = node.path;
            } else {
                branch(node, open);
            }
        }
        if (open.isEmpty()) {
            bound = best == null ? -1 : best.worth();
        }
        return new Found(best, bound);
    }

    private void branch(Node node, PriorityQueue<Node> open) {
        int start = node.path.cells()[0];
        if (node.depth == 0) {
            add(start, null, 1, open);
            return;
        }
        openBits -= node.excluded == null ? 0 : cells.size();
        int[] pair = biclique.nearestPair(node.path);
        for (BitSet without : biclique.about(pair[0], pair[1])) {
            if (node.excluded != null) {
                without.or(node.excluded);
            }
            add(start, without, node.depth + 1, open);
        }
    }

    private void add(int start, BitSet excluded, int depth, PriorityQueue<Node> open) {
        RingPath path = relaxation.best(start, excluded);
        if (path != null) {
            openBits += excluded == null ? 0 : cells.size();
            open.add(new Node(path, excluded, depth));
        }
    }
}
