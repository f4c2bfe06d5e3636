package org.seacairn.report;

import java.util.List;

/**
 * Where a text stands about its place, in pixels.
 *
 * @param x of the anchor, to the right
 * @param y of the base line, down
 * @param anchor the share of the text that lies left of the anchor
 */
record LabelSpot(double x, double y, double anchor) {

    /** This spot, and for a text beside its place the other sides: left of it, above, below. */
    List<LabelSpot> choices() {
        if (anchor != 0 || x <= 0) {
            return List.of(this);
        }
        double above = y - x - 4;
        double below = y + x + 4;
        return List.of(this, new LabelSpot(-x, y, 1), new LabelSpot(0, above, 0.5), new LabelSpot(0, below, 0.5));
    }

    String textAnchor() {
        return anchor < 0.25 ? "start" : anchor > 0.75 ? "end" : "middle";
    }
}
