package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.cli.DropScene.Mud;
import org.seacairn.cli.PlainDrop.Profile;
import org.seacairn.cli.TinyScene.Outcome;

/**
 * What {@code drop} tells of random modules in random currents, against plain Runge-Kutta and plain statics.
 * {@code -Ddrop.scenes=500} tries more scenes, {@code -Ddrop.first=17} begins at another seed.
 */
class DropOracleTest {
    private static final int SCENES = Integer.getInteger("drop.scenes", 16);
    private static final int FIRST = Integer.getInteger("drop.first", 1);
    private static final double KNOT = 1852.0 / 3600;
    /** Half of the last printed digit of a coordinate, six decimals of a degree, both ways. */
    private static final double POSITION_M = 0.085;

    @TempDir
    Path folder;
    private final List<String> failures = new ArrayList<>();
    private final Map<String, Integer> seen = new TreeMap<>();

    @Test
    void descentLandingAndStandingAreThoseOfThePlainProgram() throws IOException {
        for (int seed = FIRST; seed < FIRST + SCENES; seed++) {
            Path own = Files.createDirectory(folder.resolve("scene-" + seed));
            DropScene scene = new DropScene(seed, own, 7, 7, seed % 3 == 0);
            int col = 1 + scene.random.nextInt(5);
            int row = 1 + scene.random.nextInt(5);
            double[] at = scene.lonLat(col, row);
            Outcome outcome = TinyScene.run("drop", scene.plan().toString(), String.format(Locale.ROOT, "--at=%.9f,%.9f", at[0], at[1]),
                    "--draws", "100", "--threads", "1");
            int cell = row * 7 + col;
            if (outcome.status() > 1) {
                boolean tooDeep = scene.profiles.stream().anyMatch(p -> p.levels().get(p.levels().size() - 1)[0] < scene.depthM[cell]);
                count(tooDeep ? "deeper than the current is known" : "refused");
                if (!tooDeep) {
                    failures.add("seed " + seed + ": status " + outcome.status() + ": " + outcome.err());
                }
                continue;
            }
            new Target("seed " + seed, scene, at, col, row).compare(own.resolve("plan-drop"));
        }
        assertEquals(List.of(), failures.subList(0, Math.min(40, failures.size())), failures.size() + " failures, seen " + seen);
        for (String what : List.of("stops in mud", "never stops", "no strength", "stability", "release", "descent", "steepest slope")) {
            assertTrue(seen.getOrDefault(what, 0) > SCENES / 20, what + " in few scenes: " + seen);
        }
    }

    /** Plates by length over width, cylinders by length over diameter; the bar by its height over its width. */
    private static final double[][] PLATE_DRAG = {{1, 1.17}, {5, 1.20}, {10, 1.50}};
    private static final double[][] POLE_AXIAL_DRAG = {{1, 0.91}, {2, 0.85}, {4, 0.87}, {7, 0.99}};
    private static final double[][] POLE_LATERAL_DRAG = {{1, 0.63}, {2, 0.68}, {5, 0.74}, {10, 0.82}, {40, 0.98}};
    private static final double[][] PLATE_MASS = {{1, 0.579}, {1.25, 0.642}, {1.5, 0.690}, {2, 0.757}, {2.5, 0.801}, {3, 0.830}, {4, 0.871}, {5, 0.897}};
    private static final double[][] BAR_MASS = {{0.1, 2.23}, {0.2, 1.98}, {0.5, 1.70}, {1, 1.51}, {2, 1.36}};

