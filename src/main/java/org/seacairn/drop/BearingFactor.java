package org.seacairn.drop;

/**
 * Bearing factor of a footing in undrained clay after A. W. Skempton, The bearing capacity of clays, Building
 * Research Congress, 1951: {@code Nc = 5 (1 + 0.2 D/B) (1 + 0.2 B/L)} with D/B counted up to 2.5. Against his chart
 * for a square or circle (6.2 at the surface, 9.0 from D/B = 4) it lies up to 7 % low above D/B = 2 and up to 5 % high at 2.5.
 */
final class BearingFactor {
    /** Depth over width from which the factor no longer grows. */
    static final double DEEPEST = 2.5;

    /** What the factor grows by for each width that the footing goes deeper. */
    static final double PER_WIDTH = 0.2;

    private BearingFactor() {}

    /**
     * @param depthM of the footing's underside below the bottom, 0 or more
     * @param widthM one side of the footing, or its diameter
     * @param lengthM the other side; the diameter again for a round one, which counts as square
     */
    static double of(double depthM, double widthM, double lengthM) {
        double ratio = Math.min(depthM / Math.min(widthM, lengthM), DEEPEST);
        return atSurface(widthM, lengthM) * (1 + PER_WIDTH * ratio);
    }

    /** The factor at depth 0: 5 for a strip, 6 for a square. */
    static double atSurface(double widthM, double lengthM) {
        return 5 * (1 + 0.2 * Math.min(widthM, lengthM) / Math.max(widthM, lengthM));
    }
}
