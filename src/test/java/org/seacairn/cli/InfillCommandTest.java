package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.DoubleStream;
import net.sf.geographiclib.Geodesic;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.cli.TinyScene.Outcome;

class InfillCommandTest {
    private static final Set<String> FILES = Set.of("report.html", "release_points.gpx", "styles/release_points.sld", "sites.csv", "chains.csv", "tradeoff.csv", "seacairn.gpkg", "sites.geojson",
            "sites.gpx", "sites.kml", "run.json", "styles/chains.sld", "styles/keep_off_buffers.sld", "styles/landing_circles.sld",
            "styles/sites.sld");

    @TempDir Path folder;
    private TinyScene scene;

    @BeforeEach
    void makeScene() {
        scene = new TinyScene(folder);
        reefs("Saucer", 120, 240, "Teapot", 1080, 240, "Kettle", 700, 480);
    }

    /** Names and places, metres east and north. */
    private void reefs(Object... reefs) {
        StringBuilder text = new StringBuilder("name,longitude,latitude\n");
        for (int i = 0; i < reefs.length; i += 3) {
            text.append(reefs[i]).append(',')
                    .append(TinyScene.lonLat((int) reefs[i + 1], (int) reefs[i + 2]).replace(" ", "")).append('\n');
        }
        scene.write("reefs.csv", text.toString());
    }

    private Outcome infill(String... options) {
        List<String> args = new ArrayList<>(List.of("infill", scene.path("plan.yaml").toString()));
        args.addAll(List.of(options));
        return TinyScene.run(args.toArray(String[]::new));
    }

    private Outcome chain(String... more) {
        List<String> options = new ArrayList<>(List.of("--from", "Saucer", "--to", "teapot", "--gap", "150 m to 260 m"));
        options.addAll(List.of(more));
        return infill(options.toArray(String[]::new));
    }

    private void refused(String message, Outcome outcome) {
        assertEquals("seacairn: " + message, outcome.err().lines().filter(l -> !l.contains("warning") && !l.startsWith("Try: "))
                .reduce("", (a, b) -> a.isEmpty() ? b : a + "\n" + b));
        assertEquals(2, outcome.status());
        assertEquals("", outcome.out());
    }

    @Test
    void writesEveryFileAndNothingElse() {
        Outcome outcome = chain();
        assertEquals(0, outcome.status(), outcome.err());
        Map<String, String> files = TinyScene.bytes(scene.path("plan-infill"));
        assertEquals(FILES, files.keySet());
        files.remove("run.json");
        files.forEach((name, text) -> assertTrue(!text.contains(folder.toString()), name + " names a folder of this machine"));
    }

    @Test
    void sitesHaveTheColumnsOfARankingAndTheNamesOfAChain() {
        scene.rank();
        chain();
        List<String> lines = scene.read("plan-infill/sites.csv").lines().toList();
        assertEquals(scene.read("plan-out/sites.csv").lines().findFirst().orElseThrow(), lines.get(0));
        assertEquals(List.of("1,C01,", "2,C02,", "3,C03,"), lines.stream().skip(1).map(l -> l.substring(0, 6)).toList());
    }

    @Test
    void everyGapIsWithinTheRangeAndModulesStandApart() {
        chain();
        List<CSVRecord> gaps = new ReviewTable(scene.path("plan-infill/chains.csv")).records;
        assertEquals(List.of("Saucer>C01", "C01>C02", "C02>C03", "C03>Teapot"),
                gaps.stream().map(g -> g.get("from") + ">" + g.get("to")).toList());
        for (CSVRecord gap : gaps) {
            double metres = Geodesic.WGS84.Inverse(number(gap, "from_latitude_deg"), number(gap, "from_longitude_deg"),
                    number(gap, "to_latitude_deg"), number(gap, "to_longitude_deg")).s12;
            assertEquals(metres, number(gap, "gap_m"), 0.001);
            assertTrue(metres >= 150 && metres <= 260, metres + " m");
        }
        List<CSVRecord> sites = new ReviewTable(scene.path("plan-infill/sites.csv")).records;
        for (CSVRecord a : sites) {
            for (CSVRecord b : sites) {
                double metres = Geodesic.WGS84.Inverse(number(a, "latitude_deg"), number(a, "longitude_deg"),
                        number(b, "latitude_deg"), number(b, "longitude_deg")).s12;
                assertTrue(a == b || metres >= 150, a.get("site") + " and " + b.get("site") + ": " + metres + " m");
            }
        }
    }

    private static double number(CSVRecord record, String column) {
        return Double.parseDouble(record.get(column));
    }

