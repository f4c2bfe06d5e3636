package org.seacairn.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.seacairn.geodesy.Crs;
import org.seacairn.score.PlainMap;

/**
 * A small random siting plan with all its files and a proposal, and beside it the same facts as plain numbers and figures,
 * so that an oracle need not ask the code under test what they say.
 */
final class ReviewScene {
    /** A length as the plan writes it and in metres. */
    record Length(String text, double m) {}

    /** A layer to stand off. {@code coverage} is null where the plan names none. */
    record Rule(String name, String source, List<PlainFigure> figures, double distanceM, double positionM, boolean rhumb,
            List<PlainFigure> coverage) {}

    /** Longitude and latitude of a point, null for a polygon; the figure of either. */
    record Site(String name, double[] point, PlainFigure figure) {
        boolean isPoint() {
            return point != null;
        }
    }

    private static final String[] UNITS = {"m", "ft", "ft_us", "fathom"};
    private static final double[] METRES = {1, 0.3048, 1200.0 / 3937, 1.8288};
    private static final double[] CELLS_M = {10, 12.5, 16, 20, 25, 40};

    /** Where scenes lie: UTM zone, negative in the south, and the range of longitudes and latitudes of their middles. */
    private enum Region {
        NORTH(17, -82.5, -79.5, 24, 36), EQUATOR(33, 13, 17, -0.3, 0.3), HIGH(-33, 13, 17, -80, -65), HIGH_NORTH(33, 13, 17, 65, 80),
        SOUTH(-55, 144.5, 149.5, -45, -15), EAST_OF_180(1, -180.004, -179.996, 5, 72), WEST_OF_180(60, 179.996, 180.004, 5, 72),
        SOUTH_WEST_OF_180(-60, 179.99, 180.01, -50, -10), SOUTH_EAST_OF_180(-1, -180.01, -179.99, -50, -10);

        final int zone;
        final double[] box;

        Region(int zone, double... box) {
            this.zone = zone;
            this.box = box;
        }
    }

    final Random random;
    final int zone;
    final double west;
    final double north;
    final double cellM;
    final int cols;
    final int rows;
    final PlainPlane plane;
    /** Half of the longer side. */
    final double halfM;
    /** Positive down, NaN for none, as the float that the program holds. */
    final double[] depthM;
    final double[] uncertainty;
    /** By class of the bottom; NaN for never. */
    final Map<String, Double> classes = new LinkedHashMap<>();
    /** Null where the plan has no such layer. */
    ReviewLayer bottom;
    List<PlainFigure> inside;
    Rule reefs;
    final List<Rule> keepOff = new ArrayList<>();
    boolean insideRhumb;
    boolean excludesUnmapped;
    double shallowestM = Double.NaN;
    double deepestM = Double.NaN;
    double steepestDeg = Double.NaN;
    double roughest = Double.NaN;
    double clearanceAboveM = Double.NaN;
    double heightShare = Double.NaN;
    int ruggednessWindow;
    double heightM;
    double landingRadiusM;
    double apartM;
    final List<Site> sites = new ArrayList<>();
    /** The proposal's file and the options that tell how to read it. */
    final List<String> proposal = new ArrayList<>();

    private final Path folder;
    private final StringBuilder plan = new StringBuilder("title: Trial off Teasel Bank\n");

    ReviewScene(long seed, Path folder) {
        this.random = new Random(seed);
        this.folder = folder;
        Region region = Region.values()[random.nextInt(Region.values().length)];
        this.zone = region.zone;
        this.cellM = CELLS_M[random.nextInt(CELLS_M.length)];
        this.cols = 30 + random.nextInt(31);
        this.rows = 30 + random.nextInt(31);
        double[] middle = onMap(between(region.box[0], region.box[1]), between(region.box[2], region.box[3]));
        this.west = Math.rint(100 * (middle[0] - cols * cellM / 2)) / 100;
        this.north = Math.rint(100 * (middle[1] + rows * cellM / 2)) / 100;
        this.plane = new PlainPlane(PlainMap.lonLat(zone, west + cols * cellM / 2, north - rows * cellM / 2));
        this.halfM = Math.max(cols, rows) * cellM / 2;
        this.uncertainty = new double[4];
        this.depthM = bathymetry();
        bottom();
        reefs();
        inside();
        keepOff();
        limits();
        module();
        Length apart = length(1 + halfM * 0.2 * random.nextDouble());
        apartM = apart.m();
        plan.append("criteria:\n  depth: {weight: 1, curve: [0 m, 40 m, 80 m, 300 m]}\n");
        plan.append("sites: {count: 8, apart: ").append(apart.text()).append("}\n");
        write("plan.yaml", plan.toString());
        proposal();
    }

