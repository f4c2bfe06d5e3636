package org.seacairn.grid;

import org.seacairn.geodesy.Crs;

/**
 * The working grid: equal square cells in a metric projected CRS.
 *
 * @param west western edge of column 0, metres
 * @param north northern edge of row 0, metres
 * @param cellM side of a cell in metres of the projection
 */
public record GridGeometry(Crs crs, double west, double north, double cellM, int cols, int rows) {
    public GridGeometry {
        if (!(cellM > 0) || cols <= 0 || rows <= 0) {
            throw new IllegalArgumentException(cols + " x " + rows + " cells of " + cellM + " m");
        }
    }

    /** Easting of the centre of a column. */
    public double centreX(int col) {
        return west + (col + 0.5) * cellM;
    }

    /** Northing of the centre of a row. */
    public double centreY(int row) {
        return north - (row + 0.5) * cellM;
    }

    public double east() {
        return west + cols * cellM;
    }

    public double south() {
        return north - rows * cellM;
    }

    public long cells() {
        return (long) cols * rows;
    }

    public Window whole() {
        return new Window(0, 0, cols, rows);
    }

    /** The column in which an easting lies, counted on beyond the grid; its last edge belongs to its last column. */
    public int colAt(double x) {
        int col = (int) Math.floor((x - west) / cellM);
        return col == cols && x == east() ? cols - 1 : col;
    }

    /** The row in which a northing lies, counted on beyond the grid; its last edge belongs to its last row. */
    public int rowAt(double y) {
        int row = (int) Math.floor((north - y) / cellM);
        return row == rows && y == south() ? rows - 1 : row;
    }

    public boolean holds(int col, int row) {
        return col >= 0 && row >= 0 && col < cols && row < rows;
    }

    /** Number of a cell in row-major order; the smaller of two is the more northern, then the more western. */
    public long cellNumber(int col, int row) {
        return (long) row * cols + col;
    }
}
