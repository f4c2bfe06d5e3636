package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.apache.commons.csv.CSVRecord;
import org.geotools.gce.geotiff.GeoTiffReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.cli.DropScene.Mud;
import org.seacairn.cli.DropScene.Rule;
import org.seacairn.cli.PlainDrop.Profile;
import org.seacairn.cli.TinyScene.Outcome;

/**
 * Plans whose landing radius is computed: what {@code rank} rules out cell by cell and says of its sites, against plain
 * Runge-Kutta and statics; and {@code review} does not fail what it chose. {@code -Ddrop-rank.scenes=500} tries more scenes,
 * {@code -Ddrop-rank.first=17} begins at another seed.
 */
class DropRankOracleTest {
    private static final int SCENES = Integer.getInteger("drop-rank.scenes", 10);
    private static final int FIRST = Integer.getInteger("drop-rank.first", 1);
    private static final double TABLE_STEP_M = 0.05;
    /** Interpolated to the millimetre; as much for the plain program, and two roundings. */
    private static final double RADIUS_DOUBT_M = 3e-3;
    private static final double DISTANCE_DOUBT_M = 0.008;

    @TempDir
    Path folder;
    private final List<String> failures = new ArrayList<>();
    private final Map<String, Integer> seen = new TreeMap<>();

    @Test
    void reasonsAndSitesAreThoseOfThePlainProgramAndPassTheReview() throws IOException {
        for (int seed = FIRST; seed < FIRST + SCENES; seed++) {
            Path own = Files.createDirectory(folder.resolve("scene-" + seed));
            DropScene scene = new DropScene(seed, own, 24, 20, seed % 2 == 0);
            Outcome ranked = TinyScene.run("rank", scene.plan().toString(), "--threads", "1", "--out", own.resolve("ranked").toString());
            if (ranked.status() > 1) {
                failures.add("seed " + seed + ": status " + ranked.status() + ": " + ranked.err());
                continue;
            }
            new Ranking("seed " + seed, scene, own.resolve("ranked")).compare();
            review("seed " + seed, scene, own);
        }
        assertEquals(List.of(), failures.subList(0, Math.min(40, failures.size())), failures.size() + " failures, seen " + seen);
        for (String what : List.of("too-soft", "unstable", "landing-room", "keep-off:layer 0", "free")) {
            assertTrue(seen.getOrDefault(what, 0) > 20 * SCENES, what + " in few cells: " + seen);
        }
        assertTrue(seen.get("sites") > SCENES && seen.getOrDefault("scenes upright", 0) > 0, "few sites, or none upright: " + seen);
        assertTrue(seen.getOrDefault("in doubt", 0) < 0.02 * seen.get("cells"), "too many cells left aside: " + seen);
    }

    private void review(String name, DropScene scene, Path own) {
        if (new ReviewTable(own.resolve("ranked/sites.csv")).records.isEmpty()) {
            return;
        }
        Outcome reviewed = TinyScene.run("review", scene.plan().toString(), own.resolve("ranked/sites.csv").toString(), "--threads", "1",
                "--out", own.resolve("reviewed").toString());
        if (reviewed.status() > 1) {
            failures.add(name + ": review ends with " + reviewed.status() + ": " + reviewed.err());
            return;
        }
        for (CSVRecord r : new ReviewTable(own.resolve("reviewed/review.csv")).records) {
            count("reviewed");
            if (r.get("verdict").equals("fail")) {
                failures.add(name + ": review: " + r.toList());
            }
        }
    }

    private void count(String what) {
        seen.merge(what, 1, Integer::sum);
    }

    /** One ranking. */
    private final class Ranking {
        private final String name;
        private final DropScene scene;
        private final Path out;
        /** It comes down upright wherever it may, so that the factor against overturning needs no model of tilt. */
        private final boolean upright;
        private final List<PlainDrop> drops;
        private final double[] radiusM;
        private final Map<String, Integer> bits = new LinkedHashMap<>();
        private final int[] found;
        private final int[] expected;
        private final int[] doubt;

