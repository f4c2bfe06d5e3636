package org.seacairn.geodesy;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.seacairn.InputException;

class RhumbEdgesTest {
    private static final Geodesic WGS84 = Geodesic.WGS84;
    private static final double E2 = WGS84.Flattening() * (2 - WGS84.Flattening());

    private static Geometry wkt(String text) {
        try {
            return new WKTReader().read(text);
        } catch (ParseException e) {
            throw new IllegalArgumentException(text, e);
        }
    }

    private static Geometry densified(String text) {
        return RhumbEdges.densify(wkt(text), WGS84);
    }

    private static Coordinate[] edge(double lat1, double lon1, double lat2, double lon2) {
        Coordinate[] ends = {new Coordinate(lon1, lat1), new Coordinate(lon2, lat2)};
        return RhumbEdges.densify(new GeometryFactory().createLineString(ends), WGS84).getCoordinates();
    }

    private static GeodesicData inverse(Coordinate a, Coordinate b) {
        return WGS84.Inverse(a.y, a.x, b.y, b.x);
    }

    /**
     * Output of GeographicLib's RhumbSolve as mrJean1/PyGeodesy quotes it (pygeodesy/rhumbaux.py, MIT licence): JFK to
     * London, and the same the other way, JFK to Tokyo (over the antimeridian), and from JFK at 51 degrees over 5500 km. JFK to
     * Singapore is the example of RhumbSolve's manual page, its digits from another public test that quotes it.
     */
    @ParameterizedTest
    @CsvSource({
        "40.6, -73.8, 51.6, -0.5, 77.7683897102557, 5771083.38332803",
        "51.6, -0.5, 40.6, -73.8, -102.2316102897443, 5771083.38332803",
        "40.6, -73.8, 35.8, 140.3, -92.38888798169965, 12782581.06768417",
        "40.6397222222222, -73.7788888888889, 1.3591666666667, 103.9894444444444, 103.582833003411, 18523563.04237743",
        "40.6, -73.8, 71.688899882813, 0.2555198244234, 51, 5500000",
    })
    void lengthAndCourseAreThoseOfRhumbSolve(double lat1, double lon1, double lat2, double lon2, double courseDeg, double lengthM) {
        Coordinate[] path = edge(lat1, lon1, lat2, lon2);
        double sumM = 0;
        for (int i = 1; i < path.length; i++) {
            GeodesicData piece = inverse(path[i - 1], path[i]);
            sumM += piece.s12;
            // A geodesic's course in its middle is that of the rhumb line between its ends, but for terms of the third order.
            assertEquals(courseDeg, (piece.azi1 + piece.azi2) / 2, 1e-6);
        }
        assertEquals(lengthM, sumM, 1e-3);
    }

    @Test
    void fiftyMilesAlongAParallelPassNinetySevenMetresFromTheGeodesic() {
        double halfDeg = WGS84.Direct(30, 0, 90, 46_300).lon2;
        Coordinate[] path = edge(30, -halfDeg, 30, halfDeg);
        GeodesicData whole = WGS84.Inverse(30, -halfDeg, 30, halfDeg);
        GeodesicData top = WGS84.Direct(30, -halfDeg, whole.azi1, whole.s12 / 2);
        // L^2 tan(lat) / 8N: 92,600 m, N = 6,383,481 m at 30 degrees; the arc itself is 0.01 m off that.
        assertEquals(96.94, WGS84.Inverse(30, 0, top.lat2, 0).s12, 0.02);
        for (Coordinate c : path) {
            assertEquals(30, c.y);
        }
    }

    /** How far along its longitudes a rhumb line is at a latitude: a plain sum of M / (N cos) over the meridian. */
    private static double plainEastShare(double fromDeg, double toDeg, double atDeg, int steps) {
        return plainRise(fromDeg, atDeg, steps) / plainRise(fromDeg, toDeg, steps);
    }

