package org.seacairn.grid;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The cache against the source behind it, and what it asks of that source. */
class BlockCacheTest {
    private static final int COLS = 53;
    private static final int ROWS = 37;

    /** A source whose every value says where it stands, and that writes down what it was asked. */
    private static class Source implements WindowSource {
        final ConcurrentLinkedQueue<Window> asked = new ConcurrentLinkedQueue<>();

        @Override
        public void read(int col, int row, int cols, int rows, float[] into) {
            assertTrue(col >= 0 && row >= 0 && col + cols <= COLS && row + rows <= ROWS, "read off the source");
            asked.add(new Window(col, row, cols, rows));
            for (int i = 0; i < cols * rows; i++) {
                into[i] = value(col + i % cols, row + i / cols);
            }
        }
    }

    private static float value(int col, int row) {
        return 1000 * row + col;
    }

    private static void assertWindow(WindowSource cache, int col, int row, int cols, int rows) {
        float[] found = new float[cols * rows];
        cache.read(col, row, cols, rows, found);
        for (int i = 0; i < found.length; i++) {
            assertEquals(value(col + i % cols, row + i / cols), found[i]);
        }
    }

    @ParameterizedTest
    @CsvSource({"16, 16, 100000", "16, 16, 0", "16, 16, 600", "53, 1, 100", "1, 37, 100", "7, 5, 200", "100, 100, 10", "53, 37, 1961"})
    void anyWindowHoldsTheSourcesValues(int blockCols, int blockRows, long mostFloats) {
        Random random = new Random(11);
        BlockCache cache = new BlockCache(new Source(), COLS, ROWS, blockCols, blockRows, mostFloats);
        for (int k = 0; k < 300; k++) {
            int col = random.nextInt(COLS);
            int row = random.nextInt(ROWS);
            assertWindow(cache, col, row, 1 + random.nextInt(COLS - col), 1 + random.nextInt(ROWS - row));
        }
    }

    @Test
    void eachBlockIsDecodedOnceWhileThereIsRoom() {
        Source source = new Source();
        // The narrower blocks of the edges count as whole ones.
        BlockCache cache = new BlockCache(source, COLS, ROWS, 16, 16, 12 * 256);
        for (int k = 0; k < 3; k++) {
            assertWindow(cache, 0, 0, COLS, ROWS);
            assertWindow(cache, 15, 15, 2, 2);
        }
        assertEquals(12, source.asked.size());
        assertEquals(12, source.asked.stream().distinct().count());
        // Blocks keep to the source's layout; those of the east and south edge are narrower.
        assertTrue(source.asked.contains(new Window(48, 32, 5, 5)), source.asked.toString());
    }

    @Test
    void onlyTheBlocksThatTheWindowTouchesAreRead() {
        Source source = new Source();
        BlockCache cache = new BlockCache(source, COLS, ROWS, 16, 16, 10_000);
        assertWindow(cache, 17, 3, 10, 20);
        assertEquals(List.of(new Window(16, 0, 16, 16), new Window(16, 16, 16, 16)), new ArrayList<>(source.asked));
    }

    @Test
    void theBlockUsedLastStaysAndTheOldestGoes() {
        Source source = new Source();
        BlockCache cache = new BlockCache(source, COLS, ROWS, 16, 16, 2 * 256);
        assertWindow(cache, 0, 0, 1, 1);
        assertWindow(cache, 16, 0, 1, 1);
        assertWindow(cache, 0, 0, 1, 1);
        assertWindow(cache, 32, 0, 1, 1);
        assertEquals(3, source.asked.size());
        assertWindow(cache, 0, 0, 1, 1);
        assertEquals(3, source.asked.size());
        assertWindow(cache, 16, 0, 1, 1);
        assertEquals(4, source.asked.size());
    }

    @Test
    void threadsThatNeedOneBlockWaitForOneDecoding() throws Exception {
        CountDownLatch waiting = new CountDownLatch(7);
        Source source = new Source() {
            @Override
            public void read(int col, int row, int cols, int rows, float[] into) {
                try {
                    // The other threads have asked by now, or are about to: either way one decoding must do.
                    assertTrue(waiting.await(10, TimeUnit.SECONDS));
                } catch (InterruptedException e) {
                    throw new AssertionError(e);
                }
                super.read(col, row, cols, rows, into);
            }
        };
        BlockCache cache = new BlockCache(source, COLS, ROWS, 64, 64, 10_000);
        ExecutorService threads = Executors.newFixedThreadPool(8);
        try {
            List<Future<?>> done = new ArrayList<>();
            for (int k = 0; k < 8; k++) {
                int at = k;
                done.add(threads.submit(() -> {
                    waiting.countDown();
                    assertWindow(cache, at, at, 20, 10);
                }));
            }
            for (Future<?> one : done) {
                one.get(20, TimeUnit.SECONDS);
            }
        } finally {
            threads.shutdownNow();
        }
        assertEquals(1, source.asked.size());
    }

    @Test
    void manyThreadsAndLittleRoomStillGiveTheSourcesValues() throws Exception {
        BlockCache cache = new BlockCache(new Source(), COLS, ROWS, 5, 4, 60);
        ExecutorService threads = Executors.newFixedThreadPool(4);
        try {
            List<Future<?>> done = new ArrayList<>();
            for (int k = 0; k < 4; k++) {
                Random random = new Random(k);
                done.add(threads.submit(() -> {
                    for (int n = 0; n < 500; n++) {
                        int col = random.nextInt(COLS - 12);
                        int row = random.nextInt(ROWS - 12);
                        assertWindow(cache, col, row, 1 + random.nextInt(12), 1 + random.nextInt(12));
                    }
                }));
            }
            for (Future<?> one : done) {
                one.get(20, TimeUnit.SECONDS);
            }
        } finally {
            threads.shutdownNow();
        }
    }

    /** A block that could not be read must not become a hole that looks like data, then or later. */
    @Test
    void aFailedReadIsPassedOnAsItIsEveryTime() {
        BlockCache cache = new BlockCache((col, row, cols, rows, into) -> {
            throw new IllegalStateException("the disk is gone");
        }, COLS, ROWS, 16, 16, 10_000);
        float[] into = new float[4];
        for (int k = 0; k < 3; k++) {
            assertEquals("the disk is gone",
                    assertThrows(IllegalStateException.class, () -> cache.read(0, 0, 2, 2, into)).getMessage());
        }
    }

    @Test
    void aWindowReadTwiceIsNotTheSameArray() {
        BlockCache cache = new BlockCache(new Source(), COLS, ROWS, 16, 16, 10_000);
        float[] first = new float[256];
        cache.read(0, 0, 16, 16, first);
        float[] kept = first.clone();
        Arrays.fill(first, -1);
        float[] second = new float[256];
        cache.read(0, 0, 16, 16, second);
        assertArrayEquals(kept, second);
    }
}
