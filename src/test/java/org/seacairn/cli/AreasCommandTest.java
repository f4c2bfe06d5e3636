package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import net.sf.geographiclib.Geodesic;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.cli.TinyScene.Outcome;

class AreasCommandTest {
    @TempDir Path folder;
    private TinyScene scene;

    @BeforeEach
    void makeScene() {
        scene = new TinyScene(folder);
    }

    private Outcome areas(String... options) {
        List<String> args = new ArrayList<>(List.of("areas", scene.path("plan.yaml").toString()));
        args.addAll(List.of(options));
        return TinyScene.run(args.toArray(String[]::new));
    }

    private static void refused(String message, Outcome outcome) {
        assertEquals("seacairn: " + message, outcome.err().lines().filter(l -> !l.contains("warning") && !l.startsWith("Try: "))
                .reduce("", (a, b) -> a.isEmpty() ? b : a + "\n" + b));
        assertEquals(2, outcome.status());
        assertEquals("", outcome.out());
    }

    private List<CSVRecord> table(String name) {
        return new ReviewTable(scene.path(name)).records;
    }

    private static double number(CSVRecord record, String column) {
        return Double.parseDouble(record.get(column));
    }

    private static double metres(CSVRecord a, String one, CSVRecord b, String two) {
        return Geodesic.WGS84.Inverse(number(a, one + "latitude_deg"), number(a, one + "longitude_deg"),
                number(b, two + "latitude_deg"), number(b, two + "longitude_deg")).s12;
    }

    @Test
    void writesEveryFileAndNothingElse() {
        Outcome outcome = areas("--size", "300 m x 160 m", "--count", "2");
        assertEquals(0, outcome.status(), outcome.err());
        Map<String, String> files = TinyScene.bytes(scene.path("plan-areas"));
        assertEquals(Set.of("report.html", "areas.csv", "capacity.csv", "seacairn.gpkg", "areas.geojson", "areas.gpx", "areas.kml", "run.json",
                "styles/areas.sld", "styles/capacity.sld", "styles/keep_off_buffers.sld"), files.keySet());
        files.remove("run.json");
        files.forEach((name, text) -> assertTrue(!text.contains(folder.toString()), name + " names a folder of this machine"));
    }

    @Test
    void theColumnsOfAreasCsv() {
        areas("--size", "300 m x 160 m", "--count", "1");
        List<String> corners = Stream.of("1", "2", "3", "4").flatMap(i -> Stream.of("longitude_deg", "latitude_deg", "longitude_ddm",
                "latitude_ddm", "easting_m", "northing_m").map(c -> "corner_" + i + "_" + c)).toList();
        List<String> expected = new ArrayList<>(List.of("area"));
        expected.addAll(corners);
        expected.addAll(List.of("area_km2", "area_acres", "area_nmi2", "length_m", "width_m", "turn_deg", "depth_least_m", "depth_most_m",
                "slope_least_deg", "slope_most_deg", "bottom_shares", "mean_score", "lowest_score", "cells", "ruled_out_share", "capacity",
                "capacity_bound", "distance_old_cables_m", "nearest_old_cables", "nearest_stone", "stone_distance_m", "review", "caution"));
        assertEquals(String.join(",", expected), scene.read("plan-areas/areas.csv").lines().findFirst().orElseThrow());
    }

    @Test
    void sidesAndAreaAreThoseAskedForOnTheGround() {
        areas("--size", "160 m x 300 m", "--turn", "any", "--count", "3");
        List<CSVRecord> rows = table("plan-areas/areas.csv");
        assertEquals(List.of("A1", "A2", "A3"), rows.stream().map(r -> r.get("area")).toList());
        for (CSVRecord row : rows) {
            double one = metres(row, "corner_1_", row, "corner_2_");
            double two = metres(row, "corner_2_", row, "corner_3_");
            // Within 1 in 40,000 of the ground: see Shapes.
            assertEquals(300, Math.max(one, two), 0.01);
            assertEquals(160, Math.min(one, two), 0.01);
            assertEquals(0.048, number(row, "area_km2"), 5e-6);
            // 4046.8564224 m2 to the acre, 3429904 m2 to the square nautical mile.
            assertEquals(48000 / 4046.8564224, number(row, "area_acres"), 1e-3);
            assertEquals(48000 / 3429904.0, number(row, "area_nmi2"), 2e-6);
            assertEquals(0, number(row, "ruled_out_share"));
            assertTrue(number(row, "lowest_score") <= number(row, "mean_score"));
        }
    }

