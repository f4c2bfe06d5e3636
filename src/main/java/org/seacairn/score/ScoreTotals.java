package org.seacairn.score;

import java.util.List;

/**
 * Counts over the whole grid.
 *
 * @param cells of the grid
 * @param withDepth cells that have a depth
 * @param scored cells that nothing rules out
 * @param byReason one for each reason, in the order of their bits
 */
public record ScoreTotals(long cells, long withDepth, long scored, List<Count> byReason, BlockMaxima blocks) {

    /**
     * @param cells that have the reason
     * @param aloneCells that would be free of reasons without this one. Landing room is a consequence
     *     of the other reasons of a place and is left aside for all but itself
     */
    public record Count(String reason, long bit, long cells, long aloneCells) {}
}
