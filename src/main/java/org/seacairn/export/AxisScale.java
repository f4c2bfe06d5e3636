package org.seacairn.export;

import java.util.ArrayList;
import java.util.List;

/**
 * An axis from one round number to another, with ticks at the multiples of 1, 2 or 5 times a power of ten between them.
 *
 * @param first multiple of the step at which it starts
 * @param last multiple of the step at which it ends
 * @param mantissa of the step: 1, 2 or 5
 * @param exponent of the step
 */
record AxisScale(long first, long last, int mantissa, int exponent) {
    /** A range narrower than this share of its values is rounding and not a range. */
    private static final double NARROW = 1e-9;

    /** The axis that holds all values that are finite, with about so many steps; 0 to 1 where there is none. */
    static AxisScale of(double[] values, int steps) {
        double min = Double.POSITIVE_INFINITY;
        double max = Double.NEGATIVE_INFINITY;
        for (double value : values) {
            if (Double.isFinite(value)) {
                min = Math.min(min, value);
                max = Math.max(max, value);
            }
        }
        if (min > max || min == 0 && max == 0) {
            min = 0;
            max = 1;
        } else if (max - min <= NARROW * Math.max(Math.abs(min), Math.abs(max))) {
            min = Math.min(min, 0);
            max = Math.max(max, 0);
        }
        double rough = (max - min) / steps;
        int exponent = (int) Math.floor(Math.log10(rough));
        double share = rough / Math.pow(10, exponent);
        int mantissa = share <= 1 ? 1 : share <= 2 ? 2 : 5;
        if (share > 5) {
            mantissa = 1;
            exponent++;
        }
        double step = mantissa * Math.pow(10, exponent);
        // A value that rounding leaves beside a tick does not open another step.
        return new AxisScale((long) Math.floor(min / step + NARROW), (long) Math.ceil(max / step - NARROW), mantissa, exponent);
    }

    /** Multiples of the step, from the first to the last. */
    List<Long> ticks() {
        List<Long> ticks = new ArrayList<>();
        for (long tick = first; tick <= last; tick++) {
            ticks.add(tick);
        }
        return ticks;
    }

    String label(long tick) {
        return Decimals.text(value(tick), Math.max(0, -exponent));
    }

    double value(long tick) {
        // Dividing by a whole power of ten rounds once, where multiplying by 0.1 would twice.
        return exponent < 0 ? tick * mantissa / Math.pow(10, -exponent) : tick * mantissa * Math.pow(10, exponent);
    }

    /** Where a value lies along the axis, 0 at its start and 1 at its end. */
    double along(double value) {
        return (value - value(first)) / (value(last) - value(first));
    }
}
