package org.seacairn.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.plan.SitingPlan.Display;

class ContourLevelsTest {

    @ParameterizedTest
    @CsvSource({"10, 150, METRIC, 20, 7", "60, 150, METRIC, 10, 8", "0.1, 5000, METRIC, 500, 9", "20, 200, US, 50, 12",
        "61, 62.9, METRIC, 1, 1", "30, 30, METRIC, 1, 0", "-40, 100, METRIC, 10, 10"})
    void theIntervalIsRoundAndTheLinesAreFew(float least, float most, Display display, double interval, int lines) {
        ContourLevels levels = ContourLevels.of(new float[] {least, Float.NaN, most}, display);
        assertEquals(interval, levels.interval());
        assertEquals(lines, levels.depths().size());
    }

    @Test
    void depthsAreMultiplesOfTheIntervalAndEverySecondIsLabelled() {
        ContourLevels levels = ContourLevels.of(new float[] {62, 118}, Display.METRIC);
        assertEquals(List.of(65.0, 70.0, 75.0, 80.0, 85.0, 90.0, 95.0, 100.0, 105.0, 110.0, 115.0), levels.depths());
        assertTrue(levels.isLabelled(70));
        assertFalse(levels.isLabelled(65));
    }

    @Test
    void withoutADepthThereAreNone() {
        assertEquals(List.of(), ContourLevels.of(new float[] {Float.NaN}, Display.US).depths());
    }
}
