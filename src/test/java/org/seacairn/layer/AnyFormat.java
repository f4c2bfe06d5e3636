package org.seacairn.layer;

import static org.seacairn.layer.HandHdf.attributes;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.seacairn.plan.PlanReader;
import org.seacairn.plan.SitingPlan;

/** Every format that is read: a small whole file of each, with the files beside it, and a reading of it to the last value. */
enum AnyFormat {
    GEOJSON("a.geojson"), GEOPACKAGE("a.gpkg"), SHAPEFILE("a.shp", "a.dbf", "a.cpg", "a.prj"), GPX("a.gpx"), KML("a.kml"), KMZ("a.kmz"), CSV("a.csv"),
    FLATGEOBUF("a.fgb"), INDEXED_FLATGEOBUF("indexed.fgb"), CHART("a.000"),
    GEOTIFF("a.tif"), PACKED_GEOTIFF("packed.tif"), ASCII_GRID("a.asc", "a.prj"), BAG("a.bag"), NETCDF4("a.nc"), CLASSIC_NETCDF("classic.nc"), SOUNDINGS("a.xyz");

    static final String WGS84 = "GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],"
            + "PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]";
    static final String UTM = "PROJCS[\"WGS_1984_UTM_Zone_17N\"," + WGS84 + ",PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"False_Easting\",500000.0],"
            + "PARAMETER[\"False_Northing\",0.0],PARAMETER[\"Central_Meridian\",-81.0],PARAMETER[\"Scale_Factor\",0.9996],"
            + "PARAMETER[\"Latitude_Of_Origin\",0.0],UNIT[\"Meter\",1.0]]";

    private static final String KML_TEXT = "<?xml version='1.0'?><kml xmlns='http://www.opengis.net/kml/2.2'><Document><Placemark><name>\u00c9pave</name>\n"
            + "<ExtendedData><Data name='a'><value>1</value></Data></ExtendedData><MultiGeometry><Point><coordinates>1,2</coordinates></Point>\n"
            + "<Polygon><outerBoundaryIs><LinearRing><coordinates>0,0 9,0 9,9 0,0</coordinates></LinearRing></outerBoundaryIs>"
            + "</Polygon></MultiGeometry></Placemark></Document></kml>";

    /** The file that a plan names, and those that belong to it. */
    final List<String> files;

    AnyFormat(String... files) {
        this.files = List.of(files);
    }

    /** Writes the whole layer; returns the file that a plan names. */
    Path write(Path folder) {
        Path file = folder.resolve(files.get(0));
        try {
            switch (this) {
                case GEOJSON -> Files.writeString(file, ("{'type':'FeatureCollection','crs':{'type':'name','properties':{'name':'OGC:CRS84'}},'features':["
                        + "{'type':'Feature','geometry':{'type':'MultiPolygon','coordinates':[[[[0,0],[9,0],[9,9],[0,0]]]]},'properties':{'a':[1,{'b':2}]}},"
                        + "{'type':'Feature','geometry':{'type':'GeometryCollection','geometries':[{'type':'Point','coordinates':[1.5,-2e0]}]},'properties':null}]}")
                        .replace('\'', '"'));
                case GEOPACKAGE -> geoPackage(file);
                case SHAPEFILE -> shapefile(folder);
                case GPX -> Files.writeString(file, "<?xml version='1.0' encoding='UTF-8'?><gpx xmlns='http://www.topografix.com/GPX/1/1' version='1.1'>\n"
                        + "<wpt lat='29.5' lon='-87.25'><name>\u00c9pave &amp; &#65;</name></wpt>\n<rte><rtept lat='1' lon='2'/></rte>\n"
                        + "<trk><trkseg><trkpt lat='1' lon='2'/><trkpt lat='1' lon='3'/></trkseg></trk></gpx>");
                case KML -> Files.writeString(file, KML_TEXT);
                case KMZ -> Files.write(file, zip("doc.kml", KML_TEXT));
                case CSV -> Files.writeString(file, "name,longitude,latitude\r\n\"a \"\"b\"\"\",87 15.000 W,29\u00b030'00\"N\r\nc,-87.25,29.5\r\nd,,\r\n");
                case FLATGEOBUF -> Files.write(file, FlatGeobufFixture.everyKind());
                case INDEXED_FLATGEOBUF -> Files.write(file, FlatGeobufReaderTest.BY_GDAL);
                case CHART -> S57ReaderTest.trial().write(folder, files.get(0));
                case GEOTIFF -> new HandTiff(3, 2).noData("-9999").gdalMetadata("<Item name=\"SCALE\" sample=\"0\" role=\"scale\">0.5</Item>")
                        .write(file, -1, -2, -3, -4, -9999, -6);
                case PACKED_GEOTIFF -> Files.copy(Path.of("sample-layers", "bathymetry.tif"), file);
                case ASCII_GRID -> {
                    Files.writeString(folder.resolve("a.prj"), UTM);
                    Files.writeString(file, "ncols 3\nnrows 2\nxllcorner 500000\nyllcorner 3000000\ncellsize 10\nNODATA_value -9999\n-1.5 -2 -3\n-4 -9999 -6\n");
                }
                case BAG -> Files.write(file, BagFixture.plain(BagFixture.metadata()).toBytes());
                case NETCDF4 -> Files.write(file, netCdf4());
                case CLASSIC_NETCDF -> Files.write(file, classicNetCdf(1));
                case SOUNDINGS -> Files.writeString(file, "500001 3000009 -80\n500009 3000002 -90.5\n500021 3000004 -70\n");
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return file;
    }

    static boolean isGrid(Path file) {
        return file.getFileName().toString().matches(".*\\.(tif|asc|bag|nc)");
    }

    /** Reads a layer as a run does: all of it, checked. */
    static void read(Path file) {
        String name = file.getFileName().toString();
        if (name.endsWith(".xyz")) {
            readGrid(Bathymetries.open(soundingsPlan(file)));
        } else if (isGrid(file)) {
            readGrid(Bathymetries.open(Sources.plain(file)));
        } else {
            GeometryCheck.requireValid(VectorLayers.read(name.endsWith(".000") ? Sources.withTable(file, "SBDARE") : Sources.plain(file)));
        }
    }

    static SitingPlan soundingsPlan(Path file) {
        Path plan = file.resolveSibling("plan.yaml");
        try {
            Files.writeString(plan, "cell: 10 m\nbathymetry: {file: " + file.getFileName() + ", crs: EPSG:32617, values: elevation, unit: m, survey-order: 1a}\n" + """
                    module: {height: 9 m, landing-radius: 25 m}
                    criteria:
                      depth: {weight: 1, curve: [60 m, 80 m, 120 m, 150 m]}
                    sites: {apart: 150 m}
                    """);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return PlanReader.read(plan, false);
    }

    /** The first and the last cells, as many as a run reads at once. */
    static void readGrid(Bathymetry opened) {
        try (Bathymetry grid = opened) {
            int cols = Math.min(grid.cols(), 200);
            int rows = Math.min(grid.rows(), 200);
            float[] into = new float[cols * rows];
            grid.read(0, 0, cols, rows, into);
            grid.read(grid.cols() - cols, grid.rows() - rows, cols, rows, into);
            grid.uncertainty().ifPresent(u -> u.read(0, 0, cols, rows, into));
        }
    }

    /** An archive of one entry. */
    static byte[] zip(String entry, String text) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry(entry));
            zip.write(text.getBytes(StandardCharsets.UTF_8));
        }
        return bytes.toByteArray();
    }

