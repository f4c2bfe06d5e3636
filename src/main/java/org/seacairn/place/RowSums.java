package org.seacairn.place;

import java.util.Arrays;
import java.util.function.IntToLongFunction;
import org.seacairn.grid.Window;

/**
 * Sums of whole numbers over figures anywhere in a window, from prefix sums along each row. Sums wrap
 * as longs do, so a figure's sum is right whenever it fits a long by itself.
 */
final class RowSums {
    private final Window window;
    private final long[][] prefix;

    /** @param value of a cell, by its index in the window */
    RowSums(Window window, IntToLongFunction value) {
        this.window = window;
        this.prefix = new long[window.rows()][window.cols() + 1];
        for (int r = 0; r < window.rows(); r++) {
            long[] row = prefix[r];
            long sum = 0;
            int start = r * window.cols();
            for (int c = 0; c < window.cols(); c++) {
                sum += value.applyAsLong(start + c);
                row[c + 1] = sum;
            }
        }
    }

    /**
     * Sums of one figure about neighbouring cells of a row; the figures must lie in the window.
     *
     * @param into receives the sums about (col, row), (col + 1, row), ... (col + n - 1, row)
     */
    void over(Spans figure, int row, int col, int n, long[] into) {
        Arrays.fill(into, 0, n, 0);
        int reach = figure.reach();
        int left = col - window.col();
        for (int dr = -reach; dr <= reach; dr++) {
            add(into, n, prefix[row + dr - window.row()], left + figure.to(dr) + 1, left + figure.from(dr));
        }
    }

    /**
     * Adds the prefix sums of a row: what {@code into[c + k] - into[c]} then holds is the sum of k cells of
     * every row added, from the window's column c on.
     *
     * @param sign 1, or -1 to take a row out again
     */
    void addRow(int row, int sign, long[] into) {
        long[] p = prefix[row - window.row()];
        for (int i = 0; i < p.length; i++) {
            into[i] += sign * p[i];
        }
    }

    Window window() {
        return window;
    }

    private static void add(long[] into, int n, long[] p, int end, int start) {
        for (int i = 0; i < n; i++) {
            into[i] += p[end + i] - p[start + i];
        }
    }
}
