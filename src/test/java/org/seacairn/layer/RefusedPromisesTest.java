package org.seacairn.layer;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.function.Function;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Files that promise more than they hold, or ask for endless work: each is refused soon, in these words. */
class RefusedPromisesTest {
    /** Writes a file into a folder; the told text is "read" where the promise does no harm. */
    private record Promise(String name, Function<Path, Path> write, String told) {
        @Override
        public String toString() {
            return name;
        }
    }

    private interface Writing {
        Path write(Path folder) throws IOException, SQLException;
    }

    private interface Views {
        void make(GeoPackageFixture fixture) throws SQLException;
    }

    private static Promise promise(String name, Writing writing, String told) {
        return new Promise(name, folder -> {
            try {
                return writing.write(folder);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            } catch (SQLException e) {
                throw new IllegalStateException(e);
            }
        }, told);
    }

    private static Promise text(String file, String text, String told) {
        String shown = text.length() <= 60 ? text : text.substring(0, 60) + "… (" + text.length() + ")";
        return promise(file + " " + shown, folder -> Files.writeString(folder.resolve(file), text), file + ", " + told);
    }

    @ParameterizedTest
    @MethodSource({"archives", "texts", "geoPackages", "shapefiles", "geoTiffs", "otherGrids"})
    void isKeptTo(Promise promise, @TempDir Path folder) {
        Path file = promise.write.apply(folder);
        Refused.assertTold(promise.told, () -> AnyFormat.read(file));
    }

    static Stream<Promise> archives() {
        String point = "<kml><Placemark><Point><coordinates>1,2</coordinates></Point></Placemark></kml>";
        return Stream.of(
                promise("an archive in an archive", folder -> Files.write(folder.resolve("a.kmz"), AnyFormat.zip("inner.kmz", "PK")),
                        "a.kmz, the file: is an archive without a .kml in it; export it again"),
                // Nothing is ever unpacked to a file, so the name leads nowhere.
                promise("an entry that climbs", folder -> Files.write(folder.resolve("a.kmz"), AnyFormat.zip("../../doc.kml", point)), "read"),
                promise("twenty thousand entries", folder -> manyEntries(folder.resolve("a.kmz")),
                        "a.kmz, the file: is an archive without a .kml in it; export it again"));
    }

