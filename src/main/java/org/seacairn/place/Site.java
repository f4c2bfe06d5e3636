package org.seacairn.place;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seacairn.drop.PlannedDrop;
import org.seacairn.drop.Standing;
import org.seacairn.plan.SitingPlan.Measure;

/**
 * A chosen site: the centre of one cell of the working grid.
 *
 * @param rank from 1, best first
 * @param col column of the working grid, from 0 in the west
 * @param row row of the working grid, from 0 in the north
 * @param eastingM cell centre in the working CRS
 * @param northingM cell centre in the working CRS
 * @param longitudeDeg cell centre, WGS 84
 * @param latitudeDeg cell centre, WGS 84
 * @param depthUncertaintyM vertical uncertainty of the depth (95 %), NaN where nothing is known
 * @param slopeDeg NaN where the grid has no slope
 * @param bottom bottom class, or empty text where none is mapped
 * @param score 0..1
 * @param suitability 0..1 by criterion, in the plan's order
 * @param clearances one for each keep-off layer, in the plan's order
 * @param stone the nearest existing reef, or empty: the plan names none
 * @param drops where the module must leave the deck, one for each profile of the current, the planned one first; empty
 *     where the plan does not tell how the module sinks, or its current is not known as deep as here
 * @param releaseClearances of the planned release point, one for each keep-off layer that holds at the surface, in order
 * @param standing on the bottom, or empty as with the drops
 */
public record Site(
        int rank, String name, int col, int row,
        double eastingM, double northingM, double longitudeDeg, double latitudeDeg,
        double depthM, double depthUncertaintyM, double slopeDeg, String bottom, double score,
        Map<Measure, Double> suitability, List<Clearance> clearances, Optional<Clearance> stone,
        double landingRadiusM,
        List<PlannedDrop> drops, List<Clearance> releaseClearances, Optional<Standing> standing) {}
