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
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.InputException;

/** A grid of variable resolution on a finer grid, against a search through every node. */
class BagFinerGridTest {
    private static final float GAP = Float.NaN;
    private static final double WIDTH = 10;
    private static final double HEIGHT = 20;

    @TempDir
    Path folder;

    private Bathymetry open(HandHdf hdf, double cellM) throws IOException {
        return BagReader.open(Files.write(folder.resolve("survey.bag"), hdf.toBytes()), Optional.empty(), OptionalDouble.of(cellM));
    }

    private static float[] all(Bathymetry grid) {
        float[] values = new float[grid.cols() * grid.rows()];
        grid.read(0, 0, grid.cols(), grid.rows(), values);
        return values;
    }

    /** Nodes 5 and 10 m apart in the south-western cell (2 x 1) and the one north-east of it (2 x 2, one without a depth). */
    @Test
    void aPartTakesTheNodeInItAndTheRestIsNoData() throws IOException {
        try (Bathymetry grid = open(BagFixture.variable(0), 10)) {
            assertEquals(List.of(500_000.0, 3_000_040.0, 10.0, 10.0), List.of(grid.west(), grid.north(), grid.cellWidth(), grid.cellHeight()));
            // The single row of nodes lies 5 m up: the southern part holds it, the northern is farther than half a spacing away.
            assertArrayEquals(new float[] {GAP, -5.5f, GAP, GAP, -9, GAP, GAP, GAP, GAP, -7, GAP, GAP}, all(grid));
            float[] uncertainty = new float[12];
            grid.uncertainty().orElseThrow().read(0, 0, 3, 4, uncertainty);
            assertArrayEquals(new float[] {GAP, .3f, GAP, GAP, .1f, GAP, GAP, GAP, GAP, .9f, GAP, GAP}, uncertainty);
            assertEquals(List.of("the grid is of variable resolution: each of its cells of 10 x 20 is read as 1 x 2 cells, since the plan's are"
                    + " smaller; each takes the shallowest of the finer depths in it, or the nearest where they are farther apart; 4 of the"
                    + " coarse cells have no finer depths, and none here"), grid.notes());
        }
    }

    @Test
    void depthsThatRepeatAreTold() throws IOException {
        try (Bathymetry grid = open(BagFixture.variable(0), 2.5)) {
            assertTrue(grid.notes().get(0).endsWith("; in 2 of 2 they lie farther apart than a cell, so that depths repeat and slopes come in"
                    + " steps there: a larger cell in the plan avoids it"), grid.notes().toString());
        }
    }

    @Test
    void aCellNoSmallerThanTheCoarseOneKeepsTheCoarseGrid() throws IOException {
        try (Bathymetry grid = open(BagFixture.variable(0), 20)) {
            assertArrayEquals(new float[] {-4, -5.5f, -6, -7, -2, -3}, all(grid));
        }
    }

    @Test
    void moreCellsThanCanBeCountedAreRefused() {
        InputException e = assertThrows(InputException.class, () -> open(BagFixture.variable(0), 1e-9).close());
        assertEquals("survey.bag, varres_metadata: would have 30000000000 cells of 0.000000001 m side by side, more than 1073741824; state a larger"
                + " cell in the plan", e.getMessage());
    }

    @Test
    void finerCellsBeyondTheListAreRefused() throws IOException {
        InputException e = assertThrows(InputException.class, () -> open(BagFixture.variable(5), 5).close());
        assertEquals("survey.bag, varres_metadata, row 0, column 0: names the finer cells 5 to 6 of 6; the file is damaged, get it again", e.getMessage());
    }

    /** A node, from the file's south-western corner. */
    private record Node(int cell, double x, double y, double spacingX, double spacingY, float elevation) {}

    private final List<Node> nodes = new ArrayList<>();

