package org.seacairn.drop;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.apache.commons.math3.special.Gamma;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OffsetCircleTest {
    /** The same share as a Poisson-weighted sum of chi-squared shares (noncentral chi-squared of two degrees of freedom). */
    private static double bySeries(double radius, double bias) {
        double mean = bias * bias / 2;
        double sum = 0;
        for (int j = 0; j < 400; j++) {
            sum += Math.exp(j * Math.log(mean) - mean - Gamma.logGamma(j + 1)) * Gamma.regularizedGammaP(j + 1, radius * radius / 2);
        }
        return sum;
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-3, 0.3, 1, 2.5, 8, 14})
    void holds95PercentAboutATargetBesideTheMiddle(double bias) {
        double radius = OffsetCircle.radius95M(bias * 7, 7) / 7;
        assertEquals(0.95, bySeries(radius, bias), 1e-7);
        assertEquals(bySeries(radius / 2, bias), OffsetCircle.share(radius / 2, bias), 1e-9);
    }

    @Test
    void isTheCircleOfTheScatterWithoutABias() {
        assertEquals(2.447747, OffsetCircle.radius95M(0, 1), 1e-6);
        assertEquals(1 - Math.exp(-0.5), OffsetCircle.share(1, 0), 1e-12);
    }

    /** From afar the circle is a straight line: bias and 1.6449 deviations. */
    @Test
    void isAHalfPlaneFarAway() {
        assertEquals(1e5 + 1.644854, OffsetCircle.radius95M(1e5, 1), 1e-5);
    }
}
