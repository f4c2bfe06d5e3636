package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.cli.TinyScene.Outcome;

/**
 * Charted depth areas through the command line. The site that most cases look at stands in the centre of column 30, row 19; within its
 * landing circle of 25 m lie that cell and the four beside it.
 */
class ChartedDepthCommandTest {
    private static final double X = 610;
    private static final double Y = 410;
    private static final double UNCERTAINTY_M = 0.5;
    private static final String LOOK = "look at sign, unit, datum and position of both, and for a shoal that one of them lacks";
    /** Of the five cells. */
    private static final double LEAST_M = extremeM(true);
    private static final double GREATEST_M = extremeM(false);

    @TempDir
    Path folder;

    private TinyScene scene;

    @BeforeEach
    void makeScene() {
        scene = new TinyScene(folder);
        scene.write("plan.yaml", TinyScene.PLAN.replace("keep-off:\n",
                "depth-areas: {file: areas.geojson, source: chart 7 of an invented coast}\nkeep-off:\n"));
    }

    /** As the grid's file has it. */
    private static double depthM(int col, int row) {
        return (float) (Math.round(100 * TinyScene.depthM(col, row)) / 100.0);
    }

    private static double extremeM(boolean least) {
        double[] five = {depthM(30, 19), depthM(29, 19), depthM(31, 19), depthM(30, 18), depthM(30, 20)};
        return least ? Arrays.stream(five).min().orElseThrow() : Arrays.stream(five).max().orElseThrow();
    }

    /** A rectangle with its ends as JSON. */
    private static String area(String shallow, String deep, double west, double south, double east, double north) {
        return String.format(Locale.ROOT, "{\"type\": \"Feature\", \"properties\": {\"DRVAL1\": %s, \"DRVAL2\": %s}, \"geometry\": {\"type\": \"Polygon\","
                + " \"coordinates\": [%s]}}", shallow, deep, TinyScene.line(west, south, east, south, east, north, west, north, west, south));
    }

    private static String everywhere(String shallow, String deep) {
        return area(shallow, deep, -200, -200, 1400, 1000);
    }

    private CSVRecord review(double xM, double yM, String... areas) {
        scene.write("areas.geojson", TinyScene.features(areas));
        scene.write("proposal.csv", "name,longitude,latitude\nOne," + TinyScene.lonLat(xM, yM).replace(" ", "") + "\n");
        return row(run("review", scene.path("proposal.csv").toString()));
    }

    private Outcome run(String command, String... options) {
        return TinyScene.run(Stream.concat(Stream.of(command, scene.path("plan.yaml").toString()),
                Stream.of(options)).toArray(String[]::new));
    }

