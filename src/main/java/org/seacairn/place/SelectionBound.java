package org.seacairn.place;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * An upper bound on the total score of any selection of a given size.
 *
 * <p>The grid is cut into squares so small that two cell centres of one square are always too near
 * each other: a selection takes at most one cell of each, so its total is at most the sum of the
 * largest square maxima. Cells that are not among the rivals count with the rivals' floor. The cut is
 * shifted several ways, and the least of the sums is the bound.
 */
final class SelectionBound {
    private static final int SHIFTS = 4;

    private SelectionBound() {}

    /**
     * @param best the best score of any cell
     * @param side of the squares in cells, see {@link #side}
     */
    static double of(Rivals rivals, int count, int greedySites, double best, int side) {
        double bound = count * best;
        if (greedySites == 0) {
            return 0;
        }
        if (!rivals.complete()) {
            return bound;
        }
        // Where greedy ran out of room every scored cell is a rival, and nothing else can be chosen.
        double filler = greedySites < count ? 0 : rivals.floor();
        for (int i = 0; i < SHIFTS; i++) {
            for (int k = 0; k < SHIFTS; k++) {
                bound = Math.min(bound, sum(rivals.cells(), count, filler, side, i * side / SHIFTS, k * side / SHIFTS));
            }
        }
        return bound;
    }

    /** Cells along the side of a square in which no two centres are {@code apartM} apart on the ground. */
    static int side(double apartM, double cellM, double largestScaleError) {
        double diagonalM = Math.sqrt(2) * cellM / (1 - largestScaleError);
        return (int) Math.min(1 << 20, Math.ceil(apartM * (1 - 1e-9) / diagonalM));
    }

    private static double sum(List<Pick> cells, int count, double filler, int side, int shiftCol, int shiftRow) {
        Map<Long, Double> maxima = new HashMap<>();
        for (Pick cell : cells) {
            long key = (long) ((cell.row() + shiftRow) / side) << 32 | (cell.col() + shiftCol) / side;
            maxima.merge(key, cell.score(), Math::max);
        }
        double[] values = maxima.values().stream().mapToDouble(Double::doubleValue).toArray();
        Arrays.sort(values);
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += i < values.length ? values[values.length - 1 - i] : filler;
        }
        return sum;
    }
}
