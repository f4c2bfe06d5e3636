package org.seacairn.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.export.TiledGeoTiff;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;

/**
 * Makes a plan of any size with all its layers, for measuring: N x N cells of 10 m, 2000 bottom
 * polygons of 60 vertices, 20 cables of 200 vertices, 2 lanes, 500 reefs, all criteria in use. The
 * terrain is an invented shelf with sounding noise in steps of a centimetre. Deterministic.
 */
public final class BenchmarkScene {
    private static final double CELL_M = 10;
    private static final int TILE = 512;
    private static final int POLYGONS = 2000;
    private static final int POLYGON_VERTICES = 60;
    private static final int CABLES = 20;
    private static final int CABLE_VERTICES = 200;
    private static final int REEFS = 500;
    private static final String[] CLASSES = {"mud", "sand", "sand", "shell hash", "hardbottom"};

    private final Path folder;
    private final GridGeometry grid;
    private final CoordinateTransform toLonLat;
    private final Random random = new Random(20260101);

    private BenchmarkScene(int cells, Path folder) {
        this.folder = folder;
        Crs utm = Crs.ofEpsg(32617);
        this.grid = new GridGeometry(utm, 400_000, 3_300_000, CELL_M, cells, cells);
        this.toLonLat = utm.to(Crs.WGS84);
    }

    /** @param args cells along a side, and the folder to write to */
    public static void main(String[] args) throws Exception {
        Path folder = Path.of(args[1]);
        Files.createDirectories(folder);
        BenchmarkScene scene = new BenchmarkScene(Integer.parseInt(args[0]), folder);
        scene.bathymetry();
        scene.bottom();
        scene.cables();
        scene.lanes();
        scene.reefs();
        scene.plan();
    }

    private void bathymetry() throws Exception {
        Path file = folder.resolve("bathymetry.tif");
        Files.deleteIfExists(file);
        int threads = Runtime.getRuntime().availableProcessors();
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        Deque<Future<byte[]>> tiles = new ArrayDeque<>();
        try (TiledGeoTiff tiff = new TiledGeoTiff(file, grid, TILE, TiledGeoTiff.Cell.FLOAT32, "nan")) {
            for (int row = 0; row < grid.rows(); row += TILE) {
                for (int col = 0; col < grid.cols(); col += TILE) {
                    Window tile = new Window(col, row, Math.min(TILE, grid.cols() - col), Math.min(TILE, grid.rows() - row));
                    tiles.add(pool.submit(() -> tiff.encode(tile, elevations(tile))));
                    if (tiles.size() > 4 * threads) {
                        tiff.write(tiles.remove().get());
                    }
                }
            }
            while (!tiles.isEmpty()) {
                tiff.write(tiles.remove().get());
            }
            tiff.finish();
        } finally {
            pool.shutdown();
        }
    }

    private int[] elevations(Window tile) {
        int[] bits = new int[tile.cells()];
        int i = 0;
        for (int row = tile.row(); row < tile.endRow(); row++) {
            for (int col = tile.col(); col < tile.endCol(); col++) {
                bits[i++] = Float.floatToRawIntBits((float) elevation(col, row));
            }
        }
        return bits;
    }

    /** Metres, 30 to 220 below datum; NaN beyond ragged edges and in a few holes. */
    private double elevation(int col, int row) {
        double n = grid.cols();
        double u = col / n;
        double v = row / n;
        if (col < 20 + 15 * Math.sin(row / 40.0) || Math.hypot(u - 0.3, v - 0.7) < 0.01) {
            return Double.NaN;
        }
        double edge = u - 0.5 - 0.06 * Math.sin(9 * v) - 0.02 * Math.sin(31 * v);
        double depth = 30 + 190 / (1 + Math.exp(-edge * 9));
        depth += 2 * Math.sin(col / 37.0) * Math.cos(row / 53.0);
        depth += 1.5 * Math.tanh(6 * Math.sin(depth / 4));
        long hash = (col * 0x9E3779B97F4A7C15L) ^ (row * 0xC2B2AE3D27D4EB4FL);
        hash = (hash ^ hash >>> 29) * 0xBF58476D1CE4E5B9L;
        depth += ((hash >>> 40) / (double) (1 << 24) - 0.5) * 0.1;
        return -Math.rint(depth * 100) / 100;
    }

    private void bottom() throws IOException {
        int side = (int) Math.ceil(Math.sqrt(POLYGONS));
        double step = grid.cols() * CELL_M / side;
        try (PrintWriter out = writer("bottom.geojson")) {
            out.print("{\"type\":\"FeatureCollection\",\"features\":[");
            for (int i = 0; i < POLYGONS; i++) {
                double cx = grid.west() + (i % side + 0.5) * step;
                double cy = grid.north() - (i / side + 0.5) * step;
                StringBuilder ring = new StringBuilder();
                String first = null;
                for (int k = 0; k < POLYGON_VERTICES; k++) {
                    double angle = 2 * Math.PI * k / POLYGON_VERTICES;
                    double radius = step * (0.62 + 0.08 * random.nextDouble());
                    String point = point(cx + radius * Math.cos(angle), cy + radius * Math.sin(angle));
                    first = first == null ? point : first;
                    ring.append(point).append(',');
                }
                feature(out, i, "kind", CLASSES[random.nextInt(CLASSES.length)], "Polygon", "[[" + ring + first + "]]");
            }
            out.print("]}");
        }
    }

