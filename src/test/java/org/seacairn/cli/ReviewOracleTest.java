package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.cli.PlainReview.Row;
import org.seacairn.cli.TinyScene.Outcome;

/**
 * The command {@code review}, from the files to {@code review.csv}, against a plain program written from its rules alone.
 * {@code -Dreview.scenes=5000} judges more scenes, {@code -Dreview.first=17} begins at another seed, {@code -Dreview.keep=DIR}
 * leaves the scenes and their reviews there.
 */
class ReviewOracleTest {
    private static final int SCENES = Integer.getInteger("review.scenes", 1000);
    private static final int FIRST = Integer.getInteger("review.first", 1);
    private static final int TOLD = 60;

    @TempDir
    Path folder;

    /** What the scenes held, so that the test cannot pass for want of cases. */
    private final Map<String, Integer> seen = new TreeMap<>();
    private final Map<String, Integer> wrong = new TreeMap<>();
    private final List<String> told = new ArrayList<>();

    @Test
    void everyRowIsThatOfThePlainProgram() throws IOException {
        Path kept = System.getProperty("review.keep") == null ? folder : Path.of(System.getProperty("review.keep"));
        for (long seed = FIRST; seed < FIRST + SCENES; seed++) {
            Path own = Files.createDirectories(kept.resolve("scene-" + seed));
            ReviewScene scene = new ReviewScene(seed, own);
            compare("seed " + seed, scene, new PlainReview(scene), own);
        }
        assertTrue(wrong.isEmpty(), () -> seen + "\n" + wrong + "\n" + String.join("\n", told));
        if (SCENES >= 1000) {
            enough();
        }
    }

    /** As a spreadsheet with its columns mixed up, or with the minus signs lost. */
    @Test
    void coordinatesTheWrongWayRoundAreRefusedAndNothingIsWritten() throws IOException {
        int swapped = 0;
        int unsigned = 0;
        for (long seed = 1; swapped < 12 || unsigned < 4; seed++) {
            Path own = Files.createDirectory(folder.resolve("wrong-" + seed));
            ReviewScene scene = new ReviewScene(seed, own);
            Path csv = own.resolve("proposal.csv");
            if (!Files.exists(csv) || !Files.readString(csv).startsWith("Name,Longitude") || scene.sites.stream().noneMatch(scene::isOnGrid)) {
                continue;
            }
            String right = Files.readString(csv);
            swapped += refused(own, scene, right.replaceAll("(?m)^(.*),(.*),(.*)$", "$1,$3,$2").replaceFirst(".*", "Name,Longitude,Latitude"));
            if (scene.zone == 17) {
                unsigned += refused(own, scene, right.replace(",-", ","));
            }
        }
    }

    private static int refused(Path own, ReviewScene scene, String proposal) throws IOException {
        Files.writeString(own.resolve("proposal.csv"), proposal);
        Outcome outcome = TinyScene.run("review", scene.plan().toString(), scene.proposal.get(0), "--out", own.resolve("out").toString());
        assertEquals(2, outcome.status(), () -> own + ": " + outcome.err() + scene.planText() + proposal);
        assertTrue(Files.notExists(own.resolve("out")), own.toString());
        return 1;
    }

    private void enough() {
        for (String rule : List.of("depth-least", "depth-greatest", "clearance-above", "height-share", "slope", "ruggedness", "bottom",
                "inside", "reefs", "keep-off:layer c", "apart", "overlap", "duplicate")) {
            assertTrue(seen.getOrDefault(rule, 0) > 100, "few rows of " + rule + ": " + seen);
        }
        for (String verdict : List.of("pass", "marginal", "fail", "no data")) {
            assertTrue(seen.get(verdict) > 500, "few verdicts " + verdict + ": " + seen);
        }
        assertTrue(seen.getOrDefault("refused", 0) < 0.02 * SCENES, "too many scenes refused: " + seen);
        // Rows about which the rules of the command leave more than one reading open, nearly all at the edge of the grid.
        assertTrue(seen.get("left aside") < 0.015 * seen.get("rows"), "too many rows left aside: " + seen);
        assertTrue(seen.get("in doubt") < 0.01 * seen.get("rows"), "too many verdicts left aside: " + seen);
    }

    private void compare(String name, ReviewScene scene, PlainReview plain, Path own) {
        List<String> args = new ArrayList<>(List.of("review", scene.plan().toString()));
        args.addAll(scene.proposal);
        args.addAll(List.of("--out", own.resolve("out").toString(), "--threads", "1"));
        boolean marginalOk = scene.random.nextInt(4) == 0;
        if (marginalOk) {
            args.add("--marginal-ok");
        }
        Outcome outcome = TinyScene.run(args.toArray(String[]::new));
        // Beside 180 degrees a site off the grid may lie on it with the other sign, and be refused as if that were meant.
        if (outcome.status() == 2 && scene.sites.stream().anyMatch(scene::isMirrored)) {
            count("refused");
            return;
        }
        if (outcome.status() > 1) {
            problem("refused", name + ": status " + outcome.status() + ": " + outcome.err().lines().filter(line -> !line.contains("warning"))
                    .findFirst().orElse(""));
            return;
        }
        ReviewTable table = new ReviewTable(own.resolve("out/review.csv"));
        assertEquals(ReviewTable.COLUMNS, table.header, name);
        List<String> expected = plain.rows.stream().map(row -> row.site.name() + " / " + row.rule).toList();
        if (!expected.equals(table.rowNames())) {
            problem("rows", name + ": rows " + table.rowNames() + " and not " + expected);
            return;
        }
        for (int i = 0; i < plain.rows.size(); i++) {
            compareRow(name, scene, plain.rows.get(i), table, i);
        }
        boolean all = table.count(marginalOk ? new String[] {"pass", "marginal"} : new String[] {"pass"}) == table.records.size();
        if (outcome.status() != (all ? 0 : 1)) {
            problem("status", name + ": status " + outcome.status() + " where " + (all ? "all pass" : "not all pass"));
        }
    }

    private void compareRow(String name, ReviewScene scene, Row row, ReviewTable table, int i) {
        for (String difference : ReviewTable.differences(table.records.get(i), row, scene.plane)) {
            problem(row.rule.replaceFirst(":.*", "") + (row.site.isPoint() ? "" : " of polygon") + ", " + difference.replaceFirst(":.*", ""),
                    name + ", row " + (i + 2) + ": " + difference + "\n    " + row + "\n    " + table.records.get(i).toList());
        }
        count("rows");
        count(row.rule);
        if (row.aside) {
            count("left aside");
        } else if (row.inDoubt) {
            count("in doubt");
        } else {
            count(row.verdict);
        }
    }

    private void count(String what) {
        seen.merge(what, 1, Integer::sum);
    }

    private void problem(String kind, String text) {
        if (wrong.merge(kind, 1, Integer::sum) <= 3 && told.size() < TOLD) {
            told.add("[" + kind + "] " + text);
        }
    }
}
