package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class KmlWriterTest {
    @TempDir Path folder;
    private Path file;
    private Document kml;

    @BeforeEach
    void write() throws Exception {
        file = folder.resolve("sites.kml");
        KmlWriter.write(file, "Off <Nowhere>\u0000 & back", List.of(FeatureTable.sites(Samples.plan(), Samples.sites()),
                FeatureTable.landingCircles(Samples.sites()), FeatureTable.keepOffBuffers(Samples.buffers())));
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        kml = factory.newDocumentBuilder().parse(file.toFile());
    }

    private List<String> texts(Element within, String name) {
        NodeList nodes = within.getElementsByTagNameNS(KmlWriter.NAMESPACE, name);
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            texts.add(nodes.item(i).getTextContent());
        }
        return texts;
    }

    private Element folder(int i) {
        return (Element) kml.getElementsByTagNameNS(KmlWriter.NAMESPACE, "Folder").item(i);
    }

    @Test
    void rootTellsVersion23() {
        // OGC 12-007r2: the namespace stays that of 2.2, the version attribute tells 2.3.
        assertEquals("http://www.opengis.net/kml/2.2", kml.getDocumentElement().getNamespaceURI());
        assertEquals("2.3", kml.getDocumentElement().getAttribute("version"));
    }

    @Test
    void namesAreEscapedAndCleaned() {
        assertEquals(List.of("Off <Nowhere> & back", "sites", "=S-01, \"<A&B>\"", "S-02", "landing_circles",
                "=S-01, \"<A&B>\"", "keep_off_buffers", "Shipping lanes", "cables"), texts(kml.getDocumentElement(), "name"));
    }

    @Test
    void siteIsAPlacemarkWithTheColumnsOfTheCsv() {
        assertEquals(List.of("-79.123456789,27.243666667", "-79.123400000,27.243400000"), texts(folder(0), "coordinates"));
        NodeList data = folder(0).getElementsByTagNameNS(KmlWriter.NAMESPACE, "Data");
        int columns = SiteColumns.of(Samples.plan()).size();
        assertEquals(2 * columns, data.getLength());
        assertEquals("score", ((Element) data.item(11)).getAttribute("name"));
        assertEquals("0.812346", data.item(11).getTextContent());
    }

    @Test
    void landingCircleIsAnOutlineAndAZeroRadiusHasNone() {
        List<String> rings = texts(folder(1), "coordinates");
        assertEquals(1, rings.size());
        assertEquals(LandingCircle.VERTICES + 1, rings.get(0).split(" ").length);
        assertEquals(List.of("#outline"), texts(folder(1), "styleUrl"));
        assertEquals(List.of("0"), texts(kml.getDocumentElement(), "fill"));
    }

    @Test
    void bufferHasItsHole() {
        Element lanes = (Element) folder(2).getElementsByTagNameNS(KmlWriter.NAMESPACE, "Placemark").item(0);
        assertEquals(1, texts(lanes, "outerBoundaryIs").size());
        assertEquals(1, texts(lanes, "innerBoundaryIs").size());
        assertTrue(texts(lanes, "innerBoundaryIs").get(0).contains("1.00000000,2.00000000"));
    }

    @Test
    void linesEndWithLf() throws Exception {
        assertFalse(Files.readString(file).contains("\r"));
    }

    // XML 1.0, section 2.2, production 2.
    @ParameterizedTest
    @CsvSource(quoteCharacter = '`', ignoreLeadingAndTrailingWhitespace = false, value = {
        "plain é 海,plain é 海",
        "`a\u0000b\u0001c\u001fd`,abcd",
        "`a\tb\nc\rd`,`a\tb\nc\rd`",
        "\uD83D\uDEA2,\uD83D\uDEA2",
        "a\uFFFEb\uFFFFc,abc",
    })
    void textKeepsWhatXmlCanHold(String text, String clean) {
        assertEquals(clean, XmlText.clean(text));
    }

    @Test
    void loneSurrogateIsLeftOut() {
        assertEquals("ab", XmlText.clean("a" + (char) 0xD83D + "b"));
    }
}
