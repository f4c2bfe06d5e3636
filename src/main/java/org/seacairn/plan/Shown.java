package org.seacairn.plan;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/** How what was met stands in messages and warnings: short, on one line, in plain digits. */
public final class Shown {
    private static final MathContext DIGITS = new MathContext(6);
    private static final int LONGEST = 60;
    /** From here on zeros would fill the line. */
    private static final double PLAIN_BELOW = 1e15;

    private Shown() {}

    /** A value met, in quotes and not too long to read. */
    public static String quoted(String text) {
        int[] characters = text.codePoints().limit(LONGEST + 1L).toArray();
        return characters.length <= LONGEST ? "\"" + printable(text) + "\""
                : "\"" + printable(new String(characters, 0, LONGEST - 3)) + "...\"";
    }

    /** The text with a question mark for whatever breaks the line or steers a terminal. */
    public static String printable(String text) {
        int[] characters = text.codePoints().map(c -> isUnprintable(c) ? '?' : c).toArray();
        return new String(characters, 0, characters.length);
    }

    /** Whether a character breaks the line, or steers a terminal or the direction of reading. */
    private static boolean isUnprintable(int codePoint) {
        return switch (Character.getType(codePoint)) {
            case Character.CONTROL, Character.FORMAT, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR,
                    Character.SURROGATE -> true;
            default -> false;
        };
    }

    /** Six significant digits without zeros at the end. */
    public static String number(double number) {
        if (!Double.isFinite(number)) {
            return String.valueOf(number);
        }
        BigDecimal rounded = new BigDecimal(number).round(DIGITS).stripTrailingZeros();
        return Math.abs(number) < PLAIN_BELOW ? rounded.toPlainString() : rounded.toString();
    }

    public static String metres(double metres) {
        return number(metres) + " m";
    }

    /** A share as {@code 3.2 %}; 0 % and 100 % only where they are exact. */
    public static String percent(long part, long whole) {
        if (part == 0 || part == whole) {
            return part == 0 ? "0 %" : "100 %";
        }
        double percent = 100.0 * part / whole;
        return percent < 0.05 ? "less than 0.1 %" : percent >= 99.95 ? "more than 99.9 %"
                : String.format(Locale.ROOT, "%.1f %%", percent);
    }
}
