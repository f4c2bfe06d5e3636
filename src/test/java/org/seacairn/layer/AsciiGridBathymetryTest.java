package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;

/** Esri's format as its makers and many others write it: header words, layouts of the values, damage. */
class AsciiGridBathymetryTest {
    private static final String HEADER = "ncols 3\nnrows 2\nxllcorner 500000\nyllcorner 3000000\ncellsize 10\nNODATA_value -9999\n";
    private static final String VALUES = "-1 -2 -3\n-4 -9999 -6\n";
    private static final float[] EXPECTED = {-1, -2, -3, -4, Float.NaN, -6};
    private static final Optional<String> UTM = Optional.of("EPSG:32617");

    @TempDir
    Path folder;

    private Bathymetry open(String text) {
        return open(text, UTM);
    }

    private Bathymetry open(String text, Optional<String> crs) {
        Path file = folder.resolve("depths.asc");
        write(file, text);
        return Bathymetries.open(new LayerFile("bathymetry", file, Optional.empty(), crs, Optional.empty(), Optional.empty(), 1, Edges.GEODESIC));
    }

    private static void write(Path file, String text) {
        try {
            Files.write(file, text.getBytes(StandardCharsets.ISO_8859_1));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static float[] all(Bathymetry b) {
        float[] all = new float[b.cols() * b.rows()];
        b.read(0, 0, b.cols(), b.rows(), all);
        return all;
    }

    private String refusal(String text) {
        String message = assertThrows(InputException.class, () -> {
            try (Bathymetry b = open(text)) {
                all(b);
            }
        }, text).getMessage();
        assertTrue(message.startsWith("depths.asc"), message);
        return message;
    }

    @Test
    void theFirstRowIsTheNorthernmost() {
        try (Bathymetry b = open(HEADER + VALUES)) {
            assertEquals(3, b.cols());
            assertEquals(2, b.rows());
            assertEquals(500_000, b.west());
            assertEquals(3_000_020, b.north());
            assertEquals(10, b.cellWidth());
            assertEquals(10, b.cellHeight());
            assertEquals(32617, b.crs().epsg().getAsInt());
            assertArrayEquals(EXPECTED, all(b));
        }
    }

    /** Esri's description of the format: header words in either case, corner or centre, no-data left out. */
    @ParameterizedTest
    @ValueSource(strings = {
        "NCOLS 3\nNROWS 2\nXLLCORNER 500000\nYLLCORNER 3000000\nCELLSIZE 10\nNODATA_VALUE -9999\n",
        "ncols 3\nnrows 2\nxllcenter 500005\nyllcenter 3000005\ncellsize 10\nnodata_value -9999.0\n",
        "nrows 2\nncols 3\ncellsize 10\nyllcorner 3000000\nxllcorner 500000\nnodata_value -9.999e3\n",
        "ncols 3\nnrows 2\nxllcorner 500000\nyllcorner 3000000\ncellsize 10\n",
        "ncols 3\nnrows 2\nxllcorner 500000\nyllcorner 3000000\ndx 10\ndy 10\nNODATA_value -9999\n",
        "ncols         3\r\nnrows\t2\r\nxllcorner     500000.0000\r\nyllcorner     3000000.00\r\ncellsize      1e1\r\nNODATA_value  -9999\r\n",
        "ncols 3\nnrows 2\nxllcorner 500000,0\nyllcorner 3000000,00\ncellsize 10,0\nNODATA_value -9999,0\n",
        "ncols 3 nrows 2 xllcorner 500000 yllcorner 3000000 cellsize 10 NODATA_value -9999 "})
    void headersOfManyMakersMeanTheSame(String header) {
        try (Bathymetry b = open(header + VALUES)) {
            assertEquals(500_000, b.west(), 1e-9);
            assertEquals(3_000_020, b.north(), 1e-9);
            assertEquals(10, b.cellWidth(), 1e-12);
            assertEquals(10, b.cellHeight(), 1e-12);
            assertArrayEquals(EXPECTED, all(b));
        }
    }

    @Test
    void widthAndHeightOfCellsMayDiffer() {
        try (Bathymetry b = open("ncols 3\nnrows 2\nxllcorner 500000\nyllcorner 3000000\ndx 10\ndy 15\n" + VALUES)) {
            assertEquals(10, b.cellWidth());
            assertEquals(15, b.cellHeight());
            assertEquals(3_000_030, b.north());
        }
        try (Bathymetry b = open("ncols 3\nnrows 2\nxllcenter 500000\nyllcenter 3000000\ndx 10\ndy 15\n" + VALUES)) {
            assertEquals(499_995, b.west());
            assertEquals(3_000_022.5, b.north());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "-1 -2 -3\n-4 -9999 -6\n", "-1 -2 -3\n-4 -9999 -6", "-1\n-2\n-3\n-4\n-9999\n-6\n", "-1 -2 -3 -4 -9999 -6",
        "  -1\t-2  -3  \r\n\r\n -4 -9999 -6\r\n\r\n", "-1 -2\n-3 -4\n-9999 -6", "-1.0 -2e0 -3,0 -4. -9999.00 -60e-1",
        "-1,0 -2,00 -3 -4,0 -9999,0 -6,000", "-1 -2 -3\r-4 -9999 -6\r", "-1 -2 -3 -4 nan -6", "-1 -2 -3 -4 NaN -6"})
    void valuesInAnyLayoutAreTheSame(String values) {
        try (Bathymetry b = open(HEADER + values)) {
            assertArrayEquals(EXPECTED, all(b));
        }
    }

    @Test
    void windowsAreCutFromTheWhole() {
        StringBuilder text = new StringBuilder("ncols 13\nnrows 7\nxllcorner 500000\nyllcorner 0\ncellsize 1\n");
        for (int i = 0; i < 91; i++) {
            text.append(i).append(i % 5 == 0 ? '\n' : ' ');
        }
        try (Bathymetry b = open(text.toString())) {
            Random random = new Random(2);
            for (int k = 0; k < 100; k++) {
                int col = random.nextInt(13);
                int row = random.nextInt(7);
                int cols = 1 + random.nextInt(13 - col);
                int rows = 1 + random.nextInt(7 - row);
                float[] part = new float[cols * rows];
                b.read(col, row, cols, rows, part);
                for (int i = 0; i < part.length; i++) {
                    assertEquals((row + i / cols) * 13 + col + i % cols, part[i]);
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"-9999", "1e20", "-3.4028234663852886e+38", "-99999.0", "0"})
    void anyNumberMayStandForNoData(String noData) {
        String header = HEADER.replace("-9999", noData);
        try (Bathymetry b = open(header + "-1 -2 -3 -4 " + noData + " -6")) {
            assertArrayEquals(EXPECTED, all(b));
        }
    }

    @Test
    void tooFewValuesAreCounted() {
        String message = refusal(HEADER + "-1 -2 -3\n-4 -5\n");
        assertTrue(message.contains("5") && message.contains("6"), message);
        assertTrue(message.matches("(?s).*(cut short|ends|missing|fewer|too few).*"), message);
    }

    @Test
    void noValuesAtAllAreRefused() {
        refusal(HEADER);
    }

    @Test
    void tooManyValuesAreRefusedWithTheirLine() {
        String message = refusal(HEADER + "-1 -2 -3\n-4 -5 -6\n-7\n");
        assertTrue(message.contains("line 9"), message);
    }

    @ParameterizedTest
    @CsvSource({"'-1 -2 x3\n-4 -5 -6', 7, x3", "'-1 -2 -3\n-4 -5 6m', 8, 6m", "'-1 -2 -3\n-4 1.2.3 -6', 8, 1.2.3",
        "'-1 -2 -3\n-4 --5 -6', 8, --5", "'-1 -2 -3\n* -5 -6', 8, *", "'-1\n-2\n-3\n1,2,3\n-5\n-6', 10, '1,2,3'",
        "'-1 -2 -3\n-4 0x1p3 -6', 8, 0x1p3", "'-1 -2 -3\n-4 5f -6', 8, 5f", "'-1 -2 -3\n-4 5d -6', 8, 5d"})
    void whatIsNoNumberIsNamedWithItsLine(String values, int line, String word) {
        String message = refusal(HEADER + values);
        assertTrue(message.contains("line " + line) && message.contains(word), message);
    }

    /** An infinite depth is no depth; a grid that says so is no-data there or refused, never a number. */
    @ParameterizedTest
    @ValueSource(strings = {"inf", "-inf", "Infinity", "1e39", "-1e400"})
    void infiniteValuesNeverBecomeDepths(String value) {
        try (Bathymetry b = open(HEADER + "-1 -2 -3\n-4 " + value + " -6")) {
            assertTrue(Float.isNaN(all(b)[4]), value + " is read as " + all(b)[4]);
        } catch (InputException e) {
            assertTrue(e.getMessage().startsWith("depths.asc, line 8"), e.getMessage());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "'ncols 3\nnrows 2\nxllcorner 0\nyllcorner 0\n1 2 3 4 5 6', cellsize",
        "'ncols 3\nxllcorner 0\nyllcorner 0\ncellsize 1\n1 2 3 4 5 6', nrows",
        "'nrows 3\nxllcorner 0\nyllcorner 0\ncellsize 1\n1 2 3 4 5 6', ncols",
        "'ncols 3\nnrows 2\nyllcorner 0\ncellsize 1\n1 2 3 4 5 6', xll",
        "'ncols 3\nnrows 2\nxllcorner 0\ncellsize 1\n1 2 3 4 5 6', yll",
        "'ncols 3\nnrows 2\nxllcorner 0\nyllcorner 0\ndx 1\n1 2 3 4 5 6', dy",
        "'ncols 0\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 1\n1', ncols",
        "'ncols -3\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 1\n1', ncols",
        "'ncols 2.5\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 1\n1', ncols",
        "'ncols 3\nnrows two\nxllcorner 0\nyllcorner 0\ncellsize 1\n1', two",
        "'ncols 3\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 0\n1 2 3 4 5 6', cellsize",
        "'ncols 3\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize -1\n1 2 3 4 5 6', cellsize",
        "'ncols 3\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize nan\n1 2 3 4 5 6', cellsize",
        "'ncols 3\nnrows 2\nxllcorner inf\nyllcorner 0\ncellsize 1\n1 2 3 4 5 6', inf",
        "'ncols 3\nncols 2\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 1\n1 2 3 4 5 6', ncols",
        "'ncols 3\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 1\nrotation 5\n1 2 3 4 5 6', rotation"})
    void headersThatCannotBeRightAreRefusedByTheirWord(String text, String word) {
        String message = refusal(text);
        assertTrue(message.contains(word), message);
    }

    /** Sizes that would not fit into memory, or whose product overflows, with next to nothing behind them. */
    @ParameterizedTest
    @CsvSource({"1000000000, 1000000000", "2147483647, 2147483647", "65536, 65536", "4294967297, 1", "99999999999999999999, 2",
        "16384, 16384", "46341, 46341"})
    void promisesThatTheFileCannotKeepAreRefusedAtOnce(String cols, String rows) {
        refusal("ncols " + cols + "\nnrows " + rows + "\nxllcorner 0\nyllcorner 0\ncellsize 1\n1 2 3\n");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\n\n", "ncols", "ncols 3\nnrows", "PK\u0003\u0004", "<!DOCTYPE html>\n<html>", "3 2\n1 2 3\n4 5 6\n"})
    void whatIsNoGridIsRefused(String text) {
        refusal(text);
    }

    @Test
    void aWordWithoutEndIsNotReadToTheEnd() {
        String message = refusal(HEADER + "1".repeat(1_000_000));
        assertTrue(message.length() < 400, "the message repeats the file: " + message.length() + " characters");
    }

    @Test
    void theCrsComesFromTheFileBeside() {
        write(folder.resolve("depths.prj"), Crs.ofEpsg(32733).wkt());
        try (Bathymetry b = open(HEADER + VALUES, Optional.empty())) {
            assertEquals(32733, b.crs().epsg().getAsInt());
        }
    }

    /** As Esri writes it: no axes, no codes, underscores in names. */
    @ParameterizedTest
    @ValueSource(strings = {"depths.prj", "depths.PRJ"})
    void anEsriStyleCrsIsUnderstood(String name) {
        write(folder.resolve(name), "PROJCS[\"WGS_1984_UTM_Zone_17N\",GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\","
                + "SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]],"
                + "PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"False_Easting\",500000.0],PARAMETER[\"False_Northing\",0.0],"
                + "PARAMETER[\"Central_Meridian\",-81.0],PARAMETER[\"Scale_Factor\",0.9996],PARAMETER[\"Latitude_Of_Origin\",0.0],"
                + "UNIT[\"Meter\",1.0]]");
        try (Bathymetry b = open(HEADER + VALUES, Optional.empty())) {
            var expected = Crs.ofEpsg(32617).to(Crs.WGS84).apply(512_345, 3_210_987);
            var found = b.crs().to(Crs.WGS84).apply(512_345, 3_210_987);
            assertEquals(expected.x, found.x, 1e-9);
            assertEquals(expected.y, found.y, 1e-9);
        }
    }

    @Test
    void thePlansCrsOverridesTheFileBeside() {
        write(folder.resolve("depths.prj"), Crs.ofEpsg(32733).wkt());
        try (Bathymetry b = open(HEADER + VALUES)) {
            assertEquals(32617, b.crs().epsg().getAsInt());
        }
    }

    @Test
    void withoutCrsThePlanMustStateIt() {
        assertEquals("depths.asc: the file states no CRS; state it in the plan beside the file, for example crs: EPSG:32617",
                assertThrows(InputException.class, () -> open(HEADER + VALUES, Optional.empty())).getMessage());
    }

    @Test
    void anUnreadableCrsBesideIsNamed() {
        write(folder.resolve("depths.prj"), "PROJCS[\"half");
        String message = assertThrows(InputException.class, () -> open(HEADER + VALUES, Optional.empty())).getMessage();
        assertTrue(message.contains("depths.prj"), message);
    }
}
