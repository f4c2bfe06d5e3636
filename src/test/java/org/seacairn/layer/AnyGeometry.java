package org.seacairn.layer;

import static org.seacairn.layer.FlatGeobufFixture.table;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * One feature in any vector format, whatever its coordinates are: what no writer with care for validity would write.
 *
 * @param type 1 a point, 2 a line, 3 a polygon of one ring, as well-known binary counts them
 * @param xy x and y by turns
 */
record AnyGeometry(int type, double... xy) {
    private static final String[] NAMES = {"", "Point", "LineString", "Polygon"};

    /**
     * @param crs an EPSG code, or text that is said to be well-known text, or null for the format's own longitude and latitude
     * @return the file, which states the CRS in the way of the format
     */
    Path write(AnyFormat format, Path folder, String crs) throws IOException, SQLException {
        Path file = folder.resolve(format.files.get(0));
        switch (format) {
            case GEOJSON -> Files.writeString(file, geoJson(crs));
            case GPX -> Files.writeString(file, gpx());
            case KML -> Files.writeString(file, kml());
            case KMZ -> Files.write(file, AnyFormat.zip("doc.kml", kml()));
            case CSV -> Files.writeString(file, (crs == null ? "longitude,latitude\n" : "easting,northing\n") + pairs(",", "\n") + "\n");
            case FLATGEOBUF -> Files.write(file, flatGeobuf(crs));
            case SHAPEFILE -> {
                Files.write(file, (type == 1 ? new ShapefileFixture(1).point(1, xy[0], xy[1]) : new ShapefileFixture(2 * type - 1).parts(2 * type - 1, xy)).main());
                Files.writeString(folder.resolve("a.prj"), crs == null ? AnyFormat.WGS84 : crs);
            }
            case GEOPACKAGE -> {
                try (GeoPackageFixture fixture = new GeoPackageFixture(file)) {
                    int code = crs == null ? 4326 : isCode(crs) ? Integer.parseInt(crs) : 99;
                    fixture.crs(code, code == 99 ? "x" : "EPSG", code, isCode(crs) ? "undefined" : crs).table("t", code).row("t", 1, geoPackage(), "a");
                }
            }
            default -> throw new IllegalArgumentException(format + " is written cell by cell, or from nodes and edges");
        }
        return file;
    }

    private static boolean isCode(String crs) {
        return crs == null || crs.matches("[0-9]+");
    }

    private String pairs(String within, String between) {
        return IntStream.range(0, xy.length / 2).mapToObj(i -> xy[2 * i] + within + xy[2 * i + 1]).collect(Collectors.joining(between));
    }

    private String geoJson(String crs) {
        String positions = "[" + pairs(",", "],[").replace("Infinity", "1e999") + "]";
        String coordinates = type == 1 ? positions : type == 2 ? "[" + positions + "]" : "[[" + positions + "]]";
        return ("{'type':'FeatureCollection'," + (crs == null ? "" : "'crs':{'type':'name','properties':{'name':'" + (isCode(crs) ? "EPSG:" : "")
                + crs.replace("\"", "\\\"") + "'}},") + "'features':[\n{'type':'Feature','properties':{},'geometry':{'type':'" + NAMES[type]
                + "','coordinates':" + coordinates + "}}]}").replace('\'', '"');
    }

    private String gpx() {
        String tag = type == 1 ? "wpt" : "trkpt";
        String points = IntStream.range(0, xy.length / 2).mapToObj(i -> "<" + tag + " lon='" + xy[2 * i] + "' lat='" + xy[2 * i + 1] + "'/>")
                .collect(Collectors.joining());
        return "<gpx version='1.1'>\n" + (type == 1 ? points : "<trk><trkseg>" + points + "</trkseg></trk>") + "</gpx>";
    }

    private String kml() {
        String coordinates = "<coordinates>" + pairs(",", " ") + "</coordinates>";
        return "<kml><Placemark>\n<" + NAMES[type] + ">" + (type == 3 ? "<outerBoundaryIs><LinearRing>" + coordinates + "</LinearRing></outerBoundaryIs>"
                : coordinates) + "</" + NAMES[type] + "></Placemark></kml>";
    }

    private byte[] flatGeobuf(String crs) {
        Map<Integer, Object> system = crs == null ? FlatGeobufFixture.epsg(4326) : isCode(crs) ? FlatGeobufFixture.epsg(Integer.parseInt(crs)) : table(4, crs);
        return FlatGeobufFixture.of(table(2, (byte) type, 7, new ArrayList<Map<Integer, Object>>(), 8, 1L, 9, (short) 0, 10, system))
                .feature(table(1, xy)).toBytes();
    }

    private byte[] geoPackage() {
        ByteBuffer wkb = ByteBuffer.allocate(8 + 5 + 8 + 8 * xy.length).order(ByteOrder.LITTLE_ENDIAN);
        wkb.put("GP\0\1".getBytes(StandardCharsets.US_ASCII)).putInt(4326).put((byte) 1).putInt(type);
        if (type == 3) {
            wkb.putInt(1);
        }
        if (type > 1) {
            wkb.putInt(xy.length / 2);
        }
        Arrays.stream(xy).forEach(wkb::putDouble);
        return Arrays.copyOf(wkb.array(), wkb.position());
    }

    /** Formats that this can write. */
    static List<AnyFormat> formats() {
        return List.of(AnyFormat.GEOJSON, AnyFormat.GEOPACKAGE, AnyFormat.SHAPEFILE, AnyFormat.GPX, AnyFormat.KML, AnyFormat.KMZ, AnyFormat.CSV, AnyFormat.FLATGEOBUF);
    }
}
