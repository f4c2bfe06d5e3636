package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TimeZone;
import java.util.TreeSet;
import java.util.regex.Pattern;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.cli.TinyScene.Outcome;

class RankCommandTest {
    private static final Set<String> FILES = Set.of("report.html", "release_points.gpx", "styles/release_points.sld", "sites.csv", "seacairn.gpkg", "sites.geojson", "buffers.geojson",
            "sites.gpx", "sites.kml", "score.tif", "reasons.tif", "reasons.csv", "run.json", "styles/keep_off_buffers.sld",
            "styles/landing_circles.sld", "styles/reasons.sld", "styles/score.sld", "styles/sites.sld");

    @TempDir Path folder;
    private TinyScene scene;

    @BeforeEach
    void makeScene() {
        scene = new TinyScene(folder);
    }

    @Test
    void writesEveryFileAndNothingElse() {
        Outcome outcome = scene.rank();
        assertEquals(0, outcome.status(), outcome.err());
        Map<String, String> files = TinyScene.bytes(scene.path("plan-out"));
        assertEquals(FILES, files.keySet());
        assertEquals(Set.of("plan-out"), beside("plan.yaml", "module.yaml", "depths.asc", "depths.prj", "bottom.geojson",
                "permit.geojson", "cables.geojson", "reefs.csv"));
        files.remove("run.json");
        files.forEach((name, text) -> assertFalse(text.contains(folder.toString()), name + " names a folder of this machine"));
    }

    /** What else lies in the scene's folder. */
    private Set<String> beside(String... expected) {
        Set<String> names = new TreeSet<>();
        TinyScene.bytes(folder).keySet().forEach(name -> names.add(name.replaceFirst("/.*", "")));
        names.removeAll(Set.of(expected));
        return names;
    }

    @Test
    void theColumnsOfSitesCsvAreThoseOfTheDesign() {
        scene.rank();
        List<String> lines = scene.read("plan-out/sites.csv").lines().toList();
        assertEquals("rank,site,longitude_deg,latitude_deg,longitude_ddm,latitude_ddm,easting_m,northing_m,depth_m,slope_deg,bottom,score,"
                + "suitability_depth,suitability_slope,suitability_bottom,suitability_clearance,suitability_spacing,"
                + "distance_old_cables_m,nearest_old_cables,nearest_stone,stone_distance_m,landing_radius_m,"
                + "release_longitude_deg,release_latitude_deg,required_old_cables_m,stone_required_m,"
                + "release_bearing_deg,release_distance_m,sink_time_s,impact_speed_m_s,impact_energy_kj,tilt_deg,embedment_m,"
                + "relief_m,stability,standing_note,depth_uncertainty_m,least_water_m", lines.get(0));
        assertEquals(List.of("1,S01", "2,S02", "3,S03", "4,S04"),
                lines.stream().skip(1).map(line -> line.substring(0, 5)).toList());
        lines.stream().skip(1).forEach(line -> assertTrue(line.contains(",Cable 1,Teapot,"), line));
    }

    @Test
    void everyFileOfThePlanIsHashed() {
        scene.write("extent.geojson", TinyScene.features(TinyScene.polygon("name", "surveyed", -500, -500, 1700, 1300)));
        scene.plan("distance: 100 m,", "distance: 100 m, coverage: extent.geojson,");
        assertEquals(0, scene.rank().status());
        String inputs = scene.read("plan-out/run.json").replaceFirst("(?s).*?\"inputs\" : \\[(.*?)\\].*", "$1");
        assertEquals(List.of("plan.yaml", "depths.asc", "depths.prj", "bottom.geojson", "reefs.csv", "permit.geojson", "cables.geojson",
                "extent.geojson", "module.yaml"), Pattern.compile("\"file\" : \"(.*?)\"").matcher(inputs).results()
                        .map(file -> file.group(1)).toList());
    }

    @Test
    void theSummaryIsOneScreen() {
        assertEquals(List.of(
                "Trial off Teasel Bank",
                "Grid: 60 x 40 cells of 20 m, EPSG:32617 (WGS 84 / UTM zone 17N); 0.96 km2 with depth, 0.39 km2 feasible (40.8 %).",
                "Sites: 4 of 4 asked; total score 3.882, no selection can exceed 3.907.",
                "  S01  29 33.6650 N  80 47.3335 W     83 m  slope 1.6 deg  sand         score 0.978"),
                scene.rank().out().lines().limit(4).toList());
    }

