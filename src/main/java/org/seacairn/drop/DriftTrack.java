package org.seacairn.drop;

import java.util.Arrays;
import org.apache.commons.math3.ode.sampling.StepHandler;
import org.apache.commons.math3.ode.sampling.StepInterpolator;

/**
 * Horizontal motion of a descent: drift, speed and acceleration at the ends of the integrator's steps, and between
 * two of them the quintic polynomial that has all three at both. Filled by one integration, not changed after it.
 */
final class DriftTrack implements StepHandler {
    private double[] timeS = new double[64];
    private double[][] state = new double[64][];
    private int size;

    @Override
    public void init(double fromS, double[] from, double toS) {}

    @Override
    public void handleStep(StepInterpolator step, boolean isLast) {
        step.setInterpolatedTime(step.getCurrentTime());
        add(step.getCurrentTime(), step.getInterpolatedState(), step.getInterpolatedDerivatives());
    }

    /** Appends drift, speed and acceleration, east and north. */
    void add(double atS, double[] state, double[] rate) {
        if (size == timeS.length) {
            timeS = Arrays.copyOf(timeS, 2 * size);
            this.state = Arrays.copyOf(this.state, 2 * size);
        }
        timeS[size] = atS;
        this.state[size++] = new double[] {state[0], state[1], state[2], state[3], rate[2], rate[3]};
    }

    /** Drift east and north, speed east and north. */
    double[] at(double atS) {
        int found = Arrays.binarySearch(timeS, 0, size, atS);
        if (found >= 0 || size == 1) {
            return state[Math.max(0, found)];
        }
        int after = Math.min(-found - 1, size - 1);
        double h = timeS[after] - timeS[after - 1];
        double s = (atS - timeS[after - 1]) / h;
        double[] now = new double[4];
        for (int axis = 0; axis < 2; axis++) {
            between(state[after - 1], state[after], axis, s, h, now);
        }
        return now;
    }

    /** Quintic with place, speed and acceleration of both ends: its value and its slope. */
    private static void between(double[] a, double[] b, int axis, double s, double h, double[] now) {
        double v0 = a[2 + axis] * h;
        double v1 = b[2 + axis] * h;
        double c0 = a[4 + axis] * h * h;
        double c1 = b[4 + axis] * h * h;
        double rise = b[axis] - a[axis];
        double p3 = 10 * rise - 6 * v0 - 4 * v1 - 1.5 * c0 + 0.5 * c1;
        double p4 = -15 * rise + 8 * v0 + 7 * v1 + 1.5 * c0 - c1;
        double p5 = 6 * rise - 3 * v0 - 3 * v1 - 0.5 * c0 + 0.5 * c1;
        now[axis] = a[axis] + s * (v0 + s * (c0 / 2 + s * (p3 + s * (p4 + s * p5))));
        now[2 + axis] = (v0 + s * (c0 + s * (3 * p3 + s * (4 * p4 + s * 5 * p5)))) / h;
    }
}