    @Test
    void whatTheModuleFileLeavesOutIsThatOfTheShape() throws IOException {
        for (int seed = 1; seed <= 6; seed++) {
            Path own = Files.createDirectory(folder.resolve("shape-" + seed));
            DropScene scene = new DropScene(seed, own, 5, 5, false);
            Path module = own.resolve("module.yaml");
            Files.writeString(module, Files.readString(module).replaceAll("(?m)^(drag|added-mass):.*\\R", ""));
            Outcome outcome = TinyScene.run("drop", scene.plan().toString(), "--threads", "1");
            assertTrue(outcome.status() <= 1, outcome.err());
            Map<String, Double> told = new TreeMap<>();
            new ReviewTable(own.resolve("plan-drop/module.csv")).records.forEach(r -> told.put(r.get("what"), number(r, "value")));
            PlainDrop.Body b = scene.body;
            String name = "seed " + seed + " " + told;
            double slender = b.poleLength() / b.diameter();
            double oblong = b.length() / b.width();
            assertEquals(between(PLATE_DRAG, oblong), told.get("base, axial drag"), 0.006, name);
            assertEquals(1.05, told.get("base, lateral drag"), 0.001, name);
            assertEquals(between(POLE_AXIAL_DRAG, Math.min(7, slender)), told.get("pole, axial drag"), 0.006, name);
            assertEquals(between(POLE_LATERAL_DRAG, Math.min(40, slender)), told.get("pole, lateral drag"), slender > 40 ? 0.1 : 0.006, name);
            double side = Math.sqrt(b.plan());
            double square = Math.pow(side / (side + b.baseHeight()), 2);
            double raised = 1 + Math.sqrt((1 - square) / (2 + 2 * square));
            assertEquals((b.round() ? 2 / Math.PI : between(PLATE_MASS, oblong)) * raised, told.get("base, axial added mass"), 0.008, name);
            assertEquals(between(BAR_MASS, Math.max(0.1, b.baseHeight() / b.width())), told.get("base, lateral added mass"), 0.006, name);
            assertEquals(between(new double[][] {{1.2, 0.62}, {2.5, 0.78}, {5, 0.90}, {9, 0.96}}, Math.min(9, slender)),
                    told.get("pole, lateral added mass"), slender > 9 ? 0.045 : 0.006, name);
            double poleMiddle = b.height() - b.poleLength() / 2;
            assertEquals(b.mass(), told.get("mass in air"), 0.006 * b.mass(), name);
            assertEquals(b.weightN() / 1000, told.get("weight in sea water"), 0.006 * b.weightN() / 1000, name);
            assertEquals((b.baseMass() * b.baseHeight() / 2 + b.poleMass() * poleMiddle) / b.mass(), told.get("centre of mass above the underside"), 0.006, name);
            assertEquals((b.baseVolume() * b.baseHeight() / 2 + b.poleVolume() * poleMiddle) / (b.baseVolume() + b.poleVolume()),
                    told.get("centre of buoyancy above the underside"), 0.006, name);
        }
    }

    /** Linear between the rows of a table in the logarithm of the ratio. */
    private static double between(double[][] table, double ratio) {
        int i = 0;
        while (i < table.length - 2 && table[i + 1][0] < ratio) {
            i++;
        }
        double share = Math.log(ratio / table[i][0]) / Math.log(table[i + 1][0] / table[i][0]);
        return table[i][1] + share * (table[i + 1][1] - table[i][1]);
    }

    private void count(String what) {
        seen.merge(what, 1, Integer::sum);
    }

    /** One target of one scene. */
    private final class Target {
        private final String name;
        private final DropScene scene;
        private final double[] at;
        private final double depth;
        private final double slopeDeg;
        private final Mud mud;

        Target(String name, DropScene scene, double[] at, int col, int row) {
            this.name = name;
            this.scene = scene;
            this.at = at;
            this.depth = scene.depthM[row * scene.cols + col];
            this.slopeDeg = slopeDeg(scene, col, row);
            this.mud = scene.bottom[col] == null ? new Mud(Double.NaN, 0) : scene.classes.get(scene.bottom[col]);
        }

        void compare(Path out) {
            for (double more : new double[] {0, KNOT}) {
                List<Profile> profiles = scene.profiles.stream().map(p -> p.changed(more, 1, 0)).toList();
                List<PlainDrop> drops = profiles.stream().map(p -> new PlainDrop(scene.body, p, scene.doubts, Math.max(depth, scene.deepestM))).toList();
                double worst = profiles.stream().mapToDouble(p -> PlainDrop.momentNm(scene.body, p, depth)).max().orElseThrow();
                for (PlainDrop drop : drops) {
                    dropRow(row(out, "drop.csv", drop, Map.of("current", more == 0 ? "as stated" : "1 kn more")), drop, worst);
                }
                if (more == 0) {
                    drops.forEach(drop -> descent(out, drop));
                    drops.forEach(drop -> radii(out, drop));
                }
            }
            standing(out);
        }

        private CSVRecord row(Path out, String file, PlainDrop drop, Map<String, String> with) {
            List<CSVRecord> found = new ReviewTable(out.resolve(file)).records.stream()
                    .filter(r -> r.get("profile").equals(drop.profile.name()) && with.entrySet().stream().allMatch(e -> r.get(e.getKey()).equals(e.getValue())))
                    .toList();
            assertEquals(1, found.size(), name + ": " + file + " " + with);
            return found.get(0);
        }

