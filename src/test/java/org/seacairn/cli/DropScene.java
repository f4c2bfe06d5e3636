package org.seacairn.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.seacairn.cli.PlainDrop.Body;
import org.seacairn.cli.PlainDrop.Doubts;
import org.seacairn.cli.PlainDrop.Profile;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.score.GridFiles;
import org.seacairn.score.PlainMap;

/**
 * A small random siting plan whose module states all that its sinking needs, with all its files, and beside it the same facts
 * as plain numbers. The bottom lies in bands of whole columns, so that no cell is near the border of two classes.
 */
final class DropScene {
    /** What a band of the bottom holds: pascals and pascals per metre, NaN where the class states no strength. */
    record Mud(double strength, double gradient) {}

    /** Points to stand off; {@code surface}: the barge too. */
    record Rule(String name, List<double[]> points, double distanceM, double positionM, boolean surface) {}

    private static final int[] ZONES = {17, -33, 33, -55};
    private static final double[] CELLS_M = {10, 12.5, 20};

    final Random random;
    final int zone;
    final double west;
    final double north;
    final double cellM;
    final int cols;
    final int rows;
    /** Positive down, from the very floats of the file. */
    final double[] depthM;
    final double horizontalM;
    final Map<String, Mud> classes = new LinkedHashMap<>();
    /** By column; null where nothing is mapped. */
    final String[] bottom;
    final List<Rule> rules = new ArrayList<>();
    Body body;
    final List<Profile> profiles = new ArrayList<>();
    Doubts doubts;
    double releaseTiltDeg;
    /** One profile, the same at every depth, and the module leaves upright. */
    final boolean quiet;
    double shallowestM;
    double deepestM;
    double embedmentM;
    double stability;

    private final Path folder;
    private final StringBuilder plan = new StringBuilder("title: Trial off Teasel Bank\n");

    /** @param quiet the module leaves upright and the current is the same at every depth */
    DropScene(long seed, Path folder, int cols, int rows, boolean quiet) {
        this.random = new Random(seed);
        this.folder = folder;
        this.cols = cols;
        this.rows = rows;
        this.quiet = quiet;
        this.zone = ZONES[random.nextInt(ZONES.length)];
        this.cellM = CELLS_M[random.nextInt(CELLS_M.length)];
        double[] middle = PlainMap.utm(zone, 6 * Math.abs(zone) - 183 + between(-2.5, 2.5), Math.copySign(between(5, 55), zone));
        this.west = Math.rint(middle[0] - cols * cellM / 2);
        this.north = Math.rint(middle[1] + rows * cellM / 2);
        this.horizontalM = rounded(between(0, 8), 2);
        this.depthM = bathymetry();
        this.bottom = new String[cols];
        bottom();
        keepOff();
        limits();
        module();
        current();
        plan.append("criteria:\n  depth: {weight: 1, curve: [0 m, 40 m, 80 m, 300 m]}\nsites: {count: 6, apart: 40 m}\n");
        GridFiles.write(plan(), plan.toString());
    }

    Path plan() {
        return folder.resolve("plan.yaml");
    }

    double[] lonLat(int col, int row) {
        return PlainMap.lonLat(zone, west + (col + 0.5) * cellM, north - (row + 0.5) * cellM);
    }

    double between(double a, double b) {
        return a + (b - a) * random.nextDouble();
    }

    static double rounded(double x, int decimals) {
        return Math.rint(x * Math.pow(10, decimals)) / Math.pow(10, decimals);
    }

    private static String text(double x) {
        return Double.toString(x);
    }

    private double[] bathymetry() {
        double base = between(45, 110);
        double east = between(-0.12, 0.12);
        double south = between(-0.12, 0.12);
        float[] stored = new float[cols * rows];
        for (int i = 0; i < stored.length; i++) {
            double x = cellM * (i % cols - cols / 2);
            double y = cellM * (i / cols - rows / 2);
            stored[i] = (float) Math.max(25, base + east * x + south * y + 3 * Math.sin(x / 60) * Math.cos(y / 45));
        }
        Crs crs = Crs.ofEpsg((zone < 0 ? 32700 : 32600) + Math.abs(zone));
        GridFiles.geoTiff(folder.resolve("depths.tif"), new GridGeometry(crs, west, north, cellM, cols, rows), stored);
        plan.append("bathymetry: {file: depths.tif, values: depth, unit: m, vertical-uncertainty: 0.5 m, horizontal-uncertainty: ")
                .append(text(horizontalM)).append(" m}\n");
        double[] depths = new double[stored.length];
        Arrays.setAll(depths, i -> stored[i]);
        return depths;
    }

