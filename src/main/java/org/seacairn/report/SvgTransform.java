package org.seacairn.report;

import java.awt.geom.AffineTransform;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a {@code transform} attribute (SVG 1.1, section 7.6): of translate, scale and rotate what our drawings hold. */
final class SvgTransform {
    private static final Pattern PART = Pattern.compile("\\G\\s*([a-z]+)\\(([^)]*)\\)\\s*");

    private SvgTransform() {}

    /** @throws IllegalArgumentException if it holds what our own never do */
    static AffineTransform of(String text) {
        AffineTransform all = new AffineTransform();
        Matcher part = PART.matcher(text);
        int end = 0;
        while (part.find()) {
            double[] v = Arrays.stream(part.group(2).trim().split("[\\s,]+")).mapToDouble(Double::parseDouble).toArray();
            switch (part.group(1) + v.length) {
                case "translate1" -> all.translate(v[0], 0);
                case "translate2" -> all.translate(v[0], v[1]);
                case "scale1" -> all.scale(v[0], v[0]);
                case "scale2" -> all.scale(v[0], v[1]);
                case "rotate1" -> all.rotate(Math.toRadians(v[0]));
                case "rotate3" -> all.rotate(Math.toRadians(v[0]), v[1], v[2]);
                default -> throw new IllegalArgumentException("no transform " + part.group() + " here");
            }
            end = part.end();
        }
        if (end != text.length()) {
            throw new IllegalArgumentException("no transform: " + text);
        }
        return all;
    }
}
