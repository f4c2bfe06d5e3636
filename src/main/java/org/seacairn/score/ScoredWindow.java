package org.seacairn.score;

import org.seacairn.grid.Window;

/**
 * Depths, scores and reasons of a window.
 *
 * @param depth metres, positive down; NaN for none
 * @param score 0..1, NaN where any reason stands
 * @param reasons masks, 0 where nothing rules the cell out
 */
public record ScoredWindow(Window window, float[] depth, float[] score, int[] reasons) {}
