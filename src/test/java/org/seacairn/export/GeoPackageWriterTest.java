package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.WKBReader;
import org.seacairn.InputException;
import org.sqlite.Function;

// Requirements are those of OGC 12-128r18 (GeoPackage 1.3.1).
class GeoPackageWriterTest {
    @TempDir Path folder;
    private Path file;

    private static List<FeatureTable<?>> tables() {
        return List.of(FeatureTable.sites(Samples.plan(), Samples.sites()), FeatureTable.landingCircles(Samples.sites()),
                FeatureTable.keepOffBuffers(Samples.buffers()));
    }

    @BeforeEach
    void write() {
        file = folder.resolve("seacairn.gpkg");
        GeoPackageWriter.write(file, tables());
    }

    /** Rows as text, columns joined by a bar. */
    private List<String> query(String sql) throws SQLException {
        try (Connection db = open()) {
            return query(db, sql);
        }
    }

    private Connection open() throws SQLException {
        return DriverManager.getConnection("jdbc:sqlite:" + file);
    }

    private static List<String> query(Connection db, String sql) throws SQLException {
        try (Statement statement = db.createStatement(); ResultSet rows = statement.executeQuery(sql)) {
            List<String> lines = new ArrayList<>();
            while (rows.next()) {
                List<String> cells = new ArrayList<>();
                for (int i = 1; i <= rows.getMetaData().getColumnCount(); i++) {
                    cells.add(String.valueOf(rows.getString(i)));
                }
                lines.add(String.join("|", cells));
            }
            return lines;
        }
    }

