package org.seacairn.layer;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seacairn.plan.SitingPlan.LayerFile;

/** Coordinates, CRSs and geometries that cannot be, in every vector format that can state them: what is told of each, word for word. */
class RefusedPlacesTest {
    private static final String NAN = """
            GEOJSON            a.geojson, feature 1 (line 2, column 80): is no proper JSON (Non-standard token 'NaN'); correct it or export it again
            GEOPACKAGE         a.gpkg, table "t", feature 1: a coordinate is (NaN, 29.5) and not a place; correct or delete the feature
            SHAPEFILE          a.shp, record 1 (byte 100): a coordinate is (NaN, 29.5) and not a place; correct or delete the feature
            GPX                a.gpx, line 2: wpt: the longitude "NaN" is no number; write decimal degrees like -27.2437
            KML                a.kml, line 2: coordinates: the longitude "NaN" is no number; write decimal degrees like -27.2437
            KMZ                a.kmz, line 2: coordinates: the longitude "NaN" is no number; write decimal degrees like -27.2437
            CSV                a.csv, line 2, column "longitude": "NaN" is no longitude; write it as 27.2437, 27 14.620 E or 27 14 37.2 E
            FLATGEOBUF         a.fgb, feature 1: a coordinate is (NaN, 29.5) and not a place; correct or delete the feature
            """;

    private static final String INFINITE = """
            GEOJSON            a.geojson, feature 1 (line 2, column 88): a coordinate is 1e999 and not a place; correct or delete the feature
            GEOPACKAGE         a.gpkg, table "t", feature 1: a coordinate is (-80.0, Infinity) and not a place; correct or delete the feature
            SHAPEFILE          a.shp, record 1 (byte 100): a coordinate is (-80.0, Infinity) and not a place; correct or delete the feature
            GPX                a.gpx, line 2: wpt: the latitude "Infinity" is no number; write decimal degrees like -27.2437
            KML                a.kml, line 2: coordinates: the latitude "Infinity" is no number; write decimal degrees like -27.2437
            KMZ                a.kmz, line 2: coordinates: the latitude "Infinity" is no number; write decimal degrees like -27.2437
            CSV                a.csv, line 2, column "latitude": "Infinity" is no latitude; write it as 27.2437, 27 14.620 N or 27 14 37.2 N
            FLATGEOBUF         a.fgb, feature 1: a coordinate is (-80.0, Infinity) and not a place; correct or delete the feature
            """;

    private static final String LATITUDE_91 = """
            GEOJSON            a.geojson, feature 1 at (-80.0, 91.0): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y
            GEOPACKAGE         a.gpkg, feature 1 at (-80.0, 91.0): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y
            SHAPEFILE          a.shp, feature 1 at (-80.0, 91.0): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y
            GPX                a.gpx, line 2: wpt: the latitude "91.0" lies outside ±90 degrees; it reads well the other way round, so longitude and latitude look swapped
            KML                a.kml, line 2: coordinates: the latitude "91.0" lies outside ±90 degrees; it reads well the other way round, so longitude and latitude look swapped
            KMZ                a.kmz, line 2: coordinates: the latitude "91.0" lies outside ±90 degrees; it reads well the other way round, so longitude and latitude look swapped
            CSV                a.csv, line 2, column "latitude": "91.0" lies outside ±90 degrees; check the latitude, and that it is in degrees and not in metres; it reads well the other way round, so longitude and latitude look swapped
            FLATGEOBUF         a.fgb, feature 1 at (-80.0, 91.0): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y
            """;

