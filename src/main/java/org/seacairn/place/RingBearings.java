package org.seacairn.place;

import java.util.Arrays;

/**
 * Bounds on rings by bearing alone: each whole degree counts with its best cell, and distances with nothing.
 * Two cells that differ by a whole number of degrees lie in degrees that differ by it too.
 */
final class RingBearings {
    private RingBearings() {}

    /** For each cell a bound on the worth of every ring whose first cell from north it is, -1 where there is none. */
    static long[] bounds(RingCells cells, int modules, int evennessDeg) {
        long[] most = new long[360];
        Arrays.fill(most, -1);
        for (int i = 0; i < cells.size(); i++) {
            int degree = (int) cells.bearingDeg(i);
            most[degree] = Math.max(most[degree], cells.worth(i));
        }
        long[] bounds = new long[cells.size()];
        long[] ofDegree = new long[360];
        Arrays.fill(ofDegree, Long.MIN_VALUE);
        for (int i = 0; i < bounds.length; i++) {
            int degree = (int) cells.bearingDeg(i);
            if (ofDegree[degree] == Long.MIN_VALUE) {
                ofDegree[degree] = others(most, degree, modules, evennessDeg);
            }
            bounds[i] = ofDegree[degree] < 0 ? -1 : ofDegree[degree] + cells.worth(i);
        }
        return bounds;
    }

    /** The most that the modules after the first can be worth, -1 where they find no room. */
    private static long others(long[] most, int first, int modules, int evennessDeg) {
        long[] ahead = new long[360];
        int last = first + 360 - evennessDeg;
        for (int k = modules - 1; k > 0; k--) {
            long[] here = new long[360];
            long best = -1;
            Arrays.fill(here, -1);
            // Here: the most from module k on, where that one lies at this degree or later.
            for (int degree = Math.min(359, last - (modules - 1 - k) * evennessDeg); degree >= first + k * evennessDeg; degree--) {
                long on = k == modules - 1 ? 0 : degree + evennessDeg < 360 ? ahead[degree + evennessDeg] : -1;
                best = most[degree] < 0 || on < 0 ? best : Math.max(best, most[degree] + on);
                here[degree] = best;
            }
            ahead = here;
        }
        return modules == 1 ? 0 : first + evennessDeg < 360 ? ahead[first + evennessDeg] : -1;
    }
}
