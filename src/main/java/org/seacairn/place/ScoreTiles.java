package org.seacairn.place;

import java.util.LinkedHashMap;
import java.util.Map;
import org.seacairn.grid.Window;

/** Scores read again about a few places: tiles last used are kept. For one thread. */
final class ScoreTiles {
    private static final int SIDE = 256;
    /** 64 MiB of scores. */
    private static final int KEPT = 256;

    private final CellSource source;
    private final Map<Long, float[]> kept = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Long, float[]> eldest) {
            return size() > KEPT;
        }
    };

    ScoreTiles(CellSource source) {
        this.source = source;
    }

    /** Scores of a window on the grid. */
    float[] score(Window window) {
        float[] score = new float[window.cells()];
        for (int row = window.row(); row < window.endRow(); row = (row / SIDE + 1) * SIDE) {
            for (int col = window.col(); col < window.endCol(); col = (col / SIDE + 1) * SIDE) {
                Window tile = tile(col, row);
                float[] cells = kept.computeIfAbsent((long) tile.row() << 32 | tile.col(), key -> source.score(tile));
                int cols = Math.min(tile.endCol(), window.endCol()) - col;
                for (int r = row; r < Math.min(tile.endRow(), window.endRow()); r++) {
                    System.arraycopy(cells, tile.index(col, r), score, window.index(col, r), cols);
                }
            }
        }
        return score;
    }

    private Window tile(int col, int row) {
        return RectanglePass.onGrid(source.grid(), new Window(col / SIDE * SIDE, row / SIDE * SIDE, SIDE, SIDE));
    }
}
