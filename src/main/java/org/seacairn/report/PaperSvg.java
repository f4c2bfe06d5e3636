package org.seacairn.report;

import java.util.LinkedHashMap;
import java.util.Map;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Writes out as attributes what the style sheet of the screen says of drawings ({@code map.css}, {@code page.css}): their parts by
 * class, and the sizes that do not change with the scale of the map.
 */
final class PaperSvg {
    /** A pixel of the screen on paper: the letters of the map, 11 pixels high, are 7.7 points. */
    static final double POINTS_PER_PX = 0.7;

    /** Room about the map for figures of the graticule, and for the bars and the arrow below, in pixels. */
    private static final double LEFT_PX = 20;
    private static final double ABOVE_PX = 3;
    private static final double RIGHT_PX = 20;
    private static final double BELOW_PX = 66;
    /** The map leaves room for its legend on the same sheet. */
    private static final double MOST_OF_HEIGHT = 0.58;
    private static final double CSS_PX_PER_POINT = 4.0 / 3;

    private static final Map<String, Map<String, String>> BY_CLASS = new LinkedHashMap<>();

    static {
        BY_CLASS.put("ground", Map.of("fill", "#ffffff"));
        BY_CLASS.put("frame-line", Map.of("fill", "none", "stroke", "#1a1a1a", "stroke-width", "1.25"));
        BY_CLASS.put("bar-line", Map.of("stroke-width", "1.5"));
        BY_CLASS.put("bar-all", Map.of("fill", "#e3e9ec"));
        BY_CLASS.put("bar-part", Map.of("fill", "#3d7f93"));
        BY_CLASS.put("bar-tick", Map.of("fill", "#1c262d"));
    }

    private final PaperSize paper;

    PaperSvg(PaperSize paper) {
        this.paper = paper;
    }

    /** @param svg one that stands in no other */
    void prepare(Element svg) {
        if (svg.getAttribute("id").equals("map-drawing")) {
            map(svg);
        } else if (svg.hasAttribute("width")) {
            double shrink = Math.min(POINTS_PER_PX, paper.roomPt() / number(svg, "width"));
            size(svg, number(svg, "width") * shrink, number(svg, "height") * shrink);
        }
        looks(svg);
        if (svg.hasAttribute("aria-label")) {
            svg.setAttribute("alt", svg.getAttribute("aria-label"));
        } else {
            Node title = svg.getElementsByTagName("title").item(0);
            svg.setAttribute("alt", title == null ? " " : title.getTextContent());
        }
    }

    private void map(Element svg) {
        String[] box = svg.getAttribute("viewBox").split(" ");
        double width = Double.parseDouble(box[2]);
        double height = Double.parseDouble(box[3]);
        double roomWidth = paper.roomPt() - (LEFT_PX + RIGHT_PX) * POINTS_PER_PX;
        double roomHeight = MOST_OF_HEIGHT * paper.heightPt() - (ABOVE_PX + BELOW_PX) * POINTS_PER_PX;
        double pointsPerUnit = Math.min(roomWidth / width, roomHeight / height);
        double unitsPerPx = POINTS_PER_PX / pointsPerUnit;
        svg.setAttribute("viewBox", text(-LEFT_PX * unitsPerPx) + " " + text(-ABOVE_PX * unitsPerPx) + " "
                + text(width + (LEFT_PX + RIGHT_PX) * unitsPerPx) + " " + text(height + (ABOVE_PX + BELOW_PX) * unitsPerPx));
        size(svg, pointsPerUnit * width + (LEFT_PX + RIGHT_PX) * POINTS_PER_PX, pointsPerUnit * height + (ABOVE_PX + BELOW_PX) * POINTS_PER_PX);
        svg.setAttribute("vector-effect", "non-scaling-stroke");
        svg.setAttribute("fill", "#1a1a1a");
        svg.setAttribute("font-size", "11");
        scale(svg, unitsPerPx);
    }

    private static void size(Element svg, double widthPt, double heightPt) {
        svg.setAttribute("style", "width: " + text(widthPt * CSS_PX_PER_POINT) + "px; height: " + text(heightPt * CSS_PX_PER_POINT) + "px");
    }

    /** What {@code map.css} does by its variables. */
    private static void scale(Element element, double unitsPerPx) {
        for (Node node = element.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element child) {
                String scale = "scale(" + SvgStyle.number(unitsPerPx) + ")";
                String kind = " " + child.getAttribute("class") + " ";
                String parent = " " + element.getAttribute("class") + " ";
                if (kind.contains(" upright ") || parent.contains(" mark ") && child.getNodeName().equals("path")
                        || parent.contains(" label ") && child.getNodeName().equals("text")) {
                    child.setAttribute("transform", scale);
                } else if (kind.contains(" first ")) {
                    child.setAttribute("transform", "translate(0 " + text(34 * unitsPerPx) + ")");
                } else if (kind.contains(" second ")) {
                    child.setAttribute("transform", "translate(0 " + text(52 * unitsPerPx) + ")");
                } else if (kind.contains(" arrow ")) {
                    child.setAttribute("transform", "translate(" + text(-14 * unitsPerPx) + " " + text(46 * unitsPerPx) + ")");
                }
                scale(child, unitsPerPx);
            }
        }
    }

    private static void looks(Element element) {
        for (String name : element.getAttribute("class").split(" ")) {
            BY_CLASS.getOrDefault(name, Map.of()).forEach(element::setAttribute);
        }
        String parent = element.getParentNode() instanceof Element above ? above.getAttribute("class") : "";
        if (element.getAttribute("id").equals("map-figures")) {
            element.setAttribute("text-anchor", "middle");
        } else if (element.getNodeName().equals("polyline")) {
            element.setAttribute("fill", "none");
        } else if (element.getNodeName().equals("path")) {
            element.setAttribute("fill-rule", "evenodd");
            if (parent.startsWith("bar-line") || element.getAttribute("class").equals("upright")) {
                element.setAttribute("fill", "none");
                element.setAttribute("stroke", "#1a1a1a");
            }
        }
        for (Node node = element.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element child) {
                looks(child);
            }
        }
    }

    private static double number(Element svg, String name) {
        return Double.parseDouble(svg.getAttribute(name));
    }

    private static String text(double value) {
        return SvgStyle.number(value);
    }
}
