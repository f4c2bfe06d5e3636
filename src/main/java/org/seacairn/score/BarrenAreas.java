package org.seacairn.score;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.commons.math3.util.ArithmeticUtils;
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
    /** Multiples of it, less whole numbers, spread evenly whatever their count. */
    private static final double GOLDEN_SECTION = 0.618;

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
        PolygonScan scan = new PolygonScan(grid, polygons, new int[polygons.size()]);
        boolean holdsCentre = false;
        for (Window window : scattered(about(polygons))) {
            int[] outside = new int[window.cells()];
            Arrays.fill(outside, 1);
            scan.paint(window, outside);
            float[] depths = new float[window.cells()];
            depth.read(window, depths);
            for (int i = 0; i < depths.length; i++) {
                if (outside[i] == 0 && depths[i] >= shallowestM && depths[i] <= deepestM) {
                    return false;
                }
                holdsCentre |= outside[i] == 0;
            }
        }
        return holdsCentre;
    }

    /** The cells of the grid about geometries that meet it. */
    private Window about(List<Geometry> geometries) {
        Envelope box = new Envelope();
        geometries.forEach(g -> box.expandToInclude(g.getEnvelopeInternal()));
        int col = (int) Math.max(0, Math.floor((box.getMinX() - grid.west()) / grid.cellM()));
        int row = (int) Math.max(0, Math.floor((grid.north() - box.getMaxY()) / grid.cellM()));
        int endCol = (int) Math.min(grid.cols(), Math.ceil((box.getMaxX() - grid.west()) / grid.cellM()));
        int endRow = (int) Math.min(grid.rows(), Math.ceil((grid.north() - box.getMinY()) / grid.cellM()));
        return new Window(Math.min(col, grid.cols() - 1), Math.min(row, grid.rows() - 1),
                Math.max(1, endCol - col), Math.max(1, endRow - row));
    }

    /**
     * The parts of a window from its middle on and then all over it, so that of an area with a usable depth
     * somewhere little is read, even where its rim has none.
     */
    private static Iterable<Window> scattered(Window whole) {
        int across = (whole.cols() + SIDE - 1) / SIDE;
        int parts = Math.multiplyExact(across, (whole.rows() + SIDE - 1) / SIDE);
        long step = Math.max(1, Math.round(parts * GOLDEN_SECTION));
        while (ArithmeticUtils.gcd(step, parts) != 1) {
            step++;
        }
        long stride = step;
        return () -> IntStream.range(0, parts).mapToObj(i -> {
            int part = (int) ((i * stride + parts / 2) % parts);
            int col = part % across * SIDE;
            int row = part / across * SIDE;
            return new Window(whole.col() + col, whole.row() + row,
                    Math.min(SIDE, whole.cols() - col), Math.min(SIDE, whole.rows() - row));
        }).iterator();
    }
}
