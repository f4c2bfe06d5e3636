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
    private static final int PANELS = 24;

    /** Factor of a one-sided 95 % along a line: no circle of 95 % fits in a narrower half-plane. */
    private static final double LINE_95 = Math.sqrt(2) * Erf.erfInv(0.9);

    private OffsetCircle() {}

    /**
     * Radius about the target that holds 95 % of landings, to 1e-9 of the deviation.
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
                : new BrentSolver(1e-14, 1e-10).solve(200, r -> share(r, bias) - 0.95, least - 1e-9, most + 1e-9);
        return radius * deviationM;
    }

    /** Share of landings within a radius, both in deviations: strips across the line through target and middle, x = r sin t. */
    static double share(double radius, double bias) {
        double from = Math.asin(Math.max(-1, Math.min(1, (bias - FAR) / radius)));
        double to = Math.asin(Math.max(-1, Math.min(1, (bias + FAR) / radius)));
        GaussIntegratorFactory rules = new GaussIntegratorFactory();
        double sum = 0;
        for (int i = 0; i < PANELS; i++) {
            GaussIntegrator rule = rules.legendre(8, from + (to - from) * i / PANELS, from + (to - from) * (i + 1) / PANELS);
            sum += rule.integrate(t -> {
                double x = radius * Math.sin(t) - bias;
                double half = radius * Math.cos(t);
                return Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI) * Erf.erf(half / Math.sqrt(2)) * half;
            });
        }
        return sum;
    }
}
