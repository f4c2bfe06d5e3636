package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.seacairn.export.LinePlot.Panel;
import org.seacairn.export.LinePlot.Series;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class LinePlotTest {
    private static final double[] DEPTHS = {0, 50, 100};

    private static LinePlot plot(boolean downward, Panel... panels) {
        return new LinePlot("Descent", "Depth against drift", "Depth (m)", downward, List.of(panels), List.of("Stand clear"));
    }

    private static Panel panel(String title, Series... series) {
        return new Panel(title, title + " (m)", List.of(series));
    }

    private static Element parsed(LinePlot plot) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(plot.svg()))).getDocumentElement();
    }

    private static List<Element> all(Element root, String name) {
        NodeList nodes = root.getElementsByTagName(name);
        return IntStream.range(0, nodes.getLength()).mapToObj(i -> (Element) nodes.item(i)).toList();
    }

    private static List<String> texts(Element root) {
        return all(root, "text").stream().map(Element::getTextContent).toList();
    }

    private static List<String> lines(Element root) {
        return all(root, "path").stream().filter(path -> path.getAttribute("stroke-width").equals("1.8")).map(path -> path.getAttribute("d")).toList();
    }

    private static List<String> marks(Element root) {
        return all(root, "path").stream().filter(path -> path.getAttribute("stroke-width").equals("1.4")).map(path -> path.getAttribute("d")).toList();
    }

    @Test
    void saysWhatItIsToThoseWhoCannotSeeIt() throws Exception {
        Element svg = parsed(plot(true, panel("Drift", new Series("a", DEPTHS, DEPTHS))));
        assertEquals("img", svg.getAttribute("role"));
        assertEquals("Descent", all(svg, "title").get(0).getTextContent());
        assertEquals("Depth against drift", all(svg, "desc").get(0).getTextContent());
        assertEquals("title", svg.getElementsByTagName("*").item(0).getNodeName());
    }

    @Test
    void countsDownwardOrUpward() throws Exception {
        Panel panel = panel("Drift", new Series("a", new double[] {0, 10}, new double[] {0, 100}));
        // Plot area 72..940 across and 58..478 down.
        assertEquals(List.of("M72.0 58.0L940.0 478.0"), lines(parsed(plot(true, panel))));
        assertEquals(List.of("M72.0 478.0L940.0 58.0"), lines(parsed(plot(false, panel))));
    }

    @Test
    void sharesTheAxisOfDepthBetweenPanels() throws Exception {
        Element svg = parsed(plot(true, panel("Drift", new Series("a", new double[] {0, 10}, new double[] {0, 100})),
                panel("Speed", new Series("a", new double[] {0, 4}, new double[] {0, 50}))));
        assertEquals(List.of("M72.0 58.0L493.0 478.0", "M519.0 58.0L940.0 268.0"), lines(svg));
        assertEquals(1, texts(svg).stream().filter("Depth (m)"::equals).count());
        assertTrue(texts(svg).containsAll(List.of("Drift", "Drift (m)", "Speed", "Speed (m)", "Stand clear", "100")), texts(svg).toString());
    }

    @Test
    void leavesGapsAndMarksPointsThatStandAlone() throws Exception {
        double[] x = {0, 10, Double.NaN, 20, 30, 40, 50};
        double[] y = {0, 10, 20, 30, Double.POSITIVE_INFINITY, 40, 50};
        Element svg = parsed(plot(true, panel("Drift", new Series("a", x, y))));
        assertEquals(List.of("M72.0 58.0L245.6 142.0M766.4 394.0L940.0 478.0"), lines(svg));
        assertEquals(5, marks(svg).size());
        assertTrue(marks(svg).stream().anyMatch(mark -> mark.startsWith("M419.2 310.0m")), marks(svg).toString());
        assertFalse(plot(true, panel("Drift", new Series("a", x, y))).svg().contains("NaN"));
    }

    @Test
    void drawsAPlotOfNothing() throws Exception {
        Element svg = parsed(plot(true, panel("Drift", new Series("a", new double[] {Double.NaN}, new double[] {1})), panel("Speed")));
        assertEquals(List.of(), lines(svg));
        assertTrue(texts(svg).containsAll(List.of("0.0", "1.0")));
    }

    @Test
    void tellsEverySeriesApartByDashAndMark() throws Exception {
        List<Series> series = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            series.add(new Series("day " + i, DEPTHS, new double[] {i, i + 1, i + 2}));
        }
        Element svg = parsed(plot(false, new Panel("", "x", series)));
        HashSet<String> looks = new HashSet<>();
        all(svg, "path").stream().filter(path -> path.getAttribute("stroke-width").equals("1.4")).forEach(path ->
                looks.add(path.getAttribute("d").substring(path.getAttribute("d").indexOf('m')) + path.getAttribute("fill").equals("#ffffff")));
        assertEquals(12, looks.size());
        HashSet<String> dashes = new HashSet<>();
        all(svg, "path").forEach(path -> dashes.add(path.getAttribute("stroke-dasharray") + path.getAttribute("stroke-width").equals("1.8")));
        assertEquals(6 + 1, dashes.size(), dashes.toString());
        // The legend tells all of them.
        assertTrue(texts(svg).containsAll(series.stream().map(Series::name).toList()));
        series.add(new Series("one more", DEPTHS, DEPTHS));
        assertThrows(IllegalArgumentException.class, () -> plot(false, new Panel("", "x", series)));
    }

    @Test
    void keepsTheLookOfASeriesFromPanelToPanel() throws Exception {
        Element svg = parsed(plot(true, panel("Drift", new Series("ebb", DEPTHS, DEPTHS), new Series("flood", DEPTHS, DEPTHS)),
                panel("Speed", new Series("flood", DEPTHS, DEPTHS))));
        List<Element> curves = all(svg, "path").stream().filter(path -> path.getAttribute("stroke-width").equals("1.8")).toList();
        assertEquals(curves.get(1).getAttribute("stroke-dasharray"), curves.get(2).getAttribute("stroke-dasharray"));
        assertFalse(curves.get(0).getAttribute("stroke-dasharray").equals(curves.get(2).getAttribute("stroke-dasharray")));
        // Two samples in the legend.
        assertEquals(5, curves.size());
    }

    @Test
    void escapesNamesAndDropsWhatXmlCannotHold() throws Exception {
        String name = "Tall <Cairn> & \"co\" ä\u0001";
        Element svg = parsed(new LinePlot(name, name, name, true, List.of(panel(name, new Series(name, DEPTHS, DEPTHS),
                new Series("</text>", DEPTHS, DEPTHS))), List.of(name)));
        assertTrue(texts(svg).contains("Tall <Cairn> & \"co\" ä"), texts(svg).toString());
        assertTrue(texts(svg).contains("</text>"));
    }

    @Test
    void isTheSameTextEveryTimeAndNeedsNothingFromOutside() {
        LinePlot plot = plot(true, panel("Drift", new Series("a", DEPTHS, DEPTHS)));
        assertEquals(plot.svg(), plot.svg());
        String without = plot.svg().replace("http://www.w3.org/2000/svg", "");
        assertFalse(without.contains("http") || without.contains("href") || without.contains("url(") || without.contains("<script"));
    }

    @Test
    void wrapsLongNotesAndLegends() throws Exception {
        Element svg = parsed(new LinePlot("t", "d", "y", false, List.of(panel("x", new Series("a", DEPTHS, DEPTHS))),
                List.of("word ".repeat(60))));
        assertEquals(3, texts(svg).stream().filter(text -> text.startsWith("word")).count());
        int height = Integer.parseInt(svg.getAttribute("height"));
        all(svg, "text").forEach(text -> assertTrue(Double.parseDouble(text.getAttribute("y")) < height - 5));
    }

    @Test
    void drawsAFineTableWithoutRepeatingPixels() throws Exception {
        double[] many = IntStream.range(0, 100_000).mapToDouble(i -> i / 1000.0).toArray();
        assertTrue(plot(true, panel("Drift", new Series("a", many, many))).svg().length() < 250_000);
    }

    @Test
    void doesNotChangeWithTheArraysItWasGiven() {
        double[] x = {0, 1};
        LinePlot plot = plot(true, panel("Drift", new Series("a", x, x)));
        String before = plot.svg();
        x[1] = 7;
        assertEquals(before, plot.svg());
        assertThrows(IllegalArgumentException.class, () -> new Series("a", x, DEPTHS));
    }
}
