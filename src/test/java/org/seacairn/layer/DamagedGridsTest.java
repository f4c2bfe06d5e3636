package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.seacairn.layer.HandHdf.attributes;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.InputException;

/**
 * BAG and NetCDF files with wrong bytes, cut short or with numbers blown up: each is read or refused in the
 * project's own words, soon. More with {@code -Dseacairn.damaged.draws=20000}; another seed with
 * {@code -Dseacairn.damaged.seed=}.
 */
class DamagedGridsTest {
    private static final int DRAWS = Integer.getInteger("seacairn.damaged.draws", 300);
    private static final long SEED = Long.getLong("seacairn.damaged.seed", 20_260_7);
    private static final long MOST_NANOS = 10_000_000_000L;
    private static final int[] AWKWARD = {0, 1, -1, 0x7fffffff, 0x80000000, 0x40000000, 1_000_000, 65_536};

    @TempDir
    Path folder;

    @Test
    void bag() throws IOException {
        damage("a.bag", BagFixture.plain(BagFixture.metadata()).toBytes());
    }

    @Test
    void bagInChunksWithEveryFilter() throws IOException {
        int[] filters = {ChunkFilters.SHUFFLE, ChunkFilters.DEFLATE, ChunkFilters.FLETCHER};
        Map<long[], byte[]> chunks = new LinkedHashMap<>();
        for (int row = 0; row < 40; row += 8) {
            for (int col = 0; col < 30; col += 8) {
                float[] values = new float[64];
                Arrays.fill(values, -row - col);
                byte[] packed = HandHdf.deflated(HandHdf.shuffled(HandHdf.floats(values), 4));
                chunks.put(new long[] {row, col}, ByteBuffer.allocate(packed.length + 4).order(ByteOrder.LITTLE_ENDIAN).put(packed)
                        .putInt(ChunkFilters.fletcher32(packed, packed.length)).array());
            }
        }
        damage("a.bag", BagFixture.withMetadata(BagFixture.metadata())
                .chunked("elevation", HandHdf.FLOAT, new long[] {40, 30}, new int[] {8, 8}, 4, filters, chunks, 0, Map.of()).toBytes());
    }

    @Test
    void bagOfVariableResolution() throws IOException {
        damage("a.bag", BagFixture.variable(0).toBytes());
    }

    @Test
    void netCdf4() throws IOException {
        damage("a.nc", new HandHdf().contiguous("lat", HandHdf.DOUBLE, new long[] {2}, HandHdf.doubles(10, 11), attributes("units", "degrees_north"))
                .contiguous("lon", HandHdf.DOUBLE, new long[] {3}, HandHdf.doubles(-80, -79, -78), attributes("units", "degrees_east"))
                .contiguous("crs", HandHdf.INT, new long[0], new byte[4], attributes("grid_mapping_name", "latitude_longitude", "crs_wkt",
                        "GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,298.257223563]],PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]]"))
                .contiguous("elevation", HandHdf.SHORT, new long[] {2, 3}, HandHdf.shorts(1, 2, 3, 4, 5, 6),
                        attributes("grid_mapping", "crs", "scale_factor", new double[] {0.5}, "_FillValue", new double[] {5})).toBytes());
    }

    @Test
    void classicNetCdf() throws IOException {
        for (int version : new int[] {1, 5}) {
            damage("a.nc", new HandCdf(version).records("lat", 2).dimension("lon", 3)
                    .variable("lon", HandCdf.DOUBLE, attributes("units", "degrees_east"), new double[] {1, 2, 3}, "lon")
                    .variable("lat", HandCdf.DOUBLE, attributes("units", "degrees_north"), new double[] {5, 6}, "lat")
                    .variable("crs", HandCdf.BYTE, attributes("grid_mapping_name", "latitude_longitude"), new double[] {0})
                    .variable("z", HandCdf.SHORT, attributes("grid_mapping", "crs", "valid_range", new double[] {1, 5}),
                            new double[] {1, 2, 3, 4, 5, 6}, "lat", "lon").toBytes());
        }
    }

    private void damage(String name, byte[] whole) throws IOException {
        Path file = Files.write(folder.resolve(name), whole);
        touch(file);
        Random random = new Random(SEED);
        int refused = 0;
        for (int draw = 0; draw < DRAWS; draw++) {
            Files.write(file, damaged(whole, random));
            long start = System.nanoTime();
            try {
                touch(file);
            } catch (InputException e) {
                refused++;
                Refusals.requireUsable(e);
            } catch (RuntimeException | Error e) {
                fail(name + ", seed " + SEED + ", draw " + draw, e);
            }
            long nanos = System.nanoTime() - start;
            assertTrue(nanos < MOST_NANOS, name + ", seed " + SEED + ", draw " + draw + " took " + nanos / 1_000_000 + " ms");
        }
        assertTrue(refused > DRAWS / 10, name + ": only " + refused + " refused, so the damage does no harm and tests nothing");
    }

    /** Reads the first and the last cells, as many as a run reads at once. */
    private static void touch(Path file) {
        try (Bathymetry grid = Bathymetries.open(Sources.plain(file))) {
            int cols = Math.min(grid.cols(), 200);
            int rows = Math.min(grid.rows(), 200);
            float[] into = new float[cols * rows];
            grid.read(0, 0, cols, rows, into);
            grid.read(grid.cols() - cols, grid.rows() - rows, cols, rows, into);
            grid.uncertainty().ifPresent(u -> u.read(0, 0, cols, rows, into));
        }
    }

    private static byte[] damaged(byte[] whole, Random random) {
        byte[] bytes = random.nextInt(8) == 0 ? Arrays.copyOf(whole, random.nextInt(whole.length)) : whole.clone();
        for (int i = random.nextInt(4); i >= 0 && bytes.length > 8; i--) {
            int at = random.nextInt(bytes.length);
            switch (random.nextInt(3)) {
                case 0 -> bytes[at] = (byte) random.nextInt(256);
                case 1 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
                // Where lengths and addresses stand.
                default -> ByteBuffer.wrap(bytes).order(random.nextBoolean() ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN)
                        .putInt(Math.min(at / 4 * 4, bytes.length - 4), AWKWARD[random.nextInt(AWKWARD.length)]);
            }
        }
        return bytes;
    }
}
