package org.seacairn.layer;

import io.jhdf.ObjectHeader;
import io.jhdf.api.Dataset;
import io.jhdf.api.dataset.ChunkedDataset;
import io.jhdf.dataset.CompactDataset;
import io.jhdf.dataset.chunked.Chunk;
import io.jhdf.dataset.chunked.ChunkOffset;
import io.jhdf.dataset.chunked.ChunkedDatasetV3;
import io.jhdf.dataset.chunked.ChunkedDatasetV4;
import io.jhdf.object.message.DataLayoutMessage.ContiguousDataLayoutMessage;
import io.jhdf.object.message.FilterPipelineMessage;
import io.jhdf.storage.HdfBackingStorage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seacairn.InputException;

/** Where the numbers of an HDF5 dataset stand in the file, and whether they all can stand there. */
final class HdfLayout {
    /** Of a grid; the largest published grid of the sea floor has 3.7 billion. */
    private static final long MOST_CELLS = 20_000_000_000L;
    /** Of one chunk; writers' own are some megabytes at most. */
    private static final long MOST_CHUNK_BYTES = 256L << 20;

    private static final long UNDEFINED_ADDRESS = -1;

    private final Path file;
    private final FileChannel channel;
    private final HdfBackingStorage storage;
    private final Dataset dataset;
    private final ObjectHeader messages;

    HdfLayout(Path file, FileChannel channel, HdfBackingStorage storage, Dataset dataset, ObjectHeader messages) {
        this.file = file;
        this.channel = channel;
        this.storage = storage;
        this.dataset = dataset;
        this.messages = messages;
    }

    StoredArray array(StoredNumber number) {
        int[] shape = dataset.getDimensions();
        if (shape.length == 0) {
            shape = new int[] {1};
        }
        for (int i = 0; i < shape.length; i++) {
            if (shape[i] < 1 || i < shape.length - 2 && shape[i] != 1) {
                throw problem("has the shape " + java.util.Arrays.toString(shape) + ", which is no grid; write one with rows and columns alone");
            }
        }
        int cols = shape[shape.length - 1];
        int rows = shape.length == 1 ? 1 : shape[shape.length - 2];
        if ((long) cols * rows > MOST_CELLS) {
            throw problem("promises " + (long) cols * rows + " cells, more than " + MOST_CELLS + "; cut out what is needed");
        }
        if (dataset instanceof ChunkedDataset chunked) {
            return chunked(chunked, rows, cols, number);
        }
        long bytes = Math.multiplyExact((long) rows * cols, number.elementBytes());
        long rowStride = (long) cols * number.elementBytes();
        if (dataset instanceof CompactDataset compact) {
            ByteBuffer data = compact.getDataBuffer();
            requireWithin(0, bytes, data.remaining());
            byte[] held = new byte[(int) bytes];
            data.get(held);
            return new PlainArray((into, from) -> into.put(held, (int) from, into.remaining()), 0, rowStride, rows, cols, number);
        }
        long address = messages.getMessageOfType(ContiguousDataLayoutMessage.class).getAddress();
        if (address == UNDEFINED_ADDRESS) {
            throw problem("was never written; get the file again");
        }
        long start = address + storage.getUserBlockSize();
        requireWithin(start, bytes, size());
        return new PlainArray(PlainArray.of(channel), start, rowStride, rows, cols, number);
    }

    private StoredArray chunked(ChunkedDataset chunked, int rows, int cols, StoredNumber number) {
        int[] chunk = chunked.getChunkDimensions();
        int rank = Math.max(1, dataset.getDimensions().length);
        long chunkBytes = number.elementBytes();
        for (int i = 0; i < rank; i++) {
            if (chunk.length < rank || chunk[i] < 1 || chunkBytes > MOST_CHUNK_BYTES / chunk[i]) {
                throw problem("has chunks of " + java.util.Arrays.toString(chunk) + " cells, which cannot be or are over "
                        + (MOST_CHUNK_BYTES >> 20) + " MB; write it again with chunks of some 256 x 256");
            }
            chunkBytes *= chunk[i];
        }
        ChunkFilters filters = filters(number);
        if (filters.unknown() != null) {
            throw problem("is compressed with " + filters.unknown() + ", which is not read here; write it again with deflate");
        }
        int chunkCols = chunk[rank - 1];
        int chunkRows = rank == 1 ? 1 : chunk[rank - 2];
        long across = ChunkedArray.across(cols, chunkCols);
        long size = size();
        Map<Long, ChunkedArray.Place> places = new HashMap<>();
        for (Chunk stored : chunks()) {
            if (stored.getAddress() == UNDEFINED_ADDRESS) {
                continue;
            }
            int[] at = stored.getChunkOffset();
            int col = at[rank - 1];
            int row = rank == 1 ? 0 : at[rank - 2];
            if (col < 0 || row < 0 || col >= cols || row >= rows || col % chunkCols != 0 || row % chunkRows != 0) {
                continue; // Left of a larger array that was cut: the format allows it.
            }
            if (stored.getSize() < 0 || stored.getSize() > 2 * MOST_CHUNK_BYTES) {
                throw problem("has a chunk of " + stored.getSize() + " bytes in the file; it is damaged, get it again");
            }
            long start = stored.getAddress() + storage.getUserBlockSize();
            requireWithin(start, stored.getSize(), size);
            places.put(row / chunkRows * across + col / chunkCols,
                    new ChunkedArray.Place(start, stored.getSize(), stored.getFilterMask()));
        }
        return new ChunkedArray(PlainArray.of(channel), rows, cols, chunkRows, chunkCols, (int) chunkBytes, places, filters, number);
    }

    private ChunkFilters filters(StoredNumber number) {
        List<Integer> ids = messages.hasMessageOfType(FilterPipelineMessage.class)
                ? messages.getMessageOfType(FilterPipelineMessage.class).getFilters().stream()
                        .map(FilterPipelineMessage.FilterInfo::getId).toList()
                : List.of();
        return new ChunkFilters(ids, number.elementBytes());
    }

    private Iterable<Chunk> chunks() {
        // The library keeps the index of chunks for those who extend it.
        final class Third extends ChunkedDatasetV3 {
            Third() {
                super(storage, dataset.getAddress(), dataset.getName(), dataset.getParent(), messages);
            }

            Map<ChunkOffset, Chunk> all() {
                return getChunkLookup();
            }
        }
        final class Fourth extends ChunkedDatasetV4 {
            Fourth() {
                super(storage, dataset.getAddress(), dataset.getName(), dataset.getParent(), messages);
            }

            Map<ChunkOffset, Chunk> all() {
                return getChunkLookup();
            }
        }
        return (dataset instanceof ChunkedDatasetV4 ? new Fourth().all() : new Third().all()).values();
    }

    private void requireWithin(long start, long bytes, long size) {
        if (start < 0 || bytes > size - start) {
            throw problem("has values up to byte " + (start + bytes) + " and the file has " + size
                    + "; it is damaged or cut short, get it again");
        }
    }

    private long size() {
        try {
            return channel.size();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private InputException problem(String whatAndRemedy) {
        return VectorReader.problem(file, dataset.getName(), whatAndRemedy);
    }
}
