package org.seacairn.geodesy;

import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicMask;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/** Geodesic distances by plain search with GeographicLib alone: the judge of the fast ones. */
public final class PlainGeodesic {
    private static final Geodesic WGS84 = Geodesic.WGS84;

    private PlainGeodesic() {}

    /** A point some metres east and north of a place, by GeographicLib. */
    public static Coordinate place(double lon, double lat, double eastM, double northM) {
        GeodesicData end = WGS84.Direct(lat, lon, Math.toDegrees(Math.atan2(eastM, northM)), Math.hypot(eastM, northM));
        return new Coordinate(end.lon2, end.lat2);
    }

    /**
     * Least geodesic distance from a point to geometries, by plain search: each edge is sampled along its
     * geodesic, then the best stretch is narrowed by golden section. GeographicLib alone is the judge.
     */
    public static double distance(Coordinate p, List<Geometry> sources) {
        double least = Double.POSITIVE_INFINITY;
        for (Geometry source : sources) {
            for (int g = 0; g < source.getNumGeometries(); g++) {
                Coordinate[] c = source.getGeometryN(g).getCoordinates();
                least = Math.min(least, between(p, c[0]));
                for (int i = 1; i < c.length; i++) {
                    GeodesicData edge = WGS84.Inverse(c[i - 1].y, c[i - 1].x, c[i].y, c[i].x);
                    int steps = 20;
                    int best = 0;
                    double bestM = Double.POSITIVE_INFINITY;
                    for (int k = 0; k <= steps; k++) {
                        double m = along(p, c[i - 1], edge, edge.s12 * k / steps);
                        best = m < bestM ? k : best;
                        bestM = Math.min(bestM, m);
                    }
                    double low = edge.s12 * Math.max(0, best - 1) / steps;
                    double high = edge.s12 * Math.min(steps, best + 1) / steps;
                    for (int k = 0; k < 60; k++) {
                        double a = high - 0.618034 * (high - low);
                        double b = low + 0.618034 * (high - low);
                        if (along(p, c[i - 1], edge, a) < along(p, c[i - 1], edge, b)) {
                            high = b;
                        } else {
                            low = a;
                        }
                    }
                    least = Math.min(least, along(p, c[i - 1], edge, (low + high) / 2));
                }
            }
        }
        return least;
    }

    private static double along(Coordinate p, Coordinate start, GeodesicData edge, double m) {
        GeodesicData q = WGS84.Direct(start.y, start.x, edge.azi1, m);
        return between(p, new Coordinate(q.lon2, q.lat2));
    }

    private static double between(Coordinate a, Coordinate b) {
        return WGS84.Inverse(a.y, a.x, b.y, b.x, GeodesicMask.DISTANCE).s12;
    }
}
