package org.seacairn.score;

import org.seacairn.plan.SitingPlan.Combination;

/** Combines the suitabilities of a cell into its score, 0..1. */
final class Combiner {
    private final Combination combination;
    private final double[] share;

    /** @param weights above 0, one for each criterion */
    Combiner(Combination combination, double[] weights) {
        this.combination = combination;
        double sum = 0;
        for (double w : weights) {
            sum += w;
        }
        this.share = new double[weights.length];
        for (int i = 0; i < weights.length; i++) {
            share[i] = weights[i] / sum;
        }
    }

    /**
     * Scores some cells.
     *
     * @param suitability one array for each criterion
     * @param count how many values of each array to combine
     */
    void score(double[][] suitability, int count, double[] into) {
        for (int i = 0; i < count; i++) {
            into[i] = combination == Combination.WEIGHTED_MEAN ? 0 : 1;
        }
        for (int k = 0; k < suitability.length; k++) {
            double[] s = suitability[k];
            double w = share[k];
            switch (combination) {
                case WEIGHTED_MEAN -> {
                    for (int i = 0; i < count; i++) {
                        into[i] += w * s[i];
                    }
                }
                case WEIGHTED_GEOMETRIC -> {
                    for (int i = 0; i < count; i++) {
                        into[i] *= Math.pow(s[i], w);
                    }
                }
                case LIMITING -> {
                    for (int i = 0; i < count; i++) {
                        into[i] = Math.min(into[i], s[i]);
                    }
                }
            }
        }
        if (combination == Combination.WEIGHTED_MEAN) {
            for (int i = 0; i < count; i++) {
                // Shares sum to 1 but for rounding.
                into[i] = Math.min(1, into[i]);
            }
        }
    }
}
