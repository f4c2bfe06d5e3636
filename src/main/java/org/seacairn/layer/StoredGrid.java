package org.seacairn.layer;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Values;

/**
 * Bathymetry from an array of numbers in a file that knows its place on the ground: what BAG and NetCDF
 * have in common.
 *
 * @param southUp whether the array's first row is the southernmost
 * @param statedSense what the format or the file says of the sign of its values, or empty
 * @param uncertainty vertical uncertainty of each cell, or empty
 * @param resources what has to be closed
 */
record StoredGrid(
        Path file, String format, Crs crs, double west, double north, double cellWidth, double cellHeight, boolean southUp,
        StoredArray array, Packing packing, String statedUnit, Optional<Values> statedSense, String statedDatum,
        Optional<CellUncertainty> uncertainty, List<String> notes, Closeable resources) implements Bathymetry {

    @Override
    public int cols() {
        return array.cols();
    }

    @Override
    public int rows() {
        return array.rows();
    }

    @Override
    public int blockCols() {
        return array.blockCols();
    }

    @Override
    public int blockRows() {
        return array.blockRows();
    }

    @Override
    public void read(int col, int row, int cols, int rows, float[] into) {
        read(file, array, packing, southUp, col, row, cols, rows, into);
    }

    /** Reads a window counted from the north-western corner. */
    static void read(Path file, StoredArray array, Packing packing, boolean southUp,
            int col, int row, int cols, int rows, float[] into) {
        int firstRow = southUp ? array.rows() - row - rows : row;
        int lastLine = rows - 1;
        try {
            array.read(col, firstRow, cols, rows,
                    (r, c, number) -> into[(southUp ? lastLine - r : r) * cols + c] = packing.value(number));
        } catch (IOException | RuntimeException e) {
            if (e instanceof InputException refused) {
                throw refused;
            }
            throw VectorReader.problem(file, "rows " + firstRow + " to " + (firstRow + rows - 1), "the values cannot be read ("
                    + e.getMessage() + "); the file is damaged or cut short, get it again", e);
        }
    }

    @Override
    public void requireAgreement(SitingPlan.Bathymetry plan) {
        if (statedSense.isPresent() && statedSense.get() != plan.values()) {
            throw VectorReader.problem(file, "values", (statedSense.get() == Values.DEPTH
                    ? "count positive down, and the plan says \"values: elevation\"; write \"values: depth\""
                    : "count positive up, and the plan says \"values: depth\"; write \"values: elevation\"") + " in the plan's bathymetry");
        }
        OptionalDouble metres = UnitName.metres(statedUnit);
        // The two feet differ by 2 in a million, which is no conflict.
        if (metres.isPresent() && Math.abs(metres.getAsDouble() / plan.metresPerUnit() - 1) > 1e-4) {
            throw VectorReader.problem(file, "values", "are in the unit \"" + statedUnit + "\", and the plan says \"unit: " + plan.unit()
                    + "\"; state the file's unit in the plan's bathymetry");
        }
    }

    @Override
    public void close() {
        try {
            resources.close();
        } catch (IOException e) {
            // Opened for reading only: nothing can be lost.
        }
    }
}
