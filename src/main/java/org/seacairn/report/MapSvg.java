package org.seacairn.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The map of a page as markup: an SVG drawing, its buttons and its legend, to stand in a {@code figure} of the page.
 *
 * <p>The longer side of the grid is {@value MapPlane#LONGER_SIDE} units. What is on the ground is drawn in the inner {@code svg}, whose
 * {@code viewBox} is what a script moves. Strokes, marks and texts keep their size in pixels: strokes by
 * {@code vector-effect}, the others by the CSS variable {@code --k}, units of the ground for a pixel, and {@code --f}, the same for the
 * frame. The style sheet {@code map.css}, which stands in the page's head, has values for a page without script; the script sets them as the map stands.
 *
 * <p>Same map and styles, same text. All text from data is escaped by {@link Html}, and long names are cut.
 */
public final class MapSvg {
    /** The drawing on paper, beside its legend, so that with the cautions and the summary it fits one sheet of A4 or US letter. */
    private static final double PAPER_WIDTH_PX = 430;
    private static final double PAPER_HEIGHT_PX = 330;

    private final PageMap map;
    private final Function<String, LayerStyle> styles;
    private final MapPlane plane;
    private final LabelPlaces places;
    private final List<DrawnLayer> layers = new ArrayList<>();
    private final Optional<ContourLayer> contours;
    private final Html legend = new Html();
    private final Html html = new Html();

    private MapSvg(PageMap map, Function<String, LayerStyle> styles) {
        this.map = map;
        this.styles = styles;
        this.plane = new MapPlane(map.grid());
        this.places = new LabelPlaces(plane);
        this.contours = map.rasters().map(rasters -> ContourLayer.of(rasters, map.display(), styles.apply("contours"), plane))
                .filter(layer -> !layer.isEmpty());
        for (MapLayer layer : map.layers()) {
            if (!layer.features().isEmpty()) {
                layers.add(DrawnLayer.of(layer, styles.apply(layer.style()), plane, new Units(map.display())));
            }
        }
    }

    /**
     * Draws a map.
     *
     * @param styles by the name of the layer: those of the map's layers, {@code depth}, {@code contours}, {@code score}, {@code reasons},
     *     {@code picked_reason} and {@code graticule}
     * @return markup for a {@code figure} of the page; HTML and well-formed XML alike
     */
    public static String of(PageMap map, Function<String, LayerStyle> styles) {
        return new MapSvg(map, styles).markup();
    }

    private String markup() {
        placeLabels();
        buttons();
        double paperPx = Math.min(PAPER_WIDTH_PX, PAPER_HEIGHT_PX * plane.width() / plane.height());
        html.open("div", "class", "map-drawing", "style", "--aspect:" + PathText.number(plane.width() / plane.height(), 2)
                + ";--paper:" + PathText.number(plane.width() / paperPx, 2) + ";--paper-width:" + PathText.number(paperPx, 0) + "px").newLine();
        html.open("svg", "id", "map-drawing", "viewBox", "0 0 " + size(), "role", "graphics-document",
                "aria-label", "Map of the working grid: what it shows is in the legend below; the tables of this page hold the same figures").newLine();
        html.empty("rect", "class", "ground", "width", width(), "height", height());
        html.open("svg", "id", "map-view", "width", width(), "height", height(), "viewBox", "0 0 " + size()).newLine();
        legend.open("ul", "class", "map-legend", "aria-label", "Legend").newLine();
        ground();
        html.empty("g", "id", "map-picked").close("svg").newLine();
        frame();
        html.close("svg").close("div").newLine();
        html.ready(legend.close("ul").done());
        return html.done();
    }

    private void placeLabels() {
        layers.forEach(layer -> layer.reserve(places));
        for (int i = layers.size() - 1; i >= 0; i--) {
            layers.get(i).place(places);
        }
        contours.ifPresent(layer -> layer.place(places));
    }

    private void buttons() {
        html.open("div", "class", "map-buttons", "role", "group", "aria-label", "Map", "hidden", "hidden");
        button("in", "Zoom in", "+");
        button("out", "Zoom out", "−");
        button("all", "Show the whole map", "Whole map");
        html.element("span", "Drag or arrow keys to move, wheel or + and − to zoom", "class", "hint").close("div").newLine();
    }

    private void button(String what, String label, String text) {
        html.element("button", text, "type", "button", "data-zoom", what, "aria-label", label, "title", label);
    }

    private void ground() {
        MapLegend list = new MapLegend(legend);
        List<Runnable> entries = new ArrayList<>();
        map.rasters().ifPresent(rasters -> rasters(rasters, list, entries));
        html.open("g", "id", "map-lines").newLine();
        LayerStyle graticule = styles.apply("graticule");
        new Graticule(plane).write(html, graticule);
        contours.ifPresent(layer -> {
            layer.write(html, places);
            entries.add(() -> list.lines("layer-contours", layer.title(), styles.apply("contours")));
        });
        entries.add(() -> list.lines("layer-graticule", "Graticule", graticule));
        html.close("g").newLine();
        layers.forEach(layer -> layer.write(html, places));
        Set<String> outOfSight = layers.stream().filter(DrawnLayer::isEmpty).map(DrawnLayer::id).collect(Collectors.toSet());
        // The legend begins with what lies on top.
        for (int i = map.layers().size() - 1; i >= 0; i--) {
            MapLayer layer = map.layers().get(i);
            if (!layer.features().isEmpty()) {
                list.layer(layer, styles.apply(layer.style()), !outOfSight.contains(layer.id()));
            }
        }
        entries.forEach(Runnable::run);
    }

    private void rasters(ReducedRasters rasters, MapLegend list, List<Runnable> entries) {
        RasterPictures pictures = new RasterPictures(rasters, plane);
        ColorRamp depth = ramp("depth");
        pictures.values(html, "depth", "Depth", rasters.depthM(), depth);
        Optional<double[]> depths = RasterPictures.range(rasters.depthM());
        Optional<ColorRamp> veiled = rasters.reasons().map(masks -> ramp("reasons"));
        depths.ifPresent(range -> entries.add(() -> list.depth(range, depth, veiled, map.display())));
        rasters.score().ifPresent(score -> {
            ColorRamp ramp = ramp("score");
            pictures.values(html, "score", "Score", score, ramp);
            RasterPictures.range(score).ifPresent(range -> entries.add(0, () -> list.score(range, ramp)));
        });
        rasters.reasons().ifPresent(masks -> {
            ColorRamp veil = ramp("reasons");
            ColorRamp picked = ramp("picked_reason");
            List<Integer> standing = pictures.reasons(html, masks, veil, picked, map.reasons().size());
            int ground = depths.map(range -> depth.colorAt((range[0] + range[1]) / 2)).orElse(0);
            entries.add(1, () -> list.reasons(veil, picked, ground, standing, map.reasons()));
        });
    }

    private ColorRamp ramp(String name) {
        return styles.apply(name).ramp().orElseThrow(
                () -> new IllegalArgumentException("the style " + name + " is that of a vector layer"));
    }

    private void frame() {
        html.empty("rect", "class", "frame-line", "width", width(), "height", height()).newLine();
        new Graticule(plane).writeFigures(html);
        html.open("g", "class", "below", "transform", "translate(0 " + height() + ")");
        new ScaleBar(plane).write(html);
        html.close("g").newLine();
        html.open("g", "class", "below", "transform", "translate(" + width() + " " + height() + ")").open("g", "class", "arrow");
        new NorthArrow(plane).write(html);
        html.close("g").close("g").newLine();
    }

    private String width() {
        return PathText.number(plane.width(), 2);
    }

    private String height() {
        return PathText.number(plane.height(), 2);
    }

    private String size() {
        return width() + " " + height();
    }
}
