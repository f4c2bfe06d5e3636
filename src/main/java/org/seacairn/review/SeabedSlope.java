package org.seacairn.review;

/**
 * Slope and ruggedness of one cell, in plain doubles, apart from the code that does it for whole tiles.
 * A cell with a missing neighbour has neither.
 */
final class SeabedSlope {
    private final double cellM;

    SeabedSlope(double cellM) {
        this.cellM = cellM;
    }

    /** Horn (1981), Proc. IEEE 69(1), 14-47: degrees, or NaN. */
    double degrees(float[] depths, int cols, int i) {
        double[] normal = normal(depths, cols, i);
        return Math.toDegrees(Math.atan2(Math.hypot(normal[0], normal[1]), normal[2]));
    }

    /** Sappington et al. (2007), J. Wildl. Manage. 71(5), 1419-1426, over a square of an odd side: 0..1, or NaN. */
    double ruggedness(float[] depths, int cols, int i, int side) {
        if (Double.isNaN(normal(depths, cols, i)[2])) {
            return Double.NaN;
        }
        double[] sum = new double[3];
        int count = 0;
        for (int dy = -(side / 2); dy <= side / 2; dy++) {
            for (int dx = -(side / 2); dx <= side / 2; dx++) {
                double[] normal = normal(depths, cols, i + dy * cols + dx);
                if (!Double.isNaN(normal[2])) {
                    for (int k = 0; k < 3; k++) {
                        sum[k] += normal[k];
                    }
                    count++;
                }
            }
        }
        return Math.max(0, 1 - Math.sqrt(sum[0] * sum[0] + sum[1] * sum[1] + sum[2] * sum[2]) / count);
    }

    /** The unit normal of Horn's slope. */
    private double[] normal(float[] d, int cols, int i) {
        int up = i - cols;
        int down = i + cols;
        double east = ((double) d[up + 1] + 2.0 * d[i + 1] + d[down + 1] - d[up - 1] - 2.0 * d[i - 1] - d[down - 1]) / (8 * cellM);
        double south = ((double) d[down - 1] + 2.0 * d[down] + d[down + 1] - d[up - 1] - 2.0 * d[up] - d[up + 1]) / (8 * cellM);
        // The centre has no part in the differences, but must be there.
        double length = Math.sqrt(east * east + south * south + 1) + (Float.isNaN(d[i]) ? Double.NaN : 0);
        return new double[] {east / length, south / length, 1 / length};
    }
}
