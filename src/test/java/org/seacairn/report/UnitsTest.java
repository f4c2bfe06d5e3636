package org.seacairn.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.plan.SitingPlan.Display;

class UnitsTest {
    /** 0.3048 m a foot, 1852 m a nautical mile, both exact (see plan.Unit for their sources). */
    @ParameterizedTest
    @CsvSource({
        "US,     30.48,  100,  100.0,  100.0",
        "US,     -0.001, 0,    0.0,    -0.1",
        "US,     0.001,  0,    0.0,    0.0",
        "US,     NaN,    unknown, unknown, unknown",
        "METRIC, 0.06,   0,    0.1,    0.0",
        "METRIC, -0.04,  0,    0.0,    -0.1",
        "METRIC, 92.5,   93,   92.5,   92.5"})
    void lengthsAreWholeToATenthOrRoundedDown(Display display, double metres, String whole, String tenth, String down) {
        Units units = new Units(display);
        assertEquals(whole, units.length(metres));
        assertEquals(tenth, units.tenth(metres));
        assertEquals(down, units.down(metres));
    }

    /** A margin on the edge of a tenth must not fall by one for the rounding of the conversion. */
    @ParameterizedTest
    @CsvSource({"0.3", "1.1", "4.7", "100.0", "-0.7", "16568.1"})
    void roundingDownKeepsAWholeTenth(String feet) {
        assertEquals(feet, new Units(Display.US).down(Double.parseDouble(feet) * 0.3048));
    }

    @ParameterizedTest
    @CsvSource({"US, 3704, 2.00, 6859808, 2.00", "METRIC, 3704, 3.70, 2500000, 2.50"})
    void longWaysAndGround(Display display, double metres, String far, double squareMetres, String area) {
        assertEquals(far, new Units(display).far(metres));
        assertEquals(area, new Units(display).area(squareMetres));
    }
}