    @Test
    void theSummaryFitsOneScreenAndNamesThePageToOpen() {
        String out = scene.rank().out();
        assertTrue(out.lines().count() <= 24, out);
        assertTrue(out.contains("\nOpen " + scene.path("plan-out/report.html") + ", with map and tables; all files are in the same folder.\n"), out);
    }

    @Test
    void theSummarySpeaksTheUnitsOfTheReader() {
        scene.plan("title:", "display: us\ntitle:");
        List<String> lines = scene.rank().out().lines().toList();
        // 2399 cells of 400 m2; a square nautical mile has 1852 m x 1852 m. 83.33 m are 273.4 ft.
        assertTrue(lines.get(1).endsWith("; 0.28 nmi2 with depth, 0.11 nmi2 feasible (40.8 %)."), lines.get(1));
        assertTrue(lines.get(3).contains("  273 ft  "), lines.get(3));
    }

    @Test
    void warningsGoToStandardErrorAndIntoRunJson() {
        scene.plan("source: \"invented rule 2\"", "source: \"invented rule 2\", confirmed: false");
        Outcome outcome = scene.rank();
        assertEquals(List.of(
                "seacairn: warning: bathymetry: horizontal-uncertainty is not stated and taken as 0 m",
                "seacairn: warning: keep-off \"Old Cables\": the rule's source is not confirmed"),
                outcome.err().lines().toList());
        assertFalse(outcome.out().contains("warning"), outcome.out());
        assertTrue(scene.read("plan-out/run.json").contains("keep-off \\\"Old Cables\\\": the rule's source is not confirmed"));
    }

    /** 600 x 400 working cells are six tiles, so that threads have something to disagree about. */
    @Test
    void theSameBytesFromAnyNumberOfThreadsAndInEveryRun() {
        scene.geoTiff().delete("depths.prj").plan("file: depths.asc", "file: depths.tif").plan("crs: EPSG:32617", "crs: EPSG:32617\ncell: 2 m");
        Map<String, String> expected = output("--threads", "1");
        for (String threads : List.of("1", "2", "3")) {
            assertSame(expected, output("--threads", threads));
        }
    }

