package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class StylesTest {
    static final List<String> NAMES = Styles.NAMES;
    private static final String SLD = "http://www.opengis.net/sld";

    private static Document parse(String name) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        try (InputStream in = Styles.open(name)) {
            return factory.newDocumentBuilder().parse(in);
        }
    }

    @Test
    void everyStyleOfTheFolderIsCopied(@TempDir Path output) throws IOException {
        Styles.copyTo(output, NAMES.stream().map(name -> name.replace(".sld", "")).toList());
        try (Stream<Path> sources = Files.list(Path.of("styles"))) {
            assertEquals(sources.map(path -> path.getFileName().toString()).sorted().toList(), NAMES);
        }
        for (String name : NAMES) {
            assertArrayEquals(Files.readAllBytes(Path.of("styles", name)), Files.readAllBytes(output.resolve("styles").resolve(name)));
        }
    }

    // OGC 02-070, SLD 1.0.0: root element, version, namespace; the layer is named as in the output.
    @ParameterizedTest
    @FieldSource("NAMES")
    void styleIsSld100ForTheLayerOfItsName(String name) throws Exception {
        Document style = parse(name);
        assertEquals(SLD, style.getDocumentElement().getNamespaceURI());
        assertEquals("StyledLayerDescriptor", style.getDocumentElement().getLocalName());
        assertEquals("1.0.0", style.getDocumentElement().getAttribute("version"));
        Element layer = (Element) style.getElementsByTagNameNS(SLD, "NamedLayer").item(0);
        assertEquals(name.replace(".sld", ""), layer.getElementsByTagNameNS(SLD, "Name").item(0).getTextContent());
        assertTrue(style.getElementsByTagNameNS(SLD, "Rule").getLength() > 0);
    }

    /** In grey print and to every kind of colour vision, a better score is a darker one, by even steps. */
    @Test
    void scoreFallsByEvenStepsOfLightness() throws Exception {
        NodeList stops = parse("score.sld").getElementsByTagNameNS(SLD, "ColorMapEntry");
        double quantity = Double.NaN;
        double lightness = Double.NaN;
        for (int i = 0; i < stops.getLength(); i++) {
            Element stop = (Element) stops.item(i);
            double q = Double.parseDouble(stop.getAttribute("quantity"));
            double l = lightness(stop.getAttribute("color"));
            if (i > 0) {
                assertEquals(0.25, q - quantity);
                assertEquals(-13, l - lightness, 0.5, stop.getAttribute("color"));
            }
            quantity = q;
            lightness = l;
        }
        assertEquals(1, quantity);
    }

    /** CIELAB L* of an sRGB colour: IEC 61966-2-1 and CIE 15 (from memory). */
    private static double lightness(String color) {
        double[] weights = {0.2126729, 0.7151522, 0.0721750};
        double y = 0;
        for (int i = 0; i < 3; i++) {
            double c = Integer.parseInt(color.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
            y += weights[i] * (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
        }
        return 116 * Math.cbrt(y) - 16;
    }

    @Test
    void layersOfTheVectorOutputAllHaveAStyle() {
        List<FeatureTable<?>> tables = new ArrayList<>(List.of(FeatureTable.sites(Samples.plan(), List.of()),
                FeatureTable.landingCircles(List.of()), FeatureTable.keepOffBuffers(List.of()), ChainTables.chains(List.of()),
                RingTables.rings(List.of()), AreaTables.areas(Samples.plan(), List.of()), AreaTables.capacity(List.of())));
        tables.addAll(ReviewTables.of(List.of()));
        for (FeatureTable<?> table : tables) {
            assertTrue(NAMES.contains(table.name() + ".sld"), table.name());
        }
    }
}
