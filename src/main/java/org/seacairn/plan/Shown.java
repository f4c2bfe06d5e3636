package org.seacairn.plan;

import java.math.BigDecimal;
import java.math.MathContext;

/** How numbers stand in messages and warnings: no more digits than a reader needs, never an exponent. */
final class Shown {
    private static final MathContext DIGITS = new MathContext(6);

    private Shown() {}

    /** Six significant digits without zeros at the end. */
    static String number(double number) {
        return Double.isFinite(number)
                ? new BigDecimal(number).round(DIGITS).stripTrailingZeros().toPlainString() : String.valueOf(number);
    }

    static String metres(double metres) {
        return number(metres) + " m";
    }
}
