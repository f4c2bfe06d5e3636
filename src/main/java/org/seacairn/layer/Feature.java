package org.seacairn.layer;

import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;

/**
 * One feature of a layer.
 *
 * @param id place in its file, from 1 (or the feature id where the format has one)
 * @param geometry in the layer's CRS, x east or longitude, y north or latitude; never null or empty
 * @param attributes by name as in the file, in the file's order; values are String, Number, Boolean
 *     or null
 */
public record Feature(long id, Geometry geometry, Map<String, Object> attributes) {
    /** What the feature is called: by the attribute with its name, or else by its number, such as {@code #7}. */
    public String name(Optional<String> attribute) {
        Object name = attribute.map(attributes::get).orElse(null);
        return name == null || name.toString().isBlank() ? "#" + id : name.toString().strip();
    }
}
