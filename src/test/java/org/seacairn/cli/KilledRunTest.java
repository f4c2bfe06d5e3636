package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seacairn.export.OutputFolder;

/**
 * Runs in processes of their own that are ended at random moments. More kills with {@code -Dseacairn.kills=200}, others with
 * {@code -Dseacairn.kills.seed=}, of other commands with {@code -Dseacairn.kills.of=review,drop}.
 */
class KilledRunTest {
    private static final int KILLS = Integer.getInteger("seacairn.kills", 3);
    private static final long SEED = Long.getLong("seacairn.kills.seed", 20260101);
    static final List<String> COMMANDS = List.of(System.getProperty("seacairn.kills.of", "rank").split(","));
    /** Of every so many kills one comes as the output is about to be moved into place, and so long after that at most. */
    private static final int MOVES = 3;
    private static final int MOVE_US = 60_000;

    @TempDir Path folder;
    private ReportScene scene;
    private Path out;
    private Path log;
    private Path old;
    private Map<String, String> former;

    @BeforeEach
    void makeFormerOutput() throws IOException {
        scene = new ReportScene(folder, UnaryOperator.identity());
        out = folder.resolve("place/out");
        log = folder.resolve("log");
        scene.page("rank");
        // That of another command, so that it is told from what the runs write.
        old = scene.page("areas").getParent();
        former = RunProcess.output(old);
        RunProcess.restore(old, Files.createDirectories(out.getParent()).resolve("out"));
    }

    /** {@code kill -9}. */
    @ParameterizedTest
    @FieldSource("COMMANDS")
    @Tag("slow")
    void theFormerOutputSurvivesEveryKill(String command) throws Exception {
        List<String> args = scene.args(command, out);
        Path unkilled = folder.resolve("unkilled");
        long start = System.nanoTime();
        assertTrue(RunProcess.start(scene.args(command, unkilled), log).waitFor() <= 1, () -> read(log));
        long wholeRunNs = System.nanoTime() - start;
        Map<String, String> whole = RunProcess.output(unkilled);

        Random random = new Random(SEED);
        int cutShort = 0;
        int replaced = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            start = System.nanoTime();
            Process run = RunProcess.start(args, log);
            if (kill % MOVES == MOVES - 1) {
                awaitFile(run, "run.json");
                TimeUnit.MICROSECONDS.sleep(random.nextInt(MOVE_US));
            } else if (run.waitFor((long) (wholeRunNs * random.nextDouble()), TimeUnit.NANOSECONDS)) {
                wholeRunNs = System.nanoTime() - start; // The machine is less busy than it was.
            }
            run.destroyForcibly();
            boolean killed = run.waitFor() > 1;
            cutShort += killed ? 1 : 0;
            // Between its two last renames the former output stands beside its place; the next run puts it back.
            Path kept = Files.exists(out) ? out : out.resolveSibling(".out.seacairn-former");
            Map<String, String> now = RunProcess.output(kept);
            assertTrue(now.equals(former) && killed || now.equals(whole), "kill " + kill + " left neither the former output nor the new one");
            if (kill % 2 == 0) {
                // What any next run does first; the other kills leave it to the next one itself.
                OutputFolder.stage(out).close();
                assertEquals(now, RunProcess.output(out), "kill " + kill);
                assertEquals(List.of(), RunProcess.leftBeside(out), "kill " + kill);
            }
            if (now.equals(whole)) {
                replaced++;
                OutputFolder.stage(out).close();
                RunProcess.restore(old, out);
            }
        }
        System.out.printf(Locale.ROOT, "%s: %d kills, %d of them in time, %d after the new output was in place%n", command, KILLS, cutShort, replaced);
        assertTrue(cutShort > KILLS / 4, "only " + cutShort + " runs were killed in time");

        assertTrue(TinyScene.run(args.toArray(String[]::new)).status() <= 1);
        assertEquals(List.of(), RunProcess.leftBeside(out));
        assertEquals(whole, RunProcess.output(out));
    }

    /** Ctrl-C, and what a machine that shuts down sends. */
    @ParameterizedTest
    @ValueSource(strings = {"INT", "TERM"})
    @Tag("slow")
    void anInterruptedRunClearsUp(String signal) throws Exception {
        assumeFalse(System.getProperty("os.name").startsWith("Windows"), "signals are POSIX's");
        Random random = new Random(SEED);
        for (int i = 0; i < Math.max(1, KILLS / 20); i++) {
            Process run = RunProcess.start(scene.args("rank", out), log);
            // While it scores, and while it writes.
            awaitFile(run, random.nextBoolean() ? "score.tif" : "sites.csv");
            TimeUnit.MICROSECONDS.sleep(random.nextInt(MOVE_US));
            assertTrue(SystemProgram.done("kill", "-" + signal, Long.toString(run.pid())));
            int status = run.waitFor();
            assertEquals(List.of(), RunProcess.leftBeside(out));
            if (status > 1) {
                assertEquals(signal.equals("INT") ? 130 : 143, status);
                assertEquals(former, RunProcess.output(out));
                assertEquals("", read(log));
            } else {
                RunProcess.restore(old, out);
            }
        }
    }

    private void awaitFile(Process run, String file) throws Exception {
        while (run.isAlive() && !RunProcess.isWriting(out, file)) {
            TimeUnit.MICROSECONDS.sleep(200);
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            return e.toString();
        }
    }

    /** Two processes that start together: one whole output is there at the end, and who was turned away says so. */
    @ParameterizedTest
    @FieldSource("COMMANDS")
    @Tag("slow")
    void twoRunsIntoOneFolderNeverMix(String command) throws Exception {
        List<Map<String, String>> whole = List.of(RunProcess.output(scene.page("ring").getParent()), RunProcess.output(scene.page(command).getParent()));
        int turnedAway = 0;
        for (int i = 0; i < Math.max(1, KILLS / 10); i++) {
            Path otherLog = folder.resolve("other log");
            Process ring = RunProcess.start(scene.args("ring", out), log);
            Process other = RunProcess.start(scene.args(command, out), otherLog);
            boolean ringDone = ring.waitFor() <= 1;
            boolean otherDone = other.waitFor() <= 1;
            Map<String, String> now = RunProcess.output(out);
            assertTrue(ringDone && now.equals(whole.get(0)) || otherDone && now.equals(whole.get(1)), read(log) + read(otherLog));
            assertEquals(List.of(), RunProcess.leftBeside(out));
            String busy = "seacairn: out: another run is writing this folder; wait until it ends, or choose another output folder\n";
            assertEquals(ringDone ? "" : busy, read(log));
            assertEquals(otherDone ? "" : busy, read(otherLog));
            turnedAway += ringDone && otherDone ? 0 : 1;
            RunProcess.restore(old, out);
        }
        System.out.printf(Locale.ROOT, "ring and %s: %d of %d were turned away%n", command, turnedAway, Math.max(1, KILLS / 10));
    }
}
