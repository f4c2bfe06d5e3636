package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ProgressCountTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "0.6      | 0            | scoring    [....................]   0 %  0 cells/s",
        "1        | 2_500        | scoring    [....................]   0 %  2500 cells/s",
        "1        | 25_000_000   | scoring    [#####...............]  25 %  25.0 million cells/s",
        "20       | 25_000_000   | scoring    [#####...............]  25 %  1.3 million cells/s, 60 s left",
        "50       | 99_999_999   | scoring    [###################.]  99 %  2.0 million cells/s, 0 s left",
        "1000     | 50_000_000   | scoring    [##########..........]  50 %  50 thousand cells/s, 17 min left",
        "100      | 100_000_000  | scoring    [####################] 100 %  1.0 million cells/s, 0 s left",
        "100      | 100_000_001  | scoring    [####################] 100 %  1.0 million cells/s, 0 s left"})
    void whatIsCountedShowsBarAndRate(double seconds, String done, String shown) {
        assertEquals(shown, new ProgressCount("scoring", Long.parseLong(done.replace("_", "")), 100_000_000, "cells", seconds).text(79));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "4   | 40_000 | choosing   40 thousand cells, 10 thousand cells/s",
        "4   | 0      | choosing   0 cells, 0 cells/s",
        "0   | 0      | choosing   0 cells, 0 cells/s"})
    void whereNobodyKnowsTheTotalThereIsNoBar(double seconds, String done, String shown) {
        assertEquals(shown, new ProgressCount("choosing", Long.parseLong(done.replace("_", "")), 0, "cells", seconds).text(79));
    }

    @ParameterizedTest
    @CsvSource({"0, layers     0 s", "7.4, layers     7 s", "99, layers     99 s", "130, layers     2 min"})
    void whatIsNotCountedShowsItsTime(double seconds, String shown) {
        assertEquals(shown, new ProgressCount("layers", 0, 0, "", seconds).text(79));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "52 | scoring    [######......]  50 %  5 cells/s, 2 s left",
        "45 | scoring    [##...]  50 %  5 cells/s, 2 s left",
        "44 | scoring     50 %  5 cells/s, 2 s left",
        "16 | scoring     50 %",
        "9  | scoring"})
    void aNarrowTerminalCutsTheBarThenTheRest(int width, String shown) {
        assertEquals(shown, new ProgressCount("scoring", 10, 20, "cells", 2).text(width).stripTrailing());
    }

    @ParameterizedTest
    @ValueSource(longs = {0, 1, 999, 123_456, 1_000_000_000, Long.MAX_VALUE})
    void itNeverRunsOver(long done) {
        for (int width = 1; width < 120; width++) {
            String text = new ProgressCount("a stage with a long name", done, 1_000_000_000, "cells", 1e6).text(width);
            assertTrue(text.length() <= width, text);
        }
    }
}
