package org.seacairn.sample;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/**
 * Writes a Float32 GeoTIFF: little-endian, tiles of 256, deflate with the floating-point predictor.
 * After TIFF 6.0, its technical note 3 (predictor 3), OGC GeoTIFF 1.1 and GDAL's ASCII tag for no-data.
 */
final class GeoTiffFile {
    private static final int TILE = 256;
    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int DOUBLE = 12;
    private static final int ASCII = 2;

    /** One entry of the image file directory; the values are little-endian already. */
    private record Entry(int tag, int type, int count, byte[] values) {}

    private GeoTiffFile() {}

    /** @param values row by row from the north-western corner */
    static void write(Path file, float[] values, int cols, int rows, double west, double north, double cell,
            int epsg, String noData) {
        int across = (cols + TILE - 1) / TILE;
        int down = (rows + TILE - 1) / TILE;
        List<byte[]> tiles = new ArrayList<>();
        for (int t = 0; t < across * down; t++) {
            tiles.add(deflated(tile(values, cols, rows, t % across * TILE, t / across * TILE)));
        }
        int[] sizes = tiles.stream().mapToInt(tile -> tile.length).toArray();
        int[] offsets = new int[sizes.length];
        int end = 8;
        for (int t = 0; t < sizes.length; t++) {
            offsets[t] = end;
            end += sizes[t] + sizes[t] % 2;
        }
        List<Entry> entries = List.of(
                shorts(256, cols), shorts(257, rows), shorts(258, 32), shorts(259, 8), shorts(262, 1),
                shorts(277, 1), shorts(284, 1), shorts(317, 3), shorts(322, TILE), shorts(323, TILE),
                longs(324, offsets), longs(325, sizes), shorts(339, 3),
                doubles(33550, cell, cell, 0), doubles(33922, 0, 0, 0, west, north, 0),
                // Projected, cells are areas, the code of the CRS.
                shorts(34735, 1, 1, 0, 3, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, epsg),
                ascii(42113, noData));
        try {
            Files.write(file, assembled(tiles, entries, end));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The predictor's order: of each row all high bytes, then the next lower ones; each less its left neighbour. */
    private static byte[] tile(float[] values, int cols, int rows, int left, int top) {
        byte[] bytes = new byte[TILE * TILE * 4];
        for (int r = 0; r < TILE; r++) {
            int start = r * TILE * 4;
            for (int c = 0; c < TILE; c++) {
                // Cells beyond the grid repeat its edge: they cost nothing and no one reads them.
                int at = Math.min(top + r, rows - 1) * cols + Math.min(left + c, cols - 1);
                int bits = Float.floatToIntBits(values[at]);
                for (int plane = 0; plane < 4; plane++) {
                    bytes[start + plane * TILE + c] = (byte) (bits >>> 24 - 8 * plane);
                }
            }
            for (int i = start + TILE * 4 - 1; i > start; i--) {
                bytes[i] -= bytes[i - 1];
            }
        }
        return bytes;
    }

    private static byte[] deflated(byte[] bytes) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION);
        try (DeflaterOutputStream deflate = new DeflaterOutputStream(out, deflater)) {
            deflate.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            deflater.end();
        }
        return out.toByteArray();
    }

    /** Header, tiles, directory, then the values too long to stand in the directory. */
    private static byte[] assembled(List<byte[]> tiles, List<Entry> entries, int directory) {
        int beyond = directory + 2 + 12 * entries.size() + 4;
        int size = beyond + entries.stream().mapToInt(e -> e.values().length > 4 ? even(e.values().length) : 0).sum();
        ByteBuffer out = ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
        out.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(directory);
        for (byte[] tile : tiles) {
            out.put(tile).position(even(out.position()));
        }
        out.putShort((short) entries.size());
        for (Entry entry : entries) {
            out.putShort((short) entry.tag()).putShort((short) entry.type()).putInt(entry.count());
            int next = out.position() + 4;
            if (entry.values().length > 4) {
                out.putInt(beyond);
                out.duplicate().position(beyond).put(entry.values());
                beyond += even(entry.values().length);
            } else {
                out.put(entry.values());
            }
            out.position(next);
        }
        return out.array();
    }

    private static int even(int length) {
        return length + length % 2;
    }

    private static Entry shorts(int tag, int... values) {
        ByteBuffer bytes = ByteBuffer.allocate(2 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        for (int value : values) {
            bytes.putShort((short) value);
        }
        return new Entry(tag, SHORT, values.length, bytes.array());
    }

    private static Entry longs(int tag, int... values) {
        ByteBuffer bytes = ByteBuffer.allocate(4 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        for (int value : values) {
            bytes.putInt(value);
        }
        return new Entry(tag, LONG, values.length, bytes.array());
    }

    private static Entry doubles(int tag, double... values) {
        ByteBuffer bytes = ByteBuffer.allocate(8 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        for (double value : values) {
            bytes.putDouble(value);
        }
        return new Entry(tag, DOUBLE, values.length, bytes.array());
    }

    private static Entry ascii(int tag, String text) {
        byte[] bytes = (text + '\0').getBytes(StandardCharsets.US_ASCII);
        return new Entry(tag, ASCII, bytes.length, bytes);
    }
}
