package org.seacairn.place;

/**
 * A cell chosen as a site.
 *
 * @param x centre in the working CRS, metres
 * @param y centre in the working CRS, metres
 * @param longitudeDeg centre, on the working CRS's own datum
 * @param latitudeDeg centre, on the working CRS's own datum
 * @param score 0..1
 */
public record Pick(int col, int row, double x, double y, double longitudeDeg, double latitudeDeg, double score) {}
