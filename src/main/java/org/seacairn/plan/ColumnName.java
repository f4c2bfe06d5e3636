package org.seacairn.plan;

import java.text.Normalizer;
import java.util.Locale;

/** How the label of a layer stands in the name of a column, a table or a file. */
public final class ColumnName {
    private ColumnName() {}

    /**
     * Lower case, with every run of characters that are neither letters nor digits made one
     * {@code _}: {@code Shipping lanes (US)} becomes {@code shipping_lanes_us}. Labels that collide
     * are errors of the plan, so within one plan the result is unique; it may not be empty there.
     */
    public static String of(String label) {
        return Normalizer.normalize(label, Normalizer.Form.NFC)
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{M}\\p{N}]+", "_")
                .replaceAll("^_|_$", "");
    }
}
