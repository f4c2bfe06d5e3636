package org.seacairn.drop;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Erf;

/**
 * A circle about the target where landings scatter about a place beside it: normal, alike each way (their distance from
 * the target has Rice's distribution).
 */
final class OffsetCircle {
    /** Nothing that counts lies farther out than this many deviations. */
    private static final double FAR = 9;
    private static final int PANELS = 8;
    private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(8);

    /** Factor of a one-sided 95 % along a line: no circle of 95 % fits in a narrower half-plane. */
    private static final double LINE_95 = Math.sqrt(2) * Erf.erfInv(0.9);

    private OffsetCircle() {}

    /**
     * Radius about the target that holds 95 % of landings, to 1e-7 of the deviation.
     *
     * @param biasM from the target to the middle of the landings, 0 or more
     * @param deviationM along any line, above 0
     */
    static double radius95M(double biasM, double deviationM) {
        double bias = biasM / deviationM;
        double least = Math.max(Scatter.RADIUS_95, bias + LINE_95);
        double most = bias + Scatter.RADIUS_95;
        // The bounds meet where there is no bias, and rounding may cross them.
        double radius = most - least < 1e-12 * most ? most
                : new BrentSolver(1e-14, 1e-7).solve(200, r -> share(r, bias) - 0.95, least - 1e-9, most + 1e-9);
        return radius * deviationM;
    }

    /** Share of landings within a radius, both in deviations: strips across the line through target and middle, x = r sin t. */
    static double share(double radius, double bias) {
        double from = Math.asin(Math.max(-1, Math.min(1, (bias - FAR) / radius)));
        double to = Math.asin(Math.max(-1, Math.min(1, (bias + FAR) / radius)));
        double half = (to - from) / PANELS / 2;
        double sum = 0;
        for (int panel = 0; panel < PANELS; panel++) {
            double middle = from + (2 * panel + 1) * half;
            sum += half * RULE.integrate(t -> strip(radius, bias, middle + t * half));
        }
        return sum;
    }

    private static double strip(double radius, double bias, double t) {
        double x = radius * Math.sin(t) - bias;
        double half = radius * Math.cos(t);
        return Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI) * Erf.erf(half / Math.sqrt(2)) * half;
    }
}