    private static final String LONGITUDE_1E6 = """
            GEOJSON            a.geojson, feature 1 at (1000000.0, 29.0): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y
            GEOPACKAGE         a.gpkg, feature 1 at (1000000.0, 29.0): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y
            SHAPEFILE          a.shp, feature 1 at (1000000.0, 29.0): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y
            GPX                a.gpx, line 2: wpt: the longitude "1000000.0" lies outside ±180 degrees; correct it
            KML                a.kml, line 2: coordinates: the longitude "1000000.0" lies outside ±360 degrees; correct it
            KMZ                a.kmz, line 2: coordinates: the longitude "1000000.0" lies outside ±360 degrees; correct it
            CSV                a.csv, line 2, column "longitude": "1000000.0" lies outside ±180 degrees; check the longitude, and that it is in degrees and not in metres
            FLATGEOBUF         a.fgb, feature 1 at (1000000.0, 29.0): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y
            """;

    private static final String NORTHING_1E9 = """
            GEOJSON            a.geojson, feature 1 at (500000.0, 1.0E9): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y; where they are right, export the file in longitude and latitude (EPSG:4326)
            GEOPACKAGE         a.gpkg, feature 1 at (500000.0, 1.0E9): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y; where they are right, export the file in longitude and latitude (EPSG:4326)
            SHAPEFILE          a.shp, feature 1 at (500000.0, 1.0E9): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y; where they are right, export the file in longitude and latitude (EPSG:4326)
            CSV                a.csv, feature 1 at (500000.0, 1.0E9): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y; where they are right, export the file in longitude and latitude (EPSG:4326)
            FLATGEOBUF         a.fgb, feature 1 at (500000.0, 1.0E9): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y; where they are right, export the file in longitude and latitude (EPSG:4326)
            """;

    private static final String METRES_AS_DEGREES = """
            GEOJSON            a.geojson, feature 1 at (500000.0, 3200000.0): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y
            GEOPACKAGE         a.gpkg, feature 1 at (500000.0, 3200000.0): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y
            SHAPEFILE          a.shp, feature 1 at (500000.0, 3200000.0): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y
            GPX                a.gpx, line 2: wpt: the latitude "3200000.0" lies outside ±90 degrees; correct it
            KML                a.kml, line 2: coordinates: the latitude "3200000.0" lies outside ±90 degrees; correct it
            KMZ                a.kmz, line 2: coordinates: the latitude "3200000.0" lies outside ±90 degrees; correct it
            CSV                a.csv, line 2, column "longitude": "500000.0" lies outside ±180 degrees; check the longitude, and that it is in degrees and not in metres
            FLATGEOBUF         a.fgb, feature 1 at (500000.0, 3200000.0): a coordinate lies outside what its CRS can hold; check the CRS of the file or the plan, and the order of x and y
            """;

    private static final String UNKNOWN_CRS = """
            GEOJSON            a.geojson, member "crs": CRS EPSG:999999 is not in the EPSG data set; check the code
            GEOPACKAGE         a.gpkg, table "t": CRS EPSG:999999 is not in the EPSG data set; check the code
            SHAPEFILE          a.prj, text: CRS "999999" is not known; write an EPSG code such as EPSG:32617, or well-known text
            CSV                a.csv, layer "trial": CRS EPSG:999999 is not in the EPSG data set; check the code
            FLATGEOBUF         a.fgb, header: CRS EPSG:999999 is not in the EPSG data set; check the code
            """;

    private static final String GARBAGE_CRS = """
            GEOJSON            a.geojson, member "crs": CRS text "PROJCS["x"" cannot be read (error in "projcs": cannot parse 'projcs["x"', error at in...); write an EPSG code such as EPSG:32617
            GEOPACKAGE         a.gpkg, table "t": CRS text "PROJCS["x"" cannot be read (error in "projcs": cannot parse 'projcs["x"', error at in...); write an EPSG code such as EPSG:32617
            SHAPEFILE          a.prj, text: CRS text "PROJCS["x"" cannot be read (error in "projcs": cannot parse 'projcs["x"', error at in...); write an EPSG code such as EPSG:32617
            CSV                a.csv, layer "trial": CRS text "PROJCS["x"" cannot be read (error in "projcs": cannot parse 'projcs["x"', error at in...); write an EPSG code such as EPSG:32617
            FLATGEOBUF         a.fgb, header: CRS text "PROJCS["x"" cannot be read (error in "projcs": cannot parse 'projcs["x"', error at in...); write an EPSG code such as EPSG:32617
            """;

