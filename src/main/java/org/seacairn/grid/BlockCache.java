package org.seacairn.grid;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.CompletableFuture;

/**
 * Serves windows of a source from blocks that follow the source's own layout, so that a tile or strip
 * of a compressed file is decoded once and not once for every window (and halo) that touches it.
 * Holds the blocks used last, up to a bound. Threads that need the same block wait for one decoding.
 */
public final class BlockCache implements WindowSource {
    private final WindowSource source;
    private final int cols;
    private final int rows;
    private final int blockCols;
    private final int blockRows;
    private final int blocksAcross;
    private final long mostFloats;

    /** In order of last use; guarded by itself. */
    private final Map<Long, CompletableFuture<float[]>> blocks = new LinkedHashMap<>(64, 0.75f, true);
    private long heldFloats;

    /**
     * @param blockCols width of a block
     * @param blockRows height of a block
     * @param mostFloats how many values may be held; at least one block is held in any case
     */
    public BlockCache(WindowSource source, int cols, int rows, int blockCols, int blockRows, long mostFloats) {
        this.source = source;
        this.cols = cols;
        this.rows = rows;
        this.blockCols = Math.min(blockCols, cols);
        this.blockRows = Math.min(blockRows, rows);
        this.blocksAcross = (cols + this.blockCols - 1) / this.blockCols;
        this.mostFloats = mostFloats;
    }

    @Override
    public void read(int col, int row, int cols, int rows, float[] into) {
        for (int by = row / blockRows; by <= (row + rows - 1) / blockRows; by++) {
            for (int bx = col / blockCols; bx <= (col + cols - 1) / blockCols; bx++) {
                float[] block = block(bx, by);
                int left = bx * blockCols;
                int top = by * blockRows;
                int width = Math.min(blockCols, this.cols - left);
                int fromCol = Math.max(col, left);
                int toCol = Math.min(col + cols, left + width);
                int toRow = Math.min(row + rows, top + Math.min(blockRows, this.rows - top));
                for (int r = Math.max(row, top); r < toRow; r++) {
                    System.arraycopy(block, (r - top) * width + fromCol - left, into,
                            (r - row) * cols + fromCol - col, toCol - fromCol);
                }
            }
        }
    }

    private float[] block(int bx, int by) {
        long key = (long) by * blocksAcross + bx;
        CompletableFuture<float[]> mine = null;
        CompletableFuture<float[]> block;
        synchronized (blocks) {
            block = blocks.get(key);
            if (block == null) {
                mine = new CompletableFuture<>();
                block = mine;
                blocks.put(key, mine);
                heldFloats += (long) blockCols * blockRows;
                evict(key);
            }
        }
        if (mine != null) {
            try {
                int width = Math.min(blockCols, cols - bx * blockCols);
                int height = Math.min(blockRows, rows - by * blockRows);
                float[] values = new float[width * height];
                source.read(bx * blockCols, by * blockRows, width, height, values);
                mine.complete(values);
            } catch (RuntimeException | Error e) {
                mine.completeExceptionally(e);
                throw e;
            }
        }
        try {
            return block.join();
        } catch (java.util.concurrent.CompletionException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw e;
        }
    }

    private void evict(long keep) {
        Iterator<Map.Entry<Long, CompletableFuture<float[]>>> oldest = blocks.entrySet().iterator();
        while (heldFloats > mostFloats && oldest.hasNext()) {
            Map.Entry<Long, CompletableFuture<float[]>> entry = oldest.next();
            if (entry.getKey() != keep) {
                oldest.remove();
                heldFloats -= (long) blockCols * blockRows;
            }
        }
    }
}
