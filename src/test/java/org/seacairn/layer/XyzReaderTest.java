package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.PlanReader;

class XyzReaderTest {
    private static final float NONE = Float.NaN;
    private static final String UTM = "crs: EPSG:32617, ";

    @TempDir
    private Path folder;

    private Bathymetry open(String head, String keys, String name, String text) {
        return open(head, keys, name, text, StandardCharsets.UTF_8);
    }

    private Bathymetry open(String head, String keys, String name, String text, Charset charset) {
        try {
            Files.write(folder.resolve(name), text.getBytes(charset));
            Files.writeString(folder.resolve("plan.yaml"), head + "bathymetry: {file: " + name + ", " + keys
                    + "values: elevation, unit: m, survey-order: 1a}\n" + """
                    module: {height: 9 m, landing-radius: 25 m}
                    criteria:
                      depth: {weight: 1, curve: [60 m, 80 m, 120 m, 150 m]}
                    sites: {apart: 150 m}
                    """);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return Bathymetries.open(PlanReader.read(folder.resolve("plan.yaml"), false));
    }

    private List<String> problems(String head, String keys, String text) {
        return assertThrows(InputException.class, () -> open(head, keys, "s.xyz", text).close()).problems();
    }

    private static float[] all(Bathymetry b) {
        float[] values = new float[b.cols() * b.rows()];
        b.read(0, 0, b.cols(), b.rows(), values);
        return values;
    }

    /** By hand: three cells of 10 m side by side, the second empty, the third with an even number. */
    @Test
    void aCellTakesTheMedianOfItsOwnAndAnEmptyOneThatOfThoseInReach() {
        String text = "500001 3000009 -80\n500002 3000008 -81\n500009 3000002 -90\n500021 3000004 -70\n500028 3000004 -73\n";
        try (Bathymetry b = open("cell: 10 m\n", UTM, "s.xyz", text)) {
            assertEquals("XYZ soundings", b.format());
            assertEquals(500_000, b.west());
            assertEquals(3_000_010, b.north());
            assertEquals(10, b.cellWidth());
            assertEquals(Crs.ofEpsg(32617), b.crs());
            // The middle's centre is (15, 5): within 15 m lie all five, of which -80 is the median.
            assertArrayEquals(new float[] {-81, -80, -71.5f}, all(b));
            assertEquals(List.of("gridded by the median: 5 soundings on cells of 10 m; 2 cells hold soundings, 1 more have one within the"
                    + " reach of 15 m of their centre, 0 have no depth",
                    "the sounding in line 4 is 1.5 m shallower than its cell, more than any other: a median leaves rocks and wrecks out as it"
                    + " does errors"), b.notes());
        }
        try (Bathymetry b = open("cell: 10 m\n", UTM + "reach: 5 m, gridding: median, ", "s.xyz", text)) {
            assertArrayEquals(new float[] {-81, NONE, -71.5f}, all(b));
        }
    }

    /** Against a plain program and the median of Commons Math. */
    @Test
    void randomSoundingsAsAPlainProgramGridsThem() {
        Random random = new Random(5);
        for (int scene = 0; scene < 20; scene++) {
            int count = 1 + random.nextInt(400);
            double cell = 5 + random.nextInt(40);
            double reach = cell * (random.nextBoolean() ? 1.5 : 4 * random.nextDouble());
            double[][] s = new double[count][];
            StringBuilder text = new StringBuilder("easting,northing,depth_m\n");
            for (int i = 0; i < count; i++) {
                s[i] = new double[] {500_000 + 0.25 * random.nextInt(1200), 3_000_000 + 0.25 * random.nextInt(800), -60 - 0.25 * random.nextInt(200)};
                text.append(String.format(Locale.ROOT, "%.2f,%.2f,%.2f%n", s[i][0], s[i][1], s[i][2]));
            }
            try (Bathymetry b = open("cell: " + cell + " m\n", UTM + "reach: " + reach + " m, ", "s.csv", text.toString())) {
                float[] found = all(b);
                for (int cellAt = 0; cellAt < found.length; cellAt++) {
                    double x = b.west() + (cellAt % b.cols() + 0.5) * cell;
                    double y = b.north() - (cellAt / b.cols() + 0.5) * cell;
                    double[] own = java.util.Arrays.stream(s).filter(p -> p[0] >= x - cell / 2 && p[0] < x + cell / 2 && p[1] > y - cell / 2
                            && p[1] <= y + cell / 2).mapToDouble(p -> p[2]).toArray();
                    double[] near = java.util.Arrays.stream(s).filter(p -> Math.hypot(p[0] - x, p[1] - y) <= reach).mapToDouble(p -> p[2]).toArray();
                    assertEquals((float) new Median().evaluate(own.length > 0 ? own : near), found[cellAt], "scene " + scene + ", cell " + cellAt);
                }
            }
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            s.xyz | 500005 3000005 -80.5\\n500015 3000005 -81
            s.xyz |   500005\\t3000005\\t-80.5\\r\\n500015\\t3000005\\t-81\\r\\n
            s.xyz | # made up\\n500005 3000005 -80.5\\n\\n// more\\n500015 3000005 -81
            s.txt | 500005,3000005,-80.5\\n500015,3000005,-81
            s.txt | 500005, 3000005, -80.5\\n500015, 3000005, -81
            s.txt | 500005;3000005;-80,5\\n500015;3000005;-81
            s.txt | 500005,0 3000005,0 -80,5\\n500015,0 3000005,0 -81,0
            s.csv | depth,northing,easting\\n-80.5,3000005,500005\\n-81,3000005,500015
            s.csv | "Rechtswert";"Hochwert";"Tiefe [m]";Linie\\n500005;3000005;-80,5;a\\n500015;3000005;-81;b
            s.CSV | x,y,z\\n5.00005e5,3000005,-80.5\\n500015,3000005,-81
            s.csv | id,easting,northing,Elevation (m),quality\\n1,500005,3000005,-80.5,good,\\n2,500015,3000005,-81,good
            """)
    void anyDelimiterAndHeader(String name, String text) {
        try (Bathymetry b = open("cell: 10 m\n", UTM, name, text.replace("\\n", "\n").replace("\\r", "\r").replace("\\t", "\t"))) {
            assertArrayEquals(new float[] {-80.5f, -81}, all(b));
        }
    }

    /** The positions of a known 20 m lattice lie on the edges of aligned cells. */
    @Test
    void aLatticeComesToLieInTheCentres() {
        StringBuilder text = new StringBuilder();
        for (int row = 0; row < 4; row++) {
            for (int col = 0; col < 6; col++) {
                text.append(500_000 + 20 * col).append(' ').append(3_000_000 - 20 * row).append(' ').append(-(10 * row + col + 60)).append('\n');
            }
        }
        try (Bathymetry b = open("cell: 20 m\n", UTM, "s.xyz", text.toString())) {
            assertEquals(499_990, b.west(), 1e-6);
            assertEquals(3_000_010, b.north(), 1e-6);
            float[] found = all(b);
            assertEquals(24, found.length);
            for (int i = 0; i < 24; i++) {
                assertEquals(-(10 * (i / 6) + i % 6 + 60), found[i]);
            }
        }
    }

    /** Zone 17's central meridian: 81 W is easting 500,000 (EPSG guidance note 7-2). */
    @Test
    void longitudeAndLatitudeComeToTheWorkingCrs() {
        try (Bathymetry b = open("cell: 10 m\n", "", "s.csv", "lat,lon,z\n27,279,-80\n")) {
            assertEquals(Crs.ofEpsg(32617), b.crs());
            assertEquals(1, b.cols());
            assertEquals(500_000, b.west() + 5, 1e-3);
            assertEquals(List.of("its longitudes and latitudes are taken as WGS 84, since a text of soundings states no CRS",
                    "1 longitudes above 180 are taken less 360"), b.notes().subList(0, 2));
        }
    }

    @Test
    void repeatedSoundingsAreTold() {
        try (Bathymetry b = open("cell: 10 m\n", UTM, "s.xyz", "500001 3000001 -80\n500001 3000001 -80\n500001 3000001 -82\n500001 3000002 -80\n")) {
            assertEquals("1 soundings repeat another with place and value, 1 give another value for the same place; all are counted", b.notes().get(1));
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            500005 3000005 -80\\n500005 3000005        | s.xyz, line 2: has 2 columns where the first line has 3; complete the line or delete it
            500005 3000005 NaN                          | s.xyz, line 1: no columns of longitude and latitude, or easting and northing, among "500005", "3000005", "NaN"; give them these names in a header line, or name the columns with "x-column" and "y-column"
            500005 3000005 -80\\n500005 3000005 nan    | s.xyz, line 2: "nan" is no number; correct the line or delete it
            500005 3000005 -80\\n500005 Infinity -80   | s.xyz, line 2: "Infinity" is no number; correct the line or delete it
            500005 3000005 -80\\n500005 3000005 -1e999 | s.xyz, line 2: "-1e999" is no number; correct the line or delete it
            500005 3000005 -80\\n500005 3000005 0x50   | s.xyz, line 2: "0x50" is no number; correct the line or delete it
            500005 3000005 -80\\n500005 3000005 -9999  | s.xyz, line 2: the value -9999 looks like one that stands for no depth; delete the line
            500005 3000005 -80\\n500005 3000005 -12000 | s.xyz, line 2: the value -12000 is deeper than any ocean and higher than any mountain in the plan's unit; correct the line or delete it, or correct the plan's unit
            500005 3000005 -80 1                        | s.xyz, line 1: has 4 columns and no header line; without one there must be x, y and z alone: add a header line such as easting, northing, depth
            easting northing quality\\n500005 3000005 1 | s.xyz, line 1: no column of depths among "easting", "northing", "quality"; name one column z, depth or elevation, and no other so
            easting northing z depth\\n500005 3000005 1 1 | s.xyz, line 1: "z" and "depth" may all be the depth, among "easting", "northing", "z", "depth"; name one column z, depth or elevation, and no other so
            # nothing\\n                                | s.xyz, line 1: the file holds no sounding; get it again
            easting northing z                          | s.xyz, line 1: no sounding follows the header; get the file again
            easting northing depth_ft\\n500005 3000005 -80 | s.xyz, values: are in the unit "ft", and the plan says "unit: m"; state the file's unit in the plan's bathymetry
            500005 3000005 -80\\n0 0 -80               | s.xyz: a grid of 10 m cells over the soundings has 50001 x 300002 cells, more than 134217728; state a larger cell in the plan, or look for a sounding out of place (the westernmost is in line 2, the easternmost in 1, the southernmost in 2, the northernmost in 1)
            """)
    void badLinesAreNamed(String text, String expected) {
        assertEquals(List.of(expected), problems("cell: 10 m\n", UTM, text.replace("\\n", "\n")));
    }

    @Test
    void allBadLinesAreToldUpToTwenty() {
        List<String> problems = problems("cell: 10 m\n", UTM, "500005 3000005 -80\n" + "1 2\n".repeat(25));
        assertEquals(21, problems.size());
        assertEquals("s.xyz, line 21: has 2 columns where the first line has 3; complete the line or delete it", problems.get(19));
        assertEquals("s.xyz: and 5 more lines like these", problems.get(20));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            ''           | crs: EPSG:32617,               | s.xyz: soundings have no cell of their own; state it in the plan, for example "cell: 20 m"
            'cell: 20 m' | ''                             | s.xyz: the file states no CRS; state it in the plan beside the file, for example crs: EPSG:32617
            'cell: 20 m' | crs: EPSG:4326,                | s.xyz, line 1: longitude 500005, latitude 3000010 is no place on earth; correct the line, or state the soundings' projected crs in the plan
            'cell: 20 m' | crs: EPSG:32617, reach: 201 m, | s.xyz: reach is 201 m, more than 10 cells of 20 m; so far from a sounding a depth would be made up: state a shorter reach or a larger cell
            """)
    void whatThePlanMustSay(String head, String keys, String expected) {
        assertEquals(List.of(expected), problems(head + "\n", keys + " ", "500005 3000005 -80\n"));
    }

    @Test
    void noTextIsRefused() {
        String message = assertThrows(InputException.class, () -> open("cell: 10 m\n", UTM, "s.xyz", "500005 3000005 -80\n", StandardCharsets.UTF_16).close())
                .getMessage();
        assertTrue(message.startsWith("s.xyz, line 1: holds a zero byte"), message);
        message = assertThrows(InputException.class, () -> open("cell: 10 m\n", UTM, "s.xyz", "5".repeat(5000)).close()).getMessage();
        assertEquals("s.xyz, line 1: is longer than 4096 bytes; this is no text of soundings", message);
    }
}
