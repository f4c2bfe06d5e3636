package org.seacairn.drop;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * How a module turns on its way down, in the vertical plane of the surface current. Immutable.
 *
 * <p>What is not known is tried both ways and every figure is that of the worse: the pole leaning with the current or against it
 * on leaving the deck, and the moment of the flow about the base with its ideal value or without ({@link PlanarMotion}).
 */
public final class Attitude {
    /** Tilt under which a module counts as settled, and as upright again. Common practice, no source. */
    static final double SETTLED_DEG = 5;
    static final double UPRIGHT_DEG = 30;
    /** The phase of a swing as it touches down is chance, so this much above and below the bottom counts too. */
    static final double NEAR_M = 5;

    private final List<Swing> swings;
    private final Descent upright;
    private final double towardDeg;

    private Attitude(List<Swing> swings, Descent upright, double towardDeg) {
        this.swings = swings;
        this.upright = upright;
        this.towardDeg = towardDeg;
    }

    /**
     * @param releaseTiltDeg 0 upright, 90 on its side, 180 upside down, where an exact balance would hold for ever
     * @param deepestM to which depths can be asked for; the run goes on a little deeper, in the current of the profile's last level
     * @throws IllegalArgumentException if the current is not known that deep
     */
    public static Attitude of(SinkingBody body, Flow flow, double releaseTiltDeg, double deepestM) {
        if (!(releaseTiltDeg >= 0 && releaseTiltDeg <= 180)) {
            throw new IllegalArgumentException("release tilt " + releaseTiltDeg + " deg, which is not 0 to 180");
        }
        Descent upright = Descent.of(body, flow, deepestM);
        double uprightS = upright.at(deepestM).timeS() + NEAR_M / body.terminalSpeedMPerS();
        List<Swing> swings = new ArrayList<>();
        for (boolean baseMunk : new boolean[] {true, false}) {
            PlanarMotion motion = new PlanarMotion(body, flow, flow.surfaceTowardDeg(), baseMunk);
            swings.add(new Swing(motion, releaseTiltDeg, deepestM + NEAR_M, uprightS));
            if (releaseTiltDeg > 0) {
                swings.add(new Swing(motion, -releaseTiltDeg, deepestM + NEAR_M, uprightS));
            }
        }
        return new Attitude(List.copyOf(swings), upright, flow.surfaceTowardDeg());
    }

    /** Tilt in degrees, 0 to 180, as the underside of the base first comes to that depth. */
    public double tiltDegAt(double depthM) {
        checked(depthM);
        return worst(swing -> swing.tiltDegAt(depthM));
    }

    /** Largest tilt in degrees, 0 to 180, within 5 m above and below that depth. */
    public double worstTiltDegNear(double depthM) {
        checked(depthM);
        return worst(swing -> swing.worstTiltDeg(depthM - NEAR_M, depthM + NEAR_M));
    }

    /** Time from which on the tilt stays under 5 degrees to the end, or empty. */
    public OptionalDouble settledTimeS() {
        return settled((swing, i) -> swing.timeS(i));
    }

    /** Depth from which on the tilt stays under 5 degrees to the end, or empty. */
    public OptionalDouble settledDepthM() {
        return settled(Swing::reachedM);
    }

    /** Whether it is under 30 degrees from some depth above the deepest on, to the end. */
    public boolean rightsItself() {
        return swings.stream().allMatch(swing -> {
            int from = swing.staysUnder(UPRIGHT_DEG);
            return from < swing.count() && swing.reachedM(from) <= upright.deepestM();
        });
    }

    /**
     * How far a module that turns comes down from where the upright one does, at most, along the surface current: a leaning base
     * glides toward the side that the pole leans to. In metres; no part of {@link Descent}, to be held against the scatter.
     */
    public double glideM(double depthM) {
        Touchdown at = upright.at(depthM);
        double toward = Math.toRadians(towardDeg);
        double driftM = at.driftEastM() * Math.sin(toward) + at.driftNorthM() * Math.cos(toward);
        return worst(swing -> Math.abs(swing.forwardMAt(depthM) - driftM));
    }

    private void checked(double depthM) {
        if (!(depthM >= 0 && depthM <= upright.deepestM())) {
            throw new IllegalArgumentException("depth " + depthM + " m of a descent from 0 to " + upright.deepestM() + " m");
        }
    }

    private double worst(ToDoubleFunction<Swing> figure) {
        return swings.stream().mapToDouble(figure).max().orElseThrow();
    }

    private interface AtSample {
        double of(Swing swing, int sample);
    }

    private OptionalDouble settled(AtSample figure) {
        double latest = 0;
        for (Swing swing : swings) {
            int from = swing.staysUnder(SETTLED_DEG);
            if (from == swing.count() || swing.reachedM(from) > upright.deepestM()) {
                return OptionalDouble.empty();
            }
            latest = Math.max(latest, figure.of(swing, from));
        }
        return OptionalDouble.of(latest);
    }
}
