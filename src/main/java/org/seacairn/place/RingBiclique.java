package org.seacairn.place;

import java.util.BitSet;

/** Two cells too near each other, grown to two sets that share no cell: every cell of the one is too near every cell of the other. */
final class RingBiclique {
    private final RingCells cells;
    private long work;

    RingBiclique(RingCells cells) {
        this.cells = cells;
    }

    /** Cells looked at so far. */
    long work() {
        return work;
    }

    /** The two cells of a path that stand nearest together where that is too near, the first of equals; null: none do. */
    int[] nearestPair(RingPath path) {
        int[] on = path.cells();
        int[] pair = null;
        double least = Double.POSITIVE_INFINITY;
        for (int a = 0; a < on.length; a++) {
            for (int b = a + 1; b < on.length; b++) {
                double square = cells.planeSquare(on[a], on[b]);
                if (square < least && cells.tooNear(on[a], on[b])) {
                    least = square;
                    pair = new int[] {on[a], on[b]};
                }
            }
        }
        work += (long) on.length * on.length;
        return pair;
    }

    /** The sets about two cells that are too near each other: {@code a} is in the first, {@code b} in the second. */
    BitSet[] about(int a, int b) {
        // A disc about b, as wide as one about a could be with every cell of both still too near.
        double radius = (cells.apartM() - Math.sqrt(cells.planeSquare(a, b))) / 2;
        BitSet disc = new BitSet(cells.size());
        for (int i = 0; i < cells.size(); i++) {
            disc.set(i, cells.planeSquare(i, b) < radius * radius && cells.tooNear(i, a));
        }
        disc.set(b);
        BitSet first = nearAll(disc);
        BitSet second = nearAll(first);
        // A cell in both would be a ring's one cell of either: it goes to the set whose first cell is nearer.
        BitSet both = (BitSet) first.clone();
        both.and(second);
        both.stream().forEach(i -> (cells.planeSquare(i, a) < cells.planeSquare(i, b) ? second : first).clear(i));
        return new BitSet[] {first, second};
    }

    /** The cells that are too near every cell of a set. */
    private BitSet nearAll(BitSet set) {
        int[] members = set.stream().toArray();
        BitSet near = new BitSet(cells.size());
        for (int i = 0; i < cells.size(); i++) {
            int k = 0;
            while (k < members.length && cells.tooNear(i, members[k])) {
                k++;
            }
            near.set(i, k == members.length);
            work += k + 1;
        }
        return near;
    }
}
