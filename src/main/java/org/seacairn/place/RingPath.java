package org.seacairn.place;

import java.util.Arrays;

/**
 * Cells in order of bearing from north and the sum of their worths. Ordered best first: the higher sum,
 * then the one whose first cell that differs comes first from north.
 */
record RingPath(long worth, int[] cells) implements Comparable<RingPath> {
    @Override
    public int compareTo(RingPath other) {
        int byWorth = Long.compare(other.worth, worth);
        return byWorth != 0 ? byWorth : Arrays.compare(cells, other.cells);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RingPath that && compareTo(that) == 0;
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(cells);
    }
}
