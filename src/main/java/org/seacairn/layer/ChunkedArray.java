package org.seacairn.layer;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.BitSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * An array in chunks, of which those used last are held decoded: a window that does not follow the chunks,
 * as in a file whose rows run from south to north, decodes none of them twice.
 */
final class ChunkedArray implements StoredArray {
    private static final long MOST_HELD_BYTES = 64L << 20;

    /**
     * Where a chunk is stored.
     *
     * @param skipped filters that it did not go through, by their place in the pipeline
     */
    record Place(long address, int bytes, BitSet skipped) {}

    private final PlainArray.Bytes file;
    private final int rows;
    private final int cols;
    private final int chunkRows;
    private final int chunkCols;
    private final int chunkBytes;
    private final Map<Long, Place> places;
    private final ChunkFilters filters;
    private final StoredNumber number;
    private final int most;
    /** In order of last use; guarded by itself. */
    private final Map<Long, byte[]> held = new LinkedHashMap<>(16, 0.75f, true);

    /**
     * @param chunkBytes of a decoded chunk
     * @param places by the chunk's number, row by row; a chunk without one was never written
     */
    ChunkedArray(PlainArray.Bytes file, int rows, int cols, int chunkRows, int chunkCols, int chunkBytes,
            Map<Long, Place> places, ChunkFilters filters, StoredNumber number) {
        this.file = file;
        this.rows = rows;
        this.cols = cols;
        this.chunkRows = chunkRows;
        this.chunkCols = chunkCols;
        this.chunkBytes = chunkBytes;
        this.places = places;
        this.filters = filters;
        this.number = number;
        this.most = (int) Math.max(1, Math.min(MOST_HELD_BYTES, Runtime.getRuntime().maxMemory() / 16) / chunkBytes);
    }

    /** How many chunks stand in a row of them. */
    static long across(int cols, int chunkCols) {
        return ((long) cols + chunkCols - 1) / chunkCols;
    }

    @Override
    public int rows() {
        return rows;
    }

    @Override
    public int cols() {
        return cols;
    }

    @Override
    public int blockRows() {
        return Math.min(rows, chunkRows);
    }

    @Override
    public int blockCols() {
        return Math.min(cols, chunkCols);
    }

    @Override
    public void read(int col, int row, int cols, int rows, Sink into) throws IOException {
        for (int by = row / chunkRows; by <= (row + rows - 1) / chunkRows; by++) {
            for (int bx = col / chunkCols; bx <= (col + cols - 1) / chunkCols; bx++) {
                long top = (long) by * chunkRows;
                long left = (long) bx * chunkCols;
                byte[] chunk = chunk(by * across(this.cols, chunkCols) + bx);
                ByteBuffer numbers = chunk == null ? null : ByteBuffer.wrap(chunk).order(number.order());
                int fromCol = (int) Math.max(col, left);
                int toCol = (int) Math.min(col + cols, left + chunkCols);
                int toRow = (int) Math.min(row + rows, top + chunkRows);
                for (int r = (int) Math.max(row, top); r < toRow; r++) {
                    int line = (int) (r - top) * chunkCols;
                    for (int c = fromCol; c < toCol; c++) {
                        into.put(r - row, c - col, numbers == null ? Double.NaN : number.get(numbers, line + (int) (c - left)));
                    }
                }
            }
        }
    }

    private byte[] chunk(long key) throws IOException {
        Place place = places.get(key);
        if (place == null) {
            return null;
        }
        synchronized (held) {
            byte[] decoded = held.get(key);
            if (decoded != null) {
                return decoded;
            }
        }
        ByteBuffer stored = ByteBuffer.allocate(place.bytes());
        file.read(stored, place.address());
        byte[] decoded = filters.decode(stored.array(), place.skipped(), chunkBytes);
        synchronized (held) {
            held.put(key, decoded);
            Iterator<Long> oldest = held.keySet().iterator();
            while (held.size() > most) {
                oldest.next();
                oldest.remove();
            }
        }
        return decoded;
    }
}
