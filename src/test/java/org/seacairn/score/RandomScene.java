package org.seacairn.score;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;

/**
 * A small random siting plan with all its files, and beside it the same facts as plain numbers, so that
 * an oracle need not ask the code under test what the plan says.
 */
final class RandomScene {
    /** A length as the plan writes it and in metres. */
    record Length(String text, double m) {}

    /** A layer with a distance. {@code comfortableM} is NaN where the plan states none. */
    record Rule(String reason, List<PlainShape> shapes, double keepOffM, double positionM, double comfortableM) {}

    /** Suitability of a bottom type, NaN for never, where the type's polygon lies. */
    record Patch(PlainShape shape, String kind, double suitability) {}

    /** A criterion of the plan; {@code curve} is null where it has none. */
    record Scored(String measure, double weight, double[] curve) {}

    private static final String[] VALUE_UNITS = {"m", "ft", "ft_us", "fathom"};
    private static final double[] METRES_PER_UNIT = {1, 0.3048, 1200.0 / 3937, 1.8288};

    final Random random;
    final RandomGrid grid;
    /** Positive down, NaN for none: from the very floats in the file. */
    final double[] depthM;
    final List<Patch> bottom = new ArrayList<>();
    final List<PlainShape> inside = new ArrayList<>();
    final List<Rule> keepOff = new ArrayList<>();
    final List<Scored> criteria = new ArrayList<>();
    Rule reefs;
    boolean hasBottom;
    boolean hasInside;
    /** NaN where unmapped bottom is excluded. */
    double unmapped = Double.NaN;
    double[] uncertainty = new double[4];
    double shallowestM = Double.NaN;
    double deepestM = Double.NaN;
    double steepestDeg = Double.NaN;
    double roughest = Double.NaN;
    double clearanceAboveM = Double.NaN;
    double heightShare = Double.NaN;
    double heightM;
    double landingRadiusM;
    int ruggednessWindow;
    String combine;

    private final Path folder;
    private final StringBuilder plan = new StringBuilder();

    RandomScene(long seed, Path folder) {
        this(seed, folder, RandomGrid::of);
    }

    RandomScene(long seed, Path folder, RandomGrid grid) {
        this(seed, folder, random -> grid);
    }

    RandomScene(long seed, Path folder, Function<Random, RandomGrid> grid) {
        this.random = new Random(seed);
        this.folder = folder;
        this.grid = grid.apply(random);
        this.depthM = bathymetry();
        bottom();
        reefs();
        inside();
        keepOff();
        limits();
        module();
        criteria();
        plan.append("sites: {count: 5, apart: 100 m}\n");
    }

    /** Writes the plan; the layers are on disk already. */
    Path plan() {
        Path file = folder.resolve("plan.yaml");
        GridFiles.write(file, plan.toString());
        return file;
    }

    boolean scores(String measure) {
        return criteria.stream().anyMatch(c -> c.measure().equals(measure));
    }

    private double[] bathymetry() {
        int unit = random.nextInt(VALUE_UNITS.length);
        boolean elevation = random.nextBoolean();
        double factor = (elevation ? -1 : 1) * METRES_PER_UNIT[unit];
        float[] stored = terrain(factor);
        GridGeometry geometry = new GridGeometry(Crs.ofEpsg((grid.zone() < 0 ? 32700 : 32600) + Math.abs(grid.zone())),
                grid.west(), grid.north(), grid.cellM(), grid.cols(), grid.rows());
        boolean tiff = random.nextInt(3) > 0;
        String file = tiff ? "depths.tif" : "depths.asc";
        if (tiff) {
            GridFiles.geoTiff(folder.resolve(file), geometry, stored);
        } else {
            GridFiles.ascii(folder.resolve(file), geometry, stored);
        }
        if (random.nextBoolean()) {
            plan.append("crs: EPSG:").append(geometry.crs().epsg().getAsInt()).append('\n');
        }
        if (random.nextBoolean()) {
            plan.append("cell: ").append(grid.cellM()).append(" m\n");
        }
        plan.append("bathymetry: {file: ").append(file).append(", values: ").append(elevation ? "elevation" : "depth")
                .append(", unit: ").append(VALUE_UNITS[unit]).append(uncertaintyText()).append("}\n");
        return IntStream.range(0, stored.length).mapToDouble(i -> factor * stored[i]).toArray();
    }