    private void bottom() {
        plan.append("bottom:\n  file: bottom.geojson\n  class: kind\n  unmapped: 0.3\n  classes:\n");
        for (String name : List.of("ooze", "mud", "clay", "sand")) {
            // From what swallows a module to what hardly gives way.
            double strength = name.equals("sand") ? Double.NaN : Math.rint(Math.pow(10, between(2.5, 4.5)));
            double gradient = name.equals("sand") || random.nextInt(3) == 0 ? 0 : Math.rint(between(0, 2500));
            classes.put(name, new Mud(strength, gradient));
            plan.append("    ").append(name).append(": {suitability: 0.8")
                    .append(Double.isNaN(strength) ? "" : ", shear-strength: " + text(strength) + " Pa")
                    .append(gradient == 0 ? "" : ", gradient: " + text(gradient) + " Pa/m").append("}\n");
        }
        List<String> features = new ArrayList<>();
        List<String> names = new ArrayList<>(classes.keySet());
        for (int col = 0; col < cols;) {
            int end = Math.min(cols, col + 1 + random.nextInt(Math.max(2, cols / 3)));
            String name = random.nextInt(6) == 0 ? null : names.get(random.nextInt(names.size()));
            Arrays.fill(bottom, col, end, name);
            if (name != null) {
                features.add(band(name, west + col * cellM, west + end * cellM));
            }
            col = end;
        }
        GridFiles.write(folder.resolve("bottom.geojson"), TinyScene.features(features.toArray(String[]::new)));
    }

    private String band(String name, double from, double to) {
        double above = north + 50;
        double below = north - rows * cellM - 50;
        double[][] ring = {{from, below}, {to, below}, {to, above}, {from, above}, {from, below}};
        return TinyScene.feature("kind", name, "Polygon", "[" + Arrays.stream(ring)
                .map(p -> position(PlainMap.lonLat(zone, p[0], p[1]))).toList() + "]");
    }

    private static String position(double[] lonLat) {
        return String.format(Locale.ROOT, "[%.9f, %.9f]", lonLat[0], lonLat[1]);
    }

    private void keepOff() {
        int count = 1 + random.nextInt(2);
        plan.append("keep-off:\n");
        for (int k = 0; k < count; k++) {
            List<double[]> points = new ArrayList<>();
            List<String> features = new ArrayList<>();
            for (int i = 0; i <= random.nextInt(2); i++) {
                double[] at = PlainMap.lonLat(zone, west + between(-0.3, 1.3) * cols * cellM, north - between(-0.3, 1.3) * rows * cellM);
                points.add(new double[] {rounded(at[0], 8), rounded(at[1], 8)});
                features.add(TinyScene.feature("name", "p" + i, "Point", position(points.get(i))));
            }
            Rule rule = new Rule("layer " + k, points, rounded(between(0, 0.3 * cols * cellM), 1), rounded(between(0, 10), 1), random.nextBoolean());
            rules.add(rule);
            GridFiles.write(folder.resolve("layer" + k + ".geojson"), TinyScene.features(features.toArray(String[]::new)));
            plan.append("  - {layer: ").append(rule.name()).append(", file: layer").append(k).append(".geojson, distance: ")
                    .append(rule.distanceM()).append(" m, position-uncertainty: ").append(rule.positionM()).append(" m, surface: ")
                    .append(rule.surface()).append("}\n");
        }
    }

    private void limits() {
        double[] sorted = Arrays.stream(depthM).sorted().toArray();
        shallowestM = Math.rint(sorted[sorted.length / 10]) - 1;
        deepestM = Math.rint(sorted[sorted.length - 1 - sorted.length / 10]) + 1;
        embedmentM = rounded(between(0.2, 3), 2);
        stability = rounded(between(1, 8), 2);
        plan.append("limits: {depth: [").append(shallowestM).append(" m, ").append(deepestM).append(" m], embedment: ")
                .append(embedmentM).append(" m, stability: ").append(stability).append("}\n");
    }

