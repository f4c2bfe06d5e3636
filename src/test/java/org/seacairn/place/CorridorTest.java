package org.seacairn.place;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.Progress;
import org.seacairn.grid.GridGeometry;
import org.seacairn.plan.PlanReader;
import org.seacairn.plan.SitingPlan;
import org.seacairn.score.GridFiles;
import org.seacairn.score.ScoreEngine;
import org.seacairn.score.ScoredWindow;
import org.seacairn.score.WorkingDepth;
import org.seacairn.score.WorkingLayers;

class CorridorTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double STEP_M = 0.5;

    @TempDir
    Path folder;

    private static Coordinate lonLat(GridGeometry grid, double shareX, double shareY) {
        return grid.crs().to(grid.crs().geographic()).apply(grid.west() + shareX * (grid.east() - grid.west()),
                grid.south() + shareY * (grid.north() - grid.south()));
    }

    private static Stone stone(String name, GridGeometry grid, double shareX, double shareY) {
        return Stone.of(name, FACTORY.createPoint(lonLat(grid, shareX, shareY)), grid);
    }

    /** Cells against a walk along the geodesics in steps of half a metre. */
    @ParameterizedTest
    @CsvSource({"false, 500_000, 1", "false, 820_000, 2", "true, 500_000, 3", "true, 190_000, 4", "true, 820_000, 5"})
    void cellsAndTheirPlaceAlongTheAxisAreThoseOfAWalk(boolean bent, double west, long seed) {
        GridGeometry grid = GridFiles.utm(17, false, west, 3_300_000, 20, 60, 40);
        Random random = new Random(seed);
        Stone from = stone("Kittle Rock", grid, 0.1, random.nextDouble());
        Stone to = stone("Marl Reef", grid, 0.9, random.nextDouble());
        Coordinate[] line = {lonLat(grid, 0.0, random.nextDouble()), lonLat(grid, 0.3, random.nextDouble()),
            lonLat(grid, 0.6, random.nextDouble()), lonLat(grid, 1.0, random.nextDouble())};
        Axis axis = bent ? Axis.along("drift.geojson", FACTORY.createLineString(line), from, to, grid) : Axis.between(from, to, grid);
        double halfWidthM = 130;
        Corridor corridor = Corridor.of(grid, axis, halfWidthM, 16, 2, w -> new ScoredWindow(w, null, new float[w.cells()], new int[w.cells()]), 1);
        int[] alongMm = new int[grid.cols() * grid.rows()];
        corridor.cells().forEach(grid.whole(), (slot, i) -> alongMm[i] = corridor.cells().alongMm()[slot]);
        int inside = 0;
        for (int i = 0; i < alongMm.length; i++) {
            double[] walked = walk(axis, grid, i % grid.cols(), i / grid.cols());
            boolean atEnd = walked[1] < STEP_M || walked[1] > axis.lengthM() - STEP_M;
            String name = "cell " + i + ", walked " + walked[0] + " m off at " + walked[1] + " m";
            if (alongMm[i] > 0) {
                assertTrue(walked[0] < halfWidthM + 0.01, name);
                assertTrue(Math.abs(walked[1] - alongMm[i] / 1000.0) < STEP_M || twoFeet(walked), name + ", placed at " + alongMm[i]);
                inside++;
            } else {
                assertTrue(walked[0] > halfWidthM - 0.01 || atEnd, name);
            }
        }
        assertTrue(inside > 300, inside + " inside");
    }

    /** The walk's two best places are as near but apart: the cell lies between two pieces of a bend. */
    private static boolean twoFeet(double[] walked) {
        return walked[2] - walked[0] < 0.01;
    }

    /** Least distance, its place along the axis, and the least distance of any place more than 2 m from that. */
    private static double[] walk(Axis axis, GridGeometry grid, int col, int row) {
        double x = grid.centreX(col);
        double y = grid.centreY(row);
        Coordinate at = grid.crs().to(grid.crs().geographic()).apply(x, y);
        // Steps on the map, but only the nearest of them are measured by geodesic.
        double[] best = {Double.POSITIVE_INFINITY, 0, Double.POSITIVE_INFINITY};
        double[] mapBest = {Double.POSITIVE_INFINITY, 0, 0, 0};
        for (int i = 1; i < axis.onMap().length; i++) {
            Coordinate a = axis.onMap()[i - 1];
            Coordinate b = axis.onMap()[i];
            int steps = (int) Math.ceil(a.distance(b) / STEP_M);
            for (int k = 0; k <= steps; k++) {
                double t = k / (double) steps;
                double px = a.x + t * (b.x - a.x);
                double py = a.y + t * (b.y - a.y);
                double d = Math.hypot(px - x, py - y);
                double along = axis.alongM()[i - 1] + t * (axis.alongM()[i] - axis.alongM()[i - 1]);
                if (d < mapBest[0]) {
                    if (Math.abs(along - mapBest[1]) > 2) {
                        best[2] = mapBest[0];
                    }
                    mapBest = new double[] {d, along, px, py};
                } else if (Math.abs(along - mapBest[1]) > 2) {
                    best[2] = Math.min(best[2], d);
                }
            }
        }
        Coordinate p = grid.crs().to(grid.crs().geographic()).apply(mapBest[2], mapBest[3]);
        double scale = Geodesic.WGS84.Inverse(at.y, at.x, p.y, p.x).s12;
        return new double[] {scale, mapBest[1], best[2] * scale / mapBest[0]};
    }

    /** The real engine, with landing room that reaches over the borders of tiles. */
    @Test
    void scoresAreThoseOfTheWholeGridForAnyNumberOfThreads() throws IOException {
        GridGeometry grid = GridFiles.utm(17, false, 420_000, 3_200_000, 10, 300, 260);
        Random random = new Random(6);
        float[] depths = new float[grid.cols() * grid.rows()];
        for (int i = 0; i < depths.length; i++) {
            depths[i] = random.nextInt(400) == 0 ? Float.NaN : 60 + 40 * random.nextFloat();
        }
        GridFiles.geoTiff(folder.resolve("depths.tif"), grid, depths);
        Files.writeString(folder.resolve("plan.yaml"), """
                bathymetry: {file: depths.tif, values: depth, unit: m}
                module: {height: 1 m, landing-radius: 35 m}
                criteria: {depth: {weight: 1, curve: [50 m, 100 m, 100 m, 120 m]}}
                sites: {count: 1, apart: 100 m}
                """);
        SitingPlan plan = PlanReader.read(folder.resolve("plan.yaml"), false);
        try (WorkingDepth depth = WorkingDepth.open(plan)) {
            ScoreEngine engine = new ScoreEngine(plan, depth, WorkingLayers.load(plan, depth.grid()));
            Axis axis = Axis.between(stone("Kittle Rock", depth.grid(), 0.05, 0.1), stone("Marl Reef", depth.grid(), 0.95, 0.8), depth.grid());
            Corridor one = Corridor.of(engine, axis, 200, 1, Progress.NONE);
            Corridor two = Corridor.of(engine, axis, 200, 2, Progress.NONE);
            assertArrayEquals(one.score(), two.score());
            assertArrayEquals(one.reasons(), two.reasons());
            ScoredWindow whole = engine.score(depth.grid().whole());
            int[] seen = {0};
            one.cells().forEach(depth.grid().whole(), (slot, i) -> {
                assertEquals(whole.score()[i], one.score()[slot]);
                assertEquals(whole.reasons()[i], one.reasons()[slot]);
                seen[0]++;
            });
            assertTrue(seen[0] > 10_000, seen[0] + " cells");
            assertTrue(one.scoredCells() > 1000 && one.scoredCells() < seen[0], one.scoredCells() + " scored");
            ChainSearch.Result found = ChainSearch.fewest(one, new Gaps(120, 250, 120), 2);
            assertEquals(3, found.chains().size());
        }
    }
}