    private float[] terrain(double factor) {
        boolean shore = random.nextInt(6) == 0;
        double baseM = shore ? 8 : 50 + 60 * random.nextDouble();
        double east = 0.12 * (random.nextDouble() - 0.5);
        double north = 0.12 * (random.nextDouble() - 0.5);
        double noiseM = Math.pow(10, -2 + 2 * random.nextDouble());
        double[][] bumps = new double[3][];
        for (int i = 0; i < bumps.length; i++) {
            bumps[i] = new double[] {grid.cols() * random.nextDouble(), grid.rows() * random.nextDouble(),
                2 + 6 * random.nextDouble(), 24 * (random.nextDouble() - 0.5)};
        }
        double missing = new double[] {0, 0, 0.005, 0.03}[random.nextInt(4)];
        int[] hole = random.nextInt(3) == 0 ? new int[] {random.nextInt(grid.cols()), random.nextInt(grid.rows())} : null;
        float[] stored = new float[grid.cols() * grid.rows()];
        for (int i = 0; i < stored.length; i++) {
            int col = i % grid.cols();
            int row = i / grid.cols();
            double depth = baseM + grid.cellM() * (east * (col - grid.cols() / 2) + north * (row - grid.rows() / 2))
                    + noiseM * random.nextGaussian();
            for (double[] bump : bumps) {
                depth += bump[3] * Math.exp(-(Math.pow(col - bump[0], 2) + Math.pow(row - bump[1], 2)) / (2 * bump[2] * bump[2]));
            }
            boolean inHole = hole != null && Math.abs(col - hole[0]) <= 3 && Math.abs(row - hole[1]) <= 2;
            stored[i] = inHole || random.nextDouble() < missing ? Float.NaN : (float) (depth / factor);
        }
        return stored;
    }

    /** IHO S-44 edition 6, table 1 (read in texts that quote it), or plain figures, or none. */
    private String uncertaintyText() {
        String[] orders = {"exclusive", "special", "1a", "1b", "2"};
        double[][] figures = {{0.15, 0.0075, 1, 0}, {0.25, 0.0075, 2, 0}, {0.5, 0.013, 5, 0.05}, {0.5, 0.013, 5, 0.05},
            {1, 0.023, 20, 0.1}};
        int which = random.nextInt(8);
        if (which < orders.length) {
            uncertainty = figures[which];
            return ", survey-order: " + orders[which];
        }
        if (which == orders.length) {
            return "";
        }
        Length vertical = length(2 * random.nextDouble());
        Length horizontal = length(20 * random.nextDouble());
        uncertainty = new double[] {vertical.m(), 0, horizontal.m(), 0};
        return ", vertical-uncertainty: " + vertical.text() + ", horizontal-uncertainty: " + horizontal.text();
    }

    private void bottom() {
        hasBottom = random.nextInt(5) < 3;
        if (!hasBottom) {
            return;
        }
        Map<String, Double> classes = new LinkedHashMap<>();
        classes.put("mud", 0.45);
        classes.put("sand", 1.0);
        classes.put("shell hash", 0.85);
        classes.put("ooze", 0.0);
        classes.put("hardbottom", Double.NaN);
        List<String> names = new ArrayList<>(classes.keySet());
        RandomLayer layer = new RandomLayer(random, grid);
        // The sea floor is sand nearly everywhere, so that something is left to score.
        layer.addPolygonAcross("sand", 0.6 + random.nextDouble());
        int more = random.nextInt(6);
        for (int i = 0; i < more; i++) {
            layer.addPolygon(names.get(random.nextInt(names.size())), 0.1 + 0.3 * random.nextDouble());
        }
        GridFiles.write(folder.resolve("bottom.geojson"), layer.geoJson());
        for (int i = 0; i < layer.shapes().size(); i++) {
            bottom.add(new Patch(layer.shapes().get(i), layer.kinds().get(i), classes.get(layer.kinds().get(i))));
        }
        plan.append("bottom:\n  file: bottom.geojson\n  class: kind\n");
        switch (random.nextInt(3)) {
            case 0 -> plan.append("  unmapped: exclude\n");
            case 1 -> {
                unmapped = Math.rint(100 * random.nextDouble()) / 100;
                plan.append("  unmapped: ").append(unmapped).append('\n');
            }
            default -> { }
        }
        plan.append("  classes:\n");
        classes.forEach((name, suitability) -> plan.append("    ").append(name).append(": ")
                .append(suitability.isNaN() ? "never" : "{suitability: " + suitability + "}").append('\n'));
    }

