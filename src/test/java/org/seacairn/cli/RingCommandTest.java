package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.cli.TinyScene.Outcome;

/** About the reef Teapot, which {@link TinyScene} puts 700 m east and 200 m north. */
class RingCommandTest {
    @TempDir Path folder;
    private TinyScene scene;

    @BeforeEach
    void makeScene() {
        scene = new TinyScene(folder);
    }

    private Outcome ring(String... options) {
        List<String> args = new ArrayList<>(List.of("ring", scene.path("plan.yaml").toString()));
        args.addAll(List.of(options));
        return TinyScene.run(args.toArray(String[]::new));
    }

    private Outcome around(String radius, String modules, String... more) {
        List<String> options = new ArrayList<>(List.of("--around", "teapot", "--radius", radius, "--modules", modules));
        options.addAll(List.of(more));
        return ring(options.toArray(String[]::new));
    }

    private static void refused(String message, Outcome outcome) {
        assertEquals("seacairn: " + message, outcome.err().lines().filter(l -> !l.contains("warning") && !l.startsWith("Try: "))
                .reduce("", (a, b) -> a.isEmpty() ? b : a + "\n" + b));
        assertEquals(2, outcome.status());
        assertEquals("", outcome.out());
    }

    private List<CSVRecord> table(String name) {
        return new ReviewTable(scene.path("plan-ring/" + name)).records;
    }

    private static double number(CSVRecord record, String column) {
        return Double.parseDouble(record.get(column));
    }

    @Test
    void writesEveryFileAndNothingElse() {
        Outcome outcome = around("100 m to 130 m", "4");
        assertEquals(0, outcome.status(), outcome.err());
        Map<String, String> files = TinyScene.bytes(scene.path("plan-ring"));
        assertEquals(Set.of("report.html", "release_points.gpx", "styles/release_points.sld", "sites.csv", "ring.csv", "seacairn.gpkg", "sites.geojson", "sites.gpx", "sites.kml", "run.json", "styles/rings.sld",
                "styles/keep_off_buffers.sld", "styles/landing_circles.sld", "styles/sites.sld"), files.keySet());
        files.remove("run.json");
        files.forEach((name, text) -> assertTrue(!text.contains(folder.toString()), name + " names a folder of this machine"));
    }

    @Test
    void sitesHaveTheColumnsOfARankingAndTheNamesOfARing() {
        scene.rank();
        around("100 m to 130 m", "4");
        List<String> lines = scene.read("plan-ring/sites.csv").lines().toList();
        assertEquals(scene.read("plan-out/sites.csv").lines().findFirst().orElseThrow(), lines.get(0));
        assertEquals(List.of("1,R01,", "2,R02,", "3,R03,", "4,R04,"), lines.stream().skip(1).map(l -> l.substring(0, 6)).toList());
    }

    @Test
    void modulesStandWithinTheRadiusAndApartAndTheTableMeasuresThem() {
        around("100 m to 130 m", "4");
        List<CSVRecord> sites = table("sites.csv");
        List<CSVRecord> modules = table("ring.csv");
        String[] reef = TinyScene.lonLat(700, 200).split(", ");
        for (int i = 0; i < sites.size(); i++) {
            GeodesicData ray = Geodesic.WGS84.Inverse(Double.parseDouble(reef[1]), Double.parseDouble(reef[0]),
                    number(sites.get(i), "latitude_deg"), number(sites.get(i), "longitude_deg"));
            assertTrue(ray.s12 >= 100 && ray.s12 <= 130, sites.get(i) + ": " + ray.s12);
            assertEquals(ray.s12, number(modules.get(i), "distance_m"), 0.02);
            assertEquals((ray.azi1 + 360) % 360, number(modules.get(i), "bearing_deg"), 0.01);
            CSVRecord next = sites.get((i + 1) % sites.size());
            assertEquals(next.get("site"), modules.get(i).get("next"));
            double gapM = Geodesic.WGS84.Inverse(number(sites.get(i), "latitude_deg"), number(sites.get(i), "longitude_deg"),
                    number(next, "latitude_deg"), number(next, "longitude_deg")).s12;
            assertEquals(gapM, number(modules.get(i), "gap_m"), 0.02);
            assertTrue(gapM >= 150, gapM + " m");
        }
    }

    @Test
    void aReviewOfItsSitesFailsNothing() {
        around("100 m to 130 m", "4");
        TinyScene.run("review", scene.path("plan.yaml").toString(), scene.path("plan-ring/sites.csv").toString());
        ReviewTable table = new ReviewTable(scene.path("plan-review/review.csv"));
        assertEquals(0, table.count("fail"));
        assertEquals(0, table.count("no data"));
        assertTrue(table.count("pass") > 0);
    }

