package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LayersCommandTest {
    /** 4 x 3 cells of 100 m about 81 W, 27 N; one has no value. */
    private static final String GRID = """
            ncols 4
            nrows 3
            xllcorner 499800
            yllcorner 2987000
            cellsize 100
            nodata_value -9999
            -55 -60 -65 -70
            -70 -80 -90 -100
            -100 -120 -160 -9999
            """;

    private static final String PLAN = """
            title: Tiny try
            bathymetry: {file: depths.asc, crs: "EPSG:32617", values: elevation, unit: m, datum: MLLW, survey-order: 1a}
            bottom: {file: bottom.geojson, class: kind, classes: {sand: {suitability: 1}, Mud: {suitability: 0.5}, rock: never}}
            reefs: {file: reefs.csv, name: name, keep-off: 60 m, source: invented rule 1}
            inside: {file: areas.geojson}
            keep-off:
              - {layer: cables, file: cables.geojson, name: label, distance: 500 m, source: invented rule 2}
            limits: {depth: [60 m, 150 m]}
            module: {height: 9 m, landing-radius: 50 m}
            criteria: {depth: {weight: 1, curve: [60 m, 80 m, 120 m, 150 m]}}
            sites: {apart: 150 m}
            """;

    /** The grid lies about 81 W, easting 500000, from 27.0051 to 27.0078 N. */
    private static final String BOTTOM = collection(
            polygon("\"kind\": \"sand\"", -81.01, 27.0065, -80.99, 27.02),
            polygon("\"kind\": \"mud\"", -81.01, 27.0, -80.99, 27.0065),
            polygon("\"kind\": \"mud\"", -81.02, 27.0, -81.01, 27.0065),
            polygon("\"kind\": null", -80.99, 27.0, -80.98, 27.0065));
    private static final String AREAS = collection(polygon("\"name\": \"A\"", -81.01, 27.0, -80.99, 27.02));
    private static final String CABLES = collection("{\"type\": \"Feature\", \"properties\": {\"label\": \"east\"}, \"geometry\":"
            + " {\"type\": \"LineString\", \"coordinates\": [[-81.01, 27.007], [-80.9, 27.0071]]}}");
    private static final String REEFS = """
            name,latitude,longitude
            Old Barge,27 00.4321 N,81 00.0123 W
            Tyre Pile,27 00.4011 N,81 00.0432 W
            """;

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @BeforeEach
    void writeLayers() {
        write("depths.asc", GRID);
        write("bottom.geojson", BOTTOM);
        write("reefs.csv", REEFS);
        write("areas.geojson", AREAS);
        write("cables.geojson", CABLES);
    }

    /** Extent in longitude and latitude by gdaltransform of GDAL 3.6.2. */
    @Test
    void gridAndBathymetryAreToldFirst() {
        assertEquals(0, layers(PLAN), err::toString);
        assertEquals("", err.toString());
        assertEquals("""
                Tiny try
                  plan        plan.yaml
                  layers      5 read, 5 warnings, no problem

                working grid
                  CRS         EPSG:32617 (WGS 84 / UTM zone 17N)
                  cells       4 x 3 of 100 m, 12 in all
                  extent      499800.00 to 500200.00 east, 2987000.00 to 2987300.00 north, metres
                              27 00.3059 N to 27 00.4685 N, 81 00.1210 W to 80 59.8790 W
                  depths      the bathymetry's cells as they are, not resampled
                  scale error at most 0.040 % of a length
                  warning     its cell of 100 m is larger than the landing radius of 50 m, so landing room looks at one cell alone; choose a smaller cell

                bathymetry
                  file        depths.asc (Esri ASCII grid)
                  CRS         EPSG:32617 (WGS 84 / UTM zone 17N)
                  cells       4 x 3 of 100 x 100 metres, 12 in all
                  extent      499800.00 to 500200.00 east, 2987000.00 to 2987300.00 north, metres
                              27 00.3059 N to 27 00.4685 N, 81 00.1210 W to 80 59.8790 W
                  unit        m by the plan, none stated by the file
                  datum       MLLW
                  uncertainty IHO S-44 order 1a: at 100 m depth 1.39284 m vertical, 10 m horizontal (95 %)
                  no-data     8.3 % of the cells (1)
                  values      -160 to -55 in the file (elevation)
                  depths      55 to 160 m
                  limits      81.8 % of the cells with a value lie within 60 to 150 m
                """, out.toString().substring(0, out.toString().indexOf("\nbottom\n")));
    }

    @Test
    void theDatumOffsetIsInDepthsAndLimitsAndNotInValues() {
        layers(PLAN.replace("datum: MLLW", "datum: MLLW, datum-offset: -62 m"));
        String bathymetry = out.toString().substring(0, out.toString().indexOf("\nbottom\n"));
        assertTrue(bathymetry.contains("""
                  datum       MLLW
                  offset      -62 m, in every depth here but not in the values
                """), bathymetry);
        assertTrue(bathymetry.contains("""
                  values      -160 to -55 in the file (elevation)
                  depths      -7 to 98 m; negative is above the datum
                  limits      9.1 % of the cells with a value lie within 60 to 150 m
                """), bathymetry);
        assertTrue(bathymetry.contains("  note        62 m taken off every depth: the plan's datum-offset brings the file's depths to MLLW\n"), bathymetry);
        assertTrue(bathymetry.contains("2 of 11 cells with a value (18.2 %) lie above the datum, up to 7 m"), bathymetry);
    }

    @Test
    void vectorLayersFollowInThePlansOrder() {
        layers(PLAN);
        assertEquals("""
                bottom
                  file        bottom.geojson (GeoJSON)
                  CRS         EPSG:4326 (WGS 84)
                  features    4 (4 Polygon); all have a geometry, all are valid
                  extent      -81.0200000 to -80.9800000 longitude, 27.0000000 to 27.0200000 latitude, degrees
                              27 00.0000 N to 27 01.2000 N, 81 01.2000 W to 80 58.8000 W
                  on the grid 2 of 4 features (50.0 %)
                  attributes  kind
                  class       (none): 1 polygon, unmapped
                  class       mud: 2 polygons, not named by the plan
                  class       sand: 1 polygon, suitability 1
                  class       Mud: 0 polygons, suitability 0.5
                  class       rock: 0 polygons, never
                  warning     1 polygon without a class ("kind" is empty) count as unmapped
                  warning     the plan does not name the class "mud" of 2 polygons (it does name "Mud"); no run takes it on the grid until the plan does
                  warning     no polygon has the class "Mud" that the plan names
                  warning     no polygon has the class "rock" that the plan names
                """, block("bottom"));
        assertEquals("""
                reefs
                  file        reefs.csv (CSV)
                  CRS         EPSG:4326 (WGS 84)
                  features    2 (2 Point); all have a geometry, all are valid
                  extent      -81.0007200 to -81.0002050 longitude, 27.0066850 to 27.0072017 latitude, degrees
                              27 00.4011 N to 27 00.4321 N, 81 00.0432 W to 81 00.0123 W
                  on the grid 2 of 2 features (100 %)
                  attributes  name, latitude, longitude
                  note        its longitudes and latitudes are taken as WGS 84, since a CSV file states no CRS
                """, block("reefs"));
        assertEquals(List.of("inside", "keep-off \"cables\""), out.toString().lines()
                .filter(line -> line.startsWith("inside") || line.startsWith("keep-off")).toList());
        assertEquals(List.of(), warnings("keep-off \"cables\""));
    }

    @Test
    void layersThatCannotBeReadKeepNoOtherBack() {
        write("reefs.csv", "name,where\nOld Barge,out there\n");
        write("cables.geojson", "{\"type\": ");
        assertEquals(2, layers(PLAN));
        assertTrue(out.toString().contains("  layers      3 read, 5 warnings, 2 problems\n"), out::toString);
        assertTrue(block("inside").contains("on the grid 1 of 1 features (100 %)"), out::toString);
        List<String> problems = err.toString().lines().toList();
        assertEquals(2, problems.size(), err::toString);
        assertTrue(problems.get(0).startsWith("seacairn: reefs.csv, line 1: no columns of longitude and latitude"), problems.get(0));
        assertTrue(problems.get(1).startsWith("seacairn: cables.geojson, "), problems.get(1));
    }

    @Test
    void withoutBathymetryTheOthersAreToldWithoutOverlap() {
        write("depths.asc", GRID.replace("-160 -9999", "-160"));
        assertEquals(2, layers(PLAN));
        assertEquals("working grid\n  none        the bathymetry or the plan's crs does not allow one, so no overlap with it is told\n",
                block("working grid"));
        assertFalse(out.toString().contains("\n  on the grid"), out::toString);
        assertEquals("seacairn: depths.asc, line 10: the file ends after 11 of 12 values; it is cut short, get it again\n", err.toString());
    }

    @Test
    void aPlanAtFaultTellsOfNoLayer() {
        assertEquals(2, layers(PLAN.replace("values: elevation", "values: height")));
        assertEquals("", out.toString());
        assertTrue(err.toString().startsWith("seacairn: plan.yaml, line 2: "), err::toString);
    }

    @Test
    void quietPrintsProblemsOnly() {
        write("cables.geojson", "{\"type\": ");
        assertEquals(2, layers(PLAN, "--quiet"));
        assertEquals("", out.toString());
        assertEquals(1, err.toString().lines().count());
    }

    @Test
    void workingCellsThatDoNotSuitTheFileOrThePlanAreDoubted() {
        layers("cell: 0.005 m\n" + PLAN);
        assertEquals(List.of("it has 4,800,000,000 cells, more than 1,000,000,000; a larger cell takes less time",
                "its cell of 0.005 m is much smaller than the file's of about 100 m; depths and slopes between are interpolated,"
                        + " not surveyed"), warnings("working grid"));
        out.getBuffer().setLength(0);
        layers("cell: 300 m\n" + PLAN);
        assertEquals(List.of("its cell of 300 m is larger than the landing radius of 50 m, so landing room looks at one cell"
                        + " alone; choose a smaller cell",
                "its cell of 300 m is larger than apart, 150 m, so sites can stand no nearer than a cell; choose a smaller cell"
                        + " or a larger apart",
                "its cell of 300 m is much larger than the file's of about 100 m; each depth is drawn from the four file cells"
                        + " nearest to its centre, and ledges between go unseen; choose a smaller cell"), warnings("working grid"));
    }

    /** Twelve degrees from the central meridian the scale is 1.01731 (Snyder 1987, equation 8-11, worked by hand). */
    @Test
    void aCrsFarFromItsZoneIsDoubted() {
        layers("crs: EPSG:32615\ncell: 100 m\n" + PLAN.replace("landing-radius: 50 m", "landing-radius: 120 m"));
        assertEquals(List.of("lengths on it are off by up to 1.73 %, for which distances are corrected but slopes, landing room"
                + " and areas are not; name a crs made for the area, or plan a smaller area"), warnings("working grid"));
    }

    @Test
    void reefsThatStandTwiceHaveNoNameOrAreRounded() {
        write("reefs.csv", REEFS + "Old Barge (again),27.00720167,-81.000205\n,27 00.3333 N,81 00.0222 W\n");
        layers(PLAN);
        assertEquals(List.of("1 of 4 features have an empty name (\"name\"); they go by their number in the file",
                "the same place stands more than once: feature 1 \"Old Barge\" and feature 3 \"Old Barge (again)\""), warnings("reefs"));
        out.getBuffer().setLength(0);
        write("reefs.csv", "Name,latitude,longitude\nOld Barge,27 00.4 N,81 00.1 W\nTyre Pile,27 00.3 N,81 00.0 W\n");
        layers(PLAN);
        assertEquals(List.of("no feature has the attribute \"name\" that the plan names as its name; write \"Name\"",
                "all coordinates are rounded to tenths of a minute, which moves a place by up to 93 m each way; find the full"
                        + " coordinates, or state a position-uncertainty that covers it"), warnings("reefs"));
        out.getBuffer().setLength(0);
        layers(PLAN.replace("name: name, keep-off: 60 m", "keep-off: 60 m, position-uncertainty: 100 m"));
        assertEquals(List.of(), warnings("reefs"));
    }

    @Test
    void aClassAttributeThatTheFileLacksIsTold() {
        layers(PLAN.replace("class: kind", "class: bottom_type"));
        assertEquals(List.of("no feature has the attribute \"bottom_type\" that the plan names as its class, so every polygon"
                + " counts as unmapped; the file has \"kind\""), warnings("bottom"));
    }

    @Test
    void layersOffTheGridAreDoubtedUnlessTheyStillMatter() {
        write("cables.geojson", CABLES.replace("27.007", "28.007"));
        write("reefs.csv", "name,latitude,longitude\nOld Barge,27.01051,-81.00123\n");
        layers(PLAN);
        assertTrue(block("keep-off \"cables\"").contains("  on the grid none; the nearest about 110 km to the north\n"), out::toString);
        assertEquals(List.of("no feature comes near enough to the working grid to matter; if that is unexpected, check the file"
                + " and its CRS, EPSG:4326 (WGS 84)"), warnings("keep-off \"cables\""));
        out.getBuffer().setLength(0);
        layers(PLAN.replace("keep-off: 60 m", "keep-off: 500 m"));
        assertTrue(block("reefs").contains("  on the grid none; the nearest about 300 m to the north\n"), out::toString);
        assertEquals(List.of(), warnings("reefs"));
    }

    @Test
    void swappedCoordinatesAreToldEvenWhereTheyAreNoPlace() {
        write("cables.geojson", "{\"type\": \"LineString\", \"coordinates\": [[27.007, -81.0], [27.0071, -80.9]]}");
        write("areas.geojson", AREAS.replace("[-81.01, 27.0]", "[-181.01, 97.0]"));
        layers(PLAN);
        assertEquals(List.of("no feature has the attribute \"label\" that the plan names as its name; the file has no attributes",
                "x and y (longitude and latitude) look swapped: the other way 1 of 1 features would lie on the working grid;"
                        + " correct the file"), warnings("keep-off \"cables\""));
        assertEquals(List.of("1 of 1 features: a coordinate lies outside what its CRS can hold, first feature 1 at (-181.01, 97.0);"
                + " no run takes the layer until this is corrected",
                "all of it looks like metres or feet while its CRS, EPSG:4326 (WGS 84), is in degrees; check the CRS that the file"
                        + " or the plan states"), warnings("inside"));
        assertTrue(block("inside").contains("  on the grid cannot be told\n"), out::toString);
    }

    @Test
    void invalidMissingAndUselessGeometriesAreTold() {
        write("areas.geojson", collection(
                polygon("\"name\": \"A\"", -81.01, 27.0, -80.99, 27.02).replace("[-80.99, 27.02]", "[-81.0, 26.99]"),
                "{\"type\": \"Feature\", \"properties\": {}, \"geometry\": null}",
                "{\"type\": \"Feature\", \"properties\": {}, \"geometry\": {\"type\": \"Point\", \"coordinates\": [-81, 27.006]}}"));
        assertEquals(0, layers(PLAN), err::toString);
        assertTrue(block("inside").contains("  features    2 (1 Point, 1 Polygon); 1 more without geometry, see the warnings"), out::toString);
        List<String> warnings = warnings("inside");
        assertEquals("1 of 3 records have no geometry and are left out", warnings.get(0));
        assertTrue(warnings.get(1).startsWith("1 of 2 features: the polygon crosses itself, first feature 1 at (-81.0"), warnings.get(1));
        assertEquals("1 of 2 features are no polygons and say nothing of any cell", warnings.get(2));
    }

    @Test
    void aPermitAreaWithoutAnyDepthWithinTheLimitsIsTold() {
        write("areas.geojson", collection(polygon("\"name\": \"deep\"", -81.0, 27.005, -80.9985, 27.0059),
                polygon("\"name\": \"good\"", -81.01, 27.0, -80.99, 27.02)));
        layers(PLAN);
        assertEquals(List.of("no depth within the plan's limits lies in feature 1"), warnings("inside"));
    }

    @Test
    void jsonHoldsTheSameForPrograms() throws IOException {
        write("cables.geojson", "{\"type\": ");
        assertEquals(2, layers(PLAN, "--json"));
        Map<String, String> values = values(out.toString());
        assertEquals("4", values.get("/working_grid/cols"));
        assertEquals("false", values.get("/working_grid/resampled"));
        assertEquals("-160", values.get("/bathymetry/least_value"));
        assertEquals("160", values.get("/bathymetry/deepest_m"));
        assertEquals("0.083333", values.get("/bathymetry/no_data_share"));
        assertEquals("9", values.get("/bathymetry/cells_within_limits"));
        assertEquals("2", values.get("/layers/0/features_on_grid"));
        assertEquals("mud", values.get("/layers/0/classes/1/class"));
        assertEquals("false", values.get("/layers/0/classes/1/in_plan"));
        assertEquals("-81.02", values.get("/layers/0/extent_deg/0"));
        assertEquals("inside", values.get("/layers/2/role"));
        assertTrue(values.get("/problems/0").startsWith("cables.geojson, "), values.toString());
        assertFalse(values.containsKey("/layers/3/role"), values.toString());
    }

    /** Every value of a JSON text by its pointer (RFC 6901). */
    private static Map<String, String> values(String json) throws IOException {
        Map<String, String> values = new LinkedHashMap<>();
        try (JsonParser parser = new JsonFactory().createParser(json)) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                if (token.isScalarValue()) {
                    values.put(parser.getParsingContext().pathAsPointer().toString(), parser.getText());
                }
            }
        }
        return values;
    }

    /** The warnings of one block. */
    private List<String> warnings(String block) {
        return block(block).lines().filter(line -> line.startsWith("  warning")).map(line -> line.substring(14)).toList();
    }

    private String block(String name) {
        String text = out.toString() + "\n";
        int start = text.indexOf("\n" + name + "\n");
        assertTrue(start >= 0, "no block " + name + " in\n" + text);
        return text.substring(start + 1, text.indexOf("\n\n", start + 1) + 1);
    }

    private int layers(String plan, String... options) {
        write("plan.yaml", plan);
        String[] args = new String[options.length + 2];
        args[0] = "layers";
        args[1] = folder.resolve("plan.yaml").toString();
        System.arraycopy(options, 0, args, 2, options.length);
        return Seacairn.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
    }

    private void write(String name, String text) {
        try {
            Files.writeString(folder.resolve(name), text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String collection(String... features) {
        return "{\"type\": \"FeatureCollection\", \"features\": [\n" + String.join(",\n", features) + "]}\n";
    }

    private static String polygon(String property, double west, double south, double east, double north) {
        return "{\"type\": \"Feature\", \"properties\": {" + property + "}, \"geometry\": {\"type\": \"Polygon\", \"coordinates\": [[["
                + west + ", " + south + "], [" + east + ", " + south + "], [" + east + ", " + north + "], ["
                + west + ", " + north + "], [" + west + ", " + south + "]]]}}";
    }

    @Test
    void theCoverageOfALayerIsALayerToo() {
        TinyScene scene = new TinyScene(folder);
        scene.write("known.geojson", TinyScene.features(TinyScene.polygon("name", "survey", 0, 0, 700, 800)));
        scene.plan("distance: 100 m,", "distance: 100 m, coverage: known.geojson,");
        String out = TinyScene.run("layers", scene.path("plan.yaml").toString()).out();
        assertTrue(out.contains("\nOld Cables coverage\n  file        known.geojson (GeoJSON)\n"), out);
    }
}
