package org.seacairn.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;
import org.seacairn.report.Symbolizer.Text;

/**
 * One vector layer of the map, ready to be written: outlines by symbolizer in the order of the style, marks, texts.
 */
final class DrawnLayer {
    /** Style's symbolizers that lie on top of each other, and what each draws. */
    private record Outline(MapFeature feature, String path) {}

    private record Placed(MapFeature feature, Coordinate at, List<Symbolizer.Point> marks) {}

    private final String id;
    private final String title;
    private final boolean shown;
    private final Units units;
    private final Map<Symbolizer, List<Outline>> outlines = new LinkedHashMap<>();
    private final List<Placed> marks = new ArrayList<>();
    private final Map<Text, List<MapLabel>> labels = new LinkedHashMap<>();

    private DrawnLayer(String id, String title, boolean shown, Units units) {
        this.id = id;
        this.title = title;
        this.shown = shown;
        this.units = units;
    }

    static DrawnLayer of(MapLayer layer, LayerStyle style, MapPlane plane, Units units) {
        DrawnLayer drawn = new DrawnLayer(layer.id(), layer.title(), layer.shown(), units);
        // In the order of the rules, not of the features, so that the casing of one line does not cut the next.
        style.rules().forEach(rule -> rule.symbolizers().forEach(drawn::prepare));
        for (MapFeature feature : layer.features()) {
            drawn.add(feature, plane.drawn(feature.lonLat()), style);
        }
        return drawn;
    }

    private void prepare(Symbolizer symbolizer) {
        if (symbolizer instanceof Symbolizer.Area || symbolizer instanceof Symbolizer.Line) {
            outlines.putIfAbsent(symbolizer, new ArrayList<>());
        }
    }

    private void add(MapFeature feature, Geometry geometry, LayerStyle style) {
        if (geometry.isEmpty()) {
            return;
        }
        List<Symbolizer> symbolizers = style.rulesFor(feature.properties()).stream()
                .flatMap(rule -> rule.symbolizersFor(geometry.getDimension()).stream()).toList();
        String path = geometry.getDimension() > 0 ? PathText.of(geometry) : "";
        for (Symbolizer symbolizer : symbolizers) {
            if (symbolizer instanceof Text text) {
                label(feature, geometry, text);
            } else if (!(symbolizer instanceof Symbolizer.Point)) {
                outlines.get(symbolizer).add(new Outline(feature, path));
            }
        }
        List<Symbolizer.Point> points = symbolizers.stream()
                .filter(Symbolizer.Point.class::isInstance).map(Symbolizer.Point.class::cast).toList();
        if (geometry.getDimension() == 0 && !points.isEmpty()) {
            for (Coordinate at : geometry.getCoordinates()) {
                marks.add(new Placed(feature, at, points));
            }
        }
    }

    private void label(MapFeature feature, Geometry geometry, Text text) {
        String value = shown(text.property(), feature.properties().getOrDefault(text.property(), ""));
        if (value.isBlank()) {
            return;
        }
        if (text.placement() instanceof Symbolizer.Placement.AlongLine && geometry.getDimension() == 1) {
            LineMiddle middle = LineMiddle.of(geometry);
            label(MapLabel.of(value, middle.x(), middle.y(), middle.angleDeg(), text));
        } else {
            Point at = geometry.getInteriorPoint();
            label(MapLabel.of(value, at.getX(), at.getY(), 0, text));
        }
    }

    /** The columns of the files say by their names what is in metres; a reader of the map wants it in his units. */
    private String shown(String property, String value) {
        return property.endsWith("_m") && value.matches("-?\\d+(\\.\\d+)?") ? units.lengthText(Double.parseDouble(value)) : value;
    }

    private void label(MapLabel label) {
        labels.computeIfAbsent(label.look(), look -> new ArrayList<>()).add(label);
    }

    /** Takes the room that the layer's marks need. */
    void reserve(LabelPlaces places) {
        if (shown) {
            marks.forEach(placed -> placed.marks().forEach(mark -> places.mark(placed.at(), mark.mark().sizePx())));
        }
    }

    String id() {
        return id;
    }

    /** Whether none of its features is on this map. */
    boolean isEmpty() {
        return marks.isEmpty() && outlines.values().stream().allMatch(List::isEmpty);
    }

    void place(LabelPlaces places) {
        if (shown) {
            labels.values().forEach(all -> all.forEach(places::place));
        }
    }

    void write(Html html, LabelPlaces places) {
        html.open("g", "id", "layer-" + id, "class", shown ? "layer" : "layer off", "data-title", Html.cut(title, Html.LONGEST_NAME)).newLine();
        outlines.forEach((symbolizer, drawn) -> {
            if (!drawn.isEmpty()) {
                html.open("g", SvgStyle.attributes(symbolizer));
                drawn.forEach(outline -> outline(html, outline));
                html.close("g").newLine();
            }
        });
        marks.forEach(placed -> mark(html, placed));
        labels.forEach((look, all) -> labels(html, look, all, places));
        html.close("g").newLine();
    }

    private static void outline(Html html, Outline outline) {
        String id = outline.feature().id();
        String label = outline.feature().label();
        html.open("path", id.isEmpty() ? new String[] {"d", outline.path()} : new String[] {"d", outline.path(), "data-feature", id});
        if (!label.isBlank()) {
            html.element("title", Html.cut(label, Html.LONGEST_NAME));
        }
        html.close("path");
    }

    private static void mark(Html html, Placed placed) {
        String id = placed.feature().id();
        String label = Html.cut(placed.feature().label(), Html.LONGEST_NAME);
        String translate = "translate(" + PathText.number(placed.at().x, 2) + " " + PathText.number(placed.at().y, 2) + ")";
        String tag = id.isEmpty() ? "g" : "a";
        html.open(tag, id.isEmpty() ? new String[] {"class", "mark", "transform", translate}
                : new String[] {"class", "mark", "transform", translate, "href", "#" + id, "data-feature", id, "aria-label", label});
        if (!label.isBlank()) {
            html.element("title", label);
        }
        for (Symbolizer.Point point : placed.marks()) {
            html.empty("path", joined(SvgStyle.paint(point.mark().fill(), point.mark().stroke()), "d", SvgStyle.markPath(point.mark())));
        }
        html.close(tag).newLine();
    }

    static void labels(Html html, Text look, List<MapLabel> labels, LabelPlaces places) {
        html.open("g", SvgStyle.text(look)).newLine();
        for (MapLabel label : labels) {
            LabelSpot spot = places.spot(label).orElseGet(() -> SvgStyle.spot(look));
            String turn = label.angleDeg() == 0 ? "" : " rotate(" + PathText.number(label.angleDeg(), 1) + ")";
            html.open("g", "class", (label.alongLine() ? "label along" : "label")
                    + (places.spot(label).isEmpty() ? " off" : places.fitsNarrow(label) ? "" : " roomy"),
                    "transform", "translate(" + PathText.number(label.x(), 2) + " " + PathText.number(label.y(), 2) + ")" + turn);
            html.element("text", label.text(), "x", PathText.number(spot.x(), 1), "y", PathText.number(spot.y(), 1), "text-anchor", spot.textAnchor());
            html.close("g").newLine();
        }
        html.close("g").newLine();
    }

    private static String[] joined(String[] attributes, String... more) {
        List<String> all = new ArrayList<>(List.of(attributes));
        all.addAll(List.of(more));
        return all.toArray(String[]::new);
    }
}
