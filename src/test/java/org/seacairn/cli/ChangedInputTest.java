package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.cli.TinyScene.Outcome;

/** Files that change while a command is at work. */
class ChangedInputTest {
    private static final long POLL_NS = 500_000;

    @TempDir Path folder;

    @Test
    void everyCommandSaysSoAndLeavesTheFormerOutput() throws Exception {
        ReportScene scene = new ReportScene(folder, UnaryOperator.identity());
        scene.page("rank");
        Path old = scene.page("ring").getParent();
        Path out = folder.resolve("out");
        RunProcess.restore(old, out);
        Map<String, String> former = TinyScene.bytes(out);
        Path styles = Files.createDirectory(folder.resolve("styles"));
        Files.copy(old.resolve("styles/sites.sld"), styles.resolve("sites.sld"));
        Path landings = Files.writeString(folder.resolve("landings.csv"), LANDINGS);

        changed(scene, "rank", "depths.prj", out, former, "--styles", styles.toString());
        changed(scene, "rank", "styles/sites.sld", out, former, "--styles", styles.toString());
        changed(scene, "review", "proposal.csv", out, former);
        changed(scene, "infill", "current.csv", out, former);
        changed(scene, "ring", "module.yaml", out, former);
        changed(scene, "areas", "depths.asc", out, former);
        changed(scene, "drop", "rank-out/sites.csv", out, former);
        changed(scene, "drop", "landings.csv", out, former, "--landings", landings.toString());
    }

    private static final String LANDINGS = """
            planned_longitude,planned_latitude,surveyed_longitude,surveyed_latitude,depth_m
            -80.79,29.56,-80.7901,29.5601,80
            -80.79,29.56,-80.7899,29.5601,90
            -80.79,29.56,-80.7901,29.5599,85
            """;

    private void changed(ReportScene scene, String command, String name, Path out, Map<String, String> former, String... more) throws Exception {
        Path file = folder.resolve(name);
        Thread editor = new Thread(() -> touchDuringTheRun(out, file), "editor");
        editor.start();
        Outcome outcome = TinyScene.run(scene.args(command, out, more).toArray(String[]::new));
        editor.interrupt();
        editor.join();
        assertEquals(new Outcome(2, "", "seacairn: " + file.getFileName() + ": changed while the run was reading, so what it computed could mix"
                + " before and after; nothing was written, run again\n"), outcome, command);
        assertEquals(former, TinyScene.bytes(out));
        assertEquals(List.of(), RunProcess.leftBeside(out));
    }

    /** The same content again: nothing that a command reads can differ, so only the watch can tell. */
    private static void touchDuringTheRun(Path out, Path file) {
        try {
            byte[] content = Files.readAllBytes(file);
            while (RunProcess.leftBeside(out).isEmpty() && !Thread.currentThread().isInterrupted()) {
                LockSupport.parkNanos(POLL_NS);
            }
            Files.write(file, content);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
