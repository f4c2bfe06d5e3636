package org.seacairn.place;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;
import org.seacairn.score.GridFiles;
import org.seacairn.score.ScoredWindow;

/** A small random corridor, and the same as a plain list of cells with geodesic distances. */
final class ChainScene {
    static final int NO_DEPTH = 1;
    /** Limits keep this far from every distance, so that the millimetres held inside them decide nothing. */
    private static final double CLEAR_M = 0.005;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    final GridGeometry grid;
    final float[] scores;
    final Corridor corridor;
    final Gaps gaps;
    /** Scored cells by the rule for ties. */
    final List<Cell> cells;
    /** Metres between cells, and from cells to the two stones. */
    final double[][] between;
    final double[] fromStart;
    final double[] toEnd;
    final double stonesApartM;

    record Cell(int col, int row, int alongMm, float score, double lon, double lat) {
        static final Comparator<Cell> BY_RULE =
                Comparator.comparingInt(Cell::alongMm).thenComparingInt(Cell::row).thenComparingInt(Cell::col);

        String name() {
            return col + " " + row;
        }
    }

    /**
     * @param apartShare of the least gap
     * @param range of the gaps, as a share of the least
     */
    ChainScene(Random random, int cols, int rows, int mostCells, double apartShare, double range) {
        double cellM = new double[] {5, 12.5, 20, 50}[random.nextInt(4)];
        boolean south = random.nextInt(3) == 0;
        this.grid = GridFiles.utm(south ? 33 : 17, south, 180_000 + 640_000 * random.nextDouble(),
                south ? 9_999_000 - 5e6 * random.nextDouble() : 1e5 + 7e6 * random.nextDouble(), cellM, cols, rows);
        this.scores = scores(random, cols * rows, Math.min(1, mostCells / (double) (cols * rows)));
        List<Coordinate> start = stone(random, -0.4, 0.1);
        List<Coordinate> end = stone(random, 0.9, 1.4);
        Stone from = Stone.of("Kittle Rock", FACTORY.createMultiPointFromCoords(start.toArray(Coordinate[]::new)), grid);
        Stone to = Stone.of("Marl Reef", FACTORY.createMultiPointFromCoords(end.toArray(Coordinate[]::new)), grid);
        Axis axis = random.nextBoolean() ? Axis.between(from, to, grid)
                : Axis.along("drift.geojson", drift(random, start.get(0), end.get(0)), from, to, grid);
        this.corridor = Corridor.of(grid, axis, (0.3 + random.nextDouble()) * rows * cellM, 1 + random.nextInt(9),
                1 + random.nextInt(2), this::window, NO_DEPTH);
        this.cells = cells();
        int n = cells.size();
        this.between = new double[n][n];
        this.fromStart = new double[n];
        this.toEnd = new double[n];
        for (int i = 0; i < n; i++) {
            Coordinate at = new Coordinate(cells.get(i).lon(), cells.get(i).lat());
            for (int j = 0; j < n; j++) {
                between[i][j] = metres(at, new Coordinate(cells.get(j).lon(), cells.get(j).lat()));
            }
            fromStart[i] = nearest(start, at);
            toEnd[i] = nearest(end, at);
        }
        this.stonesApartM = start.stream().mapToDouble(s -> nearest(end, s)).min().orElseThrow();
        double least = limit(random, cellM * (0.5 + random.nextDouble() * cols / 3));
        this.gaps = new Gaps(least, limit(random, least * (1 + range)),
                limit(random, Math.min(least - 0.1, apartShare * least)));
    }

    private static float[] scores(Random random, int count, double filled) {
        int levels = new int[] {0, 1, 2, 5}[random.nextInt(4)];
        float[] scores = new float[count];
        for (int i = 0; i < count; i++) {
            scores[i] = random.nextDouble() >= filled ? Float.NaN
                    : levels == 0 ? random.nextFloat() : random.nextInt(levels + 1) / (float) levels;
        }
        return scores;
    }

    /** One to three points in a strip of the grid, shares of its width. */
    private List<Coordinate> stone(Random random, double least, double most) {
        List<Coordinate> points = new ArrayList<>();
        for (int i = random.nextInt(3); i >= 0; i--) {
            points.add(lonLat(least + (most - least) * random.nextDouble(), 0.2 + 0.6 * random.nextDouble()));
        }
        return points;
    }

    private Coordinate lonLat(double shareX, double shareY) {
        return grid.crs().to(grid.crs().geographic()).apply(
                grid.west() + shareX * (grid.east() - grid.west()), grid.south() + shareY * (grid.north() - grid.south()));
    }

    private LineString drift(Random random, Coordinate start, Coordinate end) {
        List<Coordinate> line = new ArrayList<>(List.of(start,
                lonLat(0.1 + 0.4 * random.nextDouble(), random.nextDouble()), lonLat(0.5 + 0.4 * random.nextDouble(), random.nextDouble()), end));
        if (random.nextBoolean()) {
            Collections.reverse(line);
        }
        return FACTORY.createLineString(line.toArray(Coordinate[]::new));
    }

    private ScoredWindow window(Window window) {
        float[] score = new float[window.cells()];
        int[] reasons = new int[window.cells()];
        for (int i = 0; i < score.length; i++) {
            score[i] = scores[(window.row() + i / window.cols()) * grid.cols() + window.col() + i % window.cols()];
            reasons[i] = Float.isNaN(score[i]) ? 2 : 0;
        }
        return new ScoredWindow(window, null, score, reasons);
    }

    private List<Cell> cells() {
        CoordinateTransform toLonLat = grid.crs().to(grid.crs().geographic());
        List<Cell> found = new ArrayList<>();
        corridor.cells().forEach(grid.whole(), (slot, i) -> {
            if (!Float.isNaN(scores[i])) {
                int col = i % grid.cols();
                int row = i / grid.cols();
                Coordinate at = toLonLat.apply(grid.centreX(col), grid.centreY(row));
                found.add(new Cell(col, row, corridor.cells().alongMm()[slot], scores[i], at.x, at.y));
            }
        });
        found.sort(Cell.BY_RULE);
        return found;
    }

    static double metres(Coordinate a, Coordinate b) {
        return Geodesic.WGS84.Inverse(a.y, a.x, b.y, b.x).s12;
    }

    private static double nearest(List<Coordinate> stone, Coordinate at) {
        return stone.stream().mapToDouble(s -> metres(s, at)).min().orElseThrow();
    }

    private double limit(Random random, double about) {
        double limit = about;
        while (!clear(limit)) {
            limit += 0.05 * random.nextDouble();
        }
        return limit;
    }

    private boolean clear(double limit) {
        return Arrays.stream(between).flatMapToDouble(Arrays::stream).allMatch(d -> Math.abs(d - limit) > CLEAR_M)
                && Arrays.stream(fromStart).allMatch(d -> Math.abs(d - limit) > CLEAR_M)
                && Arrays.stream(toEnd).allMatch(d -> Math.abs(d - limit) > CLEAR_M)
                && Math.abs(stonesApartM - limit) > CLEAR_M;
    }

    boolean gap(double metres) {
        return metres >= gaps.leastM() && metres <= gaps.mostM();
    }

    boolean follows(int next, int cell) {
        return cells.get(next).alongMm() > cells.get(cell).alongMm() && gap(between[cell][next]);
    }

}
