package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitOption;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.export.TiledGeoTiff;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;

/**
 * A plan and all its layers on 60 x 40 cells of an invented sea floor, in a folder of a test, and a way to
 * run the command line on it. Places are metres east and north of the grid's south-western corner.
 */
final class TinyScene {
    static final int COLS = 60;
    static final int ROWS = 40;
    static final double CELL_M = 20;
    static final double WEST_M = 520_000;
    static final double SOUTH_M = 3_270_000;

    private static final Crs UTM = Crs.ofEpsg(32617);
    private static final CoordinateTransform TO_LON_LAT = UTM.to(Crs.WGS84);

    static final String PLAN = """
            title: Trial off Teasel Bank
            crs: EPSG:32617
            bathymetry: {file: depths.asc, values: elevation, unit: m, vertical-uncertainty: 0.5 m}
            bottom:
              file: bottom.geojson
              class: kind
              unmapped: exclude
              classes:
                sand: {suitability: 1}
                mud: {suitability: 0.4}
                rock: never
            reefs: {file: reefs.csv, name: name, keep-off: 60 m, source: "invented rule 1"}
            inside: {file: permit.geojson}
            keep-off:
              - {layer: Old Cables, file: cables.geojson, name: name, distance: 100 m, comfortable: 300 m, source: "invented rule 2"}
            limits: {depth: [60 m, 120 m], slope: 8 deg, clearance-above: 20 m}
            module: {file: module.yaml}
            criteria:
              depth: {weight: 3, curve: [60 m, 80 m, 100 m, 120 m]}
              slope: {weight: 1, curve: [0 deg, 0 deg, 0 deg, 8 deg]}
              bottom: {weight: 2}
              clearance: {weight: 2}
              spacing: {weight: 1, curve: [60 m, 150 m, 500 m, 1500 m]}
            sites: {count: 4, apart: 150 m}
            """;

    final Path folder;

    /** What a run came to. */
    record Outcome(int status, String out, String err) {}

    TinyScene(Path folder) {
        this.folder = folder;
        write("plan.yaml", PLAN);
        write("module.yaml", "name: Pole on a slab\nheight: 8 m\nlanding-radius: 25 m\n");
        write("depths.asc", asciiGrid(ROWS));
        write("depths.prj", UTM.wkt());
        write("bottom.geojson", features(
                polygon("kind", "sand", 0, 0, 800, 800), polygon("kind", "mud", 800, 0, 1200, 800),
                polygon("kind", "rock", 300, 300, 420, 400)));
        write("permit.geojson", features(polygon("name", "Plot A", 60, 60, 1140, 740)));
        write("cables.geojson", features(feature("name", "Cable 1", "LineString", line(-200, 700, 1400, 600))));
        write("reefs.csv", "name,longitude,latitude\nTeapot," + lonLat(700, 200).replace(" ", "") + "\n");
    }

    /** Depths from 65 m in the west to 115 m in the east, with gentle swells; one cell of no-data. */
    static double depthM(int col, int row) {
        return col == 5 && row == 5 ? Double.NaN : 65 + 50.0 * col / COLS + 2 * Math.sin(col / 7.0) * Math.cos(row / 5.0);
    }

    /** The grid's text, cut off after some rows. */
    static String asciiGrid(int rows) {
        StringBuilder text = new StringBuilder(String.format(Locale.ROOT,
                "ncols %d%nnrows %d%nxllcorner %.0f%nyllcorner %.0f%ncellsize %.0f%nNODATA_value -9999%n", COLS, ROWS, WEST_M, SOUTH_M, CELL_M));
        for (int row = 0; row < rows; row++) {
            for (int col = 0; col < COLS; col++) {
                double depthM = depthM(col, row);
                text.append(Double.isNaN(depthM) ? "-9999" : String.format(Locale.ROOT, "%.2f", -depthM)).append(' ');
            }
            text.append('\n');
        }
        return text.toString();
    }

    /** Writes the same depths as {@code depths.tif}. */
    TinyScene geoTiff() {
        GridGeometry grid = new GridGeometry(UTM, WEST_M, SOUTH_M + ROWS * CELL_M, CELL_M, COLS, ROWS);
        Window all = new Window(0, 0, COLS, ROWS);
        int[] bits = new int[all.cells()];
        for (int i = 0; i < bits.length; i++) {
            bits[i] = Float.floatToIntBits((float) -depthM(i % COLS, i / COLS));
        }
        try (TiledGeoTiff tiff = new TiledGeoTiff(folder.resolve("depths.tif"), grid, 64, TiledGeoTiff.Cell.FLOAT32, "nan")) {
            tiff.write(tiff.encode(all, bits));
            tiff.finish();
        }
        return this;
    }

    static String features(String... features) {
        return "{\"type\": \"FeatureCollection\", \"features\": [\n" + String.join(",\n", features) + "\n]}\n";
    }

    static String feature(String key, String value, String type, String coordinates) {
        return String.format(Locale.ROOT, "{\"type\": \"Feature\", \"properties\": {\"%s\": \"%s\"}, \"geometry\": {\"type\": \"%s\", \"coordinates\": %s}}",
                key, value, type, coordinates);
    }

    /** A rectangle. */
    static String polygon(String key, String value, double west, double south, double east, double north) {
        return feature(key, value, "Polygon", "[" + line(west, south, east, south, east, north, west, north, west, south) + "]");
    }

    /** A list of positions in longitude and latitude, from x and y of each in turn. */
    static String line(double... xy) {
        List<String> points = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            points.add("[" + lonLat(xy[i], xy[i + 1]) + "]");
        }
        return points.toString();
    }

    static String lonLat(double xM, double yM) {
        Coordinate c = TO_LON_LAT.apply(WEST_M + xM, SOUTH_M + yM);
        return String.format(Locale.ROOT, "%.8f, %.8f", c.x, c.y);
    }

    TinyScene write(String name, String text) {
        return write(name, text.getBytes(StandardCharsets.UTF_8));
    }

    TinyScene write(String name, byte[] bytes) {
        try {
            Files.createDirectories(path(name).getParent());
            Files.write(path(name), bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return this;
    }

    TinyScene delete(String name) {
        try {
            Files.delete(path(name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return this;
    }

    /** Changes one stretch of the plan, which must be there once. */
    TinyScene plan(String old, String changed) {
        String plan = read("plan.yaml");
        assertTrue(plan.contains(old) && plan.indexOf(old) == plan.lastIndexOf(old), "not there once: " + old);
        return write("plan.yaml", plan.replace(old, changed));
    }

    Path path(String name) {
        return folder.resolve(name);
    }

    String read(String name) {
        try {
            return Files.readString(path(name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** {@code seacairn rank} on the plan, with options. */
    Outcome rank(String... options) {
        List<String> args = new ArrayList<>(List.of("rank", path("plan.yaml").toString()));
        args.addAll(List.of(options));
        return run(args.toArray(String[]::new));
    }

    static Outcome run(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int status = Seacairn.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
        return new Outcome(status, out.toString(), err.toString());
    }

    /** Every file below a folder, by its relative name, as Latin-1 text so that differences can be shown. */
    static Map<String, String> bytes(Path below) {
        try (Stream<Path> walk = Files.walk(below, FileVisitOption.FOLLOW_LINKS)) {
            Map<String, String> files = new TreeMap<>();
            for (Path file : walk.filter(Files::isRegularFile).toList()) {
                files.put(below.relativize(file).toString().replace('\\', '/'), Files.readString(file, StandardCharsets.ISO_8859_1));
            }
            return files;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
