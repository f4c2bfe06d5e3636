package org.seacairn.grid;

/**
 * The cells whose centres lie within a radius of a cell's centre, and the question whether one of
 * them is bad. Lengths are those of the grid, without the projection's scale.
 */
public final class Disc {
    /** Widens the radius by less than a rounding error, so that a whole multiple of the cell counts. */
    private static final double ROUNDING = 1 + 1e-12;

    private final double cellM;
    private final int reach;
    private final int[] halfWidth;

    /** @param radiusM 0 or more */
    public Disc(double radiusM, double cellM) {
        this.cellM = cellM;
        double cells = radiusM / cellM * ROUNDING;
        this.reach = (int) Math.floor(cells);
        this.halfWidth = new int[reach + 1];
        for (int dy = 0; dy <= reach; dy++) {
            halfWidth[dy] = (int) Math.floor(Math.sqrt(cells * cells - (double) dy * dy));
        }
    }

    /** How many rows or columns the disc reaches from its centre. */
    public int reach() {
        return reach;
    }

    /** Number of cells in the disc, its centre among them. */
    public long cells() {
        long n = 2L * halfWidth[0] + 1;
        for (int dy = 1; dy <= reach; dy++) {
            n += 2 * (2L * halfWidth[dy] + 1);
        }
        return n;
    }

    /**
     * Marks every cell whose disc holds a bad cell.
     *
     * @param bad a window whose border is {@link #reach()} cells wide on every side
     * @param cols columns of {@code bad}
     * @param rows rows of {@code bad}
     * @param into receives the answer for the cells within the border
     */
    public void touches(boolean[] bad, int cols, int rows, boolean[] into) {
        int[] gap = gapsInRows(bad, cols, rows);
        int insideCols = cols - 2 * reach;
        int insideRows = rows - 2 * reach;
        // near[c]: rows within reach of the present one that have a bad cell within reach of column c.
        // None in the square means none in the disc, which settles most cells at two additions.
        int[] near = new int[insideCols];
        for (int r = 0; r < 2 * reach; r++) {
            count(gap, r * cols, near, 1);
        }
        for (int r = 0; r < insideRows; r++) {
            count(gap, (r + 2 * reach) * cols, near, 1);
            for (int c = 0; c < insideCols; c++) {
                into[r * insideCols + c] = near[c] != 0 && holdsBad(gap, (r + reach) * cols + c + reach, cols);
            }
            count(gap, r * cols, near, -1);
        }
    }

    /**
     * Marks every cell that has a bad cell within its own radius.
     *
     * @param radiusM of each cell within the border, in metres; at most the disc's, or NaN to leave the cell unmarked
     */
    public void touches(boolean[] bad, int cols, int rows, double[] radiusM, boolean[] into) {
        int[] gap = gapsInRows(bad, cols, rows);
        int insideCols = cols - 2 * reach;
        for (int i = 0; i < into.length; i++) {
            int centre = (i / insideCols + reach) * cols + i % insideCols + reach;
            double cells = radiusM[i] / cellM * ROUNDING;
            into[i] = holdsBad(gap, centre, cols, cells * cells);
        }
    }

    private boolean holdsBad(int[] gap, int centre, int cols, double radiusSquared) {
        for (int dy = 0; (double) dy * dy <= radiusSquared; dy++) {
            long nearest = Math.min(gap[centre - dy * cols], gap[centre + dy * cols]);
            if (nearest <= reach && nearest * nearest + (double) dy * dy <= radiusSquared) {
                return true;
            }
        }
        return false;
    }

    private void count(int[] gap, int row, int[] near, int step) {
        for (int c = 0; c < near.length; c++) {
            near[c] += gap[row + reach + c] <= reach ? step : 0;
        }
    }

    private boolean holdsBad(int[] gap, int centre, int cols) {
        if (gap[centre] <= halfWidth[0]) {
            return true;
        }
        for (int dy = 1; dy <= reach; dy++) {
            if (gap[centre - dy * cols] <= halfWidth[dy] || gap[centre + dy * cols] <= halfWidth[dy]) {
                return true;
            }
        }
        return false;
    }

    /** For each cell the number of columns to the nearest bad cell of its row, or more than the reach. */
    private int[] gapsInRows(boolean[] bad, int cols, int rows) {
        int far = reach + 1;
        int[] gap = new int[cols * rows];
        for (int r = 0; r < rows; r++) {
            int start = r * cols;
            int run = far;
            for (int i = start; i < start + cols; i++) {
                run = bad[i] ? 0 : Math.min(far, run + 1);
                gap[i] = run;
            }
            run = far;
            for (int i = start + cols - 1; i >= start; i--) {
                run = bad[i] ? 0 : Math.min(far, run + 1);
                gap[i] = Math.min(gap[i], run);
            }
        }
        return gap;
    }
}
