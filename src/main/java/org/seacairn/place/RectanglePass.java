package org.seacairn.place;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.IntPredicate;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;
import org.seacairn.score.ScoreRun;

/**
 * One pass over the scores from north to south. Only the rows that rectangles still to come reach are held;
 * every block of centres whose rectangles are complete is summed up, several at a time.
 */
final class RectanglePass implements AutoCloseable {
    /** Centres that one piece of work takes on: whole blocks, whole patches. */
    private static final int ROWS = 64;
    private static final int COLS = 256;

    private final CellSource source;
    private final AreaRequest request;
    private final Shapes shapes;
    private final RectangleBlocks blocks;
    private final ExecutorService pool;
    /** Rows of scores, row r at r modulo the number of them. */
    private float[][] held = new float[0][];
    private int nextCentreRow;

    RectanglePass(CellSource source, AreaRequest request, Shapes shapes, RectangleBlocks blocks, int threads) {
        this.source = source;
        this.request = request;
        this.shapes = shapes;
        this.blocks = blocks;
        this.pool = Executors.newFixedThreadPool(threads, task -> {
            Thread thread = new Thread(task, "seacairn-areas");
            thread.setDaemon(true);
            return thread;
        });
    }

    /** Takes the scores of a window; windows come in row-major order and cover the grid. */
    void take(Window window, float[] score) {
        GridGeometry grid = source.grid();
        makeRoom(window);
        for (int r = 0; r < window.rows(); r++) {
            System.arraycopy(score, r * window.cols(), held(window.row() + r), window.col(), window.cols());
        }
        if (window.endCol() == grid.cols()) {
            List<Callable<Void>> work = new ArrayList<>();
            while (nextCentreRow < grid.rows()
                    && Math.min(grid.rows(), nextCentreRow + ROWS + shapes.halo()) <= window.endRow()) {
                int rows = Math.min(ROWS, grid.rows() - nextCentreRow);
                for (int col = 0; col < grid.cols(); col += COLS) {
                    Window centres = new Window(col, nextCentreRow, Math.min(COLS, grid.cols() - col), rows);
                    work.add(() -> {
                        sumUp(centres);
                        return null;
                    });
                }
                nextCentreRow += rows;
            }
            run(work);
        }
    }

    private void makeRoom(Window window) {
        int oldest = Math.max(0, nextCentreRow - shapes.halo());
        int needed = Math.min(source.grid().rows(), window.endRow()) - oldest;
        if (needed > held.length) {
            float[][] more = new float[needed][];
            for (int row = oldest; row < window.row() && held.length > 0; row++) {
                more[row % more.length] = held[row % held.length];
            }
            held = more;
        }
    }

    private float[] held(int row) {
        int i = row % held.length;
        if (held[i] == null) {
            held[i] = new float[source.grid().cols()];
        }
        return held[i];
    }

    private void run(List<Callable<Void>> work) {
        try {
            for (Future<Void> done : pool.invokeAll(work)) {
                ScoreRun.result(done);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", e);
        }
    }

    private void sumUp(Window centres) {
        Window reach = onGrid(source.grid(), centres.grown(shapes.halo()));
        float[] score = new float[reach.cells()];
        for (int r = 0; r < reach.rows(); r++) {
            System.arraycopy(held[(reach.row() + r) % held.length], reach.col(), score, r * reach.cols(), reach.cols());
        }
        walk(source, request, shapes, centres, CellSums.of(reach, score), shape -> true, blocks::take);
    }

    /** Hands over the rectangles about the cells of a window. */
    static void walk(CellSource source, AreaRequest request, Shapes shapes, Window centres, RowSums sums,
            IntPredicate wantedShapes, RectangleWalk.Taker taker) {
        IsobathTurns turns = !request.turns().alongIsobath() ? null : new IsobathTurns(source.grid(), request.sizes(),
                shapes, centres, source.depth(centres.grown(shapes.halo() + 1)));
        new RectangleWalk(source.grid(), shapes, request.blemish(), wantedShapes, taker).over(centres, sums, turns);
    }

    static Window onGrid(GridGeometry grid, Window window) {
        int col = Math.max(0, window.col());
        int row = Math.max(0, window.row());
        return new Window(col, row, Math.min(grid.cols(), window.endCol()) - col, Math.min(grid.rows(), window.endRow()) - row);
    }

    @Override
    public void close() {
        pool.shutdownNow();
    }
}
