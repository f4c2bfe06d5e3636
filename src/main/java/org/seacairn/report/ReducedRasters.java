package org.seacairn.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.seacairn.Progress;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;
import org.seacairn.grid.WindowSource;
import org.seacairn.score.ScoreRun;

/**
 * The rasters of a page, reduced to at most {@value #MOST_PIXELS} pixels a side: a pixel is {@code k} x {@code k}
 * cells of the working grid, fewer at its east and south edge, and {@code k} is 1 where the grid fits. Arrays run
 * row by row from the north-west and must not be changed.
 */
public final class ReducedRasters {
    /** What a screen shows; more would only make the file larger. */
    public static final int MOST_PIXELS = 1000;

    private static final int ROWS_AT_ONCE = 512;
    private static final int COLS_AT_ONCE = 1024;

    private final GridGeometry grid;
    private final int cellsPerPixel;
    private final int cols;
    private final int rows;
    private final float[] depthM;
    private final float[] score;
    private final int[] reasons;

    ReducedRasters(GridGeometry grid, int cellsPerPixel, float[] depthM, float[] score, int[] reasons) {
        this.grid = grid;
        this.cellsPerPixel = cellsPerPixel;
        this.cols = pixels(grid.cols(), cellsPerPixel);
        this.rows = pixels(grid.rows(), cellsPerPixel);
        this.depthM = depthM;
        this.score = score;
        this.reasons = reasons;
    }

    /**
     * Of a grid that has depths only. All of them are read, since decoding is what takes the time and a block of the
     * file is decoded whole.
     *
     * @param threads at least 1; the result is the same for any number
     * @param progress counts cells
     */
    public static ReducedRasters ofDepth(GridGeometry grid, WindowSource depth, int threads, Progress progress) {
        ReducedRastersBuilder builder = new ReducedRastersBuilder(grid);
        int across = pixels(grid.cols(), COLS_AT_ONCE);
        int windows = Math.multiplyExact(across, pixels(grid.rows(), ROWS_AT_ONCE));
        progress.expect(grid.cells(), "cells");
        AtomicInteger next = new AtomicInteger();
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<?>> workers = new ArrayList<>();
            for (int i = 0; i < threads; i++) {
                workers.add(pool.submit(() -> {
                    float[] depthM = new float[ROWS_AT_ONCE * COLS_AT_ONCE];
                    for (int w = next.getAndIncrement(); w < windows; w = next.getAndIncrement()) {
                        int col = w % across * COLS_AT_ONCE;
                        int row = w / across * ROWS_AT_ONCE;
                        Window window = new Window(col, row, Math.min(COLS_AT_ONCE, grid.cols() - col), Math.min(ROWS_AT_ONCE, grid.rows() - row));
                        depth.read(col, row, window.cols(), window.rows(), depthM);
                        builder.take(window, depthM);
                        progress.done(window.cells());
                    }
                }));
            }
            workers.forEach(ScoreRun::result);
        } finally {
            pool.shutdownNow();
        }
        return builder.build();
    }

    /** The least number of cells a side of a pixel that keeps the picture small. */
    static int cellsPerPixel(GridGeometry grid) {
        return pixels(Math.max(grid.cols(), grid.rows()), MOST_PIXELS);
    }

    /** Pixels that a number of cells needs. */
    static int pixels(int cells, int cellsPerPixel) {
        return (cells + cellsPerPixel - 1) / cellsPerPixel;
    }

    public int cols() {
        return cols;
    }

    public int rows() {
        return rows;
    }

    /** Cells on a side of a pixel. */
    public int cellsPerPixel() {
        return cellsPerPixel;
    }

    /** Side of a whole pixel in metres of the projection. */
    public double pixelM() {
        return cellsPerPixel * grid.cellM();
    }

    /** The working grid that was reduced. */
    public GridGeometry grid() {
        return grid;
    }

    /** Metres, positive down: the mean of the pixel's cells that have one; NaN where none has. */
    public float[] depthM() {
        return depthM;
    }

    /** 0..1: the mean of the pixel's scored cells; NaN where nothing is scored. Empty where nothing was scored at all. */
    public Optional<float[]> score() {
        return Optional.ofNullable(score);
    }

    /** The reasons that stand on at least half of the pixel's cells, as bits; empty where nothing was scored. */
    public Optional<int[]> reasons() {
        return Optional.ofNullable(reasons);
    }

    /** Columns of the working grid, counted in cells from its west edge, at the middle of a column of pixels. */
    double middleCol(int col) {
        return middle(col, grid.cols());
    }

    /** Rows of the working grid, counted in cells from its north edge, at the middle of a row of pixels. */
    double middleRow(int row) {
        return middle(row, grid.rows());
    }

    private double middle(int pixel, int cells) {
        return (pixel * (double) cellsPerPixel + Math.min(cells, (pixel + 1) * (double) cellsPerPixel)) / 2;
    }
}
