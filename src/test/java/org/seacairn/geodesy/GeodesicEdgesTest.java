package org.seacairn.geodesy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicLine;
import net.sf.geographiclib.PolygonArea;
import net.sf.geographiclib.PolygonResult;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.seacairn.InputException;

class GeodesicEdgesTest {
    private static final Geodesic WGS84 = Geodesic.WGS84;

    private static Geometry wkt(String text) {
        try {
            return new WKTReader().read(text);
        } catch (ParseException e) {
            throw new IllegalArgumentException(text, e);
        }
    }

    private static Coordinate[] densified(String text) {
        return GeodesicEdges.densify(wkt(text), WGS84, GeodesicEdges.PIECE_M).getCoordinates();
    }

    private static double lengthM(Coordinate[] path) {
        double sum = 0;
        for (int i = 1; i < path.length; i++) {
            sum += WGS84.Inverse(path[i - 1].y, path[i - 1].x, path[i].y, path[i].x).s12;
        }
        return sum;
    }

    @Test
    void noPieceIsLongerThanAskedAndTogetherTheyAreTheGeodesic() {
        // Land's End to John o'Groats: 969,954.166 m (GeographicLib's GeodSolve agrees).
        Coordinate[] path = densified("LINESTRING (-5.71475 50.06632, -3.07009 58.64402)");
        assertEquals(971, path.length);
        assertEquals(969_954.166, lengthM(path), 1e-3);
        for (int i = 1; i < path.length; i++) {
            assertTrue(WGS84.Inverse(path[i - 1].y, path[i - 1].x, path[i].y, path[i].x).s12 <= 1000 + 1e-6);
        }
    }

