package org.seacairn.export;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as text: a fixed count of decimals, a point, no exponent, no minus before a zero. */
final class Decimals {
    /** 1e-9 degree is 0.11 mm on the ground, so rounding moves a site by no more than 0.06 mm. */
    static final int SITE_DEG = 9;
    /** 1e-8 degree is 1.1 mm on the ground. */
    static final int OUTLINE_DEG = 8;
    /** Millimetres, and thousandths of a degree of slope. */
    static final int METRES = 3;
    static final int SCORE = 6;
    /** A tenth of a metre: finer than any barge keeps its place. */
    static final int RELEASE_DEG = 6;

    private Decimals() {}

    /** A figure without the digits that it does not deserve; what is not finite stays. */
    static double rounded(double value, int decimals) {
        return Double.isFinite(value) ? Double.parseDouble(text(value, decimals)) : value;
    }

    /** @param value a finite number */
    static String text(double value, int decimals) {
        return new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
    }
}
