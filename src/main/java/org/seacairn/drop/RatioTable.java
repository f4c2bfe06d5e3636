package org.seacairn.drop;

/**
 * A coefficient tabulated by a ratio of lengths, as handbooks print it: a few ratios, and often the value of an
 * endless body. Linear in the logarithm of the ratio between two rows, in the inverse of the ratio on the way to
 * infinity; the first row's value below it, the last finite row's beyond where infinity is not tabulated.
 */
final class RatioTable {
    private final double[] ratios;
    private final double[] values;

    /** @param rows ratio, value, ratio, value, ...; ratios rise, the last may be infinite */
    RatioTable(double... rows) {
        ratios = new double[rows.length / 2];
        values = new double[rows.length / 2];
        for (int i = 0; i < ratios.length; i++) {
            ratios[i] = rows[2 * i];
            values[i] = rows[2 * i + 1];
        }
    }

    double at(double ratio) {
        int last = ratios.length - 1;
        if (ratio <= ratios[0]) {
            return values[0];
        }
        if (ratio >= ratios[last]) {
            return values[last];
        }
        int i = 1;
        while (ratio > ratios[i]) {
            i++;
        }
        double share = Double.isInfinite(ratios[i]) ? 1 - ratios[i - 1] / ratio
                : Math.log(ratio / ratios[i - 1]) / Math.log(ratios[i] / ratios[i - 1]);
        return values[i - 1] + share * (values[i] - values[i - 1]);
    }
}
