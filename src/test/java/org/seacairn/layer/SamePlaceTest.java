package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Locale;
import org.apache.sis.referencing.CommonCRS;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.opengis.referencing.operation.TransformException;
import org.opengis.util.FactoryException;
import org.seacairn.geodesy.CoordinateText;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * One place written into every format in another CRS, with coordinates computed by Apache SIS, comes back
 * as the same place to a millimetre: no format turns the axes round or loses its CRS.
 */
class SamePlaceTest {
    private static final double LONGITUDE = -87.123456789;
    private static final double LATITUDE = 29.456789012;
    private static final double MILLIMETRE_DEG = 1e-8;
    private static Coordinate utm;
    private static Coordinate webMercator;

    @TempDir
    Path folder;

    @BeforeAll
    static void projectWithTheJudge() throws FactoryException, TransformException {
        double[] xy = new double[2];
        org.apache.sis.referencing.CRS.findOperation(CommonCRS.WGS84.normalizedGeographic(), CommonCRS.WGS84.universal(LATITUDE, LONGITUDE), null)
                .getMathTransform().transform(new double[] {LONGITUDE, LATITUDE}, 0, xy, 0, 1);
        utm = new Coordinate(xy[0], xy[1]);
        // EPSG method 1024 (IOGP Guidance Note 7-2): x = a lambda, y = a ln tan(pi/4 + phi/2), a = 6378137 m.
        webMercator = new Coordinate(6378137 * Math.toRadians(LONGITUDE),
                6378137 * Math.log(Math.tan(Math.PI / 4 + Math.toRadians(LATITUDE) / 2)));
    }

    private static void assertSamePlace(LayerFile source) {
        VectorLayer layer = VectorLayers.read(source);
        Coordinate stored = layer.features().get(0).geometry().getCoordinate();
        Coordinate got = layer.crs().to(Crs.WGS84).apply(stored.x, stored.y);
        assertEquals(LONGITUDE, got.x, MILLIMETRE_DEG, layer.format());
        assertEquals(LATITUDE, got.y, MILLIMETRE_DEG, layer.format());
    }

    @Test
    void geoJsonInLongitudeAndLatitude() throws IOException {
        Path file = folder.resolve("a.geojson");
        Files.writeString(file, "{\"type\":\"Point\",\"coordinates\":[" + LONGITUDE + "," + LATITUDE + "]}");
        assertSamePlace(Sources.plain(file));
        // The code lists latitude first; files with it hold longitude first all the same.
        Files.writeString(file, "{\"type\":\"Point\",\"coordinates\":[" + LONGITUDE + "," + LATITUDE
                + "],\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"urn:ogc:def:crs:EPSG::4326\"}}}");
        assertSamePlace(Sources.plain(file));
    }

    @Test
    void shapefileInUtm() throws IOException {
        Path file = ShapefileFixture.write(folder, "a.shp", new ShapefileFixture(1).point(1, utm.x, utm.y).main());
        Files.writeString(folder.resolve("a.prj"), "PROJCS[\"WGS_1984_UTM_Zone_16N\",GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\","
                + "SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]],"
                + "PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"False_Easting\",500000.0],PARAMETER[\"False_Northing\",0.0],"
                + "PARAMETER[\"Central_Meridian\",-87.0],PARAMETER[\"Scale_Factor\",0.9996],PARAMETER[\"Latitude_Of_Origin\",0.0],UNIT[\"Meter\",1.0]]");
        assertSamePlace(Sources.plain(file));
    }

    @Test
    void geoPackageInLongitudeAndLatitudeAndInWebMercator() throws SQLException {
        Path file = folder.resolve("a.gpkg");
        try (GeoPackageFixture fixture = new GeoPackageFixture(file)) {
            fixture.crs(4326, "EPSG", 4326, "").crs(3857, "EPSG", 3857, "")
                    .table("degrees", 4326).row("degrees", 1, GeoPackageFixture.blob("POINT (" + LONGITUDE + " " + LATITUDE + ")"), "a")
                    .table("metres", 3857).row("metres", 1, GeoPackageFixture.blob("POINT (" + webMercator.x + " " + webMercator.y + ")"), "a");
        }
        assertSamePlace(Sources.withTable(file, "degrees"));
        assertSamePlace(Sources.withTable(file, "metres"));
    }

    @Test
    void csvInDegreesMinutesAndUtm() throws IOException {
        Path file = folder.resolve("a.csv");
        Files.writeString(file, "lat,lon\n" + LATITUDE + "," + LONGITUDE + "\n");
        assertSamePlace(Sources.plain(file));
        Files.writeString(file, String.format(Locale.ROOT, "lon,lat\n%d %.9f W,%d %.9f N%n", 87, 0.123456789 * 60, 29, 0.456789012 * 60));
        assertSamePlace(Sources.plain(file));
        Files.writeString(file, "northing,easting\n" + utm.y + "," + utm.x + "\n");
        assertSamePlace(Sources.withCrs(file, "EPSG:32616"));
    }

    @Test
    void csvInMinutesToTheDigitThatSeacairnWrites() throws IOException {
        Path file = Files.writeString(folder.resolve("a.csv"), "lon,lat\n" + CoordinateText.formatLongitudeDdm(LONGITUDE) + ","
                + CoordinateText.formatLatitudeDdm(LATITUDE) + "\n");
        Coordinate got = VectorLayers.read(Sources.plain(file)).features().get(0).geometry().getCoordinate();
        // Half of a ten-thousandth of a minute: 0.1 m.
        assertEquals(LONGITUDE, got.x, 0.5e-4 / 60 + 1e-12);
        assertEquals(LATITUDE, got.y, 0.5e-4 / 60 + 1e-12);
    }
}
