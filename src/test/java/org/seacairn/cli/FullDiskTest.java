package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.cli.TinyScene.Outcome;

/** A disk that fills up at random moments of a run; more of them with {@code -Dseacairn.fulldisk.draws=50}. Needs the right to mount. */
class FullDiskTest {
    private static final int DRAWS = Integer.getInteger("seacairn.fulldisk.draws", 1);
    private static final long SEED = Long.getLong("seacairn.fulldisk.seed", 20260101);
    private static final int PAGE_BYTES = 4096;
    /** Every output is larger. */
    private static final int FEWEST_PAGES = 60;

    @TempDir Path folder;
    private Path disk;

    @BeforeEach
    void mountSmallDisk() throws Exception {
        disk = Files.createDirectory(folder.resolve("disk"));
        assumeTrue(SystemProgram.done("mount", "-t", "tmpfs", "-o", "size=6m", "tmpfs", disk.toString()), "mounting a small disk is not permitted here");
    }

    @AfterEach
    void unmount() throws Exception {
        SystemProgram.done("umount", disk.toString());
    }

    @Test
    void theFormerOutputSurvives() throws IOException {
        ReportScene scene = new ReportScene(folder, UnaryOperator.identity());
        scene.page("rank");
        Path out = disk.resolve("out");
        assertEquals(0, TinyScene.run(scene.args("rank", out).toArray(String[]::new)).status());
        Map<String, String> former = TinyScene.bytes(out);
        Path ballast = disk.resolve("ballast");
        Random random = new Random(SEED);
        for (int draw = 0; draw < DRAWS; draw++) {
            for (String command : ReportScene.COMMANDS) {
                int freePages = random.nextInt(FEWEST_PAGES);
                Files.write(ballast, new byte[(int) (Files.getFileStore(disk).getUsableSpace() - (long) freePages * PAGE_BYTES)]);
                List<String> args = scene.args(command, out, draw % 2 == 0 ? new String[0] : new String[] {"--pdf"});
                Outcome outcome = TinyScene.run(args.toArray(String[]::new));
                String where = command + " with " + freePages + " pages free: ";
                assertEquals(2, outcome.status(), where + outcome.err());
                assertEquals("", outcome.out());
                assertTrue(outcome.err().matches("seacairn: cannot write [\\w.-]+: no space left on the disk; free some and run again\n"), where + outcome.err());
                assertEquals(former, TinyScene.bytes(out), where);
                assertEquals(List.of(ballast, out), entries(), where);
                Files.delete(ballast);
            }
        }
    }

    private List<Path> entries() throws IOException {
        try (Stream<Path> entries = Files.list(disk)) {
            return entries.sorted().toList();
        }
    }
}
