package org.seacairn.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.linearref.LengthIndexedLine;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.report.Symbolizer.Text;

/** Depth contours of the reduced depths, with their figures. The style is asked with {@code labelled} and {@code label}. */
final class ContourLayer {
    /** A ring or a stretch smaller than this, in units, is survey noise at the scale of the drawing. */
    private static final double SMALLEST = 5;
    /** From one place for a figure to the next along a line; most show only when the map is zoomed in. */
    private static final double FIGURE_EACH = 90;
    /** How straight a line must run for a figure: chord by length. */
    private static final double STRAIGHT = 0.93;
    private static final double STRAIGHT_OVER = 25;
    /** Of one depth. */
    private static final int MOST_FIGURES = 40;

    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final ContourLevels levels;
    private final Map<Symbolizer, StringBuilder> paths = new LinkedHashMap<>();
    private final Map<Text, List<MapLabel>> labels = new LinkedHashMap<>();

    private ContourLayer(ContourLevels levels) {
        this.levels = levels;
    }

    static ContourLayer of(ReducedRasters rasters, Display display, LayerStyle style, MapPlane plane) {
        ContourLayer layer = new ContourLayer(ContourLevels.of(rasters.depthM(), display));
        style.rules().forEach(rule -> rule.symbolizers().forEach(s -> layer.paths.put(s, new StringBuilder())));
        double[] x = IntStream.range(0, rasters.cols()).mapToDouble(col -> rasters.middleCol(col) * plane.cell()).toArray();
        double[] y = IntStream.range(0, rasters.rows()).mapToDouble(row -> rasters.middleRow(row) * plane.cell()).toArray();
        Contours contours = new Contours(rasters.depthM(), x, y);
        for (double depth : layer.levels.depths()) {
            layer.add(depth, contours.at(depth * layer.levels.metresPerUnit()), style, plane);
        }
        return layer;
    }

    private void add(double depth, List<Contour> lines, LayerStyle style, MapPlane plane) {
        String label = String.format(Locale.ROOT, "%.0f ", depth) + levels.unit();
        Map<String, String> properties = Map.of("labelled", String.valueOf(levels.isLabelled(depth)), "label", label);
        List<Symbolizer> symbolizers = style.rulesFor(properties).stream().flatMap(rule -> rule.symbolizersFor(1).stream()).toList();
        List<Geometry> drawn = lines.stream().map(ContourLayer::line).filter(ContourLayer::isSeen).map(plane::inSight)
                .sorted(Comparator.comparingDouble(Geometry::getLength).reversed()).toList();
        for (Symbolizer symbolizer : symbolizers) {
            if (symbolizer instanceof Text look) {
                List<MapLabel> figures = labels.computeIfAbsent(look, key -> new ArrayList<>());
                int before = figures.size();
                drawn.forEach(line -> figures(line, label, look, figures, before + MOST_FIGURES));
            } else {
                drawn.forEach(line -> paths.get(symbolizer).append(PathText.of(line)));
            }
        }
    }

    private static Geometry line(Contour contour) {
        Coordinate[] vertices = new Coordinate[contour.vertices()];
        for (int i = 0; i < vertices.length; i++) {
            vertices[i] = new Coordinate(contour.x(i), contour.y(i));
        }
        return FACTORY.createLineString(vertices);
    }

    private static boolean isSeen(Geometry line) {
        Envelope box = line.getEnvelopeInternal();
        return Math.max(box.getWidth(), box.getHeight()) >= SMALLEST;
    }

    private static void figures(Geometry line, String label, Text look, List<MapLabel> figures, int most) {
        double length = line.getLength();
        LengthIndexedLine measure = new LengthIndexedLine(line);
        int places = (int) Math.max(1, Math.floor(length / FIGURE_EACH));
        for (int i = 0; i < places && length > 2 * STRAIGHT_OVER && figures.size() < most; i++) {
            double along = length * (i + 0.5) / places;
            Coordinate from = measure.extractPoint(along - STRAIGHT_OVER);
            Coordinate to = measure.extractPoint(along + STRAIGHT_OVER);
            if (from.distance(to) >= STRAIGHT * 2 * STRAIGHT_OVER) {
                LineMiddle middle = LineMiddle.at(measure, along);
                figures.add(MapLabel.of(label, middle.x(), middle.y(), middle.angleDeg(), look));
            }
        }
    }

    /** What the legend says. */
    String title() {
        return String.format(Locale.ROOT, "Depth contours every %.0f %s", levels.interval(), levels.unit());
    }

    boolean isEmpty() {
        return levels.depths().isEmpty();
    }

    void place(LabelPlaces places) {
        labels.values().forEach(all -> all.forEach(places::place));
    }

    void write(Html html, LabelPlaces places) {
        html.open("g", "id", "layer-contours", "class", "layer", "data-title", title()).newLine();
        paths.forEach((symbolizer, path) -> {
            if (path.length() > 0) {
                html.open("g", SvgStyle.attributes(symbolizer)).empty("path", "fill", "none", "d", path.toString()).close("g").newLine();
            }
        });
        labels.forEach((look, all) -> DrawnLayer.labels(html, look, all, places));
        html.close("g").newLine();
    }
}
