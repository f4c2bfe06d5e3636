package org.seacairn.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.seacairn.geodesy.GeodesicEdges;
import org.seacairn.geodesy.PlainDistance;
import org.seacairn.layer.Feature;

/** The judge is GeographicLib (C. F. F. Karney) alone, walking along every edge in small steps. */
class NearestApproachTest {
    private static final Geodesic WGS84 = Geodesic.WGS84;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private static EllipsoidalDistance of(Geometry... geometries) {
        List<Feature> features = new ArrayList<>();
        for (Geometry geometry : geometries) {
            features.add(new Feature(features.size() + 1, geometry, Map.of()));
        }
        return EllipsoidalDistance.of(features, WGS84);
    }

    private static Geometry wkt(String text) {
        try {
            return new WKTReader().read(text);
        } catch (ParseException e) {
            throw new IllegalArgumentException(text, e);
        }
    }

    private static NearestApproach between(String polygon, String layer) {
        return NearestApproach.of(of(wkt(polygon)), of(wkt(layer)));
    }

    /** A polygon about a place, its vertices at random bearings and distances. */
    private static Geometry star(Random random, double lonDeg, double latDeg, double radiusM, int vertices) {
        Coordinate[] ring = new Coordinate[vertices + 1];
        for (int i = 0; i < vertices; i++) {
            GeodesicData end = WGS84.Direct(latDeg, lonDeg, -360.0 * (i + 0.8 * random.nextDouble()) / vertices,
                    radiusM * (0.4 + 0.6 * random.nextDouble()));
            ring[i] = new Coordinate(end.lon2, end.lat2);
        }
        ring[vertices] = ring[0];
        return FACTORY.createPolygon(ring);
    }

    /** Along each edge of the polygon in small steps, then closing in on the best place of each. */
    private static double walkedM(Geometry polygon, Geometry layer) {
        double leastM = Double.POSITIVE_INFINITY;
        Coordinate[] ring = polygon.getCoordinates();
        for (int i = 1; i < ring.length; i++) {
            GeodesicLine edge = WGS84.InverseLine(ring[i - 1].y, ring[i - 1].x, ring[i].y, ring[i].x);
            double best = 0;
            double bestM = at(edge, 0, layer);
            for (int k = 1; k <= 40; k++) {
                double m = at(edge, k / 40.0, layer);
                best = m < bestM ? k / 40.0 : best;
                bestM = Math.min(m, bestM);
            }
            for (double step = 1 / 80.0; step * edge.Distance() > 1e-4; step /= 2) {
                double before = at(edge, Math.max(0, best - step), layer);
                double behind = at(edge, Math.min(1, best + step), layer);
                best = before < bestM ? Math.max(0, best - step) : behind < bestM ? Math.min(1, best + step) : best;
                bestM = Math.min(bestM, Math.min(before, behind));
            }
            leastM = Math.min(leastM, bestM);
        }
        return leastM;
    }

    private static double at(GeodesicLine edge, double share, Geometry layer) {
        GeodesicData at = edge.Position(edge.Distance() * share);
        return PlainDistance.toEdges(layer, at.lon2, at.lat2, WGS84);
    }

