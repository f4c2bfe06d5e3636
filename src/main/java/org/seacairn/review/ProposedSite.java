package org.seacairn.review;

import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;

/**
 * A place that somebody proposes: a point for one module, or a polygon to lay modules in.
 *
 * @param name as the proposal has it
 * @param geometry Point, Polygon or MultiPolygon; longitude and latitude in degrees on the datum of the
 *     working CRS
 */
public record ProposedSite(String name, Geometry geometry) {
    public boolean isPoint() {
        return geometry instanceof Point;
    }
}
