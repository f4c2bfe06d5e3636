package org.seacairn.geodesy;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.seacairn.InputException;

/**
 * Latitudes and longitudes as people write them: decimal degrees ({@code -87.25}, {@code 87.25 W}),
 * degrees and decimal minutes ({@code 27 14.620 N}, {@code N27-14.620}), degrees, minutes and seconds
 * ({@code 27°14'37.2"N}, {@code -33 26 00}).
 *
 * <p>A minus sign holds for the whole text: {@code -33 26} is -(33 + 26/60) degrees. Only the last
 * number may have decimals, and a text with minutes needs a hemisphere or a sign, because without
 * either it cannot be told from its mirror image. Problems are thrown without a place ("what is wrong;
 * what to do"), which the reader of a file puts before them.
 */
public final class CoordinateText {
    /** What one unit of the last printed digit is: a ten-thousandth of a minute, 0.19 m on the ground. */
    private static final int UNITS_PER_MINUTE = 10_000;

    private static final int UNITS_PER_DEGREE = 60 * UNITS_PER_MINUTE;

    // Possessive, so that "271.5" is never taken apart to find minutes in it.
    private static final String NUMBER = "(\\d++(?:\\.\\d*+)?+|\\.\\d++)";
    private static final String AFTER_DEGREES = "(?:\\s*°\\s*-?|\\s*:\\s*|-|\\s+)";
    private static final String AFTER_MINUTES = "(?:\\s*'\\s*-?|\\s*:\\s*|-|\\s+)";
    private static final Pattern SHAPE = Pattern.compile("([NSEW])?\\s*([+-])?\\s*" + NUMBER
            + "(?:(?:\\s*°)?|" + AFTER_DEGREES + NUMBER
            + "(?:(?:\\s*')?|" + AFTER_MINUTES + NUMBER + "(?:\\s*\")?))"
            + "\\s*([NSEW])?");

    /** A small number as programs print it, for example {@code -8.7E-5}. */
    private static final Pattern SCIENTIFIC = Pattern.compile("[+-]?\\d(?:\\.\\d+)?E-\\d{1,2}");

    private CoordinateText() {}

    /**
     * Reads a latitude.
     *
     * @return degrees, -90..90, positive north
     * @throws InputException if the text is no latitude
     */
    public static double parseLatitude(String text) {
        return parse(text, "latitude", 'N', 'S', 90, 90);
    }

    /**
     * Reads a longitude. A plain number may also count eastward from 0 to 360.
     *
     * @return degrees as written, -180..360, positive east
     * @throws InputException if the text is no longitude
     */
    public static double parseLongitude(String text) {
        return parse(text, "longitude", 'E', 'W', 180, 360);
    }

    /** Degrees and decimal minutes, for example {@code 27 14.6200 N}; takes -90..90 degrees. */
    public static String formatLatitudeDdm(double degrees) {
        return format(degrees, 90, "N", "S");
    }

    /** Degrees and decimal minutes, for example {@code 87 12.3456 W}; takes -180..180 degrees. */
    public static String formatLongitudeDdm(double degrees) {
        return format(degrees, 180, "E", "W");
    }

    private static String format(double degrees, int limit, String positive, String negative) {
        if (!(Math.abs(degrees) <= limit)) {
            throw new IllegalArgumentException("degrees outside ±" + limit + ": " + degrees);
        }
        // Rounded as one whole number, so that 59.99996 minutes carry into the degrees.
        long units = Math.round(Math.abs(degrees) * UNITS_PER_DEGREE);
        long minutes = units % UNITS_PER_DEGREE / UNITS_PER_MINUTE;
        // Without String.format: a review of 100,000 sites writes millions of these.
        return units / UNITS_PER_DEGREE + " " + padded(minutes, 2) + "." + padded(units % UNITS_PER_MINUTE, 4) + " "
                + (degrees < 0 && units > 0 ? negative : positive);
    }

    private static String padded(long number, int digits) {
        String text = Long.toString(number);
        return "0".repeat(digits - text.length()) + text;
    }