    /** The best ground lies along a border of rock; where the landing circle of the best module reaches onto it, another is taken. */
    @Test
    void aRingThatAReviewPassesIsTakenBeforeABetterOneThatIsMarginal() {
        int passedOver = 0;
        for (int rockX = 770; rockX < 900; rockX += 9) {
            scene.write("bottom.geojson", TinyScene.features(TinyScene.polygon("kind", "mud", 0, 0, rockX - 35, 800),
                    TinyScene.polygon("kind", "sand", rockX - 35, 0, rockX, 800), TinyScene.polygon("kind", "rock", rockX, 0, 1200, 800)));
            Outcome outcome = around("90 m to 180 m", "1");
            assertEquals(0, outcome.status(), outcome.err());
            if (outcome.out().contains("none as even all of whose modules pass a review has a higher total")) {
                passedOver++;
                assertEquals(0, TinyScene.run("review", scene.path("plan.yaml").toString(), scene.path("plan-ring/sites.csv").toString()).status(),
                        "rock from " + rockX);
            }
        }
        assertTrue(passedOver > 0);
    }

    @Test
    void theRouteRunsRoundAndBack() {
        around("100 m to 130 m", "4");
        String gpx = scene.read("plan-ring/sites.gpx");
        assertEquals(List.of("Around Teapot", "R01", "R02", "R03", "R04", "R01"),
                Pattern.compile("<name>(.*?)</name>").matcher(gpx.substring(gpx.indexOf("<rte>"))).results().map(m -> m.group(1)).toList());
    }

    /** Chords of 150 m on a circle of 130 m span at least 70.5 degrees, so that five fit at the most. */
    @Test
    void moreThanFitIsNoAnswerAndTellsHowManyDo() {
        Outcome outcome = around("100 m to 130 m", "6");
        assertEquals(1, outcome.status());
        assertTrue(outcome.out().contains("6 modules do not fit; 5 do.") || outcome.out().contains("6 modules do not fit; 4 do."), outcome.out());
        assertEquals(1, scene.read("plan-ring/sites.csv").lines().count());
        assertEquals(1, scene.read("plan-ring/ring.csv").lines().count());
        assertTrue(outcome.out().contains("Ruled out by: "), outcome.out());
    }

    /** The reef's own keep-off is 60 m and the landing radius 25 m. */
    @Test
    void aRadiusWithinTheKeepOffOfTheReefHasNoRoom() {
        Outcome outcome = around("20 m to 60 m", "1");
        assertEquals(1, outcome.status());
        assertTrue(outcome.out().contains("0 of ") && outcome.out().contains("Not one module fits.\nRuled out by: near-reef 100 %"), outcome.out());
    }

    @Test
    void oneModuleIsARingWithoutALine() {
        assertEquals(0, around("100 m to 130 m", "1").status());
        assertEquals(List.of(""), table("ring.csv").stream().map(r -> r.get("next") + r.get("gap_m")).toList());
        assertTrue(!scene.read("plan-ring/sites.gpx").contains("<rte>"));
    }

    @Test
    void whatCannotBeAsked() {
        refused("--around is \"Kettel\"; no reef of reefs.csv has that name; it has \"Teapot\"", ring("--around", "Kettel", "--radius", "60 m to 150 m", "--modules", "3"));
        refused("--around is \"Teapots\"; no reef of reefs.csv has that name; did you mean \"Teapot\"?",
                ring("--around", "Teapots", "--radius", "60 m to 150 m", "--modules", "3"));
        refused("--radius is \"60\"; write the unit, for example \"60 m\"", around("60 to 150", "3"));
        refused("--radius is \"150 m\"; write two lengths, for example \"120 m to 250 m\"", around("150 m", "3"));
        refused("--radius is \"150 m to 150 m\"; the second length must be the larger", around("150 m to 150 m", "3"));
        refused("--modules is 0; give 1 to 360", around("60 m to 150 m", "0"));
        refused("--modules is 361; give 1 to 360", around("60 m to 150 m", "361"));
    }

    @Test
    void theSameBytesFromOneThreadAndTwo() {
        assertEquals(output("1"), output("2"));
    }

    private Map<String, String> output(String threads) {
        assertEquals(0, around("100 m to 130 m", "4", "--threads", threads).status());
        Map<String, String> files = TinyScene.bytes(scene.path("plan-ring"));
        files.computeIfPresent("run.json", (name, text) -> text.replaceFirst("(?s)\"timings_s\".*", ""));
        return files;
    }

    @Test
    void theSummaryForProgramsIsJson() {
        String json = around("100 m to 130 m", "4", "--json").out();
        assertTrue(json.startsWith("{") && json.contains("\"fits\" : true") && json.contains("\"site\" : \"R04\""), json);
    }
}
