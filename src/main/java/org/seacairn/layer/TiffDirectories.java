package org.seacairn.layer;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import org.seacairn.InputException;

/**
 * The directories of a TIFF, looked at before a library believes what they state: each must lie in the file, and so must the values of
 * its fields, of which a field may state thousands of millions (TIFF 6.0, section 2, and the BigTIFF design of its libraries).
 */
final class TiffDirectories {
    /** Bytes of a value by its type, 1 to 18; 0 is no type. */
    private static final int[] TYPE_BYTES = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4, 0, 0, 8, 8, 8};
    /** Overviews and their masks are some dozens. */
    private static final int MOST_DIRECTORIES = 1000;

    private final Path file;
    private final FileChannel channel;
    private final ByteOrder order;
    private final boolean big;
    private final long size;

    private TiffDirectories(Path file, FileChannel channel) throws IOException {
        this.file = file;
        this.channel = channel;
        this.size = channel.size();
        this.order = size >= 2 && bytes(0, 2, ByteOrder.BIG_ENDIAN).getShort(0) == 0x4949 ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN;
        ByteBuffer start = size < 8 ? ByteBuffer.allocate(8) : bytes(0, 8, order);
        this.big = start.getShort(2) == 43;
        if (start.getShort(0) != (order == ByteOrder.LITTLE_ENDIAN ? 0x4949 : 0x4d4d) || !big && start.getShort(2) != 42) {
            throw problem("it does not begin as a TIFF does");
        }
    }

    /** @throws InputException if the file is no TIFF, or states more than it holds */
    static void requireWhole(Path file) {
        try (FileChannel channel = FileChannel.open(file)) {
            new TiffDirectories(file, channel).walk();
        } catch (IOException e) {
            throw VectorReader.problem(file, "start", "cannot be read (" + e.getMessage() + "); check the file", e);
        }
    }

    private void walk() throws IOException {
        long at = big ? whole(8, 8) : whole(4, 4);
        for (int number = 1; at != 0; number++) {
            if (number > MOST_DIRECTORIES) {
                throw problem("it has more than " + MOST_DIRECTORIES + " images, or they refer to each other in a ring");
            }
            long fields = big ? whole(at, 8) : whole(at, 2);
            long first = at + (big ? 8 : 2);
            int fieldBytes = big ? 20 : 12;
            if (fields < 0 || fields > size / fieldBytes || first + fields * fieldBytes > size) {
                throw problem("image " + number + " states " + fields + " fields at byte " + at + " of " + size);
            }
            for (int i = 0; i < fields; i++) {
                field(first + (long) i * fieldBytes);
            }
            at = big ? whole(first + fields * fieldBytes, 8) : whole(first + fields * fieldBytes, 4);
        }
    }

    private void field(long at) throws IOException {
        ByteBuffer field = bytes(at, big ? 20 : 12, order);
        int tag = Short.toUnsignedInt(field.getShort(0));
        int type = Short.toUnsignedInt(field.getShort(2));
        long count = big ? field.getLong(4) : Integer.toUnsignedLong(field.getInt(4));
        int each = type < TYPE_BYTES.length ? TYPE_BYTES[type] : 0;
        int inline = big ? 8 : 4;
        if (count < 0 || each > 0 && count > size / each) {
            throw problem("field " + tag + " states " + Long.toUnsignedString(count) + " values where the file has " + size + " bytes");
        }
        long from = big ? field.getLong(12) : Integer.toUnsignedLong(field.getInt(8));
        if (count * each > inline && (from < 0 || from > size - count * each)) {
            throw problem("the " + count + " values of field " + tag + " stand at byte " + Long.toUnsignedString(from) + " of " + size);
        }
    }

    private long whole(long at, int length) throws IOException {
        ByteBuffer number = bytes(at, length, order);
        return switch (length) {
            case 2 -> Short.toUnsignedLong(number.getShort(0));
            case 4 -> Integer.toUnsignedLong(number.getInt(0));
            default -> number.getLong(0);
        };
    }

    private ByteBuffer bytes(long at, int length, ByteOrder order) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(length).order(order);
        if (at < 0 || at > size - length) {
            throw problem("a directory stands at byte " + Long.toUnsignedString(at) + " of " + size);
        }
        while (bytes.hasRemaining() && channel.read(bytes, at + bytes.position()) >= 0) {
            // A channel may give less than was asked for.
        }
        return bytes;
    }

    private InputException problem(String what) {
        return new InputException(file.getFileName() + ": not a readable GeoTIFF (" + what + "); the file is damaged or cut short, get it again");
    }
}
