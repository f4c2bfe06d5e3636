package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

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
        damage("a.nc", AnyFormat.netCdf4());
    }

    @Test
    void classicNetCdf() throws IOException {
        for (int version : new int[] {1, 5}) {
            damage("a.nc", AnyFormat.classicNetCdf(version));
        }
    }

    private void damage(String name, byte[] whole) throws IOException {
        Path file = Files.write(folder.resolve(name), whole);
        AnyFormat.readGrid(Bathymetries.open(Sources.plain(file)));
        Random random = new Random(SEED);
        int refused = 0;
        for (int draw = 0; draw < DRAWS; draw++) {
            Files.write(file, Damage.done(whole, random));
            long start = System.nanoTime();
            try {
                AnyFormat.readGrid(Bathymetries.open(Sources.plain(file)));
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
}
