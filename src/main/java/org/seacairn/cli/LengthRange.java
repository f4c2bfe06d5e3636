package org.seacairn.cli;

import java.util.Locale;
import org.seacairn.InputException;
import org.seacairn.plan.Quantity;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.Shown;

/** Two lengths in metres, the smaller first. */
record LengthRange(double leastM, double mostM) {
    /** Such a range would make no layout on a working grid. */
    private static final double FAR_M = 100_000;

    /**
     * Reads {@code 120 m to 250 m}.
     *
     * @param option that the text belongs to, for messages
     * @throws InputException if it is no range of two lengths with units, rising, below 100 km
     */
    static LengthRange of(String option, String text) {
        String met = option + " is " + Shown.quoted(text);
        String[] ends = text.strip().split("\\s+(?i:to)\\s+", -1);
        if (ends.length != 2) {
            throw new InputException(met + "; write two lengths, for example \"120 m to 250 m\"");
        }
        double least = Quantity.si(option, ends[0], Kind.LENGTH);
        double most = Quantity.si(option, ends[1], Kind.LENGTH);
        if (!(least < most)) {
            throw new InputException(met + "; the second length must be the larger");
        }
        requireNear(met, most);
        return new LengthRange(least, most);
    }

    /** @param met the option and what was written, the beginning of the message */
    static void requireNear(String met, double lengthM) {
        if (lengthM >= FAR_M) {
            throw new InputException(met + String.format(Locale.ROOT, ", which reaches too far; stay below %.0f km", FAR_M / 1000));
        }
    }
}
