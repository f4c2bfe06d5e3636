package org.seacairn.place;

import java.util.Comparator;

/**
 * A rectangle that could become an area.
 *
 * @param mean score over its scored cells
 * @param col column of its centre
 * @param row row of its centre
 * @param shape its number among the rectangles about that cell
 */
record Rectangle(double mean, int col, int row, int shape) {
    /** Highest mean first, then the more northern, the more western, the earlier size, the lesser turn. */
    static final Comparator<Rectangle> BEST_FIRST = Comparator.comparingDouble(Rectangle::mean).reversed()
            .thenComparingInt(Rectangle::row).thenComparingInt(Rectangle::col).thenComparingInt(Rectangle::shape);

    boolean before(Rectangle other) {
        return BEST_FIRST.compare(this, other) < 0;
    }
}
