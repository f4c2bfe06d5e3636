package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.cli.TinyScene.Outcome;

/**
 * What {@code rank} chooses, {@code review} with the same plan does not fail: two ways to the same rules.
 * {@code -Drank-review.scenes=500} tries more scenes, {@code -Drank-review.first=17} begins at another seed.
 */
class RankThenReviewTest {
    private static final int SCENES = Integer.getInteger("rank-review.scenes", 40);
    private static final int FIRST = Integer.getInteger("rank-review.first", 1);

    @TempDir
    Path folder;

    @Test
    void noChosenSiteFails() throws IOException {
        List<String> failures = new ArrayList<>();
        int sites = 0;
        int marginal = 0;
        for (long seed = FIRST; seed < FIRST + SCENES; seed++) {
            Path own = Files.createDirectory(folder.resolve("scene-" + seed));
            ReviewScene scene = new ReviewScene(seed, own);
            Outcome ranked = TinyScene.run("rank", scene.plan().toString(), "--out", own.resolve("ranked").toString(), "--threads", "1");
            if (ranked.status() > 1) {
                // A grid without any depth cannot be ranked.
                failures.add("seed " + seed + ": rank ends with " + ranked.status() + ": " + ranked.err().lines()
                        .filter(line -> !line.contains("warning")).findFirst().orElse(""));
            }
            if (ranked.status() != 0) {
                continue;
            }
            Outcome reviewed = TinyScene.run("review", scene.plan().toString(), own.resolve("ranked/sites.csv").toString(),
                    "--out", own.resolve("reviewed").toString(), "--threads", "1");
            assertTrue(reviewed.status() <= 1, () -> "status " + reviewed.status() + ": " + reviewed.err());
            ReviewTable table = new ReviewTable(own.resolve("reviewed/review.csv"));
            sites += table.records.stream().map(record -> record.get("site")).distinct().count();
            marginal += table.count("marginal");
            for (CSVRecord record : table.records) {
                if (record.get("verdict").equals("fail")) {
                    failures.add("seed " + seed + ": " + record.toList());
                }
            }
        }
        assertEquals(List.of(), failures.subList(0, Math.min(30, failures.size())), failures.size() + " failures");
        assertTrue(sites > SCENES, "few sites were reviewed: " + sites + ", with " + marginal + " marginal rows");
    }
}
