package org.seacairn.score;

import java.util.Map;
import org.seacairn.plan.SitingPlan.Measure;

/**
 * How one cell scored.
 *
 * @param depthM positive down, NaN for none
 * @param depthUncertaintyM vertical (95 %), NaN where nothing is known
 * @param slopeDeg NaN for none
 * @param bottom class, or empty text
 * @param score NaN where a reason stands
 * @param suitability by criterion in the plan's order; empty where a reason stands
 */
public record CellDetail(
        double depthM, double depthUncertaintyM, double slopeDeg, String bottom, int reasons, double score, Map<Measure, Double> suitability) {}
