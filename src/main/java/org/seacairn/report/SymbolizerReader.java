package org.seacairn.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.seacairn.report.Symbolizer.Mark;
import org.seacairn.report.Symbolizer.Paint;
import org.seacairn.report.Symbolizer.Shape;
import org.seacairn.report.Symbolizer.Stroke;

/** Reads a symbolizer; what a style leaves out has the value that SLD 1.0.0 gives it. */
final class SymbolizerReader {
    private static final double MOST_PIXELS = 200;

    private final StyleElements in;

    SymbolizerReader(StyleElements in) {
        this.in = in;
    }

    Symbolizer symbolizer() {
        return switch (in.name()) {
            case "PolygonSymbolizer" -> area();
            case "LineSymbolizer" -> line();
            case "PointSymbolizer" -> point();
            case "TextSymbolizer" -> new TextSymbolizerReader(in, this).text();
            case "RasterSymbolizer" -> raster();
            default -> throw new IllegalStateException(in.name());
        };
    }

    private Symbolizer area() {
        Paint fill = null;
        Stroke stroke = null;
        StyleElements.Children children = in.children("Fill", "Stroke");
        while (children.next()) {
            switch (in.name()) {
                case "Fill" -> fill = fill(0x808080);
                default -> stroke = stroke();
            }
        }
        return new Symbolizer.Area(Optional.ofNullable(fill), Optional.ofNullable(stroke));
    }

    private Symbolizer line() {
        StyleElements.Children children = in.children("Stroke");
        Stroke stroke = null;
        while (children.next()) {
            stroke = stroke();
        }
        children.require("Stroke");
        return new Symbolizer.Line(stroke);
    }

    private Symbolizer point() {
        StyleElements.Children children = in.children("Graphic");
        Mark mark = null;
        while (children.next()) {
            mark = graphic();
        }
        children.require("Graphic");
        return new Symbolizer.Point(mark);
    }

    private Mark graphic() {
        StyleElements.Children children = in.children("Mark", "Size");
        Mark mark = null;
        double sizePx = 6;
        while (children.next()) {
            switch (in.name()) {
                case "Mark" -> mark = mark();
                default -> sizePx = in.number(0, MOST_PIXELS);
            }
        }
        children.require("Mark");
        return new Mark(mark.shape(), mark.fill(), mark.stroke(), sizePx);
    }

    private Mark mark() {
        Shape shape = Shape.SQUARE;
        Paint fill = null;
        Stroke stroke = null;
        StyleElements.Children children = in.children("WellKnownName", "Fill", "Stroke");
        while (children.next()) {
            switch (in.name()) {
                case "WellKnownName" -> shape = shape(in.text());
                case "Fill" -> fill = fill(0x808080);
                default -> stroke = stroke();
            }
        }
        return new Mark(shape, Optional.ofNullable(fill), Optional.ofNullable(stroke), 0);
    }

    private Shape shape(String name) {
        for (Shape shape : Shape.values()) {
            if (shape.name().toLowerCase(Locale.ROOT).equals(name)) {
                return shape;
            }
        }
        throw in.problem("WellKnownName is \"" + StyleElements.shown(name) + "\"; write one of: square, circle, triangle, star, cross, x");
    }

    /** The {@code Fill} in hand. */
    Paint fill(int rgbIfLeftOut) {
        Map<String, String> css = in.cssParameters("fill", "fill-opacity");
        return new Paint(css.containsKey("fill") ? in.color("fill", css.get("fill")) : rgbIfLeftOut, opacity(css, "fill-opacity"));
    }

    private Stroke stroke() {
        Map<String, String> css = in.cssParameters("stroke", "stroke-width", "stroke-opacity", "stroke-dasharray");
        int rgb = css.containsKey("stroke") ? in.color("stroke", css.get("stroke")) : 0;
        double widthPx = css.containsKey("stroke-width") ? in.number("stroke-width", css.get("stroke-width"), 0, MOST_PIXELS) : 1;
        List<Double> dashPx = new ArrayList<>();
        if (css.containsKey("stroke-dasharray")) {
            for (String length : css.get("stroke-dasharray").split("[\\s,]+")) {
                dashPx.add(in.number("stroke-dasharray", length, 0.1, MOST_PIXELS));
            }
        }
        return new Stroke(new Paint(rgb, opacity(css, "stroke-opacity")), widthPx, dashPx);
    }

    private double opacity(Map<String, String> css, String name) {
        return css.containsKey(name) ? in.number(name, css.get(name), 0, 1) : 1;
    }

    private Symbolizer raster() {
        StyleElements.Children children = in.children("Opacity", "ColorMap");
        double opacity = 1;
        ColorRamp ramp = null;
        while (children.next()) {
            switch (in.name()) {
                case "Opacity" -> opacity = in.number(0, 1);
                default -> ramp = ramp();
            }
        }
        children.require("ColorMap");
        double all = opacity;
        return new Symbolizer.Raster(new ColorRamp(ramp.stops().stream().map(stop -> new ColorRamp.Stop(stop.value(),
                new Paint(stop.paint().rgb(), all * stop.paint().opacity()), stop.label())).toList()));
    }

    private ColorRamp ramp() {
        List<ColorRamp.Stop> stops = new ArrayList<>();
        StyleElements.Children children = in.children("ColorMapEntry*");
        double before = Double.NEGATIVE_INFINITY;
        while (children.next()) {
            in.attributes("color", "opacity", "quantity", "label");
            double value = in.number("quantity", in.attribute("quantity"), -1e10, 1e10);
            if (value <= before) {
                throw in.problem("quantity is \"" + StyleElements.shown(in.attribute("quantity")) + "\", no more than the one before; write them rising");
            }
            before = value;
            double opacity = in.attribute("opacity") == null ? 1 : in.number("opacity", in.attribute("opacity"), 0, 1);
            String label = in.attribute("label") == null ? "" : in.attribute("label");
            stops.add(new ColorRamp.Stop(value, new Paint(in.color("color", in.attribute("color")), opacity), label));
            in.emptyElement();
        }
        if (stops.isEmpty()) {
            throw in.problem("\"ColorMap\" has no \"ColorMapEntry\"; write one");
        }
        return new ColorRamp(stops);
    }
}
