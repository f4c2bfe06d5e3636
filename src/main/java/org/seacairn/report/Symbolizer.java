package org.seacairn.report;

import java.util.List;
import java.util.Optional;

/** How a feature or a raster is drawn: the symbolizers of OGC SLD 1.0.0 as far as {@link LayerStyle} knows them. Lengths are pixels. */
public sealed interface Symbolizer {

    /** The inside and the outline of a polygon; an absent part is not drawn. */
    record Area(Optional<Paint> fill, Optional<Stroke> stroke) implements Symbolizer {}

    /** A line, or the outline of a polygon. */
    record Line(Stroke stroke) implements Symbolizer {}

    /** A mark, centred on a point. */
    record Point(Mark mark) implements Symbolizer {}

    /** The value of a property as text; nothing where a feature lacks it. */
    record Text(String property, Font font, Paint fill, Optional<Halo> halo, Placement placement) implements Symbolizer {}

    /** Colours by value. */
    record Raster(ColorRamp ramp) implements Symbolizer {}

    /**
     * A colour with its opacity.
     *
     * @param rgb 0xrrggbb
     * @param opacity 0 (invisible) to 1
     */
    record Paint(int rgb, double opacity) {
        /** As CSS and SVG write it, for example {@code #1a1a1a}; without the opacity. */
        public String hex() {
            return "#" + Integer.toHexString(0x1000000 | rgb).substring(1);
        }
    }

    /** @param dashPx lengths drawn and left out in turn; empty for a line without breaks */
    record Stroke(Paint paint, double widthPx, List<Double> dashPx) {
        public Stroke {
            dashPx = List.copyOf(dashPx);
        }
    }

    /** Forms of a mark, each as wide and high as the mark's size. */
    enum Shape { SQUARE, CIRCLE, TRIANGLE, STAR, CROSS, X }

    /** A mark of the given width and height; an absent part is not drawn. */
    record Mark(Shape shape, Optional<Paint> fill, Optional<Stroke> stroke, double sizePx) {}

    /** @param family a name of letters, digits, spaces and hyphens only */
    record Font(String family, double sizePx, boolean bold, boolean italic) {}

    /** What lifts a text from its ground. */
    record Halo(Paint fill, double radiusPx) {}

    /** Where a text stands. */
    sealed interface Placement {
        /**
         * Beside a point, for a polygon or a line beside its middle.
         *
         * @param anchorX the part of the text that lies left of the point, 0 to 1
         * @param anchorY the part of the text that lies below the point, 0 to 1
         * @param rightPx how far the text is moved to the right
         * @param upPx how far it is moved up
         */
        record AtPoint(double anchorX, double anchorY, double rightPx, double upPx) implements Placement {}

        /** @param offsetPx distance of the text's middle from the line; above it if positive, 0 for a text on the line */
        record AlongLine(double offsetPx) implements Placement {}
    }
}
