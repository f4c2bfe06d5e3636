package org.seacairn.drop;

/**
 * The radius about the target that holds 95 % of landings, and what it is made of: four independent errors, which add as
 * the root of the sum of their squares.
 *
 * @param scatterM scatter about where the current takes the module, growing with depth (DNV-RP-F107)
 * @param driftM drift by what the current may be faster, and by what it may be turned
 * @param dragM drift by what the drag coefficients may be larger
 * @param bargeM position of the barge at the release
 */
public record LandingParts(double scatterM, double driftM, double dragM, double bargeM) {

    /** In metres. */
    public double radiusM() {
        return Math.sqrt(scatterM * scatterM + driftM * driftM + dragM * dragM + bargeM * bargeM);
    }
}
