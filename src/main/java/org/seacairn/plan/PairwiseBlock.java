package org.seacairn.plan;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.SitingPlan.Measure;
import org.seacairn.plan.SitingPlan.Pairwise;

/** The plan's {@code pairwise} block. */
final class PairwiseBlock {
    /** Saaty's scale ends at 9, and the random indices are those of matrices on that scale (Saaty 1987, p. 165). */
    private static final double MOST = 9;

    /**
     * How far a product of two reciprocals may be from 1. Every reciprocal of 1 to 9 rounded to two
     * decimals lies within 4 % (1/8 as 0.13); taking one number of the scale for its neighbour is
     * 12 % off or more (8 for 9).
     */
    private static final double ROUNDING = 0.05;

    private static final double USUAL_LIMIT = 0.10;

    /** Weights by measure, and what the outputs say of them. */
    record Derived(Map<Measure, Double> weights, Pairwise pairwise) {}

    private PairwiseBlock() {}

    /** @param measures those of the plan's criteria, in their order */
    static Optional<Derived> read(Value pairwise, List<Measure> measures) {
        return pairwise.block("pairwise", "order", "matrix", "consistency-limit", "random-index")
                .flatMap(block -> read(block, measures));
    }

    private static Optional<Derived> read(Block block, List<Measure> measures) {
        double limit = block.quantity("consistency-limit", Kind.SHARE).orElse(USUAL_LIMIT);
        RandomIndex list = block.get("random-index").flatMap(value -> value.choice(RandomIndex.class))
                .orElse(RandomIndex.SAATY_1980);
        Optional<List<Measure>> order = block.need("order", "order: [depth, slope]")
                .flatMap(value -> order(value, measures));
        Optional<double[][]> written = block.need("matrix", "matrix: [[1, 3], [1/3, 1]]")
                .flatMap(value -> matrix(value, order.orElse(List.of())));
        if (order.isEmpty() || written.isEmpty()) {
            return Optional.empty();
        }
        double[][] matrix = reordered(written.get(), order.get(), measures);
        PairwiseComparison comparison = new PairwiseComparison(matrix);
        double ratio = comparison.consistencyRatio(list);
        if (ratio > limit) {
            block.problem(inconsistent(comparison, matrix, measures, ratio, limit, list));
        }
        Map<Measure, Double> weights = new EnumMap<>(Measure.class);
        for (int i = 0; i < measures.size(); i++) {
            weights.put(measures.get(i), comparison.weights()[i]);
        }
        return Optional.of(new Derived(weights, new Pairwise(matrix, comparison.lambdaMax(), ratio, list.source())));
    }

    private static Optional<List<Measure>> order(Value value, List<Measure> measures) {
        Map<String, Measure> words = new LinkedHashMap<>();
        measures.forEach(measure -> words.put(Value.word(measure), measure));
        List<Measure> order = new ArrayList<>();
        for (Value item : value.items()) {
            item.choice(words, words.keySet()).ifPresent(order::add);
        }
        boolean each = order.size() == measures.size() && order.containsAll(measures);
        if (!each && value.isList()) {
            value.problem("order must name each criterion once: " + String.join(", ", words.keySet()));
        }
        return each ? Optional.of(order) : Optional.empty();
    }

    private static Optional<double[][]> matrix(Value value, List<Measure> order) {
        List<Value> rows = value.items();
        int n = order.isEmpty() ? rows.size() : order.size();
        if (rows.size() != n || n == 0) {
            value.problem("matrix has " + rows.size() + " rows; write one for each of the " + n + " criteria in order");
            return Optional.empty();
        }
        double[][] matrix = new double[n][n];
        boolean good = true;
        for (int i = 0; i < n; i++) {
            List<Value> cells = rows.get(i).items();
            if (cells.size() != n) {
                rows.get(i).problem(rows.get(i).name() + " has " + cells.size() + " numbers; write " + n);
                good = false;
                continue;
            }
            for (int j = 0; j < n; j++) {
                matrix[i][j] = comparison(cells.get(j));
                good &= matrix[i][j] > 0;
            }
        }
        return good && !order.isEmpty() && isReciprocal(matrix, rows, order) ? Optional.of(matrix) : Optional.empty();
    }

    private static double comparison(Value cell) {
        String text = cell.text();
        double number = PlanNumber.readFraction(text);
        if (!text.isEmpty() && !(number >= 1 / MOST / (1 + ROUNDING) && number <= MOST)) {
            cell.problem(cell.name() + " is " + Shown.quoted(text) + "; write a number from 1/9 to 9");
            return Double.NaN;
        }
        return number;
    }

    /** Checks the matrix, and makes each reciprocal that was rounded exact: the number of 1 or more is the one meant. */
    private static boolean isReciprocal(double[][] matrix, List<Value> rows, List<Measure> order) {
        boolean good = true;
        for (int i = 0; i < matrix.length; i++) {
            for (int j = 0; j <= i; j++) {
                if (Math.abs(matrix[i][j] * matrix[j][i] - 1) > (i == j ? 0 : ROUNDING)) {
                    rows.get(i).problem(notReciprocal(matrix, order, i, j));
                    good = false;
                } else if (matrix[i][j] >= matrix[j][i]) {
                    matrix[j][i] = 1 / matrix[i][j];
                } else {
                    matrix[i][j] = 1 / matrix[j][i];
                }
            }
        }
        return good;
    }

    private static String notReciprocal(double[][] matrix, List<Measure> order, int i, int j) {
        String row = Value.word(order.get(i));
        String column = Value.word(order.get(j));
        if (i == j) {
            return row + " against itself is " + Shown.number(matrix[i][i]) + "; write 1";
        }
        return row + " against " + column + " is " + Shown.number(matrix[i][j]) + ", but " + column + " against " + row + " is "
                + Shown.number(matrix[j][i]) + "; one must be 1 over the other";
    }

    /** The matrix with its rows and columns in the order of the plan's criteria. */
    private static double[][] reordered(double[][] matrix, List<Measure> from, List<Measure> to) {
        double[][] moved = new double[to.size()][to.size()];
        for (int i = 0; i < to.size(); i++) {
            for (int j = 0; j < to.size(); j++) {
                moved[i][j] = matrix[from.indexOf(to.get(i))][from.indexOf(to.get(j))];
            }
        }
        return moved;
    }

    private static String inconsistent(PairwiseComparison comparison, double[][] matrix, List<Measure> measures,
            double ratio, double limit, RandomIndex list) {
        int[] worst = comparison.leastConsistent();
        double[] weights = comparison.weights();
        return "the comparisons contradict each other: consistency ratio " + Shown.number(ratio)
                + " is over the limit " + Shown.number(limit) + " (random index: " + list.source() + "). Farthest off is "
                + Value.word(measures.get(worst[0])) + " against " + Value.word(measures.get(worst[1])) + ", "
                + Shown.number(matrix[worst[0]][worst[1]]) + " where all together make it "
                + Shown.number(weights[worst[0]] / weights[worst[1]]) + "; think it over, or write a higher consistency-limit";
    }
}
