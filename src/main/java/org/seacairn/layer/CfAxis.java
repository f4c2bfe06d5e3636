package org.seacairn.layer;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Path;
import org.seacairn.InputException;

/**
 * A coordinate variable of a grid, whose numbers are the centres of equal cells.
 *
 * @param first centre of the first cell
 * @param step from one centre to the next, negative where they fall
 */
record CfAxis(double first, double step, int count) {
    /** Coordinates may be off the even spacing by this share of a cell. */
    private static final double TOLERANCE_STEPS = 1e-3;
    private static final double MOST_ROUNDING_STEPS = 0.1;

    /** @throws InputException if the coordinates are not evenly spaced */
    static CfAxis of(Path file, NetCdfVariable variable) {
        double[] at;
        try {
            at = variable.array().get().list();
        } catch (IOException e) {
            throw VectorReader.problem(file, variable.name(), "the coordinates cannot be read (" + e.getMessage()
                    + "); the file is damaged or cut short, get it again", e);
        }
        double scale = variable.number("scale_factor", 1);
        double offset = variable.number("add_offset", 0);
        double step = (at[at.length - 1] - at[0]) / (at.length - 1);
        // Numbers of 4 bytes cannot tell positions finer than this.
        double rounding = variable.number().orElseThrow().bytes() == 4
                ? 2 * Math.ulp((float) Math.max(Math.abs(at[0]), Math.abs(at[at.length - 1]))) : 0;
        for (int i = 0; i < at.length; i++) {
            double off = Math.abs(at[i] - (at[0] + i * step));
            // Where rounding is no longer small beside a cell, nothing tells whether the cells are equal.
            double allowed = Math.max(TOLERANCE_STEPS, Math.min(MOST_ROUNDING_STEPS, rounding / Math.abs(step))) * Math.abs(step);
            if (step == 0 || !(off <= allowed)) {
                throw VectorReader.problem(file, variable.name() + "[" + i + "]", "is " + shown(at[i]) + " where an even spacing from "
                        + shown(at[0]) + " to " + shown(at[at.length - 1]) + " has " + shown(at[0] + i * step)
                        + "; resample it to a grid of equal cells first");
            }
        }
        return new CfAxis(at[0] * scale + offset, step * scale, at.length);
    }

    /** A coordinate to nine digits: a tenth of a metre in degrees. */
    static String shown(double number) {
        double size = Math.abs(number);
        return size >= 1e-6 && size < 1e9 ? new BigDecimal(number).round(new MathContext(9)).stripTrailingZeros().toPlainString()
                : size == 0 ? "0" : Double.toString(number);
    }

    /** This axis in another unit. */
    CfAxis times(double factor) {
        return new CfAxis(first * factor, step * factor, count);
    }

    double last() {
        return first + (count - 1) * step;
    }

    /** The outer edge of the cell at the lower end. */
    double low() {
        return Math.min(first, last()) - Math.abs(step) / 2;
    }

    /** The outer edge of the cell at the upper end. */
    double high() {
        return Math.max(first, last()) + Math.abs(step) / 2;
    }
}
