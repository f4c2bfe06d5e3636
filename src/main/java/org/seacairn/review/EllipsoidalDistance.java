package org.seacairn.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.sf.geographiclib.GeoMath;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryCollection;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.seacairn.InputException;
import org.seacairn.layer.Feature;

/**
 * Geodesic distance from a place to the nearest of a layer's features, for checking what other code
 * says: nothing is projected, densified or rasterised. An edge is the geodesic between its vertices
 * (see {@link org.seacairn.geodesy.GeodesicEdges}); the distance is 0 inside a polygon, outside its
 * holes. A polygon's inside is what an odd number of its rings goes around, whether it is valid or not;
 * the polygons of a collection are taken one by one.
 *
 * <p>Right to a micrometre up to 1000 km away, and to a few kilometres at the other end of the Earth.
 * Immutable, so that threads may share it.
 */
public final class EllipsoidalDistance {
    private final Geodesic geodesic;
    private final List<Feature> features;
    private final SphereTree tree;
    private final List<GeodesicArea> areas;

    /**
     * @param distanceM along the geodesic; 0 inside a polygon
     * @param azimuthDeg of that geodesic at the place asked for, towards the feature, clockwise from
     *     north, 0 to 360; NaN inside a polygon
     * @param longitudeDeg nearest point, -180 to 180; inside a polygon the place itself
     * @param latitudeDeg nearest point
     * @param feature the one that holds it; of several polygons around the place the first of the layer
     */
    public record Nearest(
            double distanceM, double azimuthDeg, double longitudeDeg, double latitudeDeg, Feature feature) {}

    private EllipsoidalDistance(Geodesic geodesic, List<Feature> features, SphereTree tree, List<GeodesicArea> areas) {
        this.geodesic = geodesic;
        this.features = features;
        this.tree = tree;
        this.areas = List.copyOf(areas);
    }

    /**
     * Takes the features of a layer in.
     *
     * @param lonLatFeatures geometries in longitude and latitude in degrees on the ellipsoid's datum
     * @throws IllegalArgumentException if there is none
     * @throws InputException if a coordinate is no place on Earth
     */
    public static EllipsoidalDistance of(List<Feature> lonLatFeatures, Geodesic geodesic) {
        List<GeodesicPiece> pieces = new ArrayList<>();
        List<GeodesicArea> areas = new ArrayList<>();
        for (int i = 0; i < lonLatFeatures.size(); i++) {
            check(lonLatFeatures.get(i));
            take(lonLatFeatures.get(i).geometry(), i, geodesic, pieces, areas);
        }
        return new EllipsoidalDistance(
                geodesic, List.copyOf(lonLatFeatures), new SphereTree(pieces, geodesic), areas);
    }

    private static void check(Feature feature) {
        for (Coordinate vertex : feature.geometry().getCoordinates()) {
            if (!Double.isFinite(vertex.x) || !(Math.abs(vertex.y) <= 90)) {
                throw new InputException("feature " + feature.id() + ": longitude " + vertex.x + ", latitude " + vertex.y
                        + " is no place on Earth; check the CRS that the layer states");
            }
        }
    }

    private static void take(
            Geometry geometry, int feature, Geodesic geodesic, List<GeodesicPiece> pieces, List<GeodesicArea> areas) {
        if (geometry instanceof GeometryCollection) {
            for (int i = 0; i < geometry.getNumGeometries(); i++) {
                take(geometry.getGeometryN(i), feature, geodesic, pieces, areas);
            }
        } else if (geometry instanceof Polygon polygon) {
            GeodesicArea area = new GeodesicArea(feature, polygon, geodesic);
            pieces.addAll(area.edges());
            areas.add(area);
        } else if (geometry instanceof LineString || geometry instanceof Point) {
            pieces.addAll(GeodesicPiece.ofPath(feature, geometry, geodesic));
        } else {
            throw new IllegalArgumentException("no edges are known of a " + geometry.getGeometryType());
        }
    }

    /**
     * The nearest point of all features.
     *
     * @throws IllegalArgumentException if the place is none on Earth
     */
    public Nearest nearest(double lonDeg, double latDeg) {
        requirePlace(lonDeg, latDeg);
        for (GeodesicArea area : areas) {
            if (area.contains(lonDeg, latDeg)) {
                return new Nearest(0, Double.NaN, GeoMath.AngNormalize(lonDeg), latDeg, features.get(area.feature()));
            }
        }
        SphereTree.Hit hit = tree.nearest(lonDeg, latDeg);
        return nearest(hit.foot(), hit.piece().feature());
    }

    /** The nearest point of the features but one, polygons taken as their outlines; empty if there is no other. */
    Optional<Nearest> nearestBut(int feature, double lonDeg, double latDeg) {
        return tree.nearestBut(feature, lonDeg, latDeg).map(hit -> nearest(hit.foot(), hit.piece().feature()));
    }

    private static void requirePlace(double lonDeg, double latDeg) {
        if (!Double.isFinite(lonDeg) || !(Math.abs(latDeg) <= 90)) {
            throw new IllegalArgumentException("longitude " + lonDeg + ", latitude " + latDeg);
        }
    }

    private Nearest nearest(GeodesicPiece.Foot foot, int feature) {
        return new Nearest(foot.distanceM(), foot.bearingDeg(), GeoMath.AngNormalize(foot.longitudeDeg()),
                foot.latitudeDeg(), features.get(feature));
    }

    List<Feature> features() {
        return features;
    }

    SphereTree tree() {
        return tree;
    }

    List<GeodesicArea> areas() {
        return areas;
    }

    Geodesic geodesic() {
        return geodesic;
    }
}
