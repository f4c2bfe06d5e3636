package org.seacairn.drop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class CurrentMomentTest {
    private static final CurrentMoment MODULE = new CurrentMoment(1.5, 0.6, 1.2, 0.6, 8.6, 1025);

    /** 1/2 x 1025 x 0.5^2 (1.5 x 0.3 + 1.2 x 4.6): the pole's drag acts at its middle. */
    @Test
    void takesAnEvenCurrentAtTheMiddleOfEachPart() {
        assertEquals(128.125 * (0.45 + 5.52), MODULE.aboutUndersideNm(s -> 0.5), 1e-10);
    }

    /** U = 0.1 s: base 1.5 (0.03)^2 0.3; pole 1.2/8 x 0.01 (8.6^4 - 0.6^4)/4. */
    @Test
    void isExactInACurrentThatGrowsWithHeight() {
        double expected = 512.5 * (1.5 * 0.0009 * 0.3 + 0.15 * 0.01 * (Math.pow(8.6, 4) - Math.pow(0.6, 4)) / 4);
        assertEquals(expected, MODULE.aboutUndersideNm(s -> 0.1 * s), 1e-12 * expected);
    }

    @Test
    void isZeroInStillWaterAndWithoutDrag() {
        assertEquals(0, MODULE.aboutUndersideNm(s -> 0));
        assertEquals(0, new CurrentMoment(0, 1, 0, 1, 1, 1025).aboutUndersideNm(s -> 2));
    }

    /** East and north each bend at 2.3 and 5.1 m, where the current also turns. */
    private static double bent(double s) {
        double east = s < 2.3 ? 0.1 + 0.2 * s : s < 5.1 ? 0.56 - 0.15 * (s - 2.3) : 0.14 + 0.3 * (s - 5.1);
        double north = s < 2.3 ? 0.3 - 0.1 * s : s < 5.1 ? 0.07 + 0.25 * (s - 2.3) : 0.77 - 0.05 * (s - 5.1);
        return Math.hypot(east, north);
    }

    private static double plain(DoubleUnaryOperator speed) {
        double sum = 0;
        int steps = 400_000;
        for (int i = 0; i < steps; i++) {
            double s = 0.6 + (i + 0.5) * 8 / steps;
            sum += Math.pow(speed.applyAsDouble(s), 2) * s * 8 / steps;
        }
        return 512.5 * (1.5 * Math.pow(speed.applyAsDouble(0.3), 2) * 0.3 + 0.15 * sum);
    }

    @Test
    void isExactWhereTheBendsAreTold() {
        double expected = plain(CurrentMomentTest::bent);
        assertEquals(expected, MODULE.aboutUndersideNm(CurrentMomentTest::bent, 5.1, 2.3, 40, 0.2), 1e-9 * expected);
    }

    /** Bends that are not told cost less than a thousandth, even one as sharp as a current that stops within a metre. */
    @Test
    void losesLittleWhereTheyAreNot() {
        double expected = plain(CurrentMomentTest::bent);
        double met = MODULE.aboutUndersideNm(CurrentMomentTest::bent);
        assertEquals(expected, met, 1e-4 * expected);
        DoubleUnaryOperator sharp = s -> Math.max(0, Math.min(1, 4.13 - s));
        assertEquals(plain(sharp), MODULE.aboutUndersideNm(sharp), 1e-3 * plain(sharp));
        assertTrue(Math.abs(met / expected - 1) > 1e-9, "the bends were told after all");
    }
}
