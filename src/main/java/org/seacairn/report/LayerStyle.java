package org.seacairn.report;

import java.io.InputStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * How one layer of the map is drawn: the part of OGC SLD 1.0.0 (OGC 02-070) that the styles of this program are written in. What is not
 * known is refused, never passed over, so that a map is as its style says.
 *
 * @param name of the layer
 * @param title for people
 * @param rules in the order of the file, the first at the bottom; one or more
 */
public record LayerStyle(String name, String title, List<StyleRule> rules) {
    public LayerStyle {
        rules = List.copyOf(rules);
    }

    /**
     * Reads a style.
     *
     * @param fileName for messages
     * @throws org.seacairn.InputException if it is no proper XML, or holds an element, an attribute or a value that is not known
     */
    public static LayerStyle read(InputStream in, String fileName) {
        return StyleReader.read(in, fileName);
    }

    /** The rules that a feature with these properties is drawn by, the first at the bottom; none if the style leaves it out. */
    public List<StyleRule> rulesFor(Map<String, String> properties) {
        List<StyleRule> matching = rules.stream().filter(rule -> !rule.otherwise())
                .filter(rule -> rule.filter().isEmpty() || rule.filter().get().matches(properties)).toList();
        return matching.isEmpty() ? rules.stream().filter(StyleRule::otherwise).toList() : matching;
    }

    /** The rules that a legend shows: those with a title. */
    public List<StyleRule> legend() {
        return rules.stream().filter(rule -> !rule.title().isEmpty()).toList();
    }

    /** The colours of a raster; absent for the style of a vector layer. */
    public Optional<ColorRamp> ramp() {
        return rules.stream().flatMap(rule -> rule.symbolizers().stream())
                .flatMap(symbolizer -> symbolizer instanceof Symbolizer.Raster raster ? Stream.of(raster.ramp()) : Stream.empty()).findFirst();
    }
}
