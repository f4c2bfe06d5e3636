package org.seacairn.grid;

/**
 * A rectangle of cells of a grid; it may reach over the grid's edge.
 *
 * @param col first column
 * @param row first row (northernmost)
 * @param cols number of columns, above 0
 * @param rows number of rows, above 0
 */
public record Window(int col, int row, int cols, int rows) {
    public Window {
        if (cols <= 0 || rows <= 0) {
            throw new IllegalArgumentException("a window needs cells: " + cols + " x " + rows);
        }
    }

    /** Number of cells. */
    public int cells() {
        return Math.multiplyExact(cols, rows);
    }

    /** One past the last column. */
    public int endCol() {
        return col + cols;
    }

    /** One past the last row. */
    public int endRow() {
        return row + rows;
    }

    /** This window with a border of {@code halo} cells on every side. */
    public Window grown(int halo) {
        return new Window(col - halo, row - halo, cols + 2 * halo, rows + 2 * halo);
    }

    /** Index of a cell of the grid in an array over this window. */
    public int index(int gridCol, int gridRow) {
        return (gridRow - row) * cols + gridCol - col;
    }
}
