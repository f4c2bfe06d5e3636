package org.seacairn.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.InputException;
import org.seacairn.Progress;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;
import org.seacairn.plan.PlanReader;
import org.seacairn.plan.SitingPlan;
import org.seacairn.score.GridFiles;
import org.seacairn.score.ScoreEngine;
import org.seacairn.score.ScoreRun;
import org.seacairn.score.ScoredWindow;
import org.seacairn.score.WorkingDepth;
import org.seacairn.score.WorkingLayers;

/** The areas found against {@link PlainAreas}, and what is told of them. */
class AreaScanTest {
    private static final double[] TWELVE = IntStream.range(0, 12).mapToDouble(i -> 15 * i).toArray();
    private static final double[] CELLS_M = {5, 12.5, 100, 1852};
    private static final double[] EASTINGS = {200_000, 318_000.5, 500_000, 721_111.25, 830_000};

    /** Runs a scan over tiles of a side, as a score run hands them on. */
    private static List<Area> scan(PlainCells cells, AreaRequest request, int tileSide, int threads, Predicate<Area> accept) {
        GridGeometry grid = cells.grid();
        try (AreaScan scan = new AreaScan(cells, request, threads)) {
            for (int row = 0; row < grid.rows(); row += tileSide) {
                for (int col = 0; col < grid.cols(); col += tileSide) {
                    Window tile = new Window(col, row, Math.min(tileSide, grid.cols() - col), Math.min(tileSide, grid.rows() - row));
                    scan.write(scan.encode(new ScoredWindow(tile, null, cells.score(tile), new int[tile.cells()])));
                }
            }
            return scan.choose(accept);
        }
    }

    private static GridGeometry grid(Random random, int cols, int rows) {
        double cellM = CELLS_M[random.nextInt(CELLS_M.length)];
        if (random.nextInt(6) == 0) {
            // Equal area, so no right angles: ground rectangles are parallelograms on the map.
            return new GridGeometry(Crs.ofEpsg(3035), 2_500_000 + 4e6 * random.nextDouble(), 1_500_000 + 3e6 * random.nextDouble(), cellM, cols, rows);
        }
        boolean south = random.nextInt(3) == 0;
        return GridFiles.utm(south ? 33 : 17, south, EASTINGS[random.nextInt(EASTINGS.length)],
                south ? 9_999_000 - 5e6 * random.nextDouble() : 1e5 + 7e6 * random.nextDouble(), cellM, cols, rows);
    }

    /** @param levels how many different scores, 0 for a continuum; few make many ties */
    private static PlainCells cells(Random random, GridGeometry grid, int levels, double missing) {
        int n = grid.cols() * grid.rows();
        float[] scores = new float[n];
        float[] depths = new float[n];
        double slopeEast = random.nextGaussian();
        double slopeSouth = random.nextGaussian();
        double rough = random.nextInt(2) * 3 * random.nextDouble();
        for (int i = 0; i < n; i++) {
            double s = levels == 0 ? random.nextDouble() : (1 + random.nextInt(levels)) / (double) levels;
            scores[i] = random.nextDouble() < missing ? Float.NaN : (float) s;
            double d = 80 + slopeEast * (i % grid.cols()) + slopeSouth * (i / grid.cols()) + rough * random.nextGaussian();
            depths[i] = random.nextInt(40) == 0 ? Float.NaN : (float) (Math.rint(d * 64) / 64);
        }
        return new PlainCells(grid, scores, depths, Optional.empty());
    }

    private static List<AreaSize> sizes(Random random, GridGeometry grid) {
        List<AreaSize> sizes = new ArrayList<>();
        double least = Math.min(25, Math.min(grid.cols(), grid.rows())) * grid.cellM();
        for (int i = 1 + random.nextInt(2); i > 0; i--) {
            double length = least * (0.1 + 0.5 * random.nextDouble());
            sizes.add(new AreaSize(length, random.nextInt(3) == 0 ? length : length * (0.05 + 0.95 * random.nextDouble())));
        }
        return sizes;
    }

