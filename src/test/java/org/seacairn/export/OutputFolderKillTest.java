package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFolderKillTest {
    private static final int KILLS = 24;
    private static final long SEED = 20260101;

    @TempDir Path folder;

    /** {@code kill -9} at random moments: a whole output is there at once, and after the next run under its name. */
    @Test
    @Tag("slow")
    void aWholeOutputSurvivesEveryKill() throws Exception {
        Path target = folder.resolve("plan-out");
        Random random = new Random(SEED);
        for (int kill = 0; kill < KILLS; kill++) {
            Process process = KillLoop.start(target);
            assertEquals("ready", process.inputReader().readLine());
            TimeUnit.MICROSECONDS.sleep(random.nextInt(50_000));
            process.destroyForcibly().waitFor();

            Path former = folder.resolve(".plan-out.seacairn-former");
            String left = OutputFolderTest.generation(Files.exists(target) ? target : former);
            OutputFolder.stage(target).close();
            assertEquals(left, OutputFolderTest.generation(target), "kill " + kill);
            assertTrue(left.startsWith(process.pid() + "-"), left);
            try (Stream<Path> list = Files.list(folder)) {
                assertEquals(List.of(target), list.toList(), "kill " + kill);
            }
        }
    }
}
