package org.seacairn.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.seacairn.InputException;
import org.seacairn.geodesy.PlainDistance;
import org.seacairn.layer.Feature;
import org.seacairn.review.EllipsoidalDistance.Nearest;

class EllipsoidalDistanceTest {
    private static final Geodesic WGS84 = Geodesic.WGS84;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private static Geometry wkt(String text) {
        try {
            return new WKTReader().read(text);
        } catch (ParseException e) {
            throw new IllegalArgumentException(text, e);
        }
    }

    private static List<Feature> features(Geometry... geometries) {
        List<Feature> features = new ArrayList<>();
        for (Geometry geometry : geometries) {
            features.add(new Feature(features.size() + 1, geometry, Map.of()));
        }
        return features;
    }

    private static EllipsoidalDistance distanceTo(String... texts) {
        return EllipsoidalDistance.of(
                features(Arrays.stream(texts).map(EllipsoidalDistanceTest::wkt).toArray(Geometry[]::new)), WGS84);
    }

    private static double degrees(String text) {
        String[] dms = text.trim().split("[ ]+");
        double size = Math.abs(Double.parseDouble(dms[0]))
                + (dms.length > 1 ? Double.parseDouble(dms[1]) / 60 + Double.parseDouble(dms[2]) / 3600 : 0);
        return dms[0].startsWith("-") ? -size : size;
    }

    @ParameterizedTest
    @CsvSource({
        // T. Vincenty, Survey Review XXIII 176 (1975), table II: (a) Bessel 1841, (b) to (e) International 1924.
        "6377397.155, 299.1528128, 55 45 0, 0, -33 26 0, 108 13 0, 14110526.170, 96 36 8.79960",
        "6378388, 297, 37 19 54.95367, 0, 26 7 42.83946, 41 28 35.50729, 4085966.703, 95 27 59.63089",
        "6378388, 297, 35 16 11.24862, 0, 67 22 14.77638, 137 47 28.31435, 8084823.839, 15 44 23.74850",
        "6378388, 297, 1 0 0, 0, -0 59 53.83076, 179 17 48.02997, 19960000.000, 89 0 0",
        "6378388, 297, 1 0 0, 0, 1 1 15.18952, 179 46 17.84244, 19780006.558, 4 59 59.99995",
        // Flinders Peak to Buninyong, GRS80: Geocentric Datum of Australia, technical manual.
        "6378137, 298.257222101, -37 57 3.72030, 144 25 29.52440, -37 39 10.15610, 143 55 35.38390, 54972.271, 306 52 5.37",
        // Helsinki to Tallinn, GRS80: PROJ, tutorial on geodesics; azimuth -172.370214337896.
        "6378137, 298.257222101, 60.171, 24.938, 59.437, 24.745, 82488.500, 187.629785662104",
        // Land's End to John o'Groats, and the GeodSolve examples of GeographicLib, WGS 84.
        "6378137, 298.257223563, 50.06632, -5.71475, 58.64402, -3.07009, 969954.166, 9.1419",
        "6378137, 298.257223563, 40.6, -73.8, 49.01666667, 2.55, 5853226, 53.47022",
        "6378137, 298.257223563, 36.493349428792, 0, 36.49334942879201, 0.0000008, 0.072, NaN",
    })
    void linesOfTheLiteratureComeOut(
            double a, double inverseF, String lat1, String lon1, String lat2, String lon2, double m, String azimuth) {
        Geodesic ellipsoid = new Geodesic(a, 1 / inverseF);
        Geometry to = FACTORY.createPoint(new Coordinate(degrees(lon2), degrees(lat2)));
        Nearest nearest = EllipsoidalDistance.of(features(to), ellipsoid).nearest(degrees(lon1), degrees(lat1));
        assertEquals(m, nearest.distanceM(), m == 5853226 ? 0.5 : 1e-3);
        if (!azimuth.equals("NaN")) {
            assertEquals(degrees(azimuth), nearest.azimuthDeg(), azimuth.contains(" ") ? 3e-6 : 5e-5);
        }
        assertEquals(degrees(lat2), nearest.latitudeDeg(), 1e-12);
        assertEquals(degrees(lon2), nearest.longitudeDeg(), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"-86.980900578, 29.499998629, 1852, 90", "-87, 29.516708136, 1852, 0", "-86.996353738, 29.503189596, 500, 45"})
    void shortLinesOfThePlanningAreaComeOut(double lon, double lat, double m, double azimuth) {
        // From 29.5 N, 87 W; made with Karney's own program, nine decimals.
        Nearest nearest = distanceTo("POINT (" + lon + " " + lat + ")").nearest(-87, 29.5);
        assertEquals(m, nearest.distanceM(), 1e-4);
        assertEquals(azimuth, nearest.azimuthDeg(), 1e-4);
    }

