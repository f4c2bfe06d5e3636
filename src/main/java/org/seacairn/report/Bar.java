package org.seacairn.report;

/**
 * Small bars beside figures: drawn as SVG, because a browser prints no backgrounds. A bar repeats the figure that
 * stands beside it, so a screen reader passes over it.
 */
final class Bar {
    private static final double WIDTH = 100;
    private static final double HEIGHT = 10;
    /** A distance is drawn against so many times what is required. */
    private static final double TIMES = 3;

    private Bar() {}

    /** @param share 0..1; nothing is drawn of one that is not known */
    static void share(Html html, double share) {
        begin(html);
        rectangle(html, "bar-all", 0, WIDTH);
        if (Double.isFinite(share)) {
            rectangle(html, "bar-part", 0, WIDTH * Math.min(1, Math.max(0, share)));
        }
        html.close("svg");
    }

    /** A measure against what is required of it: the tick stands at the requirement, and a longer bar ends in a point. */
    static void against(Html html, double measured, double required) {
        begin(html);
        rectangle(html, "bar-all", 0, WIDTH);
        if (Double.isFinite(measured) && required > 0) {
            double end = WIDTH * Math.max(0, measured / required) / TIMES;
            if (end > WIDTH) {
                html.empty("path", "class", "bar-part", "d", "M0 0H95L100 5L95 10H0Z");
            } else {
                rectangle(html, "bar-part", 0, end);
            }
            rectangle(html, "bar-tick", WIDTH / TIMES - 0.75, 1.5);
        }
        html.close("svg");
    }

    private static void begin(Html html) {
        html.open("svg", "class", "bar", "viewBox", "0 0 100 10", "preserveAspectRatio", "none", "aria-hidden", "true", "focusable", "false");
    }

    private static void rectangle(Html html, String kind, double x, double width) {
        html.empty("rect", "class", kind, "x", Units.number(2, x), "y", "0", "width", Units.number(2, width), "height", Units.number(0, HEIGHT));
    }
}
