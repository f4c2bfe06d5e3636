package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.cli.TinyScene.Outcome;

/**
 * Every figure of plan, module and current in turn as small and as large as it can be written: a run is done, or refused with a line
 * that begins with a file; it is no fault of Seacairn's, and ends. All of them with {@code -Dseacairn.extremes=all}.
 */
class ExtremeFiguresTest {
    private static final boolean ALL = "all".equals(System.getProperty("seacairn.extremes"));
    private static final int SOME = 24;
    private static final long SEED = 4;
    private static final List<String> EXTREMES = List.of("0", "1e-300", "0.000001", "1000000", "1e12", "1e300");
    /** A number that is no part of a name. */
    private static final Pattern FIGURE = Pattern.compile("(?<![\\w.:-])\\d+(\\.\\d+)?(?![\\w.:/-])");

    /** A figure and what is put in its place. */
    private record Change(String file, int from, int to, String extreme) {}

    @TempDir
    Path folder;

    @Test
    void noFigureIsAFaultOfSeacairns() {
        TinyScene scene = DropBadInputTest.scene(folder);
        List<String> files = List.of("plan.yaml", "module.yaml", "current.csv");
        List<Change> changes = new ArrayList<>();
        for (String file : files) {
            Matcher figure = FIGURE.matcher(scene.read(file));
            while (figure.find()) {
                EXTREMES.forEach(extreme -> changes.add(new Change(file, figure.start(), figure.end(), extreme)));
            }
        }
        Collections.shuffle(changes, new Random(SEED));
        List<String> faults = new ArrayList<>();
        for (Change change : ALL ? changes : changes.subList(0, SOME)) {
            String whole = scene.read(change.file);
            scene.write(change.file, whole.substring(0, change.from) + change.extreme + whole.substring(change.to));
            for (String command : List.of("rank", "drop")) {
                String place = command + ", " + change.file + ": " + context(whole, change) + " as " + change.extreme;
                try {
                    Outcome outcome = assertTimeoutPreemptively(Duration.ofSeconds(60), () -> run(scene, command));
                    boolean told = outcome.status() < 2 || outcome.status() == 2
                            && outcome.err().lines().filter(line -> !line.startsWith("seacairn: warning: ")).allMatch(line -> line.matches("seacairn: [\\w.-]+(, [^:]+)?: .*"));
                    if (!told) {
                        faults.add(place + ": status " + outcome.status() + ", " + outcome.err());
                    }
                } catch (AssertionError e) {
                    faults.add(place + ": " + e.getMessage());
                }
            }
            scene.write(change.file, whole);
        }
        assertEquals("", String.join("\n", faults));
    }

    private static String context(String whole, Change change) {
        return whole.substring(whole.lastIndexOf('\n', change.from) + 1, Math.max(change.to, whole.indexOf('\n', change.to)));
    }

    private static Outcome run(TinyScene scene, String command) {
        String plan = scene.path("plan.yaml").toString();
        return command.equals("rank") ? TinyScene.run("rank", plan)
                : TinyScene.run("drop", plan, "--at=" + DropBadInputTest.middle(), "--draws=100");
    }
}
