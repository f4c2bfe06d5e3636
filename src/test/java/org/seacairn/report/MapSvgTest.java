package org.seacairn.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.Progress;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;
import org.seacairn.plan.SitingPlan.Display;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class MapSvgTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final StyleSet STYLES = StyleSet.bundled();

    private static GridGeometry grid(int cols, int rows) {
        return new GridGeometry(Crs.ofEpsg(32617), 650_000, 3_260_000, 20, cols, rows);
    }

    private static ReducedRasters rasters(GridGeometry grid, long seed) {
        Random random = new Random(seed);
        int n = grid.cols() * grid.rows();
        float[] depth = new float[n];
        float[] score = new float[n];
        int[] reasons = new int[n];
        for (int i = 0; i < n; i++) {
            double x = (double) (i % grid.cols()) / grid.cols();
            double y = (double) (i / grid.cols()) / grid.rows();
            depth[i] = (float) (60 + 100 * x + 8 * Math.sin(9 * y) + 0.3 * random.nextGaussian());
            reasons[i] = (x < 0.3 ? 1 : 0) | (y > 0.6 ? 2 : 0) | (random.nextInt(40) == 0 ? 4 : 0);
            score[i] = reasons[i] == 0 ? (float) (0.5 + 0.4 * Math.sin(12 * x) * Math.cos(7 * y) + 0.02 * random.nextGaussian()) : Float.NaN;
        }
        ReducedRastersBuilder builder = new ReducedRastersBuilder(grid, true);
        builder.take(new Window(0, 0, grid.cols(), grid.rows()), depth, score, reasons);
        return builder.build();
    }

    private static Geometry place(GridGeometry grid, double shareX, double shareY) {
        return FACTORY.createPoint(grid.crs().to(Crs.WGS84).apply(grid.west() + shareX * (grid.east() - grid.west()),
                grid.north() - shareY * (grid.north() - grid.south())));
    }

    private static MapLayer sites(GridGeometry grid, int count) {
        Random random = new Random(3);
        List<MapFeature> sites = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            sites.add(new MapFeature("site-S" + i, "S" + i, place(grid, random.nextDouble(), random.nextDouble()), Map.of("site", "S" + i)));
        }
        return new MapLayer("sites", "Sites", "sites", true, sites);
    }

    private static PageMap map(GridGeometry grid, MapLayer... layers) {
        return new PageMap(grid, Optional.of(rasters(grid, 1)), List.of(layers), Display.US, List.of("too-shallow", "too-deep", "keep-off:lanes"));
    }

    private static String markup(PageMap map) {
        return MapSvg.of(map, STYLES::style);
    }

    private static Document parsed(String markup) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader("<figure>" + markup + "</figure>")));
    }

    private static List<Element> elements(Document document, String tag, String attribute, String value) {
        List<Element> found = new ArrayList<>();
        NodeList all = document.getElementsByTagName(tag);
        for (int i = 0; i < all.getLength(); i++) {
            if (((Element) all.item(i)).getAttribute(attribute).equals(value)) {
                found.add((Element) all.item(i));
            }
        }
        return found;
    }

    @Test
    void theSameMapIsTheSameText() {
        GridGeometry grid = grid(200, 150);
        assertEquals(markup(map(grid, sites(grid, 5))), markup(map(grid, sites(grid, 5))));
    }

    @Test
    void aLargeMapStaysSmall() throws Exception {
        GridGeometry grid = grid(1000, 1000);
        String markup = markup(map(grid, sites(grid, 100)));
        assertTrue(markup.length() < 3_000_000, markup.length() + " characters");
        assertEquals(100, elements(parsed(markup), "a", "class", "mark").size());
    }

    @Test
    void aSiteStandsWhereItsCellIs() throws Exception {
        GridGeometry grid = grid(400, 300);
        MapLayer one = new MapLayer("sites", "Sites", "sites", true,
                List.of(new MapFeature("site-S01", "S01", place(grid, 0.25, 0.5), Map.of("site", "S01"))));
        Element mark = elements(parsed(markup(map(grid, one))), "a", "class", "mark").get(0);
        assertEquals("translate(250 375)", mark.getAttribute("transform"));
        assertEquals("#site-S01", mark.getAttribute("href"));
        assertEquals("site-S01", mark.getAttribute("data-feature"));
    }

    @Test
    void whatLiesOffTheGridIsNotDrawn() throws Exception {
        GridGeometry grid = grid(400, 300);
        MapLayer off = new MapLayer("sites", "Sites", "sites", true, List.of(
                new MapFeature("a", "A", place(grid, 1.2, 0.5), Map.of()),
                new MapFeature("b", "B", FACTORY.createPoint(new Coordinate(100, -60)), Map.of()),
                new MapFeature("c", "C", FACTORY.createLineString(new Coordinate[] {new Coordinate(100, -60), new Coordinate(170, 80)}), Map.of())));
        assertEquals(0, elements(parsed(markup(map(grid, off))), "a", "class", "mark").size());
    }

    @ParameterizedTest
    @ValueSource(strings = {"<script>alert(1)</script>", "\"><img src=x onerror=alert(1)>", "' & ]]> -->", "\u202Eback\u2066\u2069", "\0\uD800 end"})
    void namesFromDataStayText(String name) throws Exception {
        GridGeometry grid = grid(60, 50);
        MapLayer layer = new MapLayer("sites", name, "sites", true,
                List.of(new MapFeature("site-S01", name, place(grid, 0.5, 0.5), Map.of("site", name))));
        String markup = markup(new PageMap(grid, Optional.of(rasters(grid, 1)), List.of(layer), Display.METRIC, List.of(name, name, name)));
        Document document = parsed(markup);
        assertEquals(0, document.getElementsByTagName("script").getLength());
        assertEquals(0, document.getElementsByTagName("img").getLength());
        assertTrue(markup.chars().noneMatch(c -> c >= 0x202A && c <= 0x202E || c >= 0x2066 && c <= 0x2069 || c == 0 || c == 0xD800));
        String shown = name.replaceAll("[\u202A-\u202E\u2066-\u2069\0\uD800]", "\uFFFD");
        assertEquals(shown, document.getElementsByTagName("option").item(1).getTextContent());
        // A long one is only for a page of usual width.
        assertEquals(shown, Stream.of("label", "label roomy").flatMap(kind -> elements(document, "g", "class", kind).stream())
                .findFirst().orElseThrow().getTextContent());
    }

    @Test
    void aNameOfTenThousandLettersIsCut() {
        GridGeometry grid = grid(60, 50);
        String name = "long ".repeat(2000);
        MapLayer layer = new MapLayer("sites", name, "sites", true,
                List.of(new MapFeature("site-S01", name, place(grid, 0.5, 0.5), Map.of("site", name))));
        String markup = markup(new PageMap(grid, Optional.of(rasters(grid, 1)), List.of(layer), Display.METRIC, List.of(name, name, name)));
        assertFalse(markup.contains("long ".repeat(20)));
    }

    @Test
    void aGridWithoutAnyDepthAndWithoutRastersIsDrawn() throws Exception {
        GridGeometry grid = grid(30, 700);
        ReducedRasters none = ReducedRasters.ofDepth(grid, (col, row, cols, rows, into) -> Arrays.fill(into, Float.NaN), 1, Progress.NONE);
        assertEquals(0, parsed(markup(new PageMap(grid, Optional.of(none), List.of(), Display.US, List.of()))).getElementsByTagName("image").getLength());
        parsed(markup(new PageMap(grid, Optional.empty(), List.of(sites(grid, 2)), Display.US, List.of())));
    }

    @Test
    void theLegendHasASwitchForEveryLayer() throws Exception {
        GridGeometry grid = grid(60, 50);
        Document document = parsed(markup(map(grid, sites(grid, 2))));
        NodeList inputs = document.getElementsByTagName("input");
        List<String> layers = new ArrayList<>();
        for (int i = 0; i < inputs.getLength(); i++) {
            layers.add(((Element) inputs.item(i)).getAttribute("data-layer"));
            assertEquals(1, elements(document, "g", "id", layers.get(i)).size(), layers.get(i));
        }
        assertEquals(List.of("layer-sites", "layer-score", "layer-reasons", "layer-depth", "layer-contours", "layer-graticule"), layers);
    }

    @Test
    void theFrameHasFiguresOfBothKinds() throws Exception {
        NodeList groups = parsed(markup(map(grid(600, 450)))).getElementsByTagName("g");
        for (int i = 0; i < groups.getLength(); i++) {
            if (((Element) groups.item(i)).getAttribute("id").equals("map-figures")) {
                String figures = groups.item(i).getTextContent();
                assertTrue(figures.split(" N").length - 1 >= 2, figures);
                assertTrue(figures.split(" W").length - 1 >= 2, figures);
                return;
            }
        }
        throw new AssertionError("no figures");
    }

    /** As a reader of the legend and the picture sees it: one picture for each reason that stands somewhere. */
    @Test
    void eachReasonThatStandsHasItsPicture() throws Exception {
        Document document = parsed(markup(map(grid(60, 50))));
        assertEquals(1, elements(document, "image", "data-reason", "0").size());
        assertEquals(1, elements(document, "image", "data-reason", "1").size());
        assertEquals(4, document.getElementsByTagName("option").getLength());
    }
}
