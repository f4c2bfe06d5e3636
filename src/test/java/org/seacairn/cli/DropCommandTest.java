package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import net.sf.geographiclib.Geodesic;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.cli.TinyScene.Outcome;

class DropCommandTest {
    private static final String MODULE = """
            name: Pole on a slab
            height: 8 m
            base: {shape: square, width: 2.4 m, height: 0.6 m, mass: 7700 kg, volume: 3.1 m3, open-share: 10 %}
            pole: {diameter: 200 mm, length: 7.4 m, mass: 300 kg, volume: 0.04 m3}
            drag: {uncertainty: 20 %}
            scatter-angle: 4 deg
            """;
    private static final Set<String> FILES = Set.of("descent.csv", "descent.svg", "drop.csv", "landing_radius.csv", "module.csv",
            "release_points.geojson", "release_points.gpx", "release_points.kml", "report.html", "run.json", "seacairn.gpkg",
            "standing.csv", "standing.svg", "styles/keep_off_buffers.sld", "styles/landing_circles.sld", "styles/release_points.sld",
            "styles/sites.sld");

    @TempDir
    private Path folder;

    private TinyScene scene;

    @BeforeEach
    void makeScene() {
        scene = new TinyScene(folder).write("module.yaml", MODULE)
                .write("current.csv", "profile,depth_m,speed_kn,toward_deg\nebb,0,3,40\nebb,130,1,60\nflood,0,2,220\nflood,130,0.5,230\n")
                .plan("module: {file: module.yaml}", "module: {file: module.yaml}\ncurrent: {file: current.csv, speed-uncertainty: 0.3 kn,"
                        + " direction-uncertainty: 10 deg}\nbarge: {position-uncertainty: 5 m}");
    }

    private Outcome drop(String... options) {
        String[] args = new String[options.length + 2];
        args[0] = "drop";
        args[1] = scene.path("plan.yaml").toString();
        System.arraycopy(options, 0, args, 2, options.length);
        return TinyScene.run(args);
    }

    private List<CSVRecord> table(String name) {
        return new ReviewTable(scene.path(name)).records;
    }

    @Test
    void aRankedSiteIsDroppedByItsName() {
        assertEquals(0, scene.rank().status());
        Outcome outcome = drop("--at", "S01");
        assertEquals(0, outcome.status(), outcome.err());
        assertEquals(FILES, TinyScene.bytes(scene.path("plan-drop")).keySet());
        assertTrue(outcome.out().contains("Release (ebb), as stated: "), outcome.out());
        assertTrue(outcome.out().endsWith("The barge master and a licensed engineer decide.\n"), outcome.out());
        CSVRecord site = table("plan-out/sites.csv").get(0);
        List<CSVRecord> cases = table("plan-drop/drop.csv");
        assertEquals(List.of("ebb as stated", "flood as stated", "ebb 1 kn more", "flood 1 kn more"),
                cases.stream().map(c -> c.get("profile") + " " + c.get("current")).toList());
        for (String column : List.of("release_longitude_deg", "release_latitude_deg", "release_bearing_deg", "release_distance_m", "stability")) {
            assertEquals(site.get(column), cases.get(0).get(column), column);
        }
    }

    @Test
    void everyTableSaysThatItIsScreening() {
        assertEquals(0, drop("--at=" + TinyScene.lonLat(500, 500).replace(" ", "")).status());
        for (String name : List.of("drop", "descent", "landing_radius", "standing", "module")) {
            table("plan-drop/" + name + ".csv").forEach(row -> assertTrue(row.get("caution").contains("stand clear"), name));
        }
        for (String name : List.of("descent.svg", "standing.svg", "report.html")) {
            assertTrue(scene.read("plan-drop/" + name).contains("The barge master and a licensed engineer decide."), name);
        }
        for (String name : List.of("release_points.gpx", "release_points.kml", "release_points.geojson")) {
            assertTrue(scene.read("plan-drop/" + name).contains("a licensed engineer decide"), name);
        }
    }

