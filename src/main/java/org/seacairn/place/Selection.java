package org.seacairn.place;

import java.util.List;
import org.seacairn.grid.GridGeometry;
import org.seacairn.plan.SitingPlan.Sites;
import org.seacairn.score.BlockMaxima;
import org.seacairn.score.ScoreEngine;

/**
 * The ranked sites of a scored grid.
 *
 * @param picks best first
 * @param total sum of their scores
 * @param greedyTotal sum of the scores that the simple rule alone reached
 * @param upperBound no selection of the asked size has a higher total
 */
public record Selection(List<Pick> picks, double total, double greedyTotal, double upperBound) {

    /**
     * @param blocks of the whole grid; used up
     * @param exchange whether to improve the greedy choice by swaps
     */
    public static Selection of(ScoreEngine engine, BlockMaxima blocks, Sites asked, double largestScaleError,
            boolean exchange) {
        GridGeometry grid = engine.grid();
        Spacing spacing = new Spacing(grid, asked.apartM(), largestScaleError);
        List<Pick> greedy = new GreedySites(engine, blocks, spacing).choose(asked.count());
        Rivals rivals = Rivals.of(engine, spacing, greedy, asked.count());
        double best = greedy.isEmpty() ? 0 : greedy.get(0).score();
        double bound = SelectionBound.of(rivals, asked.count(), greedy.size(), best,
                SelectionBound.side(asked.apartM(), grid.cellM(), largestScaleError));
        List<Pick> chosen = exchange ? new SiteExchange(rivals, spacing, asked.count()).improve(greedy) : greedy;
        return new Selection(List.copyOf(chosen), total(chosen), total(greedy), bound);
    }

    private static double total(List<Pick> picks) {
        return picks.stream().mapToDouble(Pick::score).sum();
    }
}
