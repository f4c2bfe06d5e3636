package org.seacairn.drop;

import java.util.Arrays;
import org.apache.commons.math3.ode.events.EventHandler;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.apache.commons.math3.ode.sampling.FixedStepHandler;
import org.apache.commons.math3.ode.sampling.StepNormalizer;

/** One way down of a module that turns: its tilt and its way forward over time and depth, sampled every 0.02 s. Immutable once made. */
final class Swing {
    private static final double SAMPLE_S = 0.02;
    private static final double TOLERANCE = 1e-9;
    private static final double LONGEST_STEP_S = 0.5;
    /** Times as long as the module takes upright: in whatever position it sinks, it is down by then. */
    private static final double PATIENCE = 20;

    private final Samples samples = new Samples();
    private final double[] end;

    /**
     * @param tilt0Deg at release, at rest, underside at the surface
     * @param deepestM where to stop
     */
    Swing(PlanarMotion motion, double tilt0Deg, double deepestM, double uprightS) {
        DormandPrince853Integrator integrator =
                new DormandPrince853Integrator(1e-10, LONGEST_STEP_S, TOLERANCE, TOLERANCE);
        integrator.addStepHandler(new StepNormalizer(SAMPLE_S, samples));
        integrator.addEventHandler(new Bottom(deepestM), LONGEST_STEP_S, 1e-9, 100);
        double[] state = new double[PlanarMotion.DIMENSION];
        state[PlanarMotion.TILT] = Math.toRadians(tilt0Deg);
        double stoppedS = integrator.integrate(motion, 0, state, PATIENCE * (uprightS + 1), state);
        if (state[PlanarMotion.DEPTH] < deepestM - 1e-3) {
            throw new IllegalStateException("after " + stoppedS + " s the module is at " + state[PlanarMotion.DEPTH] + " m");
        }
        samples.handleStep(stoppedS, state, null, true);
        end = state.clone();
    }

    /** At the bottom. */
    double[] end() {
        return end.clone();
    }

    int count() {
        return samples.size;
    }

    double timeS(int i) {
        return samples.timeS[i];
    }

    /** Deepest that the underside has been so far. */
    double reachedM(int i) {
        return samples.reachedM[i];
    }

    double depthM(int i) {
        return samples.depthM[i];
    }

    double forwardM(int i) {
        return samples.forwardM[i];
    }

    /** Signed and not wrapped: positive where the pole leans forward, 360 after a turn. */
    double signedTiltDeg(int i) {
        return samples.tiltDeg[i];
    }

    /** 0 upright to 180 upside down. */
    double tiltDeg(int i) {
        return wrapped(samples.tiltDeg[i]);
    }

    /** As its underside first comes to that depth. */
    double tiltDegAt(double depthM) {
        return wrapped(at(depthM, samples.tiltDeg));
    }

    /** Way forward of the underside from where it was released, as it first comes to that depth. */
    double forwardMAt(double depthM) {
        return at(depthM, samples.forwardM);
    }

    private double at(double depthM, double[] figure) {
        int after = 0;
        while (after < samples.size - 1 && samples.reachedM[after] < depthM) {
            after++;
        }
        if (after == 0) {
            return figure[0];
        }
        double from = samples.depthM[after - 1];
        double share = Math.min(1, (depthM - from) / (samples.depthM[after] - from));
        return figure[after - 1] + share * (figure[after] - figure[after - 1]);
    }

    /** Largest tilt while the underside is between two depths; NaN if it is in none of the samples. */
    double worstTiltDeg(double fromM, double toM) {
        double worst = Double.NaN;
        for (int i = 0; i < samples.size; i++) {
            if (samples.depthM[i] >= fromM && samples.depthM[i] <= toM && !(tiltDeg(i) <= worst)) {
                worst = tiltDeg(i);
            }
        }
        return worst;
    }

    /** First sample from which on the tilt stays under a limit, or the number of samples: never. */
    int staysUnder(double limitDeg) {
        int i = samples.size;
        while (i > 0 && tiltDeg(i - 1) < limitDeg) {
            i--;
        }
        return i;
    }

    private static double wrapped(double deg) {
        return Math.abs(Math.IEEEremainder(deg, 360));
    }

    private record Bottom(double deepestM) implements EventHandler {
        @Override
        public void init(double fromS, double[] from, double toS) {}

        @Override
        public double g(double timeS, double[] y) {
            return y[PlanarMotion.DEPTH] - deepestM;
        }

        @Override
        public Action eventOccurred(double timeS, double[] y, boolean increasing) {
            return Action.STOP;
        }

        @Override
        public void resetState(double timeS, double[] y) {}
    }

    private static final class Samples implements FixedStepHandler {
        private double[] timeS = new double[2048];
        private double[] depthM = new double[2048];
        private double[] reachedM = new double[2048];
        private double[] tiltDeg = new double[2048];
        private double[] forwardM = new double[2048];
        private int size;

        @Override
        public void init(double fromS, double[] from, double toS) {}

        @Override
        public void handleStep(double atS, double[] y, double[] rate, boolean isLast) {
            if (size == timeS.length) {
                timeS = Arrays.copyOf(timeS, 2 * size);
                depthM = Arrays.copyOf(depthM, 2 * size);
                reachedM = Arrays.copyOf(reachedM, 2 * size);
                tiltDeg = Arrays.copyOf(tiltDeg, 2 * size);
                forwardM = Arrays.copyOf(forwardM, 2 * size);
            }
            timeS[size] = atS;
            depthM[size] = y[PlanarMotion.DEPTH];
            reachedM[size] = size == 0 ? depthM[size] : Math.max(reachedM[size - 1], depthM[size]);
            forwardM[size] = y[PlanarMotion.X];
            tiltDeg[size++] = Math.toDegrees(y[PlanarMotion.TILT]);
        }
    }
}
