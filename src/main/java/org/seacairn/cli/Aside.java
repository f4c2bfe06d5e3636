package org.seacairn.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.seacairn.geodesy.Crs;
import org.seacairn.score.ScoreRun;

/** Work done beside the main line of a command. Its results do not depend on when it is done. */
final class Aside implements AutoCloseable {
    private static final int ANY_UTM_ZONE = 32601;

    private final ExecutorService pool;

    Aside(int threads) {
        this.pool = Executors.newFixedThreadPool(threads, task -> {
            Thread thread = new Thread(task, "seacairn-aside");
            thread.setDaemon(true);
            return thread;
        });
    }

    /** Opens the EPSG data set, which takes a second; the plan can be read meanwhile. */
    void openEpsg() {
        begin(() -> Crs.ofEpsg(ANY_UTM_ZONE));
    }

    /** Begins a piece of work; ask {@link ScoreRun#result} for what came of it. */
    <T> Future<T> begin(Callable<T> work) {
        return pool.submit(work);
    }

    /** Does several pieces of work and waits for all of them; the first failure in their order is passed on. */
    void all(Runnable... works) {
        List<Future<?>> begun = new ArrayList<>();
        for (Runnable work : works) {
            begun.add(pool.submit(work));
        }
        // All of them even if one fails: none may go on writing while its caller clears up.
        RuntimeException failure = null;
        for (Future<?> work : begun) {
            try {
                ScoreRun.result(work);
            } catch (RuntimeException e) {
                failure = failure == null ? e : failure;
            }
        }
        if (failure != null) {
            throw failure;
        }
    }

    @Override
    public void close() {
        pool.shutdownNow();
    }
}
