package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ChunkFiltersTest {
    private static final BitSet NONE = new BitSet();

    private static byte[] summed(byte[] bytes) {
        return ByteBuffer.allocate(bytes.length + 4).order(ByteOrder.LITTLE_ENDIAN).put(bytes)
                .putInt(ChunkFilters.fletcher32(bytes, bytes.length)).array();
    }

    /**
     * Fletcher's two sums modulo 65,535 in whole numbers, words of 16 bits with the more significant byte first
     * (H5_checksum_fletcher32 in HDF5's H5checksum.c; what GDAL's HDF5 library makes of it: see the issue).
     */
    @Test
    void theChecksumIsThatOfPlainSums() {
        Random random = new Random(5);
        for (int i = 0; i < 200; i++) {
            byte[] bytes = new byte[1 + random.nextInt(3000)];
            random.nextBytes(bytes);
            long first = 0;
            long second = 0;
            for (int k = 0; k < bytes.length; k += 2) {
                first += 256 * Byte.toUnsignedInt(bytes[k]) + (k + 1 < bytes.length ? Byte.toUnsignedInt(bytes[k + 1]) : 0);
                second += first;
            }
            int checksum = ChunkFilters.fletcher32(bytes, bytes.length);
            assertEquals(first % 65_535, (checksum & 0xffff) % 65_535);
            assertEquals(second % 65_535, (checksum >>> 16) % 65_535);
        }
    }

    @Test
    void filtersAreUndoneInReverse() throws IOException {
        byte[] plain = HandHdf.floats(1, 2, 3, 4, 5);
        byte[] stored = HandHdf.deflated(summed(HandHdf.shuffled(plain, 4)));
        assertArrayEquals(plain, new ChunkFilters(List.of(2, 3, 1), 4).decode(stored, NONE, 20));
        assertArrayEquals(plain, new ChunkFilters(List.of(2, 1, 3), 4).decode(summed(HandHdf.deflated(HandHdf.shuffled(plain, 4))), NONE, 20));
    }

    @Test
    void skippedFiltersAreLeftOut() throws IOException {
        BitSet first = new BitSet();
        first.set(0);
        byte[] plain = HandHdf.floats(1, 2, 3);
        assertArrayEquals(plain, new ChunkFilters(List.of(2, 1), 4).decode(HandHdf.deflated(plain), first, 12));
    }

    @Test
    void bytesBeyondWholeElementsStandAtTheEndOfAShuffle() throws IOException {
        assertArrayEquals(new byte[] {1, 2, 3, 4, 9}, new ChunkFilters(List.of(2), 2).decode(new byte[] {1, 3, 2, 4, 9}, NONE, 5));
    }

    @Test
    void oneWrongByteIsNoticed() {
        byte[] stored = summed(HandHdf.floats(1, 2, 3));
        stored[5] ^= 1;
        assertEquals("the checksum of a chunk does not match its bytes",
                assertThrows(IOException.class, () -> new ChunkFilters(List.of(3), 4).decode(stored, NONE, 12)).getMessage());
    }

    @Test
    void moreOrFewerBytesThanPromisedAreRefused() {
        ChunkFilters deflate = new ChunkFilters(List.of(1), 4);
        byte[] stored = HandHdf.deflated(new byte[100]);
        assertEquals("a compressed chunk holds more than its 96 bytes",
                assertThrows(IOException.class, () -> deflate.decode(stored, NONE, 96)).getMessage());
        assertEquals("a compressed chunk ends after 100 of 104 bytes",
                assertThrows(IOException.class, () -> deflate.decode(stored, NONE, 104)).getMessage());
        assertEquals("a chunk holds 8 bytes and not 12",
                assertThrows(IOException.class, () -> new ChunkFilters(List.of(), 4).decode(new byte[8], NONE, 12)).getMessage());
    }
}
