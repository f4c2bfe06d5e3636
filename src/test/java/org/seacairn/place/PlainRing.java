package org.seacairn.place;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import net.sf.geographiclib.Geodesic;

/** The best ring by trying every choice of cells, from the definition alone. */
final class PlainRing {
    private final List<RingCell> cells;
    private final int modules;
    private final double apartM;
    private final List<RingCell> chosen = new ArrayList<>();

    List<RingCell> best;
    int evenness = -1;
    long billionths;
    /** The largest number of cells of which any two are far enough apart. */
    int fit;

    PlainRing(List<RingCell> unordered, int modules, double apartM) {
        this.cells = new ArrayList<>(unordered);
        cells.sort(Comparator.comparingDouble((RingCell c) -> bearing(c)).thenComparingDouble(RingCell::distanceM)
                .thenComparingInt(c -> c.pick().row()).thenComparingInt(c -> c.pick().col()));
        this.modules = modules;
        this.apartM = apartM;
        choose(0);
    }

    private void choose(int from) {
        fit = Math.max(fit, chosen.size());
        if (chosen.size() == modules) {
            judge();
        }
        for (int i = from; i < cells.size(); i++) {
            RingCell cell = cells.get(i);
            if (chosen.stream().allMatch(c -> metres(c, cell) >= apartM)) {
                chosen.add(cell);
                choose(i + 1);
                chosen.remove(chosen.size() - 1);
            }
        }
    }

    /** Choices come in order from north, so the first of equals stays. */
    private void judge() {
        int even = (int) Math.floor(leastStep(chosen.stream().map(PlainRing::bearing).toList()));
        long sum = chosen.stream().mapToLong(c -> Math.round(c.pick().score() * 1e9)).sum();
        if (even > evenness || even == evenness && sum > billionths) {
            evenness = even;
            billionths = sum;
            best = List.copyOf(chosen);
        }
    }

    static double leastStep(List<Double> bearings) {
        double least = bearings.get(0) + 360 - bearings.get(bearings.size() - 1);
        for (int i = 1; i < bearings.size(); i++) {
            least = Math.min(least, bearings.get(i) - bearings.get(i - 1));
        }
        return least;
    }

    static double bearing(RingCell cell) {
        return (cell.azimuthDeg() + 360) % 360;
    }

    static double metres(RingCell a, RingCell b) {
        return Geodesic.WGS84.Inverse(a.pick().latitudeDeg(), a.pick().longitudeDeg(),
                b.pick().latitudeDeg(), b.pick().longitudeDeg()).s12;
    }
}
