package org.seacairn.place;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;

/**
 * Sums up every rectangle about the cells of a window that lies wholly on the grid. Neighbouring patches
 * whose rectangles hold the same cells go in one run; cells about which the square in every rectangle's
 * inner circle already holds too many ruled-out cells are passed over.
 */
final class RectangleWalk {
    /** Cells passed over between two runs cost less than a new run if they are this few. */
    private static final int SHORT_GAP = 8;

    private final GridGeometry grid;
    private final Shapes shapes;
    private final double blemish;
    private final Taker taker;
    private final IntPredicate wantedShapes;

    /** Takes sums of one rectangle about neighbouring cells of a row. */
    interface Taker {
        /**
         * @param shape number of the rectangle in its patch
         * @param cells of the rectangle
         * @param sums see {@link CellSums}; the first {@code n} count
         */
        void take(int shape, int cells, int row, int col, int n, long[] sums);
    }

    private record Run(int col, int endCol, Footprint footprint) {}

    /** @param wantedShapes numbers of the rectangles to sum up */
    RectangleWalk(GridGeometry grid, Shapes shapes, double blemish, IntPredicate wantedShapes, Taker taker) {
        this.grid = grid;
        this.shapes = shapes;
        this.blemish = blemish;
        this.wantedShapes = wantedShapes;
        this.taker = taker;
    }

    /**
     * @param centres a window on the grid
     * @param sums over the centres grown by the shapes' halo, as far as the grid goes
     * @param turns over the centres, or null: every turn
     */
    void over(Window centres, RowSums sums, IsobathTurns turns) {
        int side = shapes.patchSide();
        for (int row = centres.row(); row < centres.endRow(); row = (row / side + 1) * side) {
            int rows = Math.min((row / side + 1) * side, centres.endRow()) - row;
            overPatches(new Window(centres.col(), row, centres.cols(), rows), sums, turns);
        }
    }

    private void overPatches(Window centres, RowSums sums, IsobathTurns turns) {
        List<List<Run>> runs = runs(centres);
        long[] acc = new long[centres.cols()];
        boolean[] open = new boolean[centres.cols()];
        boolean[] wanted = turns == null ? open : new boolean[centres.cols()];
        for (int first = 0; first < runs.size(); ) {
            int size = size(runs, first);
            int end = first + 1;
            while (end < runs.size() && size(runs, end) == size) {
                end++;
            }
            OpenCells openCells = openCells(centres, runs.subList(first, end), sums);
            for (int row = centres.row(); row < centres.endRow(); row++) {
                if (!openCells.row(row, open)) {
                    continue;
                }
                for (int shape = first; shape < end; shape++) {
                    if (!wantedShapes.test(shape)) {
                        continue;
                    }
                    if (turns != null) {
                        for (int i = 0; i < open.length; i++) {
                            wanted[i] = open[i] && turns.at(size, centres.col() + i, row) == shape - first;
                        }
                    }
                    for (Run run : runs.get(shape)) {
                        int top = shapes.firstRow(run.footprint);
                        if (row >= top && row <= grid.rows() - 1 - top) {
                            take(shape, run, row, centres.col(), wanted, turns == null ? SHORT_GAP : 0, sums, acc);
                        }
                    }
                }
            }
            first = end;
        }
    }

    private void take(int shape, Run run, int row, int left, boolean[] wanted, int shortGap, RowSums sums, long[] acc) {
        int col = run.col;
        while (col < run.endCol) {
            if (!wanted[col - left]) {
                col++;
                continue;
            }
            int end = col + 1;
            for (int c = end; c < run.endCol && c - end <= shortGap; c++) {
                if (wanted[c - left]) {
                    end = c + 1;
                }
            }
            sums.over(run.footprint.spans(), row, col, end - col, acc);
            taker.take(shape, run.footprint.spans().cells(), row, col, end - col, acc);
            col = end;
        }
    }

    private static int size(List<List<Run>> runs, int shape) {
        return runs.get(shape).get(0).footprint.size();
    }

    /** For every shape the runs of columns over which it holds the same cells and fits on the grid. */
    private List<List<Run>> runs(Window centres) {
        List<List<Run>> runs = new ArrayList<>();
        int side = shapes.patchSide();
        for (int col = centres.col(); col < centres.endCol(); col = (col / side + 1) * side) {
            int endCol = Math.min((col / side + 1) * side, centres.endCol());
            List<Footprint> footprints = shapes.at(col, centres.row()).footprints();
            for (int shape = 0; shape < footprints.size(); shape++) {
                if (runs.size() == shape) {
                    runs.add(new ArrayList<>());
                }
                Footprint f = footprints.get(shape);
                int firstCol = shapes.firstCol(f);
                int from = Math.max(col, firstCol);
                add(runs.get(shape), new Run(from, Math.max(from, Math.min(endCol, grid.cols() - firstCol)), f));
            }
        }
        return runs;
    }

    private void add(List<Run> runs, Run next) {
        if (!runs.isEmpty()) {
            Run last = runs.get(runs.size() - 1);
            if (last.endCol == next.col && shapes.firstRow(last.footprint) == shapes.firstRow(next.footprint)
                    && last.footprint.spans().sameCells(next.footprint.spans())) {
                runs.set(runs.size() - 1, new Run(last.col, next.endCol, last.footprint));
                return;
            }
        }
        runs.add(next);
    }

    private OpenCells openCells(Window centres, List<List<Run>> runs, RowSums sums) {
        double radius = Double.POSITIVE_INFINITY;
        int most = 0;
        for (List<Run> ofShape : runs) {
            for (Run run : ofShape) {
                radius = Math.min(radius, run.footprint.innerRadiusM() / grid.cellM());
                most = Math.max(most, CellSums.mostRuledOut(blemish, run.footprint.spans().cells()));
            }
        }
        return new OpenCells(centres, sums, (int) (radius * Math.sqrt(0.5)), most);
    }
}
