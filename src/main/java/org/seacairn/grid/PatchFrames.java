package org.seacairn.grid;

import org.seacairn.geodesy.GroundScale;

/**
 * Ground frames for the patches of a grid: squares of cells, at most 5 km wide, over which one linear
 * map with a linear growth turns map lengths into ground lengths. Patches are counted from the grid's
 * origin, so a cell has the same frame in whatever window it is computed.
 */
public final class PatchFrames {
    private static final double WIDEST_M = 5000;
    private static final int MOST_CELLS = 64;

    private final GridGeometry grid;
    private final GroundScale scale;
    private final int side;

    public PatchFrames(GridGeometry grid) {
        this.grid = grid;
        this.scale = new GroundScale(grid.crs());
        int cells = (int) Math.min(MOST_CELLS, WIDEST_M / grid.cellM());
        this.side = Math.max(1, Integer.highestOneBit(cells));
    }

    /** Cells along the side of a patch, a power of two. */
    public int side() {
        return side;
    }

    /** The frames of every patch that a window touches. */
    public Over over(Window window) {
        int firstCol = Math.floorDiv(window.col(), side);
        int firstRow = Math.floorDiv(window.row(), side);
        int cols = Math.floorDiv(window.endCol() - 1, side) - firstCol + 1;
        int rows = Math.floorDiv(window.endRow() - 1, side) - firstRow + 1;
        GroundScale.Frame[] frames = new GroundScale.Frame[cols * rows];
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < cols; c++) {
                frames[r * cols + c] = frame(firstCol + c, firstRow + r);
            }
        }
        return new Over(window, side, firstCol, firstRow, cols, rows, frames);
    }

    private GroundScale.Frame frame(int patchCol, int patchRow) {
        double x = grid.west() + (patchCol + 0.5) * side * grid.cellM();
        double y = grid.north() - (patchRow + 0.5) * side * grid.cellM();
        return scale.at(x, y);
    }

    /** The patches of one window. */
    public record Over(Window window, int side, int firstCol, int firstRow, int cols, int rows, GroundScale.Frame[] frames) {
        /** The cells of the window that lie in a patch. */
        Window cells(int patch) {
            int left = (firstCol + patch % cols) * side;
            int top = (firstRow + patch / cols) * side;
            int fromCol = Math.max(left, window.col());
            int fromRow = Math.max(top, window.row());
            return new Window(fromCol, fromRow, Math.min(left + side, window.endCol()) - fromCol,
                    Math.min(top + side, window.endRow()) - fromRow);
        }
    }
}
