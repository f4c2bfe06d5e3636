package org.seacairn.review;

import java.util.ArrayList;
import java.util.List;
import net.sf.geographiclib.GeoMath;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicLine;
import net.sf.geographiclib.GeodesicMask;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * A stretch of a geodesic edge, at most {@value #LONGEST_M} m long, or a single point (length 0). Long
 * edges are taken in stretches so that each has a small bounding sphere and the search along it starts
 * close to the answer. Angles in degrees, lengths in metres, places in space in metres from the centre
 * of the Earth.
 *
 * @param longitudeDeg of the start; runs on from the start of the edge, even past 180
 * @param endLongitudeDeg runs on from the start of the edge likewise
 * @param azimuthDeg of the stretch at its start
 */
record GeodesicPiece(
        int feature, double longitudeDeg, double latitudeDeg, double endLongitudeDeg, double endLatitudeDeg,
        double azimuthDeg, double lengthM, Vector start, Vector end) {
    static final double LONGEST_M = 10_000;
    /** A step along the edge that no longer moves the foot. */
    private static final double STEP_M = 1e-7;
    private static final int MAX_STEPS = 30;

    /** The foot of a place on a stretch; the azimuth is at the place, towards the foot. */
    record Foot(double distanceM, double azimuthDeg, double longitudeDeg, double latitudeDeg) {
        /** The azimuth, 0 to 360. */
        double bearingDeg() {
            return GeodesicPiece.bearingDeg(azimuthDeg);
        }
    }

    /** An azimuth as a bearing, 0 to 360. */
    static double bearingDeg(double azimuthDeg) {
        double normalDeg = GeoMath.AngNormalize(azimuthDeg);
        return normalDeg < 0 ? normalDeg + 360 : normalDeg;
    }

    static GeodesicPiece point(int feature, Coordinate at, Geodesic geodesic) {
        Vector place = Vector.of(at.x, at.y, geodesic);
        return new GeodesicPiece(feature, at.x, at.y, at.x, at.y, 0, 0, place, place);
    }

    /** The stretches of an edge, from a to b, the shortest way. Empty if the two are one place. */
    static List<GeodesicPiece> ofEdge(int feature, Coordinate a, Coordinate b, Geodesic geodesic) {
        GeodesicLine line = geodesic.InverseLine(a.y, a.x, b.y, b.x);
        double lengthM = line.Distance();
        int count = (int) Math.ceil(lengthM / LONGEST_M);
        List<GeodesicPiece> pieces = new ArrayList<>(count);
        double lonDeg = a.x;
        double latDeg = a.y;
        double azimuthDeg = line.Azimuth();
        for (int i = 1; i <= count; i++) {
            GeodesicData to = line.Position(lengthM * i / count, GeodesicMask.STANDARD | GeodesicMask.LONG_UNROLL);
            double endLonDeg = to.lon2;
            double endLatDeg = to.lat2;
            if (i == count) {
                // The vertex itself and not its image: the next edge starts there to the last bit.
                endLonDeg = b.x + 360 * Math.rint((endLonDeg - b.x) / 360);
                endLatDeg = b.y;
            }
            pieces.add(new GeodesicPiece(feature, lonDeg, latDeg, endLonDeg, endLatDeg, azimuthDeg, lengthM / count,
                    Vector.of(lonDeg, latDeg, geodesic), Vector.of(endLonDeg, endLatDeg, geodesic)));
            lonDeg = endLonDeg;
            latDeg = endLatDeg;
            azimuthDeg = to.azi2;
        }
        return pieces;
    }

    /** The stretches of a path, longitudes running on; a path without length is a point. */
    static List<GeodesicPiece> ofPath(int feature, Geometry path, Geodesic geodesic) {
        Coordinate[] vertices = path.getCoordinates();
        List<GeodesicPiece> edges = new ArrayList<>();
        double lonDeg = vertices.length == 0 ? Double.NaN : vertices[0].x;
        for (int i = 1; i < vertices.length; i++) {
            Coordinate from = new Coordinate(lonDeg, vertices[i - 1].y);
            edges.addAll(ofEdge(feature, from, vertices[i], geodesic));
            lonDeg = edges.isEmpty() ? lonDeg : edges.get(edges.size() - 1).endLongitudeDeg();
        }
        if (edges.isEmpty() && vertices.length > 0) {
            edges.add(point(feature, vertices[0], geodesic));
        }
        return edges;
    }

    /** How far the stretch can be from its chord: no geodesic bends more than a meridian does at the equator. */
    double sagM(Geodesic geodesic) {
        double f = geodesic.Flattening();
        double sharpestM = geodesic.EquatorialRadius() * Math.min(1, (1 - f) * (1 - f));
        // s² / 8R, and a hundredth more for what that leaves out.
        return 1.01 * lengthM * lengthM / (8 * sharpestM);
    }

    /** The share of the chord, 0..1, that is nearest to a place. */
    private double shareNearest(Vector place) {
        Vector chord = end.minus(start);
        double square = chord.dot(chord);
        return square == 0 ? 0 : Math.max(0, Math.min(1, place.minus(start).dot(chord) / square));
    }

    /** No geodesic from the place to the stretch is shorter than this. */
    double atLeastM(Vector place, Geodesic geodesic) {
        Vector onChord = start.plus(end.minus(start).times(shareNearest(place)));
        return place.minus(onChord).length() - sagM(geodesic);
    }

    /**
     * The nearest point of the stretch, found by stepping along it until the geodesic to the place stands
     * across. From the far side of the Earth the steps need not come to rest; then it is the nearest point met.
     */
    Foot foot(double lonDeg, double latDeg, Vector place, Geodesic geodesic) {
        GeodesicLine line = geodesic.Line(latitudeDeg, longitudeDeg, azimuthDeg);
        double alongM = lengthM * shareNearest(place);
        Foot nearest = null;
        for (int i = 0; i < MAX_STEPS; i++) {
            GeodesicData at = line.Position(alongM);
            GeodesicData ray = geodesic.Inverse(at.lat2, at.lon2, latDeg, lonDeg);
            // Right triangle on a sphere: tan(step) = cos(angle) tan(ray).
            double arc = Math.toRadians(ray.a12);
            double angle = Math.toRadians(ray.azi1 - at.azi2);
            double stepM = geodesic.EquatorialRadius() * Math.atan2(Math.sin(arc) * Math.cos(angle), Math.cos(arc));
            double nextM = Math.max(0, Math.min(lengthM, alongM + stepM));
            boolean atRest = Math.abs(nextM - alongM) <= STEP_M;
            if (atRest || nearest == null || ray.s12 < nearest.distanceM) {
                nearest = foot(alongM, at, ray);
            }
            if (atRest) {
                break;
            }
            alongM = nextM;
        }
        return nearest;
    }

    /**
     * How far to the right of the geodesic that the stretch lies on a place is, in metres; to the left
     * below 0. A geodesic is met at most once by another from its own start, so the sign is that of
     * the difference of azimuths there; the size is right near the stretch.
     */
    double rightOfM(double lonDeg, double latDeg, Geodesic geodesic) {
        GeodesicData ray = geodesic.Inverse(latitudeDeg, longitudeDeg, latDeg, lonDeg);
        return ray.s12 * Math.sin(Math.toRadians(ray.azi1 - azimuthDeg));
    }

    /** Whether two stretches cross, each between the other's ends; where they only touch, a foot has length 0. */
    boolean crosses(GeodesicPiece other, Geodesic geodesic) {
        return other.partsEndsOf(this, geodesic) && partsEndsOf(other, geodesic);
    }

    private boolean partsEndsOf(GeodesicPiece other, Geodesic geodesic) {
        return lengthM > 0 && other.lengthM > 0
                && rightOfM(other.longitudeDeg, other.latitudeDeg, geodesic)
                * rightOfM(other.endLongitudeDeg, other.endLatitudeDeg, geodesic) < 0;
    }

    /** Where a stretch that this one {@link #crosses} is met: found by halving, to a micrometre. */
    Coordinate crossing(GeodesicPiece other, Geodesic geodesic) {
        GeodesicLine line = geodesic.Line(latitudeDeg, longitudeDeg, azimuthDeg);
        boolean startsRight = other.rightOfM(longitudeDeg, latitudeDeg, geodesic) > 0;
        double beforeM = 0;
        double behindM = lengthM;
        while (behindM - beforeM > 1e-6) {
            double middleM = (beforeM + behindM) / 2;
            GeodesicData at = line.Position(middleM);
            if (other.rightOfM(at.lon2, at.lat2, geodesic) > 0 == startsRight) {
                beforeM = middleM;
            } else {
                behindM = middleM;
            }
        }
        GeodesicData at = line.Position(beforeM);
        return new Coordinate(at.lon2, at.lat2);
    }

    /** A sphere that holds the stretch: its middle … */
    Vector middle() {
        return start.plus(end).times(0.5);
    }

    /** … and its radius in metres. */
    double radiusM(Geodesic geodesic) {
        return end.minus(start).length() / 2 + sagM(geodesic);
    }

    /** A vertex is named by its own coordinates, to the last bit. */
    private Foot foot(double alongM, GeodesicData at, GeodesicData ray) {
        double towardsDeg = ray.azi2 + 180;
        if (alongM == 0) {
            return new Foot(ray.s12, towardsDeg, longitudeDeg, latitudeDeg);
        }
        return alongM == lengthM ? new Foot(ray.s12, towardsDeg, endLongitudeDeg, endLatitudeDeg)
                : new Foot(ray.s12, towardsDeg, at.lon2, at.lat2);
    }
}
