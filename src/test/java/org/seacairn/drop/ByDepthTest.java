package org.seacairn.drop;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ByDepthTest {
    @ParameterizedTest
    @CsvSource({"0, 1", "0.25, 1.5", "17.3, 35.6", "99.9, 200.8", "100.2, 201.4", "100.3, 201.6", "400, 201.6", "-5, 1"})
    void aStraightLineIsExactDownToADepthThatIsNoWholeStep(double depthM, double expected) {
        assertEquals(expected, ByDepth.of(100.3, d -> 1 + 2 * d).at(depthM), 1e-12);
    }

    @Test
    void ofOneDepthItIsAConstant() {
        assertEquals(7, ByDepth.of(0, d -> 7).at(0));
        assertEquals(7, ByDepth.of(0, d -> 7).at(60));
        assertEquals(3.5, ByDepth.of(0.3, d -> 3 + d / 0.3).at(0.15), 1e-12);
    }

    @Test
    void noDepthHasNoValue() {
        assertEquals(Double.NaN, ByDepth.of(10, d -> d).at(Double.NaN));
    }

    @Test
    void whatNeverFallsKeepsTheMostSoFar() {
        ByDepth raised = ByDepth.of(10, d -> Math.abs(d - 4)).neverFalling();
        assertEquals(4, raised.at(0));
        assertEquals(4, raised.at(4));
        assertEquals(4, raised.at(8));
        assertEquals(6, raised.at(10));
    }

    @Test
    void endlessEverywhereIsEndlessBetweenTheDepthsOfTheTable() {
        ByDepth endless = ByDepth.of(10, depthM -> depthM < 3 ? 1 : Double.POSITIVE_INFINITY);
        assertEquals(1, endless.at(1.2));
        assertEquals(Double.POSITIVE_INFINITY, endless.at(2.9));
        assertEquals(Double.POSITIVE_INFINITY, endless.at(7.3));
    }
}
