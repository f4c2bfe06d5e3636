package org.seacairn.place;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;
import org.seacairn.score.GridFiles;
import org.seacairn.score.ScoredWindow;

/**
 * Measures the search for areas alone, the scores given: a scene of N x N cells of an invented shelf, with
 * nothing ruled out or about a third of it.
 * {@code java -cp ... org.seacairn.place.AreaBenchmark [CELLS [CELL_M [THREADS]]]}
 */
final class AreaBenchmark {
    private static final double NMI_M = 1852;
    private static final int TILE = 256;

    private AreaBenchmark() {}

    public static void main(String[] args) {
        int side = args.length > 0 ? Integer.parseInt(args[0]) : 3163;
        double cellM = args.length > 1 ? Double.parseDouble(args[1]) : 5;
        int threads = args.length > 2 ? Integer.parseInt(args[2]) : 2;
        GridGeometry grid = GridFiles.utm(17, false, 400_000, 3_300_000, cellM, side, side);
        AreaSize square = new AreaSize(0.25 * NMI_M, 0.25 * NMI_M);
        AreaSize oblong = new AreaSize(0.25 * NMI_M, 0.2 * NMI_M);
        AreaSize large = new AreaSize(NMI_M, 0.5 * NMI_M);
        for (boolean holes : new boolean[] {false, true}) {
            PlainCells cells = scene(grid, holes);
            String name = holes ? "a third ruled out" : "nothing ruled out";
            for (int round = 0; round < 2; round++) {
                measure(name + ", squares", cells, new AreaRequest(List.of(square), AreaTurns.ANY, 5, 0), threads);
            }
            measure(name + ", oblongs", cells, new AreaRequest(List.of(oblong), AreaTurns.ANY, 5, 0), threads);
            measure(name + ", oblongs, 2 %", cells, new AreaRequest(List.of(oblong), AreaTurns.ANY, 5, 0.02), threads);
            measure(name + ", oblongs, isobath", cells, new AreaRequest(List.of(oblong), AreaTurns.ISOBATH, 5, 0), threads);
            measure(name + ", 1 x 0.5 nmi", cells, new AreaRequest(List.of(large), AreaTurns.ANY, 5, 0), threads);
        }
    }

    private static void measure(String name, PlainCells cells, AreaRequest request, int threads) {
        GridGeometry grid = cells.grid();
        long start = System.nanoTime();
        long startCpu = cpuNs();
        try (AreaScan scan = new AreaScan(cells, request, threads)) {
            for (int row = 0; row < grid.rows(); row += TILE) {
                for (int col = 0; col < grid.cols(); col += TILE) {
                    Window tile = new Window(col, row, Math.min(TILE, grid.cols() - col), Math.min(TILE, grid.rows() - row));
                    scan.write(new ScoredWindow(tile, null, cells.score(tile), null));
                }
            }
            long scanned = System.nanoTime();
            long scannedCpu = cpuNs();
            List<Area> areas = scan.choose(area -> true);
            System.out.printf(Locale.ROOT, "%-40s pass %6.2f s (cpu %6.2f s), choice %5.2f s (cpu %5.2f s), %d areas, best %.6f%n",
                    name, (scanned - start) / 1e9, (scannedCpu - startCpu) / 1e9, (System.nanoTime() - scanned) / 1e9,
                    (cpuNs() - scannedCpu) / 1e9, areas.size(),
                    areas.isEmpty() ? Double.NaN : areas.get(0).meanScore());
        }
    }

    /** Processor time of all threads: on a busy machine the wall tells little. */
    private static long cpuNs() {
        return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime();
    }

    /** Smooth banks and hollows; holes are discs of 50 to 500 m. */
    private static PlainCells scene(GridGeometry grid, boolean holes) {
        float[] scores = new float[grid.cols() * grid.rows()];
        float[] depths = new float[scores.length];
        for (int i = 0; i < scores.length; i++) {
            double x = i % grid.cols() * grid.cellM();
            double y = i / grid.cols() * grid.cellM();
            double s = 0.5 + 0.25 * Math.sin(x / 1700) * Math.cos(y / 2300) + 0.2 * Math.sin((x + 2 * y) / 900);
            scores[i] = (float) (s + 1e-3 * Math.sin(x * 12.9898 + y * 78.233));
            depths[i] = (float) (80 + x / 300 + 3 * Math.sin(y / 700) + 0.1 * Math.sin(x * 3.1 + y * 1.7));
            if (holes) {
                double u = Math.floorMod((long) x, 2000) - 1000;
                double v = Math.floorMod((long) y, 1500) - 750;
                double radius = 200 + 500 * Math.abs(Math.sin(Math.floor(x / 2000) * 7 + Math.floor(y / 1500) * 13));
                scores[i] = u * u + v * v < radius * radius ? Float.NaN : scores[i];
            }
        }
        return new PlainCells(grid, scores, depths, Optional.empty());
    }
}
