package org.seacairn.place;

import java.util.Locale;
import org.seacairn.InputException;

/**
 * What a chain must keep to.
 *
 * @param leastM the least distance from one stone to the next along the chain; at least {@code apartM}
 * @param mostM the largest
 * @param apartM the least distance between any two modules
 */
public record Gaps(double leastM, double mostM, double apartM) {
    public Gaps {
        if (!(apartM >= 0 && leastM >= apartM && mostM < 100_000)) {
            throw new IllegalArgumentException("gaps of " + leastM + " to " + mostM + " m, " + apartM + " m apart");
        }
        if (!(mostM - leastM >= 0.01)) {
            throw new InputException(String.format(Locale.ROOT, "a gap of %.3f m to %.3f m leaves no room; the larger limit"
                    + " must be above the smaller, which is at least the distance that modules stand apart (%.3f m)", leastM, mostM, apartM));
        }
    }
}
