package org.seacairn.layer;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;

/** What the metadata tables of a GeoPackage tell. Problems are thrown without a place. */
final class GeoPackageCatalog {
    /** A row of gpkg_geometry_columns; the name may be that of a view. */
    record FeatureTable(String name, String geometryColumn, int srsId) {}

    /** A column of a table; its place in the primary key is 0 outside the key. */
    record Column(String name, String type, int placeInKey) {}

    private final Connection connection;
    private final GeoPackageBounds bounds;

    GeoPackageCatalog(Connection connection, GeoPackageBounds bounds) {
        this.connection = connection;
        this.bounds = bounds;
    }

    /** @throws InputException if the database has no such metadata */
    List<FeatureTable> featureTables() throws SQLException {
        List<FeatureTable> tables = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT g.table_name, g.column_name, g.srs_id"
                        + " FROM gpkg_contents c JOIN gpkg_geometry_columns g ON lower(g.table_name) = lower(c.table_name)"
                        // The last is what GDAL leaves in a file without any layer.
                        + " WHERE c.data_type = 'features' AND c.table_name <> 'ogr_empty_table' ORDER BY g.table_name")) {
            while (row.next()) {
                bounds.requireRow("gpkg_contents", tables.size());
                tables.add(new FeatureTable(row.getString(1), row.getString(2), row.getInt(3)));
            }
        } catch (SQLException e) {
            if (String.valueOf(e.getMessage()).contains("no such table")) {
                throw new InputException("has no gpkg_contents or no gpkg_geometry_columns, so it is no GeoPackage with features;"
                        + " export it again", e);
            }
            throw e;
        }
        return tables;
    }

    /** @throws InputException if the table's CRS is undefined, missing or unknown */
    Crs crs(FeatureTable table) throws SQLException {
        // The standard's two undefined systems: 0 geographic, -1 cartesian.
        if (table.srsId() == 0 || table.srsId() == -1) {
            throw new InputException("its CRS is undefined (srs_id " + table.srsId() + ")" + LayerCrs.REMEDY);
        }
        try (PreparedStatement statement = connection.prepareStatement(
                "SELECT organization, organization_coordsys_id, definition FROM gpkg_spatial_ref_sys WHERE srs_id = ?")) {
            statement.setInt(1, table.srsId());
            try (ResultSet row = statement.executeQuery()) {
                if (!row.next()) {
                    throw new InputException("its srs_id " + table.srsId() + " is not in gpkg_spatial_ref_sys" + LayerCrs.REMEDY);
                }
                return crs(row.getString(1), row.getInt(2), String.valueOf(row.getString(3)));
            }
        }
    }

    private static Crs crs(String organization, int code, String definition) {
        if ("EPSG".equalsIgnoreCase(organization)) {
            try {
                return Crs.ofEpsg(code);
            } catch (InputException newerThanOurDataSet) {
                try {
                    return LayerCrs.parse(definition);
                } catch (InputException e) {
                    throw new InputException(newerThanOurDataSet.getMessage(), e);
                }
            }
        }
        return LayerCrs.parse(definition);
    }

    List<Column> columns(String table) throws SQLException {
        List<Column> columns = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("PRAGMA table_info(" + quoted(table) + ")")) {
            while (row.next()) {
                String type = row.getString("type");
                columns.add(new Column(row.getString("name"),
                        type == null ? "" : type.toUpperCase(Locale.ROOT), row.getInt("pk")));
            }
        }
        return columns;
    }

    /** The name as an SQL identifier, whatever characters it has. */
    static String quoted(String name) {
        return '"' + name.replace("\"", "\"\"") + '"';
    }
}
