package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.seacairn.geodesy.Crs;

class ShapefileReaderTest {
    private static final Charset WINDOWS = Charset.forName("windows-1252");
    private static final String NAD83 = "GEOGCS[\"GCS_North_American_1983\",DATUM[\"D_North_American_1983\","
            + "SPHEROID[\"GRS_1980\",6378137.0,298.257222101]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]";
    private static final double[] LINE = {0, 0, 3, 4};
    private static final double[] CLOCKWISE = {0, 0, 0, 9, 9, 9, 9, 0, 0, 0};
    private static final double[] HOLE = {1, 1, 2, 1, 2, 2, 1, 2, 1, 1};

    @TempDir
    Path folder;

    private Path shp(ShapefileFixture shapes) throws IOException {
        return ShapefileFixture.write(folder, "lanes.shp", shapes.main());
    }

    private VectorLayer read(ShapefileFixture shapes) throws IOException {
        return VectorLayers.read(Sources.withCrs(shp(shapes), "EPSG:32617"));
    }

    private String refusal(byte[] main) throws IOException {
        return Refusals.of(Sources.withCrs(ShapefileFixture.write(folder, "lanes.shp", main), "EPSG:32617"));
    }

    @ParameterizedTest
    @CsvSource({"1", "11", "21"})
    void readsPoints(int type) throws IOException {
        assertEquals("POINT (-87.25 29.5)", read(new ShapefileFixture(type).point(type, -87.25, 29.5)).features().get(0).geometry().toText());
    }

    @ParameterizedTest
    @CsvSource({"8", "18", "28"})
    void readsMultiPoints(int type) throws IOException {
        assertEquals("MULTIPOINT ((1 2), (3 4))",
                read(new ShapefileFixture(type).multiPoint(type, 1, 2, 3, 4)).features().get(0).geometry().toText());
    }

    @ParameterizedTest
    @CsvSource({"3", "13", "23"})
    void readsLines(int type) throws IOException {
        VectorLayer layer = read(new ShapefileFixture(type).parts(type, LINE).parts(type, LINE, new double[] {5, 5, 6, 6, 7, 5}));
        assertEquals("LINESTRING (0 0, 3 4)", layer.features().get(0).geometry().toText());
        assertEquals("MULTILINESTRING ((0 0, 3 4), (5 5, 6 6, 7 5))", layer.features().get(1).geometry().toText());
    }

    @ParameterizedTest
    @CsvSource({"5", "15", "25"})
    void readsPolygons(int type) throws IOException {
        VectorLayer layer = read(new ShapefileFixture(type).parts(type, CLOCKWISE, HOLE));
        assertEquals("POLYGON ((0 0, 0 9, 9 9, 9 0, 0 0), (1 1, 2 1, 2 2, 1 2, 1 1))", layer.features().get(0).geometry().toText());
    }

    @Test
    void readsZPointsThatLeaveOutTheirMeasure() throws IOException {
        byte[] content = ByteBuffer.allocate(28).order(ByteOrder.LITTLE_ENDIAN).putInt(11).putDouble(1).putDouble(2).putDouble(-80).array();
        assertEquals("POINT (1 2)", read(new ShapefileFixture(11).record(content)).features().get(0).geometry().toText());
    }

    @Test
    void countsNullAndEmptyShapesAndKeepsRecordNumbers() throws IOException {
        VectorLayer layer = read(new ShapefileFixture(3).nullShape().parts(3).parts(3, LINE).nullShape().parts(3, LINE));
        assertEquals(3, layer.featuresWithoutGeometry());
        assertEquals(List.of(3L, 5L), layer.features().stream().map(Feature::id).toList());
    }

    @Test
    void readsEachRecordByItsOwnTypeAndSaysSo() throws IOException {
        VectorLayer layer = read(new ShapefileFixture(3).parts(3, LINE).point(1, 1, 2));
        assertEquals("POINT (1 2)", layer.features().get(1).geometry().toText());
        assertTrue(layer.notes().contains("1 records are of another shape type than the file's 3; each is read by its own"), layer.notes().toString());
    }

