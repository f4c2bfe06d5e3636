package org.seacairn.score;

import org.seacairn.grid.Window;

/**
 * Scores and reasons of a window.
 *
 * @param score 0..1, NaN where any reason stands
 * @param reasons masks, 0 where nothing rules the cell out
 */
public record ScoredWindow(Window window, float[] score, int[] reasons) {}
