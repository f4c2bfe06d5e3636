package org.seacairn.cli;

import java.io.PrintWriter;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.LongAdder;
import java.util.function.Function;
import org.seacairn.Progress;

/** One line on a terminal: stage, bar, rate. It is drawn over itself, and gone without a trace once closed. */
final class ProgressLine implements Progress, AutoCloseable {
    /** A run that is through by then needs no line. */
    private static final long FIRST_MS = 500;
    private static final long EVERY_MS = 125;
    private static final int USUAL_WIDTH = 80;

    private final PrintWriter terminal;
    private final int width;
    private volatile Counting counting = new Counting("", 0, "");
    private int drawn;
    private boolean closed;

    /** What is being counted, from when on, and how many there are by now. */
    private record Counting(String stage, long total, String unit, long startNs, LongAdder done) {
        Counting(String stage, long total, String unit) {
            this(stage, total, unit, System.nanoTime(), new LongAdder());
        }
    }

    /** @param width columns of the terminal */
    ProgressLine(PrintWriter terminal, int width) {
        this.terminal = terminal;
        this.width = width;
    }

    /**
     * Does work under a progress line where a person looks on. The line goes to the console itself, which is there only
     * where standard input and output are a terminal, and so never into a file or pipe; of standard error Java cannot tell.
     *
     * @param quiet whether nobody wants to see it
     */
    static <T> T over(boolean quiet, Function<Progress, T> work) {
        // From Java 22 on the default console is there without a terminal too; this one is not.
        System.setProperty("jdk.console", "java.base");
        if (quiet || System.console() == null) {
            return work.apply(NONE);
        }
        ScheduledExecutorService pulse = Executors.newSingleThreadScheduledExecutor(task -> {
            Thread thread = new Thread(task, "seacairn-progress");
            thread.setDaemon(true);
            return thread;
        });
        try (ProgressLine line = new ProgressLine(System.console().writer(), width(System.getenv("COLUMNS")))) {
            Runtime.getRuntime().addShutdownHook(new Thread(line::close)); // A run that is interrupted leaves no line either.
            pulse.scheduleWithFixedDelay(line::draw, FIRST_MS, EVERY_MS, TimeUnit.MILLISECONDS);
            return work.apply(line);
        } finally {
            pulse.shutdownNow();
        }
    }

    static int width(String columns) {
        return columns != null && columns.matches("[1-9][0-9]{1,3}") ? Integer.parseInt(columns) : USUAL_WIDTH;
    }

    @Override
    public void stage(String name) {
        counting = new Counting(name, 0, "");
    }

    @Override
    public void expect(long total, String unit) {
        counting = new Counting(counting.stage, total, unit);
    }

    @Override
    public void done(long more) {
        counting.done.add(more);
    }

    synchronized void draw() {
        if (!closed) {
            Counting now = counting;
            // The last column stays free: some terminals go to the next line once it is filled.
            put(new ProgressCount(now.stage, now.done.sum(), now.total, now.unit, (System.nanoTime() - now.startNs) / 1e9).text(width - 1));
        }
    }

    @Override
    public synchronized void close() {
        if (!closed && drawn > 0) {
            put("");
            terminal.print('\r');
            terminal.flush();
        }
        closed = true;
    }

    private void put(String text) {
        terminal.print('\r' + text + " ".repeat(Math.max(0, drawn - text.length())));
        terminal.flush();
        drawn = text.length();
    }
}