    private static double plainRise(double fromDeg, double toDeg, int steps) {
        double sum = 0;
        for (int i = 0; i <= steps; i++) {
            double lat = Math.toRadians(fromDeg + (toDeg - fromDeg) * i / steps);
            double perRadian = (1 - E2) / ((1 - E2 * Math.sin(lat) * Math.sin(lat)) * Math.cos(lat));
            sum += perRadian * (i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2);
        }
        return sum * (toDeg - fromDeg) / (3 * steps);
    }

    private record Ends(double lat1, double lon1, double lat2, double lon2) {
        /** All over the world, near and far, some along parallels, some but a hair off them. */
        static Ends random(Random random) {
            double lat1 = random.nextDouble() * 160 - 80;
            double lon1 = random.nextDouble() * 360 - 180;
            double spanDeg = Math.pow(10, random.nextDouble() * 3 - 2);
            double rise = switch (random.nextInt(4)) {
                case 0 -> 0;
                case 1 -> Math.pow(10, -random.nextInt(13));
                default -> (random.nextDouble() - 0.5) * 2 * spanDeg;
            };
            double lat2 = Math.max(-80, Math.min(80, lat1 + rise));
            double lon2 = lon1 + (random.nextDouble() - 0.5) * 2 * spanDeg;
            return new Ends(lat1, lon1, lat2, lon2 > 180 ? lon2 - 360 : lon2 < -180 ? lon2 + 360 : lon2);
        }
    }

    @Test
    void verticesLieWhereAPlainSumPutsThem() {
        Random random = new Random(12);
        for (int trial = 0; trial < 200; trial++) {
            Ends e = Ends.random(random);
            Coordinate[] path = edge(e.lat1, e.lon1, e.lat2, e.lon2);
            double eastDeg = path[path.length - 1].x - path[0].x;
            assertTrue(Math.abs(eastDeg) <= 180, e.toString());
            for (int i = 1; i < path.length - 1; i += 1 + path.length / 7) {
                double share = e.lat1 == e.lat2 ? (double) i / (path.length - 1) : plainEastShare(e.lat1, e.lat2, path[i].y, 2000);
                double offM = Math.toRadians(path[i].x - (e.lon1 + eastDeg * share)) * Math.cos(Math.toRadians(path[i].y)) * 6.4e6;
                // Nearly along a parallel the last digit of the latitude is metres of longitude: across the line it is nothing.
                double acrossM = offM * Math.min(1, Math.abs(e.lat2 - e.lat1) / Math.max(1e-12, Math.abs(eastDeg)) * 2);
                assertEquals(0, acrossM, 1e-6, e.toString());
            }
        }
    }

    @Test
    void geodesicsBetweenNeighboursStayWithinHalfAMillimetre() {
        Random random = new Random(34);
        double mostM = 0;
        for (int trial = 0; trial < 300; trial++) {
            Ends e = Ends.random(random);
            Coordinate[] path = edge(e.lat1, e.lon1, e.lat2, e.lon2);
            for (int i = 1; i < path.length; i += 1 + path.length / 20) {
                mostM = Math.max(mostM, arcM(path[i - 1], path[i]));
            }
        }
        assertTrue(mostM <= 5e-4, mostM + " m");
        // Nor are there many more vertices than it takes.
        assertTrue(mostM > 3e-4, mostM + " m");
    }

    /** How far the middle of a rhumb line is from the geodesic between its ends. */
    private static double arcM(Coordinate a, Coordinate b) {
        double middleDeg = (a.y + b.y) / 2;
        double share = a.y == b.y ? 0.5 : plainEastShare(a.y, b.y, middleDeg, 20);
        GeodesicData toMiddle = inverse(a, new Coordinate(a.x + (b.x - a.x) * share, middleDeg));
        return Math.abs(6.38e6 * Math.sin(toMiddle.s12 / 6.38e6)
                * Math.sin(Math.toRadians(toMiddle.azi1 - inverse(a, b).azi1)));
    }

