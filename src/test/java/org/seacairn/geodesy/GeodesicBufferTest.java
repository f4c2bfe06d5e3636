package org.seacairn.geodesy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.seacairn.geodesy.PlainGeodesic.distance;
import static org.seacairn.geodesy.PlainGeodesic.place;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.PolygonArea;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

class GeodesicBufferTest {
    private static final Geodesic WGS84 = Geodesic.WGS84;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private static List<Geometry> scene(Random random, double lon, double lat, double spanM, int features) {
        List<Geometry> scene = new ArrayList<>();
        for (int i = 0; i < features; i++) {
            double e = spanM * (random.nextDouble() - 0.5);
            double n = spanM * (random.nextDouble() - 0.5);
            double s = spanM / 4 * random.nextDouble();
            switch (random.nextInt(3)) {
                case 0 -> scene.add(FACTORY.createPoint(place(lon, lat, e, n)));
                case 1 -> scene.add(FACTORY.createLineString(new Coordinate[] {
                    place(lon, lat, e, n), place(lon, lat, e + s, n + s / 3), place(lon, lat, e + s / 5, n - s)}));
                default -> {
                    Coordinate first = place(lon, lat, e, n);
                    scene.add(FACTORY.createPolygon(new Coordinate[] {
                        first, place(lon, lat, e + s, n), place(lon, lat, e + s, n + s), place(lon, lat, e, n + s), first}));
                }
            }
        }
        return scene;
    }

    /** 0.5 m to 5 nmi, both hemispheres, to 80 degrees: every vertex within 0.1 m, edges' middles within 0.25 m. */
    @ParameterizedTest
    @CsvSource({"-79.3, 29.5, 0.5, 100", "-79.3, 29.5, 60, 2000", "-79.3, 29.5, 500, 5000", "-79.3, 29.5, 9260, 20000",
        "17.2, -33.9, 500, 3000", "17.2, -33.9, 9260, 40000", "15.0, 69.5, 500, 3000", "15.0, 79.0, 9260, 20000",
        "0.0, 0.0, 1852, 6000"})
    void everyVertexStandsAtTheDistance(double lon, double lat, double distanceM, double spanM) {
        Random random = new Random(Double.hashCode(distanceM + lat));
        for (int run = 0; run < 4; run++) {
            List<Geometry> scene = scene(random, lon, lat, spanM, 1 + random.nextInt(6));
            Geometry buffer = GeodesicBuffer.of(scene, WGS84, distanceM);
            assertTrue(buffer.isValid());
            Coordinate[] vertices = buffer.getCoordinates();
            int step = Math.max(1, vertices.length / 60);
            for (int i = 0; i + 1 < vertices.length; i += step) {
                assertEquals(distanceM, distance(vertices[i], scene), 0.1, "run " + run + ", vertex " + i);
            }
            for (int g = 0; g < buffer.getNumGeometries(); g++) {
                Coordinate[] ring = ((Polygon) buffer.getGeometryN(g)).getExteriorRing().getCoordinates();
                for (int i = 0; i + 1 < ring.length; i += step) {
                    Coordinate middle = new Coordinate((ring[i].x + ring[i + 1].x) / 2, (ring[i].y + ring[i + 1].y) / 2);
                    assertEquals(distanceM, distance(middle, scene), Math.min(0.25, Math.max(0.01, distanceM / 500)),
                            "run " + run + ", middle " + i);
                }
            }
        }
    }

    /** The area of a geodesic circle of radius r on a sphere of this size is pi r squared to 1e-7 at 500 m. */
    @Test
    void circleHasTheAreaOfACircle() {
        Geometry circle = GeodesicBuffer.of(List.of(FACTORY.createPoint(new Coordinate(-79.3, 29.5))), WGS84, 500);
        PolygonArea area = new PolygonArea(WGS84, false);
        Coordinate[] ring = circle.getCoordinates();
        for (int i = 0; i + 1 < ring.length; i++) {
            area.AddPoint(ring[i].y, ring[i].x);
        }
        assertEquals(Math.PI * 500 * 500, Math.abs(area.Compute().area), 0.002 * Math.PI * 500 * 500);
    }

    @Test
    void overlappingBuffersAreOneAndFarOnesTwo() {
        Geometry near = GeodesicBuffer.of(List.of(FACTORY.createPoint(place(-79.3, 29.5, 0, 0)),
                FACTORY.createPoint(place(-79.3, 29.5, 900, 0))), WGS84, 500);
        Geometry far = GeodesicBuffer.of(List.of(FACTORY.createPoint(place(-79.3, 29.5, 0, 0)),
                FACTORY.createPoint(place(-79.3, 29.5, 1100, 0))), WGS84, 500);
        assertEquals(1, near.getNumGeometries());
        assertEquals(2, far.getNumGeometries());
    }

    @Test
    void insideOfAPolygonBelongsToItsBuffer() {
        Coordinate a = place(10, 50, 0, 0);
        Geometry square = FACTORY.createPolygon(new Coordinate[] {
            a, place(10, 50, 3000, 0), place(10, 50, 3000, 3000), place(10, 50, 0, 3000), a});
        Geometry buffer = GeodesicBuffer.of(List.of(square), WGS84, 100);
        assertTrue(buffer.contains(FACTORY.createPoint(place(10, 50, 1500, 1500))));
        assertTrue(buffer.contains(FACTORY.createPoint(place(10, 50, -95, 1500))));
        assertFalse(buffer.contains(FACTORY.createPoint(place(10, 50, -105, 1500))));
        assertEquals(0, ((Polygon) buffer).getNumInteriorRing());
    }

    @Test
    void nothingGivesAnEmptyPolygon() {
        assertTrue(GeodesicBuffer.of(List.of(), WGS84, 10).isEmpty());
    }
}
