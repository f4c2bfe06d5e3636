package org.seacairn.cli;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.seacairn.score.PlainMap;

/**
 * The azimuthal equidistant plane about a scene, metres east and north of its centre, and what school geometry does on
 * it. 250 m of a geodesic that passes within 10 km of the centre are straight here to 0.01 mm.
 *
 * @param centre longitude and latitude
 */
record PlainPlane(double[] centre) {
    double[] of(double[] lonLat) {
        return PlainMap.from(centre, lonLat);
    }

    double[] lonLat(double... xy) {
        GeodesicData at = Geodesic.WGS84.Direct(centre[1], centre[0], Math.toDegrees(Math.atan2(xy[0], xy[1])), Math.hypot(xy[0], xy[1]));
        return new double[] {at.lon2, at.lat2};
    }

    static double lengthM(double[] a, double[] b) {
        return Math.hypot(b[0] - a[0], b[1] - a[1]);
    }

    /** Distance of a place from a segment. */
    static double segmentM(double[] p, double[] a, double[] b) {
        double dx = b[0] - a[0];
        double dy = b[1] - a[1];
        double square = dx * dx + dy * dy;
        double t = square == 0 ? 0 : Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square));
        double ex = a[0] + t * dx - p[0];
        double ey = a[1] + t * dy - p[1];
        return Math.sqrt(ex * ex + ey * ey);
    }

    /** Distance between two segments, 0 where they cross. */
    static double segmentsM(double[] a, double[] b, double[] c, double[] d) {
        double[] share = crossing(a, b, c, d);
        return share != null ? 0 : Math.min(Math.min(segmentM(a, c, d), segmentM(b, c, d)), Math.min(segmentM(c, a, b), segmentM(d, a, b)));
    }

    /** Where along a-b it meets c-d (0 to 1), or null where they do not meet or run side by side. */
    static double[] crossing(double[] a, double[] b, double[] c, double[] d) {
        double rx = b[0] - a[0];
        double ry = b[1] - a[1];
        double sx = d[0] - c[0];
        double sy = d[1] - c[1];
        double cross = rx * sy - ry * sx;
        if (cross == 0) {
            return null;
        }
        double t = ((c[0] - a[0]) * sy - (c[1] - a[1]) * sx) / cross;
        double u = ((c[0] - a[0]) * ry - (c[1] - a[1]) * rx) / cross;
        return t >= 0 && t <= 1 && u >= 0 && u <= 1 ? new double[] {t} : null;
    }
}
