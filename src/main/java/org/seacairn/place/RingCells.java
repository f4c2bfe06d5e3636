package org.seacairn.place;

import java.util.Arrays;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;

/**
 * The cells that a ring may use, numbered by bearing from north, and which of them stand too near each other.
 *
 * <p>Distances are first taken on the azimuthal equidistant plane about the stone's centre, which makes
 * a length at r metres from there too long by a share of at most about r² / (6R²); where that could decide, by
 * the geodesic. Immutable; safe for several threads at once.
 */
final class RingCells {
    /** Below the smallest radius of curvature of any ellipsoid of the earth. */
    private static final double EARTH_RADIUS_M = 6_330_000;
    /** Scores count in units of this, so that sums are exact in any order. */
    private static final double SCORE_UNIT = 1e-9;

    private final List<RingCell> cells;
    private final Geodesic geodesic;
    private final double apartM;
    private final double[] bearingDeg;
    private final double[] east;
    private final double[] north;
    private final long[] worth;
    private final double surelyNear2;
    private final double surelyApart2;

    RingCells(List<RingCell> unordered, Geodesic geodesic, double apartM) {
        this(unordered, geodesic, apartM, false);
    }

    private RingCells(List<RingCell> unordered, Geodesic geodesic, double apartM, boolean outward) {
        this.cells = unordered.stream().sorted(RingCell.FROM_NORTH).toList();
        this.geodesic = geodesic;
        this.apartM = apartM;
        int n = cells.size();
        this.bearingDeg = new double[n];
        this.east = new double[n];
        this.north = new double[n];
        this.worth = new long[n];
        double furthestM = 0;
        for (int i = 0; i < n; i++) {
            RingCell cell = cells.get(i);
            double azimuth = Math.toRadians(cell.azimuthDeg());
            bearingDeg[i] = cell.bearingDeg();
            east[i] = cell.centreM() * Math.sin(azimuth);
            north[i] = cell.centreM() * Math.cos(azimuth);
            worth[i] = outward ? Math.round(1000 * cell.centreM()) : Math.round(cell.pick().score() / SCORE_UNIT);
            furthestM = Math.max(furthestM, cell.centreM());
        }
        double share = Math.pow(furthestM / EARTH_RADIUS_M, 2) / 2;
        this.surelyNear2 = Math.pow(Math.max(0, apartM * (1 - share) - 1e-6), 2);
        this.surelyApart2 = Math.pow(apartM * (1 + share) + 1e-6, 2);
    }

    /** The same cells, numbered the same, worth the more the further out: where modules find the most room. */
    RingCells outward() {
        return new RingCells(cells, geodesic, apartM, true);
    }

    int size() {
        return cells.size();
    }

    double apartM() {
        return apartM;
    }

    RingCell cell(int i) {
        return cells.get(i);
    }

    double bearingDeg(int i) {
        return bearingDeg[i];
    }

    double east(int i) {
        return east[i];
    }

    double north(int i) {
        return north[i];
    }

    /** The score in units that add without rounding. */
    long worth(int i) {
        return worth[i];
    }

    /** A sum of worths as a sum of scores. */
    static double score(long worth) {
        return worth * SCORE_UNIT;
    }

    /** Degrees from one cell clockwise to another that follows it before north, or over north where it comes before. */
    double stepDeg(int from, int to) {
        double step = bearingDeg[to] - bearingDeg[from];
        return to > from ? step : step + 360;
    }

    boolean tooNear(int i, int j) {
        double square = planeSquare(i, j);
        return square < surelyApart2 && (square < surelyNear2 || metres(i, j) < apartM);
    }

    /** The worth of a path's cells. */
    RingPath path(int[] path) {
        return new RingPath(Arrays.stream(path).mapToLong(i -> worth[i]).sum(), path);
    }

    /** Squared distance on the plane, for comparing. */
    double planeSquare(int i, int j) {
        double e = east[i] - east[j];
        double n = north[i] - north[j];
        return e * e + n * n;
    }

    /** Ground distance by geodesic. */
    double metres(int i, int j) {
        Pick a = cells.get(i).pick();
        Pick b = cells.get(j).pick();
        return geodesic.Inverse(a.latitudeDeg(), a.longitudeDeg(), b.latitudeDeg(), b.longitudeDeg(), GeodesicMask.DISTANCE).s12;
    }
}