    private HandHdf random(Random random) {
        byte[] meta = HandHdf.compound(28, "index", 0, HandHdf.INT, "dimensions_x", 4, HandHdf.INT, "dimensions_y", 8, HandHdf.INT,
                "resolution_x", 12, HandHdf.FLOAT, "resolution_y", 16, HandHdf.FLOAT, "sw_corner_x", 20, HandHdf.FLOAT, "sw_corner_y", 24, HandHdf.FLOAT);
        ByteBuffer cells = ByteBuffer.allocate(6 * 28).order(ByteOrder.LITTLE_ENDIAN);
        List<Float> figures = new ArrayList<>();
        for (int cell = 0; cell < 6; cell++) {
            boolean none = random.nextInt(5) == 0;
            int nx = none ? 0 : 1 + random.nextInt(12);
            int ny = none ? 0 : 1 + random.nextInt(12);
            float dx = none ? -1 : (float) (WIDTH / nx * (0.9 + 0.1 * random.nextDouble()));
            float dy = none ? -1 : (float) (HEIGHT / ny * (0.9 + 0.1 * random.nextDouble()));
            float x = none ? -1 : dx * (0.2f + 0.6f * random.nextFloat());
            float y = none ? -1 : dy * (0.2f + 0.6f * random.nextFloat());
            cells.putInt(none ? -1 : figures.size() / 2).putInt(nx).putInt(ny).putFloat(dx).putFloat(dy).putFloat(x).putFloat(y);
            for (int i = 0; i < nx * ny; i++) {
                float elevation = random.nextInt(8) == 0 ? BagFixture.NO : -50 - 50 * random.nextFloat();
                figures.add(elevation);
                figures.add(0.5f);
                nodes.add(new Node(cell, cell % 3 * WIDTH + x + i % nx * (double) dx, cell / 3 * HEIGHT + y + i / nx * (double) dy, dx, dy, elevation));
            }
        }
        float[] list = new float[Math.max(2, figures.size())];
        for (int i = 0; i < figures.size(); i++) {
            list[i] = figures.get(i);
        }
        byte[] fine = HandHdf.compound(8, "depth", 0, HandHdf.FLOAT, "depth_uncrt", 4, HandHdf.FLOAT);
        return BagFixture.plain(BagFixture.metadata()).contiguous("varres_metadata", meta, new long[] {2, 3}, cells.array(), Map.of())
                .contiguous("varres_refinements", fine, new long[] {1, list.length / 2}, HandHdf.floats(list), Map.of());
    }

    @ParameterizedTest
    @CsvSource({"1, 5", "2, 3.3", "3, 1", "4, 0.7", "5, 9.9", "6, 2", "7, 15", "8, 0.31"})
    void everyPartAgreesWithASearchThroughAllNodes(long seed, double cellM) throws IOException {
        try (Bathymetry grid = open(random(new Random(seed)), cellM)) {
            float[] found = all(grid);
            int across = grid.cols() / 3;
            int along = grid.rows() / 2;
            assertEquals(Math.ceil(WIDTH / cellM), across);
            assertEquals(Math.ceil(HEIGHT / cellM), along);
            for (int i = 0; i < found.length; i++) {
                int col = i % grid.cols();
                int fromSouth = grid.rows() - 1 - i / grid.cols();
                assertEquals(expected(col, fromSouth, col / across + 3 * (fromSouth / along), WIDTH / across, HEIGHT / along), found[i], "cell " + i);
            }
            Random windows = new Random(seed);
            for (int k = 0; k < 20; k++) {
                int col = windows.nextInt(grid.cols());
                int row = windows.nextInt(grid.rows());
                int cols = 1 + windows.nextInt(grid.cols() - col);
                int rows = 1 + windows.nextInt(grid.rows() - row);
                float[] part = new float[cols * rows];
                grid.read(col, row, cols, rows, part);
                for (int i = 0; i < part.length; i++) {
                    assertEquals(found[(row + i / cols) * grid.cols() + col + i % cols], part[i]);
                }
            }
        }
    }

    private float expected(int col, int fromSouth, int cell, double width, double height) {
        float greatest = GAP;
        boolean held = false;
        for (Node node : nodes) {
            // What lies on an edge, or beyond its coarse cell, does not happen with these spacings but by rounding.
            if (node.cell == cell && inside(node.x, col, width) && inside(node.y, fromSouth, height)) {
                held = true;
                greatest = node.elevation == BagFixture.NO || node.elevation <= greatest ? greatest : node.elevation;
            }
        }
        if (held) {
            return greatest;
        }
        for (Node node : nodes) {
            if (node.cell == cell && Math.abs(node.x - (col + 0.5) * width) < node.spacingX / 2
                    && Math.abs(node.y - (fromSouth + 0.5) * height) < node.spacingY / 2) {
                return node.elevation == BagFixture.NO ? GAP : node.elevation;
            }
        }
        return GAP;
    }

    private static boolean inside(double at, int index, double size) {
        return at > index * size && at <= (index + 1) * size;
    }
}
