package org.seacairn.place;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;

/**
 * How many modules a ring could have, whatever its evenness.
 *
 * @param atLeast a ring of so many was found
 * @param atMost no ring has more; equal to {@code atLeast} where the search was exact
 */
public record RingFit(int atLeast, int atMost) {
    private static final int SHIFTS = 4;
    private static final int MOST_SWEEPS = 64;

    /**
     * @param below so many are known not to fit
     * @param mostWork to be spent
     */
    static RingFit below(RingCells cells, int below, long mostWork) {
        int atMost = Math.min(below - 1, atMost(cells));
        int atLeast = Math.min(atMost, sweep(cells).length);
        long left = mostWork;
        while (atLeast < atMost) {
            RingSolver solver = new RingSolver(cells.outward(), atLeast + 1, 0);
            RingSolver.Found found = solver.any(left / 2);
            left -= solver.work();
            if (found.best() != null) {
                atLeast++;
            } else if (found.bound() < 0) {
                atMost = atLeast;
            } else {
                break;
            }
        }
        return new RingFit(atLeast, atMost);
    }

    /** No more modules than squares in which any two cells are too near each other. */
    static int atMost(RingCells cells) {
        int least = Math.min(cells.size(), RingRequest.MOST_MODULES);
        if (cells.apartM() == 0) {
            return least;
        }
        // The plane's lengths are never shorter than the ground's but by its rounding.
        double side = cells.apartM() / Math.sqrt(2) * (1 - 1e-9);
        for (int shiftE = 0; shiftE < SHIFTS; shiftE++) {
            for (int shiftN = 0; shiftN < SHIFTS; shiftN++) {
                Set<Long> squares = new HashSet<>();
                for (int i = 0; i < cells.size() && squares.size() <= least; i++) {
                    long e = (long) Math.floor(cells.east(i) / side + (double) shiftE / SHIFTS);
                    long n = (long) Math.floor(cells.north(i) / side + (double) shiftN / SHIFTS);
                    squares.add(e << 32 ^ n & 0xFFFFFFFFL);
                }
                least = Math.min(least, squares.size());
            }
        }
        return least;
    }

    /** In order from north, the most cells that a walk clockwise from some cell takes when it takes each that it can. */
    static int[] sweep(RingCells cells) {
        int[] most = {};
        int n = cells.size();
        for (int start = 0; start < n; start += Math.max(1, n / MOST_SWEEPS)) {
            int[] taken = new int[RingRequest.MOST_MODULES];
            int count = 0;
            for (int i = 0; i < n && count < taken.length; i++) {
                int cell = (start + i) % n;
                int k = 0;
                while (k < count && !cells.tooNear(taken[k], cell)) {
                    k++;
                }
                if (k == count) {
                    taken[count++] = cell;
                }
            }
            most = count > most.length ? Arrays.copyOf(taken, count) : most;
        }
        Arrays.sort(most);
        return most;
    }
}
