package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.PolygonArea;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

class LandingCircleTest {
    @ParameterizedTest
    @CsvSource({
        "-79.1, 27.2, 30",
        "-79.1, 27.2, 0.5",
        "10, 70, 9260",
        "179.9999, -41, 100",
        "0, 0, 1852",
    })
    void everyVertexIsTheRadiusAwayAndTheRingIsClosed(double lonDeg, double latDeg, double radiusM) {
        Polygon circle = LandingCircle.around(lonDeg, latDeg, radiusM, new GeometryFactory());
        Coordinate[] ring = circle.getExteriorRing().getCoordinates();
        assertEquals(LandingCircle.VERTICES + 1, ring.length);
        assertEquals(ring[0], ring[ring.length - 1]);
        assertTrue(Orientation.isCCW(ring));
        assertTrue(circle.isValid());
        // Across the date line it must not turn into a belt around the world.
        assertTrue(circle.getEnvelopeInternal().getWidth() < 1, circle.getEnvelopeInternal().toString());
        PolygonArea area = new PolygonArea(Geodesic.WGS84, false);
        for (int i = 0; i < LandingCircle.VERTICES; i++) {
            assertEquals(radiusM, Geodesic.WGS84.Inverse(latDeg, lonDeg, ring[i].y, ring[i].x).s12, 1e-6);
            area.AddPoint(ring[i].y, ring[i].x);
        }
        // A regular polygon of n corners has n/2 sin(2 pi/n) of the squared radius; the ellipsoid bends
        // it by less than 1e-6 at 9 km, and the area sum is good to some 1e-5 m2.
        double plane = LandingCircle.VERTICES / 2.0 * Math.sin(2 * Math.PI / LandingCircle.VERTICES) * radiusM * radiusM;
        assertEquals(plane, area.Compute().area, 1e-6 * plane + 1e-5);
    }
}
