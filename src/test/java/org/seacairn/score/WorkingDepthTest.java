package org.seacairn.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import java.util.stream.IntStream;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.InputException;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;
import org.seacairn.plan.PlanReader;

/** Depths on the working grid: cell for cell where the file allows, else against a plain bilinear interpolation. */
class WorkingDepthTest {
    private static final String REST = """
            module: {height: 9 m, landing-radius: 25 m}
            criteria: {depth: {weight: 1, curve: [60 m, 80 m, 120 m, 150 m]}}
            sites: {apart: 150 m}
            """;

    @TempDir
    Path folder;

    /** @param head the plan's lines about CRS and cell */
    private WorkingDepth open(String head, String bathymetry) {
        GridFiles.write(folder.resolve("plan.yaml"), head + "bathymetry: {" + bathymetry + "}\n" + REST);
        return WorkingDepth.open(PlanReader.read(folder.resolve("plan.yaml"), false));
    }

    private static float[] rough(long seed, int cells, double missing) {
        Random random = new Random(seed);
        float[] values = new float[cells];
        for (int i = 0; i < cells; i++) {
            values[i] = random.nextDouble() < missing ? Float.NaN : (float) (90 + 10 * random.nextGaussian());
        }
        return values;
    }

    private static float[] all(WorkingDepth depth) {
        float[] all = new float[(int) depth.grid().cells()];
        depth.read(depth.grid().whole(), all);
        return all;
    }

    /** An ASCII grid in any CRS, its lower left corner given. */
    private void asciiGrid(int cols, int rows, double west, double south, String cells, float[] values) {
        StringBuilder text = new StringBuilder(String.format(Locale.ROOT,
                "ncols %d%nnrows %d%nxllcorner %s%nyllcorner %s%n%s%nNODATA_value -9999%n", cols, rows, west, south, cells));
        for (float value : values) {
            text.append(Float.isNaN(value) ? "-9999" : Float.toString(value)).append('\n');
        }
        GridFiles.write(folder.resolve("depths.asc"), text.toString());
    }

    @ParameterizedTest
    @CsvSource({
        "'', tif", "'crs: EPSG:32617\n', tif", "'crs: EPSG:32617\ncell: 12.5 m\n', tif", "'cell: 12.5 m\n', asc",
        "'crs: EPSG:32617\ncell: 12.5 m\n', asc"})
    void ofTheSameCrsAndCellIsUsedCellForCell(String head, String kind) {
        GridGeometry grid = GridFiles.utm(17, false, 512_345.67, 3_210_987.65, 12.5, 37, 23);
        float[] values = rough(1, 37 * 23, 0.05);
        if (kind.equals("tif")) {
            GridFiles.geoTiff(folder.resolve("depths.tif"), grid, values);
        } else {
            GridFiles.ascii(folder.resolve("depths.asc"), grid, values);
        }
        try (WorkingDepth depth = open(head, "file: depths." + kind + ", values: depth, unit: m")) {
            assertFalse(depth.resampled());
            assertEquals(grid, depth.grid());
            float[] found = all(depth);
            for (int i = 0; i < values.length; i++) {
                assertEquals(Float.floatToIntBits(values[i]), Float.floatToIntBits(found[i]), "cell " + i);
            }
        }
    }

    /** Factors: 85 FR 62698 for the foot and the US survey foot; a fathom is six international feet. */
    @ParameterizedTest
    @CsvSource({"elevation, m, -1", "depth, m, 1", "elevation, ft, -0.3048", "depth, ft, 0.3048",
        "depth, ft_us, 0.304800609601219", "elevation, fathom, -1.8288", "elevation, km, -1000", "depth, cm, 0.01"})
    void depthsAreMetresPositiveDown(String values, String unit, double factor) {
        GridGeometry grid = GridFiles.utm(17, false, 512_345, 3_210_987, 20, 9, 7);
        float[] stored = rough(2, 63, 0.1);
        stored[5] = -3.25f;
        stored[6] = 0;
        GridFiles.geoTiff(folder.resolve("depths.tif"), grid, stored);
        try (WorkingDepth depth = open("", "file: depths.tif, values: " + values + ", unit: " + unit)) {
            float[] found = all(depth);
            for (int i = 0; i < 63; i++) {
                double expected = factor * stored[i];
                assertEquals(expected, found[i], Double.isNaN(expected) ? 0.001 : 1e-7 * Math.abs(expected) + 1e-12, "cell " + i);
            }
        }
    }

