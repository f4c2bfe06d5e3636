package org.seacairn.plan;

import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.seacairn.InputException;

/** Reads quantities such as {@code 0.5 nmi}: a number, a space if wanted, and a unit that fits. */
public final class Quantity {
    private static final Pattern NUMBER_AND_UNIT =
            Pattern.compile("(" + PlanNumber.NUMBER + ")\\s*([^0-9\\s.,+-].*)?");

    /**
     * What a quantity measures, and the range it may have, in the unit used inside. Where the range has no end, more than there can be is a slip
     * of a unit or a digit (half around the Earth, the speed of a storm, a ship), and would keep some reckonings from ending.
     */
    public enum Kind {
        /** Metres. */
        LENGTH("a length", "20", "m", 2.1e7, "0 or more (depths are positive down)"),
        /** Metres of a difference between two levels; positive or negative. Geoid heights stay within 110 m (from memory). */
        OFFSET("an offset", "-0.3", "m", -200, 200, "-200 m to 200 m"),
        /** Metres per second. */
        SPEED("a speed", "3.5", "kn", 100, "0 or more"),
        /** Degrees of a full turn. */
        ANGLE("an angle", "20", "deg", 360, "0 deg to 360 deg"),
        /** Degrees from level; written as an angle or as a grade in per cent. */
        SLOPE("a slope", "5", "deg", 90, "0 deg to 90 deg"),
        /** Pascals. */
        PRESSURE("a pressure", "4", "kPa", 1e9, "0 or more"),
        /** Pascals per metre. */
        GRADIENT("a gradient", "1.5", "kPa/m", 1e9, "0 or more"),
        /** Kilograms. */
        MASS("a mass", "8.5", "short_ton", 1e9, "0 or more"),
        /** Cubic metres. */
        VOLUME("a volume", "2.5", "m3", 1e6, "0 or more"),
        /** Cells of the working grid. */
        CELLS("a number of cells", "3", "cells", 1e6, "0 or more"),
        /** Share of 1; written bare or in per cent. */
        SHARE("a share", "0.5", "", 1, "0 to 1"),
        /** A coefficient or a factor of safety; written bare. */
        FACTOR("a factor", "1.5", "", 1e6, "0 or more"),
        /** Vector ruggedness measure; written bare. */
        RUGGEDNESS("a ruggedness", "0.02", "", 1, "0 to 1");

        private final String noun;
        private final String exampleNumber;
        private final String exampleUnit;
        private final double least;
        private final double most;
        private final String range;

        Kind(String noun, String exampleNumber, String exampleUnit, double most, String range) {
            this(noun, exampleNumber, exampleUnit, 0, most, range);
        }

        Kind(String noun, String exampleNumber, String exampleUnit, double least, double most, String range) {
            this.noun = noun;
            this.exampleNumber = exampleNumber;
            this.exampleUnit = exampleUnit;
            this.least = least;
            this.most = most;
            this.range = range;
        }

        private boolean mayBeBare() {
            return exampleUnit.isEmpty();
        }

        private String exampleWith(String number) {
            return "for example \"" + (number + " " + exampleUnit).strip() + "\"";
        }

        /** {@code a speed is written in m/s, kn, km/h, ft/s}. */
        private String howWritten() {
            String units = Arrays.stream(Unit.values()).filter(unit -> unit.fits(this)).map(Unit::symbol)
                    .collect(Collectors.joining(", "));
            String bare = mayBeBare() ? "as a number from " + range : "";
            String or = bare.isEmpty() || units.isEmpty() ? "" : " or ";
            return noun + " is written " + bare + or + (units.isEmpty() ? "" : "in " + units);
        }
    }

    private Quantity() {}

    /**
     * Reads a quantity.
     *
     * @param what what the quantity is called in a message, for example {@code gap-max}
     * @return the value in the unit that {@code kind} names, finite and in its range
     * @throws InputException if the text is no number, has no unit, a unit that does not fit, or is
     *     out of range; one sentence that begins with {@code what}
     */
    public static double si(String what, String text, Kind kind) {
        String met = what + " is " + Shown.quoted(text);
        Matcher parts = NUMBER_AND_UNIT.matcher(text.strip());
        if (!parts.matches()) {
            throw new InputException(met + "; write a number with a decimal point"
                    + (kind.mayBeBare() ? "" : " and a unit") + ", " + kind.exampleWith(kind.exampleNumber));
        }
        double number = Double.parseDouble(parts.group(1));
        double si = inside(met, number, parts.group(1), Optional.ofNullable(parts.group(2)), kind);
        if (!Double.isFinite(si) || si > kind.most && kind.range.startsWith("0 or more")) {
            throw new InputException(met + ", which is too large; check number and unit");
        }
        if (si < kind.least || si > kind.most) {
            throw new InputException(met + "; " + kind.noun + " is " + kind.range + " here");
        }
        return si + 0.0; // turns -0 into 0
    }

    private static double inside(String met, double number, String digits, Optional<String> symbol, Kind kind) {
        if (symbol.isEmpty()) {
            if (kind.mayBeBare()) {
                return number;
            }
            throw new InputException(met + "; write the unit, " + kind.exampleWith(digits));
        }
        Optional<Unit> unit = Unit.of(symbol.get(), kind);
        if (unit.isEmpty()) {
            String fault = Unit.of(symbol.get())
                    .map(other -> ", which is " + other.kind().noun)
                    .orElse(", but " + Shown.quoted(symbol.get()) + " is not a unit known here");
            throw new InputException(met + fault + "; " + kind.howWritten());
        }
        return unit.get().toSi(number);
    }
}
