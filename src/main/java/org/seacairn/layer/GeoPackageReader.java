package org.seacairn.layer;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.layer.GeoPackageCatalog.Column;
import org.seacairn.layer.GeoPackageCatalog.FeatureTable;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.plan.Suggestion;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;

/**
 * Reads one feature table or view of a GeoPackage (GeoPackage Encoding Standard, OGC 12-128r18). The file is opened so that nothing is ever written beside it. Coordinates are x, y as stored,
 * which the standard fixes as easting or longitude first whatever the CRS's own axis order. A feature's
 * id is its integer primary key, or its place in the table. Binary attributes are left out.
 */
final class GeoPackageReader implements VectorReader {
    private static final int HEADER_BYTES = 100;
    private static final byte[] SQLITE = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

    @Override
    public String format() {
        return "GeoPackage";
    }

    @Override
    public List<String> extensions() {
        return List.of(".gpkg");
    }

    @Override
    public boolean hasTables() {
        return true;
    }

    @Override
    public VectorLayer read(LayerFile source) {
        Path file = source.file();
        requireSettledDatabase(file);
        try (Connection connection = open(file)) {
            GeoPackageBounds bounds = GeoPackageBounds.set(connection, file, Files.size(file));
            GeoPackageCatalog catalog = new GeoPackageCatalog(connection, bounds);
            FeatureTable table = choose(source, tables(file, catalog));
            List<String> notes = new ArrayList<>();
            Crs crs = LayerCrs.choose(source, () -> crs(file, catalog, table), notes);
            List<Feature> features = new ArrayList<>();
            int without = readRows(file, connection, bounds, catalog.columns(table.name()), table, features);
            return new VectorLayer(source.label(), file, format(), crs, source.edges(), List.copyOf(features), without, List.copyOf(notes));
        } catch (SQLException e) {
            throw damaged(file, e);
        } catch (IOException e) {
            throw VectorReader.problem(file, "the file", "cannot be read (" + e.getMessage() + "); check the file", e);
        }
    }

    private static Connection open(Path file) throws SQLException {
        SqliteLibrary.load();
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        // Immutable: no lock, no log and no shared-memory file appear beside the data.
        return config.createConnection("jdbc:sqlite:" + file.toUri() + "?immutable=1");
    }

