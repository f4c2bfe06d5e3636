package org.seacairn.report;

import java.util.List;

/**
 * A layer of vector features on the map of a page.
 *
 * @param id lower case letters, digits, {@code -} and {@code _}; unique on the page
 * @param title for people
 * @param style a name of {@code styles/NAME.sld}
 * @param shown at first
 * @param features drawn in order; none: the layer is left out
 */
public record MapLayer(String id, String title, String style, boolean shown, List<MapFeature> features) {
    public MapLayer {
        if (!id.matches("[a-z0-9_-]+")) {
            throw new IllegalArgumentException("a layer's id: " + id);
        }
        features = List.copyOf(features);
    }
}
