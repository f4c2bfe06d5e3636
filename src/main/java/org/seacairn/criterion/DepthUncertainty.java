package org.seacairn.criterion;

/** Vertical uncertainty of the depths of a window, whether it follows from the depth or is told cell by cell. */
@FunctionalInterface
public interface DepthUncertainty {
    /**
     * @param i index of the cell in the window, row by row
     * @param depthM of that cell, positive down; NaN for none
     * @return metres (95 %); NaN where there is no depth or nothing is known of it
     */
    double atM(int i, double depthM);
}
