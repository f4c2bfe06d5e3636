package org.seacairn.drop;

import java.util.Optional;
import org.seacairn.plan.SitingPlan;

/**
 * The radius about the target that holds 95 % of landings, by depth: as the module states it, the same everywhere, or
 * computed from its sinking. A computed one never is less than at a lesser depth. Immutable.
 */
public final class LandingRadius {
    private final ByDepth radiusM;
    private final double largestM;
    private final boolean isComputed;

    private LandingRadius(ByDepth radiusM, double deepestM, boolean isComputed) {
        this.radiusM = radiusM;
        this.largestM = radiusM.at(deepestM);
        this.isComputed = isComputed;
    }

    /** The radius that a plan's module states, else the computed one. */
    public static LandingRadius of(SitingPlan plan) {
        return of(plan, plan.module().landingRadiusM().isPresent() ? Optional.empty() : ModuleDrop.of(plan));
    }

    /** The same, where the sinking has been computed already. */
    public static LandingRadius of(SitingPlan plan, Optional<ModuleDrop> sinking) {
        if (plan.module().landingRadiusM().isPresent()) {
            double statedM = plan.module().landingRadiusM().getAsDouble();
            return new LandingRadius(ByDepth.of(0, depthM -> statedM), 0, false);
        }
        ModuleDrop drop = sinking.orElseThrow(
                () -> new IllegalStateException("a plan without a landing radius and without what it is computed from"));
        return new LandingRadius(drop.landingRadiusM(), drop.deepestM(), true);
    }

    /** In metres where the water is this deep; NaN counts as depth 0, and no depth as more than the deepest allowed. */
    public double atM(double depthM) {
        return radiusM.at(Double.isNaN(depthM) ? 0 : depthM);
    }

    /** In metres at the deepest depth that the plan allows. */
    public double largestM() {
        return largestM;
    }

    /** Whether it is computed, and so grows with depth. */
    public boolean isComputed() {
        return isComputed;
    }
}
