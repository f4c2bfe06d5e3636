package org.seacairn.export;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** Column names made from the labels of a plan. */
public final class ColumnName {
    private static final Pattern OTHER = Pattern.compile("[^\\p{L}\\p{M}\\p{N}]+");
    private static final Pattern ENDS = Pattern.compile("^_+|_+$");

    private ColumnName() {}

    /**
     * The label in lower case, each run of characters that are neither letters nor digits replaced by
     * one {@code _}: {@code Shipping lanes (N-S)} becomes {@code shipping_lanes_n_s}.
     */
    public static String of(String label) {
        String plain = Normalizer.normalize(label, Normalizer.Form.NFC).toLowerCase(Locale.ROOT);
        String name = ENDS.matcher(OTHER.matcher(plain).replaceAll("_")).replaceAll("");
        return name.isEmpty() ? "unnamed" : name;
    }

    /**
     * A name for each label, in order. Labels that come to the same name, or to one that is taken
     * already, are numbered: {@code lanes}, {@code lanes_2}.
     */
    static List<String> distinct(List<String> labels, Set<String> taken) {
        Set<String> used = new HashSet<>(taken);
        List<String> names = new ArrayList<>();
        for (String label : labels) {
            String name = of(label);
            String free = name;
            for (int i = 2; !used.add(free); i++) {
                free = name + "_" + i;
            }
            names.add(free);
        }
        return names;
    }
}
