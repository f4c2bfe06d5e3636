package org.seacairn.plan;

import java.util.Optional;
import org.seacairn.plan.Quantity.Kind;

/**
 * The units that a plan may be written in, each with its factor to the unit used inside (metre,
 * metre per second, degree, pascal, pascal per metre, kilogram, cubic metre, share of 1, cell) and
 * what the factor rests on.
 */
enum Unit {
    METRE("m", Kind.LENGTH, 1, Source.SI),
    KILOMETRE("km", Kind.LENGTH, 1000, Source.SI),
    CENTIMETRE("cm", Kind.LENGTH, 0.01, Source.SI),
    MILLIMETRE("mm", Kind.LENGTH, 0.001, Source.SI),
    FOOT("ft", Kind.LENGTH, 0.3048, Source.FOOT),
    US_SURVEY_FOOT("ft_us", Kind.LENGTH, 1200.0 / 3937, Source.FOOT),
    FATHOM("fathom", Kind.LENGTH, 1.8288, "six international feet"),
    NAUTICAL_MILE("nmi", Kind.LENGTH, 1852, Source.NAUTICAL_MILE),
    MILE("mi", Kind.LENGTH, 1609.344, "5280 international feet"),
    YARD("yd", Kind.LENGTH, 0.9144, Source.YARD_AND_POUND),

    METRE_PER_SECOND("m/s", Kind.SPEED, 1, Source.SI),
    KNOT("kn", Kind.SPEED, 1852.0 / 3600, Source.NAUTICAL_MILE),
    KILOMETRE_PER_HOUR("km/h", Kind.SPEED, 1 / 3.6, Source.SI),
    FOOT_PER_SECOND("ft/s", Kind.SPEED, 0.3048, Source.FOOT),

    DEGREE("deg", Kind.ANGLE, 1, Source.SI),
    RADIAN("rad", Kind.ANGLE, 180 / Math.PI, Source.SI),
    GRADE_PERCENT("%", Kind.SLOPE, Double.NaN, "rise over run: the arc tangent of a hundredth of it") {
        @Override
        double toSi(double value) {
            return Math.toDegrees(Math.atan(value / 100));
        }
    },

    PASCAL("Pa", Kind.PRESSURE, 1, Source.SI),
    KILOPASCAL("kPa", Kind.PRESSURE, 1000, Source.SI),
    PSF("psf", Kind.PRESSURE, Source.POUND_FORCE_PER_SQUARE_FOOT_PA, Source.POUND_FORCE),
    POUND_FORCE_PER_SQUARE_FOOT("lbf/ft2", Kind.PRESSURE, Source.POUND_FORCE_PER_SQUARE_FOOT_PA, Source.POUND_FORCE),
    PASCAL_PER_METRE("Pa/m", Kind.GRADIENT, 1, Source.SI),
    KILOPASCAL_PER_METRE("kPa/m", Kind.GRADIENT, 1000, Source.SI),

    KILOGRAM("kg", Kind.MASS, 1, Source.SI),
    TONNE("t", Kind.MASS, 1000, Source.SI),
    POUND("lb", Kind.MASS, 0.45359237, Source.YARD_AND_POUND),
    SHORT_TON("short_ton", Kind.MASS, 2000 * 0.45359237, "2000 lb"),
    LONG_TON("long_ton", Kind.MASS, 2240 * 0.45359237, "2240 lb"),

    CUBIC_METRE("m3", Kind.VOLUME, 1, Source.SI),
    CUBIC_FOOT("ft3", Kind.VOLUME, 0.3048 * 0.3048 * 0.3048, Source.FOOT),
    CUBIC_YARD("yd3", Kind.VOLUME, 0.9144 * 0.9144 * 0.9144, Source.YARD_AND_POUND),

    PERCENT("%", Kind.SHARE, 0.01, Source.SI),
    CELLS("cells", Kind.CELLS, 1, "cells of the working grid");

    /** What the factors rest on. */
    private static final class Source {
        static final String SI = "BIPM, The International System of Units, 9th edition";
        static final String FOOT = "85 FR 62698 (5 October 2020): 0.3048 m exactly; the US survey foot 1200/3937 m";
        static final String NAUTICAL_MILE = "1852 m exactly (Monaco 1929, US 1959); a knot is one an hour";
        static final String YARD_AND_POUND = "international yard and pound, 1959: 0.9144 m and 0.45359237 kg exactly";
        static final String POUND_FORCE = "a pound (1959) under 9.80665 m/s2 (CGPM 1901) on a square foot of 0.3048 m";
        static final double POUND_FORCE_PER_SQUARE_FOOT_PA = 0.45359237 * 9.80665 / (0.3048 * 0.3048);
    }

    private final String symbol;
    private final Kind kind;
    private final double factor;
    private final String source;

    Unit(String symbol, Kind kind, double factor, String source) {
        this.symbol = symbol;
        this.kind = kind;
        this.factor = factor;
        this.source = source;
    }

    String symbol() {
        return symbol;
    }

    Kind kind() {
        return kind;
    }

    /** What the factor rests on. */
    String source() {
        return source;
    }

    /** A value in this unit, in the unit used inside. */
    double toSi(double value) {
        return value * factor;
    }

    /** Whether a quantity of that kind may be written in this unit. */
    boolean fits(Kind wanted) {
        return kind == wanted || (wanted == Kind.SLOPE && kind == Kind.ANGLE) || (wanted == Kind.OFFSET && kind == Kind.LENGTH);
    }

    /** The unit with a symbol that fits a kind; empty if there is none. */
    static Optional<Unit> of(String symbol, Kind kind) {
        for (Unit unit : values()) {
            if (unit.symbol.equals(symbol) && unit.fits(kind)) {
                return Optional.of(unit);
            }
        }
        return Optional.empty();
    }

    /** The first unit with a symbol, whatever it measures; empty if there is none. */
    static Optional<Unit> of(String symbol) {
        for (Unit unit : values()) {
            if (unit.symbol.equals(symbol)) {
                return Optional.of(unit);
            }
        }
        return Optional.empty();
    }
}
