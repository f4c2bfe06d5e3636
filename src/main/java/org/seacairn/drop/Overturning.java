package org.seacairn.drop;

/**
 * Whether a module that stands on a slope would tip about the lower edge of its base:
 * {@code FS = W b cos(beta) / ((m g s_G - rho g V s_B) sin(beta) + M)} with beta the slope and the module's own tilt against
 * it together, in the worst direction. What the soil holds is left out (safe side).
 *
 * @param submergedWeightN W, above 0
 * @param massMomentNm m g s_G: weight in air times the height of the centre of mass above the underside
 * @param buoyancyMomentNm rho g V s_B: buoyancy times the height of its centre above the underside
 * @param halfWidthM b: half the shorter side of the base, or its radius
 * @param currentMomentNm M: what the current's drag turns by about the underside, 0 or more
 */
public record Overturning(
        double submergedWeightN, double massMomentNm, double buoyancyMomentNm, double halfWidthM, double currentMomentNm) {

    /**
     * @param slopeDeg of the bottom, 0 or more; NaN gives NaN
     * @param tiltDeg of the module against the bottom, 0 or more; NaN gives NaN
     * @return restoring over overturning moment; infinity where nothing turns it over, 0 from 90 degrees up
     */
    public double factor(double slopeDeg, double tiltDeg) {
        double betaDeg = slopeDeg + tiltDeg;
        if (betaDeg >= 90) {
            return 0;
        }
        double beta = Math.toRadians(betaDeg);
        double turning = (massMomentNm - buoyancyMomentNm) * Math.sin(beta) + currentMomentNm;
        return turning <= 0 ? Double.POSITIVE_INFINITY : submergedWeightN * halfWidthM * Math.cos(beta) / turning;
    }

    /**
     * The slope up to which the factor is at least the one asked for; written as {@code r cos(beta + phi) >= F M}, which holds
     * on one stretch of beta.
     *
     * @param factor F, above 0
     * @param tiltDeg as for {@link #factor}
     * @return degrees, below 90; NaN if it does not even stand so on level ground
     */
    public double steepestSlopeDeg(double factor, double tiltDeg) {
        if (!(factor(0, tiltDeg) >= factor)) {
            return Double.NaN;
        }
        double restoring = submergedWeightN * halfWidthM;
        double turning = factor * (massMomentNm - buoyancyMomentNm);
        // Standing on level ground bounds the quotient by 1; rounding must not pass it.
        double share = Math.min(1, factor * currentMomentNm / Math.hypot(restoring, turning));
        double beta = Math.toDegrees(Math.acos(share) - Math.atan2(turning, restoring));
        return Math.max(0, Math.min(beta, 90) - tiltDeg);
    }
}
