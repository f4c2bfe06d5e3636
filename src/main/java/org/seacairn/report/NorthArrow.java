package org.seacairn.report;

import java.util.Locale;
import org.locationtech.jts.geom.Coordinate;

/** An arrow to true north at the map's middle. */
final class NorthArrow {
    private static final double STEP_DEG = 1e-4;

    private final double angleDeg;

    NorthArrow(MapPlane plane) {
        Coordinate middle = plane.lonLat(plane.width() / 2, plane.height() / 2);
        double step = middle.y > 89 ? -STEP_DEG : STEP_DEG;
        Coordinate from = plane.at(middle.x, middle.y);
        Coordinate to = plane.at(middle.x, middle.y + step);
        double sign = Math.signum(step);
        this.angleDeg = Math.toDegrees(Math.atan2(sign * (to.x - from.x), -sign * (to.y - from.y)));
    }

    /** Clockwise from straight up. */
    double angleDeg() {
        return angleDeg;
    }

    /** Drawn about 0, 0. */
    void write(Html html) {
        html.open("g", "class", "upright", "role", "img", "aria-label", "True north at the middle of the map").newLine();
        html.element("title", String.format(Locale.ROOT, "True north at the middle of the map: %.2f degrees %s of the grid's north",
                Math.abs(angleDeg), angleDeg < 0 ? "west" : "east"));
        html.open("g", "transform", "rotate(" + SvgStyle.number(angleDeg) + ")");
        html.empty("path", "d", "M0 -15L5 13L0 9L-5 13z", "class", "north");
        html.element("text", "N", "y", "-19", "text-anchor", "middle");
        html.close("g").close("g").newLine();
    }
}
