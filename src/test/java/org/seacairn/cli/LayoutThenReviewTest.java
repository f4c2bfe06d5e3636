package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.cli.TinyScene.Outcome;

/**
* What {@code infill}, {@code ring} and {@code areas} choose in random scenes, {@code review} with the same plan does not fail,
* and none of them is ever at fault. {@code -Dlayout-review.scenes=300} tries more, {@code -Dlayout-review.first=17} begins at another seed.
*/
class LayoutThenReviewTest {
   private static final int SCENES = Integer.getInteger("layout-review.scenes", 15);
   private static final int FIRST = Integer.getInteger("layout-review.first", 1);

   @TempDir
   Path folder;
   private final List<String> failures = new ArrayList<>();
   private int chains;
   private int rings;
   private int areas;

   @Test
   void nothingChosenFails() throws IOException {
       for (long seed = FIRST; seed < FIRST + SCENES; seed++) {
           Path own = Files.createDirectory(folder.resolve("scene-" + seed));
           String plan = new ReviewScene(seed, own).plan().toString();
           List<String> reefs = reefs(plan, own);
           if (!reefs.isEmpty()) {
               rings += laid(seed, own, plan, "sites.csv", "ring", plan, "--around", reefs.get(0), "--radius", "60 m to 600 m", "--modules", "2");
           }
           if (reefs.size() > 1) {
               chains += laid(seed, own, plan, "sites.csv", "infill", plan, "--from", reefs.get(0), "--to", reefs.get(1),
                       "--gap", "40 m to 900 m", "--corridor", "800 m", "--modules", "2");
           }
           areas += laid(seed, own, plan, "areas.geojson", "areas", plan, "--size", "90 m x 60 m", "--turn", "any", "--count", "2");
       }
       assertEquals(List.of(), failures.subList(0, Math.min(20, failures.size())), failures.size() + " failures");
       String laid = chains + " chains, " + rings + " rings, " + areas + " scenes with areas";
       assertTrue(chains > 0 && rings > 0 && areas > 0, laid);
   }

   /** The names that a wrong one is answered with. */
   private static List<String> reefs(String plan, Path own) {
       String err = TinyScene.run("ring", plan, "--around", "no reef is called so", "--radius", "60 m to 600 m", "--modules", "2",
               "--out", own.resolve("none").toString()).err();
       return Pattern.compile("\"([^\"]*)\"").matcher(err.replaceFirst("(?s).*it has ", err.contains("it has ") ? "" : "none"))
               .results().map(m -> m.group(1)).distinct().toList();
   }

   /** 1 if it made a layout. */
   private int laid(long seed, Path own, String plan, String reviewed, String... args) {
       List<String> all = new ArrayList<>(List.of(args));
       all.addAll(List.of("--threads", "1", "--out", own.resolve(args[0]).toString()));
       Outcome outcome = TinyScene.run(all.toArray(String[]::new));
       if (outcome.status() == 3) {
           failures.add("seed " + seed + ": " + all + ": " + outcome.err());
       }
       if (outcome.status() != 0 || outcome.out().contains("none is needed")) {
           return 0;
       }
       Outcome judged = TinyScene.run("review", plan, own.resolve(args[0]).resolve(reviewed).toString(),
               "--out", own.resolve("reviewed").toString(), "--threads", "1");
       assertTrue(judged.status() <= 1, () -> "status " + judged.status() + ": " + judged.err());
       for (CSVRecord record : new ReviewTable(own.resolve("reviewed/review.csv")).records) {
           if (record.get("verdict").equals("fail")) {
               failures.add("seed " + seed + ": " + args[0] + ": " + record.toList());
           }
       }
       return 1;
   }
}
