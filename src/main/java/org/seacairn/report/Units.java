package org.seacairn.report;

import java.util.Locale;
import org.seacairn.plan.SitingPlan.Display;

/**
 * Figures as people read them, in the units of the plan's readers. A figure stands without its unit: that is in the
 * head of its column. What is not known is said in words.
 */
final class Units {
    /** The international foot. */
    private static final double METRES_PER_FOOT = 0.3048;
    private static final double METRES_PER_NAUTICAL_MILE = 1852;
    private static final double KG_PER_SHORT_TON = 2000 * 0.45359237;
    /** Far above the rounding of a conversion, and far below what is printed. */
    private static final double HAIR = 1e-6;
    static final String UNKNOWN = "unknown";

    private final boolean us;

    Units(Display display) {
        this.us = display == Display.US;
    }

    /** Unit of lengths on the ground and of depths. */
    String length() {
        return us ? "ft" : "m";
    }

    /** Unit of long ways. */
    String far() {
        return us ? "nmi" : "km";
    }

    String area() {
        return us ? "nmi²" : "km²";
    }

    /** A length or a depth, whole. */
    String length(double metres) {
        return number(0, lengthOf(metres));
    }

    /** A length to a tenth. */
    String tenth(double metres) {
        return number(1, lengthOf(metres));
    }

    /** A length to a tenth, rounded down: what is left over is never told larger than it is. */
    String down(double metres) {
        return number(1, Math.floor(lengthOf(metres) * 10 + HAIR) / 10);
    }

    String far(double metres) {
        return number(2, metres / (us ? METRES_PER_NAUTICAL_MILE : 1000));
    }

    String area(double squareMetres) {
        double side = us ? METRES_PER_NAUTICAL_MILE : 1000;
        return number(2, squareMetres / (side * side));
    }

    /** With its unit, for a sentence. */
    String lengthText(double metres) {
        return Double.isFinite(metres) ? length(metres) + " " + length() : UNKNOWN;
    }

    /** A speed with its unit. */
    String speedText(double mPerS) {
        return us ? number(0, mPerS / METRES_PER_FOOT) + " ft/s" : number(1, mPerS) + " m/s";
    }

    /** A mass with its unit. */
    String massText(double kg) {
        return us ? number(1, kg / KG_PER_SHORT_TON) + " short tons" : number(1, kg / 1000) + " t";
    }

    static String degrees(double degrees) {
        return number(1, degrees);
    }

    static String score(double score) {
        return number(3, score);
    }

    /** A share of 1 in percent, without the sign. */
    static String percent(double share) {
        return number(1, 100 * share);
    }

    /** So many decimals; no minus before a zero. */
    static String number(int decimals, double value) {
        if (!Double.isFinite(value)) {
            return UNKNOWN;
        }
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        return text.startsWith("-") && text.chars().allMatch(c -> c == '-' || c == '0' || c == '.') ? text.substring(1) : text;
    }

    private double lengthOf(double metres) {
        return us ? metres / METRES_PER_FOOT : metres;
    }
}
