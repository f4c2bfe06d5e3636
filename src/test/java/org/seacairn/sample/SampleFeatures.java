package org.seacairn.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;

/** What people put there: lanes, cables, reefs, permit areas, sonar contacts. All names are invented. */
final class SampleFeatures {
    /** NAD83 / Florida East (ftUS), in the words that a county's GIS would write beside its shapefile. */
    static final String STATE_PLANE_WKT = "PROJCS[\"NAD_1983_StatePlane_Florida_East_FIPS_0901_Feet\","
            + "GEOGCS[\"GCS_North_American_1983\",DATUM[\"D_North_American_1983\","
            + "SPHEROID[\"GRS_1980\",6378137.0,298.257222101]],"
            + "PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]],"
            + "PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"False_Easting\",656166.6666666665],"
            + "PARAMETER[\"False_Northing\",0.0],PARAMETER[\"Central_Meridian\",-81.0],"
            + "PARAMETER[\"Scale_Factor\",0.9999411764705882],PARAMETER[\"Latitude_Of_Origin\",24.33333333333333],"
            + "UNIT[\"Foot_US\",0.3048006096012192]]";

    private record Reef(String name, double x, double y, int placed) {}

    private record Cable(String name, String status, double[] xy) {}

    private static final List<Reef> REEFS = List.of(
            new Reef("Pepperpot Heap", 14_250, 13_380, 1994),
            new Reef("Lost Anvil", 15_900, 12_350, 2003),
            new Reef("Thimble Heap", 14_650, 15_800, 1998),
            new Reef("Wick and Tallow, north", 15_700, 16_150, 2011),
            new Reef("Wick and Tallow, south", 15_850, 15_420, 2011),
            new Reef("Tin Lantern", 10_600, 5_250, 1989),
            new Reef("Copperbell Heap", 11_900, 3_050, 2007),
            new Reef("Blue Latch", 12_550, 4_900, 2015),
            new Reef("Kettle Barge, upright", 11_050, 2_200, 2019),
            new Reef("Sorrel Rows", 8_700, 11_200, 1985),
            new Reef("Cinder Cradle", 5_200, 9_800, 1979));

    private static final List<Cable> CABLES = List.of(
            new Cable("Larkspur 1", "in service",
                    new double[] {-3_000, 15_600, 3_500, 15_350, 8_000, 14_850, 13_500, 14_150,
                        17_000, 14_900, 21_000, 15_900, 30_000, 17_400}),
            new Cable("Larkspur 2", "in service",
                    new double[] {-3_000, 2_700, 4_000, 2_950, 9_200, 2_250, 14_000, 1_250, 20_000, 300, 30_000, -900}),
            new Cable("Saltwort", "out of service",
                    new double[] {9_000, 20_500, 9_900, 15_000, 9_700, 11_800, 8_600, 9_000,
                        7_700, 4_000, 6_200, -2_000}));

    /** What a magnetometer saw and nobody has dived on. */
    private static final double[][] CONTACTS = {
        {13_700, 15_950}, {16_950, 12_900}, {10_250, 3_250}, {12_150, 6_150}, {4_300, 13_000}};

    private SampleFeatures() {}

    /** Far longer than the grid, with corners only: the straight side of a lane is straight on the chart. */
    static List<ShapefileFiles.Polygon> lanes() {
        return List.of(
                // The first name has letters outside ASCII on purpose.
                new ShapefileFiles.Polygon("Mélèze Approach", feet(
                        -26_000, 6_950, -26_000, 8_150, 15_000, 11_050,
                        52_000, 11_500, 52_000, 10_300, 15_000, 9_850)),
                new ShapefileFiles.Polygon("Coastwise Lane, northbound", feet(
                        10_300, -22_000, 21_300, 18_000, 26_500, 40_000,
                        27_700, 40_000, 22_500, 18_000, 11_500, -22_000)));
    }

