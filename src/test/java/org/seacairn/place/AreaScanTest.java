package org.seacairn.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;
import org.seacairn.score.GridFiles;
import org.seacairn.score.ScoredWindow;

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
                    scan.write(scan.encode(new ScoredWindow(tile, cells.score(tile), new int[tile.cells()])));
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
        for (long seed = 1; seed <= 2500; seed++) {
            assertPlain(seed, 4, 18, 14);
        }
    }

    @Test
    void findsWhatPlainSearchFindsOverManyPatchesAndPiecesOfWork() {
        for (long seed = 1; seed <= 6; seed++) {
            assertPlain(10_000 + seed, 20, 300, 120);
        }
    }
}
