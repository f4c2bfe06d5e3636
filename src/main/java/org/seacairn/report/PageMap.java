package org.seacairn.report;

import java.util.List;
import java.util.Optional;
import org.seacairn.grid.GridGeometry;
import org.seacairn.plan.SitingPlan.Display;

/**
 * The map of a page, in the working CRS.
 *
 * @param grid what the map shows: its box is that of the working grid
 * @param rasters depth and, where there are, score and reasons; empty: none is drawn
 * @param layers from the lowest to the uppermost
 * @param display units of the contours' labels
 * @param reasons names of the bits of the reasons, in order; empty where the rasters have none
 */
public record PageMap(
        GridGeometry grid, Optional<ReducedRasters> rasters, List<MapLayer> layers, Display display, List<String> reasons) {
    public PageMap {
        layers = List.copyOf(layers);
        reasons = List.copyOf(reasons);
    }
}
