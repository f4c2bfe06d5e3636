package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.seacairn.layer.FlatGeobufFixture.column;
import static org.seacairn.layer.FlatGeobufFixture.header;
import static org.seacairn.layer.FlatGeobufFixture.positions;
import static org.seacairn.layer.FlatGeobufFixture.rings;
import static org.seacairn.layer.FlatGeobufFixture.table;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Base64;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.geodesy.Crs;

class FlatGeobufReaderTest {
    /**
     * Two points on an invented coast as GDAL 3.6.2 wrote them ({@code ogr2ogr -f FlatGeobuf}), with its index: a name, a depth that the
     * second has not, and a number. The index has put the second first.
     */
    static final byte[] BY_GDAL = Base64.getDecoder().decode(
              "ZmdiA2ZnYgG0AgAAJAAAAAAAAAAAABoAJAAIAAwABwAAAAAAAAAAABAAGAAAABQAGgAAAAAAAAFUAAAAKAAAABQAAABcAAAAAgAAAAAAAAAAAAAAAwAAAEwC"
            + "AAAgAgAA9AEAAAQAAAAAAAAAADBUwAAAAAAAgD1AAAAAAAAgVMAAAAAAAKA9QAAAAAABAAAAYQAOABQABAAIAAwAAAAQAA4AAACkAQAA5hAAAJABAAAEAAAA"
            + "gAEAAEdFT0dDUlNbIldHUyA4NCIsREFUVU1bIldvcmxkIEdlb2RldGljIFN5c3RlbSAxOTg0IixFTExJUFNPSURbIldHUyA4NCIsNjM3ODEzNywyOTguMjU3"
            + "MjIzNTYzLExFTkdUSFVOSVRbIm1ldHJlIiwxXV1dLFBSSU1FTVsiR3JlZW53aWNoIiwwLEFOR0xFVU5JVFsiZGVncmVlIiwwLjAxNzQ1MzI5MjUxOTk0MzNd"
            + "XSxDU1tlbGxpcHNvaWRhbCwyXSxBWElTWyJnZW9kZXRpYyBsYXRpdHVkZSAoTGF0KSIsbm9ydGgsT1JERVJbMV0sQU5HTEVVTklUWyJkZWdyZWUiLDAuMDE3"
            + "NDUzMjkyNTE5OTQzM11dLEFYSVNbImdlb2RldGljIGxvbmdpdHVkZSAoTG9uKSIsZWFzdCxPUkRFUlsyXSxBTkdMRVVOSVRbImRlZ3JlZSIsMC4wMTc0NTMy"
            + "OTI1MTk5NDMzXV0sSURbIkVQU0ciLDQzMjZdXQAAAAAGAAAAV0dTIDg0AAAEAAAARVBTRwAAAAC+////AAAABQgAAAAAAAAAAQAAAG4AAAAQABAACAAHAAAA"
            + "AAAAAAwAEAAAAAAAAAoIAAAAAAAAAAUAAABkZXB0aAAOABAACAAHAAAAAAAMAA4AAAAAAAALCAAAAAAAAAAEAAAAbmFtZQAAAAAAAAAAADBUwAAAAAAAgD1A"
            + "AAAAAAAgVMAAAAAAAKA9QAEAAAAAAAAAAAAAAAAgVMAAAAAAAKA9QAAAAAAAIFTAAAAAAACgPUAAAAAAAAAAAAAAAAAAMFTAAAAAAACAPUAAAAAAADBUwAAA"
            + "AAAAgD1AWAAAAAAAAABUAAAADAAAAAgADAAEAAgACAAAACgAAAAEAAAAEgAAAAAABgAAAEtldHRsZQIA/P///wAACAAIAAAABAAIAAAABAAAAAIAAAAAAAAA"
            + "ACBUwAAAAAAAoD1AXAAAAAwAAAAIAAwABAAIAAgAAAAwAAAABAAAABwAAAAAAAYAAADDiXBhdmUBAAAAAAAA4FFAAgADAAAACAAIAAAABAAIAAAABAAAAAIA"
            + "AAAAAAAAADBUwAAAAAAAgD1A");

