package org.seacairn.export;

import java.util.List;

/**
 * The SQL of a GeoPackage 1.3.1 with R-tree indexes (OGC 12-128r18, annex C and annex F.3).
 *
 * <p>One deviation, which the standard itself recommends from 1.4 on: triggers {@code update5},
 * {@code update6} and {@code update7} stand in for {@code update3} and {@code update1}, which fail on
 * upserts. The version stays at 1.3.1 because programs of 2023 warn about anything newer.
 */
final class GeoPackageSchema {
    static final int SRS_ID = 4326;
    /** No clock in any output: the standard wants a time here, so it is always the same one. */
    static final String LAST_CHANGE = "1970-01-01T00:00:00.000Z";
    static final String RTREE_DEFINITION = "http://www.geopackage.org/spec131/#extension_rtree";

    /** Settings of an empty file. No journal: a file that is not finished is thrown away whole. */
    static final List<String> FILE = List.of(
            "PRAGMA page_size = 4096",
            "PRAGMA encoding = 'UTF-8'",
            "PRAGMA journal_mode = OFF",
            "PRAGMA synchronous = OFF",
            "PRAGMA secure_delete = ON",
            // 64 MB: the index of a million rows is built in memory.
            "PRAGMA cache_size = -65536",
            "PRAGMA application_id = " + 0x47504B47,
            "PRAGMA user_version = 10301");

    /**
     * The tables that every GeoPackage with features has, and the three reference systems it must name.
     * The definition has the axes of the authority; a geometry is longitude first whatever it says
     * (2.1.3, from memory).
     */
    static final List<String> TABLES = List.of(
            """
            CREATE TABLE gpkg_spatial_ref_sys (
              srs_name TEXT NOT NULL,
              srs_id INTEGER PRIMARY KEY,
              organization TEXT NOT NULL,
              organization_coordsys_id INTEGER NOT NULL,
              definition TEXT NOT NULL,
              description TEXT
            )""",
            """
            CREATE TABLE gpkg_contents (
              table_name TEXT NOT NULL PRIMARY KEY,
              data_type TEXT NOT NULL,
              identifier TEXT UNIQUE,
              description TEXT DEFAULT '',
              last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
              min_x DOUBLE,
              min_y DOUBLE,
              max_x DOUBLE,
              max_y DOUBLE,
              srs_id INTEGER,
              CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id)
            )""",
            """
            CREATE TABLE gpkg_geometry_columns (
              table_name TEXT NOT NULL,
              column_name TEXT NOT NULL,
              geometry_type_name TEXT NOT NULL,
              srs_id INTEGER NOT NULL,
              z TINYINT NOT NULL,
              m TINYINT NOT NULL,
              CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name),
              CONSTRAINT uk_gc_table_name UNIQUE (table_name),
              CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
              CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id)
            )""",
            """
            CREATE TABLE gpkg_extensions (
              table_name TEXT,
              column_name TEXT,
              extension_name TEXT NOT NULL,
              definition TEXT NOT NULL,
              scope TEXT NOT NULL,
              CONSTRAINT ge_tce UNIQUE (table_name, column_name, extension_name)
            )""",
            """
            INSERT INTO gpkg_spatial_ref_sys VALUES
              ('Undefined cartesian SRS', -1, 'NONE', -1, 'undefined', 'undefined cartesian coordinates'),
              ('Undefined geographic SRS', 0, 'NONE', 0, 'undefined', 'undefined geographic coordinates'),
              ('WGS 84 geodetic', 4326, 'EPSG', 4326,
               'GEOGCS["WGS 84",DATUM["WGS_1984",SPHEROID["WGS 84",6378137,298.257223563,AUTHORITY["EPSG","7030"]],\
            AUTHORITY["EPSG","6326"]],PRIMEM["Greenwich",0,AUTHORITY["EPSG","8901"]],\
            UNIT["degree",0.0174532925199433,AUTHORITY["EPSG","9122"]],AXIS["Latitude",NORTH],AXIS["Longitude",EAST],\
            AUTHORITY["EPSG","4326"]]',
               'longitude and latitude in degrees on the WGS 84 ellipsoid')""");

