package org.seacairn.layer;

import java.util.Locale;

/** Vertical uncertainty of each cell of a bathymetry, from the file itself. Safe for several threads at once. */
public interface CellUncertainty {
    /**
     * What kind of figure it is, as the file says it, or empty text: for a BAG one of the codes of {@code BAG_VertUncertCode},
     * such as {@code productUncert} or {@code rawStdDev}.
     */
    String kind();

    /** Whether the kind says that the figures are standard deviations. */
    default boolean saysStandardDeviation() {
        return kind().toLowerCase(Locale.ROOT).matches(".*std_?dev.*");
    }

    /**
     * Reads a window as {@link Bathymetry#read} does.
     *
     * @param into receives {@code cols * rows} figures in the unit of the file's values, more than 0, NaN where there is none
     */
    void read(int col, int row, int cols, int rows, float[] into);
}