    private void module() {
        String shape = List.of("square", "rectangle", "round").get(random.nextInt(3));
        double width = rounded(between(1, 4), 2);
        double length = shape.equals("rectangle") ? rounded(width * between(1.01, 3), 2) : width;
        double baseHeight = rounded(between(0.3, 1), 2);
        double open = random.nextInt(3) == 0 ? 0 : rounded(between(0, 0.45), 2);
        double plan2 = width * length * (shape.equals("round") ? Math.PI / 4 : 1);
        double baseVolume = rounded(plan2 * baseHeight * (1 - open) * between(0.8, 1), 3);
        double baseMass = Math.rint(baseVolume * between(1900, 2700));
        double diameter = rounded(between(0.15, 0.5), 3);
        double poleLength = rounded(between(3, 9), 2);
        double poleVolume = rounded(Math.PI / 4 * diameter * diameter * poleLength * between(0.1, 0.9), 4);
        double poleMass = Math.rint(Math.min((quiet ? 0.05 : 0.9) * baseMass, poleVolume * between(1000, 7850)));
        baseMass = Math.max(baseMass, Math.rint(1100 * (baseVolume + poleVolume)));
        double height = rounded(poleLength + baseHeight * random.nextDouble(), 3);
        double[] cd = {between(0.9, 1.6), between(0.8, 1.4), between(0.7, 1), between(0.5, 1.2)};
        double[] ca = {between(0.4, 0.9), between(1, 2.3), between(0.6, 1)};
        cd = Arrays.stream(cd).map(c -> rounded(c, 3)).toArray();
        ca = Arrays.stream(ca).map(c -> rounded(c, 3)).toArray();
        double dragUncertainty = random.nextInt(3) == 0 ? 0 : rounded(between(0, 0.4), 2);
        double scatter = random.nextBoolean() ? Double.NaN : rounded(between(0, 15), 1);
        releaseTiltDeg = quiet ? 0 : Math.rint(between(0, 120));
        body = new Body(shape, height, width, length, baseHeight, baseMass, baseVolume, open, diameter, poleLength, poleMass, poleVolume,
                cd, ca, dragUncertainty, scatter);
        GridFiles.write(folder.resolve("module.yaml"), String.format(Locale.ROOT, """
                height: %s m
                base: {shape: %s, width: %s m,%s height: %s m, mass: %s kg, volume: %s m3, open-share: %s}
                pole: {diameter: %s m, length: %s m, mass: %s kg, volume: %s m3}
                drag: {base-axial: %s, base-lateral: %s, pole-axial: %s, pole-lateral: %s, uncertainty: %s}
                added-mass: {base-axial: %s, base-lateral: %s, pole-lateral: %s}
                %srelease-tilt: %s deg
                """, height, shape, width, shape.equals("rectangle") ? " length: " + length + " m," : "", baseHeight, text(baseMass), baseVolume, open,
                diameter, poleLength, poleMass, poleVolume, cd[0], cd[1], cd[2], cd[3], dragUncertainty, ca[0], ca[1], ca[2],
                Double.isNaN(scatter) ? "" : "scatter-angle: " + scatter + " deg\n", releaseTiltDeg));
        plan.append("module: {file: module.yaml}\n");
    }

    private void current() {
        int count = quiet ? 1 : 1 + random.nextInt(3);
        StringBuilder table = new StringBuilder("profile,depth_m,speed_m_s,toward_deg\n");
        for (int k = 0; k < count; k++) {
            profiles.add(profile("day " + k));
            profiles.get(k).levels().forEach(l -> table.append(profiles.get(profiles.size() - 1).name())
                    .append(String.format(Locale.ROOT, ",%s,%s,%s\n", l[0], l[1], l[2])));
        }
        GridFiles.write(folder.resolve("current.csv"), table.toString());
        boolean stated = random.nextInt(4) > 0;
        boolean share = random.nextBoolean();
        double speed = stated ? rounded(between(0, 0.3), 2) : 0;
        double direction = stated ? Math.rint(between(0, 25)) : 0;
        doubts = new Doubts(share ? 0 : speed, share ? speed : 0, direction, random.nextBoolean() ? 0 : rounded(between(0, 8), 1));
        plan.append("current: {file: current.csv");
        if (stated) {
            plan.append(", speed-uncertainty: ").append(share ? Math.rint(100 * speed) + " %" : speed + " m/s")
                    .append(", direction-uncertainty: ").append(direction).append(" deg");
        }
        plan.append("}\n").append(doubts.bargeM() == 0 ? "" : "barge: {position-uncertainty: " + doubts.bargeM() + " m}\n");
    }

    private Profile profile(String name) {
        double bottomM = deepestM + Math.rint(between(0, 30));
        List<double[]> levels = new ArrayList<>();
        double speed = quiet && random.nextBoolean() ? 0 : rounded(between(0, quiet ? 1 : 2.1), 2);
        double toward = Math.rint(between(0, 359));
        int more = quiet ? 0 : random.nextInt(4);
        double first = quiet || random.nextInt(3) > 0 ? 0 : Math.rint(between(0, 15));
        levels.add(new double[] {first, speed, toward});
        for (int i = 0; i < more; i++) {
            double depth = rounded(first + (bottomM - first) * (i + between(0.2, 1)) / (more + 1), 1);
            levels.add(new double[] {depth, rounded(between(0, 2), 2), Math.rint((toward + between(-90, 90) + 360) % 360)});
        }
        levels.add(new double[] {bottomM, quiet ? speed : rounded(between(0, 1), 2), quiet ? toward : Math.rint(between(0, 359))});
        return new Profile(name, levels);
    }
}
