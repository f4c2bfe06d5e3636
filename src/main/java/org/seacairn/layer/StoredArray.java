package org.seacairn.layer;

import java.io.IOException;

/**
 * A two-dimensional array of numbers in a file, in the file's own order of rows; a list is an array of one
 * row. Safe for several threads at once.
 */
interface StoredArray {
    /** Takes the number of one cell of a window, counted from the window's first row and column. */
    @FunctionalInterface
    interface Sink {
        void put(int row, int col, double number);
    }

    int rows();

    int cols();

    /** Rows of the blocks in which the array is decoded; 0 where any window costs only its own cells. */
    int blockRows();

    /** Columns of the blocks in which the array is decoded; 0 where any window costs only its own cells. */
    int blockCols();

    /**
     * Reads a window that lies wholly in the array.
     *
     * @param into receives every number once; NaN for what was never written
     * @throws IOException if the bytes cannot be read or decoded
     */
    void read(int col, int row, int cols, int rows, Sink into) throws IOException;

    /** The numbers of the first row. */
    default double[] list() throws IOException {
        double[] numbers = new double[cols()];
        read(0, 0, numbers.length, 1, (row, col, number) -> numbers[col] = number);
        return numbers;
    }
}
