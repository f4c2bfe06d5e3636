package org.seacairn.grid;

/** Something that fills windows of a grid of floats. Must be safe for several threads at once. */
@FunctionalInterface
public interface WindowSource {
    /**
     * Fills a window that lies wholly on the source's grid.
     *
     * @param into receives {@code cols * rows} values row by row; NaN for no-data
     */
    void read(int col, int row, int cols, int rows, float[] into);
}
