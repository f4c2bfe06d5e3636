package org.seacairn.report;

import java.util.concurrent.atomic.AtomicReferenceArray;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;

/**
 * Reduces rasters window by window. Windows may come in any order and from several threads; together they must
 * cover every cell of the grid once. Sums are kept as whole numbers, so the order leaves no trace.
 */
public final class ReducedRastersBuilder {
    /** Pixels on a side of a block: what is summed and locked together, and let go when it is full. */
    private static final int BLOCK = 64;

    private final GridGeometry grid;
    private final int cellsPerPixel;
    private final int cols;
    private final int rows;
    private final int blockCols;
    private final float[] depthM;
    private final float[] score;
    private final int[] reasons;
    private final AtomicReferenceArray<PixelSums> blocks;

    /** For depths alone. */
    public ReducedRastersBuilder(GridGeometry grid) {
        this(grid, false);
    }

    /** @param scored whether scores and reasons come with the depths */
    public ReducedRastersBuilder(GridGeometry grid, boolean scored) {
        this.grid = grid;
        this.cellsPerPixel = ReducedRasters.cellsPerPixel(grid);
        this.cols = ReducedRasters.pixels(grid.cols(), cellsPerPixel);
        this.rows = ReducedRasters.pixels(grid.rows(), cellsPerPixel);
        this.blockCols = ReducedRasters.pixels(cols, BLOCK);
        this.depthM = new float[cols * rows];
        this.score = scored ? new float[cols * rows] : null;
        this.reasons = scored ? new int[cols * rows] : null;
        this.blocks = new AtomicReferenceArray<>(blockCols * ReducedRasters.pixels(rows, BLOCK));
    }

    /** Takes depths in metres, NaN for none, row by row over a window of the grid; the array may be longer. */
    public void take(Window window, float[] depthM) {
        if (score != null) {
            throw new IllegalStateException("scores and reasons are missing");
        }
        takeAll(window, depthM, null, null);
    }

    /**
     * Takes a scored window of the grid, row by row.
     *
     * @param depthM metres, NaN for none
     * @param score 0..1, NaN for none
     * @param reasons masks, 0 where nothing rules the cell out
     */
    public void take(Window window, float[] depthM, float[] score, int[] reasons) {
        if (this.score == null) {
            throw new IllegalStateException("made for depths alone");
        }
        takeAll(window, depthM, score, reasons);
    }

    private void takeAll(Window window, float[] depthM, float[] score, int[] reasons) {
        if (window.col() < 0 || window.row() < 0 || window.endCol() > grid.cols() || window.endRow() > grid.rows()) {
            throw new IllegalArgumentException(window + " reaches over the grid");
        }
        int side = BLOCK * cellsPerPixel;
        for (int blockRow = window.row() / side; blockRow * side < window.endRow(); blockRow++) {
            for (int blockCol = window.col() / side; blockCol * side < window.endCol(); blockCol++) {
                takeBlock(blockCol, blockRow, window, depthM, score, reasons);
            }
        }
    }

    private void takeBlock(int blockCol, int blockRow, Window window, float[] depthM, float[] score, int[] reasons) {
        int at = blockRow * blockCols + blockCol;
        PixelSums sums = blocks.get(at);
        if (sums == null) {
            blocks.compareAndSet(at, null, new PixelSums(window(blockCol, blockRow), cellsPerPixel, this.score != null));
            sums = blocks.get(at);
        }
        synchronized (sums) {
            sums.take(window, depthM, score, reasons);
            if (sums.full()) {
                sums.means(this.depthM, this.score, this.reasons, cols);
            }
        }
    }

    /** The cells of a block. */
    private Window window(int blockCol, int blockRow) {
        int side = BLOCK * cellsPerPixel;
        int col = blockCol * side;
        int row = blockRow * side;
        return new Window(col, row, Math.min(side, grid.cols() - col), Math.min(side, grid.rows() - row));
    }

    /**
     * What came out; the builder is spent.
     *
     * @throws IllegalStateException if a cell was never taken
     */
    public ReducedRasters build() {
        for (int i = 0; i < blocks.length(); i++) {
            PixelSums sums = blocks.get(i);
            if (sums == null || !sums.full()) {
                throw new IllegalStateException("cells of the grid were never taken");
            }
        }
        return new ReducedRasters(grid, cellsPerPixel, depthM, score, reasons);
    }
}
