package org.seacairn.report;

/** Bars of a round number of nautical miles and of kilometres, true on the ground at the map's middle. */
final class ScaleBar {
    private static final double METRES_PER_NAUTICAL_MILE = 1852;
    /** The longest bar as a share of the map's width. */
    private static final double SHARE = 0.22;
    private static final double[] STEPS = {5, 2, 1};

    private final double unitsPerMetre;
    private final double mostUnits;

    ScaleBar(MapPlane plane) {
        this.unitsPerMetre = 1 / plane.groundMetresPerUnit();
        this.mostUnits = SHARE * plane.width();
    }

    /** The largest of 1, 2 or 5 times a power of ten that is not above a value. */
    static double round(double most) {
        double power = Math.pow(10, Math.floor(Math.log10(most)));
        for (double step : STEPS) {
            // A power of ten below 1 is no exact double.
            if (step * power <= most * (1 + 1e-9)) {
                return step * power;
            }
        }
        return power;
    }

    /** Drawn from 0, 0: both bars begin there; the script draws them again when the map is zoomed. */
    void write(Html html) {
        html.open("g", "id", "map-scale", "role", "img", "aria-label", "Scale bars", "data-units-per-metre", Double.toString(unitsPerMetre)).newLine();
        bar(html, METRES_PER_NAUTICAL_MILE, "nmi", "first");
        bar(html, 1000, "km", "second");
        html.close("g").newLine();
    }

    private void bar(Html html, double metres, String unit, String place) {
        double count = round(mostUnits / unitsPerMetre / metres);
        String length = PathText.number(count * metres * unitsPerMetre, 2);
        html.open("g", "class", "bar-line " + place, "data-metres", PathText.number(metres, 0), "data-unit", unit);
        html.empty("path", "d", "M0 0h" + length);
        html.empty("path", "class", "upright", "d", "M0 -4v8");
        html.open("g", "transform", "translate(" + length + " 0)");
        html.empty("path", "class", "upright", "d", "M0 -4v8");
        html.element("text", SvgStyle.number(count) + " " + unit, "class", "upright", "x", "6", "y", "4");
        html.close("g").close("g").newLine();
    }
}
