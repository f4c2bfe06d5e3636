package org.seacairn.place;

import java.util.Arrays;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;

/**
 * The best rectangle about the cells of every block of {@value #SIDE} x {@value #SIDE}: all that is kept
 * of a pass over the grid. Blocks are written by several threads, each block by one of them, before
 * anyone reads.
 */
final class RectangleBlocks {
    /** Cells along the side of a block. */
    static final int SIDE = 16;

    private final GridGeometry grid;
    private final double blemish;
    private final int across;
    private final double[] mean;
    private final byte[] cell;
    private final short[] shape;

    RectangleBlocks(GridGeometry grid, double blemish) {
        this.grid = grid;
        this.blemish = blemish;
        this.across = (grid.cols() + SIDE - 1) / SIDE;
        this.mean = new double[Math.multiplyExact(across, (grid.rows() + SIDE - 1) / SIDE)];
        this.cell = new byte[mean.length];
        this.shape = new short[mean.length];
        Arrays.fill(mean, Double.NaN);
    }

    /** Rows of blocks. */
    int rows() {
        return mean.length / across;
    }

    /** The best rectangle of a row of blocks, or null where it has none. */
    Rectangle bestOfRow(int row) {
        Rectangle best = null;
        for (int block = row * across; block < (row + 1) * across; block++) {
            if (mean[block] >= (best == null ? 0 : best.mean()) && (best == null || best(block).before(best))) {
                best = best(block);
            }
        }
        return best;
    }

    /** The block of a cell. */
    int block(int col, int row) {
        return row / SIDE * across + col / SIDE;
    }

    private Rectangle best(int block) {
        return new Rectangle(mean[block], block % across * SIDE + (cell[block] & 0xFF) % SIDE,
                block / across * SIDE + (cell[block] & 0xFF) / SIDE, shape[block]);
    }

    /** The cells of a block. */
    Window window(int block) {
        int col = block % across * SIDE;
        int row = block / across * SIDE;
        return new Window(col, row, Math.min(SIDE, grid.cols() - col), Math.min(SIDE, grid.rows() - row));
    }

    /** Puts another rectangle in place of a block's best; null: it has none left. */
    void replace(int block, Rectangle next) {
        if (next == null) {
            mean[block] = Double.NaN;
        } else {
            mean[block] = next.mean();
            cell[block] = cell(next.col(), next.row());
            shape[block] = (short) next.shape();
        }
    }

    private static byte cell(int col, int row) {
        return (byte) (row % SIDE * SIDE + col % SIDE);
    }

    /** As {@link RectangleWalk.Taker#take}. */
    void take(int shapeNumber, int cells, int row, int col, int n, long[] sums) {
        int most = CellSums.mostRuledOut(blemish, cells);
        int rowBlock = row / SIDE * across;
        for (int i = 0; i < n; i++) {
            if (CellSums.ruledOut(sums[i]) <= most) {
                double m = CellSums.mean(sums[i], cells);
                int block = rowBlock + (col + i) / SIDE;
                if (!(m < mean[block]) && isBefore(m, cell(col + i, row), shapeNumber, block)) {
                    mean[block] = m;
                    cell[block] = cell(col + i, row);
                    shape[block] = (short) shapeNumber;
                }
            }
        }
    }

    private boolean isBefore(double m, byte at, int shapeNumber, int block) {
        if (m != mean[block]) {
            return true;
        }
        int byCell = Byte.compareUnsigned(at, cell[block]);
        return byCell < 0 || byCell == 0 && shapeNumber < shape[block];
    }
}