    private static void geoPackage(Path file) {
        try (GeoPackageFixture fixture = new GeoPackageFixture(file)) {
            fixture.run("PRAGMA page_size = 512").run("VACUUM").crs(4326, "EPSG", 4326, "").table("t", 4326);
            for (int i = 0; i < 20; i++) {
                fixture.row("t", i, GeoPackageFixture.blob("POLYGON ((0 0, 9 0, 9 9, 0 0), (2 1, 3 1, 3 2, 2 1))"), "name " + i);
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void shapefile(Path folder) throws IOException {
        ShapefileFixture shapes = new ShapefileFixture(5)
                .parts(5, new double[] {0, 0, 0, 9, 9, 9, 9, 0, 0, 0}, new double[] {1, 1, 2, 1, 2, 2, 1, 1})
                .nullShape().parts(15, new double[] {0, 0, 0, 9, 9, 9, 9, 0, 0, 0}).multiPoint(8, 1, 2, 3, 4).parts(3, new double[] {0, 0, 1, 1});
        ShapefileFixture.write(folder, "a.shp", shapes.main());
        ShapefileFixture.write(folder, "a.dbf", ShapefileFixture.table(0x57, StandardCharsets.ISO_8859_1, new String[] {"a", "1"},
                new String[] {"*b", "2.5"}, new String[] {"c", ""}, new String[] {"d", "-4"}, new String[] {"e", "5"}));
        Files.writeString(folder.resolve("a.cpg"), "UTF-8");
        Files.writeString(folder.resolve("a.prj"), WGS84);
    }

    static byte[] netCdf4() {
        return new HandHdf().contiguous("lat", HandHdf.DOUBLE, new long[] {2}, HandHdf.doubles(10, 11), attributes("units", "degrees_north"))
                .contiguous("lon", HandHdf.DOUBLE, new long[] {3}, HandHdf.doubles(-80, -79, -78), attributes("units", "degrees_east"))
                .contiguous("crs", HandHdf.INT, new long[0], new byte[4], attributes("grid_mapping_name", "latitude_longitude", "crs_wkt",
                        "GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,298.257223563]],PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]]"))
                .contiguous("elevation", HandHdf.SHORT, new long[] {2, 3}, HandHdf.shorts(1, 2, 3, 4, 5, 6),
                        attributes("grid_mapping", "crs", "scale_factor", new double[] {0.5}, "_FillValue", new double[] {5})).toBytes();
    }

    static byte[] classicNetCdf(int version) {
        return new HandCdf(version).records("lat", 2).dimension("lon", 3)
                .variable("lon", HandCdf.DOUBLE, attributes("units", "degrees_east"), new double[] {1, 2, 3}, "lon")
                .variable("lat", HandCdf.DOUBLE, attributes("units", "degrees_north"), new double[] {5, 6}, "lat")
                .variable("crs", HandCdf.BYTE, attributes("grid_mapping_name", "latitude_longitude"), new double[] {0})
                .variable("z", HandCdf.SHORT, attributes("grid_mapping", "crs", "valid_range", new double[] {1, 5}),
                        new double[] {1, 2, 3, 4, 5, 6}, "lat", "lon").toBytes();
    }
}
