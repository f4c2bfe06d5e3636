package org.seacairn.grid;

import org.seacairn.geodesy.CoordinateTransform;

/**
 * Bilinear resampling of a source grid onto a working grid in another CRS, cell size or alignment.
 *
 * <p>A cell whose centre lies outside the source's cell centres, or for which a source cell that
 * would carry weight is no-data, is no-data: no value is drawn from one side of a hole.
 *
 * <p>The way from working grid to source is computed exactly at the corners of patches of
 * {@value #PATCH} x {@value #PATCH} cells and linearly between them where the middles of the patch and
 * of its sides agree to {@value #TOLERANCE_CELLS} of a working cell, else exactly for each cell. Patches
 * are counted from the grid's origin, so a cell has the same value in whatever window it is asked for.
 */
public final class Resampler implements WindowSource {
    private static final int PATCH = 16;
    private static final double TOLERANCE_CELLS = 1e-3;
    /** A position this near to a source cell's centre is on it: transforms are no more exact than that. */
    private static final double ON_CENTRE_CELLS = 1e-6;

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
        for (int top = Math.floorDiv(row, PATCH) * PATCH; top < row + rows; top += PATCH) {
            for (int left = Math.floorDiv(col, PATCH) * PATCH; left < col + cols; left += PATCH) {
                int fromCol = Math.max(col, left);
                int fromRow = Math.max(row, top);
                Window cells = new Window(fromCol, fromRow, Math.min(col + cols, left + PATCH) - fromCol,
                        Math.min(row + rows, top + PATCH) - fromRow);
                fill(cells, sourcePositions(cells, left, top), into, (fromRow - row) * cols + fromCol - col, cols);
            }
        }
    }

    private void fill(Window cells, double[] at, float[] into, int offset, int stride) {
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
        for (int r = 0; r < cells.rows(); r++) {
            for (int c = 0; c < cells.cols(); c++) {
                int i = 2 * (r * cells.cols() + c);
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

    /**
     * Column and row in the source (0 at the centre of its first cell) of some cells of one patch.
     *
     * @param left the patch's first column
     * @param top the patch's first row
     */
    private double[] sourcePositions(Window cells, int left, int top) {
        double[] at = new double[2 * cells.cells()];
        // Nine points, row by row: corners, middles of the sides, middle.
        double half = (PATCH - 1) / 2.0;
        double[] key = new double[18];
        for (int i = 0; i < 9; i++) {
            key[2 * i] = grid.centreX(left) + i % 3 * half * grid.cellM();
            key[2 * i + 1] = grid.centreY(top) - i / 3 * half * grid.cellM();
        }
        toCells(key);
        boolean linear = isLinear(key);
        for (int r = 0; r < cells.rows(); r++) {
            double fy = (cells.row() + r - top) / (PATCH - 1.0);
            for (int c = 0; c < cells.cols(); c++) {
                int i = r * cells.cols() + c;
                if (linear) {
                    double fx = (cells.col() + c - left) / (PATCH - 1.0);
                    at[2 * i] = within(key, 0, fx, fy);
                    at[2 * i + 1] = within(key, 1, fx, fy);
                } else {
                    put(at, i, cells.col() + c, cells.row() + r);
                }
            }
        }
        if (!linear) {
            toCells(at);
        }
        settle(at);
        return at;
    }

    /** Bilinear between the corners of the nine points. */
    private static double within(double[] key, int ordinate, double fx, double fy) {
        return (1 - fy) * ((1 - fx) * key[ordinate] + fx * key[4 + ordinate])
                + fy * ((1 - fx) * key[12 + ordinate] + fx * key[16 + ordinate]);
    }

    private boolean isLinear(double[] key) {
        double toleranceX = TOLERANCE_CELLS * Math.min(1, Math.abs(key[4] - key[0]) / (PATCH - 1));
        double toleranceY = TOLERANCE_CELLS * Math.min(1, Math.abs(key[13] - key[1]) / (PATCH - 1));
        double tolerance = Math.max(toleranceX, toleranceY);
        for (int i = 1; i < 9; i += 2) {
            if (misses(key, i, tolerance)) {
                return false;
            }
        }
        return !misses(key, 4, tolerance);
    }

    private static boolean misses(double[] key, int point, double tolerance) {
        double fx = point % 3 / 2.0;
        double fy = point / 3 / 2.0;
        return Math.abs(within(key, 0, fx, fy) - key[2 * point]) > tolerance
                || Math.abs(within(key, 1, fx, fy) - key[2 * point + 1]) > tolerance;
    }

    /** Puts positions that are on a cell's centre but for rounding exactly there. */
    private static void settle(double[] at) {
        for (int i = 0; i < at.length; i++) {
            double whole = Math.rint(at[i]);
            if (Math.abs(at[i] - whole) <= ON_CENTRE_CELLS) {
                at[i] = whole;
            }
        }
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
