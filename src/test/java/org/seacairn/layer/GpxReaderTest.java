package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seacairn.geodesy.Crs;

class GpxReaderTest {
    private static final String HEAD = "<?xml version='1.0' encoding='UTF-8'?>\n"
            + "<gpx version='1.1' creator='test' xmlns='http://www.topografix.com/GPX/1/1'>\n";

    @TempDir
    Path folder;

    private Path write(String gpx) throws IOException {
        return Files.writeString(folder.resolve("sites.gpx"), gpx);
    }

    private VectorLayer read(String gpx) throws IOException {
        return VectorLayers.read(Sources.plain(write(gpx)));
    }

    private String refusal(String gpx) throws IOException {
        return Refusals.of(Sources.plain(write(gpx)));
    }

    private static List<String> shapes(VectorLayer layer) {
        return layer.features().stream().map(f -> f.id() + " " + f.geometry().toText()).toList();
    }

    private static List<Object> values(VectorLayer layer, String attribute) {
        return layer.features().stream().map(f -> f.attributes().get(attribute)).toList();
    }

    @Test
    void readsWaypointsWithTheirTexts() throws IOException {
        VectorLayer layer = read(HEAD + "<metadata><name>not a site</name></metadata>\n"
                + "<wpt lat='29.5' lon='-87.25'><ele>-90</ele><time>2026-01-01T00:00:00Z</time><name> =A &amp; B </name><cmt>c</cmt>"
                + "<desc><![CDATA[<b>x</b>]]></desc><sym>Flag, Blue</sym><type>reef</type></wpt>\n<wpt lat='+.5' lon='1.5e1'/></gpx>");
        assertEquals(List.of("1 POINT (-87.25 29.5)", "2 POINT (15 0.5)"), shapes(layer));
        assertEquals("{name==A & B, cmt=c, desc=<b>x</b>, sym=Flag, Blue, type=reef, route=null}", layer.features().get(0).attributes().toString());
        assertEquals("{name=null, cmt=null, desc=null, sym=null, type=null, route=null}", layer.features().get(1).attributes().toString());
        assertEquals(Crs.WGS84, layer.crs());
        assertEquals("GPX", layer.format());
        assertEquals(List.of(), layer.notes());
        assertEquals(0, layer.featuresWithoutGeometry());
    }

    @Test
    void readsRoutePointsWithTheirRoute() throws IOException {
        VectorLayer layer = read(HEAD + "<wpt lat='1' lon='1'/>"
                + "<rte><name>infill</name><number>7</number><rtept lat='2' lon='2'><name>a</name></rtept><rtept lat='3' lon='3'/></rte>"
                + "<rte><number>8</number><rtept lat='4' lon='4'/></rte>"
                + "<rte><rtept lat='5' lon='5'/></rte><rte/></gpx>");
        assertEquals(List.of("1 POINT (1 1)", "2 POINT (2 2)", "3 POINT (3 3)", "4 POINT (4 4)", "5 POINT (5 5)"), shapes(layer));
        assertEquals("[null, infill, infill, 8, 3]", values(layer, "route").toString());
        assertEquals("[null, a, null, null, null]", values(layer, "name").toString());
    }

