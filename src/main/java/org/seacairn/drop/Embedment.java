package org.seacairn.drop;

/**
 * How deep a base goes into a cohesive bottom: to where the bottom's resistance has taken up the energy of the touchdown
 * and the work of the weight on the way, {@code integral of Q = E + W z}.
 *
 * @param depthM of the base's underside; infinity: nothing stops it, NaN: not modelled, for lack of a strength
 * @param bearingFactor resistance at that depth over submerged weight; of one that nothing stops the resistance far down, 1 at most
 */
public record Embedment(double depthM, double bearingFactor) {
    /** Newton's steps halve at the least what is left to a double root, and square it elsewhere. */
    private static final int MOST_STEPS = 200;

    /**
     * @param energyJ of the touchdown, added mass included, 0 or more; NaN gives NaN
     * @param submergedWeightN above 0
     */
    public static Embedment of(Bearing bearing, double energyJ, double submergedWeightN) {
        if (!(submergedWeightN > 0) || energyJ < 0) {
            throw new IllegalArgumentException("no embedment of " + energyJ + " J under " + submergedWeightN + " N");
        }
        if (Double.isNaN(bearing.strengthPa() + bearing.gradientPaPerM() + energyJ)) {
            return new Embedment(Double.NaN, Double.NaN);
        }
        double depth = depthM(bearing, energyJ, submergedWeightN);
        return new Embedment(depth, bearing.resistanceN(depth) / submergedWeightN);
    }

    /** What is left of a height above the bottom, not below 0; NaN where nothing is modelled. */
    public double reliefM(double heightM) {
        return Math.max(0, heightM - depthM);
    }

    /** What the bottom has taken up beyond what came in grows ever faster with depth (Q never falls), so it has one root at most. */
    private static double depthM(Bearing bearing, double energyJ, double weightN) {
        if (energyJ == 0 && bearing.resistanceN(0) >= weightN) {
            return 0;
        }
        double deep = bearing.deepFromM();
        double surplus = bearing.workJ(deep) - energyJ - weightN * deep;
        return surplus >= 0 ? inUpperPiece(bearing, energyJ, weightN) : deep + below(bearing, -surplus, weightN);
    }

    /** From the right of the root of a convex function Newton's steps come down to it and never pass it. */
    private static double inUpperPiece(Bearing bearing, double energyJ, double weightN) {
        double z = bearing.deepFromM();
        for (int i = 0; i < MOST_STEPS; i++) {
            double step = (bearing.workJ(z) - energyJ - weightN * z) / (bearing.resistanceN(z) - weightN);
            if (!(step > 0) || z - step == z) {
                return z;
            }
            z -= step;
        }
        return z;
    }

    /** How far below the upper piece the rest is taken up, by the root of a t^2 + b t = rest. */
    private static double below(Bearing bearing, double restJ, double weightN) {
        double deep = bearing.deepFromM();
        double b = bearing.resistanceN(deep) - weightN;
        double a = BearingFactor.of(deep, bearing.widthM(), bearing.lengthM()) * bearing.areaM2() * bearing.gradientPaPerM() / 2;
        if (a == 0) {
            return b > 0 ? restJ / b : Double.POSITIVE_INFINITY;
        }
        double root = Math.sqrt(b * b + 4 * a * restJ);
        // Each form subtracts nothing of its own size.
        return b > 0 ? 2 * restJ / (b + root) : (root - b) / (2 * a);
    }
}