    @Test
    void modulesOfTheCapacityStandApartInTheirArea() {
        areas("--size", "400 m x 300 m", "--count", "2");
        List<CSVRecord> modules = table("plan-areas/capacity.csv");
        for (CSVRecord area : table("plan-areas/areas.csv")) {
            List<CSVRecord> in = modules.stream().filter(m -> m.get("area").equals(area.get("area"))).toList();
            assertEquals(number(area, "capacity"), in.size());
            assertTrue(in.size() >= 6 && in.size() <= number(area, "capacity_bound"), in.size() + " modules");
            for (CSVRecord a : in) {
                for (CSVRecord b : in) {
                    double metres = metres(a, "", b, "");
                    assertTrue(a == b || metres >= 150 - 0.01, a.get("module") + " and " + b.get("module") + ": " + metres + " m");
                }
            }
        }
    }

    @Test
    void aReviewOfTheAreasFailsNothing() {
        areas("--size", "300 m x 160 m", "--turn", "any");
        TinyScene.run("review", scene.path("plan.yaml").toString(), scene.path("plan-areas/areas.geojson").toString());
        ReviewTable reviewed = new ReviewTable(scene.path("plan-review/review.csv"));
        assertEquals(0, reviewed.count("fail"), reviewed.records.toString());
        List<CSVRecord> rows = table("plan-areas/areas.csv");
        // The review takes the names, and finds the distances that the table states.
        for (CSVRecord row : rows) {
            CSVRecord cable = reviewed.records.stream().filter(r -> r.get("site").equals(row.get("area")) && r.get("rule").equals("keep-off:Old Cables"))
                    .findFirst().orElseThrow();
            assertEquals(number(cable, "measured_m"), number(row, "distance_old_cables_m"), 0.001);
        }
    }

    @Test
    void aBlemishLetsInGroundThatIsRuledOut() {
        scene.write("bottom.geojson", TinyScene.features(TinyScene.polygon("kind", "sand", 0, 0, 1200, 800),
                TinyScene.polygon("kind", "rock", 280, 0, 300, 800), TinyScene.polygon("kind", "rock", 860, 0, 880, 800)));
        assertEquals(1, areas("--size", "400 m x 340 m").status());
        Outcome outcome = areas("--size", "400 m x 340 m", "--blemish", "30%", "--count", "1");
        assertEquals(0, outcome.status(), outcome.out());
        double share = number(table("plan-areas/areas.csv").get(0), "ruled_out_share");
        assertTrue(share > 0 && share <= 0.3, share + "");
        // But never into the clearance of a layer.
        assertTrue(number(table("plan-areas/areas.csv").get(0), "distance_old_cables_m") >= 100);
    }

    @Test
    void whereThereIsNoneTheReasonsAreTold() {
        Outcome outcome = areas("--size", "640 m x 500 m");
        assertEquals(1, outcome.status());
        assertTrue(outcome.out().contains("There is no such area.\nOf the grid 40.8 % is feasible. Ruled out by: "), outcome.out());
        assertEquals(1, scene.read("plan-areas/areas.csv").lines().count());
        assertEquals(1, scene.read("plan-areas/capacity.csv").lines().count());
    }

    @Test
    void whatCannotBeAsked() {
        refused("--size is \"0.25 nmi\"; write two lengths, for example \"0.25 nmi x 0.25 nmi\"", areas("--size", "0.25 nmi"));
        refused("--size is \"0.9 m x 300 m\", too small for a module; give sides of 1 m or more", areas("--size", "0.9 m x 300 m"));
        refused("--size is \"300\"; write the unit, for example \"300 m\"", areas("--size", "300 x 300 m"));
        refused("--size is \"0 m x 300 m\", too small for a module; give sides of 1 m or more", areas("--size", "0 m x 300 m"));
        refused("--turn is \"20\"; write the unit, for example \"20 deg\"; or write north, isobath or any", areas("--size", "300 m x 300 m", "--turn", "20"));
        refused("--blemish is \"200%\"; a share is 0 to 1 here", areas("--size", "300 m x 300 m", "--blemish", "200%"));
        refused("the count of areas is 0; ask for 1 or more", areas("--size", "300 m x 300 m", "--count", "0"));
        Outcome larger = areas("--size", "3 km x 2 km");
        assertEquals(2, larger.status());
        assertTrue(larger.err().contains("an area of 3000 m x 2000 m"), larger.err());
    }

    @Test
    void theSameBytesFromOneThreadAndTwo() {
        assertEquals(output("1"), output("2"));
    }

    private Map<String, String> output(String threads) {
        assertEquals(0, areas("--size", "300 m x 160 m", "--turn", "isobath", "--threads", threads).status());
        Map<String, String> files = TinyScene.bytes(scene.path("plan-areas"));
        files.computeIfPresent("run.json", (name, text) -> text.replaceFirst("(?s)\"timings_s\".*", ""));
        return files;
    }

    @Test
    void theSummaryForProgramsIsJson() {
        String json = areas("--size", "300 m x 160 m", "--json").out();
        assertTrue(json.startsWith("{") && json.contains("\"area\" : \"A1\""), json);
    }
}
