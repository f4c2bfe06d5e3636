package org.seacairn.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.Progress;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.plan.PlanReader;
import org.seacairn.plan.SitingPlan;
import org.seacairn.score.GridFiles;
import org.seacairn.score.ScoreEngine;
import org.seacairn.score.ScoreRun;
import org.seacairn.score.ScoreTotals;
import org.seacairn.score.ScoredWindow;
import org.seacairn.score.WorkingDepth;
import org.seacairn.score.WorkingLayers;

/** Chosen sites against a naive choice and against every possible choice. Scores are steered by the depth alone. */
class SelectionTest {
    /** The depth curve makes a hundredth of the depth the score. */
    private static final String PLAN = """
            crs: %s
            bathymetry: {file: depths.tif, values: depth, unit: m}
            module: {height: 1 m, landing-radius: 0 m}
            criteria: {depth: {weight: 1, curve: [0 m, 100 m, 100 m, 100 m]}}
            sites: {count: %d, apart: %s m}
            """;
    private static final double[] EASTINGS = {200_000, 318_000.5, 500_000, 721_111.25, 830_000};

    @TempDir
    Path folder;

    private int scenes;

    /** A cell of a naive choice. */
    private record Cell(int col, int row, double score, double lon, double lat) {
        static final Comparator<Cell> BEST_FIRST = Comparator.comparingDouble((Cell c) -> -c.score())
                .thenComparingInt(Cell::row).thenComparingInt(Cell::col);

        double distanceM(Cell other) {
            return Geodesic.WGS84.Inverse(lat, lon, other.lat, other.lon).s12;
        }
    }

    /** Both choices, and all scored cells, best first. */
    private record Outcome(Selection greedy, Selection exchanged, List<Cell> cells) {}

