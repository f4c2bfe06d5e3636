package org.seacairn.export;

/**
 * How one series is told from the others: dash, mark and colour, each of them enough by itself for the first six; the marks of the
 * next six are hollow.
 */
enum SeriesStyle {
    SOLID("#000000", ""),
    LONG("#0072b2", "9 4"),
    DOTS("#d55e00", "2 3"),
    DASH_DOT("#007a5a", "9 3 2 3"),
    SHORT("#a8548a", "5 3"),
    DASH_DOT_DOT("#8a6500", "9 3 2 3 2 3");

    /** How many series can be told apart. */
    static final int COUNT = 2 * values().length;

    /** Colours after Okabe and Ito, Color universal design, 2008, darkened until thin lines stand out on white. */
    private final String colour;

    private final String dash;

    SeriesStyle(String colour, String dash) {
        this.colour = colour;
        this.dash = dash;
    }

    static SeriesStyle of(int series) {
        return values()[series % values().length];
    }

    void line(Svg svg, String path) {
        if (dash.isEmpty()) {
            svg.empty("path", "d", path, "fill", "none", "stroke", colour, "stroke-width", "1.8", "stroke-linejoin", "round");
        } else {
            svg.empty("path", "d", path, "fill", "none", "stroke", colour, "stroke-width", "1.8", "stroke-linejoin", "round",
                    "stroke-dasharray", dash);
        }
    }

    /** The mark of a series about a place. */
    void mark(Svg svg, int series, double x, double y) {
        svg.empty("path", "d", "M" + Svg.number(x) + " " + Svg.number(y) + shape(), "fill", series < values().length ? colour : "#ffffff",
                "stroke", colour, "stroke-width", "1.4");
    }

    /** The mark as a path from its middle. */
    private String shape() {
        return switch (this) {
            case SOLID -> "m-3.5 0a3.5 3.5 0 1 0 7 0a3.5 3.5 0 1 0 -7 0z";
            case LONG -> "m-3.2 -3.2h6.4v6.4h-6.4z";
            case DOTS -> "m0 -4.2l4 7h-8z";
            case DASH_DOT -> "m0 -4.6l4.6 4.6l-4.6 4.6l-4.6 -4.6z";
            case SHORT -> "m0 4.2l4 -7h-8z";
            case DASH_DOT_DOT -> "m-1.3 -4.2h2.6v2.9h2.9v2.6h-2.9v2.9h-2.6v-2.9h-2.9v-2.6h2.9z";
        };
    }
}