        private void dropRow(CSVRecord r, PlainDrop drop, double momentNm) {
            double[] y = drop.track.at(depth);
            double distance = Math.hypot(y[1], y[2]);
            GeodesicData release = Geodesic.WGS84.Direct(at[1], at[0], Math.toDegrees(Math.atan2(-y[1], -y[2])), distance);
            double off = Geodesic.WGS84.Inverse(release.lat2, release.lon2, number(r, "release_latitude_deg"), number(r, "release_longitude_deg")).s12;
            check(off < POSITION_M, r, "release off by " + off);
            if (distance > 1) {
                count("release");
                double turn = Math.IEEEremainder(number(r, "release_bearing_deg") - Math.toDegrees(Math.atan2(-y[1], -y[2])), 360);
                check(Math.abs(turn) < 0.501, r, "bearing off by " + turn);
            }
            same(r, "release_distance_m", distance);
            same(r, "depth_m", depth);
            same(r, "sink_time_s", y[0]);
            parts(r, drop.radius(depth));
            same(r, "impact_speed_m_s", y[6]);
            same(r, "impact_energy_kj", drop.energyJ(depth) / 1000);
            embedded(r, drop.energyJ(depth));
            double tilt = number(r, "tilt_deg");
            // A pole that floats rights the module the more, the more it leans: then the larger tilt has the larger factor.
            double one = PlainDrop.stability(scene.body, momentNm, slopeDeg + Math.max(0, tilt - 0.5));
            double other = PlainDrop.stability(scene.body, momentNm, slopeDeg + tilt + 0.5);
            double least = Math.min(one, other);
            double most = Math.max(one, other);
            if (!r.get("stability").isEmpty()) {
                count("stability");
                double half = halfDigit(r.get("stability"));
                check(number(r, "stability") >= least - half && number(r, "stability") <= most + half, r,
                        "stability " + r.get("stability") + " and not " + least + " to " + most);
            } else {
                check(least > 100, r, "no stability, and it is " + least + " to " + most);
            }
        }

        private void embedded(CSVRecord r, double energyJ) {
            if (Double.isNaN(mud.strength())) {
                count("no strength");
                check(r.get("embedment_m").isEmpty() && r.get("relief_m").isEmpty() && r.get("bearing_factor").isEmpty(), r, "embedment without a strength");
                return;
            }
            double[] z = PlainDrop.embedment(scene.body, energyJ, mud.strength(), mud.gradient());
            if (Double.isInfinite(z[0])) {
                count("never stops");
                check(r.get("standing_note").contains("stop") || r.get("embedment_m").startsWith("inf"), r, "it never stops");
                return;
            }
            count("stops in mud");
            same(r, "embedment_m", z[0]);
            same(r, "relief_m", Math.max(0, scene.body.height() - z[0]));
            same(r, "bearing_factor", z[1]);
        }

        private void parts(CSVRecord r, double[] radius) {
            same(r, "landing_radius_computed_m", radius[0]);
            same(r, "landing_scatter_m", radius[1]);
            same(r, "landing_drift_m", radius[2]);
            same(r, "landing_drag_m", radius[3]);
            same(r, "landing_barge_m", radius[4]);
        }

        private void descent(Path out, PlainDrop drop) {
            List<CSVRecord> records = new ReviewTable(out.resolve("descent.csv")).records.stream()
                    .filter(r -> r.get("profile").equals(drop.profile.name())).toList();
            CSVRecord last = records.get(records.size() - 1);
            same(last, "depth_m", depth);
            for (CSVRecord r : records) {
                // The last row is that of the touchdown itself, its depth rounded.
                double d = r == last ? depth : number(r, "depth_m");
                double[] y = drop.track.at(d);
                double[] current = drop.profile.at(d);
                count("descent");
                same(r, "time_s", y[0]);
                same(r, "drift_east_m", y[1]);
                same(r, "drift_north_m", y[2]);
                same(r, "drift_m", Math.hypot(y[1], y[2]));
                same(r, "sink_speed_m_s", y[6]);
                same(r, "east_m_s", y[4]);
                same(r, "north_m_s", y[5]);
                same(r, "current_m_s", Math.hypot(current[0], current[1]));
                if (Math.hypot(current[0], current[1]) > 0.01) {
                    double turn = Math.IEEEremainder(number(r, "current_toward_deg") - Math.toDegrees(Math.atan2(current[0], current[1])), 360);
                    check(Math.abs(turn) < 0.501, r, "current toward off by " + turn);
                }
            }
        }

