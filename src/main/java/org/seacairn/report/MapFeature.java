package org.seacairn.report;

import java.util.Map;
import org.locationtech.jts.geom.Geometry;

/**
 * A feature of a {@link MapLayer}.
 *
 * @param id joins the feature with rows and blocks of the page ({@code site-S01}), or empty
 * @param label for people, shown where a pointer rests on it; may be any text from data
 * @param lonLat longitude and latitude in degrees on WGS 84, long edges densified already
 * @param properties what the style's filters and labels ask for, by the names of the output's columns
 */
public record MapFeature(String id, String label, Geometry lonLat, Map<String, String> properties) {
    public MapFeature {
        if (!id.matches("[A-Za-z0-9_-]*")) {
            throw new IllegalArgumentException("a feature's id: " + id);
        }
        properties = Map.copyOf(properties);
    }
}
