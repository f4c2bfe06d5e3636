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
import org.seacairn.layer.Feature;

/**
 * The ground that polygons cover together, and how far inside it a place or a polygon lies. Borders
 * between neighbours are no borders of it (see {@link Dissolved}).
 */
final class Cover {
    /** How far about a proposed polygon the cover is looked at. */
    private static final double ABOUT_M = 10_000;
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
    static double bulgeDeg(Envelope box) {
        double widthRad = Math.toRadians(box.getWidth());
        return Math.toDegrees(widthRad * widthRad / 8);
    }

    /** The distance to the polygons as they were given. */
    EllipsoidalDistance polygons() {
        return polygons;
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
        return outside(lonDeg, latDeg);
    }

    /** How deep a place lies in the polygon that holds it most deeply, its own borders counted; empty where none does. */
    Optional<Margin> within(double lonDeg, double latDeg) {
        return polygons.areas().stream().filter(area -> area.contains(lonDeg, latDeg)).map(area -> area.nearestEdge(lonDeg, latDeg))
                .max(Comparator.comparingDouble(GeodesicPiece.Foot::distanceM))
                .map(edge -> new Margin(edge.distanceM(), edge.bearingDeg(), lonDeg, latDeg, edge.longitudeDeg(), edge.latitudeDeg()));
    }

    /** How far inside the cover all of a polygon lies; where part of it is outside, the farthest part decides. */
    Margin of(Geometry lonLatPolygon) {
        SharedGround ground = new SharedGround(lonLatPolygon, geodesic);
        Geometry cover = UnaryUnionOp.union(dissolved.stream().flatMap(d -> about(d, ground).stream())
                .map(area -> ground.onPlane(area.polygon())).toList());
        if (cover == null) {
            return at(ground.own().getCoordinate(), ground);
        }
        Geometry outside = OverlayNGRobust.overlay(ground.own(), cover, OverlayNG.DIFFERENCE);
        if (!outside.isEmpty()) {
            return at(FarthestPoint.of(outside, cover), ground);
        }
        Coordinate[] ends = DistanceOp.nearestPoints(ground.own().getBoundary(), cover.getBoundary());
        Coordinate place = ground.plane().toLonLat(ends[0]);
        Coordinate border = ground.plane().toLonLat(ends[1]);
        GeodesicData ray = geodesic.Inverse(place.y, place.x, border.y, border.x);
        return new Margin(ray.s12, GeodesicPiece.bearingDeg(ray.azi1), place.x, place.y, border.x, border.y);
    }

    /** The features that share ground with a polygon, in their order. */
    List<Feature> meeting(Geometry lonLatPolygon) {
        SharedGround ground = new SharedGround(lonLatPolygon, geodesic);
        return about(polygons, ground).stream().filter(area -> !ground.with(area.polygon()).isEmpty())
                .map(area -> polygons.features().get(area.feature())).distinct().toList();
    }

    /**
     * About the deepest point of a polygon inside one that covers: a vertex of the ground that they share, or a
     * point inside it. Empty where they only touch.
     */
    Optional<Margin> deepest(Geometry lonLatPolygon) {
        SharedGround ground = new SharedGround(lonLatPolygon, geodesic);
        Margin deepest = null;
        for (GeodesicArea area : about(polygons, ground)) {
            Geometry shared = ground.with(area.polygon());
            if (shared.isEmpty()) {
                continue;
            }
            List<Coordinate> inside = new ArrayList<>(List.of(shared.getCoordinates()));
            inside.add(shared.getInteriorPoint().getCoordinate());
            for (Coordinate c : inside) {
                Coordinate place = ground.plane().toLonLat(c);
                GeodesicPiece.Foot edge = area.nearestEdge(place.x, place.y);
                if (deepest == null || edge.distanceM() > deepest.distanceM) {
                    deepest = new Margin(edge.distanceM(), edge.bearingDeg(), place.x, place.y,
                            edge.longitudeDeg(), edge.latitudeDeg());
                }
            }
        }
        return Optional.ofNullable(deepest);
    }

    /** The areas near a polygon, which lies about the plane's origin. */
    private static List<GeodesicArea> about(EllipsoidalDistance layer, SharedGround ground) {
        double reachM = 0;
        for (Coordinate c : ground.own().getCoordinates()) {
            reachM = Math.max(reachM, Math.hypot(c.x, c.y));
        }
        double lonDeg = ground.plane().centreLongitudeDeg();
        double latDeg = ground.plane().centreLatitudeDeg();
        double aboutM = reachM + ABOUT_M;
        return layer.areas().stream().filter(area -> area.contains(lonDeg, latDeg)
                || area.nearestEdge(lonDeg, latDeg).distanceM() <= aboutM).toList();
    }

    private Margin at(Coordinate onPlane, SharedGround ground) {
        Coordinate place = ground.plane().toLonLat(onPlane);
        return outside(place.x, place.y);
    }

    private Margin outside(double lonDeg, double latDeg) {
        EllipsoidalDistance.Nearest nearest = polygons.nearest(lonDeg, latDeg);
        return new Margin(-nearest.distanceM(), nearest.azimuthDeg(), lonDeg, latDeg, nearest.longitudeDeg(), nearest.latitudeDeg());
    }
}
