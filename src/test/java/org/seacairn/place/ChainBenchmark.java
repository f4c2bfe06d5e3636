package org.seacairn.place;

import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;
import org.seacairn.score.ScoredWindow;

/**
 * Times the chain search: a corridor of 4 km by 400 m at cells of 5 m, gaps of 120 m to 250 m. Scores are
 * sums of waves with noise, and the given share of the ground is ruled out. Prints the median of seven
 * searches after three that do not count, and the time of the very first.
 *
 * <p>{@code java -cp "target/test-classes:target/classes:target/lib/*" org.seacairn.place.ChainBenchmark [long]}; the
 * longer corridors only with {@code long}.
 *
 * <p>Measured on two cores that others used too (load 5 to 7): 0.25 s to 0.95 s, the very first search of
 * a fresh Java machine 1.9 s. Processor time, which others change less: 0.45 s to 0.85 s in all, 1.2 s to 1.6 s fresh; a warm
 * search is one fourth to one third breadth-first search, the rest levels, some hundredths of a second the search for modules apart.
 * 20 km: 3 s. Passing over blocks without an open cell took the breadth-first search from 0.35 s - 0.55 s to 0.15 s - 0.22 s.
 */
public final class ChainBenchmark {
    private static final int WARM_UP = 3;
    private static final int ROUNDS = 7;

    private ChainBenchmark() {}

    /** @param args "long" for the longer corridors too */
    public static void main(String[] args) {
        for (double bearingDeg : new double[] {90, 45, 0}) {
            for (double ruledOut : new double[] {0, 0.3, 0.6}) {
                time(String.format(Locale.ROOT, "4 km at %2.0f degrees", bearingDeg), 4000, bearingDeg, ruledOut, 5, 120, 250, 2);
            }
        }
        time("one thread", 4000, 90, 0.3, 5, 120, 250, 1);
        time("all scores alike", 4000, 90, -1, 5, 120, 250, 2);
        if (args.length == 0) {
            return;
        }
        time("20 km", 20_000, 45, 0.3, 5, 120, 250, 2);
        time("gaps to 1 km, 10 km", 10_000, 45, 0.3, 5, 150, 1000, 2);
    }

    private static void time(String name, double lengthM, double bearingDeg, double ruledOut, double cellM,
            double leastM, double mostM, int threads) {
        Corridor corridor = corridor(lengthM, bearingDeg, ruledOut, cellM);
        double[] ms = new double[ROUNDS];
        double firstMs = 0;
        ChainSearch.Result result = null;
        for (int i = -WARM_UP; i < ROUNDS; i++) {
            long start = System.nanoTime();
            result = ChainSearch.fewest(corridor, new Gaps(leastM, mostM, leastM), threads);
            ms[Math.max(0, i)] = (System.nanoTime() - start) / 1e6;
            firstMs = i == -WARM_UP ? ms[0] : firstMs;
        }
        Arrays.sort(ms);
        System.out.printf(Locale.ROOT, "%-20s %7d cells, %7d scored: %6.0f ms (first %.0f); %s%n", name, corridor.cells().slots(),
                corridor.scoredCells(), ms[ROUNDS / 2], firstMs, describe(result));
    }

    private static String describe(ChainSearch.Result result) {
        StringBuilder text = new StringBuilder();
        result.chains().forEach(c -> text.append(String.format(Locale.ROOT, "%d modules %.4f%s ", c.modules().size(),
                c.meanScore(), c.proven() ? "" : String.format(Locale.ROOT, " (at most %.4f)", c.boundScore()))));
        return text + (result.undecided().isEmpty() ? "" : "undecided " + result.undecided())
                + result.unbridged().map(u -> String.format(Locale.ROOT, "unbridged %.0f to %.0f m", u.fromAlongM(), u.toAlongM())).orElse("");
    }

    private static Corridor corridor(double lengthM, double bearingDeg, double ruledOut, double cellM) {
        int side = (int) Math.ceil((lengthM + 1000) / cellM);
        GridGeometry grid = new GridGeometry(Crs.ofEpsg(32617), 400_000, 3_300_000, cellM, side, side);
        double x = (grid.west() + grid.east()) / 2;
        double y = (grid.north() + grid.south()) / 2;
        double dx = lengthM / 2 * Math.sin(Math.toRadians(bearingDeg));
        double dy = lengthM / 2 * Math.cos(Math.toRadians(bearingDeg));
        Axis axis = Axis.between(stone("Kittle Rock", x - dx, y - dy, grid), stone("Marl Reef", x + dx, y + dy, grid), grid);
        double[][] waves = waves(new Random(20260103));
        return Corridor.of(grid, axis, 200, 128, 2, window -> scored(window, waves, ruledOut, cellM), 1);
    }

    private static Stone stone(String name, double x, double y, GridGeometry grid) {
        Coordinate at = grid.crs().to(grid.crs().geographic()).apply(x, y);
        return Stone.of(name, new GeometryFactory().createPoint(at), grid);
    }

    /** Wave numbers and phase of each. */
    private static double[][] waves(Random random) {
        double[][] waves = new double[12][];
        for (int i = 0; i < waves.length; i++) {
            double length = 60 * Math.pow(10, random.nextDouble());
            double turn = 2 * Math.PI * random.nextDouble();
            waves[i] = new double[] {2 * Math.PI / length * Math.cos(turn), 2 * Math.PI / length * Math.sin(turn), 7 * random.nextDouble()};
        }
        return waves;
    }

    private static ScoredWindow scored(Window window, double[][] waves, double ruledOut, double cellM) {
        float[] score = new float[window.cells()];
        int[] reasons = new int[window.cells()];
        double limit = -2.45 + 4.9 * ruledOut;
        for (int i = 0; i < score.length; i++) {
            double x = (window.col() + i % window.cols()) * cellM;
            double y = (window.row() + i / window.cols()) * cellM;
            double sum = 0;
            for (double[] w : waves) {
                sum += Math.sin(w[0] * x + w[1] * y + w[2]);
            }
            boolean out = ruledOut > 0 && sum < limit;
            reasons[i] = out ? 2 : 0;
            score[i] = out ? Float.NaN : ruledOut < 0 ? 0.5f : (float) Math.max(0, Math.min(1, 0.5 + sum / 12));
        }
        return new ScoredWindow(window, null, score, reasons);
    }
}
