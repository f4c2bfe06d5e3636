package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.algorithm.PointLocation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;

class GeometryRepairTest {
    private static final Crs UTM = Crs.ofEpsg(32617);
    private static final Path FILE = Path.of("mud.gpkg");
    private static final Geometry BOW_TIE = wkt("POLYGON ((0 0, 600 600, 600 0, 0 600, 0 0))");

    private static Geometry wkt(String text) {
        try {
            return new WKTReader().read(text);
        } catch (ParseException e) {
            throw new IllegalArgumentException(text, e);
        }
    }

    private static GeometryRepair.Repaired repaired(Crs crs, Geometry... geometries) {
        List<Feature> features = new ArrayList<>();
        for (Geometry geometry : geometries) {
            features.add(new Feature(10 + features.size(), geometry, Map.of("a", 1)));
        }
        return GeometryRepair.asPlanned(source(true), new VectorLayer("mud", FILE, "GeoPackage", crs, Edges.GEODESIC, features, 3, List.of("n")));
    }

    private static LayerFile source(boolean repair) {
        Optional<String> none = Optional.empty();
        return new LayerFile("mud", FILE, none, none, none, none, 1, Edges.GEODESIC, repair);
    }

    @Test
    void bothLobesOfABowTieStayAndTheRepairIsTold() {
        GeometryRepair.Repaired repaired = repaired(UTM, wkt("POINT (1 1)"), BOW_TIE);
        assertEquals(wkt("MULTIPOLYGON (((0 0, 0 600, 300 300, 0 0)), ((300 300, 600 600, 600 0, 300 300)))").norm(),
                repaired.layer().features().get(1).geometry().norm());
        assertEquals(List.of("feature 11 is repaired, as the plan asks: the polygon crosses itself at (300.0, 300.0); it covers 180000 m2 now,"
                + " its rings as they stand 0 m2 (parts that cross count against each other)"), repaired.repairs());
        assertEquals(Map.of("a", 1), repaired.layer().features().get(1).attributes());
        assertEquals(3, repaired.layer().featuresWithoutGeometry());
        assertSame(repaired.layer(), GeometryCheck.requireValid(repaired.layer()));
        // The other usual repair loses one lobe.
        assertEquals(90_000, BOW_TIE.buffer(0).getArea());
    }

    @Test
    void nothingIsRepairedUnlessThePlanAsks() {
        VectorLayer layer = new VectorLayer("mud", FILE, "GeoPackage", UTM, Edges.GEODESIC, List.of(new Feature(1, BOW_TIE, Map.of())), 0, List.of());
        assertEquals(new GeometryRepair.Repaired(layer, List.of()), GeometryRepair.asPlanned(source(false), layer));
        assertSame(layer, GeometryRepair.asPlanned(source(false), layer).layer());
    }