    @TempDir
    Path folder;

    private Path write(byte[] bytes) {
        try {
            return Files.write(folder.resolve("a.fgb"), bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private VectorLayer read(byte[] bytes) {
        return VectorLayers.read(Sources.plain(write(bytes)));
    }

    private String refusal(byte[] bytes) {
        return Refusals.of(Sources.plain(write(bytes)));
    }

    private String refusal(FlatGeobufFixture file) {
        return refusal(file.toBytes());
    }

    @Test
    void readsWhatGdalWrote() {
        VectorLayer layer = read(BY_GDAL);
        assertEquals("FlatGeobuf", layer.format());
        assertEquals(Crs.WGS84, layer.crs());
        assertEquals(List.of("POINT (-80.5 29.625)", "POINT (-80.75 29.5)"), layer.features().stream().map(f -> f.geometry().toText()).toList());
        assertEquals(List.of(Map.of("name", "Kettle", "n", -4), Map.of("name", "\u00c9pave", "depth", 71.5, "n", 3)),
                layer.features().stream().map(Feature::attributes).toList());
        assertEquals(List.of(1L, 2L), layer.features().stream().map(Feature::id).toList());
    }

    @Test
    void readsEveryKindOfGeometryAndColumn() {
        VectorLayer layer = read(FlatGeobufFixture.everyKind());
        assertEquals(List.of("POINT (1 2)", "LINESTRING (0 0, 1 1)", "POLYGON ((0 0, 9 0, 9 9, 0 9, 0 0), (2 1, 3 1, 3 2, 2 1))",
                "MULTIPOINT ((0 0), (1 1))", "MULTILINESTRING ((0 0, 1 1), (2 2, 3 3))",
                "MULTIPOLYGON (((0 0, 9 0, 9 9, 0 9, 0 0)), ((20 0, 29 0, 29 9, 20 9, 20 0), (22 1, 23 1, 23 2, 22 1)))",
                "GEOMETRYCOLLECTION (POINT (5 6), POLYGON ((0 0, 9 0, 9 9, 0 9, 0 0)))"),
                layer.features().stream().map(f -> f.geometry().toText()).toList());
        assertEquals(1, layer.featuresWithoutGeometry());
        Map<String, Object> attributes = new LinkedHashMap<>();
        attributes.put("c0", -1);
        attributes.put("c1", 255);
        attributes.put("c2", true);
        attributes.put("c3", -2);
        attributes.put("c4", 65_534);
        attributes.put("c5", -3);
        attributes.put("c6", 4_294_967_293L);
        attributes.put("c7", -4L);
        attributes.put("c8", new BigInteger("18446744073709551612"));
        attributes.put("c9", 0.5f);
        attributes.put("c10", 0.1);
        attributes.put("c11", "\u00c9pave");
        attributes.put("c12", "{\"a\": 1}");
        attributes.put("c13", "2026-01-02T03:04:05Z");
        assertEquals(attributes, layer.features().get(0).attributes());
        assertEquals(List.copyOf(attributes.keySet()), List.copyOf(layer.features().get(0).attributes().keySet()));
    }

    @Test
    void columnsOfAFeatureGoBeforeThoseOfTheHeader() {
        byte[] file = FlatGeobufFixture.of(header(1, 0, List.of(column("a", 0))))
                .message(table(0, positions(1, 2), 1, new byte[] {0, 0, 1}, 2, List.of(column("b", 2)))).toBytes();
        assertEquals(Map.of("b", true), read(file).features().get(0).attributes());
    }

    @Test
    void theCrsIsThatOfTheCodeOrElseOfTheText() {
        Map<Integer, Object> utm = table(2, (byte) 1, 8, 1L, 9, (short) 0, 10, FlatGeobufFixture.epsg(32617));
        assertEquals(Crs.ofEpsg(32617), read(FlatGeobufFixture.of(utm).feature(positions(500_000, 3_000_000)).toBytes()).crs());
        String wkt = Crs.ofEpsg(32617).wkt();
        for (Map<Integer, Object> crs : List.of(table(4, wkt), table(0, "epsg", 1, 999_999, 4, wkt), table(0, "ESRI", 1, 102_999, 4, wkt))) {
            Map<Integer, Object> header = table(2, (byte) 1, 8, 1L, 9, (short) 0, 10, crs);
            assertEquals(32617, read(FlatGeobufFixture.of(header).feature(positions(500_000, 3_000_000)).toBytes()).crs().epsg().orElse(0));
        }
    }

    @Test
    void anUnknownCrsIsRefusedAndThePlansIsTaken() {
        Map<Integer, Object> none = table(2, (byte) 1, 8, 1L, 9, (short) 0);
        byte[] file = FlatGeobufFixture.of(none).feature(positions(1, 2)).toBytes();
        assertEquals("a.fgb, header: its header states no CRS; state its \"crs\", for example EPSG:4326", refusal(file));
        assertEquals(Crs.WGS84, VectorLayers.read(Sources.withCrs(write(file), "EPSG:4326")).crs());
        none.put(10, table(0, "IAU", 1, 30_100));
        assertEquals("a.fgb, header: its header states no CRS that is known here (IAU:30100); state its \"crs\", for example EPSG:4326",
                refusal(FlatGeobufFixture.of(none).feature(positions(1, 2))));
        none.put(10, FlatGeobufFixture.epsg(999_999));
        assertEquals("a.fgb, header: CRS EPSG:999999 is not in the EPSG data set; check the code",
                refusal(FlatGeobufFixture.of(none).feature(positions(1, 2))));
    }

    @Test
    void ofTextOfTheSecondVersionTheCodeIsTaken() {
        String utm = "PROJCRS[\"WGS 84 / UTM zone 17N\",BASEGEOGCRS[\"WGS 84\",DATUM[\"x\",ELLIPSOID[\"y\",6378137,298.257223563]],ID[\"EPSG\",4326]],"
                + "CONVERSION[\"UTM zone 17N\",METHOD[\"Transverse Mercator\",ID[\"EPSG\",9807]]],CS[Cartesian,2],AXIS[\"(E)\",east],AXIS[\"(N)\",north]";
        Map<Integer, Object> header = table(2, (byte) 1, 8, 1L, 9, (short) 0, 10, table(4, utm + ",ID[\"EPSG\",32617]]"));
        assertEquals(32617, read(FlatGeobufFixture.of(header).feature(positions(500_000, 3_000_000)).toBytes()).crs().epsg().orElse(0));
        header.put(10, table(4, "BOUNDCRS[SOURCECRS[" + utm + ",ID[\"EPSG\",32617]]],TARGETCRS[GEOGCRS[\"WGS 84\",ID[\"EPSG\",4326]]]]"));
        assertEquals(32617, read(FlatGeobufFixture.of(header).feature(positions(500_000, 3_000_000)).toBytes()).crs().epsg().orElse(0));
        header.put(10, table(4, utm + "]"));
        assertEquals("a.fgb, header: the CRS text \"PROJCRS[\"WGS 84 / UTM zone 17N\",BASEG...\" is of a kind of which only the EPSG code is read,"
                + " and has none; state crs in the plan, for example EPSG:32617",
                refusal(FlatGeobufFixture.of(header).feature(positions(500_000, 3_000_000))));
        assertEquals(32617, VectorLayers.read(Sources.withCrs(write(FlatGeobufFixture.of(header).feature(positions(500_000, 3_000_000)).toBytes()),
                "EPSG:32617")).crs().epsg().orElse(0));
    }

    /** GDAL 3.6 writes a ring without points for one that its source has so. */
    @Test
    void emptyRingsAndLinesAreLeftOut() {
        Map<Integer, Object> polygon = rings(new int[] {4, 4}, 0, 0, 9, 0, 9, 9, 0, 0);
        assertEquals("POLYGON ((0 0, 9 0, 9 9, 0 0))", read(FlatGeobufFixture.of(header(3, 1, List.of())).feature(polygon).toBytes())
                .features().get(0).geometry().toText());
        Map<Integer, Object> lines = rings(new int[] {2, 2, 4}, 0, 0, 9, 0, 9, 9, 0, 0);
        assertEquals("MULTILINESTRING ((0 0, 9 0), (9 9, 0 0))", read(FlatGeobufFixture.of(header(5, 1, List.of())).feature(lines).toBytes())
                .features().get(0).geometry().toText());
        assertGeometry("the geometry's lines or rings end at position 0 after 0 of 4; the file is damaged, export it again",
                3, rings(new int[] {0, 4}, 0, 0, 9, 0, 9, 9, 0, 0));
    }

    @Test
    void whatGdalWroteIsRefusedWhereverItIsCutShort() {
        for (int length = 1; length < BY_GDAL.length; length += 7) {
            refusal(Arrays.copyOf(BY_GDAL, length));
        }
        assertEquals("a.fgb, feature 2: needs 92 bytes where the file has 91 left; it is damaged or cut short, export it again",
                refusal(Arrays.copyOf(BY_GDAL, BY_GDAL.length - 1)));
        assertEquals("a.fgb, end: 1 bytes follow after the 2 features that its header states; the file is damaged, export it again",
                refusal(Arrays.copyOf(BY_GDAL, BY_GDAL.length + 1)));
    }

    @Test
    void otherFilesAndVersionsAreRefused() {
        assertEquals("a.fgb, header: is no FlatGeobuf; export it again", refusal("not at all".getBytes(StandardCharsets.US_ASCII)));
        byte[] newer = BY_GDAL.clone();
        newer[3] = 4;
        assertEquals("a.fgb, header: is FlatGeobuf of version 4, and version 3 can be read; export it again", refusal(newer));
    }

    @Test
    void countsThatTheFileCannotHoldAreRefusedAtOnce() {
        Map<Integer, Object> indexed = table(2, (byte) 1, 8, 1_000_000_000_000L, 10, FlatGeobufFixture.epsg(4326));
        assertEquals("a.fgb, header: states 1000000000000 features with an index, which is more than its 0 bytes can hold;"
                + " the file is damaged or cut short, export it again", refusal(FlatGeobufFixture.of(indexed)));
        indexed.put(9, (short) 1);
        assertEquals("a.fgb, header: the nodes of its index have room for 1 entry, which is none; export the file again",
                refusal(FlatGeobufFixture.of(indexed)));
        assertEquals("a.fgb, feature 1: needs 4 bytes where the file has 0 left; it is damaged or cut short, export it again",
                refusal(FlatGeobufFixture.of(header(1, 1_000_000_000L, List.of()))));
        assertEquals("a.fgb, feature 1: needs 2000000000 bytes where the file has 0 left; it is damaged or cut short, export it again",
                refusal(FlatGeobufFixture.of(header(1, 1, List.of())).raw((byte) 0, (byte) 0x94, (byte) 0x35, (byte) 0x77)));
    }

    @Test
    void geometriesThatAreNoneAreRefused() {
        assertGeometry("a coordinate is (NaN, 2.0) and not a place; correct or delete the feature", 1, positions(Double.NaN, 2));
        assertGeometry("a coordinate is (1.0, -Infinity) and not a place; correct or delete the feature", 1, positions(1, Double.NEGATIVE_INFINITY));
        assertGeometry("a line has one point; delete it or add a second point", 2, positions(1, 2));
        assertGeometry("a point has 2 positions; correct the feature or export the file again", 1, positions(1, 2, 3, 4));
        assertGeometry("the geometry has an x without its y; the file is damaged, export it again", 1, positions(1));
        assertGeometry("ring 1 of a polygon, of 3 points, is not closed or encloses nothing; a ring has 4 points or more, the last like the first",
                3, positions(0, 0, 1, 1, 0, 0));
        assertGeometry("ring 2 of a polygon, of 4 points, is not closed or encloses nothing; a ring has 4 points or more, the last like the first",
                3, rings(new int[] {4, 8}, 0, 0, 9, 0, 9, 9, 0, 0, 1, 1, 2, 1, 2, 2, 1, 1.5));
        assertGeometry("the geometry's lines or rings end at position 1000000000 after 0 of 2; the file is damaged, export it again",
                5, rings(new int[] {1_000_000_000}, 0, 0, 1, 1));
        assertGeometry("the geometry has 3 positions, and its lines or rings end at 2; the file is damaged, export it again",
                5, rings(new int[] {2}, 0, 0, 1, 1, 2, 2));
        assertGeometry("the geometry has coordinates where it should have parts; export the file again", 6, positions(0, 0));
        assertGeometry("the geometry has arcs or surfaces (type 10), which are not read; convert it to points, lines or polygons", 10, positions(0, 0));
        assertGeometry("the geometry is of no known type (99); export the file again", 99, positions(0, 0));
    }

    private void assertGeometry(String problem, int type, Map<Integer, Object> geometry) {
        assertEquals("a.fgb, feature 1: " + problem, refusal(FlatGeobufFixture.of(header(type, 1, List.of())).feature(geometry)));
    }

    @Test
    void emptyGeometriesAreNone() {
        byte[] file = FlatGeobufFixture.of(header(3, 0, List.of())).feature(table()).feature(null).feature(positions(0, 0, 9, 0, 9, 9, 0, 0)).toBytes();
        assertEquals(2, read(file).featuresWithoutGeometry());
        assertEquals("a.fgb, layer \"trial\" (line 12 of the plan): holds no feature; give a file with features, or leave the layer out of the plan",
                refusal(FlatGeobufFixture.of(header(1, 0, List.of()))));
    }

    @Test
    void attributesThatAreNoneAreRefused() {
        assertProperties("it has a value of column 3, and the file has 1 columns; the file is damaged, export it again", 5, 2, 0, 1, 0, 0, 0);
        assertProperties("its attributes are cut short; the file is damaged, export it again", 5, 0, 0, 1, 0, 0);
        assertProperties("its attributes are cut short; the file is damaged, export it again", 11, 0, 0, -1, -1, -1, -1, 65);
        assertProperties("a text is not in UTF-8, as the format has it; export the file again in UTF-8", 11, 0, 0, 2, 0, 0, 0, 0xc9, 65);
        assertProperties("column \"c\" is of no known type (77); export the file again", 77, 0, 0, 1);
    }

    private void assertProperties(String problem, int type, int... properties) {
        byte[] bytes = new byte[properties.length];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) properties[i];
        }
        assertEquals("a.fgb, feature 1: " + problem,
                refusal(FlatGeobufFixture.of(header(1, 1, List.of(column("c", type)))).feature(positions(1, 2), bytes)));
    }

    @Test
    void partsWithinPartsAreRefusedBeforeTheyFillTheStack() {
        Map<Integer, Object> nested = table(6, (byte) 1, 1, new double[] {0, 0});
        for (int level = 0; level < 1000; level++) {
            nested = table(6, (byte) 7, 7, List.of(nested));
        }
        assertGeometry("the geometry has more parts, or parts deeper in each other, than it has room for; export the file again", 7, nested);
    }

    /** A small file whose thousand parts are one and the same: a thousand times its size in memory. */
    @Test
    void partsThatShareTheirCoordinatesAreRefused() {
        double[] ring = new double[2000];
        ring[2] = 1;
        ring[5] = 1;
        assertGeometry("the geometry has more coordinates than it has room for; the file is damaged, export it again", 6,
                table(7, Collections.nCopies(1000, positions(ring))));
    }
}