        private void radii(Path out, PlainDrop drop) {
            for (CSVRecord r : new ReviewTable(out.resolve("landing_radius.csv")).records) {
                if (r.get("profile").equals(drop.profile.name())) {
                    double d = number(r, "depth_m");
                    double[] y = drop.track.at(d);
                    parts(r, drop.radius(d));
                    same(r, "sink_time_s", y[0]);
                    same(r, "drift_m", Math.hypot(y[1], y[2]));
                }
            }
        }

        private void standing(Path out) {
            Map<String, PlainDrop> drops = new TreeMap<>();
            for (CSVRecord r : new ReviewTable(out.resolve("standing.csv")).records) {
                boolean scaled = r.get("current").equals("scaled");
                double knots = Math.rint(number(r, "surface_current_m_s") / KNOT);
                double surface = scene.profiles.get(0).levels().get(0)[1];
                if (!scaled) {
                    same(r, "surface_current_m_s", surface);
                }
                double factor = scaled ? knots == 0 ? 0 : knots * KNOT / surface : 1;
                PlainDrop drop = drops.computeIfAbsent(r.get("current") + knots, k ->
                        new PlainDrop(scene.body, scene.profiles.get(0).changed(0, factor, 0), scene.doubts, scene.deepestM));
                double d = number(r, "depth_m");
                double[] y = drop.track.at(d);
                count("standing");
                same(r, "sink_time_s", y[0]);
                same(r, "drift_m", Math.hypot(y[1], y[2]));
                same(r, "landing_radius_computed_m", drop.radius(d)[0]);
                same(r, "impact_speed_m_s", y[6]);
                same(r, "impact_energy_kj", drop.energyJ(d) / 1000);
                Mud of = scene.classes.get(r.get("bottom"));
                new Target(name, scene, of, d).embedded(r, drop.energyJ(d));
                double asked = number(r, "stability_asked");
                double tilt = number(r, "tilt_deg");
                double moment = PlainDrop.momentNm(scene.body, drop.profile, d);
                double most = PlainDrop.steepestDeg(scene.body, moment, Math.max(0, tilt - 0.5), asked);
                double least = PlainDrop.steepestDeg(scene.body, moment, tilt + 0.5, asked);
                String text = r.get("steepest_slope_deg");
                count("steepest slope");
                check(text.isEmpty() ? Double.isNaN(least)
                        : Double.parseDouble(text) <= most + 0.51 && Double.parseDouble(text) >= (Double.isNaN(least) ? 0 : least - 0.51),
                        r, "steepest slope " + text + " and not " + least + " to " + most);
            }
        }

        private Target(String name, DropScene scene, Mud mud, double depth) {
            this.name = name;
            this.scene = scene;
            this.at = null;
            this.depth = depth;
            this.slopeDeg = Double.NaN;
            this.mud = mud;
        }

        private void same(CSVRecord r, String column, double expected) {
            String text = r.get(column);
            if (text.isEmpty()) {
                check(false, r, column + " is empty and not " + expected);
                return;
            }
            double off = Math.abs(Double.parseDouble(text) - expected);
            check(off <= halfDigit(text) + 1e-4 * Math.abs(expected) + 2e-4, r, column + " " + text + " and not " + expected);
        }

        private void check(boolean holds, CSVRecord r, String what) {
            if (!holds) {
                failures.add(name + ": " + what + " in " + r.toMap().values().stream().limit(24).collect(Collectors.joining(",")));
            }
        }
    }

    private static double number(CSVRecord r, String column) {
        return Double.parseDouble(r.get(column));
    }

    /** Half of the last digit that is printed. */
    static double halfDigit(String text) {
        int point = text.indexOf('.');
        return 0.5 * Math.pow(10, point < 0 ? 0 : point + 1 - text.length()) * (1 + 1e-9);
    }

    /** Horn (1981). */
    static double slopeDeg(DropScene scene, int col, int row) {
        double[][] z = new double[3][3];
        for (int i = 0; i < 9; i++) {
            z[i / 3][i % 3] = scene.depthM[(row - 1 + i / 3) * scene.cols + col - 1 + i % 3];
        }
        double east = z[0][2] + 2 * z[1][2] + z[2][2] - z[0][0] - 2 * z[1][0] - z[2][0];
        double south = z[2][0] + 2 * z[2][1] + z[2][2] - z[0][0] - 2 * z[0][1] - z[0][2];
        return Math.toDegrees(Math.atan(Math.hypot(east, south) / (8 * scene.cellM)));
    }
}