        Ranking(String name, DropScene scene, Path out) throws IOException {
            this.name = name;
            this.scene = scene;
            this.out = out;
            this.upright = scene.quiet && comesDownUpright();
            // A little deeper, so that the radius of the deepest cell allowed can be interpolated too.
            this.drops = scene.profiles.stream().map(p -> new PlainDrop(scene.body, p, scene.doubts, scene.deepestM + 1)).toList();
            this.radiusM = new double[(int) Math.ceil(scene.deepestM / TABLE_STEP_M) + 1];
            for (int i = 0; i < radiusM.length; i++) {
                double depth = Math.min(i * TABLE_STEP_M, scene.deepestM);
                double here = drops.stream().mapToDouble(d -> d.radius(depth)[0]).max().orElseThrow();
                radiusM[i] = Math.max(here, i == 0 ? 0 : radiusM[i - 1]);
            }
            new ReviewTable(out.resolve("reasons.csv")).records.forEach(r -> bits.put(r.get("reason"), Integer.parseInt(r.get("bit"))));
            this.found = raster(out.resolve("reasons.tif"));
            this.expected = new int[found.length];
            this.doubt = new int[found.length];
        }

        private boolean comesDownUpright() {
            Path tables = out.resolveSibling("tables");
            assertEquals(0, TinyScene.run("drop", scene.plan().toString(), "--out", tables.toString(), "--threads", "1").status() / 2, name);
            return new ReviewTable(tables.resolve("standing.csv")).records.stream()
                    .filter(r -> r.get("current").equals("as stated")).allMatch(r -> r.get("tilt_deg").equals("0"));
        }

        private int[] raster(Path file) throws IOException {
            GeoTiffReader reader = new GeoTiffReader(file.toFile());
            try {
                Raster data = reader.read(null).getRenderedImage().getData();
                int[] mask = new int[data.getWidth() * data.getHeight()];
                for (int i = 0; i < mask.length; i++) {
                    mask[i] = (int) (long) data.getSampleDouble(data.getMinX() + i % data.getWidth(), data.getMinY() + i / data.getWidth(), 0);
                }
                return mask;
            } finally {
                reader.dispose();
            }
        }

        /** The largest of the profiles, and never less than at a lesser depth. */
        private double radius(double depth) {
            double at = Math.min(depth, scene.deepestM) / TABLE_STEP_M;
            int below = Math.min((int) at, radiusM.length - 2);
            double share = Math.min(1, (Math.min(depth, scene.deepestM) - below * TABLE_STEP_M)
                    / (Math.min((below + 1) * TABLE_STEP_M, scene.deepestM) - below * TABLE_STEP_M));
            return radiusM[below] + share * (radiusM[below + 1] - radiusM[below]);
        }

        void compare() {
            int mine = bits.get("too-soft") | bits.get("unstable");
            for (Rule rule : scene.rules) {
                mine |= bits.get("keep-off:" + rule.name());
            }
            for (int i = 0; i < found.length; i++) {
                // Reasons that have nothing to do with sinking have their own oracle.
                expected[i] = found[i] & ~mine & ~bits.get("landing-room");
                cell(i);
            }
            int[] own = expected.clone();
            int[] ownDoubt = doubt.clone();
            for (int i = 0; i < found.length; i++) {
                room(i, own, ownDoubt);
            }
            for (int i = 0; i < found.length; i++) {
                compareCell(i);
            }
            sites();
        }

        private void judge(int i, String reason, double margin, double doubtful) {
            if (margin > 0) {
                expected[i] |= bits.get(reason);
            }
            if (Math.abs(margin) < doubtful) {
                doubt[i] |= bits.get(reason);
            }
        }

        private Mud mud(int i) {
            String kind = scene.bottom[i % scene.cols];
            return kind == null ? new Mud(Double.NaN, 0) : scene.classes.get(kind);
        }

        private double energyJ(double depth) {
            return drops.get(0).energyJ(Math.min(depth, scene.deepestM));
        }

