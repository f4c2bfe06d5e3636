package org.seacairn.drop;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.seacairn.plan.SitingPlan.CurrentLevel;
import org.seacairn.plan.SitingPlan.CurrentProfile;

/**
 * Velocity of the water by depth. Its east and north components are linear between the levels of a profile; above
 * the first level that level's value holds, below the last nothing is known. Immutable.
 */
public final class Flow {
    private final List<CurrentLevel> levels;
    private final double[] depthM;
    private final double[] eastMPerS;
    private final double[] northMPerS;

    private Flow(List<CurrentLevel> levels) {
        this.levels = List.copyOf(levels);
        depthM = levels.stream().mapToDouble(CurrentLevel::depthM).toArray();
        eastMPerS = levels.stream().mapToDouble(l -> l.speedMPerS() * Math.sin(Math.toRadians(l.towardDeg()))).toArray();
        northMPerS = levels.stream().mapToDouble(l -> l.speedMPerS() * Math.cos(Math.toRadians(l.towardDeg()))).toArray();
    }

    public static Flow of(CurrentProfile profile) {
        return new Flow(profile.levels());
    }

    /** Every level faster by that much, negative for slower; none turns back: its speed stays 0 or more. */
    public Flow faster(double byMPerS) {
        return each(l -> new CurrentLevel(l.depthM(), Math.max(0, l.speedMPerS() + byMPerS), l.towardDeg()));
    }

    /** Every level's speed multiplied. */
    public Flow scaled(double factor) {
        return each(l -> new CurrentLevel(l.depthM(), l.speedMPerS() * factor, l.towardDeg()));
    }

    /** Every level turned clockwise, seen from above. */
    public Flow turned(double byDeg) {
        return each(l -> new CurrentLevel(l.depthM(), l.speedMPerS(), l.towardDeg() + byDeg));
    }

    private Flow each(UnaryOperator<CurrentLevel> change) {
        return new Flow(levels.stream().map(change).toList());
    }

    /** Down to where the profile is known. */
    public double deepestM() {
        return depthM[depthM.length - 1];
    }

    /** @throws IllegalArgumentException deeper than {@link #deepestM()}, here and below */
    public double eastMPerS(double depthM) {
        return within(depthM, eastMPerS);
    }

    public double northMPerS(double depthM) {
        return within(depthM, northMPerS);
    }

    public double speedMPerS(double depthM) {
        return Math.hypot(eastMPerS(depthM), northMPerS(depthM));
    }

    private double within(double atM, double[] component) {
        if (!(atM <= deepestM())) {
            throw new IllegalArgumentException("depth " + atM + " m, where the current is known down to " + deepestM() + " m");
        }
        return held(atM, component);
    }

    /** As {@link #eastMPerS}, with the last level's value below it. */
    double eastHeldMPerS(double depthM) {
        return held(depthM, eastMPerS);
    }

    double northHeldMPerS(double depthM) {
        return held(depthM, northMPerS);
    }

    private double held(double atM, double[] component) {
        if (atM <= depthM[0]) {
            return component[0];
        }
        for (int i = 1; i < depthM.length; i++) {
            if (atM <= depthM[i]) {
                double share = (atM - depthM[i - 1]) / (depthM[i] - depthM[i - 1]);
                return component[i - 1] + share * (component[i] - component[i - 1]);
            }
        }
        return component[component.length - 1];
    }

    /** True direction that the uppermost level flows toward. */
    double surfaceTowardDeg() {
        return levels.get(0).towardDeg();
    }

    /** Depths between 0 and one of interest where the components bend, with both ends, from the surface down. */
    double[] stretchesM(double deepestM) {
        List<Double> ends = new ArrayList<>(List.of(0.0));
        for (double level : depthM) {
            if (level > 0 && level < deepestM) {
                ends.add(level);
            }
        }
        ends.add(deepestM);
        return ends.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
