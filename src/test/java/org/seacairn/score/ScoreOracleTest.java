package org.seacairn.score;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.grid.Window;
import org.seacairn.plan.PlanReader;
import org.seacairn.plan.SitingPlan;

/** The engine, from the files to the reasons and scores, against a plain program written from the design page. */
class ScoreOracleTest {
    private static final int SCENES = 160;
    private static final double SCORE_TOLERANCE = 1e-6;
    /** Raster distances claim no more: the projection's scale is taken at one place of each patch. */
    private static final double DISTANCE_TOLERANCE_M = 0.003;

    @TempDir
    Path folder;

    /** What the scenes held, so that the test cannot pass for want of cases. */
    private final Map<String, Integer> seen = new TreeMap<>();

    private interface Check {
        void of(String name, RandomScene scene, ScoreEngine engine);
    }

    private void eachScene(int scenes, Function<Random, RandomGrid> grids, Check check) throws IOException {
        for (long seed = 1; seed <= scenes; seed++) {
            Path own = Files.createDirectory(folder.resolve("scene-" + seed));
            RandomScene scene = new RandomScene(seed, own, grids);
            SitingPlan plan = PlanReader.read(scene.plan(), false);
            try (WorkingDepth depth = WorkingDepth.open(plan)) {
                check.of("seed " + seed, scene, new ScoreEngine(plan, depth, WorkingLayers.load(plan, depth.grid())));
            }
        }
    }

    @Test
    void reasonsAndScoresAreThoseOfThePlainProgram() throws IOException {
        eachScene(SCENES, RandomGrid::of, this::compare);
        List<String> rare = List.of("no-depth", "no-terrain", "outside-area", "too-shallow", "too-tall", "too-deep",
                "too-steep", "too-rough", "bottom-unsuitable", "bottom-unmapped", "near-reef", "keep-off:layer c", "landing-room");
        for (String reason : rare) {
            assertTrue(seen.getOrDefault(reason, 0) > 1000, reason + " in few cells: " + seen);
        }
        assertTrue(seen.get("scored") > 5000, "few scored cells: " + seen);
        assertTrue(seen.get("in doubt") < 0.01 * seen.get("cells"), "too many cells left aside: " + seen);
        assertTrue(seen.getOrDefault("wide range", 0) < 0.01 * seen.get("scored"), "too many scores left vague: " + seen);
    }

    @Test
    void acrossTheAntimeridianTheyAreToo() throws IOException {
        eachScene(25, RandomGrid::acrossTheAntimeridian, this::compare);
        assertTrue(seen.getOrDefault("scored", 0) > 500, "few scored cells: " + seen);
    }

    private void compare(String name, RandomScene scene, ScoreEngine engine) {
        PlainScore plain = new PlainScore(scene);
        RandomGrid grid = scene.grid;
        assertEquals(plain.names, engine.reasons().names(), name);
        assertEquals(new Window(0, 0, grid.cols(), grid.rows()), engine.grid().whole(), name);
        ScoredWindow scored = engine.score(engine.grid().whole());
        for (int i = 0; i < plain.reasons.length; i++) {
            compareCell(name + ", column " + i % grid.cols() + ", row " + i / grid.cols() + " of " + grid, i, engine, plain, scored);
        }
        compareDetails(name, scene, engine, plain, scored);
    }

    private void compareCell(String cell, int i, ScoreEngine engine, PlainScore plain, ScoredWindow scored) {
        int sure = ~plain.doubt[i];
        float score = scored.score()[i];
        assertEquals(engine.reasons().describe(plain.reasons[i] & sure), engine.reasons().describe(scored.reasons()[i] & sure), cell);
        assertEquals(scored.reasons()[i] != 0, Float.isNaN(score), cell);
        assertEquals(plain.scene.depthM[i], scored.depth()[i], 1e-4, cell);
        count("cells");
        if (sure != -1) {
            count("in doubt");
        } else if (plain.reasons[i] == 0) {
            assertTrue(score >= plain.lowest[i] - SCORE_TOLERANCE && score <= plain.highest[i] + SCORE_TOLERANCE,
                    () -> cell + ": score " + score + " and not " + plain.lowest[i] + " to " + plain.highest[i]);
            count("scored");
            if (plain.highest[i] - plain.lowest[i] > 1e-4) {
                count("wide range");
            }
        }
        for (int b = 0; b < plain.names.size(); b++) {
            if ((plain.reasons[i] >> b & 1) != 0) {
                count(plain.names.get(b));
            }
        }
    }

    private void compareDetails(String name, RandomScene scene, ScoreEngine engine, PlainScore plain, ScoredWindow scored) {
        int cols = scene.grid.cols();
        for (int k = 0; k < 12; k++) {
            int i = scene.random.nextInt(plain.reasons.length);
            String cell = name + ", column " + i % cols + ", row " + i / cols;
            CellDetail detail = engine.detail(i % cols, i / cols);
            assertEquals(scored.reasons()[i], detail.reasons(), cell);
            assertEquals(scored.score()[i], (float) detail.score(), cell);
            assertEquals(scene.depthM[i], detail.depthM(), 1e-4, cell);
            assertEquals(plain.slopeDeg[i], detail.slopeDeg(), 2e-5, cell);
            if (plain.bottom[i] != null) {
                assertEquals(plain.bottom[i], detail.bottom(), cell);
            }
            assertEquals(scored.reasons()[i] == 0 ? scene.criteria.stream().map(RandomScene.Scored::measure).toList() : List.of(),
                    detail.suitability().keySet().stream().map(m -> m.name().toLowerCase(Locale.ROOT)).toList(), cell);
            double[] keepOffM = engine.keepOffDistancesM(i % cols, i / cols);
            assertArrayEquals(plain.keepOffM[i], keepOffM, DISTANCE_TOLERANCE_M, cell);
            assertEquals(scene.reefs == null ? Double.POSITIVE_INFINITY : plain.reefM[i],
                    engine.reefDistanceM(i % cols, i / cols), DISTANCE_TOLERANCE_M, cell);
        }
    }

    private void count(String what) {
        seen.merge(what, 1, Integer::sum);
    }

    @Test
    void windowsScoredApartAreTheWholeBitForBit() throws IOException {
        eachScene(60, RandomGrid::of, (name, scene, engine) -> {
            Random random = scene.random;
            RandomGrid grid = scene.grid;
            ScoredWindow whole = engine.score(engine.grid().whole());
            for (int k = 0; k < 6; k++) {
                int col = random.nextInt(grid.cols());
                int row = random.nextInt(grid.rows());
                Window window = k == 0 ? new Window(col, row, 1, 1)
                        : new Window(col, row, 1 + random.nextInt(grid.cols() - col), 1 + random.nextInt(grid.rows() - row));
                ScoredWindow part = engine.score(window);
                assertEquals(window, part.window(), name);
                for (int i = 0; i < window.cells(); i++) {
                    int at = (window.row() + i / window.cols()) * grid.cols() + window.col() + i % window.cols();
                    assertEquals(whole.reasons()[at], part.reasons()[i], () -> name + ", " + window);
                    assertEquals(Float.floatToIntBits(whole.depth()[at]), Float.floatToIntBits(part.depth()[i]),
                            () -> name + ", " + window);
                    assertEquals(Float.floatToIntBits(whole.score()[at]), Float.floatToIntBits(part.score()[i]),
                            () -> name + ", " + window);
                }
            }
        });
    }
}
