package org.seacairn.geodesy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.PolygonArea;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.seacairn.InputException;

class GeodesicBufferTest {
    private static final Geodesic WGS84 = Geodesic.WGS84;
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double NMI_5 = 9260;

    private static Geometry wkt(String text) {
        try {
            return new WKTReader().read(text);
        } catch (ParseException e) {
            throw new IllegalArgumentException(text, e);
        }
    }

    private static Point point(double lon, double lat) {
        return FACTORY.createPoint(new Coordinate(lon, lat));
    }

    /** Buffers and measures: vertices to a millimetre, edges at their quarters; valid; dissolved. */
    private static Geometry checked(double distanceM, Geometry... sources) {
        Geometry buffer = GeodesicBuffer.of(Arrays.asList(sources), WGS84, distanceM);
        assertTrue(buffer.isValid());
        assertTrue(buffer.getGeometryType().endsWith("Polygon"), buffer.getGeometryType());
        Geometry all = FACTORY.createGeometryCollection(sources);
        double edgeM = Math.min(0.25, 2.5e-3 * distanceM);
        for (Coordinate[] ring : rings(buffer)) {
            for (int i = 1; i < ring.length; i++) {
                // Every vertex, and the inside of every third edge.
                for (int quarter = 0; quarter < (i % 3 == 0 ? 4 : 1); quarter++) {
                    double lon = ring[i - 1].x + quarter / 4.0 * (ring[i].x - ring[i - 1].x);
                    double lat = ring[i - 1].y + quarter / 4.0 * (ring[i].y - ring[i - 1].y);
                    assertEquals(distanceM, PlainDistance.toEdges(all, lon, lat, WGS84), quarter == 0 ? 1e-3 : edgeM,
                            "quarter " + quarter + " of the edge after " + ring[i - 1]);
                }
            }
        }
        return buffer;
    }