    private static final String ONE_POINT = """
            GEOJSON            a.geojson, feature 1 (line 2, column 94): a line has one point; delete it or add a second point
            GEOPACKAGE         a.gpkg, feature 1 at (1.0, 2.0): a line or ring has too few different points; correct the feature in a GIS (repair geometries) and export the file again, or write repair: true beside the file in the plan
            SHAPEFILE          a.shp, record 1 (byte 100): its part 1 is a line of one point; delete it or add a second point
            GPX                a.gpx, layer "trial" (line 12 of the plan): holds no feature with a geometry (1 without); give a file with features, or leave the layer out of the plan
            KML                a.kml, line 2: a LineString has one place; delete it or add a second
            KMZ                a.kmz, line 2: a LineString has one place; delete it or add a second
            FLATGEOBUF         a.fgb, feature 1: a line has one point; delete it or add a second point
            """;

    private static final String SAME_POINT = """
            GEOJSON            a.geojson, feature 1 at (1.0, 2.0): a line or ring has too few different points; correct the feature in a GIS (repair geometries) and export the file again, or write repair: true beside the file in the plan
            GEOPACKAGE         a.gpkg, feature 1 at (1.0, 2.0): a line or ring has too few different points; correct the feature in a GIS (repair geometries) and export the file again, or write repair: true beside the file in the plan
            SHAPEFILE          a.shp, feature 1 at (1.0, 2.0): a line or ring has too few different points; correct the feature in a GIS (repair geometries) and export the file again, or write repair: true beside the file in the plan
            GPX                a.gpx, feature 1 at (1.0, 2.0): a line or ring has too few different points; correct the feature in a GIS (repair geometries) and export the file again, or write repair: true beside the file in the plan
            KML                a.kml, feature 1 at (1.0, 2.0): a line or ring has too few different points; correct the feature in a GIS (repair geometries) and export the file again, or write repair: true beside the file in the plan
            KMZ                a.kmz, feature 1 at (1.0, 2.0): a line or ring has too few different points; correct the feature in a GIS (repair geometries) and export the file again, or write repair: true beside the file in the plan
            FLATGEOBUF         a.fgb, feature 1 at (1.0, 2.0): a line or ring has too few different points; correct the feature in a GIS (repair geometries) and export the file again, or write repair: true beside the file in the plan
            """;

    private static final String RING_OF_3 = """
            GEOJSON            a.geojson, feature 1 (line 2, column 113): ring 1 of a polygon has 3 points; a ring has 4 or more, the last like the first
            GEOPACKAGE         a.gpkg, feature 1 at (0.0, 0.0): a line or ring has too few different points; correct the feature in a GIS (repair geometries) and export the file again, or write repair: true beside the file in the plan
            SHAPEFILE          a.shp, record 1 (byte 100): its ring 1 of 3 points is not closed or encloses nothing; a ring has 4 points or more, the last like the first
            KML                a.kml, line 2: a LinearRing has 3 places; a ring has 4 or more, the last like the first
            KMZ                a.kmz, line 2: a LinearRing has 3 places; a ring has 4 or more, the last like the first
            FLATGEOBUF         a.fgb, feature 1: ring 1 of a polygon, of 3 points, is not closed or encloses nothing; a ring has 4 points or more, the last like the first
            """;

    /** The ring of a GeoPackage is closed on reading, as its class says. */
    private static final String OPEN_RING = """
            GEOJSON            a.geojson, feature 1 (line 2, column 123): ring 1 of a polygon is not closed: it starts at (0.0, 0.0) and ends at (0.0, 1.0); repeat the first point at the end
            GEOPACKAGE         read
            SHAPEFILE          a.shp, record 1 (byte 100): its ring 1 of 4 points is not closed or encloses nothing; a ring has 4 points or more, the last like the first
            KML                a.kml, line 2: a LinearRing is not closed: it starts at (0.0, 0.0) and ends at (0.0, 1.0); repeat the first place at the end
            KMZ                a.kmz, line 2: a LinearRing is not closed: it starts at (0.0, 0.0) and ends at (0.0, 1.0); repeat the first place at the end
            FLATGEOBUF         a.fgb, feature 1: ring 1 of a polygon, of 4 points, is not closed or encloses nothing; a ring has 4 points or more, the last like the first
            """;

