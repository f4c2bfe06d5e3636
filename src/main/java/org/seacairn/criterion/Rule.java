package org.seacairn.criterion;

/** What can rule cells out. Implementations are immutable after construction and serve several threads at once. */
public interface Rule {
    /**
     * Adds this rule's reasons to the masks of a tile.
     *
     * @param reasons one mask for each cell of {@link Tile#outer()}
     */
    void rule(Tile tile, int[] reasons);
}