    Path plan() {
        return folder.resolve("plan.yaml");
    }

    String planText() {
        return plan.toString();
    }

    int epsg() {
        return (zone < 0 ? 32700 : 32600) + Math.abs(zone);
    }

    /** Easting and northing. */
    double[] onMap(double... lonLat) {
        // On whichever side of 180 degrees, as seen from the zone's own meridian.
        double meridian = 6 * Math.abs(zone) - 183;
        return PlainMap.utm(zone, meridian + Math.IEEEremainder(lonLat[0] - meridian, 360), lonLat[1]);
    }

    double[] cellCentre(int col, int row) {
        return PlainMap.lonLat(zone, west + (col + 0.5) * cellM, north - (row + 0.5) * cellM);
    }

    /** NaN for none, and off the grid. */
    double depthM(int col, int row) {
        return col < 0 || row < 0 || col >= cols || row >= rows ? Double.NaN : depthM[row * cols + col];
    }

    boolean isOnGrid(Site site) {
        return isOnGrid(site.point());
    }

    /** Whether some of a site off the grid would lie on it with the other sign of its longitude, as beside 180 degrees it may. */
    boolean isMirrored(Site site) {
        return site.figure().pieces.stream().map(piece -> piece.path().at(piece.from()))
                .anyMatch(at -> !isOnGrid(at) && isOnGrid(-at[0], at[1]));
    }

    private boolean isOnGrid(double... lonLat) {
        double[] xy = onMap(lonLat);
        return xy[0] > west && xy[0] < west + cols * cellM && xy[1] < north && xy[1] > north - rows * cellM;
    }

    private double between(double a, double b) {
        return a + (b - a) * random.nextDouble();
    }