    private CSVRecord row(Outcome outcome) {
        assertTrue(outcome.status() <= 1, outcome::err);
        try (CSVParser parser = CSVParser.parse(scene.path("plan-review/review.csv"), StandardCharsets.UTF_8,
                CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).build())) {
            return parser.getRecords().stream().filter(r -> r.get("rule").equals("charted-depth")).findFirst().orElseThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void assertFigures(double requiredM, double measuredM, CSVRecord row) {
        assertEquals(requiredM, Double.parseDouble(row.get("required_m")), 0.00051);
        assertEquals(measuredM, Double.parseDouble(row.get("measured_m")), 0.00051);
    }

    private static void assertVerdict(String verdict, String note, CSVRecord row) {
        assertEquals(verdict + ": " + note, row.get("verdict") + ": " + row.get("note"));
    }

    // depth known

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            80   | 100  | pass     | charted 80 to 100 m
            80   | null | pass     | charted 80 m or more
            null | 100  | pass     | charted 100 m or less
            95   | 100  | marginal | shoaler than the charted 95 to 100 m and the bathymetry's uncertainty, at 5 of 5 places; LOOK
            95   | null | marginal | shoaler than the charted 95 m or more and the bathymetry's uncertainty, at 5 of 5 places; LOOK
            20   | 85   | marginal | deeper than the charted 20 to 85 m and the bathymetry's uncertainty, at 5 of 5 places; LOOK
            null | 85   | marginal | deeper than the charted 85 m or less and the bathymetry's uncertainty, at 5 of 5 places; LOOK
            -3   | 0    | marginal | deeper than the charted -3 to 0 m and the bathymetry's uncertainty, at 5 of 5 places; LOOK
            null | null | no data  | outside every charted depth area, at 5 of 5 places
            """)
    void aKnownDepthIsComparedAndNeverFails(String shallow, String deep, String verdict, String note) {
        CSVRecord row = review(X, Y, everywhere(shallow, deep), area("1", "2", 1100, 0, 1200, 100));
        assertVerdict(verdict, note.replace("LOOK", LOOK), row);
        assertEquals(verdict.equals("no data") ? "" : "#1", row.get("nearest_feature"));
        assertEquals("chart 7 of an invented coast", row.get("source"));
        assertEquals("true", row.get("confirmed"));
        assertEquals("geodesic", row.get("edges"));
    }

    @Test
    void theFiguresAreThoseOfTheCellThatLiesFarthestOut() {
        assertFigures(95 - UNCERTAINTY_M, LEAST_M, review(X, Y, everywhere("95", "100")));
        assertFigures(85 + UNCERTAINTY_M, GREATEST_M, review(X, Y, everywhere("20", "85")));
        assertFigures(85 - UNCERTAINTY_M, LEAST_M, review(X, Y, everywhere("85", "200")));
    }

    @ParameterizedTest
    @CsvSource({"0.5, pass", "0.499, pass", "0.502, marginal"})
    void theUncertaintyOfTheBathymetryIsAllowed(double beyondM, String verdict) {
        assertEquals(verdict, review(X, Y, everywhere(Double.toString(LEAST_M + beyondM), "200")).get("verdict"));
        assertEquals(verdict, review(X, Y, everywhere("10", Double.toString(GREATEST_M - beyondM))).get("verdict"));
    }

    // depth not known: the cell in column 5, row 5 has none

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            60   | 100  | marginal | 60  | 60   | charted 60 to 100 m, at 4 of 5 places; depth from a charted depth area only, 60 to 100 m, at 1 of 5 places; survey the place
            65   | null | marginal | 60  | 65   | charted 65 m or more, at 4 of 5 places; depth from a charted depth area only, 65 m or more, at 1 of 5 places; survey the place
            10   | 100  | marginal | 60  | 10   | charted 10 to 100 m, at 4 of 5 places; depth from a charted depth area only, 10 to 100 m, at 1 of 5 places; survey the place
            20   | 59.9 | fail     | 60  | 59.9 | deeper than the charted 20 to 59.9 m and the bathymetry's uncertainty, at 4 of 5 places; no depth but the charted 20 to 59.9 m, at 1 of 5 places, and all of it is less than the 60 m that the limits ask for; LOOK
            -3   | 0    | fail     | 60  | 0    | deeper than the charted -3 to 0 m and the bathymetry's uncertainty, at 4 of 5 places; no depth but the charted -3 to 0 m, at 1 of 5 places, which is no water at all; LOOK
            121  | 200  | fail     | 120 | 121  | shoaler than the charted 121 to 200 m and the bathymetry's uncertainty, at 4 of 5 places; no depth but the charted 121 to 200 m, at 1 of 5 places, and all of it is more than the 120 m that the limits allow; LOOK
            """)
    void anUnknownDepthHasTheChartsWordAndNeverPasses(String shallow, String deep, String verdict, double requiredM, double measuredM, String note) {
        CSVRecord row = review(110, 690, everywhere(shallow, deep));
        assertVerdict(verdict, note.replace("LOOK", LOOK), row);
        assertFigures(requiredM, measuredM, row);
    }

