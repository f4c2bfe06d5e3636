package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.plan.SitingPlan.Curve;

class CurveTest {
    @ParameterizedTest
    @CsvSource(textBlock = """
            -Infinity, 0
            59.9,      0
            60,        0
            65,        0.25
            70,        0.5
            80,        1
            100,       1
            120,       1
            135,       0.5
            150,       0
            151,       0
            Infinity,  0
            NaN,       NaN
            """)
    void risesStaysAndFalls(double x, double expected) {
        assertEquals(expected, new Curve(60, 80, 120, 150).at(x));
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            -1,    0
            0,     1
            2,     1
            3.5,   0.5
            5,     0
            """)
    void aCurveThatStartsAtItsBestHasNoRise(double x, double expected) {
        assertEquals(expected, new Curve(0, 0, 2, 5).at(x));
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            9.999,   0
            10,      1
            20,      1
            20.001,  0
            """)
    void equalCornersMakeSteps(double x, double expected) {
        assertEquals(expected, new Curve(10, 10, 20, 20).at(x));
    }

    @Test
    void aSinglePointIsABestOfOneValue() {
        Curve point = new Curve(7, 7, 7, 7);
        assertEquals(1, point.at(7));
        assertEquals(0, point.at(Math.nextUp(7.0)));
        assertEquals(0, point.at(Math.nextDown(7.0)));
    }

    @ParameterizedTest
    @CsvSource({"2,1,3,4", "1,3,2,4", "1,2,4,3", "NaN,1,2,3", "1,2,3,NaN"})
    void fallingCornersAreRefused(double a, double b, double c, double d) {
        IllegalArgumentException e = assertThrows(IllegalArgumentException.class, () -> new Curve(a, b, c, d));
        assertEquals("curve corners must not fall: " + a + ", " + b + ", " + c + ", " + d, e.getMessage());
    }
}
