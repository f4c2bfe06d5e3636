package org.seacairn.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.seacairn.geodesy.PlaceFrom.place;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.seacairn.geodesy.PlainDistance;
import org.seacairn.layer.Feature;

class EllipsoidalDistanceTest {
    private static final Geodesic WGS84 = Geodesic.WGS84;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private static EllipsoidalDistance of(Geometry... geometries) {
        List<Feature> features = new ArrayList<>();
        for (Geometry g : geometries) {
            features.add(new Feature(features.size() + 1, g, Map.of()));
        }
        return EllipsoidalDistance.of(features, WGS84);
    }

    private static Geometry wkt(String text) throws ParseException {
        return new WKTReader().read(text);
    }

    /** Geodetic test lines on WGS 84 from GeographicLib's own examples (GeodSolve) and two road-end lines. */
    @ParameterizedTest
    @CsvSource({"40.6, -73.8, 49.01666667, 2.55, 5853226, 0.5", "50.06632, -5.71475, 58.64402, -3.07009, 969954.166, 0.001",
        "36.493349428792, 0.0, 36.49334942879201, 0.0000008, 0.072, 0.0005"})
    void pointToPointIsThePublishedLine(double lat1, double lon1, double lat2, double lon2, double metres, double tolerance) {
        EllipsoidalDistance.Nearest nearest = of(FACTORY.createPoint(new Coordinate(lon2, lat2))).nearest(lon1, lat1);
        assertEquals(metres, nearest.distanceM(), tolerance);
    }

    /** An edge of 50 nmi is the geodesic, not the parallel: its middle lies poleward of both ends. */
    @ParameterizedTest
    @CsvSource({"29.5", "-33.9", "65", "-79"})
    void longEdgeIsTheGeodesicBetweenItsEnds(double lat) {
        GeodesicData edge = WGS84.Inverse(lat, 10, lat, 10 + 50 * 1852 / (111_320 * Math.cos(Math.toRadians(lat))));
        EllipsoidalDistance layer = of(FACTORY.createLineString(new Coordinate[] {
            new Coordinate(edge.lon1, edge.lat1), new Coordinate(edge.lon2, edge.lat2)}));
        for (double share : new double[] {0.1, 0.37, 0.5, 0.9}) {
            GeodesicData on = WGS84.Direct(edge.lat1, edge.lon1, edge.azi1, share * edge.s12);
            for (double off : new double[] {0, 0.5, 500, 20_000}) {
                GeodesicData from = WGS84.Direct(on.lat2, on.lon2, on.azi2 + 90, off);
                EllipsoidalDistance.Nearest nearest = layer.nearest(from.lon2, from.lat2);
                assertEquals(off, nearest.distanceM(), 1e-3, "share " + share + ", off " + off);
                assertEquals(0, WGS84.Inverse(on.lat2, on.lon2, nearest.latitudeDeg(), nearest.longitudeDeg()).s12,
                        off < 1000 ? 0.01 : 0.5);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"-79.3, 29.5", "17.2, -33.9", "179.99, 10", "-179.98, -52", "15, 69.5", "-60, 79"})
    void agreesWithPlainSearchOnRandomScenes(double lon, double lat) {
        Random random = new Random(Double.hashCode(lon + lat));
        for (int run = 0; run < 15; run++) {
            double span = Math.exp(Math.log(10) + random.nextDouble() * Math.log(4000));
            List<Geometry> lines = new ArrayList<>();
            for (int i = 0; i < 1 + random.nextInt(4); i++) {
                Coordinate[] c = new Coordinate[2 + random.nextInt(3)];
                for (int k = 0; k < c.length; k++) {
                    c[k] = place(lon, lat, span * random.nextGaussian(), span * random.nextGaussian());
                }
                lines.add(FACTORY.createLineString(c));
            }
            EllipsoidalDistance layer = of(lines.toArray(Geometry[]::new));
            for (int i = 0; i < 4; i++) {
                Coordinate p = place(lon, lat, span * random.nextGaussian(), span * random.nextGaussian());
                EllipsoidalDistance.Nearest nearest = layer.nearest(p.x, p.y);
                assertEquals(PlainDistance.toEdges(FACTORY.buildGeometry(lines), p.x, p.y, WGS84), nearest.distanceM(), 1e-3, "run " + run);
                assertEquals(nearest.distanceM(),
                        WGS84.Inverse(p.y, p.x, nearest.latitudeDeg(), nearest.longitudeDeg()).s12, 1e-3, "run " + run);
            }
        }
    }

    @Test
    void laneAcrossTheAntimeridianIsNearOnBothSides() throws ParseException {
        EllipsoidalDistance layer = of(wkt("POLYGON ((179.9 10, -179.9 10, -179.9 10.1, 179.9 10.1, 179.9 10))"));
        assertEquals(0, layer.nearest(179.95, 10.05).distanceM());
        assertEquals(0, layer.nearest(-179.95, 10.05).distanceM());
        double truth = WGS84.Inverse(10.05, -179.9, 10.05, -179.8).s12;
        // The edge along the meridian is a geodesic; the nearest point is close to the same parallel.
        assertEquals(truth, layer.nearest(-179.8, 10.05).distanceM(), 0.5);
        assertTrue(layer.nearest(179.8, 10.05).distanceM() < 11_000);
    }

    @Test
    void insideIsZeroInAHoleIsNotAndTheBoundaryIsExact() {
        Coordinate a = place(10, 50, 0, 0);
        Coordinate h = place(10, 50, 1000, 1000);
        Geometry ring = FACTORY.createPolygon(
                FACTORY.createLinearRing(new Coordinate[] {a, place(10, 50, 3000, 0), place(10, 50, 3000, 3000), place(10, 50, 0, 3000), a}),
                new org.locationtech.jts.geom.LinearRing[] {FACTORY.createLinearRing(new Coordinate[] {h, place(10, 50, 1000, 2000),
                    place(10, 50, 2000, 2000), place(10, 50, 2000, 1000), h})});
        EllipsoidalDistance layer = of(ring);
        Coordinate inside = place(10, 50, 500, 500);
        Coordinate hole = place(10, 50, 1500, 1200);
        assertEquals(0, layer.nearest(inside.x, inside.y).distanceM());
        assertEquals(200, layer.nearest(hole.x, hole.y).distanceM(), 0.1);
        assertEquals(0, layer.nearest(a.x, a.y).distanceM(), 1e-3);
    }

    @Test
    void nearestFeatureIsNamedAmongMany() {
        List<Geometry> many = new ArrayList<>();
        for (int i = 0; i < 2000; i++) {
            many.add(FACTORY.createPoint(place(-79, 29, 50 * (i % 50), 50 * (i / 50))));
        }
        EllipsoidalDistance layer = of(many.toArray(Geometry[]::new));
        Coordinate p = place(-79, 29, 50 * 17 + 3, 50 * 23 - 4);
        EllipsoidalDistance.Nearest nearest = layer.nearest(p.x, p.y);
        assertEquals(23 * 50 + 17 + 1, nearest.feature().id());
        assertEquals(5, nearest.distanceM(), 0.01);
    }
}