    private void cables() throws IOException {
        double span = grid.cols() * CELL_M;
        try (PrintWriter out = writer("cables.geojson")) {
            out.print("{\"type\":\"FeatureCollection\",\"features\":[");
            for (int i = 0; i < CABLES; i++) {
                double y = grid.north() - span * random.nextDouble();
                double drift = 0;
                StringBuilder line = new StringBuilder();
                for (int k = 0; k < CABLE_VERTICES; k++) {
                    drift += span / CABLE_VERTICES * (random.nextDouble() - 0.5);
                    line.append(k == 0 ? "" : ",").append(point(grid.west() + span * k / (CABLE_VERTICES - 1), y + drift));
                }
                feature(out, i, "name", "Cable " + i, "LineString", "[" + line + "]");
            }
            out.print("]}");
        }
    }

    private void lanes() throws IOException {
        double span = grid.cols() * CELL_M;
        try (PrintWriter out = writer("lanes.geojson")) {
            out.print("{\"type\":\"FeatureCollection\",\"features\":[");
            for (int i = 0; i < 2; i++) {
                double x = grid.west() + span * (0.3 + 0.35 * i);
                double w = Math.min(1852, span / 20);
                String corner = point(x, grid.north() + 100);
                feature(out, i, "name", "Lane " + i, "Polygon", "[[" + corner + "," + point(x + span / 10, grid.south() - 100)
                        + "," + point(x + span / 10 + w, grid.south() - 100) + "," + point(x + w, grid.north() + 100) + ","
                        + corner + "]]");
            }
            out.print("]}");
        }
    }

    private void reefs() throws IOException {
        double span = grid.cols() * CELL_M;
        try (PrintWriter out = writer("reefs.csv")) {
            out.print("name,longitude,latitude\n");
            for (int i = 0; i < REEFS; i++) {
                Coordinate c = toLonLat.apply(grid.west() + span * random.nextDouble(), grid.north() - span * random.nextDouble());
                out.printf(Locale.ROOT, "Reef %d,%.8f,%.8f%n", i, c.x, c.y);
            }
        }
    }

    private void plan() throws IOException {
        Files.writeString(folder.resolve("plan.yaml"), """
                title: Benchmark on an invented shelf
                bathymetry: {file: bathymetry.tif, values: elevation, unit: m, datum: MLLW, survey-order: 1a}
                bottom:
                  file: bottom.geojson
                  class: kind
                  unmapped: 0.2
                  classes:
                    mud: {suitability: 0.45}
                    sand: {suitability: 1.0}
                    shell hash: {suitability: 0.8}
                    hardbottom: never
                reefs: {file: reefs.csv, name: name, keep-off: 60 m}
                keep-off:
                  - {layer: lanes, file: lanes.geojson, name: name, distance: 500 m, comfortable: 1 nmi, position-uncertainty: 20 m, source: invented}
                  - {layer: cables, file: cables.geojson, name: name, distance: 500 m, comfortable: 1000 m, source: invented}
                limits: {depth: [40 m, 180 m], slope: 8 deg, clearance-above: 85 ft, height-share: 0.5}
                module: {name: block, height: 8 m, landing-radius: 25 m}
                criteria:
                  depth: {weight: 3, curve: [40 m, 80 m, 120 m, 180 m]}
                  slope: {weight: 2, curve: [0 deg, 0 deg, 2 deg, 8 deg]}
                  bottom: {weight: 3}
                  clearance: {weight: 2}
                  spacing: {weight: 3, curve: [60 m, 150 m, 500 m, 1500 m]}
                sites: {count: 25, apart: 150 m}
                """, StandardCharsets.UTF_8);
    }

    private PrintWriter writer(String name) throws IOException {
        return new PrintWriter(Files.newBufferedWriter(folder.resolve(name), StandardCharsets.UTF_8));
    }

    private String point(double x, double y) {
        Coordinate c = toLonLat.apply(x, y);
        return String.format(Locale.ROOT, "[%.8f,%.8f]", c.x, c.y);
    }

    private static void feature(PrintWriter out, int i, String key, String value, String type, String coordinates) {
        out.printf(Locale.ROOT, "%s{\"type\":\"Feature\",\"properties\":{\"%s\":\"%s\"},\"geometry\":{\"type\":\"%s\",\"coordinates\":%s}}%n",
                i == 0 ? "" : ",", key, value, type, coordinates);
    }
}