    @Test
    void withoutATargetItTellsWhatTheModuleCanStand() {
        Outcome outcome = drop();
        assertEquals(0, outcome.status(), outcome.err());
        assertEquals(Set.of("landing_radius.csv", "module.csv", "report.html", "run.json", "standing.csv", "standing.svg"),
                TinyScene.bytes(scene.path("plan-drop")).keySet());
        assertTrue(outcome.out().contains("landing circle"), outcome.out());
    }

    /** The circle of each site is that of its depth, and every requirement has it in it. */
    @Test
    void aComputedLandingRadiusGrowsWithDepthAndEntersTheRequirements() {
        scene.rank();
        for (CSVRecord site : table("plan-out/sites.csv")) {
            double depthM = Double.parseDouble(site.get("depth_m"));
            double radiusM = Double.parseDouble(site.get("landing_radius_m"));
            assertEquals(100 + radiusM, Double.parseDouble(site.get("required_old_cables_m")), 1.5e-3, "no other uncertainty is stated");
            assertTrue(radiusM > 2.4477 * depthM * Math.tan(Math.toRadians(4)), site.toString());
        }
    }

    @Test
    void theBargeKeepsOffLayersThatHoldAtTheSurface() {
        // The best sites lie down-current of where the barge would be beside this cable.
        scene.plan("distance: 100 m, comfortable: 300 m", "distance: 100 m, comfortable: 300 m, surface: true, position-uncertainty: 12 m");
        scene.rank();
        for (CSVRecord site : table("plan-out/sites.csv")) {
            assertEquals(113, Double.parseDouble(site.get("release_required_old_cables_m")), 1e-9, "100 + sqrt(12^2 + 5^2)");
            double away = Geodesic.WGS84.Inverse(Double.parseDouble(site.get("latitude_deg")), Double.parseDouble(site.get("longitude_deg")),
                    Double.parseDouble(site.get("release_latitude_deg")), Double.parseDouble(site.get("release_longitude_deg"))).s12;
            assertEquals(Double.parseDouble(site.get("release_distance_m")), away, 0.6);
            assertTrue(Math.abs(Double.parseDouble(site.get("release_distance_old_cables_m"))
                    - Double.parseDouble(site.get("distance_old_cables_m"))) <= away + 0.6, site.toString());
        }
        // South-west of the cable, so that the ebb, which runs north-east, brings it near from the far side: the release is farther off.
        Outcome clear = drop("--at=" + TinyScene.lonLat(500, 480).replace(" ", ""));
        assertFalse(clear.err().contains("the barge lies"), clear.err());
        // Just beyond what the site needs on the far side: the barge would lie over the cable.
        Outcome near = drop("--at=" + TinyScene.lonLat(500, 660).replace(" ", ""));
        assertEquals(1, near.status());
        assertTrue(near.err().contains("at its release point the barge lies") && near.err().contains("of \"Old Cables\", where 113 m are required"), near.err());
        assertTrue(near.out().contains("its release point is too near \"Old Cables\""), near.out());
    }

    @Test
    void limitsRuleOutWhereItSinksInOrTipsOver() {
        scene.plan("mud: {suitability: 0.4}", "mud: {suitability: 0.4, shear-strength: 1 kPa, gradient: 0.5 kPa/m}")
                .plan("slope: 8 deg", "slope: 8 deg, embedment: 0.8 m, stability: 1.5");
        Outcome outcome = scene.rank();
        assertEquals(0, outcome.status(), outcome.err());
        List<CSVRecord> reasons = table("plan-out/reasons.csv");
        CSVRecord soft = reasons.stream().filter(r -> r.get("reason").equals("too-soft")).findFirst().orElseThrow();
        // Every cell of mud: 20 columns of 40 rows.
        assertEquals("800", soft.get("cells"));
        assertTrue(outcome.err().contains("limits: embedment is not judged on sand, which state no shear-strength"), outcome.err());
        Outcome inMud = drop("--at=" + TinyScene.lonLat(1000, 300).replace(" ", ""));
        assertEquals(1, inMud.status(), inMud.err());
        assertTrue(inMud.out().contains("it sinks in deeper than the limit of 0.8 m"), inMud.out());
        TinyScene.run("review", scene.path("plan.yaml").toString(), scene.path("plan-out/sites.csv").toString(), "--quiet");
        assertTrue(table("plan-review/review.csv").stream().anyMatch(r -> r.get("rule").equals("embedment")));
        assertTrue(table("plan-review/review.csv").stream().filter(r -> r.get("rule").equals("stability"))
                .allMatch(r -> r.get("verdict").equals("pass") && Double.parseDouble(r.get("margin_factor")) > 0));
    }