    /** {t} stands for the table; its key is fid and its geometry geom. */
    private static final List<String> INDEX_TRIGGERS = List.of(
            """
            CREATE TRIGGER "rtree_{t}_geom_insert" AFTER INSERT ON "{t}"
              WHEN (NEW."geom" NOT NULL AND NOT ST_IsEmpty(NEW."geom"))
            BEGIN
              INSERT OR REPLACE INTO "rtree_{t}_geom" VALUES (
                NEW."fid",
                ST_MinX(NEW."geom"), ST_MaxX(NEW."geom"),
                ST_MinY(NEW."geom"), ST_MaxY(NEW."geom")
              );
            END""",
            """
            CREATE TRIGGER "rtree_{t}_geom_update2" AFTER UPDATE OF "geom" ON "{t}"
              WHEN OLD."fid" = NEW."fid" AND
                   (NEW."geom" ISNULL OR ST_IsEmpty(NEW."geom"))
            BEGIN
              DELETE FROM "rtree_{t}_geom" WHERE id = OLD."fid";
            END""",
            """
            CREATE TRIGGER "rtree_{t}_geom_update4" AFTER UPDATE ON "{t}"
              WHEN OLD."fid" != NEW."fid" AND
                   (NEW."geom" ISNULL OR ST_IsEmpty(NEW."geom"))
            BEGIN
              DELETE FROM "rtree_{t}_geom" WHERE id IN (OLD."fid", NEW."fid");
            END""",
            """
            CREATE TRIGGER "rtree_{t}_geom_update5" AFTER UPDATE ON "{t}"
              WHEN OLD."fid" != NEW."fid" AND
                   (NEW."geom" NOTNULL AND NOT ST_IsEmpty(NEW."geom"))
            BEGIN
              DELETE FROM "rtree_{t}_geom" WHERE id = OLD."fid";
              INSERT OR REPLACE INTO "rtree_{t}_geom" VALUES (
                NEW."fid",
                ST_MinX(NEW."geom"), ST_MaxX(NEW."geom"),
                ST_MinY(NEW."geom"), ST_MaxY(NEW."geom")
              );
            END""",
            """
            CREATE TRIGGER "rtree_{t}_geom_update6" AFTER UPDATE OF "geom" ON "{t}"
              WHEN OLD."fid" = NEW."fid" AND
                   (NEW."geom" NOTNULL AND NOT ST_IsEmpty(NEW."geom")) AND
                   (OLD."geom" NOTNULL AND NOT ST_IsEmpty(OLD."geom"))
            BEGIN
              UPDATE "rtree_{t}_geom" SET
                minx = ST_MinX(NEW."geom"),
                maxx = ST_MaxX(NEW."geom"),
                miny = ST_MinY(NEW."geom"),
                maxy = ST_MaxY(NEW."geom")
              WHERE id = NEW."fid";
            END""",
            """
            CREATE TRIGGER "rtree_{t}_geom_update7" AFTER UPDATE OF "geom" ON "{t}"
              WHEN OLD."fid" = NEW."fid" AND
                   (NEW."geom" NOTNULL AND NOT ST_IsEmpty(NEW."geom")) AND
                   (OLD."geom" ISNULL OR ST_IsEmpty(OLD."geom"))
            BEGIN
              INSERT INTO "rtree_{t}_geom" VALUES (
                NEW."fid",
                ST_MinX(NEW."geom"), ST_MaxX(NEW."geom"),
                ST_MinY(NEW."geom"), ST_MaxY(NEW."geom")
              );
            END""",
            """
            CREATE TRIGGER "rtree_{t}_geom_delete" AFTER DELETE ON "{t}"
              WHEN OLD."geom" NOT NULL
            BEGIN
              DELETE FROM "rtree_{t}_geom" WHERE id = OLD."fid";
            END""");

    private GeoPackageSchema() {}

    static String createIndex(String table) {
        return "CREATE VIRTUAL TABLE \"rtree_" + table + "_geom\" USING rtree(id, minx, maxx, miny, maxy)";
    }

    /** What keeps the index right when another program edits the table. */
    static List<String> indexTriggers(String table) {
        return INDEX_TRIGGERS.stream().map(trigger -> trigger.replace("{t}", table)).toList();
    }

    static String type(Column.Kind kind) {
        return switch (kind) {
            case TEXT -> "TEXT";
            case INTEGER -> "INTEGER";
            case REAL -> "DOUBLE";
            case BOOLEAN -> "BOOLEAN";
        };
    }
}
