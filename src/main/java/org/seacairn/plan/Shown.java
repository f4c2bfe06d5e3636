package org.seacairn.plan;

import java.math.BigDecimal;
import java.math.MathContext;

/** How what was met stands in messages and warnings: short, on one line, in plain digits. */
final class Shown {
    private static final MathContext DIGITS = new MathContext(6);
    private static final int LONGEST = 60;

    private Shown() {}

    /** A value met, in quotes and not too long to read. */
    static String quoted(String text) {
        int[] characters = text.codePoints().limit(LONGEST + 1L).toArray();
        return characters.length <= LONGEST ? "\"" + printable(text) + "\""
                : "\"" + printable(new String(characters, 0, LONGEST - 3)) + "...\"";
    }

    /** The text with a question mark for whatever breaks the line or steers a terminal. */
    static String printable(String text) {
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
    static String number(double number) {
        return Double.isFinite(number)
                ? new BigDecimal(number).round(DIGITS).stripTrailingZeros().toPlainString() : String.valueOf(number);
    }

    static String metres(double metres) {
        return number(metres) + " m";
    }
}