    @Test
    void farFromTheBoxTheArcsGrowByAMillionthOfTheDistance() {
        Envelope box = new Envelope(-80, -79, 29, 30);
        String ocean = "LINESTRING (-160 20, -140 29.5, 20 29.5, 100 -50, 170 -50.5, -170 -49)";
        Coordinate[] path = RhumbEdges.densify(wkt(ocean), WGS84, box).getCoordinates();
        assertTrue(path.length < 4000, path.length + " vertices");
        assertTrue(densified(ocean).getNumPoints() > 100_000);
        int inTheBox = 0;
        for (int i = 1; i < path.length; i += 3) {
            inTheBox += box.contains(path[i]) ? 1 : 0;
            double arcM = arcM(path[i - 1], path[i]);
            assertTrue(arcM <= Math.max(5e-4, 1.25e-6 * toBoxM(path[i - 1], path[i], box)), arcM + " m at " + path[i]);
        }
        assertTrue(inTheBox > 100, inTheBox + " vertices in the box");
    }

    /** To the box from the nearer end of a piece, found along its border and inside it. */
    private static double toBoxM(Coordinate a, Coordinate b, Envelope box) {
        double leastM = Double.POSITIVE_INFINITY;
        for (int i = 0; i < 25; i++) {
            double x = box.getMinX() + box.getWidth() * (i % 5) / 4;
            double y = box.getMinY() + box.getHeight() * (i / 5) / 4;
            leastM = Math.min(leastM, Math.min(WGS84.Inverse(a.y, a.x, y, x).s12, WGS84.Inverse(b.y, b.x, y, x).s12));
        }
        return leastM;
    }

    @Test
    void aSpiralToThePoleTakesShortStepsOnlyWhereItTurns() {
        Coordinate[] path = edge(0, 0, 89.999999, 170);
        assertTrue(path.length > 10_000 && path.length < 200_000, path.length + " vertices");
        for (int i = 1; i < path.length; i += 97) {
            assertTrue(arcM(path[i - 1], path[i]) <= 5e-4, "at " + path[i]);
        }
        assertTrue(inverse(path[0], path[1]).s12 > 100, inverse(path[0], path[1]).toString());
        assertTrue(inverse(path[path.length - 2], path[path.length - 1]).s12 < 1);
    }

