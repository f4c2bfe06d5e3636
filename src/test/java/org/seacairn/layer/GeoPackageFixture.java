package org.seacairn.layer;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ByteOrderValues;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBWriter;
import org.locationtech.jts.io.WKTReader;

/** Writes tiny GeoPackages with plain SQL, so that a test can also write wrong ones. */
final class GeoPackageFixture implements AutoCloseable {
    private final Connection connection;

    GeoPackageFixture(Path file) throws SQLException {
        connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        // Nothing of this must survive a power cut, and waiting for the disk takes a second a file.
        run("PRAGMA synchronous = OFF");
        run("PRAGMA journal_mode = MEMORY");
        run("CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT, srs_id INTEGER PRIMARY KEY, organization TEXT,"
                + " organization_coordsys_id INTEGER, definition TEXT)");
        run("CREATE TABLE gpkg_contents (table_name TEXT PRIMARY KEY, data_type TEXT, srs_id INTEGER)");
        run("CREATE TABLE gpkg_geometry_columns (table_name TEXT, column_name TEXT, geometry_type_name TEXT, srs_id INTEGER, z TINYINT, m TINYINT)");
        run("INSERT INTO gpkg_spatial_ref_sys VALUES ('undefined', -1, 'NONE', -1, 'undefined'), ('undefined', 0, 'NONE', 0, 'undefined')");
    }

    GeoPackageFixture run(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
        return this;
    }

    GeoPackageFixture crs(int srsId, String organization, int code, String definition) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement("INSERT INTO gpkg_spatial_ref_sys VALUES ('x', ?, ?, ?, ?)")) {
            insert.setInt(1, srsId);
            insert.setString(2, organization);
            insert.setInt(3, code);
            insert.setString(4, definition);
            insert.executeUpdate();
        }
        return this;
    }

    /** Registers a table or view as features, without making it. */
    GeoPackageFixture register(String table, String geometryColumn, int srsId) throws SQLException {
        String name = "'" + table.replace("'", "''") + "'";
        run("INSERT INTO gpkg_contents VALUES (" + name + ", 'features', " + srsId + ")");
        return run("INSERT INTO gpkg_geometry_columns VALUES (" + name + ", '" + geometryColumn + "', 'GEOMETRY', " + srsId + ", 0, 0)");
    }

    /** Makes and registers a table {@code (fid, geom, name)}. */
    GeoPackageFixture table(String table, int srsId) throws SQLException {
        run("CREATE TABLE \"" + table.replace("\"", "\"\"") + "\" (fid INTEGER PRIMARY KEY, geom BLOB, name TEXT)");
        return register(table, "geom", srsId);
    }

    GeoPackageFixture row(String table, int fid, byte[] geometry, String name) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(
                "INSERT INTO \"" + table.replace("\"", "\"\"") + "\" (fid, geom, name) VALUES (?, ?, ?)")) {
            insert.setInt(1, fid);
            insert.setBytes(2, geometry);
            insert.setString(3, name);
            insert.executeUpdate();
        }
        return this;
    }

    /** A geometry blob: little endian, no envelope. */
    static byte[] blob(String wkt) {
        return blob(wkt, 2, ByteOrder.LITTLE_ENDIAN, 0, 0);
    }

    /** A geometry blob; the envelope's content, which no reader needs, is zero. */
    static byte[] blob(String wkt, int dimension, ByteOrder order, int envelopeCode, int otherFlags) {
        try {
            Geometry geometry = new WKTReader().read(wkt);
            byte[] wkb = new WKBWriter(dimension, order == ByteOrder.LITTLE_ENDIAN
                    ? ByteOrderValues.LITTLE_ENDIAN : ByteOrderValues.BIG_ENDIAN).write(geometry);
            int envelope = new int[] {0, 32, 48, 48, 64}[envelopeCode];
            int flags = (order == ByteOrder.LITTLE_ENDIAN ? 1 : 0) | envelopeCode << 1 | otherFlags;
            return ByteBuffer.allocate(8 + envelope + wkb.length).order(order)
                    .put((byte) 'G').put((byte) 'P').put((byte) 0).put((byte) flags).putInt(4326)
                    .position(8 + envelope).put(wkb).array();
        } catch (ParseException e) {
            throw new IllegalArgumentException(wkt, e);
        }
    }

    @Override
    public void close() throws SQLException {
        connection.close();
    }
}