    @Test
    void readsTracksAsOneLineASegment() throws IOException {
        VectorLayer layer = read(HEAD + "<trk><name>cable</name><trkseg><trkpt lat='1' lon='2'><ele>3</ele></trkpt><trkpt lat='4' lon='5'/></trkseg>"
                + "<trkseg/><trkseg><trkpt lat='6' lon='7'/></trkseg>"
                + "<trkseg><trkpt lat='8' lon='9'/><trkpt lat='8' lon='10'/><trkpt lat='8' lon='11'/></trkseg></trk></gpx>");
        assertEquals(List.of("1 LINESTRING (2 1, 5 4)", "4 LINESTRING (9 8, 10 8, 11 8)"), shapes(layer));
        assertEquals("[cable, cable]", values(layer, "name").toString());
        assertEquals(2, layer.featuresWithoutGeometry());
        assertEquals(List.of("2 track segments have fewer than two points and are no lines"), layer.notes());
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "<gpx version='1.0' xmlns='http://www.topografix.com/GPX/1/0'><wpt lat='29.5' lon='-87.25'><name>a</name></wpt></gpx>",
        "<gpx><wpt lat='29.5' lon='-87.25'><name>a</name></wpt></gpx>",
        "<g:gpx xmlns:g='http://www.topografix.com/GPX/1/1' version='1.1'><g:wpt lat='29.5' lon='-87.25'><g:name>a</g:name></g:wpt></g:gpx>",
        "<gpx xmlns='http://www.topografix.com/GPX/1/1' xmlns:t='urn:t'><t:wpt lat='x'/><wpt lat='29.5' lon='-87.25'><t:name>b</t:name><name>a</name>"
            + "<extensions><name>c</name><wpt/></extensions></wpt><extensions><wpt lat='0' lon='0'/></extensions></gpx>",
        "<?xml version='1.0'?><!-- by hand --><gpx\n>\n<wpt lon=' -87.25 ' lat='29.5'><link href='x'><text>y</text></link><name>\na\n</name></wpt></gpx>\n<!-- end -->\n",
    })
    void readsBothVersionsAndPassesOverOtherNamespaces(String gpx) throws IOException {
        VectorLayer layer = read(gpx);
        assertEquals(List.of("1 POINT (-87.25 29.5)"), shapes(layer));
        assertEquals("[a]", values(layer, "name").toString());
    }

    @ParameterizedTest
    @CsvSource({"UTF-8,", "UTF-8,\ufeff", "UTF-16,", "UTF-16LE,\ufeff", "UTF-16LE,", "windows-1252,", "ISO-8859-15,"})
    void readsTextInTheEncodingThatItStates(String encoding, String mark) throws IOException {
        String stated = encoding.startsWith("UTF-16") ? "UTF-16" : encoding;
        String gpx = (mark == null ? "" : mark) + "<?xml version='1.0' encoding='" + stated + "'?>\n<gpx><wpt lat='1' lon='2'><name>Épave</name></wpt></gpx>";
        Path file = Files.write(folder.resolve("sites.GPX"), gpx.getBytes(Charset.forName(encoding)));
        assertEquals("[Épave]", values(VectorLayers.read(Sources.plain(file)), "name").toString());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        "<wpt lat='95' lon='-91'/>        | wpt: the latitude \"95\" lies outside ±90 degrees; correct it",
        "<wpt lat='-97.25' lon='29.5'/>   | wpt: the latitude \"-97.25\" lies outside ±90 degrees; it reads well the other way round, so longitude and latitude look swapped",
        "<wpt lat='1' lon='180.5'/>       | wpt: the longitude \"180.5\" lies outside ±180 degrees; correct it",
        "<wpt lat='NaN' lon='1'/>         | wpt: the latitude \"NaN\" is no number; write decimal degrees like -27.2437",
        "<wpt lat='29,5' lon='1'/>        | wpt: the latitude \"29,5\" is no number;",
        "<wpt lat='1' lon='0x1p3'/>       | wpt: the longitude \"0x1p3\" is no number;",
        "<wpt lat='1' lon='1e400'/>       | wpt: the longitude \"1e400\" is no number;",
        "<wpt lon='1'/>                   | wpt: has no latitude; add it or delete the place",
        "<wpt lat='1' lon=' '/>           | wpt: has no longitude;",
        "<rte><rtept lat='1'/></rte>      | rtept: has no longitude;",
        "<trk><trkseg><trkpt lat='91' lon='91'/></trkseg></trk> | trkpt: the latitude \"91\" lies outside ±90 degrees; correct it",
        "<wpt lat='1' lon='2'></gpx>      | is no proper XML (",
        "<wpt lat='1' lat='2'/>           | is no proper XML (an attribute is written twice); correct it",
        "<wpt lat='1' lon='2'><x:a/></wpt> | is no proper XML (the prefix of the element \"x:a\" is not declared); correct it",
        "<wpt lat='1' lon='2' x:a='b'/>   | is no proper XML (the prefix \"x\" of an attribute is not declared); correct it",
        "<wpt lat='1' lon='2'><name>&nbsp;</name></wpt> | is no proper XML (",
        "<wpt lat='1' lon='2'><name>a     | ends before its elements are closed, so it is cut short; copy or export it again",
        "<wpt lat='1' lo                  | ends before its elements are closed, so it is cut short;",
    })
    void namesTheLineOfWhatIsWrong(String line, String message) throws IOException {
        String whole = line.endsWith(">") ? line + "\n</gpx>" : line;
        String text = refusal(HEAD + "<wpt lat='1' lon='1'/>\n" + whole);
        assertTrue(text.startsWith("sites.gpx, line 4: " + message), text);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '!', value = {
        "hello                       | line 1: is no proper XML (",
        "\\n \\n                     | line 3: is no proper XML (",
        "<kml/>                      | line 1: its outermost element is \"kml\" and not \"gpx\", so this is no GPX; export it as GPX",
        "<gpx version='2.0'/>        | line 1: is GPX of version 2.0; export it as GPX 1.1",
        "<gpx/>\\nmore               | line 2: is no proper XML (",
        "<!DOCTYPE html>\\n<html/>   | line 1: has a DOCTYPE, as a web page has and GPX needs not; export it again, or delete the DOCTYPE",
        "<gpx/>                      | layer \"trial\" (line 12 of the plan): holds no feature;",
        "<?xml version='1.0' encoding='klingon'?><gpx/> | line 1: states the encoding \"klingon\", which is not known; export it again as UTF-8",
    })
    void refusesWhatIsNoGpx(String text, String message) throws IOException {
        String refusal = refusal(text.translateEscapes());
        assertTrue(refusal.startsWith("sites.gpx, " + message), refusal);
    }

    @Test
    void readsUtf8ThatStatesUtf16() throws IOException {
        assertEquals("[Épave]", values(read("<?xml version='1.0' encoding='utf-16'?><gpx><wpt lat='1' lon='2'><name>Épave</name></wpt></gpx>"), "name").toString());
    }

    @Test
    void refusesBytesThatAreNotInTheEncoding() throws IOException {
        String gpx = "<gpx>\n<wpt lat='1' lon='2'><name>Épave</name></wpt></gpx>";
        Path file = Files.write(folder.resolve("sites.gpx"), gpx.getBytes(Charset.forName("windows-1252")));
        assertEquals("sites.gpx, line 2: holds a character that cannot be read as UTF-8, its encoding; export it again as UTF-8",
                Refusals.of(Sources.plain(file)));
    }

    /** The files that would be fetched or multiplied are never asked for. */
    @ParameterizedTest
    @ValueSource(strings = {
        "<!DOCTYPE gpx [<!ENTITY a 'aaaaaaaaaa'><!ENTITY b '&a;&a;&a;&a;&a;&a;&a;&a;'>]><gpx><wpt lat='1' lon='2'><name>&b;</name></wpt></gpx>",
        "<!DOCTYPE gpx [<!ENTITY a SYSTEM 'file:///etc/hostname'>]><gpx><wpt lat='1' lon='2'><name>&a;</name></wpt></gpx>",
        "<!DOCTYPE gpx SYSTEM 'http://localhost:1/gpx.dtd'><gpx><wpt lat='1' lon='2'/></gpx>",
        "<!DOCTYPE gpx [<!ENTITY % p SYSTEM 'http://localhost:1/p'> %p;]><gpx><wpt lat='1' lon='2'/></gpx>",
    })
    void refusesEveryDoctype(String gpx) throws IOException {
        assertTrue(refusal(gpx).startsWith("sites.gpx, line 1: has a DOCTYPE"), refusal(gpx));
    }

    @Test
    void refusesNestingBombs() throws IOException {
        assertEquals("sites.gpx, line 2: elements are nested deeper than 100 levels; export it again with fewer",
                refusal("<gpx>\n" + "<extensions>".repeat(100_000)));
    }

    @Test
    void refusesAnyOtherCrs() throws IOException {
        Path file = write("<gpx><wpt lat='1' lon='2'/></gpx>");
        assertEquals(Crs.WGS84, VectorLayers.read(Sources.withCrs(file, "EPSG:4326")).crs());
        assertEquals("sites.gpx, layer \"trial\": its \"crs\" is stated as EPSG:32617 (WGS 84 / UTM zone 17N), but GPX is always"
                + " longitude and latitude on WGS 84; leave \"crs\" out", Refusals.of(Sources.withCrs(file, "EPSG:32617")));
    }
}
