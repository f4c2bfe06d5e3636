package org.seacairn.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * Contour lines of a lattice of values by marching squares. A crossing lies on the edge between two neighbouring values by
 * linear interpolation; a square with four crossings is cut as its mean says. A square with a missing value has
 * no line, so lines end at the rim of holes.
 */
final class Contours {
    private static final int NONE = -1;

    private final float[] values;
    private final double[] x;
    private final double[] y;
    private final int cols;
    private final int rows;
    /** By edge, the edge that the line goes on to. An edge is twice its first corner, and 1 more if it runs down. */
    private final int[] next;

    private final BitSet begins = new BitSet();
    private final BitSet isReached = new BitSet();
    private float level;

    /**
     * @param values row by row; NaN for a missing one
     * @param x of each column
     * @param y of each row
     */
    Contours(float[] values, double[] x, double[] y) {
        this.values = values;
        this.x = x;
        this.y = y;
        this.cols = x.length;
        this.rows = y.length;
        this.next = new int[2 * values.length];
        Arrays.fill(next, NONE);
    }

    /** All lines of one level: first those with ends, then the rings, each kind from the first row on. */
    List<Contour> at(double level) {
        // As the values are: a value that equals the level must not seem to differ from it.
        this.level = (float) level;
        for (int row = 0; row + 1 < rows; row++) {
            for (int col = 0; col + 1 < cols; col++) {
                square(col, row);
            }
        }
        List<Contour> lines = new ArrayList<>();
        BitSet ends = (BitSet) begins.clone();
        ends.andNot(isReached);
        for (int edge = ends.nextSetBit(0); edge >= 0; edge = ends.nextSetBit(edge + 1)) {
            lines.add(follow(edge));
        }
        for (int edge = begins.nextSetBit(0); edge >= 0; edge = begins.nextSetBit(edge)) {
            lines.add(follow(edge));
        }
        isReached.clear();
        return lines;
    }

    private void square(int col, int row) {
        int a = row * cols + col;
        float nw = values[a];
        float ne = values[a + 1];
        float sw = values[a + cols];
        float se = values[a + cols + 1];
        if (Float.isNaN(nw + ne + sw + se)) {
            return;
        }
        int north = 2 * a;
        int west = 2 * a + 1;
        int east = 2 * (a + 1) + 1;
        int south = 2 * (a + cols);
        int kind = (above(nw) ? 8 : 0) + (above(ne) ? 4 : 0) + (above(se) ? 2 : 0) + (above(sw) ? 1 : 0);
        switch (kind) {
            // The larger corners stay on the left of the way, seen with rows downwards.
            case 1 -> join(south, west);
            case 2 -> join(east, south);
            case 3 -> join(east, west);
            case 4 -> join(north, east);
            case 6 -> join(north, south);
            case 7 -> join(north, west);
            case 8 -> join(west, north);
            case 9 -> join(south, north);
            case 11 -> join(east, north);
            case 12 -> join(west, east);
            case 13 -> join(south, east);
            case 14 -> join(west, south);
            case 5, 10 -> saddle(kind == 5, above((nw + ne + sw + se) / 4), north, west, east, south);
            default -> { }
        }
    }

    private void saddle(boolean highNorthEast, boolean highMiddle, int north, int west, int east, int south) {
        if (highNorthEast) {
            join(north, highMiddle ? west : east);
            join(south, highMiddle ? east : west);
        } else {
            join(west, highMiddle ? south : north);
            join(east, highMiddle ? north : south);
        }
    }

    private boolean above(float value) {
        return value >= level;
    }

    private void join(int from, int to) {
        next[from] = to;
        begins.set(from);
        isReached.set(to);
    }

    private Contour follow(int first) {
        double[] xy = new double[32];
        int n = 0;
        int edge = first;
        boolean closed = false;
        while (edge != NONE) {
            if (n + 2 > xy.length) {
                xy = Arrays.copyOf(xy, 2 * xy.length);
            }
            place(edge, xy, n);
            n += 2;
            if (closed) {
                break;
            }
            int following = next[edge];
            next[edge] = NONE;
            begins.clear(edge);
            closed = following == first;
            edge = following;
        }
        return new Contour(level, Arrays.copyOf(xy, n), closed);
    }

    private void place(int edge, double[] xy, int at) {
        int a = edge / 2;
        int b = (edge & 1) == 0 ? a + 1 : a + cols;
        double share = ((double) level - values[a]) / ((double) values[b] - values[a]);
        double x0 = x[a % cols];
        double y0 = y[a / cols];
        xy[at] = x0 + share * (x[b % cols] - x0);
        xy[at + 1] = y0 + share * (y[b / cols] - y0);
    }
}