    @Test
    void aReviewOfItsSitesFailsNothing() {
        chain();
        Outcome reviewed = TinyScene.run("review", scene.path("plan.yaml").toString(), scene.path("plan-infill/sites.csv").toString());
        assertTrue(reviewed.status() <= 1, reviewed.err());
        ReviewTable table = new ReviewTable(scene.path("plan-review/review.csv"));
        assertEquals(0, table.count("fail"));
        assertEquals(0, table.count("no data"));
        assertTrue(table.count("pass") > 0);
    }

    @Test
    void theTradeOffHasTheFewestAndUpToTwoMoreAndMarksTheChosen() {
        chain();
        List<CSVRecord> rows = new ReviewTable(scene.path("plan-infill/tradeoff.csv")).records;
        assertEquals(List.of("3 true", "4 false", "5 false"), rows.stream().map(r -> r.get("modules") + " " + r.get("chosen")).toList());
        double mean = new ReviewTable(scene.path("plan-infill/sites.csv")).records.stream().mapToDouble(r -> number(r, "score")).average().orElseThrow();
        assertEquals(mean, number(rows.get(0), "mean_score"), 1e-6);
        assertEquals(3 * mean, number(rows.get(0), "total_score"), 3e-6);
    }

    @Test
    void theRouteRunsFromReefToReef() {
        chain();
        String gpx = scene.read("plan-infill/sites.gpx");
        String route = gpx.substring(gpx.indexOf("<rte>"));
        assertEquals(List.of("Saucer to Teapot", "Saucer", "C01", "C02", "C03", "Teapot"),
                Pattern.compile("<name>(.*?)</name>").matcher(route).results().map(m -> m.group(1)).toList());
    }

    @Test
    void aDriftAtAHeadingIsCheckedAgainstEveryModule() {
        // The line runs east; a drift due north misses the last module by its whole distance.
        Outcome outcome = chain("--heading", "0 deg");
        assertTrue(outcome.out().contains("A straight drift from Saucer at 0 deg (--heading)\n  does not pass within 15 m"), outcome.out());
        List<CSVRecord> gaps = new ReviewTable(scene.path("plan-infill/chains.csv")).records;
        double east = number(gaps.get(0), "to_longitude_deg") - number(gaps.get(0), "from_longitude_deg");
        double metres = Math.toRadians(east) * 6378137 * Math.cos(Math.toRadians(29.56));
        // The radius of the parallel is larger than the sphere's by 0.08 % at most.
        assertEquals(metres, number(gaps.get(0), "drift_miss_m"), 0.002 * Math.abs(metres));
        assertEquals("", gaps.get(3).get("drift_miss_m"));
    }

    @Test
    void theHeadingOfThePlansCurrentIsTakenWhereNoneIsGiven() {
        scene.plan("module: {file: module.yaml}", "module: {file: module.yaml}\ncurrent:\n  - {depth: 0 m, speed: 1 kn, toward: 90 deg}");
        String out = chain().out();
        assertTrue(out.contains("A straight drift from Saucer at 90 deg (the plan's current at the surface)"), out);
    }

    @Test
    void withoutAHeadingNoDriftIsChecked() {
        assertTrue(chain().out().contains("No drift was checked: the plan has no current, and no --heading is given."));
        assertTrue(new ReviewTable(scene.path("plan-infill/chains.csv")).records.stream().allMatch(r -> r.get("drift_miss_m").isEmpty()));
    }

    @Test
    void aReefBetweenMakesTwoLegsWithNamesThatRunOn() {
        Outcome outcome = infill("--from", "Saucer", "--via", "Kettle", "--to", "Teapot", "--gap", "150 m to 280 m", "--corridor", "300 m");
        assertEquals(0, outcome.status(), outcome.out() + outcome.err());
        List<CSVRecord> gaps = new ReviewTable(scene.path("plan-infill/chains.csv")).records;
        assertEquals(Set.of("1", "2"), Set.copyOf(gaps.stream().map(g -> g.get("leg")).toList()));
        int kettle = gaps.stream().map(g -> g.get("to")).toList().indexOf("Kettle");
        assertEquals("Kettle", gaps.get(kettle + 1).get("from"));
        assertEquals("Teapot", gaps.get(gaps.size() - 1).get("to"));
        List<String> sites = new ReviewTable(scene.path("plan-infill/sites.csv")).records.stream().map(r -> r.get("site")).toList();
        assertEquals(sites, gaps.stream().map(g -> g.get("to")).filter(to -> to.startsWith("C")).toList());
    }

