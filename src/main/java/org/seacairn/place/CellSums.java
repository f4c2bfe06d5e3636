package org.seacairn.place;

import org.seacairn.grid.Window;

/**
 * Score and ruled-out cells of rectangles in one sum: a cell adds its score in steps of 2^-20, or one
 * ruled-out cell above bit 42. Whole numbers, so that a rectangle's mean is the same however it is reached.
 */
final class CellSums {
    /** Cells of the largest rectangle: with a margin for its edge, neither half of a sum runs over. */
    static final int MOST_CELLS = 4_000_000;
    private static final int RULED_OUT_BIT = 42;
    private static final long SCORE_MASK = (1L << RULED_OUT_BIT) - 1;
    private static final double STEPS = 1 << 20;

    private CellSums() {}

    /** @param score 0..1, NaN where a reason stands */
    static RowSums of(Window window, float[] score) {
        return new RowSums(window, i -> value(score[i]));
    }

    static long value(float score) {
        return Float.isNaN(score) ? 1L << RULED_OUT_BIT : (long) (score * STEPS + 0.5);
    }

    static int ruledOut(long sum) {
        return (int) (sum >>> RULED_OUT_BIT);
    }

    /** The mean score over the scored cells of a rectangle of so many cells. */
    static double mean(long sum, int cells) {
        return (sum & SCORE_MASK) / (STEPS * (cells - ruledOut(sum)));
    }

    /** How many cells of a rectangle may be ruled out. One must be left to score. */
    static int mostRuledOut(double blemish, int cells) {
        return Math.min(cells - 1, (int) Math.floor(blemish * cells + 1e-9));
    }
}