    private static List<Coordinate[]> rings(Geometry buffer) {
        List<Coordinate[]> rings = new ArrayList<>();
        for (int i = 0; i < buffer.getNumGeometries(); i++) {
            Polygon polygon = (Polygon) buffer.getGeometryN(i);
            rings.add(polygon.getExteriorRing().getCoordinates());
            for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
                rings.add(polygon.getInteriorRingN(h).getCoordinates());
            }
        }
        return rings;
    }

    private static int holes(Geometry buffer) {
        return rings(buffer).size() - buffer.getNumGeometries();
    }

    private static double areaM2(Geometry buffer) {
        double sum = 0;
        for (int i = 0; i < buffer.getNumGeometries(); i++) {
            Polygon polygon = (Polygon) buffer.getGeometryN(i);
            sum += ringM2(polygon.getExteriorRing().getCoordinates());
            for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
                sum -= ringM2(polygon.getInteriorRingN(h).getCoordinates());
            }
        }
        return sum;
    }

    private static double ringM2(Coordinate[] ring) {
        PolygonArea planimeter = new PolygonArea(WGS84, false);
        for (int i = 1; i < ring.length; i++) {
            planimeter.AddPoint(ring[i].y, ring[i].x);
        }
        return Math.abs(planimeter.Compute(!Orientation.isCCW(ring), false).area);
    }

    @ParameterizedTest
    @CsvSource({
        "-83, 27, 0.5", "-83, 27, 60", "-83, 27, 9260", "0, 0, 9260", "150, -45, 500", "20, 65, 9260", "20, 80, 0.5",
        "20, 80, 9260", "-180, -17, 1852", "180, 51, 9260"})
    void aPointGivesAGeodesicCircle(double lon, double lat, double distanceM) {
        Geometry circle = checked(distanceM, point(lon, lat));
        assertEquals(1, rings(circle).size());
        // On a sphere 2 pi R² (1 - cos(d / R)); the polygon is inscribed and lacks up to a share of 2 tolerances.
        double full = Math.PI * distanceM * distanceM;
        assertEquals(full, areaM2(circle), 2 * Math.min(0.1, distanceM / 1000) / distanceM * full + 1e-3);
    }

    @ParameterizedTest
    @CsvSource({"27, 0.5", "27, 9260", "60, 0.5", "60, 9260", "-33, 926", "79, 9260"})
    void aFiftyMileEdgeIsBufferedAsTheGeodesic(double lat, double distanceM) {
        double lonEast = WGS84.Direct(lat, -83, 90, 92_600).lon2;
        Geometry lane = wkt("LINESTRING (-83 " + lat + ", " + lonEast + " " + lat + ")");
        Geometry buffer = checked(distanceM, lane);
        assertEquals(1, rings(buffer).size());
        double lengthM = WGS84.Inverse(lat, -83, lat, lonEast).s12;
        double full = 2 * distanceM * lengthM + Math.PI * distanceM * distanceM;
        assertEquals(full, areaM2(buffer), 1.5e-3 * full);
    }

    @Test
    void aHoleSmallerThanTheDistanceClosesAndALargerOneShrinks() {
        String shell = "(-83 27, -82.9 27, -82.9 27.1, -83 27.1, -83 27)";
        Geometry polygon = wkt("POLYGON (" + shell + ", (-82.95 27.05, -82.94 27.05, -82.94 27.06, -82.95 27.06, -82.95 27.05))");
        // The hole is 991 m wide.
        assertEquals(1, holes(checked(480, polygon)));
        assertEquals(0, holes(checked(500, polygon)));
    }

    @Test
    void aBufferCoversItsPolygon() {
        Geometry polygon = wkt("POLYGON ((-83 27, -82.5 27.05, -82.6 27.3, -83.1 27.2, -83 27))");
        Geometry buffer = checked(0.5, polygon);
        assertTrue(buffer.covers(GeodesicEdges.densify(polygon, WGS84, 200)));
        assertEquals(1, rings(buffer).size());
    }

    @ParameterizedTest
    @ValueSource(doubles = {-200, -10, -0.1, -0.01, -1e-4, 0, 1e-4, 0.01, 0.1, 10, 200})
    void twoPointsTwoDistancesApartMeetOrDoNot(double gapM) {
        GeodesicData other = WGS84.Direct(56, 3, 33, 2 * 926 + gapM);
        Geometry buffer = checked(926, point(3, 56), point(other.lon2, other.lat2));
        if (Math.abs(gapM) > 0.1) {
            assertEquals(gapM < 0 ? 1 : 2, buffer.getNumGeometries());
        }
    }

    @Test
    void overlappingTouchingAndEqualFeaturesDissolve() {
        Geometry buffer = checked(300,
                wkt("POLYGON ((10 -30, 10.02 -30, 10.02 -29.98, 10 -29.98, 10 -30))"),
                wkt("POLYGON ((10.02 -30, 10.04 -30, 10.04 -29.98, 10.02 -29.98, 10.02 -30))"),
                wkt("POLYGON ((10.01 -30.01, 10.03 -30.01, 10.03 -29.99, 10.01 -29.99, 10.01 -30.01))"),
                wkt("LINESTRING (10 -30, 10.04 -30)"), wkt("LINESTRING (10 -30, 10.04 -30)"),
                wkt("MULTIPOINT ((10.02 -29.98), (10.02 -29.98))"),
                wkt("GEOMETRYCOLLECTION (POINT (10.045 -29.99), LINESTRING (10.03 -29.97, 10.05 -29.99))"));
        assertEquals(1, buffer.getNumGeometries());
    }

    @Test
    void linesAndRingsThatCrossThemselvesAreWhole() {
        // Once lost: a closed line that crosses itself, which JTS buffers as if it were a simple ring.
        checked(60, wkt("LINESTRING (5 50, 5.01 50.01, 5.01 50, 5 50.01, 5 50)"));
        checked(700, wkt("LINESTRING (5 50, 5.01 50.01, 5.01 50, 5 50.01, 5 50)"));
        Geometry bowTie = wkt("POLYGON ((5 50, 5.1 50.1, 5.1 50, 5 50.1, 5 50))");
        Geometry buffer = checked(60, bowTie);
        assertTrue(buffer.covers(point(5.02, 50.05)) && buffer.covers(point(5.08, 50.05)));
        assertFalse(buffer.covers(point(5.05, 50.02)));
    }

    @Test
    void whatIsEnclosedTwiceIsOutside() {
        Geometry coil = wkt("POLYGON ((5 50, 5.1 50, 5.1 50.1, 5 50.1, 5 50, 5.03 50.03, 5.07 50.03, 5.07 50.07,"
                + " 5.03 50.07, 5.03 50.03, 5 50))");
        assertEquals(1, holes(checked(60, coil)));
    }

    @Test
    void aLaneOverTheAntimeridianIsOnePolygonWithLongitudesRunningOn() {
        Geometry lane = wkt("POLYGON ((179.9 -17, -179.9 -17, -179.9 -16.95, 179.9 -16.95, 179.9 -17))");
        Geometry buffer = checked(926, lane, wkt("LINESTRING (-179.95 -16.96, -179.8 -16.94)"), point(179.95, -17.01));
        assertEquals(1, buffer.getNumGeometries());
        Envelope extent = buffer.getEnvelopeInternal();
        assertTrue(extent.getMinX() > -180.2 && extent.getMaxX() < 180.3 && extent.getWidth() < 0.4, extent.toString());
    }

    @Test
    void degenerateLinesAreBufferedAsPoints() {
        Geometry ofPoint = GeodesicBuffer.of(List.of(point(5, 50)), WGS84, 60);
        assertTrue(ofPoint.equalsExact(GeodesicBuffer.of(List.of(wkt("LINESTRING (5 50, 5 50)")), WGS84, 60)));
        assertEquals(ofPoint.getArea(), checked(60, wkt("POLYGON ((5 50, 5 50, 5 50, 5 50))")).getArea(), 1e-15);
    }

    @Test
    void nothingGivesAnEmptyPolygon() {
        assertTrue(GeodesicBuffer.of(List.of(), WGS84, 60).isEmpty());
        assertEquals("Polygon", GeodesicBuffer.of(List.of(wkt("LINESTRING EMPTY")), WGS84, 60).getGeometryType());
    }

    @Test
    void theSameSourcesGiveTheSameBytes() {
        List<Geometry> sources = List.of(wkt("LINESTRING (5 50, 5.1 50.1, 5.2 50)"), point(5.05, 50.02));
        assertEquals(GeodesicBuffer.of(sources, WGS84, 500).toText(), GeodesicBuffer.of(sources, WGS84, 500).toText());
    }

    @Test
    void distancesThatCannotBeDrawnAreRefused() {
        for (double distanceM : new double[] {0, -1, 0.01, 300_000, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(IllegalArgumentException.class, () -> GeodesicBuffer.of(List.of(point(5, 50)), WGS84, distanceM));
        }
    }

    @Test
    void aBufferNearAPoleIsRefused() {
        InputException e = assertThrows(InputException.class, () -> GeodesicBuffer.of(List.of(point(5, -88.95)), WGS84, 9260));
        assertEquals("a buffer of 9260 m reaches latitude 89.0; buffers are drawn up to 89 degrees; cut the layer there",
                e.getMessage());
    }

    @Test
    void anotherEllipsoidIsMeasuredOnItself() {
        Geodesic clarke1866 = new Geodesic(6_378_206.4, 1 / 294.978698214);
        Coordinate vertex = GeodesicBuffer.of(List.of(point(-90, 29)), clarke1866, NMI_5).getCoordinate();
        assertEquals(NMI_5, clarke1866.Inverse(29, -90, vertex.y, vertex.x).s12, 1e-3);
        assertTrue(Math.abs(NMI_5 - WGS84.Inverse(29, -90, vertex.y, vertex.x).s12) > 0.01);
    }

    @Test
    void placesAreInsideExactlyIfTheyAreNearer() {
        Random random = new Random(5);
        for (int scene = 0; scene < 6; scene++) {
            double distanceM = 0.5 * Math.pow(NMI_5 / 0.5, scene / 5.0);
            double lat = 150 * random.nextDouble() - 75;
            double reach = 3 * distanceM / 111_000;
            Geometry[] sources = new Geometry[2];
            for (int i = 0; i < sources.length; i++) {
                Coordinate[] line = new Coordinate[3];
                for (int k = 0; k < line.length; k++) {
                    line[k] = new Coordinate(-83 + reach * random.nextGaussian() / Math.cos(Math.toRadians(lat)),
                            lat + reach * random.nextGaussian());
                }
                sources[i] = FACTORY.createLineString(line);
            }
            Geometry buffer = checked(distanceM, sources);
            Geometry all = FACTORY.createGeometryCollection(sources);
            Envelope around = buffer.getEnvelopeInternal();
            for (int i = 0; i < 100; i++) {
                double lon = around.getMinX() + random.nextDouble() * around.getWidth();
                double at = around.getMinY() + random.nextDouble() * around.getHeight();
                double m = PlainDistance.toEdges(all, lon, at, WGS84);
                if (Math.abs(m - distanceM) > Math.min(0.25, 2.5e-3 * distanceM)) {
                    assertEquals(m < distanceM, buffer.covers(point(lon, at)), "seed 5, scene " + scene + ": " + m + " m");
                }
            }
        }
    }
}
