package org.seacairn.export;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.layer.SqliteLibrary;

/**
 * OGC GeoPackage 1.3.1 (OGC 12-128r18): feature tables in EPSG:4326, each with an R-tree index. The
 * same tables give the same bytes: one fixed time of change, one transaction, pages of one size,
 * cleared before use.
 */
public final class GeoPackageWriter {
    private static final int BATCH = 1000;

    private GeoPackageWriter() {}

    /**
     * Writes a new GeoPackage, replacing one that is there.
     *
     * @throws org.seacairn.InputException if the file cannot be written
     */
    public static void write(Path file, List<FeatureTable<?>> tables) {
        SqliteLibrary.load();
        try {
            Files.deleteIfExists(file);
            // As a URI, so that no character of the path is taken for an option.
            try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + file.toUri())) {
                fill(db, tables);
            }
        } catch (IOException | SQLException e) {
            throw OutputFile.cannotWrite(file, e);
        }
    }

    private static void fill(Connection db, List<FeatureTable<?>> tables) throws SQLException {
        try (Statement sql = db.createStatement()) {
            run(sql, GeoPackageSchema.FILE);
            db.setAutoCommit(false);
            run(sql, GeoPackageSchema.TABLES);
            for (FeatureTable<?> table : tables) {
                addTable(db, sql, table);
            }
            db.commit();
        }
    }

    private static void run(Statement sql, List<String> statements) throws SQLException {
        for (String statement : statements) {
            sql.execute(statement);
        }
    }

    private static <T> void addTable(Connection db, Statement sql, FeatureTable<T> table) throws SQLException {
        sql.execute(createTable(table));
        List<Geometry> geometries = table.rows().stream().map(table.geometry()).toList();
        Envelope extent = new Envelope();
        geometries.forEach(geometry -> extent.expandToInclude(geometry.getEnvelopeInternal()));
        register(db, table, extent);
        insertRows(db, table, geometries);
        sql.execute(GeoPackageSchema.createIndex(table.name()));
        fillIndex(db, table.name(), geometries);
        // After the rows: the triggers call functions that only a GeoPackage program has.
        run(sql, GeoPackageSchema.indexTriggers(table.name()));
    }

    private static String createTable(FeatureTable<?> table) {
        String columns = table.columns().stream()
                .map(column -> ", \"" + column.name() + "\" " + GeoPackageSchema.type(column.kind()))
                .collect(Collectors.joining());
        return "CREATE TABLE \"" + table.name() + "\" (fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, geom "
                + table.shape() + columns + ")";
    }

    private static void register(Connection db, FeatureTable<?> table, Envelope extent) throws SQLException {
        boolean empty = extent.isNull();
        update(db, "INSERT INTO gpkg_contents VALUES (?, 'features', ?, ?, ?, ?, ?, ?, ?, ?)",
                table.name(), table.name(), table.description(), GeoPackageSchema.LAST_CHANGE,
                empty ? null : extent.getMinX(), empty ? null : extent.getMinY(),
                empty ? null : extent.getMaxX(), empty ? null : extent.getMaxY(), GeoPackageSchema.SRS_ID);
        update(db, "INSERT INTO gpkg_geometry_columns VALUES (?, 'geom', ?, ?, 0, 0)",
                table.name(), table.shape().name(), GeoPackageSchema.SRS_ID);
        update(db, "INSERT INTO gpkg_extensions VALUES (?, 'geom', 'gpkg_rtree_index', ?, 'write-only')",
                table.name(), GeoPackageSchema.RTREE_DEFINITION);
    }

    private static <T> void insertRows(Connection db, FeatureTable<T> table, List<Geometry> geometries)
            throws SQLException {
        String marks = ", ?".repeat(table.columns().size());
        try (PreparedStatement insert =
                db.prepareStatement("INSERT INTO \"" + table.name() + "\" VALUES (?, ?" + marks + ")")) {
            for (int row = 0; row < geometries.size(); row++) {
                insert.setInt(1, row + 1);
                insert.setBytes(2, GeoPackageGeometry.encode(geometries.get(row)));
                for (int i = 0; i < table.columns().size(); i++) {
                    insert.setObject(i + 3, table.columns().get(i).value(table.rows().get(row)));
                }
                add(insert, row + 1);
            }
            insert.executeBatch();
        }
    }

    private static void fillIndex(Connection db, String table, List<Geometry> geometries) throws SQLException {
        String sql = "INSERT INTO \"rtree_" + table + "_geom\" VALUES (?, ?, ?, ?, ?)";
        try (PreparedStatement insert = db.prepareStatement(sql)) {
            for (int row = 0; row < geometries.size(); row++) {
                Envelope box = geometries.get(row).getEnvelopeInternal();
                insert.setInt(1, row + 1);
                insert.setDouble(2, box.getMinX());
                insert.setDouble(3, box.getMaxX());
                insert.setDouble(4, box.getMinY());
                insert.setDouble(5, box.getMaxY());
                add(insert, row + 1);
            }
            insert.executeBatch();
        }
    }

    /** In batches: executed one by one, the driver asks for the key of each row that it has inserted. */
    private static void add(PreparedStatement insert, int rows) throws SQLException {
        insert.addBatch();
        if (rows % BATCH == 0) {
            insert.executeBatch();
        }
    }

    private static void update(Connection db, String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = db.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            statement.executeUpdate();
        }
    }
}
