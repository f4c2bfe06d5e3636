package org.seacairn.drop;

/**
 * An upright module as its underside comes to a depth.
 *
 * @param timeS since its release
 * @param driftEastM from where it was released
 * @param sinkSpeedMPerS downward
 * @param eastMPerS over the ground
 */
public record Touchdown(
        double depthM, double timeS, double driftEastM, double driftNorthM,
        double sinkSpeedMPerS, double eastMPerS, double northMPerS, double impactEnergyJ) {

    /** Horizontal distance from where it was released. */
    public double driftM() {
        return Math.hypot(driftEastM, driftNorthM);
    }
}
