package org.seacairn.criterion;

import java.util.Arrays;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.PolygonScan;
import org.seacairn.grid.Window;
import org.seacairn.layer.Feature;
import org.seacairn.plan.SitingPlan.DepthAreas;

/**
 * Which charted depth area holds the centre of each cell: of several the shoalest, see {@link ChartedDepth#SHOALEST_FIRST}. Safe for
 * several threads at once.
 */
public final class ChartedCells {
    /** Where no area holds the centre. */
    public static final int NONE = -1;

    private final List<ChartedDepth.Area> areas;
    private final PolygonScan scan;

    /** @throws org.seacairn.InputException as {@link ChartedDepth#of} */
    public ChartedCells(DepthAreas plan, WorkingLayer layer, GridGeometry grid) {
        areas = ChartedDepth.of(plan, layer.lonLat());
        Map<Feature, Integer> places = new IdentityHashMap<>();
        for (int i = 0; i < areas.size(); i++) {
            places.put(areas.get(i).feature(), i);
        }
        // What is painted last lies on top.
        List<WorkingLayer.Piece> pieces = layer.pieces().stream().filter(piece -> places.containsKey(piece.feature()))
                .sorted(Comparator.comparing((WorkingLayer.Piece piece) -> areas.get(places.get(piece.feature())).depth(),
                        ChartedDepth.SHOALEST_FIRST.reversed())).toList();
        scan = new PolygonScan(grid, pieces.stream().map(WorkingLayer.Piece::geometry).toList(),
                IntStream.range(0, pieces.size()).map(i -> places.get(pieces.get(i).feature())).toArray());
    }

    /** The areas that state a depth, in the layer's order. */
    public List<ChartedDepth.Area> areas() {
        return areas;
    }

    /** For each cell of a window, which may reach over the grid's edge, the place of its area in the list, or {@link #NONE}. */
    public int[] in(Window window) {
        int[] painted = new int[window.cells()];
        Arrays.fill(painted, NONE);
        scan.paint(window, painted);
        return painted;
    }
}
