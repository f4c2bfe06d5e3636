package org.seacairn.plan;

/**
 * Published lists of the random index: the mean consistency index of random comparison matrices, by
 * which a consistency index is divided. The lists disagree, so every output names the one in use.
 */
enum RandomIndex {
    /** The dip at 12 is in the published list. */
    SAATY_1980("Saaty 1980",
            0, 0, 0.58, 0.90, 1.12, 1.24, 1.32, 1.41, 1.45, 1.49, 1.51, 1.48, 1.56, 1.57, 1.59),
    SAATY_TRAN_2007("simulated with 500,000 matrices, as used with Saaty and Tran 2007",
            0, 0, 0.5251686, 0.8836651, 1.1081014, 1.2492774, 1.3415514, 1.4048466, 1.4507197, 1.4857266,
            1.5141022, 1.5356638, 1.5545925, 1.5703498, 1.5839958);

    private final String source;
    private final double[] bySize;

    RandomIndex(String source, double... bySize) {
        this.source = source;
        this.bySize = bySize;
    }

    String source() {
        return source;
    }

    /** The index for matrices of 1 to 15 rows. */
    double of(int rows) {
        return bySize[rows - 1];
    }
}
