package org.seacairn.place;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import org.seacairn.score.ScoreRun;

/** Runs independent pieces of work on several threads and waits for all of them. */
final class Chunks implements AutoCloseable {
    private static final int RANGE = 512;

    private final int threads;
    private final ExecutorService pool;

    Chunks(int threads) {
        this.threads = threads;
        this.pool = Executors.newFixedThreadPool(threads, task -> {
            Thread thread = new Thread(task, "seacairn-chain");
            thread.setDaemon(true);
            return thread;
        });
    }

    /** Pieces 0 to {@code count - 1}, in any order; a failure is passed on as it is. */
    void run(int count, IntConsumer piece) {
        AtomicInteger next = new AtomicInteger();
        List<Future<?>> workers = new ArrayList<>();
        for (int i = 0; i < Math.min(threads, count); i++) {
            workers.add(pool.submit(() -> {
                for (int p = next.getAndIncrement(); p < count; p = next.getAndIncrement()) {
                    piece.accept(p);
                }
            }));
        }
        workers.forEach(ScoreRun::result);
    }

    /** The numbers below {@code count}, range by range. */
    void ranges(int count, RangeUse use) {
        run((count + RANGE - 1) / RANGE, i -> use.take(i * RANGE, Math.min(count, (i + 1) * RANGE)));
    }

    /** Takes the numbers from {@code from} to {@code to - 1}. */
    @FunctionalInterface
    interface RangeUse {
        void take(int from, int to);
    }

    @Override
    public void close() {
        pool.shutdownNow();
    }
}
