package org.seacairn.place;

import java.util.Arrays;
import org.seacairn.grid.Window;

/**
 * Which cells of a row may be the centre of a rectangle, as far as a square about them tells that lies in
 * every rectangle.
 */
final class OpenCells {
    private final Window centres;
    private final RowSums sums;
    private final int half;
    private final int mostRuledOut;
    private final long[] tall;
    private int nextRow;

    /**
     * @param half cells from the middle of the square to its edge
     * @param mostRuledOut cells of a rectangle that may be ruled out
     */
    OpenCells(Window centres, RowSums sums, int half, int mostRuledOut) {
        this.centres = centres;
        this.sums = sums;
        this.half = half;
        this.mostRuledOut = mostRuledOut;
        this.tall = new long[sums.window().cols() + 1];
        this.nextRow = Integer.MIN_VALUE;
    }

    /** Rows must be asked for one after the other. Returns whether any cell is open. */
    boolean row(int row, boolean[] open) {
        Window w = sums.window();
        Arrays.fill(open, false);
        if (row - half < w.row() || row + half >= w.endRow()) {
            return false;
        }
        if (nextRow == row) {
            sums.addRow(row + half, 1, tall);
            sums.addRow(row - half - 1, -1, tall);
        } else {
            Arrays.fill(tall, 0);
            for (int r = row - half; r <= row + half; r++) {
                sums.addRow(r, 1, tall);
            }
        }
        nextRow = row + 1;
        boolean any = false;
        for (int col = Math.max(centres.col(), w.col() + half); col < Math.min(centres.endCol(), w.endCol() - half); col++) {
            int c = col - w.col();
            boolean isOpen = CellSums.ruledOut(tall[c + half + 1] - tall[c - half]) <= mostRuledOut;
            open[col - centres.col()] = isOpen;
            any |= isOpen;
        }
        return any;
    }
}
