package org.seacairn.drop;

import java.util.Arrays;
import java.util.Locale;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.random.MersenneTwister;
import org.apache.commons.math3.random.RandomGenerator;
import org.seacairn.Progress;
import org.seacairn.plan.SitingPlan.Current;

/**
 * A second opinion on the landing radius: landings drawn at random, each with a current, a drag, a place of the barge and
 * a scatter of its own. The same seed gives the same draws.
 *
 * @param radiusM the radius that 95 % of the draws fall within
 * @param lowM,highM bounds of that radius at 95 % confidence, for the draws are limited in number
 * @param draws how many
 */
public record LandingDraws(double radiusM, double lowM, double highM, int draws) {
    private static final double SHARE = 0.95;
    /** What 95 % of a normal error lies within, along a line: 1.96 deviations. */
    private static final double LINE_95 = new NormalDistribution(null, 0, 1).inverseCumulativeProbability(0.975);
    /** A draw may not turn drag round, nor brake as little as nothing. */
    private static final double LEAST_DRAG = 0.1;

    /** As below, and nobody looks. */
    static LandingDraws of(ModuleDrop drop, int profile, double depthM, int draws, long seed) {
        return of(drop, profile, depthM, draws, seed, Progress.NONE);
    }

    /**
     * @param profile of the current
     * @param draws 100 or more
     * @param progress counts draws
     */
    public static LandingDraws of(ModuleDrop drop, int profile, double depthM, int draws, long seed, Progress progress) {
        RandomGenerator random = new MersenneTwister(seed);
        Current current = drop.plan().current().orElseThrow();
        Flow flow = drop.flow(profile);
        Touchdown planned = drop.touchdown(profile, depthM);
        double dragShare = drop.body().parts().drag().uncertainty();
        double scatterM = drop.scatter().deviationM(depthM);
        double bargeM = drop.plan().bargeUncertaintyM() / Scatter.RADIUS_95;
        double[] missM = new double[draws];
        for (int i = 0; i < draws; i++) {
            double speed = random.nextGaussian() / LINE_95;
            double direction = random.nextGaussian() / LINE_95;
            double drag = random.nextGaussian() / LINE_95;
            Flow drawn = flow.scaled(Math.max(0, 1 + current.speedUncertaintyShare() * speed))
                    .faster(current.speedUncertaintyMPerS() * speed)
                    .turned(current.directionUncertaintyDeg() * direction);
            SinkingBody body = drop.body().withDragScaled(Math.max(LEAST_DRAG, 1 + dragShare * drag));
            Touchdown landed = Descent.of(body, drawn, depthM).at(depthM);
            missM[i] = Math.hypot(
                    landed.driftEastM() - planned.driftEastM() + bargeM * random.nextGaussian() + scatterM * random.nextGaussian(),
                    landed.driftNorthM() - planned.driftNorthM() + bargeM * random.nextGaussian() + scatterM * random.nextGaussian());
            progress.done(1);
        }
        Arrays.sort(missM);
        // The order statistics that the quantile lies between, whatever the distribution.
        BinomialDistribution within = new BinomialDistribution(null, draws, SHARE);
        int low = within.inverseCumulativeProbability(0.025);
        int high = Math.min(draws - 1, within.inverseCumulativeProbability(0.975));
        return new LandingDraws(missM[(int) Math.ceil(SHARE * draws) - 1], missM[low - 1], missM[high], draws);
    }

    /** What the draws say of a radius added up from its parts: one clause. */
    public String opinionOf(LandingParts parts) {
        double radius = parts.radiusM();
        if (radius >= lowM && radius <= highM) {
            return "the draws agree with it";
        }
        double percent = 100 * (radius / radiusM - 1);
        String by = String.format(Locale.ROOT, "%.0f %%", Math.abs(percent));
        return percent > 0
                ? "it is " + by + " more than the draws: an error along one line is added up as if it reached every way (safe side)"
                : "it is " + by + " less than the draws: a faster current and more drag make each other worse, which a root of squares leaves out";
    }
}
