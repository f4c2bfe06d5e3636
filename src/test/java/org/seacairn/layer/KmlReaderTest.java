package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;

class KmlReaderTest {
    private static final String HEAD = "<kml xmlns='http://www.opengis.net/kml/2.2' xmlns:gx='http://www.google.com/kml/ext/2.2'>\n";
    private static final String POINT = "<Point><coordinates>-87.25,29.5</coordinates></Point>";

    @TempDir
    Path folder;

    private Path write(String kml) throws IOException {
        return Files.writeString(folder.resolve("areas.kml"), kml);
    }

    private VectorLayer read(String kml) throws IOException {
        return VectorLayers.read(Sources.plain(write(kml)));
    }

    private String refusal(String kml) throws IOException {
        return Refusals.of(Sources.plain(write(kml)));
    }

    private static String placemark(String content) {
        return HEAD + "<Placemark>" + content + "</Placemark></kml>";
    }

    private static List<String> shapes(VectorLayer layer) {
        return layer.features().stream().map(f -> f.id() + " " + f.geometry().toText()).toList();
    }

    private static String ring(String coordinates) {
        return "<LinearRing><coordinates>" + coordinates + "</coordinates></LinearRing>";
    }

    @Test
    void readsPlacemarksInNestedFoldersWithTheirData() throws IOException {
        VectorLayer layer = read(HEAD + "<Document><name>d</name><Style><IconStyle><scale>2</scale></IconStyle></Style>"
                + "<Placemark id='p'><name>A &amp; B</name><description><![CDATA[<p>text</p>]]></description><LookAt><longitude>1</longitude></LookAt>"
                + "<ExtendedData><Data name='depth'><displayName>Depth</displayName><value>90</value></Data><Data name='empty'/></ExtendedData>" + POINT + "</Placemark>"
                + "<Folder><name>f</name><Folder><Placemark><name>C</name></Placemark>"
                + "<Placemark><ExtendedData><SchemaData schemaUrl='#s'><SimpleData name='kind'> mud </SimpleData><SimpleData name='name'>D</SimpleData>"
                + "</SchemaData></ExtendedData>" + POINT + "</Placemark></Folder></Folder></Document></kml>");
        assertEquals(List.of("1 POINT (-87.25 29.5)", "3 POINT (-87.25 29.5)"), shapes(layer));
        assertEquals("{name=A & B, description=<p>text</p>, depth=90, empty=null}", layer.features().get(0).attributes().toString());
        assertEquals("{name=D, description=null, kind=mud}", layer.features().get(1).attributes().toString());
        assertEquals(1, layer.featuresWithoutGeometry());
        assertEquals(Crs.WGS84, layer.crs());
        assertEquals("KML", layer.format());
        assertEquals(List.of(), layer.notes());
    }

    /** GDAL writes a column without a name so. */
    @Test
    void takesDataWhoseNameIsEmpty() throws IOException {
        String data = "<ExtendedData><SchemaData><SimpleData name=''>x</SimpleData></SchemaData></ExtendedData>";
        assertEquals("{name=null, description=null, =x}", read(placemark(data + POINT)).features().get(0).attributes().toString());
    }