    /** Once, in metres whatever the file's unit, on cells as they are and on resampled ones. */
    @ParameterizedTest
    @CsvSource({"elevation, m, -1, -0.3 m, -0.3, 0.3 m taken off", "depth, ft, 0.3048, -1 ft, -0.3048, 0.3048 m taken off",
        "depth, ft_us, 0.304800609601219, 1 ft_us, 0.304800609601219, 0.304801 m added to", "depth, m, 1, 2 m, 2, 2 m added to"})
    void theDatumOffsetIsAddedToEveryDepthOnce(String values, String unit, double factor, String offset, double offsetM, String told) {
        GridGeometry grid = GridFiles.utm(17, false, 512_340, 3_210_980, 20, 9, 7);
        float[] stored = rough(12, 63, 0.1);
        GridFiles.geoTiff(folder.resolve("depths.tif"), grid, stored);
        String file = "file: depths.tif, datum: MLLW, values: " + values + ", unit: " + unit;
        for (String head : new String[] {"", "cell: 17 m\n"}) {
            try (WorkingDepth plain = open(head, file); WorkingDepth moved = open(head, file + ", datum-offset: " + offset)) {
                float[] before = all(plain);
                float[] after = all(moved);
                for (int i = 0; i < before.length; i++) {
                    assertEquals(before[i] + offsetM, after[i], 2e-5, "cell " + i);
                    if (head.isEmpty()) {
                        assertEquals(factor * stored[i] + offsetM, after[i], 2e-5, "cell " + i);
                    }
                }
                assertEquals(told + " every depth: the plan's datum-offset brings the file's depths to MLLW", moved.notes().get(0));
            }
        }
    }

    /** Soundings in degrees come to the plan's cells without resampling; their notes are the grid's. */
    @Test
    void soundingsAreGriddedOnTheWorkingGrid() {
        GridFiles.write(folder.resolve("s.csv"), "longitude,latitude,depth\n-81,27,80\n-80.999,27.001,90\n");
        try (WorkingDepth depth = open("cell: 10 m\n", "file: s.csv, values: depth, unit: m, datum: MLLW, datum-offset: -0.5 m")) {
            assertFalse(depth.resampled());
            assertEquals(Crs.ofEpsg(32617), depth.grid().crs());
            assertEquals(10, depth.grid().cellM());
            float[] found = all(depth);
            assertEquals(89.5f, found[depth.grid().cols() - 1]);
            assertEquals(79.5f, found[found.length - depth.grid().cols()]);
            assertTrue(depth.notes().get(1).startsWith("s.csv: gridded by the median: 2 soundings on cells of 10 m; 2 cells hold soundings"), depth.notes().get(1));
        }
    }

    @Test
    void beyondTheEdgeOfTheGridThereIsNoDepth() {
        GridGeometry grid = GridFiles.utm(17, false, 512_345, 3_210_987, 20, 9, 7);
        float[] stored = rough(3, 63, 0.1);
        GridFiles.geoTiff(folder.resolve("depths.tif"), grid, stored);
        try (WorkingDepth depth = open("", "file: depths.tif, values: depth, unit: m")) {
            for (Window window : new Window[] {new Window(-3, -2, 15, 12), new Window(-5, 1, 4, 3), new Window(9, 7, 2, 2),
                new Window(4, -9, 3, 40), new Window(8, 6, 1, 1)}) {
                float[] found = new float[window.cells()];
                Arrays.fill(found, 1e9f);
                depth.read(window, found);
                for (int i = 0; i < found.length; i++) {
                    int col = window.col() + i % window.cols();
                    int row = window.row() + i / window.cols();
                    assertEquals(grid.holds(col, row) ? stored[row * 9 + col] : Float.NaN, found[i], window + " cell " + i);
                }
            }
        }
    }

