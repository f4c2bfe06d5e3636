package org.seacairn.drop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.plan.SitingPlan.CurrentLevel;

class FlowTest {
    /** North 1 m/s at 10 m, east 2 m/s at 30 m. */
    private static final Flow FLOW = Currents.levels(new CurrentLevel(10, 1, 0), new CurrentLevel(30, 2, 90));

    @ParameterizedTest
    @CsvSource({"-3, 0, 1", "0, 0, 1", "10, 0, 1", "20, 1, 0.5", "25, 1.5, 0.25", "30, 2, 0"})
    void componentsAreLinearBetweenLevels(double depthM, double east, double north) {
        assertEquals(east, FLOW.eastMPerS(depthM), 1e-12);
        assertEquals(north, FLOW.northMPerS(depthM), 1e-12);
        assertEquals(Math.hypot(east, north), FLOW.speedMPerS(depthM), 1e-12);
    }

    @Test
    void belowTheLastLevelNothingIsKnown() {
        assertEquals(30, FLOW.deepestM());
        assertEquals("depth 30.5 m, where the current is known down to 30.0 m",
                assertThrows(IllegalArgumentException.class, () -> FLOW.speedMPerS(30.5)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> FLOW.eastMPerS(Double.NaN));
    }

    @Test
    void turnedIsClockwise() {
        assertEquals(1, FLOW.turned(90).eastMPerS(0), 1e-12);
        assertEquals(-2, FLOW.turned(90).northMPerS(30), 1e-12);
    }

    @Test
    void fasterAddsToEachLevelAndNeverTurnsIt() {
        assertEquals(1.5, FLOW.faster(0.5).northMPerS(0), 1e-12);
        assertEquals(2.5, FLOW.faster(0.5).eastMPerS(30), 1e-12);
        assertEquals(0, FLOW.faster(-1.5).northMPerS(0), 1e-12);
        assertEquals(0.5, FLOW.faster(-1.5).eastMPerS(30), 1e-12);
        assertEquals(0.5, Currents.uniform(0, 90, 10).faster(0.5).eastMPerS(5), 1e-12);
    }

    @Test
    void scaledMultipliesEachLevel() {
        assertEquals(3, FLOW.scaled(1.5).speedMPerS(30), 1e-12);
    }
}