    @Test
    void aDriftLineIsFollowed() {
        // Over a hill to the north, out of the straight corridor.
        scene.write("drift.geojson", TinyScene.features(TinyScene.feature("name", "logged", "LineString",
                TinyScene.line(100, 240, 400, 430, 800, 430, 1100, 240))));
        Outcome outcome = chain("--along", scene.path("drift.geojson").toString(), "--corridor", "60 m");
        assertEquals(0, outcome.status(), outcome.out() + outcome.err());
        assertTrue(new ReviewTable(scene.path("plan-infill/sites.csv")).records.stream()
                .mapToDouble(r -> number(r, "northing_m")).max().orElseThrow() > TinyScene.SOUTH_M + 360);
        assertTrue(scene.read("plan-infill/run.json").contains("\"file\" : \"drift.geojson\""));
    }

    @Test
    void reefsAGapApartNeedNoModule() {
        reefs("Saucer", 500, 240, "Teapot", 700, 240);
        Outcome outcome = chain();
        assertEquals(0, outcome.status());
        assertTrue(outcome.out().contains("*  0 modules  none is needed"), outcome.out());
        assertEquals(1, scene.read("plan-infill/sites.csv").lines().count());
    }

    @Test
    void exactlySoManyModulesAsAreAsked() {
        assertEquals(0, chain("--modules", "4").status());
        assertEquals(4, new ReviewTable(scene.path("plan-infill/sites.csv")).records.size());
    }

    @Test
    void aNumberThatNoChainHasIsNoAnswer() {
        Outcome outcome = chain("--modules", "2");
        assertEquals(1, outcome.status());
        assertTrue(outcome.out().contains("There is no chain of 2 modules; these are there."), outcome.out());
        assertTrue(outcome.out().contains("3 modules"), outcome.out());
        assertEquals(1, scene.read("plan-infill/sites.csv").lines().count());
    }

    @Test
    void aStretchThatCannotBeBridgedIsToldWithItsReasons() {
        scene.write("bottom.geojson", TinyScene.features(TinyScene.polygon("kind", "sand", 0, 0, 450, 800),
                TinyScene.polygon("kind", "rock", 450, 0, 800, 800), TinyScene.polygon("kind", "mud", 800, 0, 1200, 800)));
        Outcome outcome = chain();
        assertEquals(1, outcome.status());
        assertTrue(outcome.out().matches("(?s).*There is no chain: \\d+ m cannot be bridged, from \\d+ m to \\d+ m along the line,.*"
                + "Ruled out by: bottom-unsuitable \\d.*"), outcome.out());
        assertEquals(FILES, TinyScene.bytes(scene.path("plan-infill")).keySet());
        double[] ends = Pattern.compile("from (\\d+) m to (\\d+) m along").matcher(outcome.out()).results()
                .flatMapToDouble(m -> DoubleStream.of(Double.parseDouble(m.group(1)), Double.parseDouble(m.group(2)))).toArray();
        // Saucer lies at 120 m, the rock from 450 m to 800 m. Cell centres keep off it, by a landing circle and a cell at most.
        assertTrue(ends[0] > 330 - 45 && ends[0] < 330 && ends[1] > 680 && ends[1] < 680 + 45, outcome.out());
    }

    @Test
    void aGapBelowTheDistanceApartIsRaised() {
        Outcome outcome = infill("--from", "Saucer", "--to", "Teapot", "--gap", "100 m to 260 m");
        assertTrue(outcome.err().contains("seacairn: warning: --gap begins at 100 m and is raised to 150 m, the distance that the plan keeps sites apart"),
                outcome.err());
        assertTrue(outcome.out().contains("Gaps of 150 m to 260 m"), outcome.out());
    }

    @Test
    void reefsThatAreNotThereOrNotAlone() {
        refused("--to is \"Teapott\"; no reef of reefs.csv has that name; did you mean \"Teapot\"?", infill("--from", "Saucer", "--to", "Teapott"));
        refused("--from is \"Nowhere\"; no reef of reefs.csv has that name; it has \"Saucer\", \"Teapot\", \"Kettle\"",
                infill("--from", "Nowhere", "--to", "Teapot"));
        refused("the reef \"Saucer\" is named twice; a chain runs between different reefs", infill("--from", "Saucer", "--to", "saucer"));
        reefs("Saucer", 120, 240, "Teapot", 1080, 240, "teapot", 700, 480);
        refused("--to is \"TEAPOT\"; 2 reefs of reefs.csv have that name (feature 2, feature 3); give each a name of its own",
                infill("--from", "Saucer", "--to", "TEAPOT"));
        scene.plan("reefs: {file: reefs.csv, name: name, keep-off: 60 m, source: \"invented rule 1\"}\n", "")
                .plan("  spacing: {weight: 1, curve: [60 m, 150 m, 500 m, 1500 m]}\n", "");
        refused("plan.yaml: the plan names no reefs, so --from can mean none; add the layer of existing reefs, reefs: {file: …, name: …}",
                infill("--from", "Saucer", "--to", "Teapot"));
    }