    private static void assertPlain(long seed, int leastSide, int mostCols, int mostRows) {
        Random random = new Random(seed);
        GridGeometry grid = grid(random, leastSide + random.nextInt(mostCols), leastSide + random.nextInt(mostRows));
        double missing = new double[] {0, 0.02, 0.2, 0.9}[random.nextInt(4)];
        PlainCells cells = cells(random, grid, new int[] {0, 1, 3, 100}[random.nextInt(4)], missing);
        List<AreaSize> sizes = sizes(random, grid);
        double blemish = new double[] {0, 0.02, 0.3, 1}[random.nextInt(4)];
        int count = 1 + random.nextInt(6);
        double fixedDeg = 180 * random.nextDouble();
        int rule = random.nextInt(4);
        AreaTurns turns = List.of(AreaTurns.NORTH, AreaTurns.fixed(fixedDeg), AreaTurns.ANY, AreaTurns.ISOBATH).get(rule);
        double[] plainTurns = new double[][] {{0, 90}, {fixedDeg}, TWELVE, null}[rule];
        int oneIn = 2 + random.nextInt(50);
        int tileSide = 1 + random.nextInt(70);
        int threads = 1 + random.nextInt(2);
        String name = "seed " + seed + ", " + grid + ", " + sizes + ", rule " + rule + ", blemish " + blemish + ", count " + count;
        List<PlainAreas.Found> expected = new PlainAreas(cells, sizes, blemish).choose(plainTurns, count,
                f -> (f.col() * 31 + f.row() * 17 + (int) f.turnDeg()) % oneIn != 0);
        List<Area> found;
        try {
            found = scan(cells, new AreaRequest(sizes, turns, count, blemish), tileSide, threads,
                    a -> (a.col() * 31 + a.row() * 17 + (int) a.turnDeg()) % oneIn != 0);
        } catch (InputException e) {
            assertTrue(e.getMessage().contains("does not fit on the grid"), () -> name + ": " + e.getMessage());
            assertTrue(expected.isEmpty() || sizes.size() > 1, () -> name + ": " + expected.get(0).text());
            return;
        }
        assertEquals(expected.stream().map(PlainAreas.Found::text).toList(), found.stream().map(a -> new PlainAreas.Found(a.col(), a.row(),
                sizes.indexOf(a.size()), a.turnDeg(), a.meanScore(), a.ruledOutCells(), null).text()).toList(), name);
    }

    @Test
    void findsWhatPlainSearchFinds() {
        for (long seed = 1; seed <= 2000; seed++) {
            assertPlain(seed, 4, 18, 14);
        }
    }

    @Test
    void findsWhatPlainSearchFindsOverManyPatchesAndPiecesOfWork() {
        for (long seed = 1; seed <= 6; seed++) {
            assertPlain(10_000 + seed, 20, 300, 120);
        }
    }

    private static PlainCells flat(int cols, int rows, double cellM, float score) {
        GridGeometry grid = GridFiles.utm(17, false, 400_000, 3_000_000, cellM, cols, rows);
        float[] scores = new float[cols * rows];
        float[] depths = new float[cols * rows];
        Arrays.fill(scores, score);
        Arrays.fill(depths, 80);
        return new PlainCells(grid, scores, depths, Optional.empty());
    }

    private static List<Area> areas(PlainCells cells, AreaTurns turns, int count, double blemish, AreaSize... sizes) {
        return scan(cells, new AreaRequest(List.of(sizes), turns, count, blemish), 16, 2, area -> true);
    }

    /** Three cells by three; of nine, one is ruled out, one has no depth, one scores low, three are rock. */
    @Test
    void tellsWhatAnAreaHolds() {
        PlainCells flat = flat(7, 5, 100, Float.NaN);
        String[] classes = new String[35];
        Arrays.fill(classes, "sand");
        for (int row = 1; row <= 3; row++) {
            for (int col = 2; col <= 4; col++) {
                flat.scores()[row * 7 + col] = 0.5f;
                flat.depths()[row * 7 + col] = 70 + col;
            }
            classes[row * 7 + 2] = "rock";
        }
        flat.scores()[2 * 7 + 4] = 0.25f;
        flat.scores()[3 * 7 + 4] = Float.NaN;
        flat.depths()[3 * 7 + 4] = Float.NaN;
        classes[3 * 7 + 4] = "";
        PlainCells cells = new PlainCells(flat.grid(), flat.scores(), flat.depths(), Optional.of(classes));
        List<Area> found = areas(cells, AreaTurns.NORTH, 3, 0.12, new AreaSize(280, 290));
        assertEquals(1, found.size());
        Area area = found.get(0);
        assertEquals("3 2 9 1", area.col() + " " + area.row() + " " + area.cells() + " " + area.ruledOutCells());
        assertEquals(3.75 / 8, area.meanScore(), 1e-9);
        assertEquals(0.25, area.lowestScore());
        assertEquals(1.0 / 9, area.ruledOutShare(), 1e-12);
        assertEquals(new Area.Range(72, 74), area.depthM());
        assertEquals("{sand=0.5555555555555556, rock=0.3333333333333333, =0.1111111111111111}", area.bottomShares().toString());
        assertEquals(280 * 290, area.areaM2(), 1);
    }

