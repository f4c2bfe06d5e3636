package org.seacairn.place;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;
import org.seacairn.score.ScoreEngine;
import org.seacairn.score.ScoredWindow;

/**
 * The cells that could be in a better selection than a greedy one.
 *
 * <p>A cell that scores above the last greedy site stands too near some greedy site, or it would have
 * been chosen before that last one; where the greedy choice ran out of room, so does every scored
 * cell. It is therefore enough to look about the chosen sites.
 *
 * @param cells best first (ties: the more northern, then the more western)
 * @param floor no cell outside {@code cells} scores above this
 * @param complete false: there were too many to list, and {@code cells} is empty
 */
record Rivals(List<Pick> cells, double floor, boolean complete) {
    private static final long MOST_CELLS = 4_000_000;

    static final Comparator<Pick> BEST_FIRST = Comparator.comparingDouble(Pick::score).reversed()
            .thenComparingInt(Pick::row).thenComparingInt(Pick::col);

    static Rivals of(ScoreEngine engine, Spacing spacing, List<Pick> greedy, int count) {
        double floor = greedy.size() < count || greedy.isEmpty() ? 0 : greedy.get(greedy.size() - 1).score();
        int reach = spacing.reachCells();
        long side = 2L * reach + 1;
        if (greedy.size() * side * side > MOST_CELLS) {
            return new Rivals(List.of(), floor, false);
        }
        GridGeometry grid = engine.grid();
        Set<Long> seen = new HashSet<>();
        List<Pick> cells = new ArrayList<>();
        for (Pick site : greedy) {
            int left = Math.max(0, site.col() - reach);
            int top = Math.max(0, site.row() - reach);
            Window about = new Window(left, top, Math.min(grid.cols(), site.col() + reach + 1) - left,
                    Math.min(grid.rows(), site.row() + reach + 1) - top);
            ScoredWindow scored = engine.score(about);
            for (int row = about.row(); row < about.endRow(); row++) {
                for (int col = about.col(); col < about.endCol(); col++) {
                    float s = scored.score()[about.index(col, row)];
                    if (s > floor && seen.add(grid.cellNumber(col, row))) {
                        cells.add(spacing.pick(col, row, s));
                    }
                }
            }
        }
        cells.sort(BEST_FIRST);
        return new Rivals(List.copyOf(cells), floor, true);
    }
}