        private double momentNm(double depth) {
            return scene.profiles.stream().mapToDouble(p -> PlainDrop.momentNm(scene.body, p, Math.min(depth, scene.deepestM))).max().orElseThrow();
        }

        private void cell(int i) {
            double depth = scene.depthM[i];
            int col = i % scene.cols;
            int row = i / scene.cols;
            double[] at = scene.lonLat(col, row);
            double radius = radius(depth);
            for (Rule rule : scene.rules) {
                double distance = distance(rule, at);
                double required = rule.distanceM() + Math.sqrt(rule.positionM() * rule.positionM() + scene.horizontalM * scene.horizontalM + radius * radius);
                judge(i, "keep-off:" + rule.name(), required - distance, DISTANCE_DOUBT_M);
            }
            Mud mud = mud(i);
            if (!Double.isNaN(mud.strength())) {
                double z = PlainDrop.embedment(scene.body, energyJ(depth), mud.strength(), mud.gradient())[0];
                judge(i, "too-soft", z - scene.embedmentM, 2e-3);
            }
            boolean edge = col == 0 || row == 0 || col == scene.cols - 1 || row == scene.rows - 1;
            if (edge) {
                return;
            }
            if (!upright) {
                // The tilt at touchdown is a matter of its own.
                doubt[i] |= bits.get("unstable");
                expected[i] |= found[i] & bits.get("unstable");
                return;
            }
            double slope = DropOracleTest.slopeDeg(scene, col, row);
            double moment = momentNm(depth);
            double one = scene.stability - PlainDrop.stability(scene.body, moment, slope);
            double other = scene.stability - PlainDrop.stability(scene.body, moment, slope + 0.5);
            if (i == scene.cols + 1) {
                count("scenes upright");
            }
            judge(i, "unstable", one, 1e-4);
            if (one > 0 != other > 0) {
                doubt[i] |= bits.get("unstable");
            }
        }

        private static double distance(Rule rule, double[] at) {
            return rule.points().stream().mapToDouble(p -> Geodesic.WGS84.Inverse(at[1], at[0], p[1], p[0]).s12).min().orElseThrow();
        }

        private void room(int i, int[] own, int[] ownDoubt) {
            double radius = radius(scene.depthM[i]);
            int reach = (int) (radius / scene.cellM) + 1;
            int col = i % scene.cols;
            int row = i / scene.cols;
            boolean taken = false;
            boolean doubtful = false;
            for (int r = row - reach; r <= row + reach; r++) {
                for (int c = col - reach; c <= col + reach; c++) {
                    double away = scene.cellM * Math.hypot(r - row, c - col);
                    if (away > radius + RADIUS_DOUBT_M) {
                        continue;
                    }
                    boolean on = r >= 0 && c >= 0 && r < scene.rows && c < scene.cols;
                    int at = r * scene.cols + c;
                    boolean sure = away <= radius - RADIUS_DOUBT_M;
                    // A reason that is left to the program is in doubt for itself, not for its neighbours.
                    int asked = on ? ownDoubt[at] & ~(upright ? 0 : bits.get("unstable")) : 0;
                    boolean ruledOut = !on || (own[at] & ~asked) != 0;
                    taken |= sure && ruledOut;
                    doubtful |= !sure && ruledOut || asked != 0;
                }
            }
            expected[i] |= taken ? bits.get("landing-room") : 0;
            doubt[i] |= !taken && doubtful ? bits.get("landing-room") : 0;
        }

        private void compareCell(int i) {
            int sure = ~doubt[i];
            count("cells");
            if ((upright ? doubt[i] : doubt[i] & ~bits.get("unstable")) != 0) {
                count("in doubt");
            }
            if (expected[i] == 0) {
                count("free");
            }
            bits.forEach((reason, bit) -> {
                if ((expected[i] & bit) != 0) {
                    count(reason);
                }
                if (((expected[i] ^ found[i]) & sure & bit) != 0) {
                    failures.add(name + ", column " + i % scene.cols + ", row " + i / scene.cols + ", depth " + scene.depthM[i] + " of at most "
                            + scene.deepestM + ": " + reason + ((expected[i] & bit) != 0 ? " is missing" : " is too much"));
                }
            });
        }

