package org.seacairn.report;

import java.util.ArrayList;
import java.util.List;
import org.seacairn.plan.SitingPlan.Display;

/**
 * Depths to draw contours of: whole multiples of a round interval (1, 2 or 5 times a power of ten) in display units,
 * the smallest that needs no more than {@value #MOST} lines.
 *
 * @param interval in display units
 * @param metresPerUnit of the display unit
 * @param unit its symbol
 * @param depths in display units, shallowest first; empty for flat ground
 */
record ContourLevels(double interval, double metresPerUnit, String unit, List<Double> depths) {
    static final int MOST = 12;

    private static final double METRES_PER_FOOT = 0.3048;
    /** A finer interval than this is below what surveys tell apart, in display units. */
    private static final double FINEST = 1;
    private static final double[] STEPS = {1, 2, 5};

    /** @param depthM metres, positive down, NaN for none; ground above the water has no contours but that of 0 */
    static ContourLevels of(float[] depthM, Display display) {
        double metresPerUnit = display == Display.US ? METRES_PER_FOOT : 1;
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (float d : depthM) {
            if (!Float.isNaN(d)) {
                least = Math.min(least, d);
                most = Math.max(most, d);
            }
        }
        double from = Math.max(0, least / metresPerUnit);
        double to = most / metresPerUnit;
        double interval = interval(from, to);
        List<Double> depths = new ArrayList<>();
        // A level that only touches the least or the largest depth is a dot, not a line.
        for (double i = least < 0 ? 0 : Math.floor(from / interval) + 1; i * interval < to; i++) {
            depths.add(i * interval);
        }
        return new ContourLevels(interval, metresPerUnit, display == Display.US ? "ft" : "m", List.copyOf(depths));
    }

    private static double interval(double from, double to) {
        for (double power = FINEST;; power *= 10) {
            for (double step : STEPS) {
                double interval = step * power;
                if (!(Math.floor(to / interval) - Math.floor(from / interval) > MOST)) {
                    return interval;
                }
            }
        }
    }

    /** Whether a line has labels: every second one, those of even multiples. */
    boolean isLabelled(double depth) {
        return Math.rint(depth / interval) % 2 == 0;
    }
}
