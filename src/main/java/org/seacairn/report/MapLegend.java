package org.seacairn.report;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.report.Symbolizer.Line;

/** The list of what the map shows, each with a sample in the look of its style and a switch for the script. */
final class MapLegend {
    private static final int RAMP_PIECES = 24;
    private static final double METRES_PER_FOOT = 0.3048;

    private final Html html;

    MapLegend(Html html) {
        this.html = html;
    }

    /** @param inSight whether any of it is on the map */
    void layer(MapLayer layer, LayerStyle style, boolean inSight) {
        Set<StyleRule> used = new LinkedHashSet<>();
        Set<Integer> dimensions = new LinkedHashSet<>();
        layer.features().forEach(feature -> {
            used.addAll(style.rulesFor(feature.properties()));
            dimensions.add(feature.lonLat().getDimension());
        });
        item("layer-" + layer.id(), layer.title(), layer.shown(), () -> {
            if (used.size() <= 1) {
                used.forEach(rule -> sample(rule, dimensions));
            }
        }, () -> {
            if (!inSight) {
                html.element("span", " (none on this map)", "class", "beside");
            }
            if (used.size() > 1) {
                html.open("ul");
                style.rules().stream().filter(used::contains).forEach(rule -> {
                    html.open("li");
                    sample(rule, dimensions);
                    html.element("span", rule.title()).close("li").newLine();
                });
                html.close("ul");
            }
        });
    }

    /** A layer of lines, by its first rule. */
    void lines(String id, String title, LayerStyle style) {
        item(id, title, true, () -> sample(style.rules().get(style.rules().size() - 1), Set.of(1)), () -> { });
    }

    /** @param veil lies over the depths where ground is ruled out: the lower half of the sample shows them below it */
    void depth(double[] rangeM, ColorRamp ramp, Optional<ColorRamp> veil, Display display) {
        double unit = display == Display.US ? METRES_PER_FOOT : 1;
        item("layer-depth", "Depth", true, () -> { }, () -> ramp(ramp, rangeM, veil, String.format(Locale.ROOT, "%.0f", rangeM[0] / unit),
                String.format(Locale.ROOT, "%.0f %s", rangeM[1] / unit, display == Display.US ? "ft" : "m")));
    }

    void score(double[] range, ColorRamp ramp) {
        item("layer-score", "Score", true, () -> { }, () -> ramp(ramp, range, Optional.empty(), String.format(Locale.ROOT, "%.2f", range[0]),
                String.format(Locale.ROOT, "%.2f, the best", range[1])));
    }

    /**
     * @param groundArgb a colour of the depths below the veil
     * @param standing bits of the reasons that stand anywhere
     */
    void reasons(ColorRamp veil, ColorRamp picked, int groundArgb, List<Integer> standing, List<String> names) {
        item("layer-reasons", "Ruled out", true, () -> patch(veil, groundArgb), () -> {
            html.open("span", "class", "pick");
            html.open("label", "for", "map-reason");
            patch(picked, groundArgb);
            html.text("by this reason: ").close("label");
            html.open("select", "id", "map-reason", "autocomplete", "off");
            html.element("option", "none picked", "value", "");
            standing.forEach(bit -> html.element("option", Html.cut(names.get(bit), Html.LONGEST_NAME), "value", String.valueOf(bit)));
            html.close("select").close("span");
        });
    }

    private void item(String id, String title, boolean shown, Runnable sample, Runnable more) {
        html.open("li");
        html.open("label");
        String[] box = {"type", "checkbox", "data-layer", id};
        html.empty("input", shown ? new String[] {box[0], box[1], box[2], box[3], "checked", "checked"} : box);
        sample.run();
        html.name(title).close("label");
        if (!shown) {
            html.element("span", " (not drawn here)", "class", "unless-script");
        }
        more.run();
        html.close("li").newLine();
    }

    private void ramp(ColorRamp ramp, double[] range, Optional<ColorRamp> veil, String least, String most) {
        html.open("span", "class", "ramp").element("span", least);
        html.open("svg", "viewBox", "0 0 " + RAMP_PIECES + " 3", "preserveAspectRatio", "none", "aria-hidden", "true");
        for (int i = 0; i < RAMP_PIECES; i++) {
            int argb = ramp.colorAt(range[0] + (range[1] - range[0]) * (i + 0.5) / RAMP_PIECES);
            html.empty("rect", "x", String.valueOf(i), "width", "1.05", "height", "3", "fill", hex(argb), "fill-opacity", opacity(argb));
        }
        veil.ifPresent(over -> html.empty("rect", "y", "1.5", "width", String.valueOf(RAMP_PIECES), "height", "1.5",
                "fill", hex(over.colorAt(1)), "fill-opacity", opacity(over.colorAt(1))));
        html.close("svg").element("span", most).close("span");
    }

    private void patch(ColorRamp ramp, int groundArgb) {
        int argb = ramp.colorAt(1);
        html.open("svg", "class", "sample", "viewBox", "0 0 28 16", "aria-hidden", "true");
        html.empty("rect", "x", "2", "y", "2", "width", "24", "height", "12", "fill", hex(groundArgb), "fill-opacity", opacity(groundArgb));
        html.empty("rect", "x", "2", "y", "2", "width", "24", "height", "12", "fill", hex(argb), "fill-opacity", opacity(argb),
                "stroke", "#848484", "stroke-width", "0.75").close("svg");
    }

    private void sample(StyleRule rule, Set<Integer> dimensions) {
        html.open("svg", "class", "sample", "viewBox", "0 0 28 16", "aria-hidden", "true");
        int dimension = dimensions.contains(2) ? 2 : dimensions.contains(1) ? 1 : 0;
        for (Symbolizer symbolizer : rule.symbolizersFor(dimension)) {
            if (symbolizer instanceof Symbolizer.Area || symbolizer instanceof Line && dimension == 2) {
                html.open("g", SvgStyle.attributes(symbolizer)).empty("path", "d", "M3 3h22v10h-22z").close("g");
            } else if (symbolizer instanceof Line) {
                html.open("g", SvgStyle.attributes(symbolizer)).empty("path", "d", "M1 8h26").close("g");
            } else if (symbolizer instanceof Symbolizer.Point point) {
                html.open("g", "transform", "translate(14 8)").open("g", SvgStyle.paint(point.mark().fill(), point.mark().stroke()))
                        .empty("path", "d", SvgStyle.markPath(point.mark())).close("g").close("g");
            }
        }
        html.close("svg");
    }

    private static String hex(int argb) {
        return "#" + Integer.toHexString(argb & 0xffffff | 0x1000000).substring(1);
    }

    private static String opacity(int argb) {
        return SvgStyle.number((argb >>> 24) / 255.0);
    }
}
