package org.seacairn.layer;

import java.io.Closeable;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan;

/**
 * A grid of depths or elevations in a file, read by windows. Row 0 is the northernmost row, column 0
 * the westernmost column; cells are areas and the origin is the outer corner of cell (0, 0).
 * Safe for use by several threads at once.
 */
public interface Bathymetry extends Closeable {
    Path file();

    String format();

    Crs crs();

    int cols();

    int rows();

    /** Western edge of column 0, in CRS units. */
    double west();

    /** Northern edge of row 0, in CRS units. */
    double north();

    /** Width of a cell in CRS units, positive. */
    double cellWidth();

    /** Height of a cell in CRS units, positive. */
    double cellHeight();

    /** Columns of the blocks in which the file is decoded; 0 where any window costs only its own cells. */
    int blockCols();

    /** Rows of the blocks in which the file is decoded; 0 where any window costs only its own cells. */
    int blockRows();

    /** Unit that the file itself states for its values, or empty text. */
    String statedUnit();

    /**
     * Reads a window that lies wholly on the grid.
     *
     * @param into receives {@code cols * rows} values row by row as they stand in the file (scale and
     *     offset applied), NaN for no-data
     */
    void read(int col, int row, int cols, int rows, float[] into);

    /** Vertical datum that the file itself names, or empty text. */
    default String statedDatum() {
        return "";
    }

    /** The vertical uncertainty that the file holds for each cell, or empty. */
    default Optional<CellUncertainty> uncertainty() {
        return Optional.empty();
    }

    /** What was done with the file that its reader should know, one line each. */
    default List<String> notes() {
        return List.of();
    }

    /**
     * Refuses a file that says in so many words that its values count otherwise than the plan has it.
     *
     * @throws org.seacairn.InputException if sign or unit differ
     */
    default void requireAgreement(SitingPlan.Bathymetry plan) {
        // A format that states neither cannot contradict.
    }

    @Override
    void close();
}