    private Outcome choose(GridGeometry grid, float[] hundredths, int count, double apartM) {
        try {
            Path own = Files.createDirectory(folder.resolve("scene-" + scenes++));
            GridFiles.geoTiff(own.resolve("depths.tif"), grid, hundredths);
            GridFiles.write(own.resolve("plan.yaml"), String.format(Locale.ROOT, PLAN, "EPSG:" + grid.crs().epsg().getAsInt(), count, apartM));
            SitingPlan plan = PlanReader.read(own.resolve("plan.yaml"), false);
            try (WorkingDepth depth = WorkingDepth.open(plan)) {
                ScoreEngine engine = new ScoreEngine(plan, depth, WorkingLayers.load(plan, depth.grid()));
                return new Outcome(select(engine, plan, depth, false), select(engine, plan, depth, true), cells(engine));
            }
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private static Selection select(ScoreEngine engine, SitingPlan plan, WorkingDepth depth, boolean exchange) {
        ScoreTotals totals = ScoreRun.run(engine, 2, Progress.NONE, new ScoreRun.Sink<ScoredWindow>() {
            @Override
            public ScoredWindow encode(ScoredWindow tile) {
                return tile;
            }

            @Override
            public void write(ScoredWindow tile) {}
        });
        return Selection.of(engine, totals.blocks(), plan.sites(), depth.largestScaleError(), exchange);
    }

    private static List<Cell> cells(ScoreEngine engine) {
        GridGeometry grid = engine.grid();
        ScoredWindow scored = engine.score(grid.whole());
        List<Cell> cells = new ArrayList<>();
        for (int i = 0; i < scored.score().length; i++) {
            if (scored.reasons()[i] == 0) {
                Coordinate at = grid.crs().to(Crs.WGS84).apply(grid.centreX(i % grid.cols()), grid.centreY(i / grid.cols()));
                cells.add(new Cell(i % grid.cols(), i / grid.cols(), scored.score()[i], at.x, at.y));
            }
        }
        cells.sort(Cell.BEST_FIRST);
        return cells;
    }

    private static List<Cell> naiveGreedy(List<Cell> cells, int count, double apartM) {
        List<Cell> chosen = new ArrayList<>();
        for (Cell cell : cells) {
            if (chosen.size() < count && chosen.stream().allMatch(c -> c.distanceM(cell) >= apartM)) {
                chosen.add(cell);
            }
        }
        return chosen;
    }

    /** The highest total of any selection of up to {@code count} cells. */
    private static double optimum(List<Cell> cells, int from, int count, double apartM, List<Cell> chosen) {
        double best = 0;
        for (int i = from; i < cells.size() && chosen.size() < count; i++) {
            Cell cell = cells.get(i);
            // Best first: the cells left cannot add more than this.
            if (cell.score() * (count - chosen.size()) <= best) {
                break;
            }
            if (chosen.stream().allMatch(c -> c.distanceM(cell) >= apartM)) {
                chosen.add(cell);
                best = Math.max(best, cell.score() + optimum(cells, i + 1, count, apartM, chosen));
                chosen.remove(chosen.size() - 1);
            }
        }
        return best;
    }

    private static GridGeometry grid(Random random, int cols, int rows) {
        boolean south = random.nextInt(3) == 0;
        double cellM = new double[] {5, 12.5, 20, 100, 1852}[random.nextInt(5)];
        return GridFiles.utm(south ? 33 : 17, south, EASTINGS[random.nextInt(EASTINGS.length)],
                south ? 9_999_000 - 5e6 * random.nextDouble() : 1e5 + 7e6 * random.nextDouble(), cellM, cols, rows);
    }

    /** @param levels how many different scores, 0 for a continuum; few make many ties */
    private static float[] depths(Random random, int cells, int levels, double missing) {
        float[] depths = new float[cells];
        for (int i = 0; i < cells; i++) {
            double d = levels == 0 ? random.nextDouble() : (1 + random.nextInt(levels)) / (double) levels;
            depths[i] = random.nextDouble() < missing ? Float.NaN : (float) (100 * d);
        }
        return depths;
    }

    private static void assertSpaced(Selection selection, double apartM, String name) {
        List<Pick> picks = selection.picks();
        for (int i = 0; i < picks.size(); i++) {
            Pick a = picks.get(i);
            for (Pick b : picks.subList(0, i)) {
                double metres = Geodesic.WGS84.Inverse(a.latitudeDeg(), a.longitudeDeg(), b.latitudeDeg(), b.longitudeDeg()).s12;
                assertTrue(metres >= apartM, () -> name + ": " + a + " stands " + metres + " m from " + b);
            }
            assertTrue(i == 0 || picks.get(i - 1).score() >= a.score(), () -> name + ": not best first: " + picks);
        }
        assertEquals(picks.stream().mapToDouble(Pick::score).sum(), selection.total(), 1e-9, name);
    }

    private static void assertSane(String name, Outcome out, int count, double apartM) {
        assertSpaced(out.greedy(), apartM, name + ", greedy");
        assertSpaced(out.exchanged(), apartM, name + ", exchanged");
        assertEquals(out.greedy().total(), out.greedy().greedyTotal(), 1e-12, name);
        assertEquals(out.greedy().total(), out.exchanged().greedyTotal(), 1e-12, name);
        assertEquals(out.greedy().upperBound(), out.exchanged().upperBound(), name);
        assertTrue(out.exchanged().total() >= out.greedy().total(), () -> name + ": exchange lost: " + out);
        assertTrue(out.exchanged().picks().size() <= count, name);
        assertTrue(out.greedy().upperBound() >= out.exchanged().total() - 1e-9, () -> name + ": bound too low: " + out);
        for (Pick pick : out.exchanged().picks()) {
            assertTrue(out.cells().stream().anyMatch(c -> c.col() == pick.col() && c.row() == pick.row()
                    && Math.abs(c.score() - pick.score()) < 1e-6), () -> name + ": no scored cell: " + pick);
        }
    }

    @Test
    void greedyIsTheNaiveGreedyWithManyTiesAndOverManyBlocks() {
        for (long seed = 1; seed <= 40; seed++) {
            Random random = new Random(seed);
            GridGeometry grid = grid(random, 3 + random.nextInt(60), 2 + random.nextInt(45));
            int levels = new int[] {0, 1, 2, 5, 100}[random.nextInt(5)];
            float[] depths = depths(random, grid.cols() * grid.rows(), levels, random.nextDouble());
            int count = 1 + random.nextInt(40);
            double apartM = grid.cellM() * Math.rint(100 * Math.pow(10, -0.5 + 2 * random.nextDouble())) / 100;
            Outcome out = choose(grid, depths, count, apartM);
            String name = "seed " + seed + ", " + grid + ", " + count + " sites " + apartM + " m apart";
            List<String> expected = naiveGreedy(out.cells(), count, apartM).stream()
                    .map(c -> c.col() + " " + c.row() + " " + (float) c.score()).toList();
            assertEquals(expected, out.greedy().picks().stream()
                    .map(p -> p.col() + " " + p.row() + " " + (float) p.score()).toList(), name);
            assertSane(name, out, count, apartM);
            for (Pick pick : out.greedy().picks()) {
                assertEquals(grid.centreX(pick.col()), pick.x(), 1e-6, name);
                assertEquals(grid.centreY(pick.row()), pick.y(), 1e-6, name);
            }
        }
    }

    @Test
    void boundIsNoLessThanTheOptimumOfAllSelections() {
        int improved = 0;
        int greedyShort = 0;
        int tight = 0;
        for (long seed = 1; seed <= 100; seed++) {
            Random random = new Random(1000 + seed);
            GridGeometry grid = grid(random, 3 + random.nextInt(12), 3 + random.nextInt(9));
            int cells = grid.cols() * grid.rows();
            float[] depths = depths(random, cells, new int[] {0, 3, 20}[random.nextInt(3)], Math.max(0, 1 - 30.0 / cells));
            int count = 2 + random.nextInt(3);
            double apartM = grid.cellM() * Math.rint(100 * (1 + 5 * random.nextDouble())) / 100;
            Outcome out = choose(grid, depths, count, apartM);
            String name = "seed " + (1000 + seed) + ", " + grid + ", " + count + " sites " + apartM + " m apart, " + Arrays.toString(depths);
            double optimum = optimum(out.cells(), 0, count, apartM, new ArrayList<>());
            assertSane(name, out, count, apartM);
            assertTrue(out.greedy().upperBound() >= optimum - 1e-9,
                    () -> name + ": bound " + out.greedy().upperBound() + " below the optimum " + optimum);
            assertTrue(out.exchanged().total() <= optimum + 1e-9,
                    () -> name + ": total " + out.exchanged().total() + " over the optimum " + optimum);
            improved += out.exchanged().total() > out.greedy().total() + 1e-9 ? 1 : 0;
            greedyShort += out.greedy().total() < optimum - 1e-9 ? 1 : 0;
            tight += out.greedy().upperBound() < 1.1 * optimum ? 1 : 0;
        }
        assertTrue(greedyShort >= 20 && improved >= greedyShort / 2, improved + " improved of " + greedyShort);
        assertTrue(tight >= 50, "the bound is within a tenth in only " + tight + " of 100 scenes");
    }

    /** 90 in the middle keeps both ends out; the ends together are worth 160. */
    @Test
    void exchangeFindsTheTwoThatGreedyShutOut() {
        GridGeometry grid = GridFiles.utm(17, false, 400_000, 3_000_000, 20, 5, 1);
        float[] depths = {80, Float.NaN, 90, Float.NaN, 80};
        Outcome out = choose(grid, depths, 2, 60);
        assertEquals(0.9, out.greedy().total(), 1e-6);
        assertEquals(1.6, out.exchanged().total(), 1e-6);
        assertEquals(List.of(0, 4), out.exchanged().picks().stream().map(Pick::col).toList());
        assertTrue(out.greedy().upperBound() >= 1.6);
    }

    /** As above with a third, lower site that stands apart, so that the greedy selection is full. */
    @Test
    void exchangeOfAFullSelectionGivesUpItsLowestToo() {
        GridGeometry grid = GridFiles.utm(17, false, 400_000, 3_000_000, 20, 12, 1);
        float[] depths = {80, Float.NaN, 90, Float.NaN, 80, Float.NaN, Float.NaN, Float.NaN, Float.NaN, Float.NaN, Float.NaN, 10};
        Outcome out = choose(grid, depths, 2, 60);
        assertEquals(1.0, out.greedy().total(), 1e-6);
        assertEquals(1.6, out.exchanged().total(), 1e-6);
    }

    @Test
    void moreSitesAskedThanFitGivesThoseThatFit() {
        GridGeometry grid = GridFiles.utm(17, false, 400_000, 3_000_000, 20, 7, 5);
        float[] depths = new float[35];
        Arrays.fill(depths, 50);
        Outcome out = choose(grid, depths, 1000, 59);
        assertEquals(List.of("0 0", "3 0", "6 0", "0 3", "3 3", "6 3"),
                out.greedy().picks().stream().map(p -> p.col() + " " + p.row()).toList());
        assertSane("all alike", out, 1000, 59);
    }

    @Test
    void oneFeasibleCellIsTheOnlySite() {
        GridGeometry grid = GridFiles.utm(33, true, 400_000, 7_000_000, 20, 7, 5);
        float[] depths = new float[35];
        Arrays.fill(depths, Float.NaN);
        depths[23] = 70;
        Outcome out = choose(grid, depths, 3, 100);
        assertEquals(List.of("2 3"), out.exchanged().picks().stream().map(p -> p.col() + " " + p.row()).toList());
        assertEquals(0.7, out.greedy().upperBound(), 1e-6);
    }

    @Test
    void noFeasibleCellIsAnEmptySelection() {
        GridGeometry grid = GridFiles.utm(17, false, 400_000, 3_000_000, 20, 7, 5);
        float[] depths = new float[35];
        Arrays.fill(depths, -5);
        Outcome out = choose(grid, depths, 3, 100);
        assertEquals(List.of(), out.greedy().picks());
        assertEquals(List.of(), out.exchanged().picks());
        assertEquals(0, out.greedy().upperBound());
        assertEquals(0, out.greedy().total());
    }
}
