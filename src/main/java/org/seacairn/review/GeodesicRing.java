package org.seacairn.review;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicLine;
import net.sf.geographiclib.GeodesicMask;

/**
 * A ring of geodesic edges, and whether it goes around a place: it does if the meridian northwards from
 * the place crosses it an odd number of times. A geodesic crosses a meridian once at most, and where it
 * does is found on the geodesic itself, so that the answer holds to nanometres from the ring.
 *
 * <p>Longitudes run on along the ring, and the place is looked for at each whole turn within them, so
 * that the antimeridian is nothing special. A ring that goes around a pole encloses the pole nearer
 * to it.
 */
final class GeodesicRing {
    /** How far, in degrees of latitude, a stretch of 10 km may bulge past its ends: 1.1 km, needed 0.1 km at 89 degrees. */
    private static final double BULGE_DEG = 0.01;
    private static final double STRAIGHT_LATITUDE_DEG = 89;
    /** Of longitude: under a micrometre. */
    private static final double MERIDIAN_DEG = 1e-12;
    private static final int MAX_STEPS = 40;

    private final Geodesic geodesic;
    /** By their western end. */
    private final GeodesicPiece[] pieces;
    private final double widestDeg;
    private final double westDeg;
    private final double eastDeg;
    private final double southDeg;
    private final double northDeg;
    private final boolean aroundNorthPole;
    private final boolean withinLatitudes;

    /** @param ring the stretches in the order of the ring, not empty */
    GeodesicRing(List<GeodesicPiece> ring, Geodesic geodesic) {
        this.geodesic = geodesic;
        double netDeg = ring.get(ring.size() - 1).endLongitudeDeg() - ring.get(0).longitudeDeg();
        double sumDeg = ring.stream().mapToDouble(GeodesicPiece::latitudeDeg).sum();
        boolean aroundPole = Math.abs(netDeg) > 180;
        aroundNorthPole = aroundPole && sumDeg > 0;
        pieces = ring.toArray(new GeodesicPiece[0]);
        Arrays.sort(pieces, Comparator.comparingDouble(GeodesicRing::west));
        westDeg = west(pieces[0]);
        eastDeg = ring.stream().mapToDouble(GeodesicRing::east).max().orElseThrow();
        widestDeg = ring.stream().mapToDouble(p -> east(p) - west(p)).max().orElseThrow();
        southDeg = ring.stream().mapToDouble(GeodesicPiece::latitudeDeg).min().orElseThrow() - BULGE_DEG;
        northDeg = ring.stream().mapToDouble(GeodesicPiece::latitudeDeg).max().orElseThrow() + BULGE_DEG;
        withinLatitudes = !aroundPole && Math.max(northDeg, -southDeg) < STRAIGHT_LATITUDE_DEG;
    }

    boolean goesAround(double lonDeg, double latDeg) {
        if (withinLatitudes && (latDeg < southDeg || latDeg > northDeg)) {
            return false;
        }
        boolean odd = aroundNorthPole;
        double first = lonDeg + 360 * Math.ceil((westDeg - lonDeg) / 360);
        for (double meridian = first; meridian < eastDeg; meridian += 360) {
            odd ^= crossesOddly(meridian, latDeg);
        }
        return odd;
    }

    private boolean crossesOddly(double meridianDeg, double latDeg) {
        boolean odd = false;
        for (int i = firstFrom(meridianDeg - widestDeg); i < pieces.length && west(pieces[i]) <= meridianDeg; i++) {
            // Closed in the west and open in the east: a vertex on the meridian counts with one of its edges.
            if (meridianDeg < east(pieces[i])) {
                odd ^= isNorthOf(latDeg, pieces[i], meridianDeg);
            }
        }
        return odd;
    }

    /** The first stretch whose western end is not west of a longitude. */
    private int firstFrom(double longitudeDeg) {
        int low = 0;
        int high = pieces.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (west(pieces[middle]) < longitudeDeg) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private boolean isNorthOf(double latDeg, GeodesicPiece piece, double meridianDeg) {
        double south = Math.min(piece.latitudeDeg(), piece.endLatitudeDeg()) - BULGE_DEG;
        double north = Math.max(piece.latitudeDeg(), piece.endLatitudeDeg()) + BULGE_DEG;
        if (Math.max(north, -south) < STRAIGHT_LATITUDE_DEG && (latDeg < south || latDeg > north)) {
            return latDeg < south;
        }
        return latitudeAt(meridianDeg, piece) > latDeg;
    }

    /** Newton's method on the longitude along the stretch, which grows or falls all the way. */
    private double latitudeAt(double meridianDeg, GeodesicPiece piece) {
        GeodesicLine line = geodesic.Line(piece.latitudeDeg(), piece.longitudeDeg(), piece.azimuthDeg());
        double share = (meridianDeg - piece.longitudeDeg()) / (piece.endLongitudeDeg() - piece.longitudeDeg());
        double alongM = share * piece.lengthM();
        double latDeg = piece.latitudeDeg();
        for (int i = 0; i < MAX_STEPS; i++) {
            GeodesicData at = line.Position(alongM, GeodesicMask.STANDARD | GeodesicMask.LONG_UNROLL);
            latDeg = at.lat2;
            double missingDeg = meridianDeg - at.lon2;
            if (Math.abs(missingDeg) <= MERIDIAN_DEG) {
                break;
            }
            double radiusM = Vector.of(0, latDeg, geodesic).x();
            double stepM = Math.toRadians(missingDeg) * radiusM / Math.sin(Math.toRadians(at.azi2));
            alongM = Math.max(0, Math.min(piece.lengthM(), alongM + stepM));
        }
        return latDeg;
    }

    private static double west(GeodesicPiece piece) {
        return Math.min(piece.longitudeDeg(), piece.endLongitudeDeg());
    }

    private static double east(GeodesicPiece piece) {
        return Math.max(piece.longitudeDeg(), piece.endLongitudeDeg());
    }
}