    @ParameterizedTest
    @CsvSource({
        "27, 90, 0.5", "27, 90, 500", "27, 45, 99000", "-33, 10, 0.5", "-33, 100, 926", "65, 80, 0.5", "65, 90, 60000",
        "80, 90, 9260", "0, 90, 1000", "51, 0, 9260"})
    void theFootOfAPerpendicularOnAFiftyMileEdgeIsFound(double lat, double azimuthDeg, double offM) {
        GeodesicLine edge = WGS84.DirectLine(lat, 179.8, azimuthDeg, 50 * 1852);
        GeodesicData end = edge.Position(50 * 1852);
        EllipsoidalDistance lane = distanceTo("LINESTRING (179.8 " + lat + ", " + end.lon2 + " " + end.lat2 + ")");
        for (double along : new double[] {0.1, 9_999.5, 33_333, 46_300, 92_599.9}) {
            GeodesicData foot = edge.Position(along);
            GeodesicData place = WGS84.Direct(foot.lat2, foot.lon2, foot.azi2 + 90, offM);
            Nearest nearest = lane.nearest(place.lon2, place.lat2);
            assertEquals(offM, nearest.distanceM(), 1e-6);
            assertEquals(foot.lat2, nearest.latitudeDeg(), 1e-9);
            assertEquals(0, Math.IEEEremainder(foot.lon2 - nearest.longitudeDeg(), 360), 1e-8);
            assertEquals(0, Math.IEEEremainder(place.azi2 + 180 - nearest.azimuthDeg(), 360), 1e-4);
        }
    }

    @Test
    void beyondTheEndsTheVertexIsNearest() {
        EllipsoidalDistance line = distanceTo("LINESTRING (-87 29.5, -86 29.5)");
        GeodesicData beyond = WGS84.Direct(29.5, -87, 300, 5000);
        Nearest nearest = line.nearest(beyond.lon2, beyond.lat2);
        assertEquals(5000, nearest.distanceM(), 1e-7);
        assertEquals(-87, nearest.longitudeDeg(), 0);
        assertEquals(29.5, nearest.latitudeDeg(), 0);
    }

    @Test
    void aPlaceOnAVertexOrAnEdgeIsAtNoDistance() {
        EllipsoidalDistance line = distanceTo("LINESTRING (-87 29.5, -86 30, -86 31)");
        assertEquals(0, line.nearest(-86, 30).distanceM(), 1e-8);
        GeodesicData middle = WGS84.InverseLine(29.5, -87, 30, -86).Position(50_000);
        assertEquals(0, line.nearest(middle.lon2, middle.lat2).distanceM(), 1e-7);
    }

