package org.seacairn.cli;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicLine;

/** An edge between two positions on WGS 84, as a function from 0 (its start) to 1 (its end) to longitude and latitude. */
interface PlainPath {
    /** Longitude and latitude in degrees at a share of the way. */
    double[] at(double share);

    static PlainPath point(double[] lonLat) {
        return share -> lonLat;
    }

    static PlainPath geodesic(double[] a, double[] b) {
        GeodesicLine line = Geodesic.WGS84.InverseLine(a[1], a[0], b[1], b[0]);
        return share -> {
            GeodesicData at = line.Position(line.Distance() * share);
            return new double[] {at.lon2, at.lat2};
        };
    }

    /** Constant azimuth, the shorter way round: a straight line in longitude and isometric latitude. */
    static PlainPath rhumbLine(double[] a, double[] b) {
        double from = isometric(a[1]);
        double step = isometric(b[1]) - from;
        double turn = Math.IEEEremainder(b[0] - a[0], 360);
        return share -> new double[] {a[0] + share * turn, latitude(from + share * step)};
    }

    /**
     * Isometric latitude of WGS 84 in radians. Snyder (1987), Map Projections: A Working Manual, USGS Professional
     * Paper 1395, eq. 3-7.
     */
    static double isometric(double latDeg) {
        double sin = Math.sin(Math.toRadians(latDeg));
        double e = eccentricity();
        return atanh(sin) - e * atanh(e * sin);
    }

    private static double latitude(double isometric) {
        double e = eccentricity();
        double sin = Math.tanh(isometric);
        double former;
        int steps = 0;
        do {
            former = sin;
            sin = Math.tanh(isometric + e * atanh(e * sin));
        } while (Math.abs(sin - former) > 1e-17 && ++steps < 12);
        // The arc sine loses digits toward the poles, where 1 - sin is small; the tangent keeps them.
        double argument = isometric + e * atanh(e * sin);
        return Math.toDegrees(Math.atan(Math.sinh(argument)));
    }

    private static double eccentricity() {
        double f = Geodesic.WGS84.Flattening();
        return Math.sqrt(f * (2 - f));
    }

    private static double atanh(double x) {
        return 0.5 * (Math.log1p(x) - Math.log1p(-x));
    }
}
