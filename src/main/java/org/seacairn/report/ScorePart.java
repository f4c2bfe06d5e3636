package org.seacairn.report;

import java.util.List;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Combination;
import org.seacairn.plan.SitingPlan.Measure;

/**
 * What one criterion did to the score of a site.
 *
 * @param weightShare of the sum of all weights, 0..1
 * @param suitability 0..1
 * @param effect weighted mean: what it adds; weighted geometric: what it multiplies by; limiting: its suitability
 * @param decides of limiting: whether it is the least
 */
record ScorePart(Measure measure, double weightShare, double suitability, double effect, boolean decides) {

    /** The parts of a site's score, in the plan's order: they add up, or multiply, to it, or the least is it. */
    static List<ScorePart> of(SitingPlan plan, Site site) {
        double sum = plan.criteria().stream().mapToDouble(SitingPlan.Criterion::weight).sum();
        double least = site.suitability().values().stream().mapToDouble(Double::doubleValue).min().orElse(Double.NaN);
        return plan.criteria().stream().map(criterion -> {
            double share = criterion.weight() / sum;
            double suitability = site.suitability().getOrDefault(criterion.measure(), Double.NaN);
            double effect = switch (plan.combine()) {
                case WEIGHTED_MEAN -> share * suitability;
                case WEIGHTED_GEOMETRIC -> Math.pow(suitability, share);
                case LIMITING -> suitability;
            };
            return new ScorePart(criterion.measure(), share, suitability, effect,
                    plan.combine() == Combination.LIMITING && suitability == least);
        }).toList();
    }

    /** Head of the column that tells the effect. */
    static String effectHeading(Combination combination) {
        return switch (combination) {
            case WEIGHTED_MEAN -> "Adds";
            case WEIGHTED_GEOMETRIC -> "Times";
            case LIMITING -> "Decides";
        };
    }

    String effectText(Combination combination) {
        return combination == Combination.LIMITING ? decides ? "yes" : "no" : Units.score(effect);
    }
}
