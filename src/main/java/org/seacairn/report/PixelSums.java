package org.seacairn.report;

import org.seacairn.grid.Window;

/** Sums over the cells of each pixel of a block. Belongs to one thread at a time. */
final class PixelSums {
    /** Depths and scores are summed in whole 2^-24 of a metre or of 1, so that no order of adding leaves a trace. */
    private static final double UNIT = 1 / 16_777_216.0;

    private final Window cells;
    private final int cellsPerPixel;
    private final int cols;
    private final int pixels;
    private long remaining;
    private long[] depthSum;
    private int[] depthCount;
    private long[] scoreSum;
    private int[] scoreCount;
    /** Cells with a reason, by bit, then by pixel; null until the bit is met. */
    private int[][] reasonCount;

    /** @param cells of the block, from a whole number of pixels */
    PixelSums(Window cells, int cellsPerPixel, boolean scored) {
        this.cells = cells;
        this.cellsPerPixel = cellsPerPixel;
        this.cols = ReducedRasters.pixels(cells.cols(), cellsPerPixel);
        this.pixels = cols * ReducedRasters.pixels(cells.rows(), cellsPerPixel);
        this.remaining = (long) cells.cols() * cells.rows();
        this.depthSum = new long[pixels];
        this.depthCount = new int[pixels];
        this.scoreSum = scored ? new long[pixels] : null;
        this.scoreCount = scored ? new int[pixels] : null;
        this.reasonCount = scored ? new int[Integer.SIZE][] : null;
    }

    boolean full() {
        return remaining == 0;
    }

    /** Adds the cells of a window that lie in this block. */
    void take(Window window, float[] depthM, float[] score, int[] reasons) {
        int fromCol = Math.max(window.col(), cells.col());
        int toCol = Math.min(window.endCol(), cells.endCol());
        int fromRow = Math.max(window.row(), cells.row());
        int toRow = Math.min(window.endRow(), cells.endRow());
        remaining -= (long) (toCol - fromCol) * (toRow - fromRow);
        if (remaining < 0) {
            throw new IllegalArgumentException(window + " overlaps one that was taken before");
        }
        for (int row = fromRow; row < toRow; row++) {
            int first = (row - cells.row()) / cellsPerPixel * cols;
            for (int col = fromCol; col < toCol; col++) {
                int pixel = first + (col - cells.col()) / cellsPerPixel;
                int i = window.index(col, row);
                add(depthM[i], depthSum, depthCount, pixel);
                if (scoreSum != null) {
                    add(score[i], scoreSum, scoreCount, pixel);
                    count(reasons[i], pixel);
                }
            }
        }
    }

    private static void add(float value, long[] sums, int[] counts, int pixel) {
        if (!Float.isNaN(value)) {
            sums[pixel] += Math.round(value / UNIT);
            counts[pixel]++;
        }
    }

    private void count(int mask, int pixel) {
        for (int rest = mask; rest != 0; rest &= rest - 1) {
            int bit = Integer.numberOfTrailingZeros(rest);
            if (reasonCount[bit] == null) {
                reasonCount[bit] = new int[pixels];
            }
            reasonCount[bit][pixel]++;
        }
    }

    /** Writes the pixels into pictures of so many columns and lets the sums go. */
    void means(float[] depthM, float[] score, int[] reasons, int pictureCols) {
        int left = cells.col() / cellsPerPixel;
        int top = cells.row() / cellsPerPixel;
        for (int pixel = 0; pixel < pixels; pixel++) {
            int at = (top + pixel / cols) * pictureCols + left + pixel % cols;
            depthM[at] = mean(depthSum[pixel], depthCount[pixel]);
            if (scoreSum != null) {
                score[at] = mean(scoreSum[pixel], scoreCount[pixel]);
                reasons[at] = mostly(pixel);
            }
        }
        depthSum = null;
        depthCount = null;
        scoreSum = null;
        scoreCount = null;
        reasonCount = null;
    }

    private static float mean(long sum, int count) {
        return count == 0 ? Float.NaN : (float) (sum * UNIT / count);
    }

    private int mostly(int pixel) {
        int width = Math.min(cellsPerPixel, cells.cols() - pixel % cols * cellsPerPixel);
        int height = Math.min(cellsPerPixel, cells.rows() - pixel / cols * cellsPerPixel);
        int mask = 0;
        for (int bit = 0; bit < Integer.SIZE; bit++) {
            if (reasonCount[bit] != null && 2L * reasonCount[bit][pixel] >= (long) width * height) {
                mask |= 1 << bit;
            }
        }
        return mask;
    }
}
