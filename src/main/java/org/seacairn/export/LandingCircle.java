package org.seacairn.export;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicMask;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** The circle about a target that holds 95 % of landings, on the WGS 84 ellipsoid. */
final class LandingCircle {
    /** Between two vertices the polygon lies inside the circle by 0.03 % of the radius. */
    static final int VERTICES = 128;

    private LandingCircle() {}

    /**
     * Every vertex is the radius away from the centre along a geodesic.
     *
     * @return counterclockwise from north; longitudes run on past 180 degrees
     */
    static Polygon around(double longitudeDeg, double latitudeDeg, double radiusM, GeometryFactory factory) {
        Coordinate[] ring = new Coordinate[VERTICES + 1];
        for (int i = 0; i < VERTICES; i++) {
            GeodesicData end = Geodesic.WGS84.Direct(latitudeDeg, longitudeDeg, -360.0 * i / VERTICES, radiusM,
                    GeodesicMask.LATITUDE | GeodesicMask.LONGITUDE | GeodesicMask.LONG_UNROLL);
            ring[i] = new Coordinate(end.lon2, end.lat2);
        }
        ring[VERTICES] = ring[0].copy();
        return factory.createPolygon(ring);
    }
}
