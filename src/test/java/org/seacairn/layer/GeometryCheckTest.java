package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.Edges;

class GeometryCheckTest {
    private static final Crs UTM = Crs.ofEpsg(32617);

    private static VectorLayer layer(Crs crs, Geometry... geometries) {
        List<Feature> features = new ArrayList<>();
        for (Geometry geometry : geometries) {
            features.add(new Feature(10 + features.size(), geometry, Map.of()));
        }
        return new VectorLayer("mud", Path.of("somewhere", "mud.gpkg"), "GeoPackage", crs, Edges.GEODESIC, features, 0, List.of());
    }

    private static Geometry wkt(String text) {
        try {
            return new WKTReader().read(text);
        } catch (ParseException e) {
            throw new IllegalArgumentException(text, e);
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        // The place is where the library says the trouble is; the shapes are drawn so that there is only one.
        "POLYGON ((0 0, 600 600, 600 0, 0 600, 0 0))                                     | self-intersection    | (300.0, 300.0) | the polygon crosses itself",
        "POLYGON ((0 0, 600 0, 600 600, 300 0, 0 600, 0 0))                              | ring-self-intersection | (300.0, 0.0) | a ring of the polygon touches itself",
        "POLYGON ((0 0, 600 0, 600 600, 300 300, 100 400, 300 300, 0 600, 0 0))          | ring-self-intersection | (300.0, 300.0) | a ring of the polygon touches itself",
        "POLYGON ((0 0, 900 0, 900 900, 0 900, 0 0), (1000 0, 1100 0, 1100 100, 1000 0)) | hole-outside-shell   | (1000.0, 0.0)  | a hole lies outside its polygon",
        "POLYGON ((0 0, 900 0, 900 900, 0 900, 0 0), (100 100, 800 100, 800 800, 100 100), (500 300, 600 300, 600 400, 500 300)) | nested-holes | (500.0, 300.0) | a hole lies inside another",
        "MULTIPOLYGON (((0 0, 900 0, 900 900, 0 900, 0 0)), ((100 100, 200 100, 200 200, 100 100))) | nested-shells | (100.0, 100.0) | a polygon lies inside another of the same feature",
        "POLYGON ((0 0, 900 0, 900 900, 0 900, 0 0), (0 450, 450 900, 900 450, 450 0, 0 450)) | disconnected-interior | (450.0, 0.0) | holes cut the polygon apart",
        "LINESTRING (500 500, 500 500)                                                   | too-few-points       | (500.0, 500.0) | a line or ring has too few different points",
    })
    void findsInvalidGeometries(String geometry, String code, String place, String meaning) {
        VectorLayer bad = layer(UTM, wkt("POINT (500000 3200000)"), wkt(geometry));
        GeometryCheck.Finding finding = GeometryCheck.of(bad).get(0);
        assertEquals(code, finding.code());
        assertEquals(1, finding.features());
        assertEquals("1 of 2 features: " + meaning + ", first feature 11 at " + place, finding.message());
        InputException e = assertThrows(InputException.class, () -> GeometryCheck.requireValid(bad));
        assertEquals(1, e.problems().size());
        assertEquals("mud.gpkg, feature 11 at " + place + ": " + meaning, e.getMessage().substring(0, e.getMessage().indexOf("; ")));
    }

    @Test
    void passesWhatIsRight() {
        VectorLayer good = layer(UTM, wkt("POLYGON ((500000 0, 500009 0, 500009 9, 500000 0))"), wkt("LINESTRING (0 0, 600 600, 600 0, 0 600)"),
                wkt("MULTIPOINT ((1 1), (1 1))"), wkt("GEOMETRYCOLLECTION (POINT (1 1))"));
        assertEquals(List.of(), GeometryCheck.of(good));
        assertSame(good, GeometryCheck.requireValid(good));
        assertEquals(List.of(), GeometryCheck.of(layer(Crs.WGS84, wkt("LINESTRING (-360 -90, 360 90)"))));
        assertEquals(List.of(), GeometryCheck.of(layer(UTM)));
    }

    @ParameterizedTest
    @CsvSource({"361, 0", "-360.5, 0", "0, 90.01", "0, -91", "NaN, 0", "0, NaN", "Infinity, 0"})
    void findsCoordinatesThatNoLongitudeOrLatitudeCanBe(double x, double y) {
        Geometry point = new GeometryFactory().createLineString(new Coordinate[] {new Coordinate(1, 1), new Coordinate(x, y)});
        VectorLayer bad = layer(Crs.WGS84, wkt("POINT (1 1)"), point);
        List<GeometryCheck.Finding> findings = GeometryCheck.of(bad);
        assertEquals(List.of("outside-domain"), findings.stream().map(GeometryCheck.Finding::code).toList());
        assertEquals(List.of(new GeometryCheck.Place(11, x, y)), findings.get(0).places());
        assertEquals("mud.gpkg, feature 11 at (" + x + ", " + y + "): a coordinate lies outside what its CRS can hold;"
                + " check the CRS of the file or the plan, and the order of x and y",
                assertThrows(InputException.class, () -> GeometryCheck.requireValid(bad)).getMessage());
    }

    @Test
    void findsCoordinatesThatAreNoNumbersInAnyCrs() {
        Geometry point = new GeometryFactory().createPoint(new Coordinate(Double.NaN, 1));
        assertEquals("outside-domain", GeometryCheck.of(layer(UTM, point)).get(0).code());
    }

    @Test
    void suspectsDegreesUnderAProjectedCrsButDoesNotRefuseThem() {
        VectorLayer odd = layer(UTM, wkt("POINT (-87.25 29.5)"), wkt("POINT (-87 29)"));
        GeometryCheck.Finding finding = GeometryCheck.of(odd).get(0);
        assertEquals("degrees-in-projected", finding.code());
        assertEquals("all of it looks like longitude and latitude while its CRS, " + UTM.label()
                + ", is in metres; check the CRS that the file or the plan states", finding.message());
        assertSame(odd, GeometryCheck.requireValid(odd));
        assertEquals(List.of(), GeometryCheck.of(layer(UTM, wkt("POINT (-87.25 29.5)"), wkt("POINT (500000 3200000)"))));
    }

    @Test
    void suspectsMetresUnderAGeographicCrs() {
        List<GeometryCheck.Finding> findings = GeometryCheck.of(layer(Crs.WGS84, wkt("POINT (500000 3200000)"), wkt("POINT (500100 3200000)")));
        assertEquals(List.of("outside-domain", "metres-in-geographic"), findings.stream().map(GeometryCheck.Finding::code).toList());
        assertEquals(2, findings.get(1).features());
    }

    @Test
    void countsAllAndTellsTheFirstFew() {
        VectorLayer bad = layer(UTM, Collections.nCopies(30, wkt("POLYGON ((0 0, 600 600, 600 0, 0 600, 0 0))")).toArray(Geometry[]::new));
        GeometryCheck.Finding finding = GeometryCheck.of(bad).get(0);
        assertEquals(30, finding.features());
        assertEquals(List.of(10L, 11L, 12L), finding.places().stream().map(GeometryCheck.Place::featureId).toList());
        InputException e = assertThrows(InputException.class, () -> GeometryCheck.requireValid(bad));
        assertEquals(21, e.problems().size());
        assertEquals("mud.gpkg: and 10 more features like these", e.problems().get(20));
    }
}
