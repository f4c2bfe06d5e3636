package org.seacairn.geodesy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.apache.sis.referencing.CommonCRS;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.opengis.referencing.crs.ProjectedCRS;
import org.opengis.referencing.operation.MathTransform;
import org.opengis.referencing.operation.TransformException;
import org.opengis.util.FactoryException;
import org.seacairn.InputException;

class CrsTest {
    @Test
    void textOverSeveralLinesIsToldInOne() {
        assertEquals("CRS text \"PROJCS[ \"a b\"\" cannot be read (error in \"projcs\": cannot parse 'projcs[ \"a b\"', error at...); write an EPSG code such as EPSG:32617",
                assertThrows(InputException.class, () -> Crs.parse("PROJCS[\r\n\"a\u0001b\"")).getMessage());
    }

    @Test
    void textNestedWithoutEndIsRefused() {
        assertEquals("CRS text \"GEOGCS[GEOGCS[GEOGCS[GEOGCS[GEOGCS[GEOGCS[GEOGCS[GEOGCS[G...\" has 7000 characters, nested 1000 deep, more than any CRS"
                + " needs; write an EPSG code such as EPSG:32617", assertThrows(InputException.class, () -> Crs.parse("GEOGCS[".repeat(1000))).getMessage());
    }

    /** Held here, or the setting would be lost with the logger: the judge remarks on units and on EPSG:3857. */
    private static final Logger JUDGE_LOG = Logger.getLogger("org.apache.sis");

    @BeforeAll
    static void quieten() {
        JUDGE_LOG.setLevel(Level.SEVERE);
    }

    private static final String ESRI_NAD27 = "GEOGCS[\"GCS_North_American_1927\",DATUM[\"D_North_American_1927\","
            + "SPHEROID[\"Clarke_1866\",6378206.4,294.9786982]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]";
    private static final String ESRI_NAD83 = "GEOGCS[\"GCS_North_American_1983\",DATUM[\"D_North_American_1983\","
            + "SPHEROID[\"GRS_1980\",6378137.0,298.257222101]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]";

