package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seacairn.cli.TinyScene.Outcome;

class ReviewCommandTest {
    @TempDir
    Path folder;

    private TinyScene scene;

    @BeforeEach
    void makeScene() {
        scene = new TinyScene(folder);
    }

    private Outcome review(String proposal, String... options) {
        List<String> args = new ArrayList<>(List.of("review", scene.path("plan.yaml").toString(), scene.path(proposal).toString()));
        args.addAll(List.of(options));
        return TinyScene.run(args.toArray(String[]::new));
    }

    private List<CSVRecord> rows() throws IOException {
        try (CSVParser parser = CSVParser.parse(scene.path("plan-review/review.csv"), StandardCharsets.UTF_8,
                CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).build())) {
            return parser.getRecords();
        }
    }

    private CSVRecord row(String site, String rule) throws IOException {
        return rows().stream().filter(r -> r.get("site").equals(site) && r.get("rule").equals(rule)).findFirst().orElseThrow();
    }

    /** A point of the scene in longitude and latitude with a comma between. */
    private static String at(double xM, double yM) {
        return TinyScene.lonLat(xM, yM).replace(" ", "");
    }

    private TinyScene csv(String... rows) {
        return scene.write("proposal.csv", "name,longitude,latitude\n" + String.join("\n", rows) + "\n");
    }

    @Test
    void aSiteThatKeepsEveryRulePassesAndExitsWithZero() throws IOException {
        csv("Good," + at(600, 400));
        Outcome outcome = review("proposal.csv");
        assertEquals(0, outcome.status(), outcome.out() + outcome.err());
        assertEquals(Set.of("pass"), Set.copyOf(rows().stream().map(r -> r.get("verdict")).toList()));
        assertEquals(List.of("depth-least", "depth-greatest", "clearance-above", "slope", "bottom", "inside", "reefs", "keep-off:Old Cables"),
                rows().stream().map(r -> r.get("rule")).toList());
        assertTrue(outcome.out().contains("Answer: every rule is met at every site"), outcome.out());
    }

    @Test
    void theColumnsAreThoseOfTheContract() throws IOException {
        csv("Good," + at(600, 400));
        review("proposal.csv");
        assertTrue(scene.read("plan-review/review.csv").startsWith("site,rule,source,required_m,measured_m,allowance_m,margin_m,verdict,"
                + "nearest_feature,nearest_longitude_deg,nearest_latitude_deg,bearing_deg,"));
        assertEquals(Set.of("review.csv", "review.gpkg", "summary.txt", "report.html", "run.json", "styles/approaches.sld", "styles/proposed_points.sld",
                "styles/proposed_polygons.sld", "styles/review.sld"), TinyScene.bytes(scene.path("plan-review")).keySet());
    }

    @Test
    void everyRuleSaysItsSourceAndWhetherItIsConfirmed() throws IOException {
        scene.plan("source: \"invented rule 2\"", "source: \"invented rule 2\", confirmed: false");
        csv("Good," + at(600, 400));
        Outcome outcome = review("proposal.csv");
        assertEquals("invented rule 2", row("Good", "keep-off:Old Cables").get("source"));
        assertEquals("false", row("Good", "keep-off:Old Cables").get("confirmed"));
        assertEquals("true", row("Good", "reefs").get("confirmed"));
        assertEquals("plan.yaml, limits: slope", row("Good", "slope").get("source"));
        assertEquals("geodesic", row("Good", "reefs").get("edges"));
        assertTrue(scene.read("plan-review/summary.txt").contains("the text of the rule for \"Old Cables\": its source is not confirmed"), outcome.out());
    }

    @Test
    void whatIsTooNearFailsAndWhatOnlyTheAllowanceCoversIsMarginal() throws IOException {
        // The reef stands at 700, 200; its rule is 60 m, and the landing radius 25 m.
        csv("Near," + at(700, 259), "Just," + at(700, 275), "Far," + at(700, 290));
        assertEquals(1, review("proposal.csv").status());
        assertEquals(List.of("fail", "marginal", "pass"), rows().stream().filter(r -> r.get("rule").equals("reefs"))
                .map(r -> r.get("verdict")).toList());
        CSVRecord just = row("Just", "reefs");
        assertEquals(60, Double.parseDouble(just.get("required_m")));
        assertEquals(75, Double.parseDouble(just.get("measured_m")), 0.05);
        assertEquals(25, Double.parseDouble(just.get("allowance_m")));
        assertEquals(-10, Double.parseDouble(just.get("margin_m")), 0.05);
        assertEquals("Teapot", just.get("nearest_feature"));
        assertEquals(180, Double.parseDouble(just.get("bearing_deg")), 0.5);
    }

    @Test
    void marginalIsAcceptedIfAskedFor() {
        csv("Just," + at(700, 275));
        assertEquals(1, review("proposal.csv").status());
        assertEquals(0, review("proposal.csv", "--marginal-ok").status());
    }

    @ParameterizedTest
    @CsvSource({
        "in the rock,        360, 350, bottom, fail",
        "beside the rock,    440, 350, bottom, marginal",
        "over the edge,      70,  400, inside, marginal",
        "outside,            30,  400, inside, fail",
        "off the grid,      1250, 400, depth-least, no data",
        "where depth fails,  110, 690, slope, no data"})
    void eachKindOfGroundHasItsVerdict(String what, double x, double y, String rule, String verdict) throws IOException {
        csv("Here," + at(x, y));
        assertEquals(1, review("proposal.csv").status(), what);
        assertEquals(verdict, row("Here", rule).get("verdict"), what + ": " + row("Here", rule).toList());
    }

    @Test
    void beyondALayersCoverageNothingPassesSilently() throws IOException {
        scene.write("known.geojson", TinyScene.features(TinyScene.polygon("name", "survey", 0, 0, 700, 800)));
        scene.plan("distance: 100 m,", "distance: 100 m, coverage: known.geojson,");
        csv("Known," + at(500, 300), "Edge," + at(650, 300), "Beyond," + at(900, 300), "Hit," + at(900, 630));
        assertEquals(1, review("proposal.csv").status());
        assertEquals(List.of("pass", "no data", "no data", "fail"), rows().stream()
                .filter(r -> r.get("rule").equals("keep-off:Old Cables")).map(r -> r.get("verdict")).toList());
        assertEquals("outside the layer's coverage", row("Beyond", "keep-off:Old Cables").get("note"));
    }

    @Test
    void twinsAndNamesakesFail() throws IOException {
        csv("A," + at(600, 400), "B," + at(600.5, 400), "C," + at(600, 500), "C," + at(900, 300));
        assertEquals(1, review("proposal.csv").status());
        List<CSVRecord> duplicates = rows().stream().filter(r -> r.get("rule").equals("duplicate")).toList();
        assertEquals(List.of("fail", "fail", "fail", "fail"), duplicates.stream().map(r -> r.get("verdict")).toList());
        assertEquals("the same place as B, to a metre", duplicates.get(0).get("note"));
        assertEquals("its name is used 2 times", duplicates.get(2).get("note"));
        assertEquals("fail", row("A", "apart").get("verdict"));
    }

    @Test
    void polygonsAreJudgedAtTheirWorstPointAndShareNoGround() throws IOException {
        scene.write("proposal.geojson", TinyScene.features(TinyScene.polygon("name", "West", 500, 420, 600, 520),
                TinyScene.polygon("name", "East", 580, 420, 700, 520), TinyScene.polygon("name", "Next", 700, 420, 760, 520),
                TinyScene.polygon("name", "Over the cable", 400, 550, 500, 700)));
        assertEquals(1, review("proposal.geojson").status());
        assertEquals("fail", row("West", "overlap").get("verdict"));
        assertEquals("shares ground with East", row("West", "overlap").get("note"));
        assertEquals("pass", row("Next", "overlap").get("verdict"));
        assertEquals("0.000", row("Over the cable", "keep-off:Old Cables").get("measured_m"));
        assertEquals("fail", row("Over the cable", "keep-off:Old Cables").get("verdict"));
        assertEquals(63.9, Double.parseDouble(row("West", "bottom").get("measured_m")), 20);
    }

    @Test
    void theSitesOfARankingPassWithoutFailure() throws IOException {
        assertEquals(0, scene.rank().status());
        Outcome outcome = review("plan-out/sites.csv");
        assertFalse(rows().stream().anyMatch(r -> r.get("verdict").equals("fail")), outcome.out());
        assertEquals(4, rows().stream().map(r -> r.get("site")).distinct().count());
    }

    @Test
    void theSameBytesFromAnyNumberOfThreads() {
        csv("A," + at(600, 400), "B," + at(360, 350), "C," + at(70, 400));
        review("proposal.csv", "--threads", "1");
        Map<String, String> one = TinyScene.bytes(scene.path("plan-review"));
        review("proposal.csv", "--threads", "3");
        Map<String, String> three = TinyScene.bytes(scene.path("plan-review"));
        for (String file : one.keySet()) {
            if (!file.equals("run.json")) {
                assertEquals(one.get(file), three.get(file), file);
            }
        }
    }

    @Test
    void theGeoPackageHoldsTheSameRows() throws IOException, SQLException {
        csv("A," + at(600, 400), "B," + at(360, 350));
        review("proposal.csv");
        try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + scene.path("plan-review/review.gpkg"));
                ResultSet found = db.createStatement().executeQuery(
                        "SELECT group_concat(site || ' ' || rule || ' ' || verdict, ';') FROM review")) {
            String expected = String.join(";", rows().stream().map(r -> r.get("site") + " " + r.get("rule") + " " + r.get("verdict")).toList());
            assertEquals(expected, found.getString(1));
        }
    }

    @Test
    void theSummarySpeaksTheUnitsThatAreAskedForAndCautions() {
        csv("Just," + at(700, 275));
        String us = review("proposal.csv", "--display", "us").out();
        assertTrue(us.contains("required 196.9 ft, allowance 82.0 ft"), us);
        String metric = review("proposal.csv", "--display", "metric").out();
        assertTrue(metric.contains("required 60.0 m, allowance 25.0 m"), metric);
        for (String text : List.of(us, metric, scene.read("plan-review/summary.txt"))) {
            assertTrue(text.contains("The permitting authority, the coast guard's notice and local codes decide."), text);
        }
    }

    @Test
    void theSummaryFitsOneScreenHoweverManySitesFail() {
        csv(IntStream.range(0, 20).mapToObj(i -> "Site " + i + "," + at(700, 200 + i)).toArray(String[]::new));
        String out = review("proposal.csv").out();
        assertTrue(out.lines().count() <= 30, out);
        assertTrue(out.contains("\n  Site 0       fail      reefs") && out.contains("\n  and 15 more in review.csv\n"), out);
        assertTrue(out.contains("\nOpen " + scene.path("plan-review/report.html") + ", with map and tables;"), out);
    }

    @Test
    void jsonTellsProgramsTheCountsTheTightestAndWhatWasNotChecked() {
        csv("Just," + at(700, 275));
        String json = review("proposal.csv", "--json").out();
        assertTrue(json.contains("\"verdict\" : \"marginal\"") && json.contains("\"marginal\" : 1") && json.contains("\"not_checked\" : ["), json);
        assertEquals(3, json.split("\"margin_m\"").length - 1, json);
    }

    @Test
    void aNameThatASpreadsheetWouldRunIsQuoted() throws IOException {
        csv("=1+2," + at(600, 400));
        assertEquals(0, review("proposal.csv").status());
        assertTrue(scene.read("plan-review/review.csv").lines().skip(1).allMatch(line -> line.startsWith("\"'=1+2\",")));
    }

    @Test
    void aNameThatWouldFloodTheScreenIsCutShortThereAndWholeInTheTable() throws IOException {
        String name = "N\u001b[31m" + "n".repeat(10_000);
        csv(name + "," + at(360, 350));
        String out = review("proposal.csv").out();
        assertTrue(out.lines().allMatch(line -> line.length() < 250) && out.indexOf('\u001b') < 0, out);
        assertEquals(name, rows().get(0).get("site"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"windows-1252", "UTF-16LE", "UTF-8"})
    void spreadsheetsOfOtherLanguagesAreRead(String charset) throws IOException {
        String mark = charset.equals("UTF-16LE") ? "\uFEFF" : "";
        scene.write("proposal.csv", (mark + "Name;Breite;Länge\nFöhr;" + swapped(600, 400) + "\n").getBytes(Charset.forName(charset)));
        assertEquals(0, review("proposal.csv").status());
        assertEquals("pass", row("Föhr", "reefs").get("verdict"));
    }

    private static String swapped(double xM, double yM) {
        String[] lonLat = TinyScene.lonLat(xM, yM).split(", ");
        return lonLat[1].replace('.', ',') + ";" + lonLat[0].replace('.', ',');
    }

    @Test
    void eastingAndNorthingNeedTheirCrs() throws IOException {
        scene.write("proposal.csv", "site,easting,northing\nA,520600,3270400\n");
        Outcome without = review("proposal.csv");
        assertEquals(2, without.status());
        assertTrue(without.err().contains("EPSG:"), without.err());
        assertEquals(0, review("proposal.csv", "--crs", "EPSG:32617").status());
        assertEquals("pass", row("A", "inside").get("verdict"));
    }

    @Test
    void otherFormatsAreProposalsToo() throws IOException {
        String[] lonLat = TinyScene.lonLat(600, 400).split(", ");
        scene.write("p.gpx", "<gpx version=\"1.1\" creator=\"t\" xmlns=\"http://www.topografix.com/GPX/1/1\"><wpt lat=\"" + lonLat[1]
                + "\" lon=\"" + lonLat[0] + "\"><name>G</name></wpt></gpx>");
        assertEquals(0, review("p.gpx").status());
        assertEquals("pass", row("G", "inside").get("verdict"));
        scene.write("p.kml", "<kml xmlns=\"http://www.opengis.net/kml/2.2\"><Placemark><name>K</name><Point><coordinates>" + lonLat[0] + ","
                + lonLat[1] + "</coordinates></Point></Placemark></kml>");
        assertEquals(0, review("p.kml").status());
        assertEquals("pass", row("K", "inside").get("verdict"));
    }

    @Test
    void swappedCoordinatesAreNamed() {
        String[] lonLat = TinyScene.lonLat(600, 400).split(", ");
        csv("A," + lonLat[1] + "," + lonLat[0]);
        Outcome outcome = review("proposal.csv");
        assertEquals(new Outcome(2, "", "seacairn: proposal.csv, site A: latitude and longitude look swapped; the other way it would lie"
                + " on the grid of the bathymetry; correct the file\n"), withoutWarnings(outcome));
        assertFalse(Files.exists(scene.path("plan-review")));
    }

    @Test
    void aLostMinusIsNamed() {
        csv("A," + at(600, 400).substring(1));
        Outcome outcome = review("proposal.csv");
        assertEquals(2, outcome.status());
        assertTrue(outcome.err().contains("the sign of the longitude looks wrong (west is negative)"), outcome.err());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "name,longitude,latitude                    | holds no",
        "name,longitude,latitude§A,81 60.2 W,29 30 N | 60.2 minutes",
        "name,longitude,latitude§A,81 20.2,29 30 N   | neither hemisphere nor sign",
        "name,here,there§A,1,2                       | no columns of longitude and latitude"})
    void badRowsAreRefusedInOneSentence(String text, String told) {
        scene.write("proposal.csv", text.replace("§", "\n") + "\n");
        Outcome outcome = review("proposal.csv");
        assertEquals(2, outcome.status(), outcome.err());
        assertTrue(outcome.err().contains(told), outcome.err());
        assertFalse(outcome.err().contains("\tat "), outcome.err());
    }

    @Test
    void linesAreNoProposal() {
        scene.write("p.geojson", TinyScene.features(TinyScene.feature("name", "L", "LineString", TinyScene.line(500, 400, 600, 400))));
        Outcome outcome = review("p.geojson");
        assertEquals(2, outcome.status());
        assertTrue(outcome.err().contains("p.geojson, feature 1: is a line, and a proposal holds points (one a module) or polygons"), outcome.err());
    }

    @Test
    void anOutputFolderThatHoldsTheProposalIsRefused() {
        assertEquals(0, scene.rank().status());
        Outcome outcome = review("plan-out/sites.csv", "--out", scene.path("plan-out").toString());
        assertEquals(2, outcome.status());
        assertTrue(outcome.err().contains("sites.csv: lies in the output folder plan-out, which would be replaced;"
                + " name another folder with --out"), outcome.err());
        assertTrue(Files.exists(scene.path("plan-out/sites.csv")));
    }

    @Test
    void aProposalThatIsNotThereIsNamed() {
        Outcome outcome = review("nothing.csv");
        assertEquals(new Outcome(2, "", "seacairn: nothing.csv: there is no such file; check its name\n"), outcome);
    }

    @Test
    void aColumnOfNamesThatIsNotThereIsNamed() {
        csv("A," + at(600, 400));
        Outcome outcome = review("proposal.csv", "--name", "nam");
        assertEquals(2, outcome.status());
        assertTrue(outcome.err().contains("no feature has the attribute \"nam\" that --name asks for; did you mean \"name\"?"), outcome.err());
    }

    private static Outcome withoutWarnings(Outcome outcome) {
        return new Outcome(outcome.status(), outcome.out(), String.join("", outcome.err().lines()
                .filter(line -> !line.contains("warning")).map(line -> line + "\n").toList()));
    }
}
