package org.seacairn.score;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.seacairn.Progress;
import org.seacairn.criterion.Reasons;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;

/**
 * Scores the whole grid, tile by tile, on several threads. Tiles are handed on in row-major order
 * whatever the number of threads, and only a few are held at a time.
 */
public final class ScoreRun {
    private static final int IN_FLIGHT_PER_THREAD = 4;
    private static final int NARROW_HALO = 16;
    private static final int WIDE_HALO = 64;

    private ScoreRun() {}

    /** Takes the scored tiles. */
    public interface Sink<T> {
        /** Prepares a tile for writing; called by several threads at once. */
        T encode(ScoredWindow tile);

        /** Writes a prepared tile; called by one thread, tiles in row-major order. */
        void write(T encoded);
    }

    /** Side of the tiles: the larger the halo, the larger the tile, so that little is computed twice. */
    public static int tileSide(ScoreEngine engine) {
        return engine.halo() <= NARROW_HALO ? 256 : engine.halo() <= WIDE_HALO ? 512 : 1024;
    }

    /**
     * Scores all tiles.
     *
     * @param threads at least 1
     * @param progress counts cells
     */
    public static <T> ScoreTotals run(ScoreEngine engine, int threads, Progress progress, Sink<T> sink) {
        GridGeometry grid = engine.grid();
        progress.expect(grid.cells(), "cells");
        int side = tileSide(engine);
        Totals totals = new Totals(engine);
        ExecutorService pool = Executors.newFixedThreadPool(threads, task -> {
            Thread thread = new Thread(task, "seacairn-tile");
            thread.setDaemon(true);
            return thread;
        });
        Deque<Future<T>> inFlight = new ArrayDeque<>();
        try {
            for (int row = 0; row < grid.rows(); row += side) {
                for (int col = 0; col < grid.cols(); col += side) {
                    Window tile = new Window(col, row, Math.min(side, grid.cols() - col), Math.min(side, grid.rows() - row));
                    inFlight.add(pool.submit(() -> {
                        ScoredWindow scored = engine.score(tile);
                        totals.take(scored);
                        T encoded = sink.encode(scored);
                        progress.done(tile.cells());
                        return encoded;
                    }));
                    if (inFlight.size() >= IN_FLIGHT_PER_THREAD * threads) {
                        sink.write(result(inFlight.remove()));
                    }
                }
            }
            while (!inFlight.isEmpty()) {
                sink.write(result(inFlight.remove()));
            }
        } finally {
            pool.shutdownNow();
        }
        return totals.sum();
    }

    /** Waits for a piece of work and passes its failure on as it is. */
    public static <T> T result(Future<T> future) {
        try {
            return future.get();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            if (e.getCause() instanceof Error cause) {
                throw cause;
            }
            throw new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", e);
        }
    }

    /** Sums over tiles; whole numbers, so the order of tiles does not matter. */
    private static final class Totals {
        private final ScoreEngine engine;
        private final int noDepth;
        private final int landingRoom;
        private final long[] cells;
        private final long[] alone;
        private final BlockMaxima blocks;
        private long withDepth;
        private long scored;

        Totals(ScoreEngine engine) {
            this.engine = engine;
            this.noDepth = engine.reasons().bit(Reasons.NO_DEPTH);
            this.landingRoom = engine.reasons().bit(Reasons.LANDING_ROOM);
            this.cells = new long[engine.reasons().names().size()];
            this.alone = new long[cells.length];
            this.blocks = new BlockMaxima(engine.grid());
        }

        void take(ScoredWindow tile) {
            blocks.take(tile);
            long[] tileCells = new long[cells.length];
            long[] tileAlone = new long[cells.length];
            long tileDepth = 0;
            long tileScored = 0;
            int previous = 0;
            long run = 0;
            // Neighbours mostly share their mask: count runs of one mask, not cells.
            for (int mask : tile.reasons()) {
                if (mask != previous) {
                    count(previous, run, tileCells, tileAlone);
                    previous = mask;
                    run = 0;
                }
                run++;
                tileDepth += (mask & noDepth) == 0 ? 1 : 0;
                tileScored += mask == 0 ? 1 : 0;
            }
            count(previous, run, tileCells, tileAlone);
            synchronized (this) {
                for (int i = 0; i < cells.length; i++) {
                    cells[i] += tileCells[i];
                    alone[i] += tileAlone[i];
                }
                withDepth += tileDepth;
                scored += tileScored;
            }
        }

        private void count(int mask, long run, long[] tileCells, long[] tileAlone) {
            int first = mask & ~landingRoom;
            for (int rest = mask; rest != 0; rest &= rest - 1) {
                int bit = rest & -rest;
                int i = Integer.numberOfTrailingZeros(bit);
                tileCells[i] += run;
                tileAlone[i] += bit == landingRoom ? (first == 0 ? run : 0) : (first == bit ? run : 0);
            }
        }

        synchronized ScoreTotals sum() {
            List<ScoreTotals.Count> counts = new ArrayList<>();
            List<String> names = engine.reasons().names();
            for (int i = 0; i < names.size(); i++) {
                counts.add(new ScoreTotals.Count(names.get(i), 1L << i, cells[i], alone[i]));
            }
            return new ScoreTotals(engine.grid().cells(), withDepth, scored, List.copyOf(counts), blocks);
        }
    }
}
