package org.seacairn.layer;

/** Vertical uncertainty of each cell of a bathymetry, from the file itself. Safe for several threads at once. */
public interface CellUncertainty {
    /**
     * What kind of figure it is, as the file says it: for a BAG one of the codes of {@code BAG_VertUncertCode},
     * such as {@code productUncert} or {@code rawStdDev}. Whether it is a standard deviation or holds 95 % follows from it.
     */
    String kind();

    /**
     * Reads a window as {@link Bathymetry#read} does.
     *
     * @param into receives {@code cols * rows} figures in the unit of the file's values, NaN where there is none
     */
    void read(int col, int row, int cols, int rows, float[] into);
}
