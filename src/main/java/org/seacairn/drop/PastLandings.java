package org.seacairn.drop;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.seacairn.InputException;

/**
 * What earlier drops tell of bias and scatter: their misses, surveyed less planned, are taken as normal about a common
 * bias and to scatter alike each way. Bounds are those of 95 % confidence in that model.
 *
 * @param drops how many
 * @param bias mean miss, with the region that holds the true one at 95 % confidence
 * @param scatterM deviation of a landing along any line
 * @param scatterDeg the same as angle alpha of {@link Scatter}, from misses over depth; empty unless every drop has its depth
 */
public record PastLandings(int drops, MeanMiss bias, Estimate scatterM, Optional<Estimate> scatterDeg) {
    /** Fewer leave no degree of freedom for the region of the bias. */
    private static final int FEWEST = 3;

    /**
     * One drop. Longitudes and latitudes in degrees on WGS 84.
     *
     * @param depthM of the bottom, above 0, or empty where it is not known
     */
    public record Drop(double plannedLongitudeDeg, double plannedLatitudeDeg, double surveyedLongitudeDeg, double surveyedLatitudeDeg,
            OptionalDouble depthM) {
        /** @throws IllegalArgumentException if the depth is given and not above 0 */
        public Drop {
            if (depthM.isPresent() && !(depthM.getAsDouble() > 0)) {
                throw new IllegalArgumentException("no depth: " + depthM.getAsDouble());
            }
        }

        /** From the planned to the surveyed place, along the geodesic. */
        public Miss miss() {
            return Miss.between(plannedLongitudeDeg, plannedLatitudeDeg, surveyedLongitudeDeg, surveyedLatitudeDeg);
        }
    }

    /** A value and the two ends of its 95 % confidence interval (2.5 % beyond each). */
    public record Estimate(double value, double lower, double upper) {}

    /**
     * @param source name of the file, for messages
     * @throws InputException if there are fewer than three drops, or all have the same miss
     */
    public static PastLandings of(String source, List<Drop> drops) {
        if (drops.size() < FEWEST) {
            throw new InputException(source + ": " + drops.size() + (drops.size() == 1 ? " landing tells" : " landings tell")
                    + " nothing of scatter; give " + FEWEST + " or more (10 for bounds that are of use)");
        }
        List<Miss> misses = drops.stream().map(Drop::miss).toList();
        MeanMiss mean = MeanMiss.of(misses);
        double deviation = deviation(misses);
        if (!(deviation > 1e-6)) { // A micrometre is what rounding leaves of one and the same miss.
            throw new InputException(source + ": all surveyed places miss the planned ones by the same " + Math.round(mean.lengthM())
                    + " m, so they look computed and not surveyed; give positions as surveyed");
        }
        return new PastLandings(drops.size(), mean, estimate(deviation, freedom(drops.size())), angle(drops, misses));
    }

    /** Radius about the <em>target</em>, the bias not corrected, that holds 95 % of new landings if bias and scatter are as estimated; metres. */
    public double radius95M() {
        return OffsetCircle.radius95M(bias.lengthM(), scatterM.value());
    }

    /**
     * The radius that the true one exceeds with a chance of 5 % (one-sided): what it grows by with each of bias and scatter at
     * its own bound, as a root of squares (G. Zou and A. Donner, Statistics in Medicine 27, 2008, from memory). In simulations it held in
     * 95 to 98 % of cases with 3 to 30 drops.
     */
    public double radius95UpperM() {
        double deviation = scatterM.value();
        double freedom = freedom(drops);
        double most = deviation * Math.sqrt(freedom / new ChiSquaredDistribution(freedom).inverseCumulativeProbability(0.05));
        double farthest = bias.lengthM() + deviation * new TDistribution(freedom).inverseCumulativeProbability(0.95) / Math.sqrt(drops);
        double radius = radius95M();
        return radius + Math.hypot(OffsetCircle.radius95M(bias.lengthM(), most) - radius, OffsetCircle.radius95M(farthest, deviation) - radius);
    }

    /** Whether the scatter may well be half as large again as estimated: so with fewer than 10 drops, whatever they are. */
    public boolean tooFew() {
        return scatterM.upper() > 1.5 * scatterM.value();
    }

    private static double freedom(int n) {
        return 2.0 * (n - 1);
    }

    private static Optional<Estimate> angle(List<Drop> drops, List<Miss> misses) {
        if (drops.stream().anyMatch(drop -> drop.depthM().isEmpty())) {
            return Optional.empty();
        }
        List<Miss> perMetre = new ArrayList<>();
        for (int i = 0; i < drops.size(); i++) {
            perMetre.add(misses.get(i).over(drops.get(i).depthM().getAsDouble()));
        }
        Estimate tangent = estimate(deviation(perMetre), freedom(drops.size()));
        return Optional.of(new Estimate(degrees(tangent.value()), degrees(tangent.lower()), degrees(tangent.upper())));
    }

    private static double degrees(double tangent) {
        return Math.toDegrees(Math.atan(tangent));
    }

    /** Along one axis, from both axes together: 2 (n - 1) degrees of freedom. */
    private static double deviation(List<Miss> misses) {
        return Math.sqrt((squares(misses, Miss::eastM) + squares(misses, Miss::northM)) / freedom(misses.size()));
    }

    private static double squares(List<Miss> misses, ToDoubleFunction<Miss> axis) {
        double mean = misses.stream().mapToDouble(axis).average().orElseThrow();
        return misses.stream().mapToDouble(miss -> Math.pow(axis.applyAsDouble(miss) - mean, 2)).sum();
    }

    private static Estimate estimate(double deviation, double freedom) {
        ChiSquaredDistribution chi = new ChiSquaredDistribution(freedom);
        return new Estimate(deviation, deviation * Math.sqrt(freedom / chi.inverseCumulativeProbability(0.975)),
                deviation * Math.sqrt(freedom / chi.inverseCumulativeProbability(0.025)));
    }
}
