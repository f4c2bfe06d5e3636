package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.report.StyleSet;
import org.seacairn.Progress;

class ProgressLineTest {
    @TempDir Path folder;

    private final StringWriter printed = new StringWriter();
    private final ProgressLine line = new ProgressLine(new PrintWriter(printed), 80);

    /** What a terminal of 80 columns shows in its line after all that was printed; it must not scroll. */
    private String seen() {
        StringBuilder row = new StringBuilder();
        int column = 0;
        for (char c : printed.toString().toCharArray()) {
            if (c == '\r') {
                column = 0;
            } else {
                assertTrue(c >= ' ' && c <= '~', "a character that a terminal may not have: " + (int) c);
                row.setLength(Math.max(row.length(), column + 1));
                row.setCharAt(column++, c);
                assertTrue(column < 80, "the line runs over");
            }
        }
        return row.toString().stripTrailing();
    }

    private String drawn() {
        line.draw();
        return seen();
    }

    @Test
    void itShowsTheStageThatIsOn() {
        line.stage("layers");
        assertEquals("layers     0 s", drawn());
        line.stage("scoring");
        line.expect(200, "cells");
        line.done(50);
        line.done(50);
        assertTrue(drawn().matches("scoring    \\[#{10}\\.{10}]  50 %  .* cells/s"), seen());
    }

    @Test
    void ofALongerLineNothingIsLeftBehind() {
        line.stage("scoring");
        line.expect(10, "cells");
        drawn();
        line.stage("choosing");
        assertEquals("choosing   0 s", drawn());
    }

    @Test
    void aClosedLineIsBlankAndStaysSo() {
        line.stage("scoring");
        line.expect(10, "cells");
        drawn();
        line.close();
        assertEquals("", seen());
        assertTrue(printed.toString().endsWith("\r"), "what is printed next must begin at the left");
        int length = printed.toString().length();
        line.done(5);
        line.draw();
        line.close();
        assertEquals(length, printed.toString().length());
    }

    @Test
    void aLineThatWasNeverDrawnPrintsNothing() {
        line.stage("scoring");
        line.expect(10, "cells");
        line.done(10);
        line.close();
        assertEquals("", printed.toString());
    }

    @ParameterizedTest
    @CsvSource(value = {"120, 120", "-, 80", "'', 80", "0, 80", "wide, 80", "-5, 80", "7, 80", "99999, 80"}, nullValues = "-")
    void columnsOfTheTerminal(String columns, int width) {
        assertEquals(width, ProgressLine.width(columns));
    }

    @Test
    void manyThreadsCountTogether() {
        line.stage("scoring");
        line.expect(0, "cells");
        IntStream.range(0, 123_000).parallel().forEach(i -> line.done(1));
        assertTrue(drawn().startsWith("scoring    123 thousand cells, "), seen());
    }

    @Test
    void withoutATerminalNobodyLooks() {
        // Surefire gives its tests no terminal.
        Progress[] given = new Progress[1];
        assertEquals("done", ProgressLine.over(false, progress -> {
            given[0] = progress;
            return "done";
        }));
        assertSame(Progress.NONE, given[0]);
    }

    @Test
    void itShowsTheStagesOfARunAndChangesNothing() throws Exception {
        TinyScene scene = new TinyScene(folder);
        assertEquals("", scene.rank().err().replaceAll("(?m)^seacairn: warning: .*\n", ""));
        Map<String, String> unseen = new TreeMap<>(TinyScene.bytes(scene.path("plan-out")));
        List<String> told = new ArrayList<>();
        Progress teller = new Progress() {
            @Override
            public void stage(String name) {
                line.stage(name);
                line.draw();
                told.add(name);
            }

            @Override
            public void expect(long total, String unit) {
                line.expect(total, unit);
                line.draw();
                told.add(total + " " + unit);
            }

            @Override
            public void done(long more) {
                line.done(more);
            }
        };
        PlanInputs inputs = new PlanInputs(scene.path("plan.yaml"), false, scene.path("plan-out"), List.of());
        new RankRun(inputs, scene.path("plan-out"), 2, new ReportFiles(StyleSet.bundled(), false), false, teller).run();
        Map<String, String> seen = new TreeMap<>(TinyScene.bytes(scene.path("plan-out")));
        assertEquals(List.of("plan", "bathymetry", "layers", "scoring"), told.subList(0, 4));
        assertTrue(told.get(4).endsWith(" cells"), told.toString());
        assertTrue(told.containsAll(List.of("choosing", "checking", "buffers", "writing", "report")), told.toString());
        unseen.remove("run.json");
        seen.remove("run.json");
        assertEquals(unseen, seen);
        line.close();
        assertEquals("", seen());
    }
}