    private static final String BOW_TIE = """
            GEOJSON            a.geojson, feature 1 at (0.5, 0.5): the polygon crosses itself; correct the feature in a GIS (repair geometries) and export the file again, or write repair: true beside the file in the plan
            GEOPACKAGE         a.gpkg, feature 1 at (0.5, 0.5): the polygon crosses itself; correct the feature in a GIS (repair geometries) and export the file again, or write repair: true beside the file in the plan
            SHAPEFILE          a.shp, feature 1 at (0.5, 0.5): the polygon crosses itself; correct the feature in a GIS (repair geometries) and export the file again, or write repair: true beside the file in the plan
            KML                a.kml, feature 1 at (0.5, 0.5): the polygon crosses itself; correct the feature in a GIS (repair geometries) and export the file again, or write repair: true beside the file in the plan
            KMZ                a.kmz, feature 1 at (0.5, 0.5): the polygon crosses itself; correct the feature in a GIS (repair geometries) and export the file again, or write repair: true beside the file in the plan
            FLATGEOBUF         a.fgb, feature 1 at (0.5, 0.5): the polygon crosses itself; correct the feature in a GIS (repair geometries) and export the file again, or write repair: true beside the file in the plan
            """;

    /** GeoJSON is told by its own tests; GPX counts a segment without points as one. */
    private static final String NOTHING = """
            GEOPACKAGE         a.gpkg, layer "trial" (line 12 of the plan): holds no feature with a geometry (1 without); give a file with features, or leave the layer out of the plan
            SHAPEFILE          a.shp, layer "trial" (line 12 of the plan): holds no feature with a geometry (1 without); give a file with features, or leave the layer out of the plan
            GPX                a.gpx, layer "trial" (line 12 of the plan): holds no feature with a geometry (1 without); give a file with features, or leave the layer out of the plan
            KML                a.kml, layer "trial" (line 12 of the plan): holds no feature with a geometry (1 without); give a file with features, or leave the layer out of the plan
            KMZ                a.kmz, layer "trial" (line 12 of the plan): holds no feature with a geometry (1 without); give a file with features, or leave the layer out of the plan
            CSV                a.csv, layer "trial" (line 12 of the plan): holds no feature; give a file with features, or leave the layer out of the plan
            FLATGEOBUF         a.fgb, layer "trial" (line 12 of the plan): holds no feature with a geometry (1 without); give a file with features, or leave the layer out of the plan
            """;

    @TempDir
    Path folder;

    static Stream<Refused> notANumber() {
        return Refused.rows(NAN);
    }

    @ParameterizedTest
    @MethodSource
    void notANumber(Refused row) throws IOException, SQLException {
        check(row, null, new AnyGeometry(1, Double.NaN, 29.5));
    }

    static Stream<Refused> infinite() {
        return Refused.rows(INFINITE);
    }

    @ParameterizedTest
    @MethodSource
    void infinite(Refused row) throws IOException, SQLException {
        check(row, null, new AnyGeometry(1, -80, Double.POSITIVE_INFINITY));
    }

    static Stream<Refused> latitude91() {
        return Refused.rows(LATITUDE_91);
    }

    @ParameterizedTest
    @MethodSource
    void latitude91(Refused row) throws IOException, SQLException {
        check(row, null, new AnyGeometry(1, -80, 91));
    }

    static Stream<Refused> longitudeOfAMillion() {
        return Refused.rows(LONGITUDE_1E6);
    }

