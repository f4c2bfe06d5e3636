package org.seacairn.sample;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ByteOrderValues;
import org.locationtech.jts.io.WKBWriter;

/** Writes a small OGC GeoPackage 1.3 in longitude and latitude, without spatial index. */
final class GeoPackageFile {
    /** One table: a text column beside the geometry. */
    record Table(String name, String geometryType, String column, List<Row> rows) {}

    record Row(String text, Geometry geometry) {}

    private static final int SRS = 4326;
    /** Fixed, so that the same rows give the same file. */
    private static final String LAST_CHANGE = "2026-01-01T00:00:00.000Z";
    private static final String WGS84 = "GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\","
            + "SPHEROID[\"WGS 84\",6378137,298.257223563,AUTHORITY[\"EPSG\",\"7030\"]],AUTHORITY[\"EPSG\",\"6326\"]],"
            + "PRIMEM[\"Greenwich\",0,AUTHORITY[\"EPSG\",\"8901\"]],"
            + "UNIT[\"degree\",0.0174532925199433,AUTHORITY[\"EPSG\",\"9122\"]],AUTHORITY[\"EPSG\",\"4326\"]]";

    private GeoPackageFile() {}

    /** @param file must not exist */
    static void write(Path file, List<Table> tables) throws SQLException {
        try (Connection database = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement sql = database.createStatement()) {
            sql.execute("PRAGMA journal_mode = OFF");
            sql.execute("PRAGMA page_size = 1024");
            sql.execute("PRAGMA application_id = 0x47504B47");
            sql.execute("PRAGMA user_version = 10300");
            database.setAutoCommit(false);
            createStandardTables(database, sql);
            for (Table table : tables) {
                add(database, sql, table);
            }
            database.commit();
        }
    }

    private static void createStandardTables(Connection database, Statement sql) throws SQLException {
        sql.execute("""
                CREATE TABLE gpkg_spatial_ref_sys (
                  srs_name TEXT NOT NULL, srs_id INTEGER PRIMARY KEY, organization TEXT NOT NULL,
                  organization_coordsys_id INTEGER NOT NULL, definition TEXT NOT NULL, description TEXT)""");
        sql.execute("""
                CREATE TABLE gpkg_contents (
                  table_name TEXT NOT NULL PRIMARY KEY, data_type TEXT NOT NULL, identifier TEXT UNIQUE,
                  description TEXT DEFAULT '',
                  last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
                  min_x DOUBLE, min_y DOUBLE, max_x DOUBLE, max_y DOUBLE, srs_id INTEGER,
                  CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id))""");
        sql.execute("""
                CREATE TABLE gpkg_geometry_columns (
                  table_name TEXT NOT NULL, column_name TEXT NOT NULL, geometry_type_name TEXT NOT NULL,
                  srs_id INTEGER NOT NULL, z TINYINT NOT NULL, m TINYINT NOT NULL,
                  CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name),
                  CONSTRAINT uk_gc_table_name UNIQUE (table_name),
                  CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
                  CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id))""");
        try (PreparedStatement insert = database.prepareStatement(
                "INSERT INTO gpkg_spatial_ref_sys VALUES (?, ?, ?, ?, ?, NULL)")) {
            insertAll(insert, "Undefined Cartesian", -1, "NONE", -1, "undefined");
            insertAll(insert, "Undefined geographic", 0, "NONE", 0, "undefined");
            insertAll(insert, "WGS 84", SRS, "EPSG", SRS, WGS84);
        }
    }

    private static void add(Connection database, Statement sql, Table table) throws SQLException {
        sql.execute("CREATE TABLE " + table.name() + " (fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, geom "
                + table.geometryType() + ", " + table.column() + " TEXT)");
        Envelope all = new Envelope();
        table.rows().forEach(row -> all.expandToInclude(row.geometry().getEnvelopeInternal()));
        try (PreparedStatement insert = database.prepareStatement(
                "INSERT INTO gpkg_contents VALUES (?, 'features', ?, '', ?, ?, ?, ?, ?, ?)")) {
            insertAll(insert, table.name(), table.name(), LAST_CHANGE,
                    all.getMinX(), all.getMinY(), all.getMaxX(), all.getMaxY(), SRS);
        }
        try (PreparedStatement insert = database.prepareStatement(
                "INSERT INTO gpkg_geometry_columns VALUES (?, 'geom', ?, ?, 0, 0)")) {
            insertAll(insert, table.name(), table.geometryType(), SRS);
        }
        try (PreparedStatement insert = database.prepareStatement(
                "INSERT INTO " + table.name() + " (geom, " + table.column() + ") VALUES (?, ?)")) {
            for (Row row : table.rows()) {
                insertAll(insert, blob(row.geometry()), row.text());
            }
        }
    }

    private static void insertAll(PreparedStatement insert, Object... values) throws SQLException {
        for (int i = 0; i < values.length; i++) {
            insert.setObject(i + 1, values[i]);
        }
        insert.executeUpdate();
    }

    /** GeoPackage binary: magic, version 0, flags (envelope xy, little-endian), CRS, envelope, then WKB. */
    private static byte[] blob(Geometry geometry) {
        byte[] wkb = new WKBWriter(2, ByteOrderValues.LITTLE_ENDIAN).write(geometry);
        Envelope box = geometry.getEnvelopeInternal();
        return ByteBuffer.allocate(40 + wkb.length).order(ByteOrder.LITTLE_ENDIAN)
                .put((byte) 'G').put((byte) 'P').put((byte) 0).put((byte) 0b0000_0011).putInt(SRS)
                .putDouble(box.getMinX()).putDouble(box.getMaxX()).putDouble(box.getMinY()).putDouble(box.getMaxY())
                .put(wkb).array();
    }
}
