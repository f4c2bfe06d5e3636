package org.seacairn.layer;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;

/**
 * Lays out an uncompressed TIFF byte by byte, for the kinds of file that writing libraries at hand do not
 * make. After TIFF 6.0, the BigTIFF design of its libraries, and OGC GeoTIFF 1.1 (19-008r4).
 */
final class HandTiff {
    /** Kinds of sample: bits and TIFF sample format. */
    enum Sample {
        INT16(16, 2), UINT16(16, 1), UINT32(32, 1), INT32(32, 2), FLOAT16(16, 3), FLOAT32(32, 3), FLOAT64(64, 3);

        final int bits;
        final int format;

        Sample(int bits, int format) {
            this.bits = bits;
            this.format = format;
        }
    }

    private final int cols;
    private final int rows;
    private final Map<Integer, Object> fields = new TreeMap<>();
    private Sample sample = Sample.FLOAT32;
    private ByteOrder order = ByteOrder.LITTLE_ENDIAN;
    private boolean big;
    private int bands = 1;
    private int rowsPerStrip = 4;
    private byte[] mask;
    private int maskCols;
    private int maskType;

    HandTiff(int cols, int rows) {
        this.cols = cols;
        this.rows = rows;
        at(500_000, 3_000_000, 10);
        keys(1, 32617);
    }

    HandTiff samples(Sample kind) {
        sample = kind;
        return this;
    }

    HandTiff bigEndian() {
        order = ByteOrder.BIG_ENDIAN;
        return this;
    }

    HandTiff bigTiff() {
        big = true;
        return this;
    }

    HandTiff bands(int count) {
        bands = count;
        return this;
    }

    HandTiff rowsPerStrip(int count) {
        rowsPerStrip = count;
        return this;
    }

    /** The north-western corner and the cell. */
    HandTiff at(double west, double north, double cell) {
        fields.put(33550, new double[] {cell, cell, 0});
        fields.put(33922, new double[] {0, 0, 0, west, north, 0});
        return this;
    }

    /** Column and row to x and y: x0 + a col + b row, y0 + c col + d row. */
    HandTiff matrix(double x0, double a, double b, double y0, double c, double d) {
        fields.remove(33550);
        fields.remove(33922);
        fields.put(34264, new double[] {a, b, 0, x0, c, d, 0, y0, 0, 0, 0, 0, 0, 0, 0, 1});
        return this;
    }

    /** @param rasterType 1: a cell is an area, 2: a point */
    HandTiff keys(int rasterType, int epsg) {
        boolean geographic = epsg < 5000 && epsg >= 4000;
        fields.put(34735, new int[] {1, 1, 0, 3, 1024, 0, 1, geographic ? 2 : 1, 1025, 0, 1, rasterType,
            geographic ? 2048 : 3072, 0, 1, epsg});
        return this;
    }

    /** A second image of bytes. @param subfileType NewSubfileType: 4 a mask, 1 a smaller version, 5 a mask of that */
    HandTiff second(int subfileType, int cols, int... values) {
        maskType = subfileType;
        maskCols = cols;
        mask = new byte[values.length];
        for (int i = 0; i < values.length; i++) {
            mask[i] = (byte) values[i];
        }
        return this;
    }

    /** @param value shorts as {@code int[]}, longs, doubles or text */
    HandTiff with(int tag, Object value) {
        fields.put(tag, value);
        return this;
    }

    HandTiff without(int... tags) {
        for (int tag : tags) {
            fields.remove(tag);
        }
        return this;
    }

    HandTiff noData(String text) {
        fields.put(42113, text);
        return this;
    }

    HandTiff gdalMetadata(String items) {
        fields.put(42112, "<GDALMetadata>\n" + items + "\n</GDALMetadata>\n");
        return this;
    }

