package org.seacairn.drop;

import org.seacairn.plan.SitingPlan;

/** The radius about the target that holds 95 % of landings, by depth. Immutable. */
public final class LandingRadius {
    private final double statedM;

    private LandingRadius(double statedM) {
        this.statedM = statedM;
    }

    /** The radius that a plan's module states. */
    public static LandingRadius of(SitingPlan plan) {
        return new LandingRadius(plan.module().landingRadiusM().orElseThrow());
    }

    /** In metres where the water is this deep; NaN counts as depth 0. */
    public double atM(double depthM) {
        return statedM;
    }

    /** In metres at the deepest depth that the plan allows. */
    public double largestM() {
        return statedM;
    }
}
