package org.seacairn.place;

import java.util.Arrays;
import java.util.Optional;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;

/** A grid of cells held in arrays, row by row. */
record PlainCells(GridGeometry grid, float[] scores, float[] depths, Optional<String[]> classes) implements CellSource {

    @Override
    public float[] score(Window window) {
        return part(scores, window);
    }

    @Override
    public float[] depth(Window window) {
        return part(depths, window);
    }

    /** Depths taken as exact. */
    @Override
    public double[] sureDepth(Window window) {
        float[] part = part(depths, window);
        double[] sure = new double[part.length];
        for (int i = 0; i < sure.length; i++) {
            sure[i] = part[i];
        }
        return sure;
    }

    @Override
    public Optional<String[]> bottom(Window window) {
        return classes.map(all -> {
            String[] part = new String[window.cells()];
            for (int i = 0; i < part.length; i++) {
                part[i] = all[(window.row() + i / window.cols()) * grid.cols() + window.col() + i % window.cols()];
            }
            return part;
        });
    }

    private float[] part(float[] all, Window window) {
        float[] part = new float[window.cells()];
        Arrays.fill(part, Float.NaN);
        int col = Math.max(0, window.col());
        int cols = Math.min(grid.cols(), window.endCol()) - col;
        for (int row = Math.max(0, window.row()); row < Math.min(grid.rows(), window.endRow()) && cols > 0; row++) {
            System.arraycopy(all, row * grid.cols() + col, part, window.index(col, row), cols);
        }
        return part;
    }
}