    /**
     * Every value the plain interpolation finds on the lattice of whole multiples of the cell, far beyond
     * the file on all sides, must be there, and no other.
     */
    @ParameterizedTest
    @CsvSource({
        "EPSG:4326, -81.02, 27.98, 0.0003, 'crs: EPSG:32617\ncell: 20 m\n', 32617, 20",
        "EPSG:4326, -81.02, 27.98, 0.0003, 'cell: 20 m\n', 32617, 20",
        "EPSG:4326, -81.02, 27.98, 0.0003, 'crs: EPSG:32617\ncell: 100 ft\n', 32617, 30.48",
        "EPSG:4326, 15.02, -33.98, 0.0005, 'cell: 61 m\n', 32733, 61",
        "EPSG:4326, 278.98, 27.98, 0.0003, 'cell: 25 m\n', 32617, 25",
        "EPSG:4326, 179.996, 12, 0.0003, 'cell: 25 m\n', 32601, 25",
        "EPSG:4326, -81.02, 27.98, 0.0003, 'crs: EPSG:32618\ncell: 30 m\n', 32618, 30",
        "EPSG:32618, 210000, 3000000, 20, 'crs: EPSG:32617\ncell: 20 m\n', 32617, 20",
        "EPSG:32617, 500007, 3000003, 20, 'cell: 50 m\n', 32617, 50",
        "EPSG:32617, 500007, 3000003, 20, 'cell: 7 m\n', 32617, 7",
        "EPSG:32617, 500007, 3000003, 20, 'cell: 20.5 m\n', 32617, 20.5",
        "EPSG:2236, 750000, 600000, 60, 'cell: 18 m\n', 32617, 18",
        "EPSG:4269, -81.02, 27.98, 0.0003, 'crs: EPSG:26917\ncell: 20 m\n', 26917, 20",
        "EPSG:3035, 3500000, 2300000, 100, 'cell: 100 m\n', 32630, 100"})
    void anyOtherIsResampledOntoWholeMultiplesOfTheCell(String crs, double west, double south, double size, String head,
            int expectedCrs, double cellM) {
        int cols = 31;
        int rows = 23;
        float[] values = rough(4, cols * rows, 0.02);
        asciiGrid(cols, rows, west, south, "cellsize " + size, values);
        try (WorkingDepth depth = open(head, "file: depths.asc, values: depth, unit: m, crs: \"" + crs + "\"")) {
            GridGeometry grid = depth.grid();
            assertTrue(depth.resampled());
            assertEquals(expectedCrs, grid.crs().epsg().orElseThrow());
            assertEquals(cellM, grid.cellM(), 1e-9);
            assertEquals(Math.rint(grid.west() / cellM) * cellM, grid.west(), 1e-6);
            assertEquals(Math.rint(grid.north() / cellM) * cellM, grid.north(), 1e-6);
            Crs source = Crs.parse(crs);
            CoordinateTransform toSource = grid.crs().to(source);
            float[] found = all(depth);
            int valued = 0;
            int doubtful = 0;
            int beyond = 12;
            for (int row = -beyond; row < grid.rows() + beyond; row++) {
                for (int col = -beyond; col < grid.cols() + beyond; col++) {
                    Coordinate at = toSource.apply(grid.centreX(col), grid.centreY(row));
                    double turn = source.isGeographic() ? 360 * Math.rint((west + cols * size / 2 - at.x) / 360) : 0;
                    double u = (at.x + turn - west) / size - 0.5;
                    double v = (south + rows * size - at.y) / size - 0.5;
                    double[] us = within(u);
                    double[] vs = within(v);
                    double[] around = IntStream.range(0, 9)
                            .mapToDouble(k -> bilinear(values, cols, rows, us[k % 3], vs[k / 3])).toArray();
                    long missing = Arrays.stream(around).filter(Double::isNaN).count();
                    boolean on = grid.holds(col, row);
                    float value = on ? found[row * grid.cols() + col] : Float.NaN;
                    String cell = "column " + col + ", row " + row + " of " + grid;
                    if (missing > 0 && missing < 9) {
                        doubtful++;
                    } else if (missing == 9) {
                        assertTrue(Float.isNaN(value), cell);
                    } else {
                        assertTrue(value >= Arrays.stream(around).min().getAsDouble() - 1e-4
                                && value <= Arrays.stream(around).max().getAsDouble() + 1e-4,
                                () -> cell + ": " + value + " and not " + Arrays.toString(around));
                        valued++;
                    }
                }
            }
            double groundM = source.isGeographic() ? size * 111_000 : size * source.metresPerUnit();
            assertTrue(valued > 0.4 * cols * rows * groundM * groundM / (cellM * cellM) && doubtful < 100 + valued / 20,
                    valued + " values, " + doubtful + " in doubt");
        }
    }

