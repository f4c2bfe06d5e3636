package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import javax.imageio.ImageWriteParam;
import org.geotools.api.parameter.GeneralParameterValue;
import org.geotools.coverage.grid.GridCoverage2D;
import org.geotools.coverage.grid.GridCoverageFactory;
import org.geotools.coverage.grid.io.AbstractGridFormat;
import org.geotools.gce.geotiff.GeoTiffFormat;
import org.geotools.gce.geotiff.GeoTiffWriteParams;
import org.geotools.gce.geotiff.GeoTiffWriter;
import org.geotools.geometry.jts.ReferencedEnvelope;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.layer.HandTiff.Sample;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;

/** GeoTIFFs of many makers: from GeoTools' writer where it makes the kind, else laid out by hand. */
class GeoTiffBathymetryTest {
    private static final int COLS = 7;
    private static final int ROWS = 5;

    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("depths.tif");
    }

    private Bathymetry open() {
        return open(Optional.empty());
    }

    private Bathymetry open(Optional<String> crs) {
        return Bathymetries.open(new LayerFile("bathymetry", file(), Optional.empty(), crs, Optional.empty(), Optional.empty(), 1, Edges.GEODESIC));
    }

    private static float[] all(Bathymetry bathymetry) {
        float[] all = new float[bathymetry.cols() * bathymetry.rows()];
        bathymetry.read(0, 0, bathymetry.cols(), bathymetry.rows(), all);
        return all;
    }

    /** -100, -101, … row by row from the first row of the file. */
    private static double[] counted(int count) {
        return IntStream.range(0, count).mapToDouble(i -> -100 - i).toArray();
    }

    private static float[] floats(double... values) {
        float[] floats = new float[values.length];
        for (int i = 0; i < values.length; i++) {
            floats[i] = (float) values[i];
        }
        return floats;
    }

    private void assertPlace(Bathymetry b, double west, double north, double width, double height) {
        assertEquals(COLS, b.cols());
        assertEquals(ROWS, b.rows());
        assertEquals(west, b.west(), 1e-6);
        assertEquals(north, b.north(), 1e-6);
        assertEquals(width, b.cellWidth(), 1e-9);
        assertEquals(height, b.cellHeight(), 1e-9);
    }

    @Test
    void northUpStartsAtTheNorthWest() {
        new HandTiff(COLS, ROWS).write(file(), counted(35));
        try (Bathymetry b = open()) {
            assertPlace(b, 500_000, 3_000_000, 10, 10);
            assertEquals(32617, b.crs().epsg().getAsInt());
            assertEquals("GeoTIFF", b.format());
            assertArrayEquals(floats(counted(35)), all(b));
        }
    }

    @Test
    void southUpIsTurnedAboutInAnyWindow() {
        // The first row of the file is the southernmost.
        new HandTiff(COLS, ROWS).matrix(500_000, 10, 0, 3_000_000, 0, 10).write(file(), counted(35));
        try (Bathymetry b = open()) {
            assertPlace(b, 500_000, 3_000_050, 10, 10);
            float[] whole = all(b);
            for (int i = 0; i < 35; i++) {
                assertEquals(-100 - (4 - i / COLS) * COLS - i % COLS, whole[i]);
            }
            assertWindows(b, whole);
        }
    }

    private static void assertWindows(Bathymetry b, float[] whole) {
        Random random = new Random(1);
        for (int k = 0; k < 100; k++) {
            int col = random.nextInt(b.cols());
            int row = random.nextInt(b.rows());
            int cols = 1 + random.nextInt(b.cols() - col);
            int rows = 1 + random.nextInt(b.rows() - row);
            float[] part = new float[cols * rows];
            b.read(col, row, cols, rows, part);
            for (int i = 0; i < part.length; i++) {
                assertEquals(whole[(row + i / cols) * b.cols() + col + i % cols], part[i]);
            }
        }
    }

    /** OGC 19-008r4, requirement 9 (RasterPixelIsPoint): the tie point is then the centre of the first cell. */
    @Test
    void pixelIsPointLiesHalfACellOff() {
        new HandTiff(COLS, ROWS).keys(2, 32617).write(file(), counted(35));
        try (Bathymetry b = open()) {
            assertPlace(b, 499_995, 3_000_005, 10, 10);
            assertArrayEquals(floats(counted(35)), all(b));
        }
    }

    @Test
    void unequalCellsAndDegreesAreTakenAsTheyAre() {
        new HandTiff(COLS, ROWS).keys(1, 4326).matrix(-81, 0.001, 0, 28, 0, -0.002).write(file(), counted(35));
        try (Bathymetry b = open()) {
            assertPlace(b, -81, 28, 0.001, 0.002);
            assertTrue(b.crs().isGeographic());
            assertEquals(Crs.WGS84, b.crs());
        }
    }

    @ParameterizedTest
    @CsvSource({"1, false, false", "2, true, false", "5, false, true", "4, true, true", "3, false, false"})
    void stripsByteOrdersAndBigTiffGiveTheSameCells(int rowsPerStrip, boolean bigEndian, boolean bigTiff) {
        HandTiff tiff = new HandTiff(COLS, ROWS).rowsPerStrip(rowsPerStrip);
        tiff = bigEndian ? tiff.bigEndian() : tiff;
        tiff = bigTiff ? tiff.bigTiff() : tiff;
        tiff.noData("-9999").write(file(), counted(35));
        try (Bathymetry b = open()) {
            assertPlace(b, 500_000, 3_000_000, 10, 10);
            assertArrayEquals(floats(counted(35)), all(b));
            assertWindows(b, all(b));
        }
    }

    @ParameterizedTest
    @EnumSource(value = Sample.class, names = {"INT16", "INT32", "FLOAT32", "FLOAT64"})
    void signedSamplesOfAnyWidth(Sample sample) {
        double[] values = counted(35);
        values[8] = -9999;
        new HandTiff(COLS, ROWS).samples(sample).noData("-9999").write(file(), values);
        float[] expected = floats(values);
        expected[8] = Float.NaN;
        try (Bathymetry b = open()) {
            assertArrayEquals(expected, all(b));
        }
    }

    @Test
    void unsignedSixteenBitsReachTo65535() {
        double[] values = IntStream.range(0, 35).mapToDouble(i -> 65_534 - 1000.0 * i).toArray();
        values[3] = 65_535;
        new HandTiff(COLS, ROWS).samples(Sample.UINT16).noData("65535").write(file(), values);
        float[] expected = floats(values);
        expected[3] = Float.NaN;
        try (Bathymetry b = open()) {
            assertArrayEquals(expected, all(b));
        }
    }

    /** As GDAL writes tag 42112: the value is stored * scale + offset, and no-data is a stored number. */
    @Test
    void scaleAndOffsetOfTheFirstBandAreApplied() {
        double[] values = counted(70);
        values[4] = -32_768;
        new HandTiff(COLS, ROWS).samples(Sample.INT16).bands(2).noData("-32768").gdalMetadata(
                "  <Item name=\"OFFSET\" sample=\"1\" role=\"offset\">77</Item>\n"
                + "  <Item name=\"OFFSET\" sample=\"0\" role=\"offset\">5</Item>\n"
                + "  <Item name=\"SCALE\" sample=\"0\" role=\"scale\">0.01</Item>\n"
                + "  <Item name=\"SCALE\" sample=\"1\" role=\"scale\">3</Item>\n"
                + "  <Item name=\"UNITTYPE\" sample=\"0\" role=\"unittype\">m</Item>").write(file(), values);
        try (Bathymetry b = open()) {
            assertEquals("m", b.statedUnit());
            float[] found = all(b);
            for (int i = 0; i < 35; i++) {
                assertEquals(i == 2 ? Float.NaN : (float) (values[2 * i] * 0.01 + 5), found[i], 1e-6f, "cell " + i);
            }
        }
    }

    @Test
    void ofSeveralBandsTheFirstIsReadAndTheOthersAreTold() {
        double[] values = new double[105];
        for (int i = 0; i < 35; i++) {
            values[3 * i] = -60 - i;
            values[3 * i + 1] = 1;
            values[3 * i + 2] = 2;
        }
        HandTiff tiff = new HandTiff(COLS, ROWS).bands(3);
        tiff.write(file(), values);
        try (Bathymetry b = open()) {
            float[] found = all(b);
            for (int i = 0; i < 35; i++) {
                assertEquals(-60 - i, found[i]);
            }
            assertWindows(b, found);
            assertEquals(List.of("it has 3 bands (unnamed, unnamed, unnamed); the first is taken as the bathymetry, and no other is used"), b.notes());
        }
    }

    private static String item(int band, String name, String role, String text) {
        return "  <Item name=\"" + name + "\" sample=\"" + band + "\" role=\"" + role + "\">" + text + "</Item>\n";
    }

    /** As national compilations of bathymetry come: elevation, uncertainty, and the number of the survey. */
    @Test
    void aBandThatIsCalledUncertaintyIsThatOfEachCell() throws IOException {
        double[] values = new double[105];
        float[] expected = new float[35];
        for (int i = 0; i < 35; i++) {
            values[3 * i] = -60 - i;
            values[3 * i + 1] = i % 7 == 3 ? 0 : i % 7 == 5 ? Double.NaN : 2 * i + 1;
            values[3 * i + 2] = 40_000;
            expected[i] = i % 7 == 3 || i % 7 == 5 ? Float.NaN : i + 0.5f;
        }
        String names = item(0, "DESCRIPTION", "description", "Elevation") + item(1, "DESCRIPTION", "description", "Uncertainty")
                + item(1, "SCALE", "scale", "0.5");
        HandTiff tiff = new HandTiff(COLS, ROWS).bands(3);
        tiff.gdalMetadata(names).write(file(), values);
        try (Bathymetry b = open()) {
            assertEquals(List.of("it has 3 bands (Elevation, Uncertainty, unnamed); the first is taken as the bathymetry, band 2 as its uncertainty,"
                    + " and no other is used"), b.notes());
            CellUncertainty uncertainty = b.uncertainty().orElseThrow();
            float[] found = new float[35];
            uncertainty.read(0, 0, COLS, ROWS, found);
            assertArrayEquals(expected, found);
            float[] one = new float[1];
            uncertainty.read(2, 3, 1, 1, one);
            assertEquals(expected[3 * COLS + 2], one[0]);
            assertEquals(List.of("band 2", false), List.of(uncertainty.kind(), uncertainty.saysStandardDeviation()));
            assertEquals(-60, all(b)[0]);
        }
        tiff.gdalMetadata(names + item(0, "UNITTYPE", "unittype", "m") + item(1, "UNITTYPE", "unittype", "ft")).write(file(), values);
        try (Bathymetry b = open()) {
            assertEquals(Optional.empty(), b.uncertainty());
        }
    }

    /** TIFF 6.0, ExtraSamples: 1 and 2 are alpha, 0 is a band like another. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void whatAnAlphaBandHidesIsNoData(int extraSample) {
        double[] values = new double[70];
        for (int i = 0; i < 35; i++) {
            values[2 * i] = -60 - i;
            values[2 * i + 1] = i % 3 == 0 ? 0 : 255;
        }
        new HandTiff(COLS, ROWS).bands(2).with(338, new int[] {extraSample}).write(file(), values);
        try (Bathymetry b = open()) {
            float[] found = all(b);
            for (int i = 0; i < 35; i++) {
                assertEquals(extraSample > 0 && i % 3 == 0 ? Float.NaN : -60 - i, found[i], "cell " + i);
            }
            assertWindows(b, found);
            assertEquals(List.of(extraSample == 0 ? "it has 2 bands (unnamed, unnamed); the first is taken as the bathymetry, and no other is used"
                    : "it has 2 bands (unnamed, alpha); the first is taken as the bathymetry, cells that the alpha band hides are no-data,"
                            + " and no other band is used"), b.notes());
        }
    }

    @ParameterizedTest
    @CsvSource({"2, 3", "3, 1", "6, 3"})
    void picturesAreNoBathymetry(int photometric, int bands) {
        new HandTiff(COLS, ROWS).samples(Sample.UINT16).bands(bands).with(262, new int[] {photometric}).with(320, new int[768])
                .write(file(), new double[35 * bands]);
        assertEquals("depths.tif: its cells are colours of a picture (TIFF photometric interpretation " + photometric
                + ") and no depths; give the grid that the picture was made from", assertThrows(InputException.class, this::open).getMessage());
    }

    /** OGC 19-008r4: a code, or a name and a unit of the file's own. */
    @ParameterizedTest
    @CsvSource({"5703, , , NAVD88, metre", "6360, , , NAVD88, US survey foot", "32767, MLLW depth, 9002, MLLW, foot", ", navd88, 9001, navd88, metre",
        "65000, , , '', ''", ", , , '', ''"})
    void keysTellDatumAndUnitOfTheHeights(Integer code, String citation, Integer unit, String datum, String expected) {
        List<Integer> keys = new ArrayList<>(List.of(1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, 32617));
        if (code != null) {
            keys.addAll(List.of(4096, 0, 1, code));
        }
        HandTiff tiff = new HandTiff(COLS, ROWS);
        if (citation != null) {
            keys.addAll(List.of(4097, 34737, citation.length() + 1, 0));
            tiff.with(34737, citation + "|");
        }
        if (unit != null) {
            keys.addAll(List.of(4099, 0, 1, unit));
        }
        keys.addAll(0, List.of(1, 1, 0, keys.size() / 4));
        tiff.with(34735, keys.stream().mapToInt(key -> key).toArray()).write(file(), counted(35));
        try (Bathymetry b = open()) {
            assertEquals(datum, b.statedDatum());
            assertEquals(expected, b.statedUnit());
            assertEquals(32617, b.crs().epsg().orElse(0));
        }
        tiff.gdalMetadata("  <Item name=\"UNITTYPE\" sample=\"0\" role=\"unittype\">fathom</Item>").write(file(), counted(35));
        try (Bathymetry b = open()) {
            assertEquals("fathom", b.statedUnit());
        }
    }

    @Test
    void whatAFileBesideSaysOfTheNumbersIsNotPassedOver() throws IOException {
        Path beside = folder.resolve("depths.tif.aux.xml");
        HandTiff tiff = new HandTiff(COLS, ROWS);
        tiff.write(file(), counted(35));
        String end = " where the file itself states none, and is not read here; write both into one GeoTIFF"
                + " (gdal_translate depths.tif new.tif), or move it away if it does not count";
        for (String element : List.of("<NoDataValue>-110", "<NoDataValue le_hex_endian=\"0\">-110", "<Scale>0.01", "<Offset>5")) {
            Files.writeString(beside, "<PAMDataset><PAMRasterBand band=\"1\">" + element + "</x></PAMRasterBand></PAMDataset>");
            assertEquals("depths.tif: beside it lies depths.tif.aux.xml, which states " + element.replaceFirst(" .*\">|>", "> ") + end,
                    assertThrows(InputException.class, this::open).getMessage());
        }
        for (String element : List.of("<Metadata><MDI key=\"STATISTICS_MAXIMUM\">-60</MDI></Metadata>", "<Scale>1</Scale>", "<Offset>0.0</Offset>")) {
            Files.writeString(beside, "<PAMDataset><PAMRasterBand band=\"1\">" + element + "</PAMRasterBand></PAMDataset>");
            try (Bathymetry b = open()) {
                assertArrayEquals(floats(counted(35)), all(b));
            }
        }
        Files.writeString(beside, "<PAMDataset><PAMRasterBand band=\"1\"></PAMRasterBand><PAMRasterBand band=\"2\"><NoDataValue>0</NoDataValue></PAMRasterBand></PAMDataset>");
        try (Bathymetry b = open()) {
            assertArrayEquals(floats(counted(35)), all(b));
        }
        Files.writeString(beside, "<PAMDataset><PAMRasterBand band=\"1\"><NoDataValue>-110</NoDataValue></PAMRasterBand></PAMDataset>");
        tiff.noData("-110").write(file(), counted(35));
        try (Bathymetry b = open()) {
            assertEquals(Float.NaN, all(b)[10]);
        }
    }

    /** Texts as GDAL, ArcGIS and others write them, and the float that then stands in the cells. */
    @ParameterizedTest
    @CsvSource({"-9999, -9999", "-9999.0, -9999", "-9999.9, -9999.9", "nan, NaN", "NaN, NaN", "-3.4028234663852886e+38, -3.4028235e38",
        "-3.4028235e+38, -3.4028235e38", "-3.40282306073709653e+38, -3.402823e38", "1e+20, 1e20", "1000000, 1e6", "-inf, -Infinity"})
    void noDataInAnySpellingIsNoData(String text, float stored) {
        double[] values = counted(35);
        values[11] = stored;
        new HandTiff(COLS, ROWS).noData(text).write(file(), values);
        float[] expected = floats(values);
        expected[11] = Float.NaN;
        try (Bathymetry b = open()) {
            assertArrayEquals(expected, all(b));
        }
    }

    /** TIFF 6.0, tag 254: bit 2 is a mask, bit 0 a smaller version. GDAL writes masks and overviews of them so. */
    @ParameterizedTest
    @CsvSource({"false, false", "true, false", "false, true", "true, true"})
    void whatAMaskInTheFileHidesIsNoData(boolean bigTiff, boolean southUp) {
        int[] shown = new int[35];
        Arrays.fill(shown, 255);
        shown[3] = 0;
        shown[20] = 0;
        HandTiff tiff = new HandTiff(COLS, ROWS).noData("-101").second(4, COLS, shown);
        tiff = bigTiff ? tiff.bigTiff() : tiff;
        tiff = southUp ? tiff.matrix(500_000, 10, 0, 3_000_000, 0, 10) : tiff;
        tiff.write(file(), counted(35));
        try (Bathymetry b = open()) {
            float[] found = all(b);
            for (int i = 0; i < 35; i++) {
                int inFile = southUp ? (4 - i / COLS) * COLS + i % COLS : i;
                assertEquals(inFile == 1 || inFile == 3 || inFile == 20 ? Float.NaN : -100 - inFile, found[i], "cell " + i);
            }
            assertWindows(b, found);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 5})
    void smallerVersionsAreNotRead(int subfileType) {
        new HandTiff(COLS, ROWS).second(subfileType, 3, 0, 0, 0, 0, 0, 0).write(file(), counted(35));
        try (Bathymetry b = open()) {
            assertPlace(b, 500_000, 3_000_000, 10, 10);
            assertArrayEquals(floats(counted(35)), all(b));
        }
    }

    @Test
    void masksThatCannotBeHonouredAreRefused() throws IOException {
        new HandTiff(COLS, ROWS).second(4, 3, 0, 0, 0, 0, 0, 0).write(file(), counted(35));
        assertEquals("depths.tif: its mask has 3 x 2 cells and its grid 7 x 5; write the file again with the masked cells as no-data",
                assertThrows(InputException.class, this::open).getMessage());
        new HandTiff(COLS, ROWS).write(file(), counted(35));
        Files.write(folder.resolve("depths.tif.msk"), new byte[0]);
        assertEquals("depths.tif: beside it lies a mask, depths.tif.msk, which is not read here; write both into one file with the masked cells as"
                + " no-data, or move the mask away if it does not count", assertThrows(InputException.class, this::open).getMessage());
    }

    @Test
    void notANumberAndInfinityAreNoDataWithoutATag() {
        double[] values = counted(35);
        values[0] = Double.NaN;
        values[1] = Double.POSITIVE_INFINITY;
        values[34] = Double.NEGATIVE_INFINITY;
        new HandTiff(COLS, ROWS).write(file(), values);
        try (Bathymetry b = open()) {
            float[] found = all(b);
            for (int i = 0; i < 35; i++) {
                assertEquals(i < 2 || i == 34, Float.isNaN(found[i]));
            }
        }
    }

    /** GeoTools' own writer: compressions, predictor, strips and tiles. */
    @ParameterizedTest
    @CsvSource({"LZW, 0", "LZW, 16", "Deflate, 0", "Deflate, 16", "PackBits, 0", "ZLib, 32", ", 16", ", 0"})
    void filesOfTheGeoToolsWriterComeBack(String compression, int tile) throws IOException {
        int cols = 53;
        int rows = 37;
        Random random = new Random(3);
        float[][] matrix = new float[rows][cols];
        float[] expected = new float[cols * rows];
        for (int i = 0; i < expected.length; i++) {
            expected[i] = random.nextInt(10) == 0 ? Float.NaN : (float) (-80 + random.nextGaussian());
            matrix[i / cols][i % cols] = expected[i];
        }
        GridCoverage2D coverage = new GridCoverageFactory().create("depths", matrix,
                new ReferencedEnvelope(500_000, 500_000 + cols * 12.5, 3_000_000 - rows * 12.5, 3_000_000, Crs.ofEpsg(32617).library()));
        GeoTiffWriteParams params = new GeoTiffWriteParams();
        if (compression != null) {
            params.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            params.setCompressionType(compression);
        }
        if (tile > 0) {
            params.setTilingMode(ImageWriteParam.MODE_EXPLICIT);
            params.setTiling(tile, tile);
        }
        GeoTiffWriter writer = new GeoTiffWriter(file().toFile());
        var write = new GeoTiffFormat().getWriteParameters();
        write.parameter(AbstractGridFormat.GEOTOOLS_WRITE_PARAMS.getName().toString()).setValue(params);
        writer.write(coverage, write.values().toArray(new GeneralParameterValue[0]));
        writer.dispose();
        try (Bathymetry b = open()) {
            assertEquals(500_000, b.west(), 1e-6);
            assertEquals(3_000_000, b.north(), 1e-6);
            assertEquals(12.5, b.cellWidth(), 1e-9);
            assertEquals(32617, b.crs().epsg().getAsInt());
            assertArrayEquals(expected, all(b));
            assertWindows(b, expected);
            if (tile > 0) {
                assertEquals(tile, b.blockCols());
                assertEquals(tile, b.blockRows());
            }
        }
    }

    @Test
    void manyThreadsReadAtOnce() throws Exception {
        new HandTiff(100, 80).rowsPerStrip(3).write(file(), counted(8000));
        ExecutorService threads = Executors.newFixedThreadPool(4);
        try (Bathymetry b = open()) {
            float[] whole = all(b);
            List<Future<?>> done = new ArrayList<>();
            for (int k = 0; k < 8; k++) {
                done.add(threads.submit(() -> assertWindows(b, whole)));
            }
            for (Future<?> one : done) {
                one.get();
            }
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void thePlansCrsOverridesTheFiles() {
        new HandTiff(COLS, ROWS).write(file(), counted(35));
        try (Bathymetry b = open(Optional.of("EPSG:32618"))) {
            assertEquals(32618, b.crs().epsg().getAsInt());
        }
    }

    @Test
    void withoutCrsThePlanMustStateIt() {
        new HandTiff(COLS, ROWS).without(34735).write(file(), counted(35));
        assertEquals("depths.tif: the file states no CRS; state it in the plan beside the file, for example crs: EPSG:32617",
                assertThrows(InputException.class, this::open).getMessage());
        try (Bathymetry b = open(Optional.of("EPSG:32617"))) {
            assertPlace(b, 500_000, 3_000_000, 10, 10);
        }
    }

    @ParameterizedTest
    @CsvSource({"10, 2, 2, -10", "10, 0, 2, -10", "10, 2, 0, -10", "-10, 0, 0, -10"})
    void rotatedShearedAndMirroredGridsAreRefused(double a, double b, double c, double d) {
        new HandTiff(COLS, ROWS).matrix(500_000, a, b, 3_000_000, c, d).write(file(), counted(35));
        assertEquals("depths.tif: the grid is rotated or runs from east to west; resample it to a north-up grid first",
                assertThrows(InputException.class, this::open).getMessage());
    }

    @Test
    void withoutAPlaceOnTheGroundIsRefused() {
        new HandTiff(COLS, ROWS).without(33550, 33922).write(file(), counted(35));
        assertEquals("depths.tif: nothing says where its grid lies, neither in it nor in a world file beside it; export it as GeoTIFF with its"
                + " place on the ground", assertThrows(InputException.class, this::open).getMessage());
        new HandTiff(COLS, ROWS).without(33550).with(33922, new double[] {0, 0, 0, 500_000, 3_000_000, 0, 7, 0, 0, 500_070, 3_000_001, 0,
            0, 5, 0, 500_001, 2_999_950, 0}).write(file(), counted(35));
        assertEquals("depths.tif: the grid is tied to the ground by control points; resample it to a regular grid first",
                assertThrows(InputException.class, this::open).getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"II", "ncols 5\n", "II*\0"})
    void noTiffAtAllIsRefused(String text) throws IOException {
        Files.writeString(file(), text);
        String message = assertThrows(InputException.class, this::open).getMessage();
        assertTrue(message.startsWith("depths.tif: "), message);
    }

    /** A download that stopped half-way: the rest must not be read as depths of 0. */
    @ParameterizedTest
    @ValueSource(ints = {1, 4, 40})
    void aFileCutShortIsRefused(int rowsPerStrip) throws IOException {
        // The directory in front, as most writers put it, so that only pixels are missing.
        byte[] whole = directoryFirst(new HandTiff(50, 40).rowsPerStrip(rowsPerStrip).bytes(counted(2000)));
        Files.write(file(), whole);
        try (Bathymetry b = open()) {
            assertArrayEquals(floats(counted(2000)), all(b));
        }
        Files.write(file(), Arrays.copyOf(whole, whole.length - 3000));
        String message = assertThrows(InputException.class, () -> {
            try (Bathymetry b = open()) {
                all(b);
            }
        }).getMessage();
        assertTrue(message.startsWith("depths.tif") && message.contains("cut short"), message);
    }

    /** Moves the pixels of a hand-made file behind its directory. */
    private static byte[] directoryFirst(byte[] tiff) {
        ByteBuffer in = ByteBuffer.wrap(tiff).order(ByteOrder.LITTLE_ENDIAN);
        int directory = in.getInt(4);
        int pixels = directory - 8;
        int behind = tiff.length - directory;
        ByteBuffer out = ByteBuffer.allocate(tiff.length).order(ByteOrder.LITTLE_ENDIAN);
        out.put(0, tiff, 0, 8).put(8, tiff, directory, behind).put(8 + behind, tiff, 8, pixels).putInt(4, 8);
        int[] bytes = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8};
        int entries = out.getShort(8);
        for (int i = 0; i < entries; i++) {
            int entry = 10 + 12 * i;
            int count = out.getInt(entry + 4);
            boolean offsets = out.getShort(entry) == 273;
            if (count * bytes[out.getShort(entry + 2)] > 4) {
                out.putInt(entry + 8, out.getInt(entry + 8) - pixels);
            }
            for (int k = 0; offsets && k < count; k++) {
                int at = count == 1 ? entry + 8 : out.getInt(entry + 8) + 4 * k;
                out.putInt(at, out.getInt(at) + behind);
            }
        }
        return out.array();
    }

    /** Kinds that the library reads as something else: refused by name, or right. */
    @ParameterizedTest
    @EnumSource(value = Sample.class, names = {"FLOAT16", "UINT32"})
    void samplesThatCannotBeReadRightAreRefused(Sample sample) {
        double first = sample == Sample.FLOAT16 ? -83.5 : 3_000_000_000.0;
        double[] values = new double[35];
        Arrays.fill(values, first);
        new HandTiff(COLS, ROWS).samples(sample).write(file(), values);
        try (Bathymetry b = open()) {
            assertEquals((float) first, all(b)[0]);
        } catch (InputException e) {
            assertTrue(e.getMessage().startsWith("depths.tif"), e.getMessage());
        }
    }
}
