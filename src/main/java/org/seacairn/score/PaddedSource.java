package org.seacairn.score;

import java.util.Arrays;
import org.seacairn.grid.Window;
import org.seacairn.grid.WindowSource;

/** A grid whose windows may reach over its edge, where there is no data. */
record PaddedSource(WindowSource source, int cols, int rows) {
    /**
     * @param into receives the window row by row; NaN for no-data and off the grid
     */
    void read(Window window, float[] into) {
        int fromCol = Math.max(0, window.col());
        int fromRow = Math.max(0, window.row());
        int held = Math.min(cols, window.endCol()) - fromCol;
        int lines = Math.min(rows, window.endRow()) - fromRow;
        if (held <= 0 || lines <= 0) {
            Arrays.fill(into, 0, window.cells(), Float.NaN);
        } else if (held == window.cols() && lines == window.rows()) {
            source.read(fromCol, fromRow, held, lines, into);
        } else {
            float[] part = new float[held * lines];
            source.read(fromCol, fromRow, held, lines, part);
            Arrays.fill(into, 0, window.cells(), Float.NaN);
            for (int r = 0; r < lines; r++) {
                System.arraycopy(part, r * held, into, window.index(fromCol, fromRow + r), held);
            }
        }
    }
}
