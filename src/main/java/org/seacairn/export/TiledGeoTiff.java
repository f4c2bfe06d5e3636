package org.seacairn.export;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.zip.Deflater;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;

/**
 * Writes one band as a tiled, deflated GeoTIFF (OGC 19-008r4; TIFF 6.0 with Adobe deflate; BigTIFF
 * where the uncompressed band would pass 3.5 GB), tile by tile in row-major order, holding no image.
 *
 * <p>Written here and not by a library: those at hand compress on one thread inside their writer, and
 * compression is the largest part of the work. {@link #encode} is pure and runs on many threads.
 * Same tiles, same bytes.
 */
public final class TiledGeoTiff implements AutoCloseable {
    /** Half a gigabyte under what 32-bit offsets reach: deflate can add a little to what it cannot pack. */
    private static final long CLASSIC_LIMIT = 0xE000_0000L;
    /** Scores are noise to a compressor: level 6 takes 1.7 times as long to save 6 % of the bytes. */
    private static final int DEFLATE_LEVEL = 2;

    /** Kinds of cell. */
    public enum Cell {
        FLOAT32(4, 3), UINT16(2, 1), UINT32(4, 1);

        private final int bytes;
        private final int sampleFormat;

        Cell(int bytes, int sampleFormat) {
            this.bytes = bytes;
            this.sampleFormat = sampleFormat;
        }
    }

    private final GridGeometry grid;
    private final int tileSide;
    private final Cell cell;
    private final String noData;
    private final boolean big;
    private final FileChannel channel;
    private final OutputStream out;
    private final Path file;
    private final long[] offsets;
    private final long[] lengths;
    private int written;
    private long position;

    /**
     * @param tileSide a whole multiple of 16
     * @param noData text of GDAL's no-data tag, or null for none
     */
    public TiledGeoTiff(Path file, GridGeometry grid, int tileSide, Cell cell, String noData) {
        this.file = file;
        this.grid = grid;
        this.tileSide = tileSide;
        this.cell = cell;
        this.noData = noData;
        this.big = grid.cells() * cell.bytes > CLASSIC_LIMIT;
        int across = (grid.cols() + tileSide - 1) / tileSide;
        int down = (grid.rows() + tileSide - 1) / tileSide;
        this.offsets = new long[Math.multiplyExact(across, down)];
        this.lengths = new long[offsets.length];
        try {
            this.channel = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        } catch (IOException e) {
            throw OutputFile.cannotWrite(file, e);
        }
        this.out = new BufferedOutputStream(java.nio.channels.Channels.newOutputStream(channel), 1 << 20);
        put(new byte[big ? 16 : 8]);
    }

    /**
     * Compresses the cells of one tile.
     *
     * @param tile where they lie; narrower than a tile at the grid's east and south edges
     * @param values one for each cell: the bits of a float, or an unsigned number
     */
    public byte[] encode(Window tile, int[] values) {
        ByteBuffer raw = ByteBuffer.allocate(tileSide * tileSide * cell.bytes).order(ByteOrder.LITTLE_ENDIAN);
        int outside = cell == Cell.FLOAT32 ? Float.floatToRawIntBits(Float.NaN) : 0;
        int[] line = new int[tileSide];
        Arrays.fill(line, outside);
        for (int r = 0; r < tileSide; r++) {
            if (r < tile.rows()) {
                System.arraycopy(values, r * tile.cols(), line, 0, tile.cols());
            } else if (r == tile.rows()) {
                Arrays.fill(line, outside);
            }
            if (cell == Cell.UINT16) {
                for (int value : line) {
                    raw.putShort((short) value);
                }
            } else {
                raw.asIntBuffer().put(line);
                raw.position(raw.position() + 4 * tileSide);
            }
        }
        return deflate(raw.array());
    }

    private static byte[] deflate(byte[] raw) {
        Deflater deflater = new Deflater(DEFLATE_LEVEL);
        try {
            deflater.setInput(raw);
            deflater.finish();
            byte[] into = new byte[raw.length / 2 + 1024];
            int length = deflater.deflate(into);
            while (!deflater.finished()) {
                into = Arrays.copyOf(into, into.length * 2);
                length += deflater.deflate(into, length, into.length - length);
            }
            return Arrays.copyOf(into, length);
        } finally {
            deflater.end();
        }
    }

    /** Appends the next tile, in row-major order. */
    public void write(byte[] encoded) {
        offsets[written] = position;
        lengths[written++] = encoded.length;
        put(encoded);
        if ((encoded.length & 1) != 0) {
            put(new byte[1]);
        }
    }