    /** A thousandth of a cell to either side, and a line of source centres between if there is one: the surface breaks there. */
    private static double[] within(double position) {
        double line = Math.rint(position);
        return new double[] {position - 1e-3, Math.abs(line - position) < 1e-3 ? line : position, position + 1e-3};
    }

    private static double bilinear(float[] values, int cols, int rows, double u, double v) {
        double sum = 0;
        int c0 = (int) Math.floor(u);
        int r0 = (int) Math.floor(v);
        for (int r = r0; r <= r0 + 1; r++) {
            for (int c = c0; c <= c0 + 1; c++) {
                double weight = (1 - Math.abs(u - c)) * (1 - Math.abs(v - r));
                if (weight > 0) {
                    sum += weight * (c >= 0 && r >= 0 && c < cols && r < rows ? values[r * cols + c] : Double.NaN);
                }
            }
        }
        return sum;
    }

    /** Zones are six degrees wide, zone 1 begins at 180 W, and each holds its western edge (Snyder 1987, p. 57). */
    @ParameterizedTest
    @CsvSource({
        "-81, 28, 32617", "-78.001, 28, 32617", "-77.999, 28, 32618", "-84, 28, 32617", "-84.001, 28, 32616", "0, 1, 32631",
        "-0.001, 1, 32630", "15, -34, 32733", "15, -0.001, 32733", "15, 0.001, 32633", "179.9, -45, 32760", "-179.9, -45, 32701",
        "180.1, -45, 32701", "279, 28, 32617", "359.9, 50, 32630", "3, 75, 32631"})
    void leftOutTheCrsIsTheUtmZoneOfTheMiddle(double lon, double lat, int epsg) {
        asciiGrid(4, 4, lon - 0.002, lat - 0.002, "cellsize 0.001", rough(5, 16, 0));
        try (WorkingDepth depth = open("", "file: depths.asc, values: depth, unit: m, crs: EPSG:4326")) {
            assertEquals(epsg, depth.grid().crs().epsg().orElseThrow());
        }
    }

    /** A file that is metric and projected already, but not in UTM. */
    @Test
    void leftOutTheCrsIsTheUtmZoneEvenWhereTheFileIsMetric() {
        asciiGrid(8, 8, 3_500_000, 2_300_000, "cellsize 100", rough(6, 64, 0));
        try (WorkingDepth depth = open("", "file: depths.asc, values: depth, unit: m, crs: EPSG:3035")) {
            assertEquals(32630, depth.grid().crs().epsg().orElseThrow());
        }
    }

    @ParameterizedTest
    @CsvSource({"26917, 500000, 3000000", "32617, 500000, 3000000", "6346, 500000, 3000000", "25832, 500000, 5500000"})
    void leftOutTheCrsIsTheFilesOwnWhereThatIsTheZoneOnALikeEllipsoid(int epsg, double west, double south) {
        float[] values = rough(7, 64, 0.1);
        asciiGrid(8, 8, west, south, "cellsize 25", values);
        try (WorkingDepth depth = open("", "file: depths.asc, values: depth, unit: m, crs: EPSG:" + epsg)) {
            assertFalse(depth.resampled());
            assertEquals(epsg, depth.grid().crs().epsg().orElseThrow());
            assertEquals(25, depth.grid().cellM());
            for (int i = 0; i < 64; i++) {
                assertEquals(values[i], all(depth)[i]);
            }
        }
    }