    /** A module of 8 m. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            clearance-above: 20 m    | 28
            height-share: 0.2        | 40
            slope: 8 deg             | 0
            """)
    void waterOverTheModuleIsAskedForToo(String limit, double leastM) {
        scene.plan("limits: {depth: [60 m, 120 m], slope: 8 deg, clearance-above: 20 m}", "limits: {" + limit + "}");
        assertFigures(leastM, leastM + 1, review(110, 690, everywhere(Double.toString(leastM + 1), "90")));
        if (leastM > 0) {
            assertEquals("fail", review(110, 690, everywhere("2", Double.toString(leastM - 0.1))).get("verdict"));
        }
        assertEquals("marginal", review(110, 690, everywhere("2", Double.toString(leastM + 4))).get("verdict"));
    }

    @Test
    void anUnknownShallowEndIsNoZero() {
        CSVRecord row = review(110, 690, everywhere("null", "100"));
        assertVerdict("marginal", "charted 100 m or less, at 4 of 5 places; depth from a charted depth area only, 100 m or less, at 1 of 5 places; survey the place", row);
        assertEquals("60.000 and ", row.get("required_m") + " and " + row.get("measured_m"));
    }

    @Test
    void theDepthRuleStillSaysThatThereIsNoDepth() throws IOException {
        review(110, 690, everywhere("60", "100"));
        assertTrue(scene.read("plan-review/review.csv").lines().anyMatch(line -> line.startsWith("One,depth-least,") && line.contains(",no data,")));
    }

    // which area counts

    @Test
    void whereAreasOverlapTheShoalestCounts() {
        assertEquals("#2", review(X, Y, everywhere("80", "100"), everywhere("20", "50"), everywhere("30", "95")).get("nearest_feature"));
        assertEquals("#1", review(X, Y, everywhere("null", "5"), everywhere("50", "100")).get("nearest_feature"));
    }

    @Test
    void outsideEveryAreaThereIsNoData() {
        CSVRecord row = review(X, Y, area("80", "100", 0, 0, 100, 100));
        assertVerdict("no data", "outside every charted depth area, at 5 of 5 places", row);
        assertEquals("", row.get("required_m") + row.get("measured_m") + row.get("margin_m"));
        assertVerdict("no data", "charted 80 to 100 m; outside every charted depth area, at 1 of 5 places; the figures are of the others",
                review(X, Y, area("80", "100", 0, 0, 622, 800)));
    }

    @Test
    void aPlaceOffTheGridIsNoData() {
        assertVerdict("no data", "off the grid of the bathymetry", review(-3000, 400, everywhere("80", "100")));
    }

    @Test
    void aChartedShoalThatHoldsNoCellCentreIsFound() {
        CSVRecord row = review(X, Y, everywhere("80", "100"), area("5", "10", 617, 417, 621, 421));
        assertVerdict("marginal", "charted 80 to 100 m, at 5 of 6 places; deeper than the charted 5 to 10 m and the bathymetry's uncertainty, at 1 of 6 places; " + LOOK, row);
        assertEquals("#2", row.get("nearest_feature"));
        assertEquals("pass", review(X, Y, everywhere("80", "100"), area("5", "10", 632, 432, 636, 436)).get("verdict"), "beyond the landing circle");
    }

    @Test
    void aSlopeBesideItsContourIsNoContradiction() {
        String beyondM = Double.toString(depthM(32, 19) - 0.1);
        assertTrue(depthM(31, 19) < depthM(32, 19) - 0.1 - UNCERTAINTY_M, "the slope is too gentle for this case");
        CSVRecord row = review(X, Y, area("20", beyondM, 0, 0, 633, 800), area(beyondM, "150", 633, 0, 1200, 800));
        assertEquals("pass", row.get("verdict"), row.get("note"));
        assertEquals("#2", row.get("nearest_feature"));
    }

    // polygons

    private CSVRecord reviewPolygon(double west, double south, double east, double north, String... areas) {
        scene.write("areas.geojson", TinyScene.features(areas));
        scene.write("proposal.geojson", TinyScene.features(TinyScene.polygon("name", "Plot", west, south, east, north)));
        return row(run("review", scene.path("proposal.geojson").toString()));
    }

    @Test
    void ofAPolygonEveryCellIsComparedWithItsOwnArea() {
        String[] areas = {area("60", "92", 0, 0, 600, 800), area("88", "120", 600, 0, 1200, 800)};
        assertVerdict("pass", "charted 60 to 92 m", reviewPolygon(500, 300, 700, 500, areas));
        // The same two areas the other way round.
        CSVRecord row = reviewPolygon(500, 300, 700, 500, area("88", "120", 0, 0, 600, 800), area("60", "88", 600, 0, 1200, 800));
        assertEquals("marginal", row.get("verdict"));
        assertTrue(row.get("note").contains("shoaler than the charted 88 to 120 m") && row.get("note").contains("deeper than the charted 60 to 88 m"),
                row.get("note"));
    }

    @Test
    void aChartedShoalBetweenTheCentresOfAPolygonsCellsIsFound() {
        CSVRecord row = reviewPolygon(500, 300, 700, 500, everywhere("70", "120"), area("5", "10", 597, 397, 603, 403));
        assertEquals("marginal", row.get("verdict"));
        assertEquals("#2", row.get("nearest_feature"));
        assertEquals("pass", reviewPolygon(500, 300, 700, 500, everywhere("70", "120"), area("5", "10", 737, 397, 743, 403)).get("verdict"));
    }

    @Test
    void ofAnAreaOfSeveralPolygonsEachIsLookedAt() {
        String both = area("5", "10", 617, 417, 621, 421).replace("\"Polygon\", \"coordinates\": ", "\"MultiPolygon\", \"coordinates\": [")
                .replace("]]]}}", "]]], [" + TinyScene.line(300, 0, 310, 0, 310, 10, 300, 10, 300, 0) + "]]}}");
        assertEquals("marginal", review(X, Y, everywhere("80", "100"), both).get("verdict"));
    }

    // what else shows it

    @Test
    void aReviewThatOnlyTheChartMakesMarginalSaysSo() {
        scene.write("areas.geojson", TinyScene.features(everywhere("5", "10")));
        scene.write("proposal.csv", "name,longitude,latitude\nOne," + TinyScene.lonLat(X, Y).replace(" ", "") + "\n");
        Outcome outcome = run("review", scene.path("proposal.csv").toString());
        assertEquals(1, outcome.status());
        assertTrue(outcome.out().contains("Answer: every rule is kept, but at some places the depth contradicts the chart\n"), outcome.out());
        String summary = scene.read("plan-review/summary.txt");
        assertTrue(summary.contains("marginal  charted-depth (deeper than the charted 5 to 10 m"), summary);
        String page = scene.read("plan-review/report.html");
        assertTrue(page.contains("Marginal: every rule is kept, but at some places the depth contradicts the chart."));
        assertTrue(page.contains("Charted depth areas</dt><dd><bdi>areas.geojson, in m; chart 7 of an invented coast"));
        assertTrue(scene.read("plan-review/run.json").contains("\"file\" : \"areas.geojson\""));
        assertEquals(0, run("review", scene.path("proposal.csv").toString(), "--marginal-ok").status());
    }

    @Test
    void aRankingIsTheSameAndWarnsOfContradictions() {
        scene.write("areas.geojson", TinyScene.features(everywhere("5", "10")));
        Outcome with = scene.rank();
        assertEquals(0, with.status(), with::err);
        String sites = scene.read("plan-out/sites.csv");
        assertTrue(scene.read("plan-out/run.json").contains("charted-depth: marginal in a review at S01, S02, S03, S04 (run review on sites.csv for the figures)"));
        scene.write("plan.yaml", TinyScene.PLAN);
        assertEquals(0, scene.rank().status());
        assertEquals(scene.read("plan-out/sites.csv"), sites);
    }

    // what is refused

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            50    | 20   | areas.geojson, feature 1: DRVAL1 is 50 and DRVAL2 is 20, so its shallow end is the deeper one; correct it, or swap shallow and deep in the plan
            "ten" | 20   | areas.geojson, feature 1: DRVAL1 is "ten" and no depth; correct it, or leave it empty where it is not known
            """)
    void depthsThatMakeNoSenseAreRefused(String shallow, String deep, String problem) {
        scene.write("areas.geojson", TinyScene.features(everywhere(shallow, deep)));
        Outcome outcome = scene.rank();
        assertEquals(2, outcome.status());
        assertTrue(outcome.err().contains(problem), outcome.err());
        Outcome layers = run("layers");
        assertTrue(layers.out().contains("warning     " + problem + "; no run takes the layer until this is corrected\n"), layers.out());
    }

    @Test
    void areasOffTheGridAreRefused() {
        scene.write("areas.geojson", TinyScene.features(area("5", "10", 9000, 0, 9100, 100)));
        assertTrue(scene.rank().err().contains("areas.geojson: no polygon of \"depth areas\" meets the working grid; check the file and its CRS"));
    }

    // layers

    private String layers(String... areas) {
        scene.write("areas.geojson", TinyScene.features(areas));
        Outcome outcome = run("layers");
        assertEquals(0, outcome.status(), outcome::err);
        int from = outcome.out().indexOf("\ndepth-areas\n");
        return outcome.out().substring(from, outcome.out().indexOf("\n\n", from + 1) + 1);
    }

    /** 60 x 40 cells, one without depth; 30 columns lie west of 600 m, with depths up to 91.1 m. */
    @Test
    void layersTellsHowManyCellsAgree() {
        String told = layers(area("60", "95", 0, 0, 600, 800), area("130", "200", 600, 0, 1000, 800), area("null", "null", 1000, 0, 1200, 800));
        assertTrue(told.contains("""
                  compared    1,999 of 2,400 cells looked at; 400 with a depth lie in no area, 1 in an area have no depth
                  charted     60.0 % within the charted range, 40.0 % shoaler, 0 % deeper, beyond the bathymetry's uncertainty
                  silent      1 polygon without a charted depth
                """), told);
        String json = run("layers", "--json").out();
        assertTrue(json.replaceAll("\\s+", " ").contains("\"charted_depth\" : { \"cells_looked_at\" : 2400, \"compared\" : 1999, \"within\" : 1199,"
                + " \"shoaler\" : 800, \"deeper\" : 0, \"in_no_area\" : 400, \"without_depth\" : 1, \"polygons_without_charted_depth\" : 1 }"), json);
    }