    private static double parse(String text, String what, char positive, char negative, int limit, int unsignedLimit) {
        String plain = withPlainMarks(text);
        if (SCIENTIFIC.matcher(plain).matches()) {
            return Double.parseDouble(plain) + 0.0;
        }
        Matcher shape = SHAPE.matcher(plain);
        if (!shape.matches()) {
            throw problem(text, "is no " + what, "write it as 27.2437, 27 14.620 " + positive + " or 27 14 37.2 " + positive);
        }
        if (shape.group(1) != null && shape.group(6) != null) {
            throw problem(text, "has two hemispheres", "write " + positive + " or " + negative + " once");
        }
        String hemisphere = shape.group(1) != null ? shape.group(1) : shape.group(6);
        if (hemisphere != null && hemisphere.charAt(0) != positive && hemisphere.charAt(0) != negative) {
            throw problem(text, "is no " + what + " because of its " + hemisphere,
                    "write " + positive + " or " + negative + ", or check that the columns are not swapped");
        }
        String sign = shape.group(2);
        if (sign != null && hemisphere != null) {
            throw problem(text, "has both a sign and a hemisphere", "leave out one of them");
        }
        if (shape.group(4) != null && sign == null && hemisphere == null) {
            throw problem(text, "has minutes but neither hemisphere nor sign",
                    "write " + positive + " or " + negative + " after it");
        }
        double size = magnitude(text, shape);
        if (size > (sign == null && hemisphere == null ? unsignedLimit : limit)) {
            throw problem(text, "lies outside ±" + limit + " degrees",
                    "check the " + what + ", and that it is in degrees and not in metres");
        }
        boolean minus = "-".equals(sign) || hemisphere != null && hemisphere.charAt(0) == negative;
        return minus && size != 0 ? -size : size;
    }

    private static double magnitude(String text, Matcher shape) {
        String minutes = shape.group(4);
        String seconds = shape.group(5);
        if (minutes == null) {
            return Double.parseDouble(shape.group(3));
        }
        if (shape.group(3).indexOf('.') >= 0 || seconds != null && minutes.indexOf('.') >= 0) {
            throw problem(text, "has decimals before its last number", "write decimals in the last number only");
        }
        return Double.parseDouble(shape.group(3))
                + (sixtieth(text, "minutes", minutes) + (seconds == null ? 0 : sixtieth(text, "seconds", seconds) / 60)) / 60;
    }

    private static double sixtieth(String text, String what, String number) {
        double value = Double.parseDouble(number);
        if (value >= 60) {
            throw problem(text, "has " + number + " " + what, what + " run from 0 to below 60; check the value");
        }
        return value;
    }

    /** The same text with one kind of space, minus, degree, minute and second mark, in upper case. */
    private static String withPlainMarks(String text) {
        StringBuilder plain = new StringBuilder(text.length());
        text.chars().map(CoordinateText::plainMark).forEach(mark -> {
            char last = plain.isEmpty() ? ' ' : plain.charAt(plain.length() - 1);
            if (mark == '\'' && last == '\'') {
                plain.setCharAt(plain.length() - 1, '"');
            } else if (mark != ' ' || last != ' ') {
                plain.append((char) mark);
            }
        });
        return plain.toString().stripTrailing();
    }

    private static int plainMark(int mark) {
        return switch (mark) {
            case '\u00a0', '\u2007', '\u2009', '\u202f', '\t' -> ' ';
            case '\u2010', '\u2011', '\u2013', '\u2212' -> '-';
            case '\u00ba', '\u02da' -> '\u00b0';
            case '\u2032', '\u2018', '\u2019', '\u00b4', '`' -> '\'';
            case '\u2033', '\u201c', '\u201d' -> '"';
            default -> mark >= 'a' && mark <= 'z' ? mark - 'a' + 'A' : mark;
        };
    }

    private static InputException problem(String text, String wrong, String remedy) {
        String shown = text.length() <= 40 ? text : text.substring(0, 37) + "...";
        return new InputException("\"" + shown + "\" " + wrong + "; " + remedy);
    }
}