        private void sites() {
            for (CSVRecord r : new ReviewTable(out.resolve("sites.csv")).records) {
                count("sites");
                double[] at = {number(r, "longitude_deg"), number(r, "latitude_deg")};
                int col = (int) Math.floor((number(r, "easting_m") - scene.west) / scene.cellM);
                int row = (int) Math.floor((scene.north - number(r, "northing_m")) / scene.cellM);
                int i = row * scene.cols + col;
                double depth = scene.depthM[i];
                double[] y = drops.get(0).track.at(depth);
                check(Math.abs(number(r, "landing_radius_m") - radius(depth)) < RADIUS_DOUBT_M, r, "landing radius " + radius(depth));
                GeodesicData release = Geodesic.WGS84.Direct(at[1], at[0], Math.toDegrees(Math.atan2(-y[1], -y[2])), Math.hypot(y[1], y[2]));
                double off = Geodesic.WGS84.Inverse(release.lat2, release.lon2, number(r, "release_latitude_deg"), number(r, "release_longitude_deg")).s12;
                check(off < 0.085, r, "release off by " + off);
                same(r, "release_distance_m", Math.hypot(y[1], y[2]));
                same(r, "sink_time_s", y[0]);
                same(r, "impact_speed_m_s", y[6]);
                same(r, "impact_energy_kj", energyJ(depth) / 1000);
                Mud mud = mud(i);
                if (Double.isNaN(mud.strength())) {
                    check(r.get("embedment_m").isEmpty() && r.get("relief_m").isEmpty(), r, "embedment without a strength");
                } else {
                    double z = PlainDrop.embedment(scene.body, energyJ(depth), mud.strength(), mud.gradient())[0];
                    same(r, "embedment_m", z);
                    same(r, "relief_m", Math.max(0, scene.body.height() - z));
                }
                if (!r.get("stability").isEmpty()) {
                    count("stability of a site");
                    double slope = DropOracleTest.slopeDeg(scene, col, row);
                    double tilt = number(r, "tilt_deg");
                    double one = PlainDrop.stability(scene.body, momentNm(depth), slope + Math.max(0, tilt - 0.5));
                    double other = PlainDrop.stability(scene.body, momentNm(depth), slope + tilt + 0.5);
                    check(number(r, "stability") > Math.min(one, other) - 0.051 && number(r, "stability") < Math.max(one, other) + 0.051, r,
                            "stability " + one + " to " + other);
                }
                surface(r, release);
            }
        }

        private void surface(CSVRecord r, GeodesicData release) {
            for (Rule rule : scene.rules) {
                String column = "release_distance_" + rule.name().replace(' ', '_') + "_m";
                assertEquals(rule.surface(), r.isMapped(column), name + ": " + column);
                if (rule.surface()) {
                    count("surface rule of a site");
                    double required = rule.distanceM() + Math.hypot(rule.positionM(), scene.doubts.bargeM());
                    same(r, column, distance(rule, new double[] {release.lon2, release.lat2}));
                    same(r, column.replace("distance", "required"), required);
                }
            }
        }

        private void same(CSVRecord r, String column, double expected) {
            String text = r.get(column);
            check(!text.isEmpty() && Math.abs(Double.parseDouble(text) - expected) <= DropOracleTest.halfDigit(text) + 1e-4 * Math.abs(expected) + 2e-4,
                    r, column + " " + text + " and not " + expected);
        }

        private void check(boolean holds, CSVRecord r, String what) {
            if (!holds) {
                failures.add(name + ": " + what + " in " + r.toMap());
            }
        }
    }

    private static double number(CSVRecord r, String column) {
        return Double.parseDouble(r.get(column));
    }
}
