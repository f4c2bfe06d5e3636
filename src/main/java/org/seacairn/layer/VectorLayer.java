package org.seacairn.layer;

import java.nio.file.Path;
import java.util.List;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.Edges;

/**
 * All features of one vector data set, in memory, as they stand in the file.
 *
 * @param label the layer's name in messages and outputs
 * @param crs of every geometry
 * @param edges how its lines and outlines run between their vertices, as the plan says
 * @param featuresWithoutGeometry records of the file that have no geometry and are not in the list
 * @param notes what a careful reader should know of the file, one line each
 */
public record VectorLayer(
        String label, Path file, String format, Crs crs, Edges edges, List<Feature> features,
        int featuresWithoutGeometry, List<String> notes) {}
