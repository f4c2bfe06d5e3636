package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** More kills with {@code -Dseacairn.kills=200}; others with {@code -Dseacairn.kills.seed=}. */
class KilledRankTest {
    private static final int KILLS = Integer.getInteger("seacairn.kills", 10);
    private static final long SEED = Long.getLong("seacairn.kills.seed", 20260101);

    @TempDir Path folder;

    /** {@code kill -9} at random moments of a run in a process of its own. */
    @Test
    @Tag("slow")
    void theFormerOutputSurvivesEveryKill() throws Exception {
        TinyScene scene = new TinyScene(folder);
        scene.plan("count: 4", "count: 3");
        assertEquals(0, scene.rank().status());
        Map<String, String> former = TinyScene.bytes(scene.path("plan-out"));
        scene.plan("count: 3", "count: 4");
        long start = System.nanoTime();
        assertEquals(0, start("--out", scene.path("unkilled").toString()).waitFor());
        long wholeRunNs = System.nanoTime() - start;

        Random random = new Random(SEED);
        int cutShort = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            Process run = start();
            TimeUnit.NANOSECONDS.sleep((long) (wholeRunNs * random.nextDouble()));
            run.destroyForcibly();
            if (run.waitFor() == 0) {
                former = TinyScene.bytes(scene.path("plan-out"));
                continue;
            }
            cutShort++;
            // Between its two last renames the former output stands beside its place; the next run puts it back.
            Path kept = Files.exists(scene.path("plan-out")) ? scene.path("plan-out") : scene.path(".plan-out.seacairn-former");
            Map<String, String> now = TinyScene.bytes(kept);
            assertTrue(now.equals(former) || sameSites(now, TinyScene.bytes(scene.path("unkilled"))),
                    "kill " + kill + " left neither the former output nor the new one");
            former = now;
        }
        assertTrue(cutShort > KILLS / 2, "only " + cutShort + " runs were killed in time");

        assertEquals(0, scene.rank("--quiet").status());
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(List.of(), left.filter(path -> path.getFileName().toString().contains("seacairn-")).toList());
        }
        assertEquals(TinyScene.bytes(scene.path("unkilled")).get("sites.csv"), scene.read("plan-out/sites.csv"));
    }

    /** Whole outputs of the same sites; run.json differs in its timings. */
    private static boolean sameSites(Map<String, String> a, Map<String, String> b) {
        return a.keySet().equals(b.keySet()) && a.get("sites.csv").equals(b.get("sites.csv"));
    }

    private Process start(String... options) throws IOException {
        ProcessBuilder run = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1", "-cp", System.getProperty("java.class.path"), Seacairn.class.getName(),
                "rank", folder.resolve("plan.yaml").toString());
        run.command().addAll(List.of(options));
        return run.redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
    }
}
