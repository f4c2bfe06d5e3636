package org.seacairn.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.Progress;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;

class ReducedRastersTest {
    private static GridGeometry grid(int cols, int rows) {
        return new GridGeometry(Crs.ofEpsg(32617), 500_000, 3_200_000, 10, cols, rows);
    }

    /** Depth, score and reasons of every cell. */
    private record Scene(int cols, int rows, float[] depth, float[] score, int[] reasons) {
        static Scene random(int cols, int rows, long seed) {
            Random random = new Random(seed);
            Scene scene = new Scene(cols, rows, new float[cols * rows], new float[cols * rows], new int[cols * rows]);
            for (int i = 0; i < cols * rows; i++) {
                boolean gap = (i % cols) / 40 % 3 == 1 && i / cols / 30 % 2 == 0;
                scene.depth[i] = gap || random.nextInt(9) == 0 ? Float.NaN : 60 + 90 * random.nextFloat();
                scene.reasons[i] = random.nextInt(3) == 0 ? 0 : random.nextInt(1 << 14) | (i < 5000 ? Integer.MIN_VALUE : 0);
                scene.score[i] = scene.reasons[i] == 0 ? random.nextFloat() : Float.NaN;
            }
            return scene;
        }

        Scene over(Window w) {
            Scene part = new Scene(w.cols(), w.rows(), new float[w.cells()], new float[w.cells()], new int[w.cells()]);
            for (int r = 0; r < w.rows(); r++) {
                int from = (w.row() + r) * cols + w.col();
                System.arraycopy(depth, from, part.depth, r * w.cols(), w.cols());
                System.arraycopy(score, from, part.score, r * w.cols(), w.cols());
                System.arraycopy(reasons, from, part.reasons, r * w.cols(), w.cols());
            }
            return part;
        }
    }

    private static List<Window> tiles(int cols, int rows, int side) {
        List<Window> tiles = new ArrayList<>();
        for (int row = 0; row < rows; row += side) {
            for (int col = 0; col < cols; col += side) {
                tiles.add(new Window(col, row, Math.min(side, cols - col), Math.min(side, rows - row)));
            }
        }
        return tiles;
    }

    private static ReducedRasters reduced(Scene scene, int side, long seed, boolean parallel) {
        ReducedRastersBuilder builder = new ReducedRastersBuilder(grid(scene.cols, scene.rows), true);
        List<Window> tiles = tiles(scene.cols, scene.rows, side);
        Collections.shuffle(tiles, new Random(seed));
        (parallel ? tiles.parallelStream() : tiles.stream()).forEach(w -> {
            Scene part = scene.over(w);
            builder.take(w, part.depth, part.score, part.reasons);
        });
        return builder.build();
    }

    @ParameterizedTest
    @CsvSource({"1000, 7, 1", "1001, 13, 2", "3, 2005, 3", "2999, 31, 3", "1, 1, 1", "517, 1213, 2"})
    void everyPixelIsWhatAPlainLoopFinds(int cols, int rows, int k) {
        Scene scene = Scene.random(cols, rows, 11);
        ReducedRasters reduced = reduced(scene, 97, 1, false);
        assertEquals(k, reduced.cellsPerPixel());
        assertEquals(10.0 * k, reduced.pixelM());
        assertEquals((cols + k - 1) / k, reduced.cols());
        assertEquals((rows + k - 1) / k, reduced.rows());
        for (int r = 0; r < reduced.rows(); r++) {
            for (int c = 0; c < reduced.cols(); c++) {
                assertPixel(scene, reduced, c, r, k);
            }
        }
    }

    private static void assertPixel(Scene scene, ReducedRasters reduced, int c, int r, int k) {
        double depth = 0;
        double score = 0;
        int depths = 0;
        int scores = 0;
        int cells = 0;
        int[] bits = new int[32];
        for (int row = r * k; row < Math.min(scene.rows, (r + 1) * k); row++) {
            for (int col = c * k; col < Math.min(scene.cols, (c + 1) * k); col++) {
                int i = row * scene.cols + col;
                cells++;
                if (!Float.isNaN(scene.depth[i])) {
                    depth += scene.depth[i];
                    depths++;
                }
                if (!Float.isNaN(scene.score[i])) {
                    score += scene.score[i];
                    scores++;
                }
                for (int b = 0; b < 32; b++) {
                    bits[b] += scene.reasons[i] >>> b & 1;
                }
            }
        }
        int mask = 0;
        for (int b = 0; b < 32; b++) {
            mask |= bits[b] * 2 >= cells ? 1 << b : 0;
        }
        int at = r * reduced.cols() + c;
        // NaN equals NaN here.
        assertEquals(depth / depths, reduced.depthM()[at], 1e-5);
        assertEquals(score / scores, reduced.score().orElseThrow()[at], 1e-6);
        assertEquals(mask, reduced.reasons().orElseThrow()[at]);
    }

    @Test
    void neitherOrderNorThreadsNorTilesLeaveATrace() {
        Scene scene = Scene.random(2600, 700, 5);
        ReducedRasters one = reduced(scene, 256, 1, false);
        for (ReducedRasters other : List.of(reduced(scene, 256, 2, false), reduced(scene, 64, 3, true), reduced(scene, 701, 4, true))) {
            assertArrayEquals(one.depthM(), other.depthM(), 0);
            assertArrayEquals(one.score().orElseThrow(), other.score().orElseThrow(), 0);
            assertArrayEquals(one.reasons().orElseThrow(), other.reasons().orElseThrow());
        }
    }

    @Test
    void depthsAloneAreTheSame() {
        Scene scene = Scene.random(1300, 900, 6);
        ReducedRasters depths = ReducedRasters.ofDepth(grid(1300, 900), (col, row, cols, rows, into) ->
                System.arraycopy(scene.over(new Window(col, row, cols, rows)).depth, 0, into, 0, cols * rows), 3, Progress.NONE);
        assertArrayEquals(reduced(scene, 256, 1, false).depthM(), depths.depthM(), 0);
        assertTrue(depths.score().isEmpty() && depths.reasons().isEmpty());
    }

    @Test
    void themiddleOfTheLastPixelIsThatOfItsCells() {
        ReducedRasters reduced = reduced(Scene.random(1001, 3, 1), 256, 1, false);
        assertEquals(1, reduced.middleCol(0));
        assertEquals(1000.5, reduced.middleCol(500));
        assertEquals(2.5, reduced.middleRow(1));
    }

    @Test
    void aCellThatIsMissingOrTakenTwiceIsTold() {
        ReducedRastersBuilder builder = new ReducedRastersBuilder(grid(10, 10));
        builder.take(new Window(0, 0, 10, 9), new float[90]);
        assertThrows(IllegalStateException.class, builder::build);
        assertThrows(IllegalArgumentException.class, () -> builder.take(new Window(0, 0, 10, 10), new float[100]));
        assertThrows(IllegalArgumentException.class, () -> builder.take(new Window(0, 9, 11, 1), new float[11]));
    }
}
