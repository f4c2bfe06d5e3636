package org.seacairn.report;

import org.seacairn.plan.SitingPlan.Display;

/**
 * A sheet of paper; lengths in points of 1/72 inch.
 *
 * @param size as a style sheet names it
 */
record PaperSize(String size, double widthPt, double heightPt) {
    /** On the left and on the right; {@code paper.css} has the same. */
    private static final double MARGIN_PT = 13 * 72 / 25.4;

    /** A4, or letter for readers of US units. */
    static PaperSize of(Display display) {
        return display == Display.US ? new PaperSize("letter", 612, 792) : new PaperSize("A4", 595.28, 841.89);
    }

    /** Between the margins. */
    double roomPt() {
        return widthPt - 2 * MARGIN_PT;
    }
}