    private void reefs() {
        if (random.nextInt(5) < 2) {
            return;
        }
        RandomLayer layer = new RandomLayer(random, grid);
        int count = 1 + random.nextInt(4);
        for (int i = 0; i < count; i++) {
            if (random.nextInt(3) > 0) {
                layer.addPoint();
            } else {
                layer.addAny();
            }
        }
        GridFiles.write(folder.resolve("reefs.geojson"), layer.geoJson());
        Length keepOff = length(5 + 50 * random.nextDouble());
        Length position = length(random.nextBoolean() ? 0 : 20 * random.nextDouble());
        plan.append("reefs: {file: reefs.geojson, keep-off: ").append(keepOff.text())
                .append(position.m() == 0 ? "" : ", position-uncertainty: " + position.text()).append("}\n");
        reefs = new Rule("near-reef", layer.shapes(), keepOff.m(), position.m(), Double.NaN);
    }

    private void inside() {
        hasInside = random.nextInt(5) < 2;
        if (!hasInside) {
            return;
        }
        RandomLayer layer = new RandomLayer(random, grid);
        layer.addPolygonAcross("area", 0.4 + 0.7 * random.nextDouble());
        int more = random.nextInt(3);
        for (int i = 0; i < more; i++) {
            layer.addPolygon("area", 0.1 + 0.5 * random.nextDouble());
        }
        GridFiles.write(folder.resolve("inside.geojson"), layer.geoJson());
        plan.append("inside: {file: inside.geojson}\n");
        inside.addAll(layer.shapes());
    }

    private void keepOff() {
        int layers = random.nextInt(4);
        plan.append(layers > 0 ? "keep-off:\n" : "");
        for (int k = 0; k < layers; k++) {
            RandomLayer layer = new RandomLayer(random, grid);
            int count = 1 + random.nextInt(3);
            for (int i = 0; i < count; i++) {
                layer.addAny();
            }
            String name = "layer " + (char) ('a' + k);
            String file = "layer-" + k + ".geojson";
            GridFiles.write(folder.resolve(file), layer.geoJson());
            Length distance = length(2 + 40 * random.nextDouble());
            Length position = length(random.nextBoolean() ? 0 : 15 * random.nextDouble());
            // Some lie within what is required once the uncertainties are added.
            Length comfortable = random.nextInt(4) == 0 ? null
                    : length(distance.m() + (random.nextInt(6) == 0 ? 1 : 300 + 900 * random.nextDouble()));
            plan.append("  - {layer: ").append(name).append(", file: ").append(file).append(", distance: ").append(distance.text())
                    .append(position.m() == 0 ? "" : ", position-uncertainty: " + position.text())
                    .append(comfortable == null ? "" : ", comfortable: " + comfortable.text()).append("}\n");
            keepOff.add(new Rule("keep-off:" + name, layer.shapes(), distance.m(), position.m(),
                    comfortable == null ? Double.NaN : comfortable.m()));
        }
    }

    private void limits() {
        double[] sorted = Arrays.stream(depthM).filter(d -> d > 1).sorted().toArray();
        plan.append("limits: {");
        if (random.nextBoolean() && sorted.length > 10) {
            Length shallowest = length(sorted[(int) (sorted.length * 0.2 * random.nextDouble())]);
            Length deepest = length(sorted[(int) (sorted.length * (0.8 + 0.2 * random.nextDouble()))] + 0.1);
            shallowestM = shallowest.m();
            deepestM = deepest.m();
            plan.append("depth: [").append(shallowest.text()).append(", ").append(deepest.text()).append("], ");
        }
        if (random.nextBoolean()) {
            double slope = Math.rint(100 * (3 + 12 * random.nextDouble())) / 100;
            boolean grade = random.nextBoolean();
            steepestDeg = grade ? Math.toDegrees(Math.atan(slope / 100)) : slope;
            plan.append("slope: ").append(slope).append(grade ? " %" : " deg").append(", ");
        }
        if (random.nextInt(3) == 0) {
            roughest = Math.rint(1e6 * Math.pow(10, -3.5 + 2 * random.nextDouble())) / 1e6;
            plan.append("ruggedness: ").append(String.format(Locale.ROOT, "%.6f", roughest)).append(", ");
        }
        if (random.nextBoolean() && sorted.length > 10) {
            Length above = length(0.9 * sorted[sorted.length / 3] * random.nextDouble());
            clearanceAboveM = above.m();
            plan.append("clearance-above: ").append(above.text()).append(", ");
        }
        if (random.nextInt(3) == 0) {
            heightShare = Math.rint(100 * (0.05 + 0.4 * random.nextDouble())) / 100;
            plan.append("height-share: ").append(heightShare);
        }
        plan.append("}\n");
        ruggednessWindow = 3 + 2 * random.nextInt(3);
        plan.append("terrain: {ruggedness-window: ").append(ruggednessWindow).append(" cells}\n");
    }

