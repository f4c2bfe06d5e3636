package org.seacairn.export;

import org.seacairn.drop.Standing;

/** In words, what the figures of a landing leave empty. */
final class StandingNote {
    private StandingNote() {}

    /** Empty text where every figure is there. */
    static String of(Standing standing) {
        if (Double.isNaN(standing.embedment().depthM())) {
            return "embedment not modelled: the bottom's class states no shear-strength";
        }
        return Double.isInfinite(standing.embedment().depthM())
                ? "the bottom does not stop it: the weight is more than it ever bears" : "";
    }
}