    @Test
    void insideAPolygonTheDistanceIsZeroAndInItsHoleItIsToTheHole() {
        EllipsoidalDistance polygon = distanceTo("POLYGON ((-87 29.5, -86.8 29.5, -86.8 29.7, -87 29.7, -87 29.5),"
                + " (-86.95 29.55, -86.85 29.55, -86.85 29.65, -86.95 29.65, -86.95 29.55))");
        Nearest inside = polygon.nearest(-86.97, 29.52);
        assertEquals(0, inside.distanceM());
        assertTrue(Double.isNaN(inside.azimuthDeg()));
        assertEquals(-86.97, inside.longitudeDeg(), 1e-13);
        assertEquals(29.52, inside.latitudeDeg());
        Nearest inHole = polygon.nearest(-86.94, 29.6);
        assertEquals(270, inHole.azimuthDeg(), 0.01);
        assertEquals(WGS84.Inverse(29.6, -86.94, 29.6, -86.95).s12, inHole.distanceM(), 1e-3);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 27, 65, 79.9, -45})
    void aMillimetreTellsInsideFromOutside(double lat) {
        Coordinate[] ring = {new Coordinate(179.5, lat), new Coordinate(-179.2, lat + 0.01), new Coordinate(-179.3, lat + 0.3),
            new Coordinate(179.4, lat + 0.25), new Coordinate(179.5, lat)};
        EllipsoidalDistance polygon = EllipsoidalDistance.of(features(FACTORY.createPolygon(ring)), WGS84);
        for (int i = 1; i < ring.length; i++) {
            GeodesicLine edge = WGS84.InverseLine(ring[i - 1].y, ring[i - 1].x, ring[i].y, ring[i].x);
            for (double share : new double[] {0.001, 0.3, 0.5, 0.77}) {
                GeodesicData at = edge.Position(share * edge.Distance());
                // The ring runs counter-clockwise: inside is to the left.
                GeodesicData inside = WGS84.Direct(at.lat2, at.lon2, at.azi2 - 90, 1e-3);
                GeodesicData outside = WGS84.Direct(at.lat2, at.lon2, at.azi2 + 90, 1e-3);
                assertEquals(0, polygon.nearest(inside.lon2, inside.lat2).distanceM());
                assertEquals(1e-3, polygon.nearest(outside.lon2, outside.lat2).distanceM(), 1e-6);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "POLYGON ((179.9 -17, -179.9 -17, -179.9 -16.9, 179.9 -16.9, 179.9 -17))",
        "POLYGON ((179.9 -17, 180.1 -17, 180.1 -16.9, 179.9 -16.9, 179.9 -17))",
        "POLYGON ((-179.9 -16.9, 179.9 -16.9, 179.9 -17, -179.9 -17, -179.9 -16.9))",
        "MULTIPOLYGON (((179.9 -17, 180 -17, 180 -16.9, 179.9 -16.9, 179.9 -17)),"
                + " ((-180 -17, -179.9 -17, -179.9 -16.9, -180 -16.9, -180 -17)))"})
    void aLaneOverTheAntimeridianHoldsWhatIsInIt(String text) {
        EllipsoidalDistance lane = distanceTo(text);
        for (double lon : new double[] {179.91, 180, -180, -179.91, 180.05, -180.05, 539.95}) {
            assertEquals(0, lane.nearest(lon, -16.95).distanceM(), "longitude " + lon);
        }
        assertEquals(WGS84.Inverse(-16.95, -179.89, -16.95, -179.9).s12, lane.nearest(-179.89, -16.95).distanceM(), 1e-3);
        assertEquals(WGS84.Inverse(-16.95, 179.88, -16.95, 179.9).s12, lane.nearest(179.88, -16.95).distanceM(), 1e-3);
        assertEquals(-179.9, lane.nearest(-179.89, -16.95).longitudeDeg(), 1e-6);
    }

    @Test
    void aRingAroundAPoleHoldsThePole() {
        // GeographicLib, geodtest.c, Planimeter0: the edges pass 0.293 degrees north of their vertices.
        EllipsoidalDistance cap = distanceTo("POLYGON ((0 89, 90 89, 180 89, 270 89, 0 89))");
        assertEquals(0, cap.nearest(45, 89.4).distanceM());
        assertEquals(0, cap.nearest(12, 90).distanceM());
        assertTrue(cap.nearest(45, 89.2).distanceM() > 10_000);
        EllipsoidalDistance south = distanceTo("POLYGON ((0 -70, 120 -70, -120 -70, 0 -70))");
        assertEquals(0, south.nearest(45, -89).distanceM());
        assertEquals(0, south.nearest(-175, -85).distanceM());
        assertNotEquals(0, south.nearest(45, -65).distanceM());
        assertNotEquals(0, south.nearest(45, 89).distanceM());
    }

    @Test
    void whatIsEnclosedTwiceIsOutside() {
        EllipsoidalDistance bowTie = distanceTo("POLYGON ((5 50, 5.1 50.1, 5.1 50, 5 50.1, 5 50))");
        assertEquals(0, bowTie.nearest(5.02, 50.05).distanceM());
        assertEquals(0, bowTie.nearest(5.08, 50.05).distanceM());
        assertNotEquals(0, bowTie.nearest(5.05, 50.02).distanceM());
        EllipsoidalDistance coil = distanceTo("POLYGON ((5 50, 5.1 50, 5.1 50.1, 5 50.1, 5 50, 5.03 50.03, 5.07 50.03,"
                + " 5.07 50.07, 5.03 50.07, 5.03 50.03, 5 50))");
        assertNotEquals(0, coil.nearest(5.05, 50.05).distanceM());
    }

    @Test
    void overlappingPartsOfACollectionDoNotCancel() {
        EllipsoidalDistance both = distanceTo("MULTIPOLYGON (((5 50, 5.1 50, 5.1 50.1, 5 50.1, 5 50)),"
                + " ((5.05 50.05, 5.15 50.05, 5.15 50.15, 5.05 50.15, 5.05 50.05)))");
        assertEquals(0, both.nearest(5.07, 50.07).distanceM());
    }

    @Test
    void theNearestFeatureIsNamed() {
        List<Feature> layer = features(wkt("POINT (5 50)"), wkt("LINESTRING (5.1 49, 5.1 51)"),
                wkt("POLYGON ((6 50, 7 50, 7 51, 6 50))"), wkt("POLYGON ((6 50, 7 50, 7 51, 6 50))"),
                wkt("GEOMETRYCOLLECTION (POINT (4 50), LINESTRING EMPTY)"));
        EllipsoidalDistance distance = EllipsoidalDistance.of(layer, WGS84);
        assertSame(layer.get(0), distance.nearest(5.02, 50).feature());
        assertSame(layer.get(1), distance.nearest(5.08, 50).feature());
        assertSame(layer.get(2), distance.nearest(6.9, 50.5).feature());
        assertSame(layer.get(4), distance.nearest(3.9, 50).feature());
    }

    @Test
    void degenerateLinesAndRingsArePoints() {
        assertEquals(500, distanceTo("LINESTRING (-87 29.5, -87 29.5)").nearest(-86.996353738, 29.503189596).distanceM(), 1e-4);
        assertEquals(500, distanceTo("POLYGON ((-87 29.5, -87 29.5, -87 29.5, -87 29.5))")
                .nearest(-86.996353738, 29.503189596).distanceM(), 1e-4);
    }

    @Test
    void edgesAroundTheEarthAreSafe() {
        EllipsoidalDistance nearlyAntipodal = distanceTo("LINESTRING (0 0, 179.7 0.5)", "LINESTRING (10 0, -170 0)");
        for (double lon = -180; lon <= 180; lon += 30) {
            for (double lat = -90; lat <= 90; lat += 30) {
                double m = nearlyAntipodal.nearest(lon, lat).distanceM();
                assertTrue(m >= 0 && m < 10_010_000, lon + " " + lat + ": " + m);
            }
        }
        assertEquals(20_003_931, distanceTo("POINT (30 -40)").nearest(-150, 40).distanceM(), 1);
    }

    @Test
    void randomScenesAgreeWithPlainWalking() {
        Random random = new Random(2026);
        for (int scene = 0; scene < 40; scene++) {
            double lat = 160 * random.nextDouble() - 80;
            double lon = scene % 3 == 0 ? 180 : 360 * random.nextDouble() - 180;
            double reach = Math.pow(10, -3 + 3 * random.nextDouble());
            Geometry[] lines = new Geometry[5];
            for (int i = 0; i < lines.length; i++) {
                Coordinate[] line = new Coordinate[1 + random.nextInt(6)];
                for (int k = 0; k < line.length; k++) {
                    line[k] = near(lon, lat, reach, random);
                }
                lines[i] = line.length == 1 ? FACTORY.createPoint(line[0]) : FACTORY.createLineString(line);
            }
            Geometry all = FACTORY.createGeometryCollection(lines);
            EllipsoidalDistance distance = EllipsoidalDistance.of(features(lines), WGS84);
            for (int i = 0; i < 5; i++) {
                Coordinate place = near(lon, lat, reach, random);
                Nearest nearest = distance.nearest(place.x, place.y);
                double plainM = PlainDistance.toEdges(all, place.x, place.y, WGS84);
                assertEquals(plainM, nearest.distanceM(), 1e-4, "seed 2026, scene " + scene);
                // What is returned must hang together: going there from the place arrives there.
                GeodesicData there = WGS84.Direct(place.y, place.x, nearest.azimuthDeg(), nearest.distanceM());
                assertEquals(0, WGS84.Inverse(there.lat2, there.lon2, nearest.latitudeDeg(), nearest.longitudeDeg()).s12, 1e-6);
                assertEquals(0, PlainDistance.toEdges(nearest.feature().geometry(),
                        nearest.longitudeDeg(), nearest.latitudeDeg(), WGS84), 0.01);
            }
        }
    }

    private static Coordinate near(double lon, double lat, double reach, Random random) {
        double x = lon + reach * random.nextGaussian() / Math.cos(Math.toRadians(lat));
        return new Coordinate(x - 360 * Math.rint(x / 360), Math.max(-84, Math.min(84, lat + reach * random.nextGaussian())));
    }

    @Test
    void manyEdgesInTheIndexGiveWhatEachAloneGives() {
        Random random = new Random(7);
        List<Feature> many = new ArrayList<>();
        for (int i = 0; i < 2000; i++) {
            Coordinate a = near(-83, 27, 0.5, random);
            Coordinate b = near(a.x, a.y, i % 50 == 0 ? 0.5 : 0.002, random);
            many.add(new Feature(i, FACTORY.createLineString(new Coordinate[] {a, b}), Map.of()));
        }
        EllipsoidalDistance index = EllipsoidalDistance.of(many, WGS84);
        List<EllipsoidalDistance> each = many.stream().map(f -> EllipsoidalDistance.of(List.of(f), WGS84)).toList();
        for (int i = 0; i < 20; i++) {
            Coordinate place = near(-83, 27, i % 5 == 0 ? 3 : 0.5, random);
            double least = each.stream().mapToDouble(d -> d.nearest(place.x, place.y).distanceM()).min().orElseThrow();
            assertEquals(least, index.nearest(place.x, place.y).distanceM(), 1e-6, "seed 7");
        }
    }

    @Test
    void theMirroredSceneGivesTheMirroredAnswer() {
        String north = "LINESTRING (10 65, 11 65.5, 13 65.2)";
        Nearest up = distanceTo(north).nearest(12, 65.9);
        Nearest down = distanceTo(north.replace(" 65", " -65")).nearest(12, -65.9);
        assertEquals(up.distanceM(), down.distanceM(), 1e-7);
        assertEquals(0, Math.IEEEremainder(up.azimuthDeg() - (180 - down.azimuthDeg()), 360), 1e-9);
        assertEquals(up.latitudeDeg(), -down.latitudeDeg(), 1e-12);
    }

    @Test
    void nothingToMeasureToIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> EllipsoidalDistance.of(List.of(), WGS84));
        assertThrows(IllegalArgumentException.class, () -> distanceTo("LINESTRING EMPTY"));
    }

    @Test
    void placesThatAreNoneAreRefused() {
        EllipsoidalDistance distance = distanceTo("POINT (5 50)");
        assertThrows(IllegalArgumentException.class, () -> distance.nearest(Double.NaN, 50));
        assertThrows(IllegalArgumentException.class, () -> distance.nearest(5, 91));
        InputException e = assertThrows(InputException.class, () -> distanceTo("POINT (5 50)", "POINT (350000 3050000)"));
        assertEquals("feature 2: longitude 350000.0, latitude 3050000.0 is no place on Earth;"
                + " check the CRS that the layer states", e.getMessage());
    }
}
