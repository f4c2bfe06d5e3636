package org.seacairn.export;

import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.function.ToLongFunction;

/**
 * One attribute of the rows of a table: the same name and value in every format.
 *
 * @param decimals of a real number where it is written as text; 0 for the other kinds
 * @param reader takes the value from a row; null where the row has none
 */
public record Column<T>(String name, Kind kind, int decimals, Function<T, Object> reader) {

    /** What a column holds. */
    public enum Kind { TEXT, INTEGER, REAL, BOOLEAN }

    /** Text; an empty one counts as missing. */
    public static <T> Column<T> text(String name, Function<T, String> reader) {
        return new Column<>(name, Kind.TEXT, 0, row -> {
            String text = reader.apply(row);
            return text.isEmpty() ? null : text;
        });
    }

    public static <T> Column<T> integer(String name, ToLongFunction<T> reader) {
        return new Column<>(name, Kind.INTEGER, 0, reader::applyAsLong);
    }

    /** A real number; one that is not finite counts as missing. */
    public static <T> Column<T> real(String name, int decimals, ToDoubleFunction<T> reader) {
        return new Column<>(name, Kind.REAL, decimals, row -> {
            double value = reader.applyAsDouble(row);
            return Double.isFinite(value) ? value : null;
        });
    }

    public static <T> Column<T> bool(String name, Predicate<T> reader) {
        return new Column<>(name, Kind.BOOLEAN, 0, reader::test);
    }

    /** String, Long, Double or Boolean, after {@link #kind}; null where the row has no value. */
    public Object value(T row) {
        return reader.apply(row);
    }

    /** The value as text; empty where the row has none. */
    public String text(T row) {
        Object value = value(row);
        if (value == null) {
            return "";
        }
        return kind == Kind.REAL ? Decimals.text((Double) value, decimals) : value.toString();
    }
}
