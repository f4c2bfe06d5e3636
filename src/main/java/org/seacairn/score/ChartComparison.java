package org.seacairn.score;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.criterion.ChartedDepth;
import org.seacairn.criterion.WorkingLayer;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.PolygonScan;
import org.seacairn.grid.Window;
import org.seacairn.layer.Feature;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Uncertainty;

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
    private static final int OUTSIDE = -1;

    /** A cell that can be compared. */
    record Pair(double depthM, ChartedDepth charted) {
        /** As {@link ChartedDepth#missM}, 0 where the uncertainty explains it. */
        double missM(Uncertainty uncertainty) {
            double miss = charted.missM(depthM);
            return Math.abs(miss) <= uncertainty.verticalM(depthM) ? 0 : miss;
        }
    }

    /** @throws org.seacairn.InputException if an area's depths make no sense */
    static ChartComparison of(SitingPlan plan, WorkingLayer layer, WorkingDepth depth) {
        List<ChartedDepth.Area> areas = ChartedDepth.of(plan.depthAreas().orElseThrow(), layer.lonLat());
        Map<Feature, ChartedDepth> byFeature = new IdentityHashMap<>();
        areas.forEach(area -> byFeature.put(area.feature(), area.depth()));
        // Painted from the deepest to the shoalest, so that the shoalest lies on top.
        List<WorkingLayer.Piece> pieces = layer.pieces().stream().filter(p -> byFeature.containsKey(p.feature()))
                .sorted(Comparator.comparing((WorkingLayer.Piece p) -> byFeature.get(p.feature()), ChartedDepth.SHOALEST_FIRST.reversed())).toList();
        List<Geometry> polygons = pieces.stream().map(WorkingLayer.Piece::geometry).toList();
        PolygonScan scan = new PolygonScan(depth.grid(), polygons, IntStream.range(0, polygons.size()).toArray());
        Uncertainty uncertainty = plan.bathymetry().uncertainty();
        List<Pair> pairs = new ArrayList<>();
        int looked = 0;
        int outside = 0;
        int chartOnly = 0;
        GridGeometry grid = depth.grid();
        int step = step(grid);
        for (int row = step / 2; row < grid.rows(); row += step) {
            Window line = new Window(0, row, grid.cols(), 1);
            int[] painted = new int[line.cells()];
            Arrays.fill(painted, OUTSIDE);
            scan.paint(line, painted);
            float[] depths = new float[line.cells()];
            depth.read(line, depths);
            for (int col = step / 2; col < grid.cols(); col += step) {
                looked++;
                boolean isOutside = painted[col] == OUTSIDE;
                if (Float.isNaN(depths[col])) {
                    chartOnly += isOutside ? 0 : 1;
                } else if (isOutside) {
                    outside++;
                } else {
                    pairs.add(new Pair(depths[col], byFeature.get(pieces.get(painted[col]).feature())));
                }
            }
        }
        long polygonFeatures = layer.lonLat().stream().filter(f -> f.geometry().getDimension() == 2).count();
        return new ChartComparison(looked, pairs.size(), count(pairs, p -> p.missM(uncertainty) < 0), count(pairs, p -> p.missM(uncertainty) > 0),
                outside, chartOnly, (int) polygonFeatures - areas.size(), new ChartDoubts(plan, pairs).warnings());
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
