package org.seacairn.grid;

import org.seacairn.geodesy.CoordinateTransform;

/**
 * Bilinear resampling of a source grid onto a working grid in another CRS, cell size or alignment.
 *
 * <p>A cell whose centre lies outside the source's cell centres, or for which a source cell that
 * would carry weight is no-data, is no-data: no value is drawn from one side of a hole.
 *
 * <p>The way from working grid to source is computed exactly at the corners of patches of
 * {@value #PATCH} cells and linearly between them where the patch's middle agrees to
 * {@value #TOLERANCE_CELLS} of a source cell, else exactly for each cell.
 */
public final class Resampler implements WindowSource {
    private static final int PATCH = 16;
    private static final double TOLERANCE_CELLS = 1e-3;

    private final WindowSource source;
    private final int sourceCols;
    private final int sourceRows;
    private final double west;
    private final double north;
    private final double cellWidth;
    private final double cellHeight;
    private final GridGeometry grid;
    private final CoordinateTransform toSource;
    /** 360 for a source in degrees, whose longitudes may run past 180; else 0. */
    private final double turn;

    /**
     * @param west western edge of the source's column 0, in its CRS
     * @param north northern edge of the source's row 0, in its CRS
     * @param toSource from the working CRS to the source's CRS
     * @param geographicSource whether the source counts in degrees
     */
    public Resampler(WindowSource source, int sourceCols, int sourceRows, double west, double north,
            double cellWidth, double cellHeight, GridGeometry grid, CoordinateTransform toSource,
            boolean geographicSource) {
        this.source = source;
        this.sourceCols = sourceCols;
        this.sourceRows = sourceRows;
        this.west = west;
        this.north = north;
        this.cellWidth = cellWidth;
        this.cellHeight = cellHeight;
        this.grid = grid;
        this.toSource = toSource;
        this.turn = geographicSource ? 360 : 0;
    }

    @Override
    public void read(int col, int row, int cols, int rows, float[] into) {
        for (int r = 0; r < rows; r += PATCH) {
            for (int c = 0; c < cols; c += PATCH) {
                patch(col + c, row + r, Math.min(PATCH, cols - c), Math.min(PATCH, rows - r), into, r * cols + c, cols);
            }
        }
    }

    private void patch(int col, int row, int cols, int rows, float[] into, int offset, int stride) {
        double[] at = sourcePositions(col, row, cols, rows);
        double lowX = Double.POSITIVE_INFINITY;
        double highX = Double.NEGATIVE_INFINITY;
        double lowY = Double.POSITIVE_INFINITY;
        double highY = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < at.length; i += 2) {
            lowX = Math.min(lowX, at[i]);
            highX = Math.max(highX, at[i]);
            lowY = Math.min(lowY, at[i + 1]);
            highY = Math.max(highY, at[i + 1]);
        }
        int left = (int) Math.floor(Math.max(0, lowX));
        int top = (int) Math.floor(Math.max(0, lowY));
        int right = (int) Math.min(sourceCols - 1, Math.floor(highX) + 1);
        int bottom = (int) Math.min(sourceRows - 1, Math.floor(highY) + 1);
        float[] values = null;
        int width = right - left + 1;
        if (right >= left && bottom >= top) {
            values = new float[Math.multiplyExact(width, bottom - top + 1)];
            source.read(left, top, width, bottom - top + 1, values);
        }
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < cols; c++) {
                int i = 2 * (r * cols + c);
                into[offset + r * stride + c] = values == null ? Float.NaN
                        : bilinear(values, width, left, top, at[i], at[i + 1]);
            }
        }
    }

    private float bilinear(float[] values, int width, int left, int top, double x, double y) {
        if (!(x >= 0 && y >= 0 && x <= sourceCols - 1 && y <= sourceRows - 1)) {
            return Float.NaN;
        }
        int c = (int) x;
        int r = (int) y;
        double fx = x - c;
        double fy = y - r;
        int i = (r - top) * width + c - left;
        double upper = between(values, i, fx);
        double value = fy == 0 ? upper : (1 - fy) * upper + fy * between(values, i + width, fx);
        return (float) value;
    }

    private static double between(float[] values, int i, double fraction) {
        return fraction == 0 ? values[i] : (1 - fraction) * values[i] + fraction * values[i + 1];
    }

    /** Column and row in the source (0 at the centre of its first cell) of each cell centre of a patch. */
    private double[] sourcePositions(int col, int row, int cols, int rows) {
        double[] at = new double[2 * cols * rows];
        double[] key = new double[10];
        put(key, 0, col, row);
        put(key, 1, col + cols - 1, row);
        put(key, 2, col, row + rows - 1);
        put(key, 3, col + cols - 1, row + rows - 1);
        key[8] = grid.centreX(col) + (cols - 1) / 2.0 * grid.cellM();
        key[9] = grid.centreY(row) - (rows - 1) / 2.0 * grid.cellM();
        toCells(key);
        double missX = (key[0] + key[2] + key[4] + key[6]) / 4 - key[8];
        double missY = (key[1] + key[3] + key[5] + key[7]) / 4 - key[9];
        if (Math.abs(missX) <= TOLERANCE_CELLS && Math.abs(missY) <= TOLERANCE_CELLS) {
            for (int r = 0; r < rows; r++) {
                double fy = rows == 1 ? 0 : (double) r / (rows - 1);
                for (int c = 0; c < cols; c++) {
                    double fx = cols == 1 ? 0 : (double) c / (cols - 1);
                    int i = 2 * (r * cols + c);
                    at[i] = (1 - fy) * ((1 - fx) * key[0] + fx * key[2]) + fy * ((1 - fx) * key[4] + fx * key[6]);
                    at[i + 1] = (1 - fy) * ((1 - fx) * key[1] + fx * key[3]) + fy * ((1 - fx) * key[5] + fx * key[7]);
                }
            }
        } else {
            for (int r = 0; r < rows; r++) {
                for (int c = 0; c < cols; c++) {
                    put(at, r * cols + c, col + c, row + r);
                }
            }
            toCells(at);
        }
        return at;
    }

    private void put(double[] xy, int point, int col, int row) {
        xy[2 * point] = grid.centreX(col);
        xy[2 * point + 1] = grid.centreY(row);
    }

    private void toCells(double[] xy) {
        toSource.apply(xy);
        double middle = west + sourceCols * cellWidth / 2;
        for (int i = 0; i < xy.length; i += 2) {
            double x = turn == 0 ? xy[i] : xy[i] + turn * Math.rint((middle - xy[i]) / turn);
            xy[i] = (x - west) / cellWidth - 0.5;
            xy[i + 1] = (north - xy[i + 1]) / cellHeight - 0.5;
        }
    }
}
