package org.seacairn.plan;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the known word that a misspelt one was meant to be. */
public final class Suggestion {
    /** One slip for every three letters: enough for a typing error, too few to turn "us" into "uk". */
    private static final int LETTERS_PER_SLIP = 3;

    /** Longer words are no misspelt names, and comparing them costs the product of the lengths. */
    private static final int LONGEST_WORD = 200;

    private Suggestion() {}

    /**
     * The known word nearest to the one met, upper and lower case taken as the same.
     *
     * @return the first of the nearest words in the order of {@code known}, or empty if none is near
     *     enough to have been meant
     */
    public static Optional<String> nearest(String met, Collection<String> known) {
        String nearest = null;
        int least = Integer.MAX_VALUE;
        for (String word : known) {
            int longer = Math.max(met.length(), word.length());
            int leastPossible = Math.abs(met.length() - word.length());
            if (longer > LONGEST_WORD || leastPossible * LETTERS_PER_SLIP > longer) {
                continue;
            }
            int slips = slips(met.toLowerCase(Locale.ROOT), word.toLowerCase(Locale.ROOT));
            if (slips < least && slips * LETTERS_PER_SLIP <= longer) {
                least = slips;
                nearest = word;
            }
        }
        return Optional.ofNullable(nearest);
    }

    /** The advice that ends a message: the nearest word, or all of them. */
    public static String advice(String met, Collection<String> known) {
        return nearest(met, known)
                .map(word -> "did you mean \"" + word + "\"?")
                .orElseGet(() -> "known here: " + String.join(", ", known));
    }

    /**
     * Optimal string alignment distance: the least number of letters put in, left out, replaced, or
     * exchanged with their neighbour (Damerau 1964), no stretch being edited twice.
     */
    static int slips(String a, String b) {
        int[] beforeLast = new int[b.length() + 1];
        int[] last = new int[b.length() + 1];
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            last[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int replaced = last[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(replaced, 1 + Math.min(last[j], row[j - 1]));
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    row[j] = Math.min(row[j], 1 + beforeLast[j - 2]);
                }
            }
            int[] spare = beforeLast;
            beforeLast = last;
            last = row;
            row = spare;
        }
        return last[b.length()];
    }
}