    @Test
    void aLongitudeMayBeCountedEastwardTo360() {
        String[] lonLat = TinyScene.lonLat(500, 500).split(", ");
        String eastward = String.format(Locale.ROOT, "%.8f,%s", 360 + Double.parseDouble(lonLat[0]), lonLat[1]);
        assertEquals(0, drop("--at=" + String.join(",", lonLat), "--out", scene.path("west").toString()).status());
        assertEquals(0, drop("--at=" + eastward, "--out", scene.path("east").toString()).status());
        assertEquals(scene.read("west/drop.csv"), scene.read("east/drop.csv"));
        scene.write("sites.csv", "site,longitude,latitude\nFar East," + eastward + "\n");
        Outcome named = drop("--at", "Far East", "--sites", scene.path("sites.csv").toString());
        assertEquals(0, named.status(), named.err());
        assertEquals(scene.read("west/drop.csv").replace("\ntarget,", "\nFar East,"), scene.read("plan-drop/drop.csv"));
    }

    @Test
    void earlierDropsAreJudged() {
        StringBuilder earlier = new StringBuilder("planned_longitude,planned_latitude,surveyed_longitude,surveyed_latitude,depth_m\n");
        for (int i = 0; i < 12; i++) {
            earlier.append(String.format(Locale.ROOT, "%s,%s,%d%n", TinyScene.lonLat(100 * i, 100).replace(" ", ""),
                    TinyScene.lonLat(100 * i + 6 * Math.sin(i), 108 + 5 * Math.cos(2.0 * i)).replace(" ", ""), 90 + i));
        }
        scene.write("earlier.csv", earlier.toString());
        Outcome outcome = drop("--landings", scene.path("earlier.csv").toString());
        assertEquals(0, outcome.status(), outcome.err());
        assertTrue(outcome.out().contains("12 earlier drops missed by 8 m toward "), outcome.out());
        assertTrue(outcome.out().contains("more than chance"), outcome.out());
        assertEquals(12, table("plan-drop/past_landings.csv").size());
    }

    @Test
    void theSameInputsGiveTheSameBytesWhateverTheThreads() {
        drop("--at=" + TinyScene.lonLat(500, 500).replace(" ", ""), "--threads", "1", "--out", scene.path("one").toString());
        drop("--at=" + TinyScene.lonLat(500, 500).replace(" ", ""), "--threads", "3", "--out", scene.path("three").toString());
        var one = TinyScene.bytes(scene.path("one"));
        var three = TinyScene.bytes(scene.path("three"));
        one.remove("run.json");
        three.remove("run.json");
        assertEquals(one, three);
    }

    @Test
    void aHeavyPoleIsToldNotToRightItself() {
        scene.write("module.yaml", MODULE.replace("mass: 300 kg, volume: 0.04 m3", "mass: 4000 kg, volume: 0.2 m3"));
        Outcome outcome = drop("--at=" + TinyScene.lonLat(500, 500).replace(" ", ""));
        assertEquals(1, outcome.status());
        assertTrue(outcome.err().contains("module: it may not right itself above 120 m in the current of \"ebb\""), outcome.err());
        assertTrue(outcome.out().contains("Against it: it may not right itself"), outcome.out());
        assertTrue(Files.exists(scene.path("plan-drop/drop.csv")));
    }
}
