package org.seacairn.place;

import java.util.Arrays;

/**
 * The cells of a convex figure about a cell, as one span of columns for each row. Offsets count from
 * the figure's own cell: rows southward, columns eastward.
 */
final class Spans {
    /** In cells: a centre this little outside an edge counts as on it, whichever way the rounding fell. */
    static final double ON_EDGE = 1e-9;

    private final int reach;
    private final int[] from;
    private final int[] to;
    private final int cells;
    private final int widest;

    /** @param from first column of the rows -reach..reach; @param to last column, one less than from: none */
    Spans(int[] from, int[] to) {
        this.reach = from.length / 2;
        this.from = from;
        this.to = to;
        long sum = 0;
        int most = 0;
        for (int i = 0; i < from.length; i++) {
            sum += to[i] - from[i] + 1;
            most = Math.max(most, Math.max(to[i], -from[i]));
        }
        this.cells = Math.toIntExact(sum);
        this.widest = most;
    }

    static Spans disc(double radiusCells) {
        int reach = (int) Math.floor(radiusCells + ON_EDGE);
        int[] to = new int[2 * reach + 1];
        for (int dr = -reach; dr <= reach; dr++) {
            to[dr + reach] = (int) Math.floor(Math.sqrt(Math.max(0, radiusCells * radiusCells - (double) dr * dr)) + ON_EDGE);
        }
        return new Spans(Arrays.stream(to).map(c -> -c).toArray(), to);
    }

    /** Rows to the north and to the south. */
    int reach() {
        return reach;
    }

    /** Columns to the west and to the east, at most. */
    int widest() {
        return widest;
    }

    /** Number of cells. */
    int cells() {
        return cells;
    }

    int from(int rowOffset) {
        return from[rowOffset + reach];
    }

    int to(int rowOffset) {
        return to[rowOffset + reach];
    }

    boolean sameCells(Spans other) {
        return Arrays.equals(from, other.from) && Arrays.equals(to, other.to);
    }
}
