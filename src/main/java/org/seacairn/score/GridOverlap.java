package org.seacairn.score;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.distance.DistanceOp;
import org.seacairn.criterion.WorkingLayer;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.grid.GridGeometry;
import org.seacairn.layer.Feature;

/**
 * How a layer lies to the working grid.
 *
 * @param features of the layer
 * @param onGrid how many of them meet the grid's rectangle
 * @param nearestM if none does: about how far the nearest lies from it
 * @param bearingDeg if none does: the true bearing from the grid to the nearest
 */
public record GridOverlap(int features, int onGrid, OptionalDouble nearestM, OptionalDouble bearingDeg) {
    private static final GeometryFactory GEOMETRIES = new GeometryFactory();
    /** Points on each side of the grid where its outline is drawn in longitude and latitude. */
    private static final int STEPS = 16;

    static GridOverlap of(WorkingLayer layer, GridGeometry grid) {
        int onGrid = featuresOn(layer, grid);
        OptionalDouble none = OptionalDouble.empty();
        if (onGrid > 0) {
            return new GridOverlap(layer.lonLat().size(), onGrid, none, none);
        }
        GeodesicData nearest = nearest(layer.lonLat(), grid);
        return new GridOverlap(layer.lonLat().size(), 0, OptionalDouble.of(nearest.s12), OptionalDouble.of(nearest.azi1));
    }

    /** How many features of a layer meet the grid's rectangle. */
    static int featuresOn(WorkingLayer layer, GridGeometry grid) {
        Geometry rectangle = GEOMETRIES.toGeometry(new Envelope(grid.west(), grid.east(), grid.south(), grid.north()));
        Set<Feature> met = Collections.newSetFromMap(new IdentityHashMap<>());
        for (WorkingLayer.Piece piece : layer.pieces()) {
            if (!met.contains(piece.feature()) && rectangle.intersects(piece.geometry())) {
                met.add(piece.feature());
            }
        }
        return met.size();
    }

    /**
     * The geodesic between about the nearest places of grid and layer. They are found on a plane with
     * longitudes shortened for the grid's latitude, which is true near the grid and serves far from it
     * to tell in which direction a mistake lies.
     */
    private static GeodesicData nearest(List<Feature> lonLat, GridGeometry grid) {
        Coordinate[] outline = outline(grid);
        Coordinate middle = GEOMETRIES.createPolygon(outline).getEnvelopeInternal().centre();
        double shortening = Math.cos(Math.toRadians(middle.y));
        Geometry around = onPlane(GEOMETRIES.createPolygon(outline), middle.x, shortening);
        Geodesic geodesic = grid.crs().geodesic();
        GeodesicData best = null;
        for (Feature feature : lonLat) {
            Coordinate[] ends = DistanceOp.nearestPoints(around, onPlane(feature.geometry(), middle.x, shortening));
            GeodesicData line = geodesic.Inverse(ends[0].y, ends[0].x / shortening, ends[1].y, ends[1].x / shortening);
            best = best == null || line.s12 < best.s12 ? line : best;
        }
        return best;
    }

    private static Coordinate[] outline(GridGeometry grid) {
        CoordinateTransform toLonLat = grid.crs().to(grid.crs().geographic());
        double[] xy = new double[2 * (4 * STEPS + 1)];
        double width = grid.east() - grid.west();
        double height = grid.north() - grid.south();
        for (int i = 0; i <= 4 * STEPS; i++) {
            double along = i % STEPS / (double) STEPS;
            double[] p = switch (i / STEPS) {
                case 1 -> new double[] {grid.east(), grid.south() + height * along};
                case 2 -> new double[] {grid.east() - width * along, grid.north()};
                case 3 -> new double[] {grid.west(), grid.north() - height * along};
                default -> new double[] {grid.west() + width * along, grid.south()};
            };
            xy[2 * i] = p[0];
            xy[2 * i + 1] = p[1];
        }
        toLonLat.apply(xy);
        Coordinate[] ring = new Coordinate[xy.length / 2];
        for (int i = 0; i < ring.length; i++) {
            ring[i] = new Coordinate(xy[2 * i] - 360 * Math.rint((xy[2 * i] - xy[0]) / 360), xy[2 * i + 1]);
        }
        return ring;
    }

    private static Geometry onPlane(Geometry lonLat, double middleLongitude, double shortening) {
        double turn = 360 * Math.rint((lonLat.getEnvelopeInternal().centre().x - middleLongitude) / 360);
        return AffineTransformation.translationInstance(-turn, 0).scale(shortening, 1).transform(lonLat);
    }
}