    private void put(byte[] bytes) {
        try {
            out.write(bytes);
            position += bytes.length;
        } catch (IOException e) {
            throw OutputFile.cannotWrite(file, e);
        }
    }

    /** Writes the directory; all tiles must have been written. */
    public void finish() {
        if (written != offsets.length) {
            throw new IllegalStateException(written + " of " + offsets.length + " tiles written");
        }
        List<Field> fields = fields();
        fields.sort(Comparator.comparingInt(Field::tag));
        long directory = position;
        put(directory(fields, directory));
        ByteBuffer header = ByteBuffer.allocate(big ? 16 : 8).order(ByteOrder.LITTLE_ENDIAN);
        header.putShort((short) 0x4949).putShort((short) (big ? 43 : 42));
        if (big) {
            header.putShort((short) 8).putShort((short) 0).putLong(directory);
        } else {
            header.putInt((int) directory);
        }
        try {
            out.flush();
            header.flip();
            for (long at = 0; header.hasRemaining();) {
                at += channel.write(header, at);
            }
        } catch (IOException e) {
            throw OutputFile.cannotWrite(file, e);
        }
    }

    @Override
    public void close() {
        try {
            channel.close();
        } catch (IOException e) {
            throw OutputFile.cannotWrite(file, e);
        }
    }

    private List<Field> fields() {
        List<Field> fields = new ArrayList<>();
        fields.add(Field.longs(256, grid.cols()));
        fields.add(Field.longs(257, grid.rows()));
        fields.add(Field.shorts(258, 8 * cell.bytes));
        fields.add(Field.shorts(259, 8));
        fields.add(Field.shorts(262, 1));
        fields.add(Field.shorts(277, 1));
        fields.add(Field.longs(322, tileSide));
        fields.add(Field.longs(323, tileSide));
        fields.add(big ? Field.long8s(324, offsets) : Field.longs(324, offsets));
        fields.add(Field.longs(325, lengths));
        fields.add(Field.shorts(339, cell.sampleFormat));
        fields.add(Field.doubles(33550, grid.cellM(), grid.cellM(), 0));
        fields.add(Field.doubles(33922, 0, 0, 0, grid.west(), grid.north(), 0));
        fields.addAll(GeoKeys.fields(grid.crs()));
        if (noData != null) {
            fields.add(Field.text(42113, noData));
        }
        return fields;
    }

    /** The directory with its long values behind it. */
    private byte[] directory(List<Field> fields, long at) {
        int entry = big ? 20 : 12;
        int inline = big ? 8 : 4;
        int head = (big ? 8 : 2) + fields.size() * entry + (big ? 8 : 4);
        int size = head;
        for (Field f : fields) {
            size += f.data.length > inline ? f.data.length + (f.data.length & 1) : 0;
        }
        ByteBuffer b = ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
        if (big) {
            b.putLong(fields.size());
        } else {
            b.putShort((short) fields.size());
        }
        int behind = head;
        for (Field f : fields) {
            b.putShort((short) f.tag).putShort((short) f.type);
            word(b, f.count);
            if (f.data.length <= inline) {
                b.put(f.data).put(new byte[inline - f.data.length]);
            } else {
                word(b, at + behind);
                b.put(behind, f.data);
                behind += f.data.length + (f.data.length & 1);
            }
        }
        return b.array();
    }

    private void word(ByteBuffer b, long value) {
        if (big) {
            b.putLong(value);
        } else {
            b.putInt((int) value);
        }
    }

    /** One entry of a TIFF directory. */
    record Field(int tag, int type, long count, byte[] data) {
        static Field shorts(int tag, int... values) {
            ByteBuffer b = buffer(2 * values.length);
            for (int v : values) {
                b.putShort((short) v);
            }
            return new Field(tag, 3, values.length, b.array());
        }

        static Field longs(int tag, long... values) {
            ByteBuffer b = buffer(4 * values.length);
            for (long v : values) {
                b.putInt((int) v);
            }
            return new Field(tag, 4, values.length, b.array());
        }

        static Field long8s(int tag, long... values) {
            ByteBuffer b = buffer(8 * values.length);
            for (long v : values) {
                b.putLong(v);
            }
            return new Field(tag, 16, values.length, b.array());
        }

        static Field doubles(int tag, double... values) {
            ByteBuffer b = buffer(8 * values.length);
            for (double v : values) {
                b.putDouble(v);
            }
            return new Field(tag, 12, values.length, b.array());
        }

        static Field text(int tag, String ascii) {
            byte[] bytes = (ascii + "\0").getBytes(StandardCharsets.US_ASCII);
            return new Field(tag, 2, bytes.length, bytes);
        }

        private static ByteBuffer buffer(int bytes) {
            return ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
        }
    }
}
