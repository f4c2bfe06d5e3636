package org.seacairn.criterion;

import org.seacairn.drop.LandingRadius;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Uncertainty;

/**
 * Required distance to a layer: keep-off + sqrt(position² + horizontal² + landing²). The three are
 * independent 95 % figures and add as the root of their squares. Where the bathymetry's horizontal
 * uncertainty or the landing radius grows with depth, so does the requirement; a cell without depth takes that of depth 0.
 */
public final class RequiredDistance {
    private final double keepOffM;
    private final double positionSquared;
    private final LandingRadius landing;
    private final Uncertainty uncertainty;

    /** @param positionUncertaintyM of the layer's features, 95 % */
    public RequiredDistance(SitingPlan plan, LandingRadius landing, double keepOffM, double positionUncertaintyM) {
        this.keepOffM = keepOffM;
        this.positionSquared = positionUncertaintyM * positionUncertaintyM;
        this.landing = landing;
        this.uncertainty = plan.bathymetry().uncertainty();
    }

    /** Metres required where the water is this deep; NaN counts as depth 0. */
    public double atDepth(double depthM) {
        double knownM = Double.isNaN(depthM) ? 0 : depthM;
        double horizontalM = uncertainty.horizontalM(knownM);
        double landingM = landing.atM(knownM);
        return keepOffM + Math.sqrt(positionSquared + landingM * landingM + horizontalM * horizontalM);
    }
}