    /** @param values row by row as the file has them, the bands of a cell side by side */
    Path write(Path file, double... values) {
        try {
            return Files.write(file, bytes(values));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    byte[] bytes(double... values) {
        int stripBytes = rowsPerStrip * cols * bands * sample.bits / 8;
        int strips = (rows + rowsPerStrip - 1) / rowsPerStrip;
        int pixelBytes = rows * cols * bands * sample.bits / 8;
        int head = big ? 16 : 8;
        int[] offsets = new int[strips];
        int[] counts = new int[strips];
        for (int i = 0; i < strips; i++) {
            offsets[i] = head + i * stripBytes;
            counts[i] = Math.min(stripBytes, pixelBytes - i * stripBytes);
        }
        int[] ofBands = new int[bands];
        fields.put(256, new int[] {cols});
        fields.put(257, new int[] {rows});
        Arrays.fill(ofBands, sample.bits);
        fields.put(258, ofBands.clone());
        fields.put(259, new int[] {1});
        fields.putIfAbsent(262, new int[] {1});
        fields.put(277, new int[] {bands});
        fields.put(278, new int[] {rowsPerStrip});
        Arrays.fill(ofBands, sample.format);
        fields.put(339, ofBands.clone());
        fields.put(273, longs(offsets));
        fields.put(279, longs(counts));
        ByteBuffer out = ByteBuffer.allocate(pixelBytes + 10_000 + 16 * strips).order(order);
        out.put((byte) (order == ByteOrder.BIG_ENDIAN ? 'M' : 'I')).put((byte) (order == ByteOrder.BIG_ENDIAN ? 'M' : 'I'));
        out.putShort((short) (big ? 43 : 42));
        if (big) {
            out.putShort((short) 8).putShort((short) 0).putLong(head + pixelBytes);
        } else {
            out.putInt(head + pixelBytes);
        }
        for (double value : values) {
            put(out, value);
        }
        directory(out, fields);
        if (mask != null) {
            second(out, head + pixelBytes + (big ? 8 + 20 * fields.size() : 2 + 12 * fields.size()));
        }
        byte[] bytes = new byte[out.position()];
        out.flip().get(bytes);
        return bytes;
    }

    private void second(ByteBuffer out, int next) {
        int pixels = out.position();
        out.put(mask);
        out.position(out.position() + out.position() % 2);
        if (big) {
            out.putLong(next, out.position());
        } else {
            out.putInt(next, out.position());
        }
        Map<Integer, Object> tags = new TreeMap<>(Map.of(254, new long[] {maskType}, 256, new int[] {maskCols}, 257, new int[] {mask.length / maskCols},
                258, new int[] {8}, 259, new int[] {1}, 262, new int[] {4}, 273, new long[] {pixels}, 277, new int[] {1},
                278, new int[] {mask.length / maskCols}, 279, new long[] {mask.length}));
        directory(out, tags);
    }

    private static long[] longs(int[] values) {
        return Arrays.stream(values).asLongStream().toArray();
    }

    private void put(ByteBuffer out, double value) {
        switch (sample) {
            case INT16, UINT16 -> out.putShort((short) (int) value);
            case FLOAT16 -> out.putShort(half((float) value));
            case INT32, UINT32 -> out.putInt((int) (long) value);
            case FLOAT32 -> out.putFloat((float) value);
            case FLOAT64 -> out.putDouble(value);
        }
    }

    /** IEEE 754 binary16 of a number that it can hold. */
    private static short half(float value) {
        int bits = Float.floatToIntBits(value);
        int exponent = (bits >> 23 & 0xFF) - 127 + 15;
        return (short) (bits >> 16 & 0x8000 | (exponent <= 0 ? 0 : exponent << 10 | bits >> 13 & 0x3FF));
    }

    private void directory(ByteBuffer out, Map<Integer, Object> fields) {
        if (big) {
            out.putLong(fields.size());
        } else {
            out.putShort((short) fields.size());
        }
        int inline = big ? 8 : 4;
        int behind = out.position() + fields.size() * (big ? 20 : 12) + inline;
        int next = behind;
        for (Map.Entry<Integer, Object> field : fields.entrySet()) {
            byte[] data = data(field.getValue());
            int type = field.getValue() instanceof int[] ? 3 : field.getValue() instanceof long[] ? 4
                    : field.getValue() instanceof double[] ? 12 : 2;
            int count = data.length / new int[] {0, 0, 1, 2, 4, 0, 0, 0, 0, 0, 0, 0, 8}[type];
            out.putShort((short) (int) field.getKey()).putShort((short) type);
            if (big) {
                out.putLong(count);
            } else {
                out.putInt(count);
            }
            int after = out.position() + inline;
            if (data.length <= inline) {
                out.put(data);
            } else {
                if (big) {
                    out.putLong(next);
                } else {
                    out.putInt(next);
                }
                for (int i = 0; i < data.length; i++) {
                    out.put(next + i, data[i]);
                }
                next += data.length + data.length % 2;
            }
            out.position(after);
        }
        out.position(next);
    }

    private byte[] data(Object value) {
        if (value instanceof String text) {
            return (text + "\0").getBytes(StandardCharsets.ISO_8859_1);
        }
        ByteBuffer out = ByteBuffer.allocate(100_000).order(order);
        if (value instanceof int[] shorts) {
            for (int x : shorts) {
                out.putShort((short) x);
            }
        } else if (value instanceof long[] longs) {
            for (long x : longs) {
                out.putInt((int) x);
            }
        } else {
            for (double x : (double[]) value) {
                out.putDouble(x);
            }
        }
        byte[] bytes = new byte[out.position()];
        out.flip().get(bytes);
        return bytes;
    }
}
