package org.seacairn.review;

/**
 * The figures of one verdict, rounded as they are printed (half up), so that a verdict never
 * contradicts its own row: {@code margin} is what is left of {@code measured} after {@code required} and
 * {@code allowance}.
 *
 * @param required by the rule itself, without any allowance; NaN if the rule is not about a figure
 * @param measured NaN for none
 * @param allowance for uncertainty, 0 or more
 * @param atLeast whether the measured must reach the required, or may not exceed it
 */
public record Figures(Unit unit, double required, double measured, double allowance, boolean atLeast) {

    /** What the figures are in. */
    public enum Unit {
        METRES(3), DEGREES(3), VRM(6), FACTOR(3);

        private final int decimals;

        Unit(int decimals) {
            this.decimals = decimals;
        }

        /** Decimals that are printed, and that decide. */
        public int decimals() {
            return decimals;
        }
    }

    public Figures {
        double one = Math.pow(10, unit.decimals);
        required = rounded(required, one);
        measured = rounded(measured, one);
        allowance = rounded(allowance, one);
    }

    static Figures metresAtLeast(double requiredM, double measuredM, double allowanceM) {
        return new Figures(Unit.METRES, requiredM, measuredM, allowanceM, true);
    }

    private static double rounded(double value, double one) {
        // + 0.0: no minus before a zero.
        return Double.isFinite(value) ? Math.round(value * one) / one + 0.0 : Double.NaN;
    }

    /** What is left; below 0 where the allowance is not met. NaN where nothing was measured. */
    public double margin() {
        double left = atLeast ? measured - required : required - measured;
        return rounded(left - allowance, Math.pow(10, unit.decimals));
    }

    /** The verdict of the figures alone: {@code no data} where nothing was measured. */
    Verdict verdict() {
        if (Double.isNaN(measured)) {
            return Verdict.NO_DATA;
        }
        double one = Math.pow(10, unit.decimals);
        if (margin() >= 0) {
            return Verdict.PASS;
        }
        return Math.round((margin() + allowance) * one) >= 0 ? Verdict.MARGINAL : Verdict.FAIL;
    }
}
