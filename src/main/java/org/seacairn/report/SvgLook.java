package org.seacairn.report;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.w3c.dom.Element;

/**
 * The presentation attributes that hold at an element of an SVG, its own and those it inherits. {@code vector-effect} is inherited
 * here, which in a browser it is not: one attribute for a whole map.
 */
final class SvgLook {
    private static final List<String> INHERITED = List.of("fill", "fill-opacity", "fill-rule", "stroke", "stroke-opacity", "stroke-width",
            "stroke-dasharray", "stroke-linejoin", "font-size", "font-weight", "font-style", "text-anchor", "vector-effect");

    private final Map<String, String> values;

    private SvgLook(Map<String, String> values) {
        this.values = values;
    }

    /** What SVG says where nothing is said. */
    static SvgLook initial() {
        return new SvgLook(Map.of("fill", "#000000", "fill-opacity", "1", "fill-rule", "nonzero", "stroke", "none", "stroke-opacity", "1",
                "stroke-width", "1", "font-size", "16", "text-anchor", "start"));
    }

    SvgLook at(Element element) {
        Map<String, String> own = new HashMap<>(values);
        for (String name : INHERITED) {
            if (element.hasAttribute(name)) {
                own.put(name, element.getAttribute(name));
            }
        }
        return new SvgLook(own);
    }

    boolean is(String name, String value) {
        return value.equals(values.get(name));
    }

    double number(String name) {
        return Double.parseDouble(values.get(name));
    }

    /** Numbers between commas or spaces; none where nothing is said. */
    float[] numbers(String name) {
        String[] parts = values.getOrDefault(name, "").trim().split("[\\s,]+");
        float[] numbers = new float[parts[0].isEmpty() ? 0 : parts.length];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = Float.parseFloat(parts[i]);
        }
        return numbers;
    }

    /** Red, green and blue, 0..1, of {@code #rgb} or {@code #rrggbb}. */
    float[] color(String name) {
        String hex = values.get(name);
        if (!hex.matches("#([0-9a-fA-F]{3}|[0-9a-fA-F]{6})")) {
            throw new IllegalArgumentException("no colour " + hex + " here");
        }
        int digits = hex.length() / 3;
        float[] color = new float[3];
        for (int i = 0; i < 3; i++) {
            int part = Integer.parseInt(hex.substring(1 + i * digits, 1 + (i + 1) * digits), 16);
            color[i] = part / (digits == 1 ? 15f : 255f);
        }
        return color;
    }

    PaperFonts.Face face() {
        return PaperFonts.Face.of(is("font-weight", "bold"), is("font-style", "italic"));
    }
}
