package org.seacairn.criterion;

import org.seacairn.drop.ByDepth;
import org.seacairn.drop.ModuleDrop;

/**
 * Rules out cells on whose slope the module would have less than a factor of safety against overturning. A cell without a
 * slope is not judged here: it is {@code no-terrain}. It scores nothing.
 */
public final class StabilityRule implements Rule {
    private final ByDepth steepestDeg;
    private final int unstable;

    /** @param factor of safety, the least allowed */
    public StabilityRule(double factor, ModuleDrop drop, Reasons reasons) {
        this.steepestDeg = drop.steepestSlopeDeg(factor);
        this.unstable = reasons.bit(Reasons.UNSTABLE);
    }

    @Override
    public void rule(Tile tile, int[] reasons) {
        float[] tangent = tile.slopeTangent();
        float[] depth = tile.depth();
        for (int i = 0; i < reasons.length; i++) {
            // No steepest slope: it does not stand there even on level ground.
            if (!Float.isNaN(tangent[i]) && !(SlopeCriterion.degrees(tangent[i]) <= steepestDeg.at(depth[i]))) {
                reasons[i] |= unstable;
            }
        }
    }
}
