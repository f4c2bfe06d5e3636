package org.seacairn.report;

import java.util.Map;
import java.util.Optional;
import org.seacairn.report.Symbolizer.Font;
import org.seacairn.report.Symbolizer.Halo;
import org.seacairn.report.Symbolizer.Paint;
import org.seacairn.report.Symbolizer.Placement;

/** Reads a {@code TextSymbolizer}. */
final class TextSymbolizerReader {
    private static final double MOST_PIXELS = 200;
    private static final Font FONT = new Font("sans-serif", 10, false, false);

    private final StyleElements in;
    private final SymbolizerReader symbolizers;

    TextSymbolizerReader(StyleElements in, SymbolizerReader symbolizers) {
        this.in = in;
        this.symbolizers = symbolizers;
    }

    Symbolizer.Text text() {
        String property = "";
        Font font = FONT;
        Placement placement = new Placement.AtPoint(0, 0.5, 0, 0);
        Halo halo = null;
        Paint fill = new Paint(0, 1);
        StyleElements.Children children = in.children("Label", "Font", "LabelPlacement", "Halo", "Fill");
        while (children.next()) {
            switch (in.name()) {
                case "Label" -> property = label();
                case "Font" -> font = font();
                case "LabelPlacement" -> placement = placement();
                case "Halo" -> halo = halo();
                default -> fill = symbolizers.fill(0);
            }
        }
        children.require("Label");
        return new Symbolizer.Text(property, font, fill, Optional.ofNullable(halo), placement);
    }

    private String label() {
        StyleElements.Children children = in.children("PropertyName");
        String property = "";
        while (children.next()) {
            property = in.text();
        }
        children.require("PropertyName");
        return property;
    }

    private Font font() {
        Map<String, String> css = in.cssParameters("font-family", "font-size", "font-weight", "font-style");
        String family = css.getOrDefault("font-family", FONT.family());
        // It goes into the page as it is, so it may hold nothing that could mean more than a name.
        if (!family.matches("[A-Za-z][A-Za-z0-9 -]{0,63}")) {
            throw in.problem("font-family is \"" + StyleElements.shown(family) + "\"; write one name of letters, digits, spaces and hyphens");
        }
        double sizePx = css.containsKey("font-size") ? in.number("font-size", css.get("font-size"), 1, MOST_PIXELS) : FONT.sizePx();
        return new Font(family, sizePx, either(css, "font-weight", "bold"), either(css, "font-style", "italic"));
    }

    private boolean either(Map<String, String> css, String name, String special) {
        String value = css.getOrDefault(name, "normal");
        if (!value.equals("normal") && !value.equals(special)) {
            throw in.problem(name + " is \"" + StyleElements.shown(value) + "\"; write \"normal\" or \"" + special + "\"");
        }
        return value.equals(special);
    }

    private Placement placement() {
        Placement placement = null;
        StyleElements.Children children = in.children("PointPlacement", "LinePlacement");
        while (children.next()) {
            if (placement != null) {
                throw in.problem("\"LabelPlacement\" has two placements; keep one");
            }
            placement = in.name().equals("PointPlacement") ? atPoint() : alongLine();
        }
        if (placement == null) {
            throw in.problem("\"LabelPlacement\" is empty; write a \"PointPlacement\" or a \"LinePlacement\"");
        }
        return placement;
    }

    private Placement alongLine() {
        StyleElements.Children children = in.children("PerpendicularOffset");
        double offsetPx = 0;
        while (children.next()) {
            offsetPx = in.number(-MOST_PIXELS, MOST_PIXELS);
        }
        return new Placement.AlongLine(offsetPx);
    }

    private Placement atPoint() {
        double[] anchor = {0, 0.5};
        double[] moved = {0, 0};
        StyleElements.Children children = in.children("AnchorPoint", "Displacement");
        while (children.next()) {
            switch (in.name()) {
                case "AnchorPoint" -> pair(anchor, "AnchorPointX", "AnchorPointY", 0, 1);
                default -> pair(moved, "DisplacementX", "DisplacementY", -MOST_PIXELS, MOST_PIXELS);
            }
        }
        return new Placement.AtPoint(anchor[0], anchor[1], moved[0], moved[1]);
    }

    private void pair(double[] values, String x, String y, double least, double most) {
        StyleElements.Children children = in.children(x, y);
        while (children.next()) {
            values[in.name().equals(x) ? 0 : 1] = in.number(least, most);
        }
        children.require(x);
        children.require(y);
    }

    private Halo halo() {
        double radiusPx = 1;
        Paint fill = new Paint(0xffffff, 1);
        StyleElements.Children children = in.children("Radius", "Fill");
        while (children.next()) {
            switch (in.name()) {
                case "Radius" -> radiusPx = in.number(0, MOST_PIXELS);
                default -> fill = symbolizers.fill(0xffffff);
            }
        }
        return new Halo(fill, radiusPx);
    }
}
