package org.seacairn.review;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.review.Figures.Unit;

class FiguresTest {
    @ParameterizedTest
    @CsvSource({
        // required, measured, allowance, margin, verdict
        "500, 520, 20, 0, PASS",
        "500, 519.999, 20, -0.001, MARGINAL",
        "500, 500, 20, -20, MARGINAL",
        "500, 499.9996, 20, -20, MARGINAL",
        "500, 499.9994, 20, -20.001, FAIL",
        "500, 499.9996, 0, 0, PASS",
        "500, 499.999, 0, -0.001, FAIL",
        "0, 0, 0, 0, PASS",
        "0, -0.0004, 25, -25, MARGINAL",
        "0, -0.001, 25, -25.001, FAIL",
        "500, NaN, 20, NaN, NO_DATA"})
    void verdictIsThatOfTheRoundedFigures(double required, double measured, double allowance, double margin, Verdict verdict) {
        Figures figures = Figures.metresAtLeast(required, measured, allowance);
        assertEquals(margin, figures.margin());
        assertEquals(verdict, figures.verdict());
    }

    @ParameterizedTest
    @CsvSource({"5, 5.0004, 0, PASS", "5, 5.0006, -0.001, FAIL", "5, 0, 5, PASS"})
    void atMostIsMetFromBelow(double required, double measured, double margin, Verdict verdict) {
        Figures figures = new Figures(Unit.DEGREES, required, measured, 0, false);
        assertEquals(margin, figures.margin());
        assertEquals(verdict, figures.verdict());
    }
}