    @ParameterizedTest
    @MethodSource
    void longitudeOfAMillion(Refused row) throws IOException, SQLException {
        check(row, null, new AnyGeometry(1, 1e6, 29));
    }

    static Stream<Refused> northingOfAThousandMillion() {
        return Refused.rows(NORTHING_1E9);
    }

    @ParameterizedTest
    @MethodSource
    void northingOfAThousandMillion(Refused row) throws IOException, SQLException {
        check(row, "32617", new AnyGeometry(1, 500_000, 1e9));
    }

    static Stream<Refused> metresAsDegrees() {
        return Refused.rows(METRES_AS_DEGREES);
    }

    @ParameterizedTest
    @MethodSource
    void metresAsDegrees(Refused row) throws IOException, SQLException {
        check(row, null, new AnyGeometry(1, 500_000, 3_200_000));
    }

    static Stream<Refused> unknownCrs() {
        return Refused.rows(UNKNOWN_CRS);
    }

    @ParameterizedTest
    @MethodSource
    void unknownCrs(Refused row) throws IOException, SQLException {
        check(row, "999999", new AnyGeometry(1, 1, 2));
    }

    static Stream<Refused> garbageCrs() {
        return Refused.rows(GARBAGE_CRS);
    }

    @ParameterizedTest
    @MethodSource
    void garbageCrs(Refused row) throws IOException, SQLException {
        check(row, "PROJCS[\"x\"", new AnyGeometry(1, 1, 2));
    }

    static Stream<Refused> lineOfOnePoint() {
        return Refused.rows(ONE_POINT);
    }

    @ParameterizedTest
    @MethodSource
    void lineOfOnePoint(Refused row) throws IOException, SQLException {
        check(row, null, new AnyGeometry(2, 1, 2));
    }

    static Stream<Refused> lineOfOnePlace() {
        return Refused.rows(SAME_POINT);
    }

    @ParameterizedTest
    @MethodSource
    void lineOfOnePlace(Refused row) throws IOException, SQLException {
        check(row, null, new AnyGeometry(2, 1, 2, 1, 2));
    }

    static Stream<Refused> ringOfThreePoints() {
        return Refused.rows(RING_OF_3);
    }

    @ParameterizedTest
    @MethodSource
    void ringOfThreePoints(Refused row) throws IOException, SQLException {
        check(row, null, new AnyGeometry(3, 0, 0, 1, 1, 0, 0));
    }

    static Stream<Refused> openRing() {
        return Refused.rows(OPEN_RING);
    }

    @ParameterizedTest
    @MethodSource
    void openRing(Refused row) throws IOException, SQLException {
        check(row, null, new AnyGeometry(3, 0, 0, 1, 0, 1, 1, 0, 1));
    }

    static Stream<Refused> bowTie() {
        return Refused.rows(BOW_TIE);
    }

    @ParameterizedTest
    @MethodSource
    void bowTie(Refused row) throws IOException, SQLException {
        check(row, null, new AnyGeometry(3, 0, 0, 1, 1, 1, 0, 0, 1, 0, 0));
    }

    static Stream<Refused> noFeature() {
        return Refused.rows(NOTHING);
    }

    @ParameterizedTest
    @MethodSource
    void noFeature(Refused row) throws IOException, SQLException {
        check(row, null, new AnyGeometry(2));
    }

    /** @param crs as {@link AnyGeometry#write} takes it */
    private void check(Refused row, String crs, AnyGeometry geometry) throws IOException, SQLException {
        boolean utmBeside = row.format() == AnyFormat.SHAPEFILE && "32617".equals(crs);
        Path file = geometry.write(row.format(), folder, utmBeside ? AnyFormat.UTM : crs);
        LayerFile source = row.format() == AnyFormat.CSV && crs != null ? Sources.withCrs(file, crs.matches("[0-9]+") ? "EPSG:" + crs : crs) : Sources.plain(file);
        row.assertTold(() -> GeometryCheck.requireValid(VectorLayers.read(source)));
    }
}
