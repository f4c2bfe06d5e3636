package org.seacairn.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;

/** Against a plain bilinear interpolation that takes every cell centre to the source by the exact transform. */
class ResamplerTest {
    /** How far, in source cells, a position may be off. */
    private static final double POSITION_TOLERANCE = 1e-3;

    /** A source grid in memory. */
    private record Source(Crs crs, int cols, int rows, double west, double north, double width, double height, float[] values)
            implements WindowSource {
        @Override
        public void read(int col, int row, int cols, int rows, float[] into) {
            assertTrue(col >= 0 && row >= 0 && cols > 0 && rows > 0 && col + cols <= this.cols && row + rows <= this.rows,
                    () -> "read off the source: " + col + ", " + row + ", " + cols + " x " + rows);
            for (int r = 0; r < rows; r++) {
                System.arraycopy(values, (row + r) * this.cols + col, into, r * cols, cols);
            }
        }

        Resampler onto(GridGeometry grid) {
            return new Resampler(this, cols, rows, west, north, width, height, grid, grid.crs().to(crs), crs.isGeographic());
        }
    }

    /** What a cell must hold, and the least and greatest value that positions within the tolerance allow. */
    private record Expected(boolean none, boolean doubtful, double least, double greatest) {}

    private static Expected plain(Source source, GridGeometry grid, CoordinateTransform toSource, int col, int row) {
        Coordinate at = toSource.apply(grid.centreX(col), grid.centreY(row));
        double turn = source.crs.isGeographic() ? 360 * Math.rint((source.west + source.cols * source.width / 2 - at.x) / 360) : 0;
        double u = (at.x + turn - source.west) / source.width - 0.5;
        double v = (source.north - at.y) / source.height - 0.5;
        double[] found = new double[9];
        double[] us = within(u);
        double[] vs = within(v);
        for (int k = 0; k < 9; k++) {
            found[k] = bilinear(source, us[k % 3], vs[k / 3]);
        }
        long missing = Arrays.stream(found).filter(Double::isNaN).count();
        return new Expected(Double.isNaN(bilinear(source, u, v)), missing > 0 && missing < 9,
                Arrays.stream(found).min().orElseThrow(), Arrays.stream(found).max().orElseThrow());
    }

    /** The ends of the tolerance about a position, and between them a line of source centres if there is one: the surface breaks there. */
    private static double[] within(double position) {
        double line = Math.rint(position);
        return new double[] {position - POSITION_TOLERANCE,
            Math.abs(line - position) < POSITION_TOLERANCE ? line : position, position + POSITION_TOLERANCE};
    }

    private static double bilinear(Source source, double u, double v) {
        double sum = 0;
        int c0 = (int) Math.floor(u);
        int r0 = (int) Math.floor(v);
        for (int r = r0; r <= r0 + 1; r++) {
            for (int c = c0; c <= c0 + 1; c++) {
                double weight = (1 - Math.abs(u - c)) * (1 - Math.abs(v - r));
                if (weight > 0) {
                    boolean on = c >= 0 && r >= 0 && c < source.cols && r < source.rows;
                    sum += weight * (on ? source.values[r * source.cols + c] : Double.NaN);
                }
            }
        }
        return sum;
    }

    private static float[] rough(Random random, int cells, double missing) {
        float[] values = new float[cells];
        for (int i = 0; i < cells; i++) {
            values[i] = random.nextDouble() < missing ? Float.NaN : (float) (-100 + 10 * random.nextGaussian());
        }
        return values;
    }

    private static void compare(String name, Source source, GridGeometry grid) {
        float[] found = new float[grid.cols() * grid.rows()];
        source.onto(grid).read(0, 0, grid.cols(), grid.rows(), found);
        CoordinateTransform toSource = grid.crs().to(source.crs);
        int values = 0;
        int none = 0;
        int doubtful = 0;
        for (int i = 0; i < found.length; i++) {
            int col = i % grid.cols();
            int row = i / grid.cols();
            Expected expected = plain(source, grid, toSource, col, row);
            float value = found[i];
            String cell = name + ", column " + col + ", row " + row;
            if (expected.doubtful()) {
                doubtful++;
                continue;
            }
            assertEquals(expected.none(), Float.isNaN(value), cell);
            assertTrue(expected.none() || value >= expected.least() - 1e-4 && value <= expected.greatest() + 1e-4,
                    () -> cell + ": " + value + " and not " + expected);
            values += expected.none() ? 0 : 1;
            none += expected.none() ? 1 : 0;
        }
        assertTrue(values > found.length / 5 && none > 0 && doubtful < found.length / 20 + 100,
                name + ": " + values + " values, " + none + " none, " + doubtful + " in doubt");
    }

