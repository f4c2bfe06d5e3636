package org.seacairn.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seacairn.report.Symbolizer.Mark;
import org.seacairn.report.Symbolizer.Paint;
import org.seacairn.report.Symbolizer.Placement;
import org.seacairn.report.Symbolizer.Stroke;
import org.seacairn.report.Symbolizer.Text;

/** Symbolizers as presentation attributes of SVG: names and values in turn. */
final class SvgStyle {
    /** Half the width of the arms of a cross, and the inner radius of a star, as shares of the mark's size. */
    private static final double ARM = 0.13;
    private static final double STAR_INNER = 0.2;

    private SvgStyle() {}

    /** The attributes of an area or a line. */
    static String[] attributes(Symbolizer symbolizer) {
        if (symbolizer instanceof Symbolizer.Area area) {
            return paint(area.fill(), area.stroke());
        } else if (symbolizer instanceof Symbolizer.Line line) {
            return paint(Optional.empty(), Optional.of(line.stroke()));
        }
        throw new IllegalArgumentException("neither area nor line: " + symbolizer);
    }

    static String[] paint(Optional<Paint> fill, Optional<Stroke> stroke) {
        List<String> attributes = new ArrayList<>();
        paint(attributes, "fill", fill);
        paint(attributes, "stroke", stroke.map(Stroke::paint));
        stroke.ifPresent(s -> {
            add(attributes, "stroke-width", number(s.widthPx()));
            if (!s.dashPx().isEmpty()) {
                add(attributes, "stroke-dasharray", String.join(" ", s.dashPx().stream().map(SvgStyle::number).toList()));
            } else {
                add(attributes, "stroke-linejoin", "round");
            }
        });
        return attributes.toArray(String[]::new);
    }

    private static void paint(List<String> attributes, String name, Optional<Paint> paint) {
        add(attributes, name, paint.map(Paint::hex).orElse("none"));
        if (paint.isPresent() && paint.get().opacity() < 1) {
            add(attributes, name + "-opacity", number(paint.get().opacity()));
        }
    }

    /** How texts look; where each stands is said by itself. */
    static String[] text(Text text) {
        List<String> attributes = new ArrayList<>();
        add(attributes, "font-family", text.font().family());
        add(attributes, "font-size", number(text.font().sizePx()));
        if (text.font().bold()) {
            add(attributes, "font-weight", "bold");
        }
        if (text.font().italic()) {
            add(attributes, "font-style", "italic");
        }
        paint(attributes, "fill", Optional.of(text.fill()));
        text.halo().ifPresent(halo -> {
            paint(attributes, "stroke", Optional.of(halo.fill()));
            // The stroke lies half inside the letters; the style sheet has it painted before them.
            add(attributes, "stroke-width", number(2 * halo.radiusPx()));
            add(attributes, "stroke-linejoin", "round");
        });
        return attributes.toArray(String[]::new);
    }

    /** The outline of a mark about 0, 0. */
    static String markPath(Mark mark) {
        double r = mark.sizePx() / 2;
        return switch (mark.shape()) {
            case CIRCLE -> "M" + number(-r) + " 0a" + arc(r) + number(2 * r) + " 0a" + arc(r) + number(-2 * r) + " 0z";
            case SQUARE -> polygon(-r, -r, r, -r, r, r, -r, r);
            case TRIANGLE -> polygon(0, -r, r, r, -r, r);
            case STAR -> star(r, STAR_INNER * mark.sizePx());
            case CROSS -> cross(r, ARM * mark.sizePx(), 0);
            case X -> cross(r * Math.sqrt(2), ARM * mark.sizePx(), Math.PI / 4);
        };
    }

    private static String arc(double r) {
        return number(r) + " " + number(r) + " 0 1 1 ";
    }

    private static String star(double outer, double inner) {
        double[] xy = new double[20];
        for (int i = 0; i < 10; i++) {
            double r = i % 2 == 0 ? outer : inner;
            xy[2 * i] = r * Math.sin(Math.PI * i / 5);
            xy[2 * i + 1] = -r * Math.cos(Math.PI * i / 5);
        }
        return polygon(xy);
    }

    private static String cross(double r, double arm, double turn) {
        double[] upright = {-arm, -r, arm, -r, arm, -arm, r, -arm, r, arm, arm, arm, arm, r, -arm, r, -arm, arm, -r, arm, -r, -arm, -arm, -arm};
        double[] xy = new double[upright.length];
        for (int i = 0; i < xy.length; i += 2) {
            xy[i] = upright[i] * Math.cos(turn) - upright[i + 1] * Math.sin(turn);
            xy[i + 1] = upright[i] * Math.sin(turn) + upright[i + 1] * Math.cos(turn);
        }
        return polygon(xy);
    }

    private static String polygon(double... xy) {
        StringBuilder path = new StringBuilder();
        for (int i = 0; i < xy.length; i += 2) {
            path.append(i == 0 ? "M" : "L").append(number(xy[i])).append(' ').append(number(xy[i + 1]));
        }
        return path.append('z').toString();
    }

    /** Where a text beside a point stands: {@code x}, {@code y} in pixels and its anchor. */
    static LabelSpot spot(Text text) {
        double lineHeight = text.font().sizePx();
        if (text.placement() instanceof Placement.AtPoint at) {
            // Digits and capitals are 0.7 of the size high, so that much lies above the base line.
            return new LabelSpot(at.rightPx(), -at.upPx() + 0.7 * lineHeight * at.anchorY(), at.anchorX());
        }
        Placement.AlongLine along = (Placement.AlongLine) text.placement();
        return new LabelSpot(0, -along.offsetPx() + 0.35 * lineHeight, 0.5);
    }

    static String number(double value) {
        return String.format(Locale.ROOT, "%.2f", value).replaceFirst("\\.?0+$", "").replaceFirst("^-0$", "0");
    }

    private static void add(List<String> attributes, String name, String value) {
        attributes.add(name);
        attributes.add(value);
    }
}
