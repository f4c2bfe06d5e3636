package org.seacairn.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.distance.DistanceOp;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.seacairn.geodesy.AzimuthalPlane;
import org.seacairn.geodesy.GeodesicEdges;
import org.seacairn.layer.Feature;

/**
 * The ground that polygons cover together, and how far inside it a place or a polygon lies. Borders
 * between neighbours are no borders of it (see {@link Dissolved}).
 */
final class Cover {
    /** How far about a proposed polygon the cover is looked at. */
    private static final double ABOUT_M = 10_000;
    /** Polygons that overlap by less than this only touch. */
    private static final double TOUCH_M = 1e-3;
    private static final double METRES_PER_DEGREE = 110_000;

    private final Geodesic geodesic;
    /** The polygons as they were given. */
    private final EllipsoidalDistance polygons;
    /** Of those that matter, without the borders between neighbours; empty where none does. */
    private final Optional<EllipsoidalDistance> dissolved;

    /**
     * How far inside the cover something lies.
     *
     * @param distanceM to the nearest ground not covered; outside, minus the distance to the cover
     * @param azimuthDeg at the place, towards the border, 0 to 360; NaN at distance 0
     * @param placeLongitudeDeg the place; of a polygon its worst point
     * @param longitudeDeg nearest point of the border
     */
    record Margin(double distanceM, double azimuthDeg, double placeLongitudeDeg, double placeLatitudeDeg,
            double longitudeDeg, double latitudeDeg) {}

    /** @param features longitude and latitude, a polygon among them; what is no polygon covers nothing */
    Cover(List<Feature> features, Geodesic geodesic) {
        this(features, features, geodesic);
    }

    private Cover(List<Feature> features, List<Feature> mattering, Geodesic geodesic) {
        this.geodesic = geodesic;
        this.polygons = EllipsoidalDistance.of(
                features.stream().filter(f -> f.geometry().getDimension() == 2).toList(), geodesic);
        List<Feature> parts = Dissolved.of(mattering, geodesic);
        this.dissolved = parts.isEmpty() ? Optional.empty() : Optional.of(EllipsoidalDistance.of(parts, geodesic));
    }

    /** Polygons whose borders all count, for {@link #within} and {@link #deepest}. */
    static Cover bordered(List<Feature> features, Geodesic geodesic) {
        return new Cover(features, List.of(), geodesic);
    }

    /**
     * The cover about some places only, for a layer with thousands of polygons. A distance to ground that is not
     * covered is right where it is no more than {@code aboutM}; where it is more, the true one is more too.
     */
    static Cover about(List<Geometry> lonLatPlaces, double aboutM, List<Feature> features, Geodesic geodesic) {
        STRtree places = new STRtree();
        for (Geometry place : lonLatPlaces) {
            Envelope box = new Envelope(place.getEnvelopeInternal());
            double degrees = aboutM * 1.05 / METRES_PER_DEGREE + bulgeDeg(box);
            double shortest = Math.cos(Math.toRadians(Math.min(89, Math.max(Math.abs(box.getMinY()), Math.abs(box.getMaxY())) + degrees)));
            box.expandBy(degrees / shortest, degrees);
            for (int turn = -360; turn <= 360; turn += 360) {
                places.insert(new Envelope(box.getMinX() + turn, box.getMaxX() + turn, box.getMinY(), box.getMaxY()), place);
            }
        }
        places.build();
        List<Feature> near = features.stream().filter(f -> {
            Envelope box = new Envelope(f.geometry().getEnvelopeInternal());
            box.expandBy(0, bulgeDeg(box));
            return !places.query(box).isEmpty();
        }).toList();
        return new Cover(features, near, geodesic);
    }

    /** How far edges may bulge out of the box of their ends, in degrees of latitude. */
    private static double bulgeDeg(Envelope box) {
        double widthRad = Math.toRadians(box.getWidth());
        return Math.toDegrees(widthRad * widthRad / 8);
    }

    /** The features that hold a place, in their order. */
    List<Feature> holding(double lonDeg, double latDeg) {
        return polygons.areas().stream().filter(a -> a.contains(lonDeg, latDeg))
                .map(a -> polygons.features().get(a.feature())).distinct().toList();
    }

    /** The feature that holds a place, the first of several, or the nearest one. */
    Feature nearestFeature(double lonDeg, double latDeg) {
        return polygons.nearest(lonDeg, latDeg).feature();
    }

    Margin at(double lonDeg, double latDeg) {
        for (GeodesicArea area : dissolved.map(EllipsoidalDistance::areas).orElse(List.of())) {
            if (area.contains(lonDeg, latDeg)) {
                GeodesicPiece.Foot edge = area.nearestEdge(lonDeg, latDeg);
                return new Margin(edge.distanceM(), edge.bearingDeg(), lonDeg, latDeg, edge.longitudeDeg(), edge.latitudeDeg());
            }
        }
        EllipsoidalDistance.Nearest nearest = polygons.nearest(lonDeg, latDeg);
        return new Margin(-nearest.distanceM(), nearest.azimuthDeg(), lonDeg, latDeg, nearest.longitudeDeg(), nearest.latitudeDeg());
    }

