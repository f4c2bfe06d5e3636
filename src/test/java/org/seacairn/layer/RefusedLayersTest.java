package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whole-file faults in every format: what is told of each, word for word, or that the layer is read. */
class RefusedLayersTest {
    private static final String EMPTY = """
            GEOJSON            a.geojson, layer "trial" (line 12 of the plan): is empty (0 bytes); export it again
            GEOPACKAGE         a.gpkg, layer "trial" (line 12 of the plan): is empty (0 bytes); export it again
            SHAPEFILE          a.shp, layer "trial" (line 12 of the plan): is empty (0 bytes); export it again
            GPX                a.gpx, layer "trial" (line 12 of the plan): is empty (0 bytes); export it again
            KML                a.kml, layer "trial" (line 12 of the plan): is empty (0 bytes); export it again
            KMZ                a.kmz, layer "trial" (line 12 of the plan): is empty (0 bytes); export it again
            CSV                a.csv, layer "trial" (line 12 of the plan): is empty (0 bytes); export it again
            FLATGEOBUF         a.fgb, layer "trial" (line 12 of the plan): is empty (0 bytes); export it again
            INDEXED_FLATGEOBUF indexed.fgb, layer "trial" (line 12 of the plan): is empty (0 bytes); export it again
            CHART              a.000, layer "trial" (line 12 of the plan): is empty (0 bytes); export it again
            GEOTIFF            a.tif, the file: is empty (0 bytes); export it again
            PACKED_GEOTIFF     packed.tif, the file: is empty (0 bytes); export it again
            ASCII_GRID         a.asc, the file: is empty (0 bytes); export it again
            BAG                a.bag, the file: is empty (0 bytes); export it again
            NETCDF4            a.nc, the file: is empty (0 bytes); export it again
            CLASSIC_NETCDF     classic.nc, the file: is empty (0 bytes); export it again
            SOUNDINGS          a.xyz, the file: is empty (0 bytes); export it again
            """;

    /** GeoJSON under the name, or KML under that of GeoJSON. */
    private static final String OF_ANOTHER_FORMAT = """
            GEOJSON            a.geojson, line 1, column 1: is no proper JSON (Unexpected character ('<' (code 60)): expected a valid value (JSON String, Number, Array, Object or token 'null', 'true' or 'false')); correct it or export it again
            GEOPACKAGE         a.gpkg, start: is no SQLite database and so no GeoPackage; export it again
            SHAPEFILE          a.shp, header: is no main file of a shapefile; export it again
            GPX                a.gpx, line 1: is no proper XML (Content is not allowed in prolog); correct it or export it again
            KML                a.kml, line 1: is no proper XML (Content is not allowed in prolog); correct it or export it again
            KMZ                a.kmz, the file: is no whole zip archive (zip END header not found), as a KMZ is; copy or export it again, or rename it if it is KML
            CSV                a.csv, line 1: its quotes do not match; put a value in quotes and write a quote inside it twice
            FLATGEOBUF         a.fgb, header: is no FlatGeobuf; export it again
            INDEXED_FLATGEOBUF indexed.fgb, header: is no FlatGeobuf; export it again
            CHART              a.000, byte 0: no descriptive record of ISO/IEC 8211 begins here; the chart is damaged or cut off, so get it again
            GEOTIFF            a.tif: not a readable GeoTIFF (it does not begin as a TIFF does); the file is damaged or cut short, get it again
            PACKED_GEOTIFF     packed.tif: not a readable GeoTIFF (it does not begin as a TIFF does); the file is damaged or cut short, get it again
            ASCII_GRID         a.asc, line 1: a word of more than 64 characters; this is not an Esri ASCII grid
            BAG                a.bag, header: is no HDF5 that can be read; the file is damaged or cut short, get it again
            NETCDF4            a.nc, header: is no HDF5 that can be read; the file is damaged or cut short, get it again
            CLASSIC_NETCDF     classic.nc, header: is no HDF5 that can be read; the file is damaged or cut short, get it again
            SOUNDINGS          a.xyz, line 1: no columns of longitude and latitude, or easting and northing, among "{"type":"FeatureCollection"", "crs":{"type":"name", ""properties":{"name":"OGC:CRS84"}}", "features":[{"type":"Feature", "geometry":{"type":"MultiPolygon", ""coordinates":[[[[0", "0]", "[9", "0]", "[9", "9]", "[0" and 9 more; give them these names in a header line, or name the columns with "x-column" and "y-column"
            """;

    /** A text of lines that ends with a line tells nobody what followed. */
    private static final String CUT_AT_A_THIRD = """
            GEOJSON            a.geojson, feature 1 (line 1, column 121): is no proper JSON (Unexpected end-of-input in field name); correct it or export it again
            GEOPACKAGE         a.gpkg, start: is a database of whole pages of 512 bytes, 18 of them, and the file has 3072 bytes; it is cut short, copy or export it again
            SHAPEFILE          a.shp, header: states 732 bytes where the file has 244; it was cut short or not closed, copy or export it again
            GPX                a.gpx, line 1: is no proper XML (XML document structures must start and end within the same entity); correct it or export it again
            KML                a.kml, line 2: ends before its elements are closed, so it is cut short; copy or export it again
            KMZ                a.kmz, the file: is no whole zip archive (zip END header not found), as a KMZ is; copy or export it again, or rename it if it is KML
            CSV                a.csv, line 2: its quotes do not match; put a value in quotes and write a quote inside it twice
            FLATGEOBUF         a.fgb, feature 1: needs 220 bytes where the file has 165 left; it is damaged or cut short, export it again
            INDEXED_FLATGEOBUF indexed.fgb, header: needs 692 bytes where the file has 324 left; it is damaged or cut short, export it again
            CHART              a.000, byte 178: field "ARCC" is said to be 61 bytes long, and the file ends after 18; the chart is damaged or cut off, so get it again
            GEOTIFF            a.tif: not a readable GeoTIFF (image 1 states 15 fields at byte 32 of 138); the file is damaged or cut short, get it again
            PACKED_GEOTIFF     packed.tif: not a readable GeoTIFF (a directory stands at byte 732858 of 244446); the file is damaged or cut short, get it again
            ASCII_GRID         a.asc, line 4: "yl" is no header word of an Esri ASCII grid known here (ncols, nrows, xllcorner, yllcorner, xllcenter, yllcenter, cellsize, dx, dy, nodata_value); delete the line if it changes nothing
            BAG                a.bag, header: states a length of 3376 bytes and the file has 1125; it is cut short, get it again
            NETCDF4            a.nc, header: states a length of 1232 bytes and the file has 410; it is cut short, get it again
            CLASSIC_NETCDF     classic.nc, header: has the tag 12 and the length 1 where a list of kind 12 belongs; the file is damaged, get it again
            SOUNDINGS          read
            """;

