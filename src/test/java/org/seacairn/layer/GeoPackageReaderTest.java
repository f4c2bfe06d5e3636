package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;

class GeoPackageReaderTest {
    private static final byte[] POINT = GeoPackageFixture.blob("POINT (-87.25 29.5)");

    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("layers.gpkg");
    }

    private GeoPackageFixture geographic() throws SQLException {
        return new GeoPackageFixture(file()).crs(4326, "EPSG", 4326, "unused");
    }

    @Test
    void takesTheOnlyTableAndKeepsIdsNamesAndNulls() throws SQLException {
        try (GeoPackageFixture fixture = geographic()) {
            fixture.table("reefs", 4326).row("reefs", 7, POINT, "Old pier").row("reefs", 9, null, "lost").row("reefs", 11, POINT, null);
        }
        VectorLayer layer = VectorLayers.read(Sources.plain(file()));
        assertEquals(Crs.WGS84, layer.crs());
        assertEquals("GeoPackage", layer.format());
        assertEquals(List.of(7L, 11L), layer.features().stream().map(Feature::id).toList());
        assertEquals(1, layer.featuresWithoutGeometry());
        assertEquals("POINT (-87.25 29.5)", layer.features().get(0).geometry().toText());
        assertEquals("{fid=7, name=Old pier}", layer.features().get(0).attributes().toString());
        assertEquals("{fid=11, name=null}", layer.features().get(1).attributes().toString());
    }

    @Test
    void leavesNothingBesideTheFile() throws Exception {
        try (GeoPackageFixture fixture = geographic()) {
            fixture.table("reefs", 4326).row("reefs", 1, POINT, "a").run("PRAGMA journal_mode = DELETE");
        }
        byte[] before = Files.readAllBytes(file());
        // Write-ahead mode, as many programs leave it: a reader with a lock would make two files here.
        before[18] = 2;
        before[19] = 2;
        Files.write(file(), before);
        VectorLayers.read(Sources.plain(file()));
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(List.of(file()), files.toList());
        }
        assertTrue(Arrays.equals(before, Files.readAllBytes(file())));
    }

    @Test
    void refusesAFileWhoseNewestChangesAreStillInItsLog() throws Exception {
        try (GeoPackageFixture fixture = geographic()) {
            fixture.table("reefs", 4326).row("reefs", 1, POINT, "a");
        }
        Files.writeString(folder.resolve("layers.gpkg-wal"), "pages");
        assertEquals("layers.gpkg, its log layers.gpkg-wal: holds changes that are not in the GeoPackage yet; close the program"
                + " that has it open, or open and close it there once", Refusals.of(Sources.plain(file())));
    }

    @Test
    void readsFromAFolderWithOddCharacters() throws Exception {
        Path odd = Files.createDirectory(folder.resolve("a b#c%20?é"));
        try (GeoPackageFixture fixture = geographic()) {
            fixture.table("reefs", 4326).row("reefs", 1, POINT, "a");
        }
        Path moved = Files.move(file(), odd.resolve("reefs.GPKG"));
        assertEquals(1, VectorLayers.read(Sources.plain(moved)).features().size());
    }

    @Test
    void asksForATableWhereThereAreSeveral() throws SQLException {
        try (GeoPackageFixture fixture = geographic()) {
            fixture.table("mud", 4326).table("Sand ripples", 4326).row("Sand ripples", 1, POINT, "a");
        }
        assertEquals("layers.gpkg, layer \"trial\": holds 2 feature tables; name one as \"table\", from \"Sand ripples\", \"mud\"",
                Refusals.of(Sources.plain(file())));
        assertEquals("layers.gpkg, layer \"trial\": has no feature table \"sand riples\" (did you mean \"Sand ripples\"?);"
                + " name one from \"Sand ripples\", \"mud\"", Refusals.of(Sources.withTable(file(), "sand riples")));
        assertEquals("layers.gpkg, layer \"trial\": has no feature table \"shells\"; name one from \"Sand ripples\", \"mud\"",
                Refusals.of(Sources.withTable(file(), "shells")));
        assertEquals(1, VectorLayers.read(Sources.withTable(file(), "sand ripples")).features().size());
    }

    @ParameterizedTest
    @CsvSource({"main", "select", "a.b", "it's", "say \"x\"", "x; DROP TABLE gpkg_contents", "név 漢"})
    void readsTablesOfAnyName(String name) throws SQLException {
        try (GeoPackageFixture fixture = geographic()) {
            fixture.table(name, 4326).row(name, 1, POINT, "a").table("other", 4326);
        }
        assertEquals(1, VectorLayers.read(Sources.withTable(file(), name)).features().size());
    }

    @Test
    void readsAViewAndCountsItsRows() throws SQLException {
        try (GeoPackageFixture fixture = geographic()) {
            fixture.table("reefs", 4326).row("reefs", 5, POINT, "deep").row("reefs", 6, POINT, "shoal")
                    .run("CREATE VIEW deep AS SELECT name, geom FROM reefs WHERE name = 'deep'").register("deep", "GEOM", 4326);
        }
        VectorLayer layer = VectorLayers.read(Sources.withTable(file(), "deep"));
        assertEquals(1, layer.features().size());
        assertEquals(1, layer.features().get(0).id());
        assertEquals("{name=deep}", layer.features().get(0).attributes().toString());
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '`', value = {"the geom", "select", "say \"x\"", "it's", "Géométrie", "a;b--", "?1", "geometry"})
    void readsColumnsOfAnyName(String geometry) throws SQLException {
        List<String> names = List.of("two words", "order", "\"quoted\"", "it's mine", "Tiefe in m²", "漢", "x=1", ":p", " ");
        try (GeoPackageFixture fixture = geographic()) {
            fixture.run("CREATE TABLE t (id INTEGER PRIMARY KEY, "
                    + names.stream().map(name -> GeoPackageCatalog.quoted(name) + " TEXT, ").collect(Collectors.joining())
                    + GeoPackageCatalog.quoted(geometry) + " BLOB)").register("t", geometry.replace("'", "''"), 4326)
                    .run("INSERT INTO t VALUES (7, " + names.stream().map(name -> "'of " + name.replace("'", "''") + "', ").collect(Collectors.joining())
                            + "x'" + hex(POINT) + "')");
        }
        Feature read = VectorLayers.read(Sources.plain(file())).features().get(0);
        assertEquals(7, read.id());
        assertEquals(names.size() + 1, read.attributes().size());
        for (String name : names) {
            assertEquals("of " + name, read.attributes().get(name));
        }
    }

    /** SQLite takes two names for one if they differ in the case of ASCII letters only; others it keeps apart. */
    @Test
    void keepsColumnsApartThatDifferInTheirCase() throws SQLException {
        try (GeoPackageFixture fixture = geographic()) {
            fixture.run("CREATE TABLE t (É TEXT, é BLOB, Ω TEXT, ω TEXT)").register("t", "é", 4326)
                    .run("INSERT INTO t VALUES ('upper', x'" + hex(POINT) + "', 'great', 'small')")
                    .run("CREATE VIEW v AS SELECT é, É AS name, Ω AS NAME FROM t").register("v", "É", 4326);
        }
        assertEquals("{É=upper, Ω=great, ω=small}", VectorLayers.read(Sources.withTable(file(), "t")).features().get(0).attributes().toString());
        assertEquals("{name=upper, NAME:1=great}", VectorLayers.read(Sources.withTable(file(), "v")).features().get(0).attributes().toString());
    }

    @Test
    void keepsTheKindsOfAttributesAndLeavesOutBinaryOnes() throws SQLException {
        try (GeoPackageFixture fixture = geographic()) {
            fixture.run("CREATE TABLE t (geom BLOB, n INTEGER, big INTEGER, r REAL, s TEXT, yes BOOLEAN, no BOOLEAN, unset BOOLEAN, b BLOB)")
                    .register("t", "geom", 4326)
                    .run("INSERT INTO t VALUES (x'" + hex(POINT) + "', 3, 5000000000, 2.5, 'mud', 1, 0, NULL, x'00')");
        }
        assertEquals("{n=3, big=5000000000, r=2.5, s=mud, yes=true, no=false, unset=null}",
                VectorLayers.read(Sources.plain(file())).features().get(0).attributes().toString());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "0 | LITTLE | 2", "1 | LITTLE | 2", "2 | LITTLE | 3", "3 | BIG | 3", "4 | BIG | 3", "0 | BIG | 3",
    })
    void readsEveryEnvelopeAndByteOrderAndDropsHeights(int envelope, String order, int dimension) throws SQLException {
        ByteOrder byteOrder = order.equals("BIG") ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
        String wkt = dimension == 3 ? "LINESTRING Z (1 2 30, 4 5 60)" : "LINESTRING (1 2, 4 5)";
        try (GeoPackageFixture fixture = geographic()) {
            fixture.table("t", 4326).row("t", 1, GeoPackageFixture.blob(wkt, dimension, byteOrder, envelope, 0), "a");
        }
        Feature feature = VectorLayers.read(Sources.plain(file())).features().get(0);
        assertEquals("LINESTRING (1 2, 4 5)", feature.geometry().toText());
        assertTrue(Double.isNaN(feature.geometry().getCoordinate().getZ()));
        // Flat coordinates must still go together with the ordinary ones of other layers.
        Geometry disc = new GeometryFactory().createPoint(new Coordinate(4, 5)).buffer(1);
        assertEquals(1, feature.geometry().intersection(disc).getLength(), 1e-9);
        assertEquals(feature.geometry(), new GeometryFactory().createLineString(new Coordinate[] {new Coordinate(1, 2), new Coordinate(4, 5)}));
    }

    @Test
    void dropsMeasuresOfIsoWellKnownBinary() {
        ByteBuffer wkb = ByteBuffer.allocate(8 + 5 + 32).order(ByteOrder.LITTLE_ENDIAN)
                .put(new byte[] {'G', 'P', 0, 1}).putInt(4326).put((byte) 1).putInt(3001)
                .putDouble(1).putDouble(2).putDouble(3).putDouble(4);
        assertEquals("POINT (1 2)", GeoPackageGeometry.parse(wkb.array()).toText());
    }

    @Test
    void countsEmptyGeometriesAsNone() throws SQLException {
        try (GeoPackageFixture fixture = geographic()) {
            fixture.table("t", 4326).row("t", 1, GeoPackageFixture.blob("POINT EMPTY", 2, ByteOrder.LITTLE_ENDIAN, 0, 0x10), "a")
                    .row("t", 2, GeoPackageFixture.blob("POLYGON EMPTY"), "b").row("t", 3, POINT, "c");
        }
        VectorLayer layer = VectorLayers.read(Sources.plain(file()));
        assertEquals(1, layer.features().size());
        assertEquals(2, layer.featuresWithoutGeometry());
    }

    @Test
    void namesTheFeatureWithADamagedGeometry() throws SQLException {
        try (GeoPackageFixture fixture = geographic()) {
            fixture.table("t", 4326).row("t", 41, POINT, "a").row("t", 42, Arrays.copyOf(POINT, 8), "a");
        }
        assertEquals("layers.gpkg, table \"t\", feature 42: the geometry is cut short at 8 bytes; export the table again",
                Refusals.of(Sources.plain(file())));
    }

    static Stream<Arguments> damagedGeometries() {
        byte[] nan = GeoPackageFixture.blob("LINESTRING (1 2, 3 4)");
        ByteBuffer.wrap(nan).order(ByteOrder.LITTLE_ENDIAN).putDouble(nan.length - 8, Double.NaN);
        ByteBuffer nest = ByteBuffer.allocate(8 + 9 * 100_000).order(ByteOrder.LITTLE_ENDIAN).put(new byte[] {'G', 'P', 0, 1}).putInt(0);
        while (nest.hasRemaining()) {
            nest.put((byte) 1).putInt(7).putInt(1);
        }
        ByteBuffer many = ByteBuffer.allocate(8 + 9).order(ByteOrder.LITTLE_ENDIAN).put(new byte[] {'G', 'P', 0, 1}).putInt(0)
                .put((byte) 1).putInt(2).putInt(Integer.MAX_VALUE);
        return Stream.of(
                Arguments.of("PK rest of it".getBytes(StandardCharsets.US_ASCII), "the geometry does not start with \"GP\""),
                Arguments.of(new byte[] {'G', 'P'}, "the geometry does not start with \"GP\""),
                Arguments.of(changed(2, 1), "the geometry's header (version 1, envelope code 0) is of no known version"),
                Arguments.of(changed(3, 0b1011), "the geometry's header (version 0, envelope code 5) is of no known version"),
                Arguments.of(changed(3, 0x21), "the geometry is of an extended type"),
                Arguments.of(changed(3, 0b1001), "the geometry is cut short at 29 bytes"),
                Arguments.of(changed(9, 8), "the geometry has arcs or surfaces (well-known binary type 8)"),
                Arguments.of(changed(9, 99), "the geometry is damaged ("),
                Arguments.of(Arrays.copyOf(POINT, 20), "the geometry is damaged ("),
                Arguments.of(nan, "a coordinate is (3.0, NaN) and not a place"),
                Arguments.of(many.array(), "the geometry is damaged ("),
                Arguments.of(nest.array(), "the geometry is damaged (nested too deep)"));
    }

    @ParameterizedTest
    @MethodSource("damagedGeometries")
    void refusesDamagedGeometries(byte[] blob, String message) {
        InputException e = assertThrows(InputException.class, () -> GeoPackageGeometry.parse(blob));
        assertTrue(e.getMessage().startsWith(message), e.getMessage());
        Refusals.requireUsable(e);
    }

    private static byte[] changed(int at, int value) {
        byte[] blob = POINT.clone();
        blob[at] = (byte) value;
        return blob;
    }

    @Test
    void refusesAGeometryThatIsText() throws SQLException {
        try (GeoPackageFixture fixture = geographic()) {
            fixture.table("t", 4326).run("INSERT INTO t VALUES (1, 'POINT (1 2)', 'a')");
        }
        assertEquals("layers.gpkg, table \"t\", feature 1: its geometry is not binary; export the table again",
                Refusals.of(Sources.plain(file())));
    }

    @ParameterizedTest
    @CsvSource({"0", "-1"})
    void refusesAnUndefinedCrsUnlessThePlanStatesOne(int srsId) throws SQLException {
        try (GeoPackageFixture fixture = geographic()) {
            fixture.table("t", srsId).row("t", 1, POINT, "a");
        }
        assertEquals("layers.gpkg, table \"t\": its CRS is undefined (srs_id " + srsId
                + "); state its \"crs\", for example EPSG:4326", Refusals.of(Sources.plain(file())));
        VectorLayer stated = VectorLayers.read(Sources.withCrs(file(), "EPSG:26917"));
        assertEquals(26917, stated.crs().epsg().orElseThrow());
    }

    @Test
    void readsTheCrsByCodeOrByDefinition() throws SQLException {
        String wkt = Crs.ofEpsg(32616).wkt();
        try (GeoPackageFixture fixture = new GeoPackageFixture(file())) {
            fixture.crs(100, "epsg", 32617, "nonsense").crs(101, "NONE", 101, wkt).crs(102, "EPSG", 999_999, wkt)
                    .crs(103, "NONE", 103, "undefined")
                    .crs(105, "NONE", 105, "PROJCRS[\"x\",ID[\"EPSG\",32618]]").table("second", 105).row("second", 1, POINT, "a")
                    .table("code", 100).row("code", 1, POINT, "a").table("text", 101).row("text", 1, POINT, "a")
                    .table("newer", 102).row("newer", 1, POINT, "a").table("neither", 103).row("neither", 1, POINT, "a")
                    .table("missing", 104).row("missing", 1, POINT, "a");
        }
        assertEquals(Crs.ofEpsg(32617), VectorLayers.read(Sources.withTable(file(), "code")).crs());
        assertEquals(Crs.ofEpsg(32616), VectorLayers.read(Sources.withTable(file(), "text")).crs());
        assertEquals(Crs.ofEpsg(32616), VectorLayers.read(Sources.withTable(file(), "newer")).crs());
        assertEquals(Crs.ofEpsg(32618), VectorLayers.read(Sources.withTable(file(), "second")).crs());
        assertTrue(Refusals.of(Sources.withTable(file(), "neither")).startsWith("layers.gpkg, table \"neither\": CRS \"undefined\" is not known"));
        assertTrue(Refusals.of(Sources.withTable(file(), "missing"))
                .startsWith("layers.gpkg, table \"missing\": its srs_id 104 is not in gpkg_spatial_ref_sys; state its"));
    }

    @Test
    void refusesWhatIsNoGeoPackage() throws Exception {
        Files.writeString(file(), "name,longitude,latitude");
        assertEquals("layers.gpkg, start: is no SQLite database and so no GeoPackage; export it again", Refusals.of(Sources.plain(file())));
        Files.delete(file());
        try (GeoPackageFixture fixture = geographic()) {
            fixture.run("DROP TABLE gpkg_contents");
        }
        assertTrue(Refusals.of(Sources.plain(file())).startsWith("layers.gpkg, list of tables: has no gpkg_contents or no"));
    }

    @Test
    void refusesAFileWithoutFeatureTables() throws SQLException {
        try (GeoPackageFixture fixture = geographic()) {
            fixture.run("CREATE TABLE notes (a TEXT)").run("INSERT INTO gpkg_contents VALUES ('notes', 'attributes', NULL)");
        }
        assertEquals("layers.gpkg, layer \"trial\": holds no feature table; give a GeoPackage with features", Refusals.of(Sources.plain(file())));
    }

    @Test
    void refusesATableThatIsRegisteredAndMissing() throws SQLException {
        try (GeoPackageFixture fixture = geographic()) {
            fixture.register("ghost", "geom", 4326).run("CREATE TABLE bare (a TEXT)").register("bare", "geom", 4326);
        }
        assertEquals("layers.gpkg, table \"bare\": has no column \"geom\", which gpkg_geometry_columns names as its geometry;"
                + " export it again", Refusals.of(Sources.withTable(file(), "bare")));
        assertTrue(Refusals.of(Sources.withTable(file(), "ghost")).startsWith("layers.gpkg, table \"ghost\": has no column \"geom\""));
    }

    @Test
    void refusesATruncatedDatabase() throws SQLException, IOException {
        try (GeoPackageFixture fixture = geographic()) {
            fixture.table("t", 4326).row("t", 1, POINT, "a");
        }
        byte[] whole = Files.readAllBytes(file());
        Files.write(file(), Arrays.copyOf(whole, whole.length / 3));
        assertEquals("layers.gpkg, start: is a database of whole pages of 4096 bytes, 6 of them, and the file has 8192 bytes; it is cut short, copy or export it again",
                Refusals.of(Sources.plain(file())));
    }

    private static String hex(byte[] bytes) {
        return HexFormat.of().formatHex(bytes);
    }
}
