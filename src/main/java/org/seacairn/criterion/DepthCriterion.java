package org.seacairn.criterion;

import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Curve;
import org.seacairn.plan.SitingPlan.Limits;

/**
 * Water depth: its limits, the clearance over the module, the module's share of the water column.
 * Dry land (depth 0 or less) is too shallow whatever the plan says. A depth whose uncertainty is not known is none where the
 * clearance rests on it.
 */
public final class DepthCriterion implements Criterion {
    private final Limits limits;
    private final double heightM;
    private final Curve curve;
    private final int noDepth;
    private final int tooShallow;
    private final int tooTall;
    private final int tooDeep;

    /** @param curve may be null: depth is not scored */
    public DepthCriterion(SitingPlan plan, Reasons reasons, Curve curve) {
        this.limits = plan.limits();
        this.heightM = plan.module().heightM();
        this.curve = curve;
        this.noDepth = reasons.bit(Reasons.NO_DEPTH);
        this.tooShallow = reasons.bit(Reasons.TOO_SHALLOW);
        this.tooTall = reasons.bit(Reasons.TOO_TALL);
        this.tooDeep = reasons.bit(Reasons.TOO_DEEP);
    }

    @Override
    public void rule(Tile tile, int[] reasons) {
        float[] depth = tile.depth();
        double shallowest = limits.shallowestM().orElse(Double.NEGATIVE_INFINITY);
        double deepest = limits.deepestM().orElse(Double.POSITIVE_INFINITY);
        boolean cleared = limits.clearanceAboveM().isPresent();
        double clearance = limits.clearanceAboveM().orElse(Double.NaN);
        DepthUncertainty uncertainty = tile.uncertainty();
        // Not infinity: times the negative depth of dry land it would make any module too tall.
        double share = limits.heightShare().orElse(Double.NaN);
        for (int i = 0; i < depth.length; i++) {
            double d = depth[i];
            if (Double.isNaN(d)) {
                reasons[i] |= noDepth;
                continue;
            }
            double waterOverM = cleared ? d - uncertainty.atM(i, d) - heightM : 0;
            if (Double.isNaN(waterOverM)) {
                reasons[i] |= noDepth;
                continue;
            }
            if (d <= 0 || d < shallowest || waterOverM < clearance) {
                reasons[i] |= tooShallow;
            }
            if (heightM > share * d) {
                reasons[i] |= tooTall;
            }
            if (d > deepest) {
                reasons[i] |= tooDeep;
            }
        }
    }

    @Override
    public void suitability(Tile tile, int[] cells, int count, double[] into) {
        for (int i = 0; i < count; i++) {
            into[i] = curve.at(tile.depth()[cells[i]]);
        }
    }
}
