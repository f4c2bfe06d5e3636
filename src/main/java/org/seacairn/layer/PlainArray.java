package org.seacairn.layer;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;

/** An array whose numbers stand one after another, without chunks or compression. */
final class PlainArray implements StoredArray {
    /** Bytes at an address; an implementation fills the buffer whole. */
    @FunctionalInterface
    interface Bytes {
        void read(ByteBuffer into, long from) throws IOException;
    }

    private final Bytes bytes;
    private final long start;
    private final long rowStride;
    private final int rows;
    private final int cols;
    private final StoredNumber number;

    /** @param rowStride bytes from the start of one row to that of the next */
    PlainArray(Bytes bytes, long start, long rowStride, int rows, int cols, StoredNumber number) {
        this.bytes = bytes;
        this.start = start;
        this.rowStride = rowStride;
        this.rows = rows;
        this.cols = cols;
        this.number = number;
    }

    /** The bytes of a file. */
    static Bytes of(FileChannel file) {
        return (into, from) -> {
            while (into.hasRemaining()) {
                if (file.read(into, from + into.position()) < 0) {
                    throw new EOFException("the file ends at byte " + file.size());
                }
            }
        };
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
        return 0;
    }

    @Override
    public int blockCols() {
        return 0;
    }

    @Override
    public void read(int col, int row, int cols, int rows, Sink into) throws IOException {
        ByteBuffer line = ByteBuffer.allocate(Math.multiplyExact(cols, number.elementBytes())).order(number.order());
        for (int r = 0; r < rows; r++) {
            bytes.read(line.clear(), start + (row + r) * rowStride + (long) col * number.elementBytes());
            for (int c = 0; c < cols; c++) {
                into.put(r, c, number.get(line, c));
            }
        }
    }
}