    @Test
    void agreesWithWalkingAlongBothOutlines() {
        Random random = new Random(20260211);
        int apart = 0;
        for (int i = 0; i < 60; i++) {
            double latDeg = -80 + 160 * random.nextDouble();
            double lonDeg = random.nextInt(4) == 0 ? 179.99 : -180 + 360 * random.nextDouble();
            double sizeM = Math.pow(10, 2 + 3 * random.nextDouble());
            Geometry polygon = star(random, lonDeg, latDeg, sizeM, 3 + random.nextInt(5));
            GeodesicData there = WGS84.Direct(latDeg, lonDeg, 360 * random.nextDouble(), sizeM * 3 * random.nextDouble());
            Geometry layer = star(random, there.lon2, there.lat2, sizeM * (0.1 + random.nextDouble()), 3 + random.nextInt(5));
            Geometry line = FACTORY.createLineString(layer.getCoordinates());
            NearestApproach found = NearestApproach.of(of(polygon), of(line));
            double walkedM = walkedM(polygon, line);
            String scene = "scene " + i + ": " + polygon + " and " + line;
            if (found.distanceM() == 0) {
                Geometry unbroken = GeodesicEdges.densify(polygon, WGS84, 1000);
                Coordinate place = new Coordinate(found.placeLongitudeDeg(), found.placeLatitudeDeg());
                place.x += 360 * Math.rint((unbroken.getEnvelopeInternal().centre().x - place.x) / 360);
                assertTrue(walkedM < 5e-3 || unbroken.contains(FACTORY.createPoint(place)), scene);
            }
            if (found.distanceM() > 0) {
                apart++;
                assertEquals(walkedM, found.distanceM(), 5e-3, scene);
                assertEquals(found.distanceM(), WGS84.Inverse(found.placeLatitudeDeg(), found.placeLongitudeDeg(),
                        found.latitudeDeg(), found.longitudeDeg()).s12, 1e-5, scene);
                assertEquals(0, PlainDistance.toEdges(polygon, found.placeLongitudeDeg(), found.placeLatitudeDeg(), WGS84), 5e-3, scene);
                assertEquals(0, PlainDistance.toEdges(line, found.longitudeDeg(), found.latitudeDeg(), WGS84), 5e-3, scene);
                double azimuthDeg = WGS84.Inverse(found.placeLatitudeDeg(), found.placeLongitudeDeg(),
                        found.latitudeDeg(), found.longitudeDeg()).azi1;
                assertEquals(0, Math.sin(Math.toRadians(azimuthDeg - found.azimuthDeg())), 1e-6, scene);
            }
        }
        assertTrue(apart > 20 && apart < 56, apart + " scenes apart");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "inside the polygon           | LINESTRING (0.4 0.4, 0.6 0.6)",
        "through it, no vertex inside | LINESTRING (-1 0.5, 2 0.5)",
        "it lies in a polygon         | POLYGON ((-1 -1, 2 -1, 2 2, -1 2, -1 -1))",
        "a point in it                | POINT (0.5 0.5)",
        "at its corner                | LINESTRING (1 1, 2 2)"})
    void whatMeetsThePolygonIsAtDistanceZero(String what, String layer) {
        NearestApproach found = between("POLYGON ((0 0, 1 0, 1 1, 0 1, 0 0))", layer);
        assertEquals(0, found.distanceM(), 1e-9, what);
    }

    @Test
    void aFeatureInAHoleIsOutside() {
        NearestApproach found = between("POLYGON ((0 0, 1 0, 1 1, 0 1, 0 0), (0.4 0.4, 0.6 0.4, 0.6 0.6, 0.4 0.6, 0.4 0.4))",
                "POINT (0.5 0.5)");
        // The hole's northern edge bulges away from the equator: its foot is the nearest of the four by no more than metres.
        assertEquals(11_057, found.distanceM(), 75);
    }

    @Test
    void overTheAntimeridianTheNearestIsStillNear() {
        NearestApproach found = between("POLYGON ((179.99 10, 180 10, 180 10.01, 179.99 10.01, 179.99 10))",
                "LINESTRING (-179.99 9, -179.99 11)");
        assertEquals(WGS84.Inverse(10.0, 180, 10.0, -179.99).s12, found.distanceM(), 0.1);
        assertEquals(-179.99, found.longitudeDeg(), 1e-9);
    }

    @Test
    void oneFeatureCanBeLeftOut() {
        EllipsoidalDistance layer = of(wkt("POINT (0.5 1.5)"), wkt("POINT (0.5 3)"));
        EllipsoidalDistance polygon = of(wkt("POLYGON ((0 0, 1 0, 1 1, 0 1, 0 0))"));
        assertEquals(2, NearestApproach.ofAllBut(0, polygon, layer).orElseThrow().feature().id());
        assertTrue(NearestApproach.ofAllBut(0, polygon, of(wkt("POINT (0 5)"))).isEmpty());
    }
}
