package org.seacairn.report;

import org.locationtech.jts.geom.Envelope;
import org.seacairn.report.Symbolizer.Placement;
import org.seacairn.report.Symbolizer.Text;

/**
 * A text of the map.
 *
 * @param text as it is shown, already cut
 * @param x of its place, in units of the drawing
 * @param angleDeg clockwise, -90 to 90
 */
record MapLabel(String text, double x, double y, double angleDeg, Text look) {
    /** A name longer than this would cover the map. */
    static final int LONGEST = 40;

    /** Width of a letter by its size: what sans-serif capitals and digits need, and what full-width letters do. */
    private static final double NARROW = 0.6;
    private static final double WIDE = 1.05;
    private static final int FIRST_WIDE = 0x1100;

    static MapLabel of(String text, double x, double y, double angleDeg, Text look) {
        return new MapLabel(Html.cut(text, LONGEST), x, y, upright(angleDeg), look);
    }

    private static double upright(double angleDeg) {
        double turned = angleDeg - 180 * Math.rint(angleDeg / 180);
        return Math.abs(turned - 90) < 1e-9 ? -90 : turned;
    }

    boolean alongLine() {
        return look.placement() instanceof Placement.AlongLine;
    }

    /** About what the text covers at a spot, in units of the drawing. */
    Envelope box(LabelSpot spot, double unitsPerPx) {
        double size = look.font().sizePx();
        double width = text.codePoints().mapToDouble(c -> c < FIRST_WIDE ? NARROW : WIDE).sum() * size;
        double left = spot.x() - spot.anchor() * width;
        double top = spot.y() - 0.85 * size;
        double cos = Math.cos(Math.toRadians(angleDeg));
        double sin = Math.sin(Math.toRadians(angleDeg));
        Envelope box = new Envelope();
        for (double dx : new double[] {left, left + width}) {
            for (double dy : new double[] {top, top + 1.1 * size}) {
                box.expandToInclude(x + unitsPerPx * (dx * cos - dy * sin), y + unitsPerPx * (dx * sin + dy * cos));
            }
        }
        return box;
    }
}
