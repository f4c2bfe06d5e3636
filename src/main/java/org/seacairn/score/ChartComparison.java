package org.seacairn.score;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.seacairn.criterion.ChartedCells;
import org.seacairn.criterion.ChartedDepth;
import org.seacairn.criterion.DepthUncertainty;
import org.seacairn.criterion.WorkingLayer;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;
import org.seacairn.plan.SitingPlan;

/**
 * How the depths of the working grid agree with charted depth areas, at the cells of a regular lattice.
 *
 * @param looked cells looked at
 * @param compared those with a depth and a charted range
 * @param shoaler of those shoaler than charted, beyond the bathymetry's vertical uncertainty
 * @param deeper of those deeper than charted, beyond it
 * @param outside cells with a depth that no area holds
 * @param chartOnly cells without a depth that an area holds
 * @param silentAreas polygons that state neither end
 * @param warnings one line each
 */
public record ChartComparison(int looked, int compared, int shoaler, int deeper, int outside, int chartOnly, int silentAreas,
        List<String> warnings) {
    private static final int MOST_CELLS = 10_000;

    /**
     * A cell that can be compared.
     *
     * @param uncertaintyM of the depth (95 %); NaN explains nothing
     */
    record Pair(double depthM, double uncertaintyM, ChartedDepth charted) {
        /** As {@link ChartedDepth#missM}, 0 where the uncertainty explains it. */
        double missM() {
            double miss = charted.missM(depthM);
            return Math.abs(miss) <= uncertaintyM ? 0 : miss;
        }

        /** The same cell at another depth. */
        Pair at(double otherM) {
            return new Pair(otherM, uncertaintyM, charted);
        }
    }

    /** @throws org.seacairn.InputException if an area's depths make no sense */
    static ChartComparison of(SitingPlan plan, WorkingLayer layer, WorkingDepth depth) {
        ChartedCells charted = new ChartedCells(plan.depthAreas().orElseThrow(), layer, depth.grid());
        List<Pair> pairs = new ArrayList<>();
        int looked = 0;
        int outside = 0;
        int chartOnly = 0;
        GridGeometry grid = depth.grid();
        int step = step(grid);
        for (int row = step / 2; row < grid.rows(); row += step) {
            Window line = new Window(0, row, grid.cols(), 1);
            int[] areas = charted.in(line);
            float[] depths = new float[line.cells()];
            depth.read(line, depths);
            DepthUncertainty uncertainty = depth.uncertainty().over(line);
            for (int col = step / 2; col < grid.cols(); col += step) {
                looked++;
                boolean isOutside = areas[col] == ChartedCells.NONE;
                if (Float.isNaN(depths[col])) {
                    chartOnly += isOutside ? 0 : 1;
                } else if (isOutside) {
                    outside++;
                } else {
                    pairs.add(new Pair(depths[col], uncertainty.atM(col, depths[col]), charted.areas().get(areas[col]).depth()));
                }
            }
        }
        long polygons = layer.lonLat().stream().filter(f -> f.geometry().getDimension() == 2).count();
        return new ChartComparison(looked, pairs.size(), count(pairs, p -> p.missM() < 0), count(pairs, p -> p.missM() > 0),
                outside, chartOnly, (int) polygons - charted.areas().size(), new ChartDoubts(plan, pairs).warnings());
    }

    private static int count(List<Pair> pairs, Predicate<Pair> which) {
        return (int) pairs.stream().filter(which).count();
    }

    /** The closest lattice with no more cells than that. */
    private static int step(GridGeometry grid) {
        int step = (int) Math.max(1, Math.floor(Math.sqrt((double) grid.cols() * grid.rows() / MOST_CELLS)));
        while (along(grid.cols(), step) * along(grid.rows(), step) > MOST_CELLS) {
            step++;
        }
        return step;
    }

    private static long along(int cells, int step) {
        return (cells - step / 2 + step - 1) / step;
    }

    /** Cells whose depth lies within its charted range, give or take the uncertainty. */
    public int within() {
        return compared - shoaler - deeper;
    }
}
