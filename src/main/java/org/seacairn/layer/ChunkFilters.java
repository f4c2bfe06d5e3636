package org.seacairn.layer;

import java.io.IOException;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * Undoes the filters of an HDF5 chunk, last applied first: shuffle, deflate, Fletcher's checksum (HDF5 File
 * Format Specification 3.0, section IV.A.2.l, and the library's own filter pages). Done here because the
 * library at hand passes over the mask by which single chunks skip a filter, and trusts the sizes it finds.
 *
 * @param ids of the filters in the order in which a writer applies them
 * @param elementBytes what the shuffle took for one element
 */
record ChunkFilters(List<Integer> ids, int elementBytes) {
    static final int DEFLATE = 1;
    static final int SHUFFLE = 2;
    static final int FLETCHER = 3;

    private static final int CHECKSUM_BYTES = 4;
    private static final Map<Integer, String> OTHERS = Map.of(4, "szip", 5, "n-bit", 6, "scale-offset",
            307, "bzip2", 32000, "LZF", 32001, "Blosc", 32004, "LZ4", 32015, "Zstandard");

    /** The name of the first filter that cannot be undone here, or null. */
    String unknown() {
        return ids.stream().filter(id -> id != DEFLATE && id != SHUFFLE && id != FLETCHER).findFirst()
                .map(id -> OTHERS.getOrDefault(id, "filter " + id)).orElse(null);
    }

    /**
     * @param stored the bytes in the file
     * @param skipped filters, by their place in the pipeline, that this chunk did not go through
     * @param size how many bytes must come out
     */
    byte[] decode(byte[] stored, BitSet skipped, int size) throws IOException {
        byte[] bytes = stored;
        for (int i = ids.size() - 1; i >= 0; i--) {
            if (!skipped.get(i)) {
                bytes = switch (ids.get(i)) {
                    case DEFLATE -> inflated(bytes, size + checksumsBefore(i, skipped));
                    case SHUFFLE -> unshuffled(bytes);
                    case FLETCHER -> checked(bytes);
                    default -> throw new IOException(unknown() + " is not read here");
                };
            }
        }
        if (bytes.length != size) {
            throw new IOException("a chunk holds " + bytes.length + " bytes and not " + size);
        }
        return bytes;
    }

    /** Bytes that checksums taken before a filter added to what goes through it. */
    private int checksumsBefore(int filter, BitSet skipped) {
        int bytes = 0;
        for (int i = 0; i < filter; i++) {
            bytes += ids.get(i) == FLETCHER && !skipped.get(i) ? CHECKSUM_BYTES : 0;
        }
        return bytes;
    }

    private static byte[] inflated(byte[] deflated, int size) throws IOException {
        Inflater inflater = new Inflater();
        try {
            inflater.setInput(deflated);
            byte[] bytes = new byte[size];
            int done = 0;
            while (done < size) {
                int step = inflater.inflate(bytes, done, size - done);
                if (step == 0) {
                    throw new IOException("a compressed chunk ends after " + done + " of " + size + " bytes");
                }
                done += step;
            }
            if (!inflater.finished() && inflater.inflate(new byte[1]) > 0) {
                throw new IOException("a compressed chunk holds more than its " + size + " bytes");
            }
            return bytes;
        } catch (DataFormatException e) {
            throw new IOException("a compressed chunk is damaged", e);
        } finally {
            inflater.end();
        }
    }

    private byte[] unshuffled(byte[] planes) {
        int count = planes.length / elementBytes;
        // What does not fill an element stands unshuffled at the end.
        byte[] bytes = planes.clone();
        for (int plane = 0; plane < elementBytes; plane++) {
            for (int i = 0; i < count; i++) {
                bytes[i * elementBytes + plane] = planes[plane * count + i];
            }
        }
        return bytes;
    }

    private static byte[] checked(byte[] withChecksum) throws IOException {
        int length = withChecksum.length - CHECKSUM_BYTES;
        if (length < 0) {
            throw new IOException("a chunk is too short for its checksum");
        }
        int stored = 0;
        for (int i = 0; i < CHECKSUM_BYTES; i++) {
            stored |= Byte.toUnsignedInt(withChecksum[length + i]) << 8 * i;
        }
        int computed = fletcher32(withChecksum, length);
        // Releases before 1.6.3 swapped the bytes of each half on little-endian machines.
        if (computed != stored && computed != ((stored & 0x00ff00ff) << 8 | stored >>> 8 & 0x00ff00ff)) {
            throw new IOException("the checksum of a chunk does not match its bytes");
        }
        return Arrays.copyOf(withChecksum, length);
    }

    /** Fletcher's checksum over 16-bit words, most significant byte first, as HDF5 has it. */
    static int fletcher32(byte[] bytes, int length) {
        int sum1 = 0;
        int sum2 = 0;
        for (int i = 0; i < length; i += 2) {
            int low = i + 1 < length ? Byte.toUnsignedInt(bytes[i + 1]) : 0;
            sum1 += Byte.toUnsignedInt(bytes[i]) << 8 | low;
            sum1 = (sum1 & 0xffff) + (sum1 >>> 16);
            sum2 += sum1;
            sum2 = (sum2 & 0xffff) + (sum2 >>> 16);
        }
        return sum2 << 16 | sum1;
    }
}
