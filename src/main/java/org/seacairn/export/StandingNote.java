package org.seacairn.export;

import org.seacairn.drop.Embedment;

/** In words, what the figures of a landing leave empty. */
final class StandingNote {
    private StandingNote() {}

    /** Empty text where every figure is there. */
    static String of(Embedment embedment) {
        if (Double.isNaN(embedment.depthM())) {
            return "embedment not modelled: the bottom's class states no shear-strength";
        }
        return Double.isInfinite(embedment.depthM())
                ? "the bottom does not stop it: the weight is more than it ever bears" : "";
    }
}
