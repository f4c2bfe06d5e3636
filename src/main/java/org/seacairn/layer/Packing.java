package org.seacairn.layer;

/**
 * From the number in a file to the value that it means, by the CF conventions 1.11, sections 2.5.1 and 8.1:
 * value = number x scale + offset; no-data and the valid range are told in the numbers as stored.
 *
 * @param missing numbers that mean no-data
 * @param least the least number that is a value
 * @param greatest the greatest number that is a value
 */
record Packing(double scale, double offset, double[] missing, double least, double greatest) {
    /** Numbers that are the values themselves. */
    static Packing plain(double... missing) {
        return new Packing(1, 0, missing, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    /** The value, or NaN for no-data. */
    float value(double number) {
        if (!(number >= least && number <= greatest)) {
            return Float.NaN;
        }
        for (double none : missing) {
            if (number == none) {
                return Float.NaN;
            }
        }
        float value = (float) (scale == 1 && offset == 0 ? number : number * scale + offset);
        return Float.isFinite(value) ? value : Float.NaN;
    }
}