    /** Sides and bearings by geodesic, from the corners alone. */
    @Test
    void cornersAreThoseOfTheAskedRectangleOnTheEllipsoid() {
        for (double turn : new double[] {0, 30, 45, 90, 120, 135, 150}) {
            Area area = areas(flat(300, 240, 10, 0.5f), AreaTurns.fixed(turn), 1, 0, new AreaSize(926, 463)).get(0);
            List<Coordinate> corners = area.cornersLonLat(Crs.ofEpsg(32617));
            double[] lengths = new double[4];
            double[] bearings = new double[4];
            for (int i = 0; i < 4; i++) {
                Coordinate from = corners.get(i);
                Coordinate to = corners.get((i + 1) % 4);
                GeodesicData side = Geodesic.WGS84.Inverse(from.y, from.x, to.y, to.x);
                lengths[i] = side.s12;
                bearings[i] = side.azi1;
            }
            int first = Math.abs(lengths[0] - 926) < 0.1 ? 0 : 1;
            String name = "turn " + turn + ": " + Arrays.toString(lengths) + Arrays.toString(bearings);
            for (int i = 0; i < 4; i++) {
                assertEquals(i % 2 == first ? 926 : 463, lengths[i], 0.02, name);
                double clockwise = ((bearings[(i + 1) % 4] - bearings[i]) % 360 + 360) % 360;
                assertEquals(90, clockwise, 0.01, name);
            }
            assertEquals(turn, (bearings[first] % 180 + 180.005) % 180 - 0.005, 0.01, name);
            assertEquals(926 * 463, area.areaM2(), 10, name);
            Coordinate northWest = corners.get(0);
            assertTrue(corners.stream().allMatch(c -> c.y - c.x * 0.89 <= northWest.y - northWest.x * 0.89 + 1e-5), name);
        }
    }

    /** Depth grows to the east, so isobaths run north; then to the south-east, so they run north-east. */
    @Test
    void longSideFollowsTheIsobath() {
        PlainCells cells = flat(120, 100, 20, 0.5f);
        AreaSize size = new AreaSize(800, 300);
        assertEquals(0, areas(cells, AreaTurns.ISOBATH, 1, 0, size).get(0).turnDeg());
        for (int i = 0; i < cells.depths().length; i++) {
            cells.depths()[i] = 80 + i % 120 * 0.1f;
        }
        assertEquals(0, areas(cells, AreaTurns.ISOBATH, 1, 0, size).get(0).turnDeg());
        for (int i = 0; i < cells.depths().length; i++) {
            cells.depths()[i] = 80 + i % 120 * 0.1f + i / 120 * 0.1f;
        }
        Area area = areas(cells, AreaTurns.ISOBATH, 1, 0, size).get(0);
        assertEquals(45, area.turnDeg());
        double slopeDeg = Math.toDegrees(Math.atan(Math.sqrt(2) * 0.1 / 20));
        assertEquals(slopeDeg, area.slopeDeg().least(), 1e-3);
        assertEquals(slopeDeg, area.slopeDeg().most(), 1e-3);
    }

    @Test
    void alikeAreasRankFromTheNorthWestAndMayTouch() {
        List<Area> found = areas(flat(9, 7, 100, 0.5f), AreaTurns.NORTH, 99, 0, new AreaSize(250, 250));
        assertEquals(List.of("1 1", "4 1", "7 1", "1 4", "4 4", "7 4"),
                found.stream().map(a -> a.col() + " " + a.row()).toList());
    }

