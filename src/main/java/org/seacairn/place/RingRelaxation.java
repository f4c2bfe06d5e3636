package org.seacairn.place;

import java.util.Arrays;
import java.util.BitSet;

/**
 * The best ring from a given first cell when only neighbours must keep their distance: a bound on every
 * ring from there, and a ring itself where no other two of its cells stand too near each other.
 *
 * <p>Dynamic programming backwards over the modules: the best way on from a cell as module k is its worth
 * and the best way on from any later cell as module k + 1. Of equal ways the one that comes first from
 * north is kept. A look at the best of all later cells mostly settles it; only where that one is too near
 * are the others tried. Not safe for several threads at once: it keeps its tables.
 */
final class RingRelaxation {
    private static final long NONE = -1;

    private final RingCells cells;
    private final int modules;
    private final double evennessDeg;
    /** The first cell far enough on in bearing; the first of those that is also far enough away, at the soonest from here on. */
    private final int[] next;
    private final int[] soonest;
    /** The last cell that a cell can follow, at the latest up to here. */
    private final int[] latest;
    private final int[] low;
    private final int[] high;
    private final int[][] follower;
    private long[] here;
    private long[] ahead;
    private int[] topHere;
    private int[] topAhead;
    private long work;

    /** @param evennessDeg least difference of bearing between neighbours, whole degrees, from 0 */
    RingRelaxation(RingCells cells, int modules, int evennessDeg) {
        this.cells = cells;
        this.modules = modules;
        this.evennessDeg = evennessDeg;
        int n = cells.size();
        this.next = new int[n];
        this.soonest = new int[n + 1];
        this.latest = new int[n];
        this.low = new int[modules];
        this.high = new int[modules];
        this.follower = new int[modules][modules == 1 ? 0 : n];
        this.here = new long[n];
        this.ahead = new long[n];
        this.topHere = new int[n];
        this.topAhead = new int[n];
        steps();
    }

    private void steps() {
        int n = cells.size();
        int end = 0;
        for (int i = 0; i < n; i++) {
            end = Math.max(end, i + 1);
            while (end < n && cells.stepDeg(i, end) < evennessDeg) {
                end++;
            }
            next[i] = end;
            int free = end;
            while (free < n && cells.tooNear(i, free)) {
                free++;
            }
            soonest[i] = free;
            work += free - end;
        }
        soonest[n] = n;
        for (int i = n - 1; i >= 0; i--) {
            soonest[i] = Math.min(soonest[i], soonest[i + 1]);
        }
        int before = 0;
        int last = -1;
        for (int i = 0; i < n; i++) {
            while (before < i && next[before] <= i) {
                before++;
            }
            int free = before - 1;
            while (free > last && cells.tooNear(free, i)) {
                free--;
                work++;
            }
            last = Math.max(last, free);
            latest[i] = last;
        }
    }

    /** Cells looked at so far: a measure of time that is the same on every machine. */
    long work() {
        return work;
    }

    /** False only if it is proved, with no more than this work, that there is no ring even as far as neighbours go. */
    boolean mayHaveRing(long mostWork) {
        for (int start = 0; start < cells.size() && work <= mostWork; start++) {
            if (best(start, null) != null) {
                return true;
            }
        }
        return work > mostWork;
    }

    /**
     * The best ring whose first cell from north is {@code start}; null: there is none.
     *
     * @param excluded cells not to be used, or null
     */
    RingPath best(int start, BitSet excluded) {
        work += modules;
        if (excluded != null && excluded.get(start) || !windows(start)) {
            return null;
        }
        int last = modules - 1;
        for (int i = high[last]; i >= low[last]; i--) {
            boolean closes = modules == 1 || (excluded == null || !excluded.get(i)) && !cells.tooNear(start, i);
            here[i] = closes ? cells.worth(i) : NONE;
        }
        for (int k = last - 1; k >= 0; k--) {
            turnOver(k + 1);
            for (int i = high[k]; i >= low[k]; i--) {
                int on = excluded != null && excluded.get(i) ? -1 : best(i, Math.max(next[i], low[k + 1]), high[k + 1]);
                follower[k][i] = on;
                here[i] = on < 0 ? NONE : cells.worth(i) + ahead[on];
            }
        }
        if (here[start] == NONE) {
            return null;
        }
        int[] path = new int[modules];
        path[0] = start;
        for (int k = 1; k < modules; k++) {
            path[k] = follower[k - 1][path[k - 1]];
        }
        return new RingPath(here[start], path);
    }

    /** Between which cells each module must lie. False: there is no room. */
    private boolean windows(int start) {
        low[0] = start;
        for (int k = 1; k < modules; k++) {
            low[k] = soonest[low[k - 1]];
        }
        int last = modules - 1;
        high[last] = modules == 1 ? start : lastThatCloses(start);
        for (int k = last; k > 0; k--) {
            if (low[k] > high[k]) {
                return false;
            }
            high[k - 1] = latest[high[k]];
        }
        boolean room = low[0] <= high[0];
        high[0] = start;
        return room;
    }

    private int lastThatCloses(int start) {
        int from = start;
        int to = cells.size();
        while (to - from > 1) {
            int middle = (from + to) / 2;
            if (cells.stepDeg(middle, start) >= evennessDeg) {
                from = middle;
            } else {
                to = middle;
            }
        }
        return from;
    }

    /** What was worked out last becomes what lies ahead, with the best cell from each cell on. */
    private void turnOver(int k) {
        long[] values = here;
        here = ahead;
        ahead = values;
        int[] tops = topHere;
        topHere = topAhead;
        topAhead = tops;
        work += high[k] - low[k] + 1;
        int top = high[k];
        for (int i = high[k]; i >= low[k]; i--) {
            top = ahead[i] >= ahead[top] ? i : top;
            topAhead[i] = top;
        }
    }

    /** The best cell to go on to, the first of equals; -1: none. */
    private int best(int cell, int from, int to) {
        if (from > to || ahead[topAhead[from]] == NONE) {
            return -1;
        }
        if (!cells.tooNear(cell, topAhead[from])) {
            return topAhead[from];
        }
        int best = -1;
        long most = NONE;
        int i = from;
        for (; i <= to && ahead[topAhead[i]] > most; i++) {
            if (ahead[i] > most && !cells.tooNear(cell, i)) {
                most = ahead[i];
                best = i;
            }
        }
        work += i - from;
        return best;
    }
}
