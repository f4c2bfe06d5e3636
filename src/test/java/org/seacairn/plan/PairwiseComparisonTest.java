package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PairwiseComparisonTest {
    /** "Choosing a leader", a worked example often printed. */
    private static final double[][] LEADER = {
        {1, 4, 3, 7},
        {1 / 4.0, 1, 1 / 3.0, 3},
        {1 / 3.0, 3, 1, 5},
        {1 / 7.0, 1 / 3.0, 1 / 5.0, 1}};

    private static final double[][] THREE = {{1, 3, 5}, {1 / 3.0, 1, 3}, {1 / 5.0, 1 / 3.0, 1}};

    /** Drinks in the US: coffee, wine, tea, beer, soda, milk, water (Saaty 2008), upper triangle from memory. */
    private static final double[][] DRINKS = reciprocal(new double[][] {
        {9, 5, 2, 1, 1, 1 / 2.0},
        {1 / 3.0, 1 / 9.0, 1 / 9.0, 1 / 9.0, 1 / 9.0},
        {1 / 3.0, 1 / 4.0, 1 / 3.0, 1 / 9.0},
        {1 / 2.0, 1, 1 / 3.0},
        {2, 1 / 2.0},
        {1 / 3.0}});

    @Test
    void choosingALeader() {
        PairwiseComparison leader = new PairwiseComparison(LEADER);
        // Printed: 0.5470, 0.1270, 0.2703, 0.0556, which is up to 4.5e-4 off the eigenvector itself.
        assertArrayEquals(new double[] {0.5470, 0.1270, 0.2703, 0.0556}, leader.weights(), 7e-4);
        assertArrayEquals(new double[] {0.547569, 0.126555, 0.269950, 0.055926}, leader.weights(), 1e-6);
        assertEquals(4.12, leader.lambdaMax(), 0.005);
        assertEquals(4.118418, leader.lambdaMax(), 1e-6);
        assertEquals(0.039473, leader.consistencyIndex(), 1e-6);
        assertEquals(0.043859, leader.consistencyRatio(RandomIndex.SAATY_1980), 1e-6);
        assertEquals(0.039473 / 0.8836651, leader.consistencyRatio(RandomIndex.SAATY_TRAN_2007), 1e-6);
    }

    @Test
    void threeByThree() {
        PairwiseComparison three = new PairwiseComparison(THREE);
        assertArrayEquals(new double[] {0.636986, 0.258285, 0.104729}, three.weights(), 1e-6);
        assertEquals(3.038511, three.lambdaMax(), 1e-6);
        assertEquals(0.033199, three.consistencyRatio(RandomIndex.SAATY_1980), 1e-6);
    }

    @Test
    void ofThreeThingsTheGeometricMeansOfTheRowsAreTheWeights() {
        double[] means = Arrays.stream(THREE).mapToDouble(row -> Math.cbrt(row[0] * row[1] * row[2])).toArray();
        double sum = Arrays.stream(means).sum();
        assertArrayEquals(Arrays.stream(means).map(x -> x / sum).toArray(),
                new PairwiseComparison(THREE).weights(), 1e-12);
    }

    @Test
    void drinks() {
        PairwiseComparison drinks = new PairwiseComparison(DRINKS);
        assertArrayEquals(new double[] {0.177, 0.019, 0.042, 0.116, 0.190, 0.129, 0.327}, drinks.weights(), 6e-4);
        assertEquals(7.176629, drinks.lambdaMax(), 1e-6);
        assertEquals(0.022, drinks.consistencyRatio(RandomIndex.SAATY_1980), 5e-4);
    }

    @Test
    void aConsistentMatrixGivesItsWeightsBack() {
        double[] weights = {0.4, 0.3, 0.2, 0.1};
        PairwiseComparison comparison = new PairwiseComparison(ratios(weights));
        assertArrayEquals(weights, comparison.weights(), 1e-12);
        assertEquals(4, comparison.lambdaMax(), 1e-12);
        assertEquals(0, comparison.consistencyRatio(RandomIndex.SAATY_1980), 1e-12);
    }

    @Test
    void equalThingsWeighTheSame() {
        assertArrayEquals(new double[] {0.25, 0.25, 0.25, 0.25},
                new PairwiseComparison(ratios(new double[] {1, 1, 1, 1})).weights(), 1e-12);
    }

    @Test
    void oneAndTwoThingsCannotContradict() {
        PairwiseComparison one = new PairwiseComparison(new double[][] {{1}});
        assertArrayEquals(new double[] {1}, one.weights(), 0);
        assertEquals(0, one.consistencyRatio(RandomIndex.SAATY_1980));
        PairwiseComparison two = new PairwiseComparison(new double[][] {{1, 3}, {1 / 3.0, 1}});
        assertArrayEquals(new double[] {0.75, 0.25}, two.weights(), 1e-12);
        assertEquals(0, two.consistencyRatio(RandomIndex.SAATY_TRAN_2007));
    }

    @Test
    void randomMatricesAgreeWithPlainPowerIteration() {
        long seed = 20260101;
        Random random = new Random(seed);
        for (int draw = 0; draw < 200; draw++) {
            double[][] matrix = randomReciprocal(random, 2 + random.nextInt(5));
            PairwiseComparison comparison = new PairwiseComparison(matrix);
            double[] plain = powerIteration(matrix);
            assertArrayEquals(plain, comparison.weights(), 1e-9, "seed " + seed + ", draw " + draw);
            assertEquals(multiplied(matrix, plain)[0] / plain[0], comparison.lambdaMax(), 1e-8,
                    "seed " + seed + ", draw " + draw);
        }
    }

    @Test
    void theComparisonTurnedRoundIsTheLeastConsistent() {
        double[][] matrix = ratios(new double[] {8, 4, 2, 1});
        matrix[1][3] = 1 / 4.0;
        matrix[3][1] = 4;
        assertArrayEquals(new int[] {1, 3}, new PairwiseComparison(matrix).leastConsistent());
    }

    @Test
    void randomIndicesOfBothLists() {
        // Saaty 1980 with its dip at 12, and the list by simulation; both as printed in public code.
        assertEquals(0.58, RandomIndex.SAATY_1980.of(3));
        assertEquals(0.90, RandomIndex.SAATY_1980.of(4));
        assertEquals(1.12, RandomIndex.SAATY_1980.of(5));
        assertEquals(1.24, RandomIndex.SAATY_1980.of(6));
        assertEquals(1.32, RandomIndex.SAATY_1980.of(7));
        assertEquals(1.51, RandomIndex.SAATY_1980.of(11));
        assertEquals(1.48, RandomIndex.SAATY_1980.of(12));
        assertEquals(1.59, RandomIndex.SAATY_1980.of(15));
        assertEquals(0.5251686, RandomIndex.SAATY_TRAN_2007.of(3));
        assertEquals(1.2492774, RandomIndex.SAATY_TRAN_2007.of(6));
        assertEquals(1.5839958, RandomIndex.SAATY_TRAN_2007.of(15));
        for (RandomIndex list : RandomIndex.values()) {
            assertEquals(0, list.of(1));
            assertEquals(0, list.of(2));
        }
    }

    private static double[][] reciprocal(double[][] upper) {
        int n = upper.length + 1;
        double[][] matrix = new double[n][n];
        for (int i = 0; i < n; i++) {
            matrix[i][i] = 1;
            for (int j = i + 1; j < n; j++) {
                matrix[i][j] = upper[i][j - i - 1];
                matrix[j][i] = 1 / matrix[i][j];
            }
        }
        return matrix;
    }

    private static double[][] ratios(double[] weights) {
        return Arrays.stream(weights)
                .mapToObj(w -> Arrays.stream(weights).map(other -> w / other).toArray()).toArray(double[][]::new);
    }

    private static double[][] randomReciprocal(Random random, int n) {
        double[][] upper = new double[n - 1][];
        for (int i = 0; i < n - 1; i++) {
            upper[i] = random.doubles(n - 1 - i, -2, 2).map(x -> Math.pow(3, x)).toArray();
        }
        return reciprocal(upper);
    }

    private static double[] powerIteration(double[][] matrix) {
        double[] vector = new double[matrix.length];
        Arrays.fill(vector, 1.0 / matrix.length);
        for (int step = 0; step < 1000; step++) {
            double[] next = multiplied(matrix, vector);
            double sum = Arrays.stream(next).sum();
            vector = Arrays.stream(next).map(x -> x / sum).toArray();
        }
        return vector;
    }

    private static double[] multiplied(double[][] matrix, double[] vector) {
        double[] product = new double[vector.length];
        for (int i = 0; i < vector.length; i++) {
            for (int j = 0; j < vector.length; j++) {
                product[i] += matrix[i][j] * vector[j];
            }
        }
        return product;
    }
}
