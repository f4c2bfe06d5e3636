package org.seacairn.report;

import java.util.List;
import java.util.Optional;

/**
 * One rule of a style.
 *
 * @param title for the legend; empty where the style has none
 * @param filter which features it is for; absent for all
 * @param otherwise whether it is for the features that no other rule is for ({@code ElseFilter})
 * @param symbolizers how they are drawn, the first at the bottom
 */
public record StyleRule(String title, Optional<StyleFilter> filter, boolean otherwise, List<Symbolizer> symbolizers) {
    public StyleRule {
        symbolizers = List.copyOf(symbolizers);
    }

    /**
     * The symbolizers for a geometry: marks for points, lines for lines, areas and lines for polygons, texts for all.
     *
     * <p>SLD would also put a mark in the middle of a line or a polygon. Here it is not drawn, so that no mark stands where there is
     * nothing: one rule can have a line and a mark for a layer whose features may be either.
     *
     * @param dimension of the geometry: 0, 1 or 2
     */
    public List<Symbolizer> symbolizersFor(int dimension) {
        return symbolizers.stream().filter(symbolizer -> switch (dimension) {
            case 0 -> symbolizer instanceof Symbolizer.Point || symbolizer instanceof Symbolizer.Text;
            case 1 -> symbolizer instanceof Symbolizer.Line || symbolizer instanceof Symbolizer.Text;
            case 2 -> symbolizer instanceof Symbolizer.Area || symbolizer instanceof Symbolizer.Line || symbolizer instanceof Symbolizer.Text;
            default -> throw new IllegalArgumentException("no geometry has the dimension " + dimension);
        }).toList();
    }
}
