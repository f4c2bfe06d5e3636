package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.cli.TinyScene.Outcome;
import org.seacairn.layer.BagFixture;
import org.seacairn.plan.Shown;

/** {@code vertical-uncertainty: from-file}: what each command makes of a BAG whose cells are not all equally sure. */
class CellUncertaintyCommandTest {
    /** The western two thirds are surveyed well, the east hardly, and a strip between them has no word on it. */
    private static final int UNKNOWN_FROM = 38;
    private static final int UNSURE_FROM = 40;
    private static final double SURE_M = 0.5;
    private static final double UNSURE_M = 40;

    @TempDir
    Path folder;
    private TinyScene scene;

    @BeforeEach
    void survey() {
        float[] elevations = new float[TinyScene.COLS * TinyScene.ROWS];
        float[] uncertainties = new float[elevations.length];
        for (int i = 0; i < elevations.length; i++) {
            int col = i % TinyScene.COLS;
            elevations[i] = (float) -TinyScene.depthM(col, i / TinyScene.COLS);
            uncertainties[i] = (float) (col < UNKNOWN_FROM ? SURE_M : col < UNSURE_FROM ? 0 : UNSURE_M);
        }
        scene = new TinyScene(folder);
        scene.write("survey.bag", BagFixture.of(TinyScene.WEST_M, TinyScene.SOUTH_M, TinyScene.CELL_M, TinyScene.COLS, TinyScene.ROWS,
                elevations, uncertainties, "cubeStdDev"));
        scene.plan("file: depths.asc", "file: survey.bag").plan("vertical-uncertainty: 0.5 m", "vertical-uncertainty: from-file, horizontal-uncertainty: 2 m")
                .plan("clearance-above: 20 m", "clearance-above: 50 m");
    }

    private List<CSVRecord> table(String name) {
        return new ReviewTable(scene.path(name)).records;
    }

    @Test
    void rankStandsOnWhatIsSureAndSaysHowSure() {
        Outcome outcome = scene.rank();
        assertEquals(0, outcome.status(), outcome.err());
        List<CSVRecord> sites = table("plan-out/sites.csv");
        assertEquals(4, sites.size());
        for (CSVRecord site : sites) {
            assertTrue(Double.parseDouble(site.get("easting_m")) < TinyScene.WEST_M + UNKNOWN_FROM * TinyScene.CELL_M, site.toString());
            assertEquals("0.980", site.get("depth_uncertainty_m"));
            assertEquals(Double.parseDouble(site.get("depth_m")) - 0.98 - 8, Double.parseDouble(site.get("least_water_m")), 0.0015);
            assertTrue(Double.parseDouble(site.get("least_water_m")) >= 50, site.toString());
        }
        assertTrue(scene.read("plan-out/run.json").contains("survey.bag: its own vertical uncertainty of each cell (cubeStdDev) is taken"
                + " as a standard deviation, 1.96 of which hold 95 %"), "the note is in run.json");
        assertTrue(scene.read("plan-out/report.html").contains("vertical from the file, cell by cell"));
    }

    @Test
    void reviewJudgesEachPlaceByItsOwnCell() {
        List<String> rows = new ArrayList<>(List.of("site,longitude,latitude"));
        double[] easts = {400, UNKNOWN_FROM * 20 + 10, 1000};
        for (int i = 0; i < easts.length; i++) {
            rows.add("P" + i + "," + TinyScene.lonLat(easts[i], 410).replace(" ", ""));
        }
        scene.write("proposal.csv", String.join("\n", rows) + "\n");
        scene.write("module.yaml", "name: Pole on a slab\nheight: 8 m\nlanding-radius: 0 m\n");
        Outcome outcome = TinyScene.run("review", scene.path("plan.yaml").toString(), scene.path("proposal.csv").toString());
        assertTrue(outcome.status() <= 1, outcome.err());
        Map<String, String> verdicts = new TreeMap<>();
        for (CSVRecord row : table("plan-review/review.csv")) {
            if (row.get("rule").equals("clearance-above")) {
                double depthM = depthAt(easts[row.get("site").charAt(1) - '0'], 410);
                verdicts.put(row.get("site"), row.get("verdict") + " " + row.get("measured_m") + " " + row.get("allowance_m"));
                if (!row.get("verdict").equals("no data")) {
                    assertEquals(depthM - 8, Double.parseDouble(row.get("measured_m")), 0.001);
                }
            }
        }
        assertEquals(Map.of("P0", pass(400), "P1", "no data  ", "P2", "marginal " + figure(depthAt(1000, 410) - 8) + " 78.399"), verdicts);
    }

    private static String pass(double east) {
        return "pass " + figure(depthAt(east, 410) - 8) + " 0.980";
    }

    private static String figure(double metres) {
        return String.format(Locale.ROOT, "%.3f", metres);
    }

    private static double depthAt(double east, double north) {
        return (float) TinyScene.depthM((int) (east / TinyScene.CELL_M), TinyScene.ROWS - 1 - (int) (north / TinyScene.CELL_M));
    }

    @Test
    void areasTellTheLeastWaterWhereItIsLeast() {
        Outcome outcome = TinyScene.run("areas", scene.path("plan.yaml").toString(), "--size", "200 m x 100 m");
        assertEquals(0, outcome.status(), outcome.err());
        CSVRecord first = table("plan-areas/areas.csv").get(0);
        double leastM = Math.floor(10 * (Double.parseDouble(first.get("depth_least_m")) - 0.98 - 8)) / 10;
        String page = scene.read("plan-areas/report.html").replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
        assertTrue(page.contains("Least water over a module " + Shown.number(leastM) + " m") , page.substring(page.indexOf("Least water"), page.indexOf("Least water") + 60));
    }

    @Test
    void layersNamesTheSource() {
        Outcome outcome = TinyScene.run("layers", scene.path("plan.yaml").toString());
        assertTrue(outcome.out().contains("vertical from the file, cell by cell: at 100 m depth 2 m horizontal (95 %)"), outcome.out());
    }
}