    /** The last byte of these tables of text is the end of a line; a note says that it is missing. */
    private static final String WITHOUT_THE_LAST_BYTE = """
            GEOJSON            a.geojson, line 1, column 361: is no proper JSON (Unexpected end-of-input: expected close marker for Object); correct it or export it again
            GEOPACKAGE         a.gpkg, start: is a database of whole pages of 512 bytes, 18 of them, and the file has 9215 bytes; it is cut short, copy or export it again
            SHAPEFILE          a.shp, header: states 732 bytes where the file has 731; it was cut short or not closed, copy or export it again
            GPX                a.gpx, line 4: ends before its elements are closed, so it is cut short; copy or export it again
            KML                a.kml, line 3: ends before its elements are closed, so it is cut short; copy or export it again
            KMZ                a.kmz, the file: is no whole zip archive (zip END header not found), as a KMZ is; copy or export it again, or rename it if it is KML
            CSV                read
            FLATGEOBUF         a.fgb, feature 8: needs 153 bytes where the file has 152 left; it is damaged or cut short, export it again
            INDEXED_FLATGEOBUF indexed.fgb, feature 2: needs 92 bytes where the file has 91 left; it is damaged or cut short, export it again
            CHART              a.000, byte 2740: field "ATTF" is said to be 5 bytes long, and the file ends after 4; the chart is damaged or cut off, so get it again
            GEOTIFF            a.tif: not a readable GeoTIFF (the 6 values of field 42113 stand at byte 408 of 413); the file is damaged or cut short, get it again
            PACKED_GEOTIFF     packed.tif: not a readable GeoTIFF (the 6 values of field 42113 stand at byte 733332 of 733337); the file is damaged or cut short, get it again
            ASCII_GRID         read
            BAG                a.bag, header: states a length of 3376 bytes and the file has 3375; it is cut short, get it again
            NETCDF4            a.nc, header: states a length of 1232 bytes and the file has 1231; it is cut short, get it again
            CLASSIC_NETCDF     classic.nc, lat: the coordinates cannot be read (the file ends at byte 447); the file is damaged or cut short, get it again
            SOUNDINGS          read
            """;

    @TempDir
    Path folder;

    static Stream<Refused> empty() {
        return Refused.rows(EMPTY);
    }

    static Stream<Refused> ofAnotherFormat() {
        return Refused.rows(OF_ANOTHER_FORMAT);
    }

    static Stream<Refused> cutAtAThird() {
        return Refused.rows(CUT_AT_A_THIRD);
    }

    static Stream<Refused> withoutTheLastByte() {
        return Refused.rows(WITHOUT_THE_LAST_BYTE);
    }

    @ParameterizedTest
    @MethodSource
    void empty(Refused row) throws IOException {
        check(row, whole -> new byte[0]);
    }

    @ParameterizedTest
    @MethodSource
    void ofAnotherFormat(Refused row) throws IOException {
        AnyFormat other = row.format() == AnyFormat.GEOJSON ? AnyFormat.KML : AnyFormat.GEOJSON;
        byte[] bytes = Files.readAllBytes(other.write(folder));
        check(row, whole -> bytes);
    }

    @ParameterizedTest
    @MethodSource
    void cutAtAThird(Refused row) throws IOException {
        check(row, whole -> Arrays.copyOf(whole, whole.length / 3));
    }

    @ParameterizedTest
    @MethodSource
    void withoutTheLastByte(Refused row) throws IOException {
        check(row, whole -> Arrays.copyOf(whole, whole.length - 1));
    }

    private void check(Refused row, UnaryOperator<byte[]> fault) throws IOException {
        Path file = row.format().write(folder);
        AnyFormat.read(file);
        Files.write(file, fault.apply(Files.readAllBytes(file)));
        row.assertTold(() -> AnyFormat.read(file));
    }

    @Test
    void aTableOfTextWhoseLastLineHasNoEndSaysSo() throws IOException {
        String note = "its last line has no end of line; if the file was cut short, that line may lack digits";
        Path csv = Files.writeString(folder.resolve("a.csv"), "longitude,latitude\n-80.5,29.5");
        assertEquals(note, VectorLayers.read(Sources.plain(csv)).notes().get(0));
        Path xyz = Files.writeString(folder.resolve("a.xyz"), "500001 3000009 -80\n500009 3000002 -9");
        try (Bathymetry grid = Bathymetries.open(AnyFormat.soundingsPlan(xyz))) {
            assertEquals(note, grid.notes().get(0));
        }
    }
}