    @Test
    void fileHeaderIsThatOfAGeoPackage() throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        // Requirement 1 and 2; offsets from the SQLite file format, section 1.3 (from memory).
        assertEquals("SQLite format 3\0", new String(bytes, 0, 16, StandardCharsets.US_ASCII));
        assertEquals("GPKG", new String(bytes, 68, 4, StandardCharsets.US_ASCII));
        assertEquals(10301, ByteBuffer.wrap(bytes).getInt(60));
        assertEquals(4096, ByteBuffer.wrap(bytes).getShort(16));
    }

    @Test
    void databaseIsSound() throws SQLException {
        // Requirements 6 and 7.
        assertEquals(List.of("ok"), query("PRAGMA integrity_check"));
        assertEquals(List.of(), query("PRAGMA foreign_key_check"));
        // SQLite's own check of an R-tree against its table structure.
        assertEquals(List.of("ok"), query("SELECT rtreecheck('rtree_sites_geom')"));
    }

    @Test
    void theThreeRequiredReferenceSystemsAreThere() throws SQLException {
        // Requirement 11, table of records.
        assertEquals(List.of("-1|NONE|-1|undefined", "0|NONE|0|undefined"), query(
                "SELECT srs_id, organization, organization_coordsys_id, definition FROM gpkg_spatial_ref_sys WHERE srs_id < 1 ORDER BY 1"));
        assertEquals(List.of("4326|EPSG|4326|GEOGCS[\"WGS 84\""), query("SELECT srs_id, organization,"
                + " organization_coordsys_id, substr(definition, 1, 15) FROM gpkg_spatial_ref_sys WHERE srs_id > 0"));
    }

    @Test
    void wgs84DefinitionIsReadByACrsLibrary() throws Exception {
        String wkt = query("SELECT definition FROM gpkg_spatial_ref_sys WHERE srs_id = 4326").get(0);
        assertEquals("EPSG:4326", org.apache.sis.referencing.IdentifiedObjects.toString(
                org.apache.sis.referencing.CRS.fromWKT(wkt).getIdentifiers().iterator().next()));
    }

    @Test
    void contentsListEachLayerWithItsExtentAndAFixedTime() throws SQLException {
        String fixed = "1970-01-01T00:00:00.000Z";
        assertEquals(List.of(
                "sites|features|sites|Ranked sites|" + fixed + "|-79.123456789123|27.2434|-79.1234|27.243666666666|4326",
                "keep_off_buffers|features|keep_off_buffers|Ground inside a keep-off distance|" + fixed
                        + "|0.0|0.0|8.12345679|3.0|4326"),
                query("SELECT * FROM gpkg_contents WHERE table_name != 'landing_circles'"));
        assertEquals(List.of("sites|geom|POINT|4326|0|0", "landing_circles|geom|POLYGON|4326|0|0",
                "keep_off_buffers|geom|MULTIPOLYGON|4326|0|0"), query("SELECT * FROM gpkg_geometry_columns"));
    }

    @Test
    void everyRowIsThereWithItsValues() throws SQLException {
        assertEquals(List.of("1|1|=S-01, \"<A&B>\"|-79.123456789123|1.25|@old wreck|27.243", "2|2|S-02|-79.1234|null|null|null"),
                query("SELECT fid, rank, site, longitude_deg, slope_deg, nearest_stone, release_latitude_deg FROM sites"));
        assertEquals(List.of("1|Shipping lanes|500.0|a rule|1", "2|cables|92.6|null|0"),
                query("SELECT fid, layer, distance_m, source, confirmed FROM keep_off_buffers"));
        assertEquals(List.of("1"), query("SELECT count(*) FROM landing_circles"));
    }

    @Test
    void columnsHaveTypesOfTheStandard() throws SQLException {
        // Requirement 5, table of data types.
        List<String> allowed = List.of("BOOLEAN", "INTEGER", "DOUBLE", "TEXT", "POINT", "POLYGON", "MULTIPOLYGON");
        for (FeatureTable<?> table : tables()) {
            List<String> types = query("SELECT type FROM pragma_table_info('" + table.name() + "')");
            assertEquals(table.columns().size() + 2, types.size());
            assertTrue(allowed.containsAll(types), types.toString());
        }
    }

    /** Requirement 19: the blob's header, then well-known binary. */
    @ParameterizedTest
    @ValueSource(strings = {"sites", "landing_circles", "keep_off_buffers"})
    void geometryHasItsHeaderAndEnvelope(String table) throws Exception {
        FeatureTable<?> expected = tables().stream().filter(t -> t.name().equals(table)).findFirst().orElseThrow();
        List<Geometry> geometries = geometries(expected);
        try (Connection db = open(); Statement sql = db.createStatement();
                ResultSet rows = sql.executeQuery("SELECT geom FROM " + table + " ORDER BY fid")) {
            for (Geometry geometry : geometries) {
                assertTrue(rows.next());
                byte[] blob = rows.getBytes(1);
                ByteBuffer header = ByteBuffer.wrap(blob).order(ByteOrder.LITTLE_ENDIAN);
                assertEquals("GP", new String(blob, 0, 2, StandardCharsets.US_ASCII));
                assertEquals(0, header.get(2));
                assertEquals(0b11, header.get(3));
                assertEquals(4326, header.getInt(4));
                assertEquals(geometry.getEnvelopeInternal(), new Envelope(
                        header.getDouble(8), header.getDouble(16), header.getDouble(24), header.getDouble(32)));
                assertTrue(geometry.equalsExact(new WKBReader().read(Arrays.copyOfRange(blob, 40, blob.length))));
            }
        }
    }

    private static <T> List<Geometry> geometries(FeatureTable<T> table) {
        return table.rows().stream().map(table.geometry()).toList();
    }

    /** Annex F.3: one entry a row, 32-bit bounds rounded outward, and the extension registered. */
    @Test
    void indexHoldsTheBoundsOfEveryRow() throws SQLException {
        for (FeatureTable<?> table : tables()) {
            List<Geometry> geometries = geometries(table);
            List<String> rows = query("SELECT id, minx, maxx, miny, maxy FROM rtree_" + table.name() + "_geom ORDER BY id");
            assertEquals(geometries.size(), rows.size());
            for (int i = 0; i < rows.size(); i++) {
                double[] row = Arrays.stream(rows.get(i).split("\\|")).mapToDouble(Double::parseDouble).toArray();
                assertEquals(i + 1, row[0]);
                Envelope box = geometries.get(i).getEnvelopeInternal();
                Envelope indexed = new Envelope(row[1], row[2], row[3], row[4]);
                assertTrue(indexed.contains(box), rows.get(i));
                box.expandBy(2e-5);
                assertTrue(box.contains(indexed), rows.get(i));
            }
        }
        assertEquals(List.of(
                "sites|geom|gpkg_rtree_index|http://www.geopackage.org/spec131/#extension_rtree|write-only",
                "landing_circles|geom|gpkg_rtree_index|http://www.geopackage.org/spec131/#extension_rtree|write-only",
                "keep_off_buffers|geom|gpkg_rtree_index|http://www.geopackage.org/spec131/#extension_rtree|write-only"),
                query("SELECT * FROM gpkg_extensions"));
        assertEquals(List.of("CREATE VIRTUAL TABLE \"rtree_sites_geom\" USING rtree(id, minx, maxx, miny, maxy)"),
                query("SELECT sql FROM sqlite_master WHERE name = 'rtree_sites_geom'"));
    }

    /** The triggers, with the functions that a GeoPackage program brings along. */
    @Test
    void indexFollowsEdits() throws SQLException {
        try (Connection db = open(); Statement sql = db.createStatement()) {
            for (int i = 0; i < 4; i++) {
                int offset = 8 + 8 * i;
                Function.create(db, List.of("ST_MinX", "ST_MaxX", "ST_MinY", "ST_MaxY").get(i), new Function() {
                    @Override
                    protected void xFunc() throws SQLException {
                        result(ByteBuffer.wrap(value_blob(0)).order(ByteOrder.LITTLE_ENDIAN).getDouble(offset));
                    }
                });
            }
            Function.create(db, "ST_IsEmpty", new Function() {
                @Override
                protected void xFunc() throws SQLException {
                    result(value_blob(0) == null ? 1 : 0);
                }
            });
            String ids = "SELECT id, round(minx) FROM rtree_sites_geom ORDER BY id";
            assertEquals(List.of("1|-79.0", "2|-79.0"), query(db, ids));
            sql.execute("INSERT INTO sites (fid, geom) SELECT 7, geom FROM keep_off_buffers WHERE fid = 2");
            assertEquals(List.of("1|-79.0", "2|-79.0", "7|5.0"), query(db, ids));
            sql.execute("UPDATE sites SET geom = (SELECT geom FROM sites WHERE fid = 7) WHERE fid = 1");
            assertEquals(List.of("1|5.0", "2|-79.0", "7|5.0"), query(db, ids));
            sql.execute("UPDATE sites SET geom = NULL WHERE fid = 1");
            assertEquals(List.of("2|-79.0", "7|5.0"), query(db, ids));
            sql.execute("UPDATE sites SET geom = (SELECT geom FROM sites WHERE fid = 7) WHERE fid = 1");
            assertEquals(List.of("1|5.0", "2|-79.0", "7|5.0"), query(db, ids));
            sql.execute("UPDATE sites SET fid = 9 WHERE fid = 7");
            assertEquals(List.of("1|5.0", "2|-79.0", "9|5.0"), query(db, ids));
            sql.execute("UPDATE sites SET fid = 8, geom = NULL WHERE fid = 9");
            assertEquals(List.of("1|5.0", "2|-79.0"), query(db, ids));
            sql.execute("INSERT INTO sites (fid, geom) SELECT 2, geom FROM keep_off_buffers WHERE fid = 2"
                    + " ON CONFLICT (fid) DO UPDATE SET geom = excluded.geom");
            assertEquals(List.of("1|5.0", "2|5.0"), query(db, ids));
            sql.execute("DELETE FROM sites WHERE fid = 1");
            assertEquals(List.of("2|5.0"), query(db, ids));
        }
    }

    @Test
    void sameTablesGiveTheSameBytes() throws IOException {
        byte[] first = Files.readAllBytes(file);
        Path again = folder.resolve("again.gpkg");
        GeoPackageWriter.write(again, tables());
        assertArrayEquals(first, Files.readAllBytes(again));
        GeoPackageWriter.write(file, tables());
        assertArrayEquals(first, Files.readAllBytes(file));
    }

    @Test
    void layerWithoutRowsHasNoExtent() throws SQLException {
        GeoPackageWriter.write(file, List.of(FeatureTable.sites(Samples.plan(), List.of())));
        assertEquals(List.of("sites|null|null|null|null"), query("SELECT table_name, min_x, min_y, max_x, max_y FROM gpkg_contents"));
        assertEquals(List.of("0"), query("SELECT count(*) FROM rtree_sites_geom"));
    }

    @Test
    void nothingButTheFileIsLeftInTheFolder() throws IOException {
        try (var files = Files.list(folder)) {
            assertEquals(List.of(file), files.toList());
        }
    }

    @Test
    void oddPathsAreNotTakenForOptions() throws IOException {
        Path odd = Files.createDirectory(folder.resolve("we?ird=1&b #%20 é")).resolve("a.gpkg");
        GeoPackageWriter.write(odd, tables());
        assertArrayEquals(Files.readAllBytes(file), Files.readAllBytes(odd));
    }

    @Test
    void fileThatCannotBeWrittenIsNamed() {
        InputException e = assertThrows(InputException.class,
                () -> GeoPackageWriter.write(folder.resolve("no/seacairn.gpkg"), tables()));
        assertTrue(e.getMessage().startsWith("cannot write seacairn.gpkg: "), e.getMessage());
        assertTrue(e.getMessage().endsWith("; check space and permission"), e.getMessage());
    }
}