    @Test
    void gapsThatCannotBe() {
        refused("--gap is \"120\"; write the unit, for example \"120 m\"", infill("--from", "Saucer", "--to", "Teapot", "--gap", "120 to 250 m"));
        refused("--gap is \"250 m\"; write two lengths, for example \"120 m to 250 m\"", infill("--from", "Saucer", "--to", "Teapot", "--gap", "250 m"));
        refused("--gap is \"250 m to 120 m\"; the second length must be the larger", infill("--from", "Saucer", "--to", "Teapot", "--gap", "250 m to 120 m"));
        refused("--gap is \"1 m to 200 km\", which reaches too far; stay below 100 km", infill("--from", "Saucer", "--to", "Teapot", "--gap", "1 m to 200 km"));
        refused("--gap ends at 140 m, and the plan's modules stand at least 150 m apart; widen the gap, or lower sites: apart",
                infill("--from", "Saucer", "--to", "Teapot", "--gap", "100 m to 140 m"));
        refused("--corridor is \"200\"; write the unit, for example \"200 m\"", chain("--corridor", "200"));
        refused("--corridor is \"100 km\", which reaches too far; stay below 100 km", chain("--corridor", "100 km"));
        refused("--corridor is \"0 m\", which leaves no room; give a width above 0", chain("--corridor", "0 m"));
        refused("--modules is 0; give 1 or more", chain("--modules", "0"));
        refused("--modules counts the modules of one leg and cannot be given with --via; run infill once for each leg",
                chain("--modules", "3", "--via", "Kettle"));
    }

    @Test
    void aRangeThatCannotReachIsAFaultOfTheRequest() {
        reefs("Saucer", 500, 240, "Teapot", 780, 240);
        refused("--gap cannot reach: \"Saucer\" and \"Teapot\" are 280.1 m apart, too far for 1 gap of 260.0 m and too near for 2 of 250.0 m;"
                + " widen the range", infill("--from", "Saucer", "--to", "Teapot", "--gap", "250 m to 260 m", "--corridor", "40 m"));
        reefs("Saucer", 500, 240, "Teapot", 600, 240);
        refused("--gap cannot reach: \"Saucer\" and \"Teapot\" are 100.0 m apart, nearer than the least gap of 150.0 m; lower it",
                chain("--corridor", "40 m"));
    }

    @Test
    void aCorridorWithoutAFeasibleCell() {
        scene.write("bottom.geojson", TinyScene.features(TinyScene.polygon("kind", "rock", 0, 0, 1200, 400), TinyScene.polygon("kind", "sand", 0, 400, 1200, 800)));
        Outcome outcome = chain("--corridor", "50 m");
        assertTrue(outcome.err().contains("--corridor: no cell within 50 m of the line between \"Saucer\" and \"Teapot\" is feasible (bottom-unsuitable 100 %"),
                outcome.err());
        assertTrue(outcome.err().stripTrailing().endsWith("; widen the corridor, or name other reefs"), outcome.err());
        assertEquals(2, outcome.status());
    }

    @Test
    void moreModulesThanTheCorridorHolds() {
        Outcome outcome = chain("--modules", "60");
        assertTrue(outcome.err().contains("60 modules are more than the corridor from \"Saucer\" to \"Teapot\" can hold: no more than "), outcome.err());
        assertEquals(2, outcome.status());
    }

    @Test
    void whatIsNoLineCannotBeFollowed() {
        refused("cables2.geojson: --along takes a layer with one line, and this has 2 features, the first a LineString; leave one line in it",
                chain("--along", scene.write("cables2.geojson", TinyScene.features(
                        TinyScene.feature("name", "a", "LineString", TinyScene.line(0, 0, 100, 100)),
                        TinyScene.feature("name", "b", "LineString", TinyScene.line(0, 50, 100, 150)))).path("cables2.geojson").toString()));
    }

    @Test
    void theSameBytesFromOneThreadAndTwo() {
        assertEquals(output("1"), output("2"));
    }

    private Map<String, String> output(String threads) {
        assertEquals(0, chain("--threads", threads).status());
        Map<String, String> files = TinyScene.bytes(scene.path("plan-infill"));
        files.computeIfPresent("run.json", (name, text) -> text.replaceFirst("(?s)\"timings_s\".*", ""));
        return files;
    }

    @Test
    void theSummaryForProgramsIsJson() {
        String json = chain("--json", "--quiet").out();
        assertEquals("", json);
        json = chain("--json").out();
        assertTrue(json.startsWith("{") && json.contains("\"complete\" : true") && json.contains("\"site\" : \"C03\""), json);
    }
}
