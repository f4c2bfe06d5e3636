package org.seacairn.layer;

import java.util.Map;
import org.locationtech.jts.geom.Geometry;

/**
 * One feature of a layer.
 *
 * @param id place in its file, from 1 (or the feature id where the format has one)
 * @param geometry in the layer's CRS, x east or longitude, y north or latitude; never null or empty
 * @param attributes by name as in the file, in the file's order; values are String, Number, Boolean
 *     or null
 */
public record Feature(long id, Geometry geometry, Map<String, Object> attributes) {}
