package org.seacairn.place;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import net.sf.geographiclib.Geodesic;

/** The best ring by trying every choice of cells, from the definition alone. */
final class PlainRing {
    private final List<RingCell> cells;
    private final int modules;
    private final boolean[][] near;
    private final int most;
    private final int[] chosen;

    List<RingCell> best;
    int evenness = -1;
    long billionths;
    /** The largest number of cells of which any two are far enough apart. */
    int fit;

    /** @param most so many cells are chosen at most; as many as there are for a true {@link #fit} */
    PlainRing(List<RingCell> unordered, int modules, double apartM, int most) {
        this.cells = new ArrayList<>(unordered);
        cells.sort(Comparator.comparingDouble((RingCell c) -> bearing(c)).thenComparingDouble(RingCell::distanceM)
                .thenComparingInt(c -> c.pick().row()).thenComparingInt(c -> c.pick().col()));
        this.modules = modules;
        this.most = most;
        this.near = new boolean[cells.size()][cells.size()];
        this.chosen = new int[cells.size()];
        for (int i = 0; i < cells.size(); i++) {
            for (int k = 0; k < cells.size(); k++) {
                near[i][k] = metres(cells.get(i), cells.get(k)) < apartM;
            }
        }
        choose(0, 0);
    }

    private void choose(int from, int count) {
        fit = Math.max(fit, count);
        if (count == modules) {
            judge();
        }
        for (int i = from; i < cells.size() && count < most; i++) {
            int k = 0;
            while (k < count && !near[i][chosen[k]]) {
                k++;
            }
            if (k == count) {
                chosen[count] = i;
                choose(i + 1, count + 1);
            }
        }
    }

    /** Choices come in order from north, so the first of equals stays. */
    private void judge() {
        double least = modules == 1 ? 360 : bearing(chosen[0]) + 360 - bearing(chosen[modules - 1]);
        long sum = 0;
        for (int i = 0; i < modules; i++) {
            least = i == 0 ? least : Math.min(least, bearing(chosen[i]) - bearing(chosen[i - 1]));
            sum += Math.round(cells.get(chosen[i]).pick().score() * 1e9);
        }
        int even = (int) Math.floor(least);
        if (even > evenness || even == evenness && sum > billionths) {
            evenness = even;
            billionths = sum;
            best = new ArrayList<>();
            for (int i = 0; i < modules; i++) {
                best.add(cells.get(chosen[i]));
            }
        }
    }

    private double bearing(int i) {
        return bearing(cells.get(i));
    }

    private static double bearing(RingCell cell) {
        return (cell.azimuthDeg() + 360) % 360;
    }

    static double metres(RingCell a, RingCell b) {
        return Geodesic.WGS84.Inverse(a.pick().latitudeDeg(), a.pick().longitudeDeg(),
                b.pick().latitudeDeg(), b.pick().longitudeDeg()).s12;
    }
}
