package org.seacairn.score;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.criterion.WorkingLayer;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.PolygonScan;
import org.seacairn.grid.Window;
import org.seacairn.layer.Feature;
import org.seacairn.plan.SitingPlan.Limits;

/** Finds polygons on the working grid in which no cell has a depth within a plan's limits. */
final class BarrenAreas {
    private static final int SIDE = 512;

    private final GridGeometry grid;
    private final WorkingDepth depth;
    private final double shallowestM;
    private final double deepestM;

    BarrenAreas(WorkingDepth depth, Limits limits) {
        this.grid = depth.grid();
        this.depth = depth;
        this.shallowestM = Math.max(Float.MIN_VALUE, limits.shallowestM().orElse(0));
        this.deepestM = limits.deepestM().orElse(Double.POSITIVE_INFINITY);
    }

    /** The features that meet the grid and hold no such cell; each is read only as far as its first such cell. */
    List<Feature> among(WorkingLayer areas) {
        Map<Feature, List<Geometry>> pieces = new IdentityHashMap<>();
        areas.pieces().forEach(p -> pieces.computeIfAbsent(p.feature(), f -> new ArrayList<>()).add(p.geometry()));
        return areas.lonLat().stream().filter(f -> pieces.containsKey(f) && isBarren(pieces.get(f))).toList();
    }

    private boolean isBarren(List<Geometry> polygons) {
        Envelope box = new Envelope();
        polygons.forEach(p -> box.expandToInclude(p.getEnvelopeInternal()));
        int fromCol = Math.max(0, (int) Math.floor((box.getMinX() - grid.west()) / grid.cellM()));
        int fromRow = Math.max(0, (int) Math.floor((grid.north() - box.getMaxY()) / grid.cellM()));
        int endCol = (int) Math.min(grid.cols(), Math.ceil((box.getMaxX() - grid.west()) / grid.cellM()));
        int endRow = (int) Math.min(grid.rows(), Math.ceil((grid.north() - box.getMinY()) / grid.cellM()));
        PolygonScan scan = new PolygonScan(grid, polygons, new int[polygons.size()]);
        boolean centreWithin = false;
        for (int row = fromRow; row < endRow; row += SIDE) {
            for (int col = fromCol; col < endCol; col += SIDE) {
                Window window = new Window(col, row, Math.min(SIDE, endCol - col), Math.min(SIDE, endRow - row));
                int[] outside = new int[window.cells()];
                Arrays.fill(outside, 1);
                scan.paint(window, outside);
                float[] depths = new float[window.cells()];
                depth.read(window, depths);
                for (int i = 0; i < depths.length; i++) {
                    centreWithin |= outside[i] == 0;
                    if (outside[i] == 0 && depths[i] >= shallowestM && depths[i] <= deepestM) {
                        return false;
                    }
                }
            }
        }
        return centreWithin;
    }
}