    @Test
    void coordinatesThatAreNoPlacesAreLeftToBeRefused() {
        GeometryRepair.Repaired repaired = repaired(Crs.WGS84, wkt("POLYGON ((0 0, 600 600, 600 0, 0 600, 0 0))"));
        assertEquals(List.of(), repaired.repairs());
        assertEquals("outside-domain", GeometryCheck.of(repaired.layer()).get(0).code());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        // A spike has no area, and a keep-off distance holds from it all the same.
        "POLYGON ((0 0, 600 0, 600 300, 900 300, 600 300, 600 600, 0 600, 0 0)) | GEOMETRYCOLLECTION (POLYGON ((0 0, 600 0, 600 300, 600 600, 0 600, 0 0)), LINESTRING (600 300, 900 300))",
        "POLYGON ((0 0, 600 600, 300 300, 0 0))                                 | LINESTRING (0 0, 600 600)",
        "LINESTRING (500 500, 500 500)                                          | POINT (500 500)",
        // A shell inside another says nothing new; a hole outside its shell is taken as ground, which is the safe side.
        "MULTIPOLYGON (((0 0, 900 0, 900 900, 0 900, 0 0)), ((100 100, 200 100, 200 200, 100 100))) | POLYGON ((0 0, 900 0, 900 900, 0 900, 0 0))",
        "POLYGON ((0 0, 900 0, 900 900, 0 900, 0 0), (1000 0, 1100 0, 1100 100, 1000 0)) | MULTIPOLYGON (((0 0, 900 0, 900 900, 0 900, 0 0)), ((1000 0, 1100 0, 1100 100, 1000 0)))",
    })
    void keepsWhatThereIsToKeepAwayFrom(String before, String after) {
        GeometryRepair.Repaired repaired = repaired(UTM, wkt(before));
        Geometry geometry = repaired.layer().features().get(0).geometry();
        assertTrue(wkt(after).norm().equalsTopo(geometry.norm()) || wkt(after).norm().equals(geometry.norm()), geometry.toText());
        assertEquals(1, repaired.repairs().size());
        assertSame(repaired.layer(), GeometryCheck.requireValid(repaired.layer()));
    }

    @Test
    void whatARandomRingCoversByEvenAndOddCrossingsStays() {
        Random random = new Random(20260211);
        GeometryFactory factory = new GeometryFactory();
        int inside = 0;
        for (int draw = 0; draw < 200; draw++) {
            Coordinate[] ring = new Coordinate[5 + random.nextInt(8)];
            for (int i = 0; i < ring.length; i++) {
                ring[i] = i == ring.length - 1 ? ring[0] : new Coordinate(random.nextInt(1000), random.nextInt(1000));
            }
            VectorLayer layer = repaired(UTM, factory.createPolygon(ring)).layer();
            GeometryCheck.requireValid(layer);
            Geometry after = layer.features().get(0).geometry();
            for (int i = 0; i < 50; i++) {
                Coordinate place = new Coordinate(1000 * random.nextDouble(), 1000 * random.nextDouble());
                if (PointLocation.locateInRing(place, ring) == Location.INTERIOR) {
                    inside++;
                    assertTrue(after.distance(factory.createPoint(place)) < 1e-6, "draw " + draw + ", " + place);
                }
            }
            for (Coordinate vertex : ring) {
                assertTrue(after.distance(factory.createPoint(vertex)) < 1e-6, "draw " + draw + ", " + vertex);
            }
        }
        assertTrue(inside > 1000, inside + " places inside");
    }

    @Test
    void areasOfDegreesAreThoseOnTheEllipsoid() {
        // A square of a degree at the equator: 12308778361 m2 (GeographicLib's Planimeter, from memory), with a spike.
        String told = repaired(Crs.WGS84, wkt("POLYGON ((0 0, 0.5 0, 0.5 -1, 0.5 0, 1 0, 1 1, 0 1, 0 0))")).repairs().get(0);
        assertTrue(told.contains("it covers 12308778361 m2 now"), told);
    }

    @Test
    void everyRepairIsToldIfOnlyByItsNumber() {
        List<String> repairs = repaired(UTM, Collections.nCopies(103, BOW_TIE).toArray(Geometry[]::new)).repairs();
        assertEquals(101, repairs.size());
        assertEquals("3 more features are repaired: 110, 111, 112", repairs.get(100));
    }

    @Test
    void aRingOverTheAntimeridianIsJudgedAsItsEdgesRun() {
        Geometry over = wkt("POLYGON ((179 0, -179 0, -179 2, 180 1, 179 2, 179 0))");
        GeometryRepair.Repaired repaired = repaired(Crs.WGS84, over);
        assertEquals(List.of(), repaired.repairs());
        assertEquals(List.of(), GeometryCheck.of(repaired.layer()));
        Geometry crossing = wkt("POLYGON ((179 0, -179 2, -179 0, 179 2, 179 0))");
        GeometryRepair.Repaired fixed = repaired(Crs.WGS84, crossing);
        assertEquals(1, fixed.repairs().size());
        assertEquals(2, fixed.layer().features().get(0).geometry().getArea(), 1e-9);
        assertNotEquals(List.of(), GeometryCheck.of(new VectorLayer("mud", FILE, "GeoPackage", Crs.WGS84, Edges.GEODESIC,
                List.of(new Feature(1, crossing, Map.of())), 0, List.of())));
    }
}