    /** British National Grid's parameters on WGS 84, the conversion of GIGS test 5101. */
    private static final String GIGS_5101 = "PROJCS[\"GIGS 5101\",GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\","
            + "SPHEROID[\"WGS 84\",6378137,298.257223563]],PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]],"
            + "PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"latitude_of_origin\",49],PARAMETER[\"central_meridian\",-2],"
            + "PARAMETER[\"scale_factor\",0.9996012717],PARAMETER[\"false_easting\",400000],PARAMETER[\"false_northing\",-100000],"
            + "UNIT[\"metre\",1]]";

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', value = {
        // IOGP Guidance Note 7-2 (method 9807, British National Grid). Rounded in the note: an exact
        // Krueger series gives 577274.984, 69740.492, so no more than 0.01 m can be asked.
        "GN 7-2, EPSG 9807       | EPSG:27700 | 0 30 00 E        | 50 30 00 N        | 577274.99  | 69740.50   | 0.01",
        // Ordnance Survey, A guide to coordinate systems in Great Britain, annexe C, on Airy 1830.
        "Ordnance Survey         | EPSG:27700 | 1 43 04.5177 E   | 52 39 27.2531 N   | 651409.903 | 313177.270 | 0.001",
        // Snyder 1987, Map Projections - A Working Manual, page 269: UTM zone 18, Clarke 1866.
        "Snyder 1987, UTM 18     | EPSG:26718 | 73.5 W           | 40.5 N            | 627106.47  | 4484124.43 | 0.01",
        // IOGP Guidance Note 7-2 (method 9802, Lambert conic conformal 2SP), NAD27 / Texas South Central.
        "GN 7-2, EPSG 9802       | EPSG:32040 | 96 00 00 W       | 28 30 00 N        | 2963503.91 | 254759.80  | 0.01",
        // A widely printed spot, UTM zone 18 on WGS 84, to the metre; recomputed to 583959.959, 4507523.087.
        "UTM spot, WGS 84        | EPSG:32618 | 74.00597 W       | 40.71435 N        | 583959.959 | 4507523.087 | 0.001",
    })
    void agreesWithWorkedExamples(String source, String code, String longitude, String latitude, double x, double y, double tolerance) {
        Crs crs = Crs.parse(code);
        double lon = CoordinateText.parseLongitude(longitude);
        double lat = CoordinateText.parseLatitude(latitude);
        assertPlace(x, y, crs.geographic().to(crs).apply(lon, lat), tolerance, source);
        double degrees = tolerance * crs.metresPerUnit() / 60_000;
        assertPlace(lon, lat, crs.to(crs.geographic()).apply(x, y), degrees, source + " inverse");
    }

    @Test
    void agreesWithTheTestOfTheGeospatialIntegrityInitiative() {
        // IOGP GIGS test 5101 (transverse Mercator), first point; its tolerance is 0.03 m.
        Crs crs = Crs.parse(GIGS_5101);
        assertPlace(678711.584, 1134498.830, Crs.WGS84.to(crs).apply(3, 60), 0.03, "GIGS 5101");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        // code, and a box of longitudes and latitudes in which it is meant to be used
        "32617, -84, -78, 24, 34",
        "32760, 174, 180, -48, -34",
        "26916, -90, -84, 24, 31",
        "2236, -82, -80, 24, 31",
        "2278, -105, -93, 27, 30",
        "3086, -88, -79, 24, 31",
        "5070, -124, -68, 24, 49",
        "27700, -7, 2, 50, 60",
        "2193, 167, 178, -47, -34",
        "3035, -8, 30, 36, 60",
        "3857, -179, 179, -80, 80",
    })
    void agreesWithAnotherLibrary(int code, double west, double east, double south, double north) throws FactoryException, TransformException {
        Crs crs = Crs.ofEpsg(code);
        // Apache SIS reads the definition and does its own arithmetic; the datum stays the same.
        ProjectedCRS judge = (ProjectedCRS) org.apache.sis.referencing.CRS.fromWKT(crs.wkt());
        MathTransform project = judge.getConversionFromBase().getMathTransform();
        CoordinateTransform forward = crs.geographic().to(crs);
        CoordinateTransform inverse = crs.to(crs.geographic());
        long seed = 20260116;
        Random random = new Random(seed);
        double millimetre = 0.001 / crs.metresPerUnit();
        for (int i = 0; i < 200; i++) {
            double lon = west + (east - west) * random.nextDouble();
            double lat = south + (north - south) * random.nextDouble();
            double[] expected = new double[2];
            project.transform(new double[] {lon, lat}, 0, expected, 0, 1);
            String place = "EPSG:" + code + ", seed " + seed + ", draw " + i + ": " + lon + ", " + lat;
            Coordinate got = forward.apply(lon, lat);
            assertPlace(expected[0], expected[1], got, millimetre, place);
            assertPlace(lon, lat, inverse.apply(got.x, got.y), 2e-8, place);
        }
    }

    @ParameterizedTest
    @CsvSource({"-81, 30", "-87.25, 29.5", "-3, 57.7", "150.5, -33.4", "179.9, 12"})
    void agreesWithAnotherLibraryOnTheUtmZoneOfAPlace(double lon, double lat) throws FactoryException, TransformException {
        MathTransform project = org.apache.sis.referencing.CRS.findOperation(CommonCRS.WGS84.normalizedGeographic(),
                CommonCRS.WGS84.universal(lat, lon), null).getMathTransform();
        double[] expected = new double[2];
        project.transform(new double[] {lon, lat}, 0, expected, 0, 1);
        assertPlace(expected[0], expected[1], Crs.WGS84.to(Crs.utmAt(lon, lat)).apply(lon, lat), 0.001, lon + ", " + lat);
    }

    @ParameterizedTest
    @CsvSource({
        // The authority lists latitude or northing first for all but the last three.
        "EPSG:4326, 10, 52",
        "urn:ogc:def:crs:EPSG::4326, 10, 52",
        "http://www.opengis.net/def/crs/EPSG/0/4326, 10, 52",
        "EPSG:4269, -81, 30",
        "EPSG:4267, -81, 30",
        "EPSG:2193, 173, -41",
        "EPSG:3035, 10, 52",
        "OGC:CRS84, 10, 52",
        "EPSG:32617, -81, 30",
        "EPSG:3857, 10, 52",
    })
    void putsEastBeforeNorthWhateverTheAuthorityDoes(String text, double lon, double lat) {
        Crs crs = Crs.parse(text);
        CoordinateTransform transform = crs.geographic().to(crs);
        Coordinate here = transform.apply(lon, lat);
        Coordinate east = transform.apply(lon + 0.001, lat);
        Coordinate north = transform.apply(lon, lat + 0.001);
        assertTrue(east.x > here.x && Math.abs(east.y - here.y) < (east.x - here.x) / 10, text);
        assertTrue(north.y > here.y && Math.abs(north.x - here.x) < (north.y - here.y) / 10, text);
    }

    @Test
    void refusesAnOldDatumWhoseShiftIsNotKnown() {
        // Without its shift this one came out 229 m away off the Gulf coast, and nothing was said.
        InputException e = assertThrows(InputException.class, () -> Crs.parse(ESRI_NAD27).to(Crs.WGS84));
        assertEquals("no way is known from GCS_North_American_1927 to " + Crs.WGS84.label() + "; state the layer's CRS in the plan"
                + " as an EPSG code, whose datum is known, for example EPSG:26717", e.getMessage());
    }

    @Test
    void shiftsAnOldDatumByItsCode() {
        // NAD27 to WGS 84 near 29.5 N 87 W is some 28 m to the north (PROJ 9.1 without grids: 29.500257, -86.999996).
        Coordinate shifted = Crs.ofEpsg(4267).to(Crs.WGS84).apply(-87, 29.5);
        assertPlace(-86.999996, 29.500257, shifted, 10 / 111_000.0, "EPSG:4267");
    }

    @Test
    void takesDatumsAtTheEarthsCentreAsTheSame() {
        assertPlace(-87, 29.5, Crs.parse(ESRI_NAD83).to(Crs.WGS84).apply(-87, 29.5), 1e-7, "NAD83 by its text");
        assertPlace(-87, 29.5, Crs.ofEpsg(4269).to(Crs.WGS84).apply(-87, 29.5), 1e-7, "NAD83 by its code");
    }

    @Test
    void readsTheDialectOfShapefiles() {
        String utm = "PROJCS[\"WGS_1984_UTM_Zone_17N\",GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],"
                + "PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],"
                + "PARAMETER[\"False_Easting\",500000.0],PARAMETER[\"False_Northing\",0.0],PARAMETER[\"Central_Meridian\",-81.0],"
                + "PARAMETER[\"Scale_Factor\",0.9996],PARAMETER[\"Latitude_Of_Origin\",0.0],UNIT[\"Meter\",1.0]]";
        String feet = "PROJCS[\"NAD_1983_StatePlane_Florida_East_FIPS_0901_Feet\"," + ESRI_NAD83 + ",PROJECTION[\"Transverse_Mercator\"],"
                + "PARAMETER[\"False_Easting\",656166.6666666665],PARAMETER[\"False_Northing\",0.0],PARAMETER[\"Central_Meridian\",-81.0],"
                + "PARAMETER[\"Scale_Factor\",0.9999411764705882],PARAMETER[\"Latitude_Of_Origin\",24.33333333333333],UNIT[\"Foot_US\",0.3048006096012192]]";
        assertEquals(Crs.ofEpsg(32617), Crs.parse(utm));
        assertTrue(Crs.parse(utm).isMetric());
        assertFalse(Crs.parse(feet).isMetric());
        assertEquals(1200.0 / 3937, Crs.parse(feet).metresPerUnit(), 1e-12);
        Coordinate byText = Crs.parse(feet).to(Crs.WGS84).apply(900000, 1200000);
        assertPlace(byText.x, byText.y, Crs.ofEpsg(2236).to(Crs.WGS84).apply(900000, 1200000), 1e-7, "EPSG:2236");
    }

    private static void assertPlace(double x, double y, Coordinate got, double tolerance, String place) {
        assertEquals(x, got.x, tolerance, place + ", x");
        assertEquals(y, got.y, tolerance, place + ", y");
    }
}
