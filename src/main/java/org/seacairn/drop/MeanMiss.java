package org.seacairn.drop;

import java.util.List;
import org.apache.commons.math3.distribution.FDistribution;

/**
 * The mean of several misses and the ellipse about it that holds the true one at 95 % confidence (H. Hotelling, The
 * generalization of Student's ratio, 1931): {@code n (m - mu)' S^-1 (m - mu) <= 2 (n - 1) / (n - 2) F(0.95; 2, n - 2)}. The
 * ellipse takes its shape from the misses alone; with three to five of them it is very large.
 *
 * @param eastM metres east
 * @param northM metres north
 * @param semiMajorM of the ellipse
 * @param semiMinorM of the ellipse, 0 where all misses lie on a line
 * @param majorAxisDeg true bearing of its longer axis, 0 to below 180
 * @param zeroWithin whether the ellipse holds zero, so that the misses show no bias
 */
public record MeanMiss(
        double eastM, double northM, double semiMajorM, double semiMinorM, double majorAxisDeg, boolean zeroWithin) {
    /** A variance across the longer axis under this share of the one along it is rounding. */
    private static final double FLAT = 1e-12;

    /** @param misses three or more */
    static MeanMiss of(List<Miss> misses) {
        int n = misses.size();
        double east = misses.stream().mapToDouble(Miss::eastM).average().orElseThrow();
        double north = misses.stream().mapToDouble(Miss::northM).average().orElseThrow();
        double ee = 0;
        double en = 0;
        double nn = 0;
        for (Miss miss : misses) {
            double e = miss.eastM() - east;
            double v = miss.northM() - north;
            ee += e * e / (n - 1);
            en += e * v / (n - 1);
            nn += v * v / (n - 1);
        }
        double spread = Math.hypot(ee - nn, 2 * en);
        double most = (ee + nn + spread) / 2;
        // As determinant over the larger one: the difference would leave rounding where it is small.
        double least = most == 0 ? 0 : Math.max(0, (ee * nn - en * en) / most);
        if (least < FLAT * most) {
            least = 0;
        }
        double axis = Math.atan2(2 * en, nn - ee) / 2;
        double scale = 2.0 * (n - 1) / (n - 2) * new FDistribution(2, n - 2).inverseCumulativeProbability(0.95) / n;
        double along = north * Math.cos(axis) + east * Math.sin(axis);
        double across = east * Math.cos(axis) - north * Math.sin(axis);
        return new MeanMiss(east, north, Math.sqrt(most * scale), Math.sqrt(least * scale),
                (Math.toDegrees(axis) + 180) % 180, square(along, most) + square(across, least) <= scale);
    }

    /** Length of the mean miss in metres. */
    public double lengthM() {
        return Math.hypot(eastM, northM);
    }

    /** True bearing of the mean miss, 0 to below 360 degrees. */
    public double bearingDeg() {
        return (Math.toDegrees(Math.atan2(eastM, northM)) + 360) % 360;
    }

    /** A square over a variance; off a line that has none it is infinite. */
    private static double square(double length, double variance) {
        return variance > 0 ? length * length / variance : Math.abs(length) < 1e-6 ? 0 : Double.POSITIVE_INFINITY;
    }
}