    /** How deep a place lies in the polygon that holds it most deeply, its own borders counted; empty where none does. */
    Optional<Margin> within(double lonDeg, double latDeg) {
        return polygons.areas().stream().filter(area -> area.contains(lonDeg, latDeg)).map(area -> area.nearestEdge(lonDeg, latDeg))
                .max(Comparator.comparingDouble(GeodesicPiece.Foot::distanceM))
                .map(edge -> new Margin(edge.distanceM(), edge.bearingDeg(), lonDeg, latDeg, edge.longitudeDeg(), edge.latitudeDeg()));
    }

    /** How far inside the cover all of a polygon lies; where part of it is outside, the farthest part decides. */
    Margin of(Geometry lonLatPolygon) {
        AzimuthalPlane plane = planeOf(lonLatPolygon);
        Geometry proposed = plane.fromLonLat(dense(lonLatPolygon));
        Geometry cover = UnaryUnionOp.union(dissolved.stream().flatMap(d -> about(d, lonLatPolygon, proposed).stream())
                .map(area -> plane.fromLonLat(dense(area.polygon()))).toList());
        if (cover == null) {
            return at(proposed.getCoordinate(), plane);
        }
        Geometry outside = OverlayNGRobust.overlay(proposed, cover, OverlayNG.DIFFERENCE);
        if (!outside.isEmpty()) {
            return at(FarthestPoint.of(outside, cover), plane);
        }
        Coordinate[] ends = DistanceOp.nearestPoints(proposed.getBoundary(), cover.getBoundary());
        Coordinate place = plane.toLonLat(ends[0]);
        Coordinate border = plane.toLonLat(ends[1]);
        GeodesicData ray = geodesic.Inverse(place.y, place.x, border.y, border.x);
        return new Margin(ray.s12, ray.azi1 < 0 ? ray.azi1 + 360 : ray.azi1,
                place.x, place.y, border.x, border.y);
    }

    /** The features that share ground with a polygon, in their order. */
    List<Feature> meeting(Geometry lonLatPolygon) {
        AzimuthalPlane plane = planeOf(lonLatPolygon);
        Geometry proposed = plane.fromLonLat(dense(lonLatPolygon));
        return about(polygons, lonLatPolygon, proposed).stream()
                .filter(area -> !shared(proposed, area, plane).buffer(-TOUCH_M / 2).isEmpty())
                .map(area -> polygons.features().get(area.feature())).distinct().toList();
    }

    /**
     * About the deepest point of a polygon inside one that covers: a vertex of the ground that they share, or a
     * point inside it. Empty where they only touch.
     */
    Optional<Margin> deepest(Geometry lonLatPolygon) {
        AzimuthalPlane plane = planeOf(lonLatPolygon);
        Geometry proposed = plane.fromLonLat(dense(lonLatPolygon));
        Margin deepest = null;
        for (GeodesicArea area : about(polygons, lonLatPolygon, proposed)) {
            Geometry shared = shared(proposed, area, plane);
            if (!shared.buffer(-TOUCH_M / 2).isEmpty()) {
                List<Coordinate> inside = new ArrayList<>(List.of(shared.getCoordinates()));
                inside.add(shared.getInteriorPoint().getCoordinate());
                for (Coordinate c : inside) {
                    Coordinate place = plane.toLonLat(c);
                    GeodesicPiece.Foot edge = area.nearestEdge(place.x, place.y);
                    if (deepest == null || edge.distanceM() > deepest.distanceM) {
                        deepest = new Margin(edge.distanceM(), edge.bearingDeg(), place.x, place.y,
                                edge.longitudeDeg(), edge.latitudeDeg());
                    }
                }
            }
        }
        return Optional.ofNullable(deepest);
    }

    private AzimuthalPlane planeOf(Geometry lonLat) {
        Coordinate centre = lonLat.getEnvelopeInternal().centre();
        return new AzimuthalPlane(centre.x, centre.y, geodesic);
    }

    /** The areas near a polygon, whose image lies about the origin. */
    private static List<GeodesicArea> about(EllipsoidalDistance layer, Geometry lonLat, Geometry image) {
        double reachM = 0;
        for (Coordinate c : image.getCoordinates()) {
            reachM = Math.max(reachM, Math.hypot(c.x, c.y));
        }
        Coordinate centre = lonLat.getEnvelopeInternal().centre();
        double aboutM = reachM + ABOUT_M;
        return layer.areas().stream().filter(area -> area.contains(centre.x, centre.y)
                || area.nearestEdge(centre.x, centre.y).distanceM() <= aboutM).toList();
    }

    private Geometry dense(Geometry polygon) {
        return GeodesicEdges.densify(polygon, geodesic, GeodesicEdges.PIECE_M);
    }

    private Geometry shared(Geometry proposed, GeodesicArea area, AzimuthalPlane plane) {
        return OverlayNGRobust.overlay(proposed, plane.fromLonLat(dense(area.polygon())), OverlayNG.INTERSECTION);
    }

    private Margin at(Coordinate onPlane, AzimuthalPlane plane) {
        Coordinate place = plane.toLonLat(onPlane);
        EllipsoidalDistance.Nearest nearest = polygons.nearest(place.x, place.y);
        return new Margin(-nearest.distanceM(), nearest.azimuthDeg(), place.x, place.y,
                nearest.longitudeDeg(), nearest.latitudeDeg());
    }
}
