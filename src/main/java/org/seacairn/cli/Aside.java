package org.seacairn.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Work done beside the main line of a command. Its results do not depend on when it is done. */
final class Aside implements AutoCloseable {
    private final ExecutorService pool;

    Aside(int threads) {
        this.pool = Executors.newFixedThreadPool(threads, task -> {
            Thread thread = new Thread(task, "seacairn-aside");
            thread.setDaemon(true);
            return thread;
        });
    }

    /** Begins a piece of work; ask {@link #result} for what came of it. */
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
                result(work);
            } catch (RuntimeException e) {
                failure = failure == null ? e : failure;
            }
        }
        if (failure != null) {
            throw failure;
        }
    }

    /** Waits for a piece of work and passes its failure on as it is. */
    static <T> T result(Future<T> begun) {
        try {
            return begun.get();
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

    @Override
    public void close() {
        pool.shutdownNow();
    }
}