    @Test
    void middleOfHelsinkiToTallinnIsThatOfTheProjTutorial() {
        // PROJ, tutorial on geodesics (geodesics.gie): GRS80, 82,488.500 m, middle 59.804045696236 N, 24.840439590098 E.
        Geodesic grs80 = new Geodesic(6_378_137, 1 / 298.257222101);
        Coordinate[] path = GeodesicEdges.densify(
                wkt("LINESTRING (24.938 60.171, 24.745 59.437)"), grs80, 41_245).getCoordinates();
        assertEquals(3, path.length);
        // The tutorial halves the rounded length: a tenth of a millimetre at most.
        assertEquals(59.804045696236, path[1].y, 1e-9);
        assertEquals(24.840439590098, path[1].x, 1e-9);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        // GeographicLib, geodtest.c, Planimeter0 and Planimeter15 (MIT licence).
        "POLYGON ((-1 0, 0 -1, 1 0, 0 1, -1 0))         | 627598.2731 | 24619419146",
        "POLYGON ((1 2, 2 1, 3 3, 1 2))                 | NaN         | 18454562325.45",
    })
    void perimeterAndAreaAreThoseOfThePublishedPolygons(String polygon, double perimeterM, double areaM2) {
        Coordinate[] ring = densified(polygon);
        PolygonArea planimeter = new PolygonArea(WGS84, false);
        for (int i = 0; i < ring.length - 1; i++) {
            planimeter.AddPoint(ring[i].y, ring[i].x);
        }
        PolygonResult result = planimeter.Compute(false, true);
        if (!Double.isNaN(perimeterM)) {
            assertEquals(perimeterM, result.perimeter, 1e-3);
        }
        assertEquals(areaM2, Math.abs(result.area), 1);
    }

    @Test
    void anEdgeIsTheSameInBothDirectionsBitForBit() {
        Random random = new Random(11);
        for (int n = 0; n < 300; n++) {
            double lon = random.nextInt(5) == 0 ? 179.9 : 360 * random.nextDouble() - 180;
            double lat = 160 * random.nextDouble() - 80;
            double reach = Math.pow(10, -3 + 4 * random.nextDouble());
            double toLon = lon + reach * random.nextGaussian();
            toLon = toLon > 180 ? toLon - 360 : toLon < -180 ? toLon + 360 : toLon;
            double toLat = random.nextInt(5) == 0 ? lat : Math.max(-85, Math.min(85, lat + reach * random.nextGaussian()));
            Coordinate[] there = densified("LINESTRING (" + lon + " " + lat + ", " + toLon + " " + toLat + ")");
            Coordinate[] back = densified("LINESTRING (" + toLon + " " + toLat + ", " + lon + " " + lat + ")");
            assertEquals(there.length, back.length);
            // Over the antimeridian the two runs of longitude differ by whole turns, and with them the last bits.
            double turns = there[0].x - back[back.length - 1].x;
            for (int i = 0; i < there.length; i++) {
                Coordinate same = back[back.length - 1 - i];
                assertEquals(there[i].y, same.y, "seed 11, edge " + n);
                assertEquals(there[i].x, same.x + turns, turns == 0 ? 0 : 1e-12, "seed 11, edge " + n);
            }
        }
    }

    @Test
    void verticesStayAsTheyAre() {
        Geometry polygon = wkt("POLYGON ((-87.123456789012345 29.5, -86.9 29.6, -87 29.8, -87.123456789012345 29.5),"
                + " (-87.02 29.6, -87 29.62, -86.98 29.6, -87.02 29.6))");
        Polygon densified = (Polygon) GeodesicEdges.densify(polygon, WGS84, GeodesicEdges.PIECE_M);
        assertEquals(1, densified.getNumInteriorRing());
        for (Coordinate vertex : polygon.getCoordinates()) {
            boolean kept = false;
            for (Coordinate point : densified.getCoordinates()) {
                kept |= point.equals2D(vertex);
            }
            assertTrue(kept, vertex.toString());
        }
    }

    @Test
    void longitudesRunOnOverTheAntimeridian() {
        Coordinate[] east = densified("LINESTRING (179.99 -17, -179.99 -17)");
        assertEquals(180.01, east[east.length - 1].x, 1e-12);
        Coordinate[] west = densified("LINESTRING (-179.99 -17, 179.99 -17)");
        assertEquals(-180.01, west[west.length - 1].x, 1e-12);
        Coordinate[] past = densified("LINESTRING (179.99 -17, 180.01 -17)");
        assertEquals(180.01, past[past.length - 1].x, 0);
        assertEquals(4, east.length);
        assertEquals(180, east[1].x / 2 + east[2].x / 2, 1e-12);
    }

    @Test
    void aHoleFollowsItsShellOverTheAntimeridian() {
        Geometry polygon = GeodesicEdges.densify(wkt("POLYGON ((179 -17, -179 -17, -179 -16, 179 -16, 179 -17),"
                + " (-179.6 -16.6, -179.4 -16.6, -179.4 -16.4, -179.6 -16.6))"), WGS84, 10_000);
        assertTrue(polygon.isValid());
        assertEquals(179, polygon.getEnvelopeInternal().getMinX(), 0);
        assertEquals(181, polygon.getEnvelopeInternal().getMaxX(), 0);
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "POINT (-87 29.5)", "MULTIPOINT ((-87 29.5), (-86 29.5))", "LINESTRING (-87 29.5, -86.999 29.5)",
        "MULTILINESTRING ((-87 29.5, -86.999 29.5), (-87 29, -87 29.001))", "POLYGON EMPTY", "LINESTRING EMPTY",
        "MULTIPOLYGON (((-87 29.5, -86.999 29.5, -87 29.501, -87 29.5)))",
        "GEOMETRYCOLLECTION (POINT (-87 29.5), LINESTRING (-87 29.5, -87 29.5))"})
    void shortEdgesAndPointsAreReturnedAsTheyAre(String text) {
        Geometry same = GeodesicEdges.densify(wkt(text), WGS84, GeodesicEdges.PIECE_M);
        assertTrue(wkt(text).equalsExact(same), same.toText());
        assertEquals(wkt(text).getGeometryType(), same.getGeometryType());
    }

    @ParameterizedTest
    @CsvSource({"0.001, 3, 1.04e-3", "15, 3, 1.00e-3", "30, 3, 0.90e-3", "45, 3, 0.73e-3", "60, 3, 0.52e-3", "30, 1, 0.30e-3"})
    void aPieceDrawnStraightInUtmBowsByTheStatedAmount(double lat, double degreesFromMeridian, double mostM) {
        // L² x / 8R², x from the central meridian; a piece along the meridian is the worst.
        CoordinateTransform utm = Crs.WGS84.to(Crs.ofEpsg(32617));
        GeodesicLine line = WGS84.DirectLine(lat, -81 + degreesFromMeridian, 0, 1000);
        GeodesicData end = line.Position(1000);
        LineSegment straight = new LineSegment(
                utm.apply(-81 + degreesFromMeridian, lat), utm.apply(end.lon2, end.lat2));
        double bowM = 0;
        for (double along = 0; along <= 1000; along += 50) {
            GeodesicData at = line.Position(along);
            bowM = Math.max(bowM, straight.distancePerpendicular(utm.apply(at.lon2, at.lat2)));
        }
        double x = straight.midPoint().x - 500_000;
        assertEquals(1e6 * x / (8 * 6_371_000.0 * 6_371_000.0), bowM, 0.02e-3);
        assertTrue(bowM <= mostM, bowM + " m");
    }

    @Test
    void aRingAroundAPoleIsRefused() {
        InputException e = assertThrows(InputException.class,
                () -> densified("POLYGON ((0 80, 90 80, 180 80, -90 80, 0 80))"));
        assertEquals("a polygon goes around a pole (ring through longitude 0.0, latitude 80.0); cut it along a meridian",
                e.getMessage());
    }

    @Test
    void projectedCoordinatesAreRefused() {
        InputException e = assertThrows(InputException.class, () -> densified("POINT (350000 3050000)"));
        assertEquals("longitude 350000.0, latitude 3050000.0 is no place on Earth; check the CRS that the layer states",
                e.getMessage());
        assertThrows(InputException.class, () -> GeodesicEdges.densify(
                new GeometryFactory().createPoint(new Coordinate(Double.NaN, 1)), WGS84, 1000));
    }

    @Test
    void pieceLengthMustBePositive() {
        assertThrows(IllegalArgumentException.class, () -> GeodesicEdges.densify(wkt("POINT (1 2)"), WGS84, 0));
        assertThrows(IllegalArgumentException.class, () -> GeodesicEdges.densify(wkt("POINT (1 2)"), WGS84, Double.NaN));
    }

    @Test
    void neighboursStillShareTheirEdgeAfterwards() {
        Coordinate[] left = densified("POLYGON ((-87.2 29.5, -87 29.5, -87 29.8, -87.2 29.8, -87.2 29.5))");
        Coordinate[] right = densified("POLYGON ((-87 29.5, -86.8 29.5, -86.8 29.8, -87 29.8, -87 29.5))");
        List<Coordinate> inBoth = new ArrayList<>(Arrays.asList(left));
        inBoth.removeIf(c -> Arrays.stream(right).noneMatch(c::equals2D));
        // 33,253 m along the meridian: 33 points between the two vertices; the ring repeats none of them.
        assertEquals(35, inBoth.size());
    }
}
