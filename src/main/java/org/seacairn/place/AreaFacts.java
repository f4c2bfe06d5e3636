package org.seacairn.place;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.IntConsumer;
import net.sf.geographiclib.PolygonArea;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.criterion.SlopeCriterion;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Terrain;
import org.seacairn.grid.Window;

/** Reads what an area's cells hold. */
final class AreaFacts {
    /** A difference in metres that does not make one corner more northern than another. */
    private static final double ALIKE_M = 1e-6;

    private final CellSource source;
    private final AreaRequest request;
    private final Shapes shapes;

    AreaFacts(CellSource source, AreaRequest request, Shapes shapes) {
        this.source = source;
        this.request = request;
        this.shapes = shapes;
    }

    Area of(Rectangle r) {
        GridGeometry grid = source.grid();
        Footprint f = shapes.at(r.col(), r.row()).footprints().get(r.shape());
        Spans spans = f.spans();
        Window window = onGrid(r.col(), r.row(), spans, 0);
        Extent score = new Extent();
        float[] scores = source.score(window);
        forEachCell(window, spans, r, i -> score.take(scores[i]));
        Extent depth = new Extent();
        Extent slope = new Extent();
        terrain(window, spans, r, depth, slope);
        Extent sureDepth = new Extent();
        double[] sureDepths = source.sureDepth(window);
        forEachCell(window, spans, r, i -> sureDepth.take(sureDepths[i]));
        AreaSize size = request.sizes().get(f.size());
        PlacedRectangle place = PlacedRectangle.of(f, grid.centreX(r.col()), grid.centreY(r.row()));
        List<Coordinate> corners = corners(place, size, f.turnDeg());
        return new Area(r.col(), r.row(), place, size, f.turnDeg(), corners, r.mean(), score.range().least(), spans.cells(),
                spans.cells() - score.count, depth.range(), sureDepth.least, slope.range(), bottomShares(window, spans, r), areaM2(corners, grid.crs()));
    }

    /** Where in an area modules may stand: on scored cells. */
    Packing.Ground ground(Area area) {
        GridGeometry grid = source.grid();
        Spans spans = shapes.at(area.col(), area.row()).footprints().stream()
                .filter(f -> f.turnDeg() == area.turnDeg() && request.sizes().get(f.size()).equals(area.size()))
                .findFirst().orElseThrow().spans();
        // A cell on the edge may have its centre outside.
        Window window = onGrid(area.col(), area.row(), spans, 1);
        float[] scores = source.score(window);
        return place -> {
            Coordinate at = area.at(place);
            int col = grid.colAt(at.x);
            int row = grid.rowAt(at.y);
            // The grid's far edges belong to its last cells.
            return !Float.isNaN(scores[window.index(Math.max(window.col(), Math.min(window.endCol() - 1, col)),
                    Math.max(window.row(), Math.min(window.endRow() - 1, row)))]);
        };
    }

    private Window onGrid(int col, int row, Spans spans, int margin) {
        int across = spans.widest() + margin;
        int down = spans.reach() + margin;
        return RectanglePass.onGrid(source.grid(), new Window(col - across, row - down, 2 * across + 1, 2 * down + 1));
    }

    private static void forEachCell(Window window, Spans spans, Rectangle r, IntConsumer cell) {
        for (int dr = -spans.reach(); dr <= spans.reach(); dr++) {
            for (int dc = spans.from(dr); dc <= spans.to(dr); dc++) {
                cell.accept(window.index(r.col() + dc, r.row() + dr));
            }
        }
    }

    private void terrain(Window window, Spans spans, Rectangle r, Extent depth, Extent slope) {
        Window wide = window.grown(1);
        float[] depths = source.depth(wide);
        float[] tangents = new float[wide.cells()];
        Terrain.slopeTangent(depths, wide.cols(), wide.rows(), source.grid().cellM(), tangents);
        forEachCell(wide, spans, r, i -> {
            depth.take(depths[i]);
            slope.take(SlopeCriterion.degrees(tangents[i]));
        });
    }

    private Map<String, Double> bottomShares(Window window, Spans spans, Rectangle r) {
        Optional<String[]> classes = source.bottom(window);
        if (classes.isEmpty()) {
            return Map.of();
        }
        Map<String, Integer> counts = new TreeMap<>();
        forEachCell(window, spans, r, i -> counts.merge(classes.get()[i], 1, Integer::sum));
        Map<String, Double> shares = new LinkedHashMap<>();
        counts.entrySet().stream().sorted(Map.Entry.comparingByValue(Comparator.reverseOrder()))
                .forEach(e -> shares.put(e.getKey(), (double) e.getValue() / spans.cells()));
        return Collections.unmodifiableMap(shares);
    }

    private static List<Coordinate> corners(PlacedRectangle place, AreaSize size, double turnDeg) {
        double[][] clockwise = {{1, -1}, {1, 1}, {-1, 1}, {-1, -1}};
        double sin = Math.sin(Math.toRadians(turnDeg));
        double cos = Math.cos(Math.toRadians(turnDeg));
        List<Coordinate> corners = new ArrayList<>();
        int first = 0;
        double mostNorthWest = Double.NEGATIVE_INFINITY;
        double itsNorth = 0;
        for (double[] corner : clockwise) {
            double along = corner[0] * size.lengthM() / 2;
            double across = corner[1] * size.widthM() / 2;
            double north = along * cos - across * sin;
            double northWest = north - (along * sin + across * cos);
            if (northWest > mostNorthWest + ALIKE_M || northWest > mostNorthWest - ALIKE_M && north > itsNorth) {
                first = corners.size();
                mostNorthWest = northWest;
                itsNorth = north;
            }
            corners.add(place.at(corner[0], corner[1]));
        }
        Collections.rotate(corners, -first);
        return List.copyOf(corners);
    }

    private static double areaM2(List<Coordinate> corners, Crs working) {
        CoordinateTransform toLonLat = working.to(working.geographic());
        PolygonArea polygon = new PolygonArea(working.geodesic(), false);
        for (Coordinate corner : corners) {
            Coordinate lonLat = toLonLat.apply(corner.x, corner.y);
            polygon.AddPoint(lonLat.y, lonLat.x);
        }
        return Math.abs(polygon.Compute().area);
    }

    /** Extent and most of the numbers taken; NaN is none. */
    private static final class Extent {
        private double least = Double.NaN;
        private double most = Double.NaN;
        private int count;

        void take(double value) {
            if (!Double.isNaN(value)) {
                least = count == 0 ? value : Math.min(least, value);
                most = count == 0 ? value : Math.max(most, value);
                count++;
            }
        }

        Area.Range range() {
            return new Area.Range(least, most);
        }
    }
}