    @Test
    void leftOutTheCellIsTheFilesOwnInAnotherZoneToo() {
        asciiGrid(30, 30, 210_000, 3_000_000, "cellsize 20", rough(8, 900, 0));
        try (WorkingDepth depth = open("crs: EPSG:32617\n", "file: depths.asc, values: depth, unit: m, crs: EPSG:32618")) {
            assertEquals(20, depth.grid().cellM(), 0.1);
        }
    }

    /** Cells of 0.0003 degrees at 28 N are 29.5 m by 33.2 m. */
    @Test
    void leftOutTheCellOfAGeographicFileIsAboutItsOwn() {
        asciiGrid(30, 30, -81, 28, "cellsize 0.0003", rough(9, 900, 0));
        try (WorkingDepth depth = open("", "file: depths.asc, values: depth, unit: m, crs: EPSG:4326")) {
            assertTrue(depth.grid().cellM() > 29 && depth.grid().cellM() < 34, depth.grid().toString());
        }
    }

    @Test
    void unequalSidesAreResampledToSquares() {
        asciiGrid(30, 20, 500_000, 3_000_000, "dx 20\ndy 30", rough(10, 600, 0));
        try (WorkingDepth depth = open("", "file: depths.asc, values: depth, unit: m, crs: EPSG:32617")) {
            assertTrue(depth.resampled());
            assertTrue(depth.grid().cellM() >= 20 && depth.grid().cellM() <= 30, depth.grid().toString());
        }
    }

    /** Measured with geodesics at every cell of the rim and the middle, along both axes. */
    @ParameterizedTest
    @CsvSource({"17, false, 480000", "17, false, 830000", "17, false, 170000", "33, true, 700000", "17, false, 310000"})
    void largestScaleErrorIsThatOfTheWorstPlace(int zone, boolean south, double west) {
        GridGeometry grid = GridFiles.utm(zone, south, west, south ? 6_000_000 : 3_000_000, 500, 80, 50);
        GridFiles.geoTiff(folder.resolve("depths.tif"), grid, rough(11, 4000, 0));
        double worst = 0;
        for (int row = 0; row < 50; row++) {
            for (int col = 0; col < 80; col++) {
                double[] at = PlainMap.lonLat(south ? -zone : zone, grid.centreX(col), grid.centreY(row));
                double[] north = PlainMap.lonLat(south ? -zone : zone, grid.centreX(col), grid.centreY(row) + 100);
                double groundM = Geodesic.WGS84.Inverse(at[1], at[0], north[1], north[0]).s12;
                worst = Math.max(worst, Math.abs(100 / groundM - 1));
            }
        }
        String crs = "crs: EPSG:" + grid.crs().epsg().getAsInt() + "\n";
        try (WorkingDepth depth = open(crs, "file: depths.tif, values: depth, unit: m")) {
            assertEquals(worst, depth.largestScaleError(), 0.01 * worst + 1e-6);
            assertTrue(depth.largestScaleError() >= worst - 1e-7, worst + " and not " + depth.largestScaleError());
        }
    }

    @Test
    void aCrsInFeetOrDegreesIsRefused() {
        asciiGrid(4, 4, -81, 28, "cellsize 0.001", rough(12, 16, 0));
        for (String crs : new String[] {"EPSG:4326", "EPSG:2236"}) {
            InputException e = assertThrows(InputException.class,
                    () -> open("crs: " + crs + "\n", "file: depths.asc, values: depth, unit: m, crs: EPSG:4326"));
            assertEquals("plan.yaml, line 1: crs is \"" + crs + "\", which is not projected in metres; write one that is,"
                    + " such as EPSG:32617, or leave it out for the UTM zone", e.getMessage());
        }
    }

    @Test
    void aTinyCellOnAWideBathymetryIsRefusedAndNotOverflown() {
        asciiGrid(4, 4, -83, 26, "cellsize 1", rough(15, 16, 0));
        InputException e = assertThrows(InputException.class,
                () -> open("cell: 0.01 cm\n", "file: depths.asc, values: depth, unit: m, crs: EPSG:4326"));
        assertTrue(e.getMessage().contains("cell"), e.getMessage());
    }
}