    /** Source CRS and lower left corner, working CRS and a place in the middle of it all, sizes of cells. */
    @ParameterizedTest
    @CsvSource({
        "4326, -81.02, 27.98, 0.0003, 0.00025, 32617, 20, 0",
        "4326, -81.02, 27.98, 0.0003, 0.00025, 32617, 73, 0.02",
        "4326, 278.98, 27.98, 0.0003, 0.00025, 32617, 20, 0.01",
        "4326, 17.9, -71.02, 0.002, 0.0005, 32733, 31.5, 0.01",
        "4326, -78.01, 0.01, 0.0003, 0.0003, 32618, 11, 0.01",
        "4326, 179.993, -20, 0.0003, 0.0003, 32760, 25, 0.01",
        "4326, -180.007, -20, 0.0003, 0.0003, 32701, 25, 0.01",
        "32618, 210000, 3000000, 20, 20, 32617, 20, 0.01",
        "32618, 210000, 3000000, 20, 30, 32617, 55, 0",
        "32617, 500000, 3000000, 20, 20, 32617, 20, 0.02",
        "32617, 500000, 3000000, 20, 20, 32617, 7, 0.02",
        "32617, 500000, 3000000, 20, 20, 32617, 50, 0",
        "2236, 750000, 600000, 60, 60, 32617, 18, 0.01",
        "3035, 2500000, 2200000, 100, 100, 32629, 80, 0.01"})
    void isThePlainBilinearValueOfTheExactPosition(int from, double west, double south, double width, double height, int onto,
            double cellM, double missing) {
        Random random = new Random(42);
        Source source = new Source(Crs.ofEpsg(from), 61, 43, west, south + 43 * height, width, height,
                rough(random, 61 * 43, missing));
        Crs working = Crs.ofEpsg(onto);
        Coordinate middle = source.crs().to(working).apply(west > 180 && west < 360 ? west - 360 + 30.5 * width : west + 30.5 * width,
                south + 21.5 * height);
        double groundM = source.crs().isGeographic() ? width * 111_000 * Math.cos(Math.toRadians(south))
                : width * source.crs().metresPerUnit();
        int cols = (int) (80 * groundM / cellM) + 3;
        GridGeometry grid = new GridGeometry(working, middle.x - cols / 2 * cellM + 1.23, middle.y + cols / 2 * cellM - 4.56, cellM, cols, cols + 5);
        compare(from + " onto " + onto, source, grid);
    }

    /** Whole degrees per cell: positions bend far more than a thousandth of a cell within a patch. */
    @Test
    void smallWorkingCellsOfACoarseSourceAreNotBentToPatches() {
        Source source = new Source(Crs.WGS84, 9, 7, -85, 34, 1, 1, rough(new Random(3), 63, 0));
        compare("coarse", source, new GridGeometry(Crs.ofEpsg(32617), 100_000, 3_850_000, 5000, 170, 180));
    }

    /** Long cells of the working grid over a fine source: each patch spans many bends of the map. */
    @Test
    void coarseWorkingCellsOfAFineSourceAreExactToo() {
        Source source = new Source(Crs.WGS84, 600, 500, -84, 60, 0.01, 0.004, rough(new Random(4), 300_000, 0.0001));
        compare("fine", source, new GridGeometry(Crs.ofEpsg(32617), 300_000, 6_660_000, 2500, 150, 110));
    }

    @Test
    void noDataNeverLeaksAndNeverSpreadsBeyondTheCellsThatBearWeight() {
        float[] values = new float[35];
        Arrays.fill(values, -50);
        values[2 * 7 + 3] = Float.NaN;
        Crs utm = Crs.ofEpsg(32617);
        Source source = new Source(utm, 7, 5, 1000, 5000, 10, 10, values);
        // Shifted by a quarter of a cell east: two columns and one row of results touch the hole.
        float[] found = new float[35];
        source.onto(new GridGeometry(utm, 1002.5, 5000, 10, 7, 5)).read(0, 0, 7, 5, found);
        for (int i = 0; i < 35; i++) {
            int col = i % 7;
            int row = i / 7;
            boolean none = col == 6 || row == 2 && (col == 2 || col == 3);
            assertEquals(none ? Float.NaN : -50f, found[i], "column " + col + ", row " + row);
        }
    }
}
