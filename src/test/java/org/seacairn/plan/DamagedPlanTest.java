package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.InputException;

/**
 * Plans and module files damaged at random are read or refused; nothing else may come of them. More with
 * {@code -Dseacairn.damaged.draws=20000}; others with {@code -Dseacairn.damaged.seed=}.
 */
class DamagedPlanTest {
    private static final long SEED = Long.getLong("seacairn.damaged.seed", 20260101);
    private static final int DRAWS = Integer.getInteger("seacairn.damaged.draws", 250);
    private static final long MOST_NANOS = 10_000_000_000L;
    private static final String PIECES = "{}[]:,-#&*!|>'\"%@` \n\t0159.eabm~/\\é\u2028";

    @TempDir
    private Path folder;

    @Test
    void everyDamagedPlanIsReadOrRefusedWithALine() {
        PlanOnDisk disk = new PlanOnDisk(folder);
        // Without the CRS: damaged codes would only try the EPSG data set, slowly.
        String whole = PlanOnDisk.WHOLE.replace("crs: EPSG:32617\n", "");
        Random random = new Random(SEED);
        int read = 0;
        for (int draw = 0; draw < DRAWS; draw++) {
            String plan = random.nextBoolean() ? damagedText(whole, random) : damagedLines(whole, random);
            disk.write("module.yaml", draw % 3 == 0 ? damagedText(PlanOnDisk.MODULE, random) : PlanOnDisk.MODULE);
            disk.write("current.csv", draw % 3 == 1 ? damagedText(PlanOnDisk.CURRENT, random) : PlanOnDisk.CURRENT);
            long start = System.nanoTime();
            try {
                disk.read(plan);
                read++;
            } catch (InputException e) {
                for (String problem : e.problems()) {
                    assertTrue(problem.matches("[a-z-]+\\.[a-z]+(, line [0-9]+)?: .+"),
                            "seed " + SEED + ", draw " + draw + ": " + problem);
                }
            } catch (RuntimeException | Error e) {
                fail("seed " + SEED + ", draw " + draw + ":\n" + plan, e);
            }
            assertTrue(System.nanoTime() - start < MOST_NANOS, "seed " + SEED + ", draw " + draw + " took too long");
        }
        assertTrue(read > DRAWS / 100 && read < DRAWS / 2, "read " + read + " of " + DRAWS);
    }

    private static String damagedText(String text, Random random) {
        StringBuilder damaged = new StringBuilder(text);
        for (int i = random.nextInt(4); i >= 0; i--) {
            int at = random.nextInt(damaged.length());
            String piece = PIECES.substring(random.nextInt(PIECES.length())).substring(0, 1);
            switch (random.nextInt(3)) {
                case 0 -> damaged.deleteCharAt(at);
                case 1 -> damaged.insert(at, piece);
                default -> damaged.replace(at, at + 1, piece);
            }
        }
        return damaged.toString();
    }

    private static String damagedLines(String text, Random random) {
        List<String> lines = new ArrayList<>(Arrays.asList(text.split("\n")));
        for (int i = random.nextInt(3); i >= 0; i--) {
            String moved = lines.remove(random.nextInt(lines.size()));
            switch (random.nextInt(3)) {
                case 0 -> lines.add(random.nextInt(lines.size()), moved);
                case 1 -> lines.add(random.nextInt(lines.size()), moved.replaceFirst(":.*", ":"));
                default -> { }
            }
        }
        return String.join("\n", lines);
    }
}
