package org.seacairn.export;

import java.util.Optional;
import org.locationtech.jts.geom.Geometry;

/**
 * The dissolved geodesic buffer of one layer at its keep-off distance.
 *
 * @param distanceM the rule's distance, without uncertainty allowance
 * @param source what the rule comes from, or empty
 * @param confirmed false: nobody has checked the rule's text yet
 * @param polygon valid Polygon or MultiPolygon, longitude and latitude on WGS 84
 */
public record KeepOffBuffer(
        String layer, double distanceM, Optional<String> source, boolean confirmed, Geometry polygon) {}
