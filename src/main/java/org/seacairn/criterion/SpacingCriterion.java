package org.seacairn.criterion;

import org.seacairn.drop.LandingRadius;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.PatchFrames;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Curve;
import org.seacairn.plan.SitingPlan.Reefs;

/** Spacing: the distance to the nearest stone, which while ranking is the nearest existing reef. */
public final class SpacingCriterion implements Criterion {
    private final KeepOffRule rule;
    private final Curve curve;

    /** @param curve may be null: spacing is not scored */
    public SpacingCriterion(SitingPlan plan, LandingRadius landing, Reefs reefs, WorkingLayer working, GridGeometry grid,
            Reasons reasons, Curve curve) {
        this.curve = curve;
        this.rule = new KeepOffRule(working.distanceField(grid),
                new RequiredDistance(plan, landing, reefs.keepOffM(), reefs.positionUncertaintyM()),
                curve == null ? 0 : curve.d(), curve, reasons.bit(Reasons.NEAR_REEF));
    }

    @Override
    public void rule(Tile tile, int[] reasons) {
        rule.rule(tile, reasons);
    }

    @Override
    public void suitability(Tile tile, int[] cells, int count, double[] into) {
        float[] distance = rule.distances(tile);
        for (int i = 0; i < count; i++) {
            into[i] = curve.at(distance[cells[i]]);
        }
    }

    /** Distance of one cell to the nearest stone in metres; infinite beyond reach. */
    public double distanceM(int col, int row, PatchFrames frames) {
        return rule.exactM(col, row, frames);
    }
}
