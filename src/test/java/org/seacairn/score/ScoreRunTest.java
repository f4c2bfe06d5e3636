package org.seacairn.score;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.Progress;
import org.seacairn.grid.Window;
import org.seacairn.plan.PlanReader;
import org.seacairn.plan.SitingPlan;

/** A run over tiles against one window over the whole grid. */
class ScoreRunTest {
    private static final RandomGrid GRID = new RandomGrid(17, 612_345.67, 3_210_987.65, 3, 617, 541,
            PlainMap.lonLat(17, 612_345.67 + 308.5 * 3, 3_210_987.65 - 270.5 * 3));

    @TempDir
    Path folder;

    /** Puts the tiles together again. */
    private static final class Mosaic implements ScoreRun.Sink<ScoredWindow> {
        final List<Window> order = new ArrayList<>();
        final float[] score = new float[GRID.cols() * GRID.rows()];
        final int[] reasons = new int[score.length];

        @Override
        public ScoredWindow encode(ScoredWindow tile) {
            return tile;
        }

        @Override
        public void write(ScoredWindow tile) {
            Window w = tile.window();
            order.add(w);
            for (int i = 0; i < w.cells(); i++) {
                int at = (w.row() + i / w.cols()) * GRID.cols() + w.col() + i % w.cols();
                score[at] = tile.score()[i];
                reasons[at] = tile.reasons()[i];
            }
        }
    }

    private interface Check {
        void of(ScoreEngine engine);
    }

    private void scene(long seed, Check check) throws Exception {
        RandomScene scene = new RandomScene(seed, Files.createDirectories(folder.resolve("scene-" + seed)), GRID);
        SitingPlan plan = PlanReader.read(scene.plan(), false);
        try (WorkingDepth depth = WorkingDepth.open(plan)) {
            check.of(new ScoreEngine(plan, depth, WorkingLayers.load(plan, depth.grid())));
        }
    }

    @ParameterizedTest
    @CsvSource({"2, 1", "2, 4", "5, 3", "9, 2", "12, 3", "13, 2"})
    void tilesTotalsAndBlockMaximaAreThoseOfTheWhole(long seed, int threads) throws Exception {
        scene(seed, engine -> {
            ScoredWindow whole = engine.score(engine.grid().whole());
            Mosaic mosaic = new Mosaic();
            ScoreTotals totals = ScoreRun.run(engine, threads, Progress.NONE, mosaic);
            assertArrayEquals(whole.score(), mosaic.score);
            assertArrayEquals(whole.reasons(), mosaic.reasons);
            int side = ScoreRun.tileSide(engine);
            List<Window> rowMajor = new ArrayList<>();
            for (int row = 0; row < GRID.rows(); row += side) {
                for (int col = 0; col < GRID.cols(); col += side) {
                    rowMajor.add(new Window(col, row, Math.min(side, GRID.cols() - col), Math.min(side, GRID.rows() - row)));
                }
            }
            assertEquals(rowMajor, mosaic.order);
            compareTotals(engine, whole, totals);
            compareBlocks(whole, totals.blocks());
        });
    }

    @Test
    void someOfTheScenesHaveScoredCellsAndSomeReasonsStandAlone() throws Exception {
        long[] sums = new long[2];
        for (long seed : new long[] {2, 5, 9, 12, 13}) {
            scene(seed, engine -> {
                ScoreTotals totals = ScoreRun.run(engine, 2, Progress.NONE, new Mosaic());
                sums[0] += totals.scored();
                sums[1] += totals.byReason().stream().filter(count -> count.aloneCells() > 0).count();
            });
        }
        assertTrue(sums[0] > 100_000 && sums[1] >= 10, sums[0] + " scored, " + sums[1] + " reasons alone");
    }

    private static void compareTotals(ScoreEngine engine, ScoredWindow whole, ScoreTotals totals) {
        int noDepth = engine.reasons().bit("no-depth");
        int landingRoom = engine.reasons().bit("landing-room");
        long withDepth = 0;
        long scored = 0;
        long[] cells = new long[32];
        long[] alone = new long[32];
        for (int mask : whole.reasons()) {
            withDepth += (mask & noDepth) == 0 ? 1 : 0;
            scored += mask == 0 ? 1 : 0;
            for (int b = 0; b < engine.reasons().names().size(); b++) {
                int bit = 1 << b;
                cells[b] += (mask & bit) != 0 ? 1 : 0;
                boolean only = bit == landingRoom ? mask == bit : (mask & ~landingRoom) == bit;
                alone[b] += only ? 1 : 0;
            }
        }
        assertEquals((long) GRID.cols() * GRID.rows(), totals.cells());
        assertEquals(withDepth, totals.withDepth());
        assertEquals(scored, totals.scored());
        List<ScoreTotals.Count> expected = new ArrayList<>();
        for (int b = 0; b < engine.reasons().names().size(); b++) {
            expected.add(new ScoreTotals.Count(engine.reasons().names().get(b), 1L << b, cells[b], alone[b]));
        }
        assertEquals(expected, totals.byReason());
    }

    private static void compareBlocks(ScoredWindow whole, BlockMaxima maxima) {
        int side = BlockMaxima.SIDE;
        int across = (GRID.cols() + side - 1) / side;
        assertEquals(across * ((GRID.rows() + side - 1) / side), maxima.blocks());
        for (int block = 0; block < maxima.blocks(); block++) {
            int best = -1;
            for (int row = block / across * side; row < Math.min(GRID.rows(), (block / across + 1) * side); row++) {
                for (int col = block % across * side; col < Math.min(GRID.cols(), (block % across + 1) * side); col++) {
                    int at = row * GRID.cols() + col;
                    // Row by row from the north-west, so that the first of equals stays.
                    if (!Float.isNaN(whole.score()[at]) && (best < 0 || whole.score()[at] > whole.score()[best])) {
                        best = at;
                    }
                }
            }
            assertEquals(best < 0 ? Float.NaN : whole.score()[best], maxima.best(block), "block " + block);
            if (best >= 0) {
                assertEquals(best % GRID.cols(), maxima.bestCol(block), "block " + block);
                assertEquals(best / GRID.cols(), maxima.bestRow(block), "block " + block);
            }
        }
    }
}