    private static Path manyEntries(Path file) throws IOException {
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file)); ZipOutputStream zip = new ZipOutputStream(out)) {
            for (int i = 0; i < 20_000; i++) {
                zip.putNextEntry(new ZipEntry("x" + i));
            }
        }
        return file;
    }

    static Stream<Promise> texts() {
        String json = "{\"type\":\"Feature\",\"geometry\":{\"type\":\"Point\",\"coordinates\":[1,2]},\"properties\":{\"a\":";
        String crs = "{\"type\":\"Point\",\"coordinates\":[1,2],\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"";
        StringBuilder attributes = new StringBuilder("<gpx");
        for (int i = 0; i < 20_000; i++) {
            attributes.append(" a").append(i).append("=''");
        }
        return Stream.of(
                text("a.kml", "<kml><x>&b;</x></kml>", "line 1: is no proper XML (The entity \"b\" was referenced, but not declared); correct it or export it again"),
                text("a.gpx", attributes + "/>", "line 1: is no proper XML (Element \"gpx\" has more than \"10,000\" attributes, \"10,000\" is the limit"
                        + " imposed by the JDK); correct it or export it again"),
                text("a.kml", "<kml><Placemark><Point><coordinates>" + "1".repeat(1_000_000) + ",2</coordinates></Point></Placemark></kml>",
                        "line 1: coordinates: the longitude \"1111111111111111111111111111111111111...\" lies outside ±360 degrees; correct it"),
                text("a.geojson", "{\"type\":\"Point\",\"coordinates\":[" + "1".repeat(100_000) + ",2]}",
                        "line 1, column 100032: is no proper JSON (Number value length (100000) exceeds the maximum allowed (1000)); correct it or export it again"),
                text("a.geojson", json + "\"" + "a".repeat(20_100_000) + "\"}}", "line 1, column 20051198: is no proper JSON (String value length (20051112)"
                        + " exceeds the maximum allowed (20000000)); correct it or export it again"),
                text("a.geojson", crs + "GEOGCS[".repeat(10_000) + "\"}}}", "member \"crs\": CRS text \"GEOGCS[GEOGCS[GEOGCS[GEOGCS[GEOGCS[GEOGCS[GEOGCS[GEOGCS[G...\""
                        + " has 70000 characters, nested 10000 deep, more than any CRS needs; write an EPSG code such as EPSG:32617"),
                text("a.xyz", "1".repeat(10_000), "line 1: is longer than 4096 bytes; this is no text of soundings"),
                text("a.xyz", "500000 1e9 -80\n500001 1e9 -80\n", "line 1: (500000.0, 1.0E9) is no place in EPSG:32617 (WGS 84 / UTM zone 17N); correct the line"
                        + " or delete it, or correct the crs that the plan states"),
                text("a.xyz", "500000 3000000 -80\n500000 Infinity -80\n", "line 2: \"Infinity\" is no number; correct the line or delete it"),
                promise("a table of text of 3 GB", folder -> lengthened(AnyFormat.CSV.write(folder), 3_000_000_000L),
                        "a.csv, the file: has 3000000000 bytes, more than a table of text may have here (268435456); leave out what is not needed, or"
                                + " give it as GeoPackage"));
    }

    private static Path lengthened(Path file, long bytes) throws IOException {
        try (RandomAccessFile opened = new RandomAccessFile(file.toFile(), "rw")) {
            opened.setLength(bytes);
        }
        return file;
    }

    private static Promise geoPackage(String name, Views views, String told) {
        return promise(name, folder -> {
            Path file = folder.resolve("a.gpkg");
            try (GeoPackageFixture fixture = new GeoPackageFixture(file)) {
                views.make(fixture.crs(4326, "EPSG", 4326, ""));
            }
            return file;
        }, told);
    }

    static Stream<Promise> geoPackages() {
        String endless = "WITH RECURSIVE c(x) AS (SELECT 1 UNION ALL SELECT x + 1 FROM c) SELECT ";
        return Stream.of(
                geoPackage("a view of itself", f -> f.run("CREATE VIEW v AS SELECT * FROM w").run("CREATE VIEW w AS SELECT * FROM v").register("v", "geom", 4326),
                        "a.gpkg, database: cannot be read ([SQLITE_ERROR] SQL error or missing database (view v is circularly defined)); check the file or export it again"),
                geoPackage("rows without end", f -> f.run("CREATE VIEW v AS " + endless + "x AS fid, NULL AS geom FROM c").register("v", "geom", 4326),
                        "a.gpkg, table \"v\": gives more rows than the file has bytes (20480), so it is a view without end; name a table, or export the view as one"),
                geoPackage("work without end and without a row", f -> f.run("CREATE VIEW v AS " + endless + "x AS fid, NULL AS geom FROM c WHERE x < 0")
                        .register("v", "geom", 4326),
                        "a.gpkg, database: its views ask for more work than a file of its size can need, perhaps without end; name a table, or export the view as one"),
                geoPackage("a value of 1 GB made of nothing", f -> f.run("CREATE VIEW v AS SELECT 1 AS fid, zeroblob(1000000000) AS geom").register("v", "geom", 4326),
                        "a.gpkg, database: cannot be read ([SQLITE_TOOBIG] String or BLOB exceeds size limit (string or blob too big)); check the file or export it again"),
                geoPackage("foreign code", f -> f.run("CREATE VIEW v AS SELECT 1 AS fid, load_extension('x') AS geom").register("v", "geom", 4326),
                        "a.gpkg, database: cannot be read ([SQLITE_ERROR] SQL error or missing database (unsafe use of load_extension())); check the file or export it again"),
                // Nothing is written, so no trigger is ever asked.
                geoPackage("a trigger", f -> f.table("t", 4326).row("t", 1, GeoPackageFixture.blob("POINT (1 2)"), "a")
                        .run("CREATE TRIGGER x AFTER INSERT ON t BEGIN DELETE FROM t; END"), "read"));
    }

    /** A number within a file of the whole layer, little endian. */
    private static Promise patched(String name, AnyFormat format, String file, int at, int number, String told) {
        return promise(name, folder -> {
            Path main = format.write(folder);
            byte[] bytes = Files.readAllBytes(folder.resolve(file));
            ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putInt(at, number);
            Files.write(folder.resolve(file), bytes);
            return main;
        }, told);
    }

    static Stream<Promise> shapefiles() {
        return Stream.of(
                patched("10^9 rows", AnyFormat.SHAPEFILE, "a.dbf", 4, 1_000_000_000,
                        "a.dbf, header: states 1000000000 rows of 31 bytes from byte 97 where the file has 253; it was cut short, copy or export it again"),
                patched("rows of no bytes", AnyFormat.SHAPEFILE, "a.dbf", 10, 0,
                        "a.dbf, header: states 5 rows of 0 bytes from byte 97 where the file has 253; it was cut short, copy or export it again"),
                patched("10^9 parts", AnyFormat.SHAPEFILE, "a.shp", 144, 1_000_000_000,
                        "a.shp, record 1 (byte 100): its shape needs 4000000188 bytes and the record has 196; the file is damaged, export it again"),
                patched("10^9 points", AnyFormat.SHAPEFILE, "a.shp", 148, 1_000_000_000,
                        "a.shp, record 1 (byte 100): its shape needs 16000000052 bytes and the record has 196; the file is damaged, export it again"),
                promise("a CRS nested without end", folder -> {
                    Path main = AnyFormat.SHAPEFILE.write(folder);
                    Files.writeString(folder.resolve("a.prj"), "PROJCS[".repeat(10_000));
                    return main;
                }, "a.prj, text: CRS text \"PROJCS[PROJCS[PROJCS[PROJCS[PROJCS[PROJCS[PROJCS[PROJCS[P...\" has 70000 characters, nested 10000 deep,"
                        + " more than any CRS needs; write an EPSG code such as EPSG:32617"),
                promise("a CRS of 2 MB", folder -> {
                    Path main = AnyFormat.SHAPEFILE.write(folder);
                    Files.writeString(folder.resolve("a.prj"), " ".repeat(2 << 20));
                    return main;
                }, "a.prj, the file: is longer than 1048576 bytes, so it is none of its kind; export it again, or take it away"));
    }

    /** Fields of the directory that are written over, each as tag, type, count and value. */
    private static Promise tiff(String name, String told, int... fields) {
        return promise(name, folder -> {
            ByteBuffer tiff = ByteBuffer.wrap(new HandTiff(3, 2).bytes(-1, -2, -3, -4, -5, -6)).order(ByteOrder.LITTLE_ENDIAN);
            int directory = tiff.getInt(4);
            for (int i = 0; i < tiff.getShort(directory); i++) {
                int at = directory + 2 + 12 * i;
                for (int f = 0; f < fields.length; f += 4) {
                    if (Short.toUnsignedInt(tiff.getShort(at)) == fields[f]) {
                        tiff.putShort(at + 2, (short) fields[f + 1]).putInt(at + 4, fields[f + 2]).putInt(at + 8, fields[f + 3]);
                    }
                }
            }
            return Files.write(folder.resolve("a.tif"), tiff.array());
        }, told);
    }

    private static Promise tiffAt(double west, double north, double cell, int epsg, String told) {
        return promise("GeoTIFF at " + west + ", " + north + " of " + cell + " in " + epsg,
                folder -> new HandTiff(3, 2).at(west, north, cell).keys(1, epsg).write(folder.resolve("a.tif"), -1, -2, -3, -4, -5, -6), "a.tif" + told);
    }

    static Stream<Promise> geoTiffs() {
        String utm = " is no place in EPSG:32617 (WGS 84 / UTM zone 17N); check the CRS that the file or the plan states, and its corner and cell";
        String degrees = " is no place in EPSG:4326 (WGS 84); check the CRS that the file or the plan states, and its corner and cell";
        return Stream.of(
                tiff("10^12 cells", "a.tif: its pixels reach to byte 16000008 and the file has 298; it is cut short, get it again",
                        256, 4, 1, 1_000_000, 257, 4, 1, 1_000_000),
                tiff("10^12 cells in one strip", "a.tif: its pixels reach to byte 4000000000008 and the file has 298; it is cut short, get it again",
                        256, 4, 1, 1_000_000, 257, 4, 1, 1_000_000, 278, 4, 1, 1_000_000),
                tiff("more rows than the strip has", "a.tif: its pixels reach to byte 12008 and the file has 298; it is cut short, get it again",
                        257, 4, 1, 1000, 278, 4, 1, 1000),
                tiff("no columns", "a.tif: not a readable GeoTIFF (what it states does not fit together); the file is damaged or cut short, get it again",
                        256, 4, 1, 0),
                tiff("10^9 strips", "a.tif: not a readable GeoTIFF (field 273 states 1000000000 values where the file has 298 bytes); the file is damaged or cut"
                        + " short, get it again", 273, 4, 1_000_000_000, 8),
                tiff("values beyond the end", "a.tif: not a readable GeoTIFF (the 20 values of field 34735 stand at byte 2000000000 of 298); the file is"
                        + " damaged or cut short, get it again", 34735, 3, 20, 2_000_000_000),
                tiffAt(Double.NaN, 3e6, 10, 32617, ", extent: its middle, (NaN, 2999990.0)," + utm),
                tiffAt(5e5, Double.POSITIVE_INFINITY, 10, 32617, ", extent: its middle, (500015.0, Infinity)," + utm),
                tiffAt(5e5, 1e9, 10, 32617, ", extent: its middle, (500015.0, 9.9999999E8)," + utm),
                tiffAt(-80, 91, 0.1, 4326, ", extent: its middle, (-79.85, 90.9)," + degrees),
                tiffAt(5e5, 3e6, 10, 4326, ", extent: its middle, (500015.0, 2999990.0)," + degrees),
                tiffAt(-80, 29, 0.5, 32617, ", extent: from (-80.0, 28.0) to (-78.5, 29.0) it looks like longitude and latitude while its CRS, EPSG:32617"
                        + " (WGS 84 / UTM zone 17N), counts in metres or feet; state its CRS in the plan beside the file, for example crs: EPSG:4326"),
                tiffAt(5e5, 3e6, 10, 9999, ": the file states a CRS that is not known (No code \"EPSG:9999\" from authority \"European Petroleum Survey Group\""
                        + " found for object of type \"interface org.geotools.api.referencing.crs.CoordinateReferenceSystem\".); state it in the plan beside the"
                        + " file, for example crs: EPSG:32617"));
    }

    private static Promise ascii(String cols, String west, String south, String cell, String prj, String told) {
        return promise("Esri ASCII grid of " + cols + " at " + west + ", " + south, folder -> {
            Files.writeString(folder.resolve("a.prj"), prj);
            return Files.writeString(folder.resolve("a.asc"), "ncols " + cols + "\nnrows 1\nxllcorner " + west + "\nyllcorner " + south + "\ncellsize " + cell
                    + "\n1 2 3\n");
        }, told);
    }

    static Stream<Promise> otherGrids() {
        String utm = " is no place in WGS_1984_UTM_Zone_17N; check the CRS that the file or the plan states, and its corner and cell";
        return Stream.of(
                ascii("1e9", "5e5", "3e6", "1", AnyFormat.UTM, "a.asc: the header promises 1000000000 cells, more than an ASCII grid may hold here (268435456);"
                        + " convert it to GeoTIFF"),
                ascii("3", "NaN", "3e6", "1", AnyFormat.UTM, "a.asc, header: xllcorner is NaN; it must be a number"),
                ascii("3", "5e5", "3e6", "1e999", AnyFormat.UTM, "a.asc, header: cellsize is Infinity; it must be a number"),
                ascii("3", "5e5", "1e9", "1", AnyFormat.UTM, "a.asc, extent: its middle, (500001.5, 1.0000000005E9)," + utm),
                ascii("3", "-80", "29", "0.5", AnyFormat.UTM, "a.asc, extent: from (-80.0, 29.0) to (-78.5, 29.5) it looks like longitude and latitude while its"
                        + " CRS, WGS_1984_UTM_Zone_17N, counts in metres or feet; state its CRS in the plan beside the file, for example crs: EPSG:4326"),
                ascii("3", "5e5", "3e6", "1", "PROJCS[\"x\"", "a.prj: CRS text \"PROJCS[\"x\"\" cannot be read (error in \"projcs\": cannot parse 'projcs[\"x\"',"
                        + " error at in...); write an EPSG code such as EPSG:32617"));
    }
}
