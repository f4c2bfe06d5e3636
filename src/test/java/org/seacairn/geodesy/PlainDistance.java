package org.seacairn.geodesy;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicLine;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryComponentFilter;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;

/**
 * Geodesic distance from a place to points and edges by walking along every edge in small steps and
 * closing in on the best one: slow, without an index, a formula for the foot or a projection. For tests.
 */
public final class PlainDistance {
    private static final int STEPS = 16;

    private final Geodesic geodesic;
    private final double lonDeg;
    private final double latDeg;
    private double least = Double.POSITIVE_INFINITY;

    private PlainDistance(Geodesic geodesic, double lonDeg, double latDeg) {
        this.geodesic = geodesic;
        this.lonDeg = lonDeg;
        this.latDeg = latDeg;
    }

    /** Distance in metres to points, lines and the rings of polygons; it is not 0 inside a polygon. */
    public static double toEdges(Geometry geometry, double lonDeg, double latDeg, Geodesic geodesic) {
        PlainDistance plain = new PlainDistance(geodesic, lonDeg, latDeg);
        geometry.apply((GeometryComponentFilter) part -> {
            if (part instanceof Point || part instanceof LineString) {
                plain.path(part.getCoordinates());
            }
        });
        return plain.least;
    }

    private void path(Coordinate[] vertices) {
        for (int i = 0; i < vertices.length; i++) {
            keep(vertices[i].y, vertices[i].x);
            if (i > 0) {
                edge(vertices[i - 1], vertices[i]);
            }
        }
    }

    private void edge(Coordinate a, Coordinate b) {
        GeodesicLine line = geodesic.InverseLine(a.y, a.x, b.y, b.x);
        double step = line.Distance() / STEPS;
        int best = 0;
        double bestM = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= STEPS; i++) {
            double m = keep(line, step * i);
            if (m < bestM) {
                bestM = m;
                best = i;
            }
        }
        if (bestM - step > least) {
            return;
        }
        double low = Math.max(0, best - 1) * step;
        double high = Math.min(STEPS, best + 1) * step;
        // Off by a centimetre along the edge, a place half a metre away is off by a tenth of a millimetre.
        while (high - low > 0.01) {
            double third = (high - low) / 3;
            if (keep(line, low + third) < keep(line, high - third)) {
                high -= third;
            } else {
                low += third;
            }
        }
    }

    private double keep(GeodesicLine line, double alongM) {
        GeodesicData at = line.Position(alongM);
        return keep(at.lat2, at.lon2);
    }

    private double keep(double footLatDeg, double footLonDeg) {
        double m = geodesic.Inverse(latDeg, lonDeg, footLatDeg, footLonDeg).s12;
        least = Math.min(least, m);
        return m;
    }
}
