package org.seacairn.score;

import java.util.Arrays;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;

/**
 * The best score of every block of {@value #SIDE} x {@value #SIDE} cells and the cell that has it: all
 * that choosing sites needs to know of a grid too large to keep. Of equal scores the more northern
 * cell counts, then the more western.
 *
 * <p>Blocks are written by several threads, each block by one of them, before anyone reads.
 */
public final class BlockMaxima {
    /** Cells along the side of a block; a tile's side is a whole multiple of it. */
    public static final int SIDE = 16;

    private final GridGeometry grid;
    private final int across;
    private final float[] best;
    private final byte[] cellInBlock;

    public BlockMaxima(GridGeometry grid) {
        this.grid = grid;
        this.across = (grid.cols() + SIDE - 1) / SIDE;
        int down = (grid.rows() + SIDE - 1) / SIDE;
        this.best = new float[Math.multiplyExact(across, down)];
        this.cellInBlock = new byte[best.length];
        Arrays.fill(best, Float.NaN);
    }

    /** Number of blocks. */
    public int blocks() {
        return best.length;
    }

    /** The best score of a block, NaN where it has no scored cell. */
    public float best(int block) {
        return best[block];
    }

    /** Column of the block's best cell. */
    public int bestCol(int block) {
        return block % across * SIDE + (cellInBlock[block] & 0xFF) % SIDE;
    }

    /** Row of the block's best cell. */
    public int bestRow(int block) {
        return block / across * SIDE + (cellInBlock[block] & 0xFF) / SIDE;
    }

    /** The cells of a block. */
    public Window window(int block) {
        int col = block % across * SIDE;
        int row = block / across * SIDE;
        return new Window(col, row, Math.min(SIDE, grid.cols() - col), Math.min(SIDE, grid.rows() - row));
    }

    /** Takes the maxima of a window whose edges are those of blocks (or of the grid). */
    void take(ScoredWindow scored) {
        Window w = scored.window();
        for (int row = w.row(); row < w.endRow(); row++) {
            for (int col = w.col(); col < w.endCol(); col++) {
                float s = scored.score()[w.index(col, row)];
                int block = row / SIDE * across + col / SIDE;
                // The first of equals stays: rows are walked from the north, columns from the west.
                if (s > best[block] || !Float.isNaN(s) && Float.isNaN(best[block])) {
                    best[block] = s;
                    cellInBlock[block] = (byte) (row % SIDE * SIDE + col % SIDE);
                }
            }
        }
    }

    /** Puts another best cell in place of a block's. NaN: the block has none left. */
    public void replace(int block, float score, int col, int row) {
        best[block] = score;
        cellInBlock[block] = (byte) (row % SIDE * SIDE + col % SIDE);
    }
}