    @Test
    void theSameBytesInAnotherLanguageAndTimeZone() {
        Map<String, String> expected = output();
        String printed = scene.rank().out();
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        try {
            // Arabic of Egypt has its own digits, and no decimal point.
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
            assertSame(expected, output());
            assertEquals(printed, scene.rank().out());
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }

    private Map<String, String> output(String... options) {
        Outcome outcome = scene.rank(options);
        assertEquals(0, outcome.status(), outcome.err());
        return TinyScene.bytes(scene.path("plan-out"));
    }

    /** Same files, same bytes, run.json up to its timings, which must be there. */
    private static void assertSame(Map<String, String> expected, Map<String, String> actual) {
        assertEquals(expected.keySet(), actual.keySet());
        expected.forEach((name, bytes) -> assertEquals(untimed(bytes), untimed(actual.get(name)), name));
        assertFalse(untimed(actual.get("run.json")).equals(actual.get("run.json")), "no timings in run.json");
    }

    private static String untimed(String text) {
        return text.replaceFirst("(?s)\"timings_s\" : \\{[^}]*}", "timings");
    }

    @Test
    void jsonIsOneObjectForPrograms() throws IOException {
        scene.plan("title: Trial off Teasel Bank", "title: Récif d’essai");
        Outcome outcome = scene.rank("--json");
        assertEquals(0, outcome.status());
        Map<String, Object> json = json(outcome.out());
        assertEquals(List.of("title", "out", "cells", "cells_with_depth", "cells_scored", "sites_asked", "total_score",
                "greedy_total_score", "upper_bound", "sites", "reasons", "warnings"), List.copyOf(json.keySet()));
        assertEquals("Récif d’essai", json.get("title"));
        assertTrue(outcome.out().chars().allMatch(c -> c < 128), "what a terminal's encoding could spoil");
        assertEquals(scene.path("plan-out").toString(), json.get("out"));
        assertEquals("2400.0, 2399.0, 4.0", json.get("cells") + ", " + json.get("cells_with_depth") + ", " + json.get("sites_asked"));
        assertEquals(List.of("S01", "S02", "S03", "S04"), column(json, "sites", "site"));
        assertEquals("no-depth", column(json, "reasons", "reason").get(0));
    }

    @Test
    void quietPrintsNothing() {
        assertEquals(new Outcome(0, "", ""), scene.rank("--quiet"));
        assertEquals(new Outcome(0, "", ""), scene.rank("--quiet", "--json"));
        assertTrue(Files.exists(scene.path("plan-out/sites.csv")));
    }

    @Test
    void theOutputGoesWhereItIsTold() {
        assertEquals(0, scene.rank("--out", scene.path("packets/spring tide").toString()).status());
        assertEquals(FILES, TinyScene.bytes(scene.path("packets/spring tide")).keySet());
        assertFalse(Files.exists(scene.path("plan-out")));
    }

    @Test
    void leftToItselfTheOutputStandsBesideThePlan() {
        scene.write("trial.2 off Teasel.yaml", TinyScene.PLAN);
        // As typed from another folder.
        Path plan = Path.of("").toAbsolutePath().relativize(scene.path("trial.2 off Teasel.yaml"));
        Outcome outcome = TinyScene.run("rank", plan.toString());
        assertEquals(0, outcome.status(), outcome.err());
        assertEquals(FILES, TinyScene.bytes(scene.path("trial.2 off Teasel-out")).keySet());
    }

    @Test
    void aFormerOutputIsReplacedWhole() {
        scene.rank();
        scene.plan("count: 4", "count: 2");
        assertEquals(0, scene.rank().status());
        assertEquals(3, scene.read("plan-out/sites.csv").lines().count());
        assertEquals(FILES, TinyScene.bytes(scene.path("plan-out")).keySet());
    }

    @Test
    void exchangeNeverDoesWorseAndStaysApart() throws IOException {
        scene.plan("count: 4, apart: 150 m", "count: 12, apart: 120 m");
        Map<String, Object> greedy = json(scene.rank("--json").out());
        Map<String, Object> exchanged = json(scene.rank("--json", "--exchange").out());
        assertTrue(number(exchanged, "total_score") > number(greedy, "total_score"), "this scene can be improved");
        assertEquals(number(greedy, "total_score"), number(exchanged, "greedy_total_score"));
        assertTrue(number(exchanged, "total_score") <= number(exchanged, "upper_bound"));
        assertTrue(scene.read("plan-out/run.json").contains("\"rank --exchange\""));
        List<Object> lon = column(exchanged, "sites", "longitude_deg");
        List<Object> lat = column(exchanged, "sites", "latitude_deg");
        for (int i = 0; i < lon.size(); i++) {
            for (int k = 0; k < i; k++) {
                double apartM = Geodesic.WGS84.Inverse((double) lat.get(i), (double) lon.get(i), (double) lat.get(k), (double) lon.get(k)).s12;
                assertTrue(apartM >= 120, apartM + " m between S" + (k + 1) + " and S" + (i + 1));
            }
        }
    }

    @Test
    void nothingFeasibleIsAnAnswer() throws IOException, SQLException {
        scene.plan("depth: [60 m, 120 m]", "depth: [300 m, 400 m]");
        Outcome outcome = scene.rank();
        assertEquals(1, outcome.status());
        assertTrue(outcome.out().contains(
                "\nNo cell is feasible: each is ruled out by one reason or several. All reasons are in reasons.csv.\n"
                + "Ruled out most, as a share of the grid (and by that reason alone):\n"
                + "  too-shallow                  100.0 %  (49.0 %)\n"), outcome.out());
        assertTrue(outcome.err().endsWith("seacairn: warning: bathymetry: every cell is too-shallow; if that is unexpected,"
                + " check values (elevation) and unit (m) in the plan\n"), outcome.err());
        assertEquals(FILES, TinyScene.bytes(scene.path("plan-out")).keySet());
        assertEquals(1, scene.read("plan-out/sites.csv").lines().count());
        assertFalse(scene.read("plan-out/sites.geojson").contains("\"Point\""));
        assertTrue(scene.read("plan-out/reasons.csv").contains("\ntoo-shallow,8,2399,0.959600,1175\n"));
        try (Connection file = DriverManager.getConnection("jdbc:sqlite:" + scene.path("plan-out/seacairn.gpkg"));
                Statement statement = file.createStatement();
                ResultSet rows = statement.executeQuery("SELECT (SELECT count(*) FROM sites), (SELECT count(*) FROM keep_off_buffers)")) {
            assertEquals("0, 2", rows.getInt(1) + ", " + rows.getInt(2));
        }
        Outcome again = scene.rank("--json");
        assertEquals(1, again.status());
        assertEquals(List.of(), json(again.out()).get("sites"));
        assertEquals(new Outcome(1, "", ""), scene.rank("--quiet"));
    }

    @Test
    void landingRoomIsTheReasonWhereItTakesTheLastCells() {
        // 40 m square: the cells inside are allowed, but no landing circle of 25 m fits.
        scene.write("permit.geojson", TinyScene.features(TinyScene.polygon("name", "Plot B", 200, 200, 240, 240)));
        Outcome outcome = scene.rank();
        assertEquals(1, outcome.status());
        assertTrue(outcome.out().contains("  landing-room                 100.0 %  (0.2 %)\n"), outcome.out());
    }

    @Test
    void fewerSitesThanAskedAreSaidSo() {
        scene.plan("count: 4", "count: 400");
        Outcome outcome = scene.rank();
        assertEquals(0, outcome.status());
        long found = scene.read("plan-out/sites.csv").lines().count() - 1;
        assertTrue(outcome.err().contains("warning: sites: only " + found
                + " of 400 fit; every other feasible cell is nearer than 150 m (apart) to one of them"), outcome.err());
    }

    @Test
    void aMapThatStretchesIsWarnedOf() {
        scene.plan("crs: EPSG:32617", "crs: EPSG:3857");
        // Mercator stretches by 1 / cos(29.56 deg) = 1.1497, so that 13.0 % of its own lengths are too much.
        assertTrue(scene.rank().err().contains("crs: lengths on the map of EPSG:3857 (WGS 84 / Pseudo-Mercator) are off by"),
                "no warning");
    }

    @Test
    void namesThatNoFeatureHasAreWarnedOf() {
        scene.plan("file: reefs.csv, name: name", "file: reefs.csv, name: nmae");
        Outcome outcome = scene.rank();
        assertEquals(0, outcome.status());
        assertTrue(outcome.err().contains("warning: reefs.csv, name of \"reefs\" (line 12 of the plan): no feature has the attribute"
                + " \"nmae\"; did you mean \"name\"? its features are told by number"), outcome.err());
    }

    @Test
    void bottomWithoutAClassIsWarnedOf() {
        scene.write("bottom.geojson", scene.read("bottom.geojson").replace("\"mud\"", "null"));
        Outcome outcome = scene.rank();
        assertEquals(0, outcome.status());
        assertTrue(outcome.err().contains(
                "warning: bottom.geojson: 1 polygons on the grid state no class (attribute kind) and are taken as unmapped"), outcome.err());
    }

    @Test
    void whatCannotBePrintedIsNotPassedOverInSilence() {
        PrintWriter full = new PrintWriter(new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException("No space left on device");
            }
        }, false, StandardCharsets.UTF_8);
        StringWriter err = new StringWriter();
        assertEquals(2, Seacairn.run(full, new PrintWriter(err, true), "rank", scene.path("plan.yaml").toString(), "--json"));
        assertTrue(err.toString().endsWith(
                "seacairn: what was to be printed could not be (its disk is full, or its reader has gone)\n"), err.toString());
    }

    /** The whole of a text as one JSON object: numbers as doubles, lists and objects in their order. */
    private static Map<String, Object> json(String text) throws IOException {
        try (JsonParser parser = new JsonFactory().createParser(text)) {
            assertEquals(JsonToken.START_OBJECT, parser.nextToken());
            Object value = value(parser);
            assertEquals(null, parser.nextToken(), "text after the object");
            Map<String, Object> object = new LinkedHashMap<>();
            ((Map<?, ?>) value).forEach((k, v) -> object.put((String) k, v));
            return object;
        }
    }

    private static Object value(JsonParser parser) throws IOException {
        switch (parser.currentToken()) {
            case START_OBJECT -> {
                Map<String, Object> object = new LinkedHashMap<>();
                while (parser.nextToken() == JsonToken.FIELD_NAME) {
                    String name = parser.currentName();
                    parser.nextToken();
                    object.put(name, value(parser));
                }
                return object;
            }
            case START_ARRAY -> {
                List<Object> list = new ArrayList<>();
                while (parser.nextToken() != JsonToken.END_ARRAY) {
                    list.add(value(parser));
                }
                return list;
            }
            case VALUE_STRING -> {
                return parser.getText();
            }
            default -> {
                return parser.getDoubleValue();
            }
        }
    }

    private static double number(Map<String, Object> json, String key) {
        return (double) json.get(key);
    }

    private static List<Object> column(Map<String, Object> json, String list, String key) {
        List<Object> values = new ArrayList<>();
        ((List<?>) json.get(list)).forEach(row -> values.add(((Map<?, ?>) row).get(key)));
        return values;
    }
}
