package org.seacairn.drop;

import java.util.function.DoubleUnaryOperator;

/** A function of depth, looked up in a table: linear between depths half a metre apart. Immutable. */
public final class ByDepth {
    /** What is tabulated here bends over several metres; linear between, it is off by less than a millimetre or a ten-thousandth. */
    private static final double STEP_M = 0.5;

    private final double deepestM;
    private final double[] values;

    private ByDepth(double deepestM, double[] values) {
        this.deepestM = deepestM;
        this.values = values;
    }

    static ByDepth of(double deepestM, DoubleUnaryOperator function) {
        double[] values = new double[(int) Math.ceil(deepestM / STEP_M) + 1];
        for (int i = 0; i < values.length; i++) {
            values[i] = function.applyAsDouble(Math.min(deepestM, i * STEP_M));
        }
        return new ByDepth(deepestM, values);
    }

    /** The same, with no value less than one at a lesser depth. */
    ByDepth neverFalling() {
        double[] raised = values.clone();
        for (int i = 1; i < raised.length; i++) {
            raised[i] = Math.max(raised[i], raised[i - 1]);
        }
        return new ByDepth(deepestM, raised);
    }

    /** At a depth in metres; above 0 the value at 0, below the deepest that of the deepest. NaN gives NaN. */
    public double at(double depthM) {
        if (Double.isNaN(depthM)) {
            return depthM;
        }
        double within = Math.max(0, Math.min(deepestM, depthM));
        int i = Math.min((int) (within / STEP_M), values.length - 2);
        if (i < 0) {
            return values[0];
        }
        // The last piece may be shorter than a step.
        double from = i * STEP_M;
        double share = (within - from) / (Math.min(deepestM, from + STEP_M) - from);
        // Between two infinities their difference would be no number.
        return share == 0 || values[i] == values[i + 1] ? values[i] : values[i] + share * (values[i + 1] - values[i]);
    }
}