    @Test
    void fromAHairOffOnePoleToAHairOffTheOther() {
        assertEquals(2, edge(-89.999999999, 7, 89.999999999, 7).length);
        Coordinate[] path = edge(-89.999999, 0, 89.999999, 20);
        Coordinate middle = Arrays.stream(path).filter(c -> c.y == 0).findAny().orElseThrow();
        // So near a pole the last digit of the latitude is a billionth of the line.
        assertEquals(10, middle.x, 1e-8);
        assertTrue(path.length < 50_000, path.length + " vertices");
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "LINESTRING (-80 -70, -80 70)", "LINESTRING (10 0, 69 0)", "LINESTRING (-80 30, -79.999 30)",
        "LINESTRING (-80 30, -79.9995 30.0005)", "POINT (5 90)", "MULTIPOINT ((180 1), (-180 1))", "LINESTRING (20 50, 20 50)"})
    void noVertexIsAddedWhereNoneIsNeeded(String text) {
        assertArrayEquals(wkt(text).getCoordinates(), densified(text).getCoordinates());
    }

    @Test
    void theEquatorIsKeptRoundTheWorld() {
        Coordinate[] path = edge(0, -100, 0, 79.9);
        assertEquals(5, path.length);
        // The geodesic between ends so far apart leaves the equator for the pole.
        assertTrue(Math.abs(WGS84.Inverse(0, -100, 0, 79.9).azi1 - 90) > 1);
        for (int i = 1; i < path.length; i++) {
            assertEquals(90, inverse(path[i - 1], path[i]).azi1);
        }
    }

    @Test
    void longitudesRunOnOverTheAntimeridian() {
        Coordinate[] path = densified("LINESTRING (179.5 52, -179.5 52.5, -179 52)").getCoordinates();
        assertEquals(179.5, path[0].x);
        assertEquals(181, path[path.length - 1].x);
        for (int i = 1; i < path.length; i++) {
            assertTrue(path[i].x > path[i - 1].x && path[i].x - path[i - 1].x < 0.01, "from " + path[i - 1] + " to " + path[i]);
        }
        // The same edge written past 180 has the same vertices.
        assertArrayEquals(path, densified("LINESTRING (179.5 52, 180.5 52.5, 181 52)").getCoordinates());
    }

    @Test
    void anEdgeIsTheSameBothWays() {
        Random random = new Random(56);
        for (int trial = 0; trial < 50; trial++) {
            Ends e = Ends.random(random);
            Coordinate[] there = edge(e.lat1, e.lon1, e.lat2, e.lon2);
            Coordinate[] back = edge(e.lat2, e.lon2, e.lat1, e.lon1);
            Collections.reverse(Arrays.asList(back));
            assertEquals(there.length, back.length);
            double turnDeg = 360 * Math.rint((there[0].x - back[0].x) / 360);
            for (int i = 0; i < there.length; i++) {
                assertEquals(there[i].y, back[i].y);
                assertEquals(there[i].x, back[i].x + turnDeg, 1e-13);
            }
        }
    }

    @Test
    void verticesRingsAndPartsStay() {
        String text = "GEOMETRYCOLLECTION (MULTIPOLYGON (((-80.123456789 30, -79.1 30.000000001, -79.1 31.3, -80.123456789 30),"
                + " (-79.5 30.2, -79.2 30.2, -79.2 30.5, -79.5 30.2)), ((5 5, 6 5, 6 6, 5 5))), MULTILINESTRING ((1 1, 2 3), (4 60, 5 60, 5 61)), POINT (7 8))";
        Geometry dense = densified(text);
        assertEquals("MultiPolygon", dense.getGeometryN(0).getGeometryType());
        assertEquals("MultiLineString", dense.getGeometryN(1).getGeometryType());
        assertTrue(dense.getGeometryN(0).isValid());
        assertEquals(1, ((Polygon) dense.getGeometryN(0).getGeometryN(0)).getNumInteriorRing());
        List<Coordinate> all = Arrays.asList(dense.getCoordinates());
        int at = -1;
        for (Coordinate vertex : wkt(text).getCoordinates()) {
            // In the order of the file and bit for bit: Coordinate.equals compares so.
            int next = all.subList(at + 1, all.size()).indexOf(vertex);
            assertTrue(next >= 0, vertex + " is gone");
            at += next + 1;
        }
        assertTrue(all.size() > 1000, all.size() + " vertices");
    }

    @Test
    void polesAreRefused() {
        assertEquals("the edge from longitude 10.0, latitude 80.0 to longitude 20.0, latitude 90.0 touches a pole, where a rhumb"
                + " line has no course; end the layer short of the pole, or leave out \"edges: rhumb-line\"",
                assertThrows(InputException.class, () -> densified("LINESTRING (10 80, 20 90)")).getMessage());
        assertThrows(InputException.class, () -> densified("POLYGON ((-180 -90, 180 -90, 180 -60, -180 -60, -180 -90))"));
        assertEquals("a polygon goes around a pole (ring through longitude 0.0, latitude 60.0); cut it along a meridian",
                assertThrows(InputException.class, () -> densified("POLYGON ((0 60, 120 60, -120 60, 0 60))")).getMessage());
        assertEquals("longitude 1.0, latitude 95.0 is no place on Earth; check the CRS that the layer states",
                assertThrows(InputException.class, () -> densified("LINESTRING (0 60, 1 95)")).getMessage());
    }

    @Test
    void onASphereTheShareIsThatOfMercatorsNorthing() {
        Coordinate[] path = RhumbEdges.densify(wkt("LINESTRING (0 0, 30 60)"), new Geodesic(6_371_000, 0)).getCoordinates();
        for (Coordinate c : path) {
            double northing = Math.log(Math.tan(Math.toRadians(45 + c.y / 2)));
            assertEquals(30 * northing / Math.log(Math.tan(Math.toRadians(75))), c.x, 1e-12);
        }
    }
}