    private void module() {
        double[] cells = {0, 0, 0.3, 1, 1, Math.sqrt(2), 1.7, 2, 3, Math.sqrt(13), 5};
        double radiusCells = cells[random.nextInt(cells.length)];
        Length height = length(3 + 12 * random.nextDouble());
        // Whole multiples of the cell fall on centres exactly; write them so.
        String radius = radiusCells == Math.rint(radiusCells) ? radiusCells * grid.cellM() + " m"
                : length(radiusCells * grid.cellM() + 0.5).text();
        heightM = height.m();
        landingRadiusM = metres(radius);
        plan.append("module: {height: ").append(height.text()).append(", landing-radius: ").append(radius).append("}\n");
    }

    private void criteria() {
        add("depth", 1, curve(20 + 60 * random.nextDouble(), 5, 60, "m"));
        add("slope", 2, curve(0, 2.5, 4, "deg"));
        add("ruggedness", 4, curve(0, 0.02, 0.03, ""));
        if (hasBottom) {
            add("bottom", 2, null);
        }
        if (!keepOff.isEmpty()) {
            add("clearance", 2, null);
        }
        if (reefs != null) {
            add("spacing", 2, curve(40 * random.nextDouble(), 300, 500, "m"));
        }
        if (criteria.isEmpty()) {
            add("depth", 1, curve(20 + 60 * random.nextDouble(), 5, 60, "m"));
        }
        plan.append("criteria:\n");
        for (Scored c : criteria) {
            String unit = switch (c.measure()) {
                case "slope" -> " deg";
                case "ruggedness" -> "";
                default -> " m";
            };
            plan.append("  ").append(c.measure()).append(": {weight: ").append(c.weight()).append(c.curve() == null ? ""
                    : ", curve: " + Arrays.stream(c.curve()).mapToObj(x -> BigDecimal.valueOf(x).toPlainString() + unit).toList())
                    .append("}\n");
        }
        combine = new String[] {"weighted-mean", "weighted-geometric", "limiting"}[random.nextInt(3)];
        plan.append("combine: ").append(combine).append('\n');
    }

    private void add(String measure, int oneIn, double[] curve) {
        if (random.nextInt(oneIn) == 0 && criteria.stream().noneMatch(c -> c.measure().equals(measure))) {
            criteria.add(new Scored(measure, Math.rint(100 * (0.1 + 4 * random.nextDouble())) / 100, curve));
        }
    }

    /** Corners with ramps no narrower than given, or upright. */
    private double[] curve(double from, double ramp, double flat, String unit) {
        double scale = unit.isEmpty() ? 1e5 : 100;
        double[] corners = new double[4];
        corners[0] = from;
        corners[1] = corners[0] + (random.nextInt(4) == 0 ? 0 : ramp * (1 + random.nextDouble()));
        corners[2] = corners[1] + (random.nextInt(4) == 0 ? 0 : flat * random.nextDouble());
        corners[3] = corners[2] + (random.nextInt(4) == 0 ? 0 : ramp * (1 + 2 * random.nextDouble()));
        return Arrays.stream(corners).map(x -> Math.rint(scale * x) / scale).toArray();
    }

    private Length length(double approxM) {
        String unit = VALUE_UNITS[random.nextInt(VALUE_UNITS.length)];
        String text = String.format(Locale.ROOT, "%.2f %s", approxM / metres("1 " + unit), unit);
        return new Length(text, metres(text));
    }

    private static double metres(String length) {
        String[] parts = length.split(" ");
        return Double.parseDouble(parts[0]) * METRES_PER_UNIT[Arrays.asList(VALUE_UNITS).indexOf(parts[1])];
    }
}
