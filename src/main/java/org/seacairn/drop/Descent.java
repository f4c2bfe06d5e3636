package org.seacairn.drop;

import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;

/**
 * The way down of an upright module, released at the surface, under water and at rest over the ground. Immutable.
 *
 * <p>Vertical and horizontal motion have a quadratic drag and an added mass each, so that the one does not know of the other:
 * <pre>
 * (m + Ma) dw/dt = W - 1/2 rho DA w^2                      axial Ma and DA
 * (m + Ma) du/dt = -1/2 rho DA |u - U| (u - U)             lateral Ma and DA, U the current at the underside
 * </pre>
 * The first has a closed form: w = vt tanh(t/T), z = vt T ln cosh(t/T), T = (m + Ma) vt / W. The second is integrated
 * (Dormand-Prince 8(5,3), 1e-10 a step) from one bend of the current to the next, so that no step runs across one. Between two
 * steps, at most T/4 apart, stands a polynomial ({@link DriftTrack}); {@code DescentTest} finds the drift within 1e-6.
 */
public final class Descent {
    private static final double TOLERANCE = 1e-10;
    private static final double LONGEST_STEP_S = 1;

    private final SinkingBody body;
    private final double deepestM;
    private final double terminalMPerS;
    private final double scaleS;
    private final DriftTrack track = new DriftTrack();

    private Descent(SinkingBody body, double deepestM) {
        this.body = body;
        this.deepestM = deepestM;
        terminalMPerS = body.terminalSpeedMPerS();
        scaleS = (body.massKg() + body.axialAddedMassKg()) * terminalMPerS / body.submergedWeightN();
    }

    /**
     * @param deepestM to which depths can be asked for
     * @throws IllegalArgumentException if the current is not known that deep, or nothing brakes the module
     */
    public static Descent of(SinkingBody body, Flow flow, double deepestM) {
        if (!(deepestM >= 0 && deepestM <= flow.deepestM())) {
            throw new IllegalArgumentException("descent to " + deepestM + " m in a current known to " + flow.deepestM() + " m");
        }
        if (!(body.axialDragAreaM2() > 0)) {
            throw new IllegalArgumentException("axial drag area " + body.axialDragAreaM2() + " m2");
        }
        Descent descent = new Descent(body, deepestM);
        descent.integrate(flow);
        return descent;
    }

    public double deepestM() {
        return deepestM;
    }

    /** @param depthM from 0 to {@link #deepestM()}, else IllegalArgumentException */
    public Touchdown at(double depthM) {
        if (!(depthM >= 0 && depthM <= deepestM)) {
            throw new IllegalArgumentException("depth " + depthM + " m of a descent from 0 to " + deepestM + " m");
        }
        double timeS = timeS(depthM);
        double sinkMPerS = terminalMPerS * Math.tanh(timeS / scaleS);
        double energyJ = (body.massKg() + body.axialAddedMassKg()) / 2 * sinkMPerS * sinkMPerS;
        double[] now = track.at(timeS);
        return new Touchdown(depthM, timeS, now[0], now[1], sinkMPerS, now[2], now[3], energyJ);
    }

    /** T arcosh(e^x), x = depth / (vt T), so written that neither a large x nor a small one costs digits. */
    private double timeS(double depthM) {
        double x = depthM / (terminalMPerS * scaleS);
        return scaleS * (x + Math.log1p(Math.sqrt(-Math.expm1(-2 * x))));
    }

    private double depthM(double timeS) {
        double s = timeS / scaleS;
        // ln cosh s; the second form loses what is small against 1, the first overflows.
        double lnCosh = s < 1 ? Math.log1p(2 * Math.pow(Math.sinh(s / 2), 2)) : s + Math.log1p(Math.exp(-2 * s)) - Math.log(2);
        return terminalMPerS * scaleS * lnCosh;
    }

    private void integrate(Flow flow) {
        double longestS = Math.min(LONGEST_STEP_S, scaleS / 4);
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-12, longestS, TOLERANCE, TOLERANCE);
        integrator.addStepHandler(track);
        Sideways sideways = new Sideways(flow);
        double[] ends = flow.stretchesM(deepestM);
        double[] state = new double[4];
        track.add(0, state, sideways.derivatives(0, state));
        for (int i = 1; i < ends.length; i++) {
            double fromS = timeS(ends[i - 1]);
            double toS = timeS(ends[i]);
            if (toS - fromS > 1e-9 * scaleS) {
                integrator.integrate(sideways, fromS, state, toS, state);
            }
        }
    }

    /** State: drift east and north, speed east and north. */
    private final class Sideways implements FirstOrderDifferentialEquations {
        private final Flow flow;
        private final double dragPerM = body.water().densityKgPerM3() * body.lateralDragAreaM2()
                / (2 * (body.massKg() + body.lateralAddedMassKg()));

        Sideways(Flow flow) {
            this.flow = flow;
        }

        @Override
        public int getDimension() {
            return 4;
        }

        @Override
        public void computeDerivatives(double timeS, double[] state, double[] rate) {
            double depthM = depthM(timeS);
            double east = flow.eastHeldMPerS(depthM) - state[2];
            double north = flow.northHeldMPerS(depthM) - state[3];
            double pull = dragPerM * Math.hypot(east, north);
            rate[0] = state[2];
            rate[1] = state[3];
            rate[2] = pull * east;
            rate[3] = pull * north;
        }

        double[] derivatives(double timeS, double[] state) {
            double[] rate = new double[4];
            computeDerivatives(timeS, state, rate);
            return rate;
        }
    }
}