    private static void requireSettledDatabase(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] header = in.readNBytes(HEADER_BYTES);
            if (!Arrays.equals(SQLITE, Arrays.copyOf(header, SQLITE.length))) {
                throw VectorReader.problem(file, "start", "is no SQLite database and so no GeoPackage; export it again");
            }
            requireWhole(file, ByteBuffer.wrap(Arrays.copyOf(header, HEADER_BYTES)));
            // An immutable database is read without its log, which may hold the newest features.
            for (String log : List.of("-wal", "-journal")) {
                Path beside = file.resolveSibling(file.getFileName() + log);
                if (Files.exists(beside) && Files.size(beside) > 0) {
                    throw VectorReader.problem(file, "its log " + beside.getFileName(),
                            "holds changes that are not in the GeoPackage yet; close the program that has it open, "
                                    + "or open and close it there once");
                }
            }
        } catch (IOException e) {
            throw VectorReader.problem(file, "start", "cannot be read (" + e.getMessage() + "); check the file", e);
        }
    }

    /** SQLite reads what is missing at the end of a page as zeros (SQLite file format, section 1.3). */
    private static void requireWhole(Path file, ByteBuffer header) throws IOException {
        int stated = Short.toUnsignedInt(header.getShort(16));
        long pageBytes = stated == 1 ? 65_536 : stated;
        // The number of pages holds only where the last writer kept it.
        boolean counted = header.getInt(24) == header.getInt(92);
        long bytes = Files.size(file);
        if (counted && Integer.toUnsignedLong(header.getInt(28)) * pageBytes > bytes || pageBytes > 0 && bytes % pageBytes != 0) {
            throw VectorReader.problem(file, "start", "is a database of whole pages of " + pageBytes + " bytes"
                    + (counted ? ", " + Integer.toUnsignedLong(header.getInt(28)) + " of them" : "") + ", and the file has " + bytes
                    + " bytes; it is cut short, copy or export it again");
        }
    }

    private static List<FeatureTable> tables(Path file, GeoPackageCatalog catalog) throws SQLException {
        try {
            return catalog.featureTables();
        } catch (InputException e) {
            throw VectorReader.problem(file, "list of tables", e.getMessage(), e);
        }
    }

    private static FeatureTable choose(LayerFile source, List<FeatureTable> tables) {
        String place = "layer \"" + source.label() + "\"";
        if (tables.isEmpty()) {
            throw VectorReader.problem(source.file(), place, "holds no feature table; give a GeoPackage with features");
        }
        List<String> names = tables.stream().map(FeatureTable::name).toList();
        String listed = names.stream().map(n -> "\"" + n + "\"").collect(Collectors.joining(", "));
        if (source.table().isEmpty()) {
            if (tables.size() == 1) {
                return tables.get(0);
            }
            throw VectorReader.problem(source.file(), place,
                    "holds " + tables.size() + " feature tables; name one as \"table\", from " + listed);
        }
        String wanted = source.table().get();
        return tables.stream().filter(t -> t.name().equals(wanted)).findFirst()
                .or(() -> tables.stream().filter(t -> t.name().equalsIgnoreCase(wanted)).findFirst())
                .orElseThrow(() -> VectorReader.problem(source.file(), place, "has no feature table \"" + wanted + "\""
                        + Suggestion.nearest(wanted, names).map(near -> " (did you mean \"" + near + "\"?)").orElse("")
                        + "; name one from " + listed));
    }

    private static Crs crs(Path file, GeoPackageCatalog catalog, FeatureTable table) {
        try {
            return catalog.crs(table);
        } catch (InputException e) {
            throw VectorReader.problem(file, "table \"" + table.name() + "\"", e.getMessage(), e);
        } catch (SQLException e) {
            throw damaged(file, e);
        }
    }

    /** Reads the rows and returns how many of them have no geometry. */
    private static int readRows(Path file, Connection connection, GeoPackageBounds bounds, List<Column> columns, FeatureTable table,
            List<Feature> into) throws SQLException {
        // SQLite holds names apart that differ in the case of letters beyond ASCII.
        Column geometryColumn = columns.stream().filter(c -> c.name().equals(table.geometryColumn())).findFirst()
                .or(() -> columns.stream().filter(c -> c.name().equalsIgnoreCase(table.geometryColumn())).findFirst())
                .orElseThrow(() -> VectorReader.problem(file, "table \"" + table.name() + "\"", "has no column \""
                        + table.geometryColumn() + "\", which gpkg_geometry_columns names as its geometry; export it again"));
        int geometryAt = columns.indexOf(geometryColumn);
        int keyAt = integerKey(columns);
        int without = 0;
        int place = 0;
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT "
                        + columns.stream().map(c -> GeoPackageCatalog.quoted(c.name())).collect(Collectors.joining(", "))
                        + " FROM " + GeoPackageCatalog.quoted(table.name()))) {
            while (row.next()) {
                bounds.requireRow(table.name(), ++place);
                long id = keyAt < 0 ? place : row.getLong(keyAt + 1);
                Geometry geometry = geometry(file, table, id, row.getObject(geometryAt + 1));
                if (geometry == null) {
                    without++;
                } else {
                    into.add(new Feature(id, geometry, attributes(row, columns, geometryAt)));
                }
            }
        }
        return without;
    }

    /** Index of the only column of the primary key if it is an integer, else -1. */
    private static int integerKey(List<Column> columns) {
        List<Column> key = columns.stream().filter(c -> c.placeInKey() > 0).toList();
        return key.size() == 1 && key.get(0).type().contains("INT") ? columns.indexOf(key.get(0)) : -1;
    }

    private static Geometry geometry(Path file, FeatureTable table, long id, Object value) {
        String place = "table \"" + table.name() + "\", feature " + id;
        if (value != null && !(value instanceof byte[])) {
            throw VectorReader.problem(file, place, "its geometry is not binary; export the table again");
        }
        try {
            return value == null ? null : GeoPackageGeometry.parse((byte[]) value);
        } catch (InputException e) {
            throw VectorReader.problem(file, place, e.getMessage(), e);
        }
    }

    private static Map<String, Object> attributes(ResultSet row, List<Column> columns, int geometryAt) throws SQLException {
        Map<String, Object> attributes = new LinkedHashMap<>();
        for (int i = 0; i < columns.size(); i++) {
            Object value = i == geometryAt ? null : row.getObject(i + 1);
            if (i == geometryAt || value instanceof byte[]) {
                continue;
            }
            boolean flag = columns.get(i).type().equals("BOOLEAN") && value instanceof Number;
            attributes.put(columns.get(i).name(), flag ? Boolean.valueOf(((Number) value).intValue() != 0) : value);
        }
        return attributes;
    }

    private static InputException damaged(Path file, SQLException e) {
        if (e.getErrorCode() == SQLiteErrorCode.SQLITE_INTERRUPT.code) {
            return VectorReader.problem(file, "database", GeoPackageBounds.TOO_MUCH, e);
        }
        String message = String.valueOf(e.getMessage()).lines().findFirst().orElse("no reason given");
        return VectorReader.problem(file, "database", "cannot be read (" + message + "); check the file or export it again", e);
    }
}
