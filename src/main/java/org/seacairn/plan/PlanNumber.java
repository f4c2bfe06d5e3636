package org.seacairn.plan;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Numbers without a unit: weights, comparisons, coefficients. */
final class PlanNumber {
    /** Decimal point, no thousands separator, an exponent if wanted; no words for infinity or for no number. */
    static final String NUMBER = "[+-]?(?:[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?";

    private static final Pattern FRACTION = Pattern.compile("(" + NUMBER + ")(?:\\s*/\\s*(" + NUMBER + "))?");

    private PlanNumber() {}

    /** A number such as {@code 2.5}, finite; NaN if the text is none. */
    static double read(String text) {
        Matcher number = FRACTION.matcher(text);
        return number.matches() && number.group(2) == null ? finite(Double.parseDouble(number.group(1))) : Double.NaN;
    }

    /** As {@link #read}, or a fraction such as {@code 1/3}. */
    static double readFraction(String text) {
        Matcher number = FRACTION.matcher(text);
        if (!number.matches()) {
            return Double.NaN;
        }
        double over = number.group(2) == null ? 1 : Double.parseDouble(number.group(2));
        return finite(Double.parseDouble(number.group(1)) / over);
    }

    private static double finite(double number) {
        return Double.isFinite(number) ? number : Double.NaN;
    }
}
