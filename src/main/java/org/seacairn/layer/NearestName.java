package org.seacairn.layer;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Which name was perhaps meant by a misspelt one. */
final class NearestName {
    private NearestName() {}

    /** The name with the fewest edits (Levenshtein 1966), if at most a third of its letters differ. */
    static Optional<String> to(String misspelt, List<String> names) {
        return names.stream()
                .filter(name -> 3 * edits(misspelt, name) <= Math.max(misspelt.length(), name.length()))
                .min(Comparator.comparingInt(name -> edits(misspelt, name)));
    }

    private static int edits(String a, String b) {
        String from = a.toLowerCase(Locale.ROOT);
        String to = b.toLowerCase(Locale.ROOT);
        int[] row = new int[to.length() + 1];
        for (int j = 0; j < row.length; j++) {
            row[j] = j;
        }
        for (int i = 1; i <= from.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                int replaced = diagonal + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(replaced, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[to.length()];
    }
}
