package org.seacairn.criterion;

/** A raw measure of cells, the reasons it gives for ruling them out, and the suitability it gives them. */
public interface Criterion extends Rule {
    /**
     * Suitability of some cells.
     *
     * @param cells indexes into the tile's outer window, of cells that nothing rules out
     * @param count how many of them
     * @param into receives 0..1 for each
     */
    void suitability(Tile tile, int[] cells, int count, double[] into);
}