    @Test
    void modulesStandOnScoredCellsOnly() {
        PlainCells cells = flat(40, 40, 20, 0.5f);
        for (int i = 0; i < 40; i++) {
            cells.scores()[20 * 40 + i] = Float.NaN;
        }
        AreaRequest request = new AreaRequest(List.of(new AreaSize(700, 700)), AreaTurns.ANY, 1, 0.05);
        try (AreaScan scan = new AreaScan(cells, request, 1)) {
            scan.write(new ScoredWindow(cells.grid().whole(), null, cells.scores(), null));
            Area area = scan.choose(a -> true).get(0);
            Packing packing = scan.capacity(area, 100);
            assertTrue(packing.places().size() >= 48, () -> packing.places().size() + " places");
            for (Packing.Place place : packing.places()) {
                Coordinate at = area.at(place);
                int row = (int) ((cells.grid().north() - at.y) / 20);
                assertTrue(row != 20, () -> place + " stands on a ruled-out cell");
            }
        }
    }

    @Test
    void nothingScoredGivesNoArea() {
        assertEquals(List.of(), areas(flat(30, 20, 20, Float.NaN), AreaTurns.ANY, 3, 1, new AreaSize(100, 100)));
    }

    @Test
    void refusesWhatCannotBe() {
        PlainCells cells = flat(30, 20, 20, 0.5f);
        AreaSize size = new AreaSize(100, 100);
        assertRefused("an area of 926 m x 463 m, turned as asked, does not fit on the grid, which is 600 m x 400 m; ask for a smaller area",
                () -> areas(cells, AreaTurns.ANY, 1, 0, size, new AreaSize(463, 926)));
        assertRefused("the count of areas is 0; ask for 1 or more", () -> areas(cells, AreaTurns.ANY, 0, 0, size));
        assertRefused("the blemish of an area is 2.0; state a share of 0 to 1 (0 % to 100 %)", () -> areas(cells, AreaTurns.ANY, 1, 2, size));
        assertRefused("the blemish of an area is NaN; state a share of 0 to 1 (0 % to 100 %)",
                () -> areas(cells, AreaTurns.ANY, 1, Double.NaN, size));
        assertRefused("no size of an area is given; ask for one, for example 0.25 nmi x 0.25 nmi", () -> areas(cells, AreaTurns.ANY, 1, 0));
        assertRefused("an area of 0 m x 100 m has no sides; ask for two lengths above 0", () -> new AreaSize(0, 100));
        assertRefused("a turn of 400.0 degrees is no bearing; write 0 to 360", () -> AreaTurns.fixed(400));
        assertRefused("an area of 5000 m x 5000 m has more than 4000000 cells; state a larger cell in the plan, or ask for a smaller area",
                () -> areas(flat(3, 3, 1, 1), AreaTurns.ANY, 1, 0, new AreaSize(5000, 5000)));
    }

    private static void assertRefused(String message, Executable asked) {
        assertEquals(message, assertThrows(InputException.class, asked).getMessage());
    }

    /** A plan on disk, scored by the engine in one run, against the same scores held in an array. */
    @Test
    void ridesOnAScoreRun(@TempDir Path folder) {
        Random random = new Random(5);
        GridGeometry grid = GridFiles.utm(17, false, 400_000, 3_000_000, 20, 300, 290);
        PlainCells made = cells(random, grid, 0, 0);
        GridFiles.geoTiff(folder.resolve("depths.tif"), grid, made.depths());
        GridFiles.write(folder.resolve("plan.yaml"), """
                crs: EPSG:32617
                bathymetry: {file: depths.tif, values: depth, unit: m}
                module: {height: 1 m, landing-radius: 30 m}
                criteria: {depth: {weight: 1, curve: [0 m, 100 m, 100 m, 1000 m]}}
                sites: {count: 5, apart: 100 m}
                """);
        SitingPlan plan = PlanReader.read(folder.resolve("plan.yaml"), false);
        AreaRequest request = new AreaRequest(List.of(new AreaSize(463, 463), new AreaSize(700, 300)), AreaTurns.ISOBATH, 4, 0.6);
        try (WorkingDepth depth = WorkingDepth.open(plan)) {
            ScoreEngine engine = new ScoreEngine(plan, depth, WorkingLayers.load(plan, depth.grid()));
            PlainCells scored = new PlainCells(depth.grid(), engine.score(depth.grid().whole()).score(), made.depths(), Optional.empty());
            List<Area> expected = scan(scored, request, 100, 1, area -> true);
            try (AreaScan scan = new AreaScan(engine, request, 2)) {
                ScoreRun.run(engine, 2, Progress.NONE, scan);
                assertEquals(expected, scan.choose(area -> true));
            }
            assertEquals(4, expected.size());
        }
    }
}