    @Test
    void saysWhatLiesBeyondTheStatedEnd() throws IOException {
        byte[] main = new ShapefileFixture(3).parts(3, LINE).main();
        ShapefileFixture.write(folder, "lanes.shp", Arrays.copyOf(main, main.length + 10));
        VectorLayer layer = VectorLayers.read(Sources.withCrs(folder.resolve("lanes.shp"), "EPSG:32617"));
        assertTrue(layer.notes().contains("10 bytes after the end that the header states are not read"), layer.notes().toString());
    }

    static Stream<Arguments> damagedFiles() {
        byte[] good = new ShapefileFixture(5).parts(5, CLOCKWISE, HOLE).main();
        return Stream.of(
                Arguments.of("not a shapefile", "not a shapefile".getBytes(StandardCharsets.US_ASCII), "header: is no main file"),
                Arguments.of("other file code", with(good, 0, 1), "header: is no main file"),
                Arguments.of("cut short", Arrays.copyOf(good, 200),
                        "header: states 320 bytes where the file has 200; it was cut short or not closed"),
                Arguments.of("not closed", with(good, 24, 0), "header: states 0 bytes where the file has 320"),
                Arguments.of("no room for a record header", with(Arrays.copyOf(good, 106), 24, 53),
                        "record 1 (byte 100): its header is cut short"),
                Arguments.of("record longer than the file", with(good, 104, 5000),
                        "record 1 (byte 100): states a length of 10000 bytes where 212 are left"),
                Arguments.of("record of negative length", with(good, 104, -2),
                        "record 1 (byte 100): states a length of 8589934588 bytes where 212 are left"),
                Arguments.of("record without a type", with(good, 104, 1), "record 1 (byte 100): states a length of 2 bytes"),
                Arguments.of("unknown type", with(good, 108, little(77)), "record 1 (byte 100): has the unknown shape type 77"),
                Arguments.of("multipatch", with(good, 108, little(31)), "record 1 (byte 100): is a multipatch, which is not read"),
                Arguments.of("negative parts", with(good, 144, little(-1)), "record 1 (byte 100): states -1 parts"),
                Arguments.of("too many points", with(good, 148, little(11)), "record 1 (byte 100): its shape needs 228 bytes and the record has 212"),
                Arguments.of("most points there can be", with(good, 148, little(Integer.MAX_VALUE)), "record 1 (byte 100): its shape needs 34359738404 bytes"),
                Arguments.of("first part not at 0", with(good, 152, little(2)), "record 1 (byte 100): its part 1 starts at point 2 of 10"),
                Arguments.of("parts that go back", with(good, 156, little(-5)), "record 1 (byte 100): its part 1 starts at point 0 of 10 and ends at -5"),
                Arguments.of("part beyond the points", with(good, 156, little(12)), "record 1 (byte 100): its part 1 starts at point 0 of 10 and ends at 12"),
                Arguments.of("line of one point", new ShapefileFixture(3).parts(3, LINE, new double[] {1, 1}).main(),
                        "record 1 (byte 100): its part 2 is a line of one point"),
                Arguments.of("open ring", new ShapefileFixture(5).parts(5, new double[] {0, 0, 0, 9, 9, 9, 9, 0}).main(),
                        "record 1 (byte 100): its ring 1 of 4 points is not closed or encloses nothing"),
                Arguments.of("ring of three points", new ShapefileFixture(5).parts(5, CLOCKWISE, new double[] {0, 0, 0, 9, 0, 0}).main(),
                        "record 1 (byte 100): its ring 2 of 3 points is not closed or encloses nothing"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("damagedFiles")
    void refusesDamage(String name, byte[] main, String message) throws IOException {
        String text = refusal(main);
        assertTrue(text.startsWith("lanes.shp, " + message), text);
    }

    @Test
    void refusesAPointThatIsNoNumber() throws IOException {
        String text = refusal(new ShapefileFixture(1).point(1, 1, 2).point(1, Double.NaN, 4).main());
        assertEquals("lanes.shp, record 2 (byte 128): a coordinate is (NaN, 4.0) and not a place; correct or delete the feature", text);
    }

    @Test
    void refusesAFileThatStatesNoCrs() throws IOException {
        Path file = shp(new ShapefileFixture(3).parts(3, LINE));
        assertEquals("lanes.shp, CRS: there is no .prj file beside it that states its CRS; state its \"crs\","
                + " for example EPSG:4326", Refusals.of(Sources.plain(file)));
    }

    @ParameterizedTest
    @CsvSource({"lanes.prj", "lanes.PRJ", "LANES.Prj"})
    void findsTheCrsInAnyLetterCaseAndAfterAByteOrderMark(String name) throws IOException {
        Path file = shp(new ShapefileFixture(3).parts(3, LINE));
        Files.writeString(folder.resolve(name), "\ufeff" + NAD83.replace(",DATUM", ",\r\n  DATUM"));
        assertEquals(Crs.ofEpsg(4269), VectorLayers.read(Sources.plain(file)).crs());
    }

    @Test
    void takesTheCodeOfWellKnownTextOfTheSecondVersion() throws IOException {
        Path file = shp(new ShapefileFixture(3).parts(3, LINE));
        Files.writeString(folder.resolve("lanes.prj"), "GEOGCRS[\"NAD83\",\n  DATUM[\"x\",ELLIPSOID[\"GRS 1980\",6378137,298.257222101]],\n  ID[\"EPSG\",4269]]");
        assertEquals(Crs.ofEpsg(4269), VectorLayers.read(Sources.plain(file)).crs());
    }

    @Test
    void takesThePlansCrsBeforeTheFilesAndSaysSo() throws IOException {
        Path file = shp(new ShapefileFixture(3).parts(3, LINE));
        Files.writeString(folder.resolve("lanes.prj"), NAD83);
        VectorLayer layer = VectorLayers.read(Sources.withCrs(file, "EPSG:32617"));
        assertEquals(32617, layer.crs().epsg().orElseThrow());
        assertEquals("the plan's CRS " + Crs.ofEpsg(32617).label() + " is used in place of the file's " + Crs.parse(NAD83).label(),
                layer.notes().get(0));
    }

    @Test
    void refusesACrsThatCannotBeRead() throws IOException {
        Path file = shp(new ShapefileFixture(3).parts(3, LINE));
        Files.writeString(folder.resolve("lanes.prj"), "PROJCS[\"half");
        String text = Refusals.of(Sources.plain(file));
        assertTrue(text.startsWith("lanes.prj, text: CRS text \"PROJCS[\"half\" cannot be read ("), text);
        assertTrue(Refusals.of(Sources.withCrs(file, "UTM 17")).startsWith("lanes.shp, layer \"trial\": CRS \"UTM 17\" is not known"));
    }

    @Test
    void joinsAttributesByRecord() throws IOException {
        Path file = shp(new ShapefileFixture(3).parts(3, LINE).nullShape().parts(3, LINE));
        ShapefileFixture.write(folder, "lanes.DBF", ShapefileFixture.table(0, WINDOWS,
                new String[] {"Inner", "12.50"}, new String[] {"none", "1"}, new String[] {"", "-7"}));
        VectorLayer layer = VectorLayers.read(Sources.withCrs(file, "EPSG:32617"));
        assertEquals("{NAME=Inner, DEPTH=12.5}", layer.features().get(0).attributes().toString());
        assertEquals("{NAME=null, DEPTH=-7}", layer.features().get(1).attributes().toString());
        assertEquals(-7L, layer.features().get(1).attributes().get("DEPTH"));
        assertEquals(12.5, layer.features().get(0).attributes().get("DEPTH"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        // .cpg      | driver | bytes written as | note
        "UTF-8       | 0x00 | UTF-8        | attributes are read as UTF-8, which the .cpg file states",
        "65001       | 0x57 | UTF-8        | attributes are read as UTF-8, which the .cpg file states",
        "ISO 88591   | 0x00 | ISO-8859-1   | attributes are read as ISO-8859-1, which the .cpg file states",
        "ANSI 1252   | 0x00 | windows-1252 | attributes are read as windows-1252, which the .cpg file states",
        "OEM 850     | 0x00 | IBM850       | attributes are read as IBM850, which the .cpg file states",
        "            | 0x57 | windows-1252 | attributes are read as windows-1252, the language driver of the .dbf file",
        "            | 0x02 | IBM850       | attributes are read as IBM850, the language driver of the .dbf file",
        "            | 0x00 | windows-1252 | attributes are taken as windows-1252, since neither a .cpg file nor the .dbf file states a character set",
        "klingon     | 0x00 | windows-1252 | the .cpg file states \"klingon\", which is no known character set",
    })
    void readsTextInItsCharacterSet(String cpg, String driver, String written, String note) throws IOException {
        Path file = shp(new ShapefileFixture(3).parts(3, LINE));
        ShapefileFixture.write(folder, "lanes.dbf", ShapefileFixture.table(Integer.decode(driver), Charset.forName(written), new String[] {"Ñandú é", "1"}));
        if (cpg != null) {
            Files.writeString(folder.resolve("lanes.cpg"), cpg + "\n");
        }
        VectorLayer layer = VectorLayers.read(Sources.withCrs(file, "EPSG:32617"));
        assertEquals("Ñandú é", layer.features().get(0).attributes().get("NAME"));
        assertTrue(layer.notes().contains(note), layer.notes().toString());
    }

    @Test
    void leavesOutRecordsMarkedAsDeleted() throws IOException {
        Path file = shp(new ShapefileFixture(1).point(1, 1, 1).point(1, 2, 2).point(1, 3, 3));
        ShapefileFixture.write(folder, "lanes.dbf", ShapefileFixture.table(0, WINDOWS,
                new String[] {"a", "1"}, new String[] {"*b", "2"}, new String[] {"c", "3"}));
        VectorLayer layer = VectorLayers.read(Sources.withCrs(file, "EPSG:32617"));
        assertEquals(List.of("a", "c"), layer.features().stream().map(f -> f.attributes().get("NAME")).toList());
        assertEquals(List.of(1L, 3L), layer.features().stream().map(Feature::id).toList());
        assertEquals(0, layer.featuresWithoutGeometry());
        assertTrue(layer.notes().contains("1 records are marked as deleted and are left out"), layer.notes().toString());
    }

    @Test
    void refusesATableOfAnotherLength() throws IOException {
        Path file = shp(new ShapefileFixture(1).point(1, 1, 1).point(1, 2, 2));
        ShapefileFixture.write(folder, "lanes.dbf", ShapefileFixture.table(0, WINDOWS, new String[][] {{"a", "1"}}));
        assertEquals("lanes.shp, records: has 2 shapes where lanes.dbf has 1 rows; the two files do not belong together, export the shapefile again",
                Refusals.of(Sources.withCrs(file, "EPSG:32617")));
    }

    @Test
    void refusesADamagedTable() throws IOException {
        Path file = shp(new ShapefileFixture(1).point(1, 1, 1).point(1, 2, 2));
        byte[] table = ShapefileFixture.table(0, WINDOWS, new String[] {"a", "1"}, new String[] {"b", "2"});
        ShapefileFixture.write(folder, "lanes.dbf", Arrays.copyOf(table, 97 + 31));
        assertEquals("lanes.dbf, header: states 2 rows of 31 bytes from byte 97 where the file has 128; it was cut short, copy or export it again",
                Refusals.of(Sources.withCrs(file, "EPSG:32617")));
        ShapefileFixture.write(folder, "lanes.dbf", Arrays.copyOf(table, 50));
        assertTrue(Refusals.of(Sources.withCrs(file, "EPSG:32617")).startsWith("lanes.dbf, header: states 2 rows of 31 bytes from byte 97 where the file has 50;"));
    }

    @Test
    void doesWithoutATable() throws IOException {
        VectorLayer layer = read(new ShapefileFixture(3).parts(3, LINE));
        assertTrue(layer.features().get(0).attributes().isEmpty());
        assertTrue(layer.notes().contains("there is no .dbf file beside it, so the features have no attributes"), layer.notes().toString());
    }

    private static byte[] with(byte[] file, int at, int bigEndian) {
        byte[] changed = file.clone();
        ByteBuffer.wrap(changed).putInt(at, bigEndian);
        return changed;
    }

    private static int little(int value) {
        return Integer.reverseBytes(value);
    }
}
