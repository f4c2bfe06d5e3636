package org.seacairn.score;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.seacairn.geodesy.Crs;
import org.seacairn.layer.GeometryCheck;
import org.seacairn.plan.SitingPlan.BottomClass;

/**
 * What a vector layer holds.
 *
 * @param features with a geometry
 * @param withoutGeometry records without one
 * @param kinds how many features have each kind of geometry, by its OGC name
 * @param attributes names in the file's order
 * @param extent in the layer's CRS
 * @param lonLat in degrees on WGS 84, or empty where that cannot be told
 * @param classes of a bottom layer: those in the data by name, then those that only the plan names; empty for others
 * @param invalid geometries and coordinates that cannot be right
 * @param overlap with the working grid, or empty where it cannot be told
 * @param chart how depth areas agree with the bathymetry, or empty for other layers and where it cannot be told
 * @param notes how the file was read, one line each
 * @param warnings one line each
 */
public record LayerFacts(
        PlanLayer layer, String format, Crs crs, int features, int withoutGeometry, Map<String, Integer> kinds,
        List<String> attributes, Envelope extent, Optional<Envelope> lonLat, List<ClassCount> classes,
        List<GeometryCheck.Finding> invalid, Optional<GridOverlap> overlap,
        Optional<ChartComparison> chart, List<String> notes, List<String> warnings) {

    /**
     * @param name the class, or empty text for features without one
     * @param polygons features of it that are areas
     * @param planned what the plan says of it, or empty if it does not name it
     */
    public record ClassCount(String name, int polygons, Optional<BottomClass> planned) {}
}