    @Test
    void prefersThePlacemarksOwnNameToDataOfThatName() throws IOException {
        String data = "<ExtendedData><Data name='name'><value>other</value></Data></ExtendedData>";
        assertEquals("{name=own, description=null}", read(placemark(data + "<name>own</name>" + POINT)).features().get(0).attributes().toString());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        "<Point><extrude>1</extrude><coordinates>1,2,-90</coordinates></Point>       | POINT (1 2)",
        "<LineString><coordinates>1,2 3,4,5 6,7</coordinates></LineString>          | LINESTRING (1 2, 3 4, 6 7)",
        "<LinearRing><coordinates>0,0 1,0 1,1 0,0</coordinates></LinearRing>        | LINESTRING (0 0, 1 0, 1 1, 0 0)",
        "<Polygon><tessellate>1</tessellate><outerBoundaryIs>R0</outerBoundaryIs></Polygon> | POLYGON ((0 0, 9 0, 9 9, 0 0))",
        "<Polygon><outerBoundaryIs>R0</outerBoundaryIs><innerBoundaryIs>R1</innerBoundaryIs><innerBoundaryIs>R2</innerBoundaryIs></Polygon>"
            + " | POLYGON ((0 0, 9 0, 9 9, 0 0), (3 1, 4 1, 4 2, 3 1), (6 1, 7 1, 7 2, 6 1))",
        "<Polygon><innerBoundaryIs>R1R2</innerBoundaryIs><outerBoundaryIs>R0</outerBoundaryIs></Polygon>"
            + " | POLYGON ((0 0, 9 0, 9 9, 0 0), (3 1, 4 1, 4 2, 3 1), (6 1, 7 1, 7 2, 6 1))",
        "<MultiGeometry>PP</MultiGeometry>                                          | MULTIPOINT ((-87.25 29.5), (-87.25 29.5))",
        "<MultiGeometry>P</MultiGeometry>                                           | POINT (-87.25 29.5)",
        "<MultiGeometry><MultiGeometry>P</MultiGeometry>P</MultiGeometry>           | MULTIPOINT ((-87.25 29.5), (-87.25 29.5))",
        "<MultiGeometry>R1R2</MultiGeometry>                                        | MULTILINESTRING ((3 1, 4 1, 4 2, 3 1), (6 1, 7 1, 7 2, 6 1))",
        "<MultiGeometry>R1P</MultiGeometry>                                         | GEOMETRYCOLLECTION (LINESTRING (3 1, 4 1, 4 2, 3 1), POINT (-87.25 29.5))",
        "<MultiGeometry><Polygon><outerBoundaryIs>R1</outerBoundaryIs></Polygon><Polygon><outerBoundaryIs>R2</outerBoundaryIs></Polygon></MultiGeometry>"
            + " | MULTIPOLYGON (((3 1, 4 1, 4 2, 3 1)), ((6 1, 7 1, 7 2, 6 1)))",
    })
    void readsEveryGeometry(String geometry, String wkt) throws IOException {
        String kml = geometry.replace("R0", ring("0,0 9,0 9,9 0,0")).replace("R1", ring("3,1 4,1 4,2 3,1")).replace("R2", ring("6,1 7,1 7,2 6,1"))
                .replaceAll("P(?=[P<])", POINT);
        assertEquals(List.of("1 " + wkt), shapes(read(placemark(kml))));
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "1,2 3,4", "\n\t1,2,0\r\n3,4,0\n", "1, 2 3 ,4", "1 , 2,0\n 3,\n4", "1,2,\t3.5\n3,4", "\u00a01,2\u00a03,4 ", "1.0,+2e0 3.,4", "<!-- a -->1,2<![CDATA[ 3,4]]>",
        "1,2&#10;3,4",
    })
    void readsPlacesAmongOddWhiteSpace(String coordinates) throws IOException {
        assertEquals(List.of("1 LINESTRING (1 2, 3 4)"), shapes(read(placemark("<LineString><coordinates>" + coordinates + "</coordinates></LineString>"))));
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "http://earth.google.com/kml/2.0", "http://earth.google.com/kml/2.1", "http://earth.google.com/kml/2.2", "http://www.opengis.net/kml/2.2", "", "urn:other",
    })
    void readsEveryNamespace(String namespace) throws IOException {
        String kml = "<kml xmlns='" + namespace + "'><Folder><Placemark>" + POINT + "</Placemark></Folder></kml>";
        assertEquals(List.of("1 POINT (-87.25 29.5)"), shapes(read(kml)));
        String prefixed = "<k:kml xmlns:k='http://earth.google.com/kml/2.1'><Placemark xmlns='http://www.opengis.net/kml/2.2'>" + POINT + "</Placemark></k:kml>";
        assertEquals(List.of("1 POINT (-87.25 29.5)"), shapes(read(prefixed)));
    }

    @Test
    void notesWhatItDoesNotRead() throws IOException {
        VectorLayer layer = read(HEAD + "<Document><NetworkLink><Link><href>x</href></Link></NetworkLink><GroundOverlay/><GroundOverlay/>"
                + "<Placemark><gx:Track><gx:coord>1 2 3</gx:coord></gx:Track></Placemark>"
                + "<Placemark><MultiGeometry><Model/>" + POINT + "</MultiGeometry></Placemark></Document></kml>");
        assertEquals(List.of("2 POINT (-87.25 29.5)"), shapes(layer));
        assertEquals(1, layer.featuresWithoutGeometry());
        assertEquals(List.of("elements that are not read: 2 of GroundOverlay", "elements that are not read: 1 of Model",
                "elements that are not read: 1 of NetworkLink", "elements that are not read: 1 of gx:Track"), layer.notes());
    }

    @Test
    void leavesOutGeometriesWithoutPlaces() throws IOException {
        VectorLayer layer = read(HEAD + "<Folder><Placemark><Point/></Placemark><Placemark><LineString><coordinates> </coordinates></LineString></Placemark>"
                + "<Placemark><Polygon><outerBoundaryIs>" + ring("") + "</outerBoundaryIs></Polygon></Placemark><Placemark><MultiGeometry/></Placemark>"
                + "<Placemark>" + POINT + "</Placemark></Folder></kml>");
        assertEquals(List.of("5 POINT (-87.25 29.5)"), shapes(layer));
        assertEquals(4, layer.featuresWithoutGeometry());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        "<Point><coordinates>1,2\\n\\n3,4</coordinates></Point>        | 2 | a Point has 2 places; leave one",
        "<Point><coordinates>\\n29.5,-97.25</coordinates></Point>      | 3 | coordinates: the latitude \"-97.25\" lies outside ±90 degrees; it reads well the other way round",
        "<Point><coordinates>361,1</coordinates></Point>               | 2 | coordinates: the longitude \"361\" lies outside ±360 degrees; correct it",
        "<Point><coordinates>NaN,1</coordinates></Point>               | 2 | coordinates: the longitude \"NaN\" is no number; write decimal degrees",
        "<Point><coordinates>1,2,high</coordinates></Point>            | 2 | coordinates: the altitude \"high\" is no number;",
        "<Point><coordinates>1 2</coordinates></Point>                 | 2 | coordinates: \"1\" has 1 number; write longitude,latitude or",
        "<Point><coordinates>1,,2</coordinates></Point>                | 2 | coordinates: has no latitude;",
        "<LineString><coordinates>\\n1,2\\n3,4,\\n5,6</coordinates></LineString> | 4 | coordinates: \"3,4,5,6\" has 4 numbers; write longitude,latitude or",
        "<LineString>\\n<coordinates>1,2</coordinates></LineString>    | 2 | a LineString has one place; delete it or add a second",
        "<LinearRing><coordinates>0,0 1,0 0,0</coordinates></LinearRing> | 2 | a LinearRing has 3 places; a ring has 4 or more, the last like the first",
        "<LinearRing><coordinates>0,0 1,0 1,1 0,1</coordinates></LinearRing> | 2 | a LinearRing is not closed: it starts at (0.0, 0.0) and ends at (0.0, 1.0);",
        "<Polygon><innerBoundaryIs>R</innerBoundaryIs></Polygon>       | 2 | a Polygon has an inner ring and no outer one; correct or delete it",
        "<Polygon><outerBoundaryIs>R</outerBoundaryIs><outerBoundaryIs>R</outerBoundaryIs></Polygon> | 2 | a Polygon has 2 outer rings;",
        "<ExtendedData>\\n<Data><value>x</value></Data></ExtendedData> | 3 | Data has no name; write Data name=",
    })
    void namesTheLineOfWhatIsWrong(String content, int line, String message) throws IOException {
        String text = refusal(placemark(content.translateEscapes().replace(">R<", ">" + ring("0,0 9,0 9,9 0,0") + "<")));
        assertTrue(text.startsWith("areas.kml, line " + line + ": " + message), text);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        "{\"type\":\"Point\"}          | line 1: is no proper XML (",
        "<gpx/>                        | line 1: its outermost element is \"gpx\" and not \"kml\", so this is no KML; export it as KML",
        "<Document/>                   | line 1: its outermost element is \"Document\" and not \"kml\"",
        "<!DOCTYPE html>\\n<html/>     | line 1: has a DOCTYPE, as a web page has and KML needs not;",
        "<kml>\\n<Document>\\n<Placema | line 3: ends before its elements are closed, so it is cut short;",
        "<kml>\\n<Placemark/></kml>    | layer \"trial\" (line 12 of the plan): holds no feature with a geometry (1 without);",
    })
    void refusesWhatIsNoKml(String text, String message) throws IOException {
        String refusal = refusal(text.translateEscapes());
        assertTrue(refusal.startsWith("areas.kml, " + message), refusal);
    }

    @Test
    void refusesNestingBombs() throws IOException {
        assertTrue(refusal("<kml>" + "<Folder>".repeat(100_000)).startsWith("areas.kml, line 1: elements are nested deeper than 100 levels;"));
        assertTrue(refusal(placemark("<MultiGeometry>".repeat(100_000))).startsWith("areas.kml, line 2: elements are nested deeper than 100 levels;"));
    }

    @Test
    void refusesAnyOtherCrs() throws IOException {
        Path file = write(placemark(POINT));
        assertTrue(Refusals.of(Sources.withCrs(file, "EPSG:4269")).startsWith("areas.kml, layer \"trial\": its \"crs\" is stated as EPSG:4269"));
    }

    private Path archive(String... namesAndTexts) throws IOException {
        Path file = folder.resolve("areas.KMZ");
        try (OutputStream out = Files.newOutputStream(file); ZipOutputStream zip = new ZipOutputStream(out, Charset.forName("IBM850"))) {
            for (int i = 0; i < namesAndTexts.length; i += 2) {
                zip.putNextEntry(new ZipEntry(namesAndTexts[i]));
                zip.write(namesAndTexts[i + 1].getBytes(StandardCharsets.UTF_8));
            }
        }
        return file;
    }

    @Test
    void readsTheFirstKmlOfAnArchive() throws IOException {
        Path file = archive("images/a.png", "x", "__MACOSX/._a.kml", "x", "Épaves.KML", placemark(POINT), "second.kml", "<kml/>");
        VectorLayer layer = VectorLayers.read(Sources.plain(file));
        assertEquals(List.of("1 POINT (-87.25 29.5)"), shapes(layer));
        assertEquals(file, layer.file());
    }

    @Test
    void refusesArchivesThatHoldNoKml() throws IOException {
        assertEquals("areas.KMZ, the file: is an archive without a .kml in it; export it again", Refusals.of(Sources.plain(archive("doc.txt", "x"))));
        Path renamed = Files.move(write(placemark(POINT)), folder.resolve("renamed.kmz"));
        assertTrue(Refusals.of(Sources.plain(renamed)).startsWith("renamed.kmz, the file: is no whole zip archive ("));
    }

    @Test
    void refusesArchivesThatUnpackToAFlood() throws IOException {
        Path file = archive("doc.kml", " ".repeat(100_000));
        try (InputStream in = Kmz.openDocument(file, 100_000)) {
            assertEquals(100_000, in.readAllBytes().length);
        }
        try (InputStream in = Kmz.openDocument(file, 99_999)) {
            InputException e = assertThrows(InputException.class, in::readAllBytes);
            Refusals.requireUsable(e);
            assertEquals("areas.KMZ, entry \"doc.kml\": unpacks to more than 99999 bytes; unpack it and give the .kml itself, or export less",
                    e.getMessage());
        }
    }
}