    private static List<Coordinate> feet(double... xy) {
        CoordinateTransform toStatePlane = Crs.WGS84.to(Crs.ofEpsg(2236));
        List<Coordinate> ring = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            Coordinate degrees = SampleFrame.longitudeLatitude(xy[i], xy[i + 1]);
            Coordinate feet = toStatePlane.apply(degrees.x, degrees.y);
            ring.add(new Coordinate(SampleFrame.rounded(feet.x, 100), SampleFrame.rounded(feet.y, 100)));
        }
        ring.add(ring.get(0));
        return ring;
    }

    static String cablesGeoJson() {
        return collection(CABLES, cable -> "{\"type\": \"Feature\", \"properties\": {\"name\": \"" + cable.name()
                + "\", \"status\": \"" + cable.status()
                + "\"}, \"geometry\": {\"type\": \"LineString\", \"coordinates\": ["
                + positions(lineString(cable.xy())) + "]}}");
    }

    private static List<Coordinate> lineString(double[] xy) {
        List<Coordinate> line = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            line.add(SampleFrame.longitudeLatitude(xy[i], xy[i + 1]));
        }
        return line;
    }

    /** Rectangles along meridians and parallels, as permits describe them: corners in whole hundredths of a minute. */
    static String permitAreasGeoJson() {
        List<String> names = List.of("Tamarack Deep North", "Tamarack Deep South");
        double[][] corners = {{12_700, 11_300, 18_300, 16_900}, {9_500, 1_500, 14_000, 7_050}};
        return collection(List.of(0, 1), i -> {
            Coordinate southWest = SampleFrame.longitudeLatitude(corners[i][0], corners[i][1]);
            Coordinate northEast = SampleFrame.longitudeLatitude(corners[i][2], corners[i][3]);
            double west = SampleFrame.rounded(southWest.x, 6_000);
            double south = SampleFrame.rounded(southWest.y, 6_000);
            double east = SampleFrame.rounded(northEast.x, 6_000);
            double north = SampleFrame.rounded(northEast.y, 6_000);
            List<Coordinate> ring = List.of(new Coordinate(west, south), new Coordinate(east, south),
                    new Coordinate(east, north), new Coordinate(west, north), new Coordinate(west, south));
            return "{\"type\": \"Feature\", \"properties\": {\"name\": \"" + names.get(i)
                    + "\"}, \"geometry\": {\"type\": \"Polygon\", \"coordinates\": [[" + positions(ring) + "]]}}";
        });
    }

    private static <T> String collection(List<T> items, Function<T, String> feature) {
        return items.stream().map(feature).collect(Collectors.joining(
                ",\n", "{\"type\": \"FeatureCollection\", \"features\": [\n", "\n]}\n"));
    }

    private static String positions(List<Coordinate> line) {
        return line.stream()
                .map(c -> String.format(Locale.ROOT, "[%.7f, %.7f]", c.x, c.y))
                .collect(Collectors.joining(", "));
    }

    static String reefsCsv(SampleTerrain terrain) {
        StringBuilder csv = new StringBuilder("name,latitude,longitude,depth_ft,placed\n");
        for (Reef reef : REEFS) {
            Coordinate at = SampleFrame.longitudeLatitude(reef.x(), reef.y());
            csv.append(String.format(Locale.ROOT, "%s,%s,%s,%.0f,%d\n",
                    reef.name().contains(",") ? '"' + reef.name() + '"' : reef.name(),
                    degreesMinutes(at.y, "N", "S"), degreesMinutes(at.x, "E", "W"),
                    terrain.depthM(reef.x(), reef.y()) / 0.3048, reef.placed()));
        }
        return csv.toString();
    }

    static String contactsCsv() {
        StringBuilder csv = new StringBuilder("contact,easting_m,northing_m\n");
        for (int i = 0; i < CONTACTS.length; i++) {
            csv.append(String.format(Locale.ROOT, "M-%02d,%.1f,%.1f\n", i + 1,
                    SampleFrame.WEST_M + CONTACTS[i][0], SampleFrame.SOUTH_M + CONTACTS[i][1]));
        }
        return csv.toString();
    }

    private static String degreesMinutes(double degrees, String positive, String negative) {
        long thousandths = StrictMath.round(StrictMath.abs(degrees) * 60_000);
        return String.format(Locale.ROOT, "%d %06.3f %s",
                thousandths / 60_000, thousandths % 60_000 / 1000.0, degrees < 0 ? negative : positive);
    }
}