    private void write(String name, String text) {
        try {
            Files.writeString(folder.resolve(name), text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private double[] bathymetry() {
        int unit = random.nextInt(3) == 0 ? 1 + random.nextInt(3) : 0;
        boolean elevation = random.nextBoolean();
        double factor = (elevation ? -1 : 1) * METRES[unit];
        String[] stored = terrain(factor);
        StringBuilder text = new StringBuilder(String.format(Locale.ROOT,
                "ncols %d%nnrows %d%nxllcorner %s%nyllcorner %s%ncellsize %s%nNODATA_value -9999%n", cols, rows, west, north - rows * cellM, cellM));
        double[] depth = new double[stored.length];
        for (int i = 0; i < stored.length; i++) {
            text.append(stored[i] == null ? "-9999" : stored[i]).append(i % cols == cols - 1 ? '\n' : ' ');
            depth[i] = stored[i] == null ? Double.NaN : (float) (Float.parseFloat(stored[i]) * factor);
        }
        write("depths.asc", text.toString());
        write("depths.prj", Crs.ofEpsg(epsg()).wkt());
        plan.append("crs: EPSG:").append(epsg()).append('\n');
        plan.append("bathymetry: {file: depths.asc, values: ").append(elevation ? "elevation" : "depth")
                .append(", unit: ").append(UNITS[unit]).append(uncertaintyText()).append("}\n");
        return depth;
    }

    private String[] terrain(double factor) {
        double baseM = random.nextInt(8) == 0 ? 6 : 50 + 60 * random.nextDouble();
        double east = 0.08 * (random.nextDouble() - 0.5);
        double south = 0.08 * (random.nextDouble() - 0.5);
        double noiseM = Math.pow(10, -2 + 2 * random.nextDouble());
        double[][] bumps = new double[3][];
        for (int i = 0; i < bumps.length; i++) {
            bumps[i] = new double[] {cols * random.nextDouble(), rows * random.nextDouble(), 3 + 8 * random.nextDouble(), 30 * (random.nextDouble() - 0.5)};
        }
        double missing = new double[] {0, 0, 0.003, 0.02}[random.nextInt(4)];
        int[] hole = random.nextInt(3) == 0 ? new int[] {random.nextInt(cols), random.nextInt(rows)} : null;
        String[] stored = new String[cols * rows];
        for (int i = 0; i < stored.length; i++) {
            int col = i % cols;
            int row = i / cols;
            double depth = baseM + cellM * (east * (col - cols / 2.0) + south * (row - rows / 2.0)) + noiseM * random.nextGaussian();
            for (double[] bump : bumps) {
                depth += bump[3] * Math.exp(-(Math.pow(col - bump[0], 2) + Math.pow(row - bump[1], 2)) / (2 * bump[2] * bump[2]));
            }
            boolean inHole = hole != null && Math.abs(col - hole[0]) <= 3 && Math.abs(row - hole[1]) <= 2;
            stored[i] = inHole || random.nextDouble() < missing ? null : String.format(Locale.ROOT, "%.2f", depth / factor);
        }
        return stored;
    }

    /** IHO S-44 edition 6, table 1 (read in texts that quote it), or plain figures, or none. */
    private String uncertaintyText() {
        String[] orders = {"exclusive", "special", "1a", "1b", "2"};
        double[][] figures = {{0.15, 0.0075, 1, 0}, {0.25, 0.0075, 2, 0}, {0.5, 0.013, 5, 0.05}, {0.5, 0.013, 5, 0.05}, {1, 0.023, 20, 0.1}};
        int which = random.nextInt(8);
        if (which < orders.length) {
            System.arraycopy(figures[which], 0, uncertainty, 0, 4);
            return ", survey-order: " + orders[which];
        }
        if (which == orders.length) {
            return "";
        }
        Length vertical = length(2 * random.nextDouble());
        Length horizontal = length(20 * random.nextDouble());
        uncertainty[0] = vertical.m();
        uncertainty[2] = horizontal.m();
        return ", vertical-uncertainty: " + vertical.text() + ", horizontal-uncertainty: " + horizontal.text();
    }

    private ReviewLayer layer(boolean rhumb) {
        return new ReviewLayer(random, plane, halfM, rhumb);
    }

    private void bottom() {
        if (random.nextInt(5) < 2) {
            return;
        }
        classes.put("mud", 0.45);
        classes.put("sand", 1.0);
        classes.put("ooze", 0.0);
        classes.put("hardbottom", Double.NaN);
        classes.put("wreckage", Double.NaN);
        if (random.nextInt(6) == 0) {
            classes.remove("wreckage");
            classes.put("hardbottom", 0.1);
        }
        List<String> names = new ArrayList<>(classes.keySet());
        bottom = layer(false);
        if (random.nextInt(4) == 0) {
            bottom.addNeighbours("sand");
        } else {
            bottom.addPolygonAcross("sand", 1 + 1.5 * random.nextDouble());
        }
        int more = random.nextInt(6);
        for (int i = 0; i < more; i++) {
            bottom.addPolygon(names.get(random.nextInt(names.size())), 0.05 + 0.5 * random.nextDouble());
        }
        if (random.nextInt(6) == 0) {
            bottom.addPolygon("hardbottom", new double[] {30_000 * random.nextDouble(), 20_000}, 1000);
        }
        write("bottom.geojson", bottom.geoJson());
        int unmapped = random.nextInt(3);
        excludesUnmapped = unmapped != 1;
        plan.append("bottom:\n  file: bottom.geojson\n  class: kind\n")
                .append(new String[] {"  unmapped: exclude\n", "  unmapped: 0.3\n", ""}[unmapped]).append("  classes:\n");
        classes.forEach((name, suitability) -> plan.append("    ").append(name).append(": ")
                .append(suitability.isNaN() ? "never" : "{suitability: " + suitability + "}").append('\n'));
    }

    private void reefs() {
        if (random.nextInt(5) < 2) {
            return;
        }
        boolean rhumb = random.nextInt(4) == 0;
        ReviewLayer layer = layer(rhumb);
        int count = 1 + random.nextInt(4);
        for (int i = 0; i < count; i++) {
            if (random.nextInt(3) > 0) {
                layer.addPoint("reef", layer.somewhere());
            } else {
                layer.addPolygon("reef", 0.02 + 0.1 * random.nextDouble());
            }
        }
        write("reefs.geojson", layer.geoJson());
        Length keepOff = length(1 + halfM * 0.3 * random.nextDouble());
        Length position = length(random.nextBoolean() ? 0 : 20 * random.nextDouble());
        plan.append("reefs: {file: reefs.geojson, name: name, keep-off: ").append(keepOff.text()).append(ruleText(position, "invented rule 1", rhumb)).append("}\n");
        reefs = new Rule("reefs", "invented rule 1", layer.figures(), keepOff.m(), position.m(), rhumb, null);
    }

    private static String ruleText(Length position, String source, boolean rhumb) {
        return (position.m() == 0 ? "" : ", position-uncertainty: " + position.text())
                + (source.isEmpty() ? "" : ", source: \"" + source + "\"") + (rhumb ? ", edges: rhumb-line" : "");
    }

    private void inside() {
        if (random.nextInt(5) < 2) {
            return;
        }
        insideRhumb = random.nextInt(4) == 0;
        ReviewLayer layer = layer(insideRhumb);
        if (random.nextInt(3) == 0) {
            layer.addNeighbours("area");
        } else {
            layer.addPolygonAcross("area", 0.6 + random.nextDouble());
        }
        int more = random.nextInt(3);
        for (int i = 0; i < more; i++) {
            layer.addPolygon("area", 0.1 + 0.6 * random.nextDouble());
        }
        write("inside.geojson", layer.geoJson());
        plan.append("inside: {file: inside.geojson").append(insideRhumb ? ", edges: rhumb-line" : "").append("}\n");
        inside = layer.figures();
    }

    private void keepOff() {
        int layers = random.nextInt(4);
        plan.append(layers > 0 ? "keep-off:\n" : "");
        for (int k = 0; k < layers; k++) {
            boolean rhumb = random.nextInt(3) == 0;
            ReviewLayer layer = layer(rhumb);
            int count = 1 + random.nextInt(3);
            for (int i = 0; i < count; i++) {
                if (random.nextInt(6) == 0) {
                    layer.addFar();
                } else {
                    layer.addAny();
                }
            }
            String name = "layer " + (char) ('a' + k);
            write("layer-" + k + ".geojson", layer.geoJson());
            Length distance = length(1 + halfM * Math.pow(10, -2 + 1.7 * random.nextDouble()));
            Length position = length(random.nextBoolean() ? 0 : 15 * random.nextDouble());
            String source = random.nextInt(5) == 0 ? "" : "invented rule " + (k + 2);
            List<PlainFigure> coverage = random.nextInt(3) == 0 ? coverage(k) : null;
            plan.append("  - {layer: ").append(name).append(", file: layer-").append(k).append(".geojson, name: name, distance: ")
                    .append(distance.text()).append(ruleText(position, source, rhumb))
                    .append(coverage == null ? "" : ", coverage: {file: coverage-" + k + ".geojson}").append("}\n");
            keepOff.add(new Rule("keep-off:" + name, source, layer.figures(), distance.m(), position.m(), rhumb, coverage));
        }
    }

    private List<PlainFigure> coverage(int k) {
        ReviewLayer coverage = layer(false);
        if (random.nextInt(3) == 0) {
            coverage.addNeighbours("survey");
        } else {
            coverage.addPolygonAcross("survey", 1 + 2 * random.nextDouble());
        }
        if (random.nextBoolean()) {
            coverage.addPolygon("survey", 0.5 + 1.5 * random.nextDouble());
        }
        write("coverage-" + k + ".geojson", coverage.geoJson());
        return coverage.figures();
    }

    private void limits() {
        double[] sorted = Arrays.stream(depthM).filter(d -> d > 1).sorted().toArray();
        plan.append("limits: {");
        if (random.nextBoolean() && sorted.length > 10) {
            // Some limits are the very depth of a cell, which they allow.
            boolean exact = random.nextInt(3) == 0;
            double low = sorted[(int) (sorted.length * 0.3 * random.nextDouble())];
            double high = sorted[(int) (sorted.length * (0.7 + 0.29 * random.nextDouble()))] + 0.1;
            Length shallowest = exact ? metres(low) : length(low);
            Length deepest = exact ? metres(high) : length(high);
            shallowestM = shallowest.m();
            deepestM = deepest.m();
            plan.append("depth: [").append(shallowest.text()).append(", ").append(deepest.text()).append("], ");
        }
        if (random.nextBoolean()) {
            double slope = Math.rint(100 * (2 + 12 * random.nextDouble())) / 100;
            boolean grade = random.nextBoolean();
            steepestDeg = grade ? Math.toDegrees(Math.atan(slope / 100)) : slope;
            plan.append("slope: ").append(slope).append(grade ? " %" : " deg").append(", ");
        }
        if (random.nextInt(3) == 0) {
            roughest = Math.rint(1e6 * Math.pow(10, -3.5 + 2 * random.nextDouble())) / 1e6;
            plan.append("ruggedness: ").append(String.format(Locale.ROOT, "%.6f", roughest)).append(", ");
        }
        if (random.nextBoolean() && sorted.length > 10) {
            Length above = length(0.95 * sorted[sorted.length / 3] * random.nextDouble());
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

    private static Length metres(double m) {
        String text = String.format(Locale.ROOT, "%.2f", m);
        return new Length(text + " m", Double.parseDouble(text));
    }

    private void module() {
        double[] cells = {0, 0, 0.3, 1, Math.sqrt(2), 1.7, 2, 3};
        double radiusCells = cells[random.nextInt(cells.length)];
        Length height = length(3 + 12 * random.nextDouble());
        Length radius = length(radiusCells * cellM + (radiusCells == 0 ? 0 : random.nextDouble()));
        heightM = height.m();
        landingRadiusM = radius.m();
        plan.append("module: {height: ").append(height.text()).append(", landing-radius: ").append(radius.text()).append("}\n");
    }

    private Length length(double approxM) {
        int unit = random.nextInt(UNITS.length);
        String number = String.format(Locale.ROOT, "%.2f", approxM / METRES[unit]);
        return new Length(number + " " + UNITS[unit], Double.parseDouble(number) * METRES[unit]);
    }

    private void proposal() {
        switch (random.nextInt(8)) {
            case 0, 1 -> csvDegrees();
            case 2 -> csvMinutes();
            case 3 -> csvMetres();
            case 4, 5 -> geoJsonPoints();
            default -> geoJsonPolygons();
        }
    }

    /** Places of the proposal on the plane: anywhere on the grid and a little beyond, some beside or upon one before. */
    private List<double[]> places() {
        int count = 1 + random.nextInt(12);
        List<double[]> places = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double[] before = i == 0 ? null : places.get(random.nextInt(i));
            double spread = random.nextInt(8) == 0 ? 1.3 : 0.95;
            double[] fresh = {cols * cellM / 2 * spread * (2 * random.nextDouble() - 1), rows * cellM / 2 * spread * (2 * random.nextDouble() - 1)};
            switch (before == null ? 9 : random.nextInt(10)) {
                case 0 -> places.add(before);
                case 1 -> places.add(new double[] {before[0] + 2 * random.nextGaussian(), before[1] + random.nextGaussian()});
                default -> places.add(fresh);
            }
        }
        return places;
    }

    private String siteName(int i) {
        return i > 0 && random.nextInt(10) == 0 ? sites.get(random.nextInt(i)).name() : "Stone " + (char) ('A' + i);
    }

    private void addPoint(String name, double[] lonLat) {
        sites.add(new Site(name, lonLat, new PlainFigure(name, plane, false).point(lonLat)));
    }

    private double[] lonLat(double[] xy) {
        double[] at = plane.lonLat(xy);
        return new double[] {Math.IEEEremainder(at[0], 360), at[1]};
    }

    private void csvDegrees() {
        boolean named = random.nextInt(4) > 0;
        StringBuilder csv = new StringBuilder(named ? "Name,Longitude,Latitude\n" : "longitude,latitude\n");
        for (double[] xy : places()) {
            double[] at = lonLat(xy);
            String lon = String.format(Locale.ROOT, "%.9f", at[0]);
            String lat = String.format(Locale.ROOT, "%.9f", at[1]);
            String name = named ? siteName(sites.size()) : "#" + (sites.size() + 1);
            csv.append(named ? name + "," : "").append(lon).append(',').append(lat).append('\n');
            addPoint(name, new double[] {Double.parseDouble(lon), Double.parseDouble(lat)});
        }
        proposed("proposal.csv", csv.toString());
    }

    private void csvMinutes() {
        StringBuilder csv = new StringBuilder("label,latitude,longitude\n");
        for (double[] xy : places()) {
            double[] at = lonLat(xy);
            double[] read = new double[2];
            String lat = minutes(at[1], "N", "S", read, 1);
            String lon = minutes(at[0], "E", "W", read, 0);
            String name = siteName(sites.size());
            csv.append(name).append(',').append(lat).append(',').append(lon).append('\n');
            addPoint(name, read);
        }
        proposed("proposal.csv", csv.toString());
    }

    private static String minutes(double deg, String positive, String negative, double[] read, int i) {
        long millionths = Math.round(Math.abs(deg) * 60e6);
        long whole = millionths / 60_000_000;
        String minutes = String.format(Locale.ROOT, "%.6f", (millionths - whole * 60_000_000) / 1e6);
        read[i] = Math.copySign(whole + Double.parseDouble(minutes) / 60, deg);
        return whole + " " + minutes + " " + (deg < 0 ? negative : positive);
    }

    private void csvMetres() {
        StringBuilder csv = new StringBuilder("site,easting,northing\n");
        for (double[] xy : places()) {
            double[] at = plane.lonLat(xy);
            double[] map = onMap(at);
            String x = String.format(Locale.ROOT, "%.4f", map[0]);
            String y = String.format(Locale.ROOT, "%.4f", map[1]);
            String name = siteName(sites.size());
            csv.append(name).append(',').append(x).append(',').append(y).append('\n');
            double[] read = PlainMap.lonLat(zone, Double.parseDouble(x), Double.parseDouble(y));
            addPoint(name, new double[] {Math.IEEEremainder(read[0], 360), read[1]});
        }
        proposed("proposal.csv", csv.toString());
        proposal.addAll(List.of("--crs", "EPSG:" + epsg()));
    }

    private void geoJsonPoints() {
        List<String> features = new ArrayList<>();
        List<double[]> places = places();
        for (int i = 0; i < places.size(); i++) {
            String name = siteName(sites.size());
            if (i + 1 < places.size() && random.nextInt(5) == 0) {
                String first = pointText(places.get(i), name + " (1)");
                String second = pointText(places.get(++i), name + " (2)");
                features.add(TinyScene.feature("name", name, "MultiPoint", "[" + first + ", " + second + "]"));
            } else {
                features.add(TinyScene.feature("name", name, "Point", pointText(places.get(i), name)));
            }
        }
        proposed("proposal.geojson", TinyScene.features(features.toArray(String[]::new)));
    }

    private String pointText(double[] xy, String name) {
        double[] at = lonLat(xy);
        String lon = String.format(Locale.ROOT, "%.9f", at[0]);
        String lat = String.format(Locale.ROOT, "%.9f", at[1]);
        addPoint(name, new double[] {Double.parseDouble(lon), Double.parseDouble(lat)});
        return "[" + lon + ", " + lat + "]";
    }

    private void geoJsonPolygons() {
        ReviewLayer layer = layer(false);
        int count = 1 + random.nextInt(4);
        for (int i = 0; i < count; i++) {
            double[] at = {cols * cellM * 0.45 * (2 * random.nextDouble() - 1), rows * cellM * 0.45 * (2 * random.nextDouble() - 1)};
            layer.addPolygon("plot", "Plot " + (char) ('A' + (random.nextInt(10) == 0 ? 0 : i)), at,
                    cellM * Math.pow(10, -0.1 + 1.2 * random.nextDouble()), i % 2 == 1);
            if (random.nextInt(10) == 0) {
                layer.addPoint("stone", at);
            }
        }
        proposed("proposal.geojson", layer.geoJson());
        for (int i = 0; i < layer.figures().size(); i++) {
            PlainFigure figure = layer.figures().get(i);
            boolean point = layer.kinds().get(i).equals("stone");
            sites.add(new Site(figure.name, point ? figure.pieces.get(0).path().at(0) : null, figure));
        }
    }

    private void proposed(String file, String text) {
        write(file, text);
        proposal.add(folder.resolve(file).toString());
    }
}
