package org.seacairn.plan;

import java.util.Arrays;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;

/**
 * Weights from a matrix that says how many times more each thing matters than each other one: the
 * principal eigenvector, and how far the comparisons contradict each other (Saaty 1980).
 */
final class PairwiseComparison {
    /** In a matrix of three all comparisons are equally far off but for rounding; the first is named. */
    private static final double TIE = 1e-9;

    private final double[][] matrix;
    private final double[] weights;
    private final double lambdaMax;

    /** @param matrix square, positive and reciprocal */
    PairwiseComparison(double[][] matrix) {
        this.matrix = matrix;
        EigenDecomposition eigen = new EigenDecomposition(MatrixUtils.createRealMatrix(matrix));
        // A positive matrix has a real eigenvalue above the modulus of every other one, and a
        // positive eigenvector to it (Perron), so the greatest real part is the one sought.
        double[] real = eigen.getRealEigenvalues();
        int principal = 0;
        for (int i = 1; i < real.length; i++) {
            principal = real[i] > real[principal] ? i : principal;
        }
        lambdaMax = real[principal];
        double[] vector = eigen.getEigenvector(principal).toArray();
        double sum = Arrays.stream(vector).sum();
        weights = Arrays.stream(vector).map(x -> x / sum).toArray();
    }

    /** One a row, with the sum 1. */
    double[] weights() {
        return weights.clone();
    }

    double lambdaMax() {
        return lambdaMax;
    }

    /** (lambda max - n) / (n - 1), and 0 for fewer than three things, which cannot contradict each other. */
    double consistencyIndex() {
        int n = matrix.length;
        return n < 3 ? 0 : Math.max(0, (lambdaMax - n) / (n - 1));
    }

    /** Consistency index over the random index of the same size. */
    double consistencyRatio(RandomIndex list) {
        int n = matrix.length;
        return n < 3 ? 0 : consistencyIndex() / list.of(n);
    }

    /** Row and column, row before column, of the comparison farthest, by ratio, from that of the weights. */
    int[] leastConsistent() {
        int[] farthest = {0, 0};
        double most = -1;
        for (int i = 0; i < matrix.length; i++) {
            for (int j = i + 1; j < matrix.length; j++) {
                double far = Math.abs(Math.log(matrix[i][j] * weights[j] / weights[i]));
                if (far > most + TIE) {
                    most = far;
                    farthest = new int[] {i, j};
                }
            }
        }
        return farthest;
    }
}