    @Test
    void layersHasNoDoubtWhereMostAgree() {
        assertTrue(!layers(everywhere("60", "120")).contains("contradict"));
        assertTrue(!layers(everywhere("67", "120")).contains("contradict"), "less than a tenth is shoaler");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            values: elevation, unit: m | values: depth, unit: m       | 100 % of the cells compared contradict their charted depth area; look for a mistake: there would agree 100 % with "values: elevation"
            values: elevation, unit: m | values: elevation, unit: ft  | 100 % of the cells compared contradict their charted depth area; look for a mistake: there would agree 100 % with "unit: m" of the bathymetry, 100 % with "unit: ft" of the depth areas
            unit: m, vertical          | unit: m, datum: MLLW, datum-offset: 6 m, vertical | of the cells compared contradict their charted depth area; look for a mistake: there would agree
            """)
    void layersNamesTheMistakeThatWouldExplainIt(String old, String wrong, String doubt) {
        scene.plan(old, wrong);
        String told = layers(area("63", "80", 0, 0, 300, 800), area("75", "93", 300, 0, 600, 800), area("88", "106", 600, 0, 900, 800),
                area("100", "118", 900, 0, 1200, 800));
        assertTrue(told.contains(doubt), told);
    }

    @Test
    void layersNamesAllThatIsToBeCheckedWhereNoOneMistakeExplainsIt() {
        String told = layers(area("1", "2", 0, 0, 600, 800), area("1000", "2000", 600, 0, 1200, 800));
        assertTrue(told.contains("100 % of the cells compared contradict their charted depth area; check sign (values), unit, datum and position of the"
                + " bathymetry and of the depth areas\n"), told);
    }
}
