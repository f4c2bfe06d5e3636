package org.seacairn.layer;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.LongStream;

/**
 * The values of a whole bathymetry file, as they stand in it.
 *
 * @param cells of the grid, those without a value among them
 * @param missing cells that are no-data
 * @param negative cells with a value below the level asked for, usually 0
 * @param positive cells with a value above that level
 * @param least value, or infinity if there is none
 * @param greatest value, or minus infinity if there is none
 * @param within cells in each of the bands that were asked for, in their order
 */
public record GridValues(
        long cells, long missing, long negative, long positive, float least, float greatest, List<Long> within) {
    /** Cells read at once, unless one block of the file has more. */
    private static final int WINDOW_CELLS = 1 << 20;

    /** A range of values in the file's unit and sense, both ends included. */
    public record Band(double low, double high) {}

    /**
     * Reads every cell once, window by window, on all cores: no more of the grid is held than a window
     * for each of them.
     *
     * @throws org.seacairn.InputException if the cells cannot be read
     */
    public static GridValues of(Bathymetry file, List<Band> bands) {
        return of(file, bands, 0);
    }

    /** As {@link #of(Bathymetry, List)}, with the level in the file's unit and sense that parts negative from positive. */
    public static GridValues of(Bathymetry file, List<Band> bands, double level) {
        // Whole blocks of the file, so that none is decoded twice.
        int cols = Math.min(file.cols(), file.blockCols() > 0 ? file.blockCols() : WINDOW_CELLS);
        int rows = Math.min(file.rows(), Math.max(1, file.blockRows()));
        while (2L * cols * rows <= WINDOW_CELLS && (cols < file.cols() || rows < file.rows())) {
            if (cols < file.cols()) {
                cols = Math.min(file.cols(), 2 * cols);
            } else {
                rows = Math.min(file.rows(), 2 * rows);
            }
        }
        int width = cols;
        int height = rows;
        int across = (file.cols() + width - 1) / width;
        long windows = (long) across * ((file.rows() + height - 1) / height);
        return LongStream.range(0, windows).parallel().mapToObj(i -> {
            int col = (int) (i % across) * width;
            int row = (int) (i / across) * height;
            int w = Math.min(width, file.cols() - col);
            int h = Math.min(height, file.rows() - row);
            float[] values = new float[Math.multiplyExact(w, h)];
            file.read(col, row, w, h, values);
            return of(values, bands, level);
        }).reduce(of(new float[0], bands, level), GridValues::and);
    }

    private static GridValues of(float[] values, List<Band> bands, double level) {
        long missing = 0;
        long negative = 0;
        long positive = 0;
        float least = Float.POSITIVE_INFINITY;
        float greatest = Float.NEGATIVE_INFINITY;
        Band[] asked = bands.toArray(Band[]::new);
        long[] within = new long[asked.length];
        for (float v : values) {
            if (Float.isNaN(v)) {
                missing++;
                continue;
            }
            negative += v < level ? 1 : 0;
            positive += v > level ? 1 : 0;
            least = Math.min(least, v);
            greatest = Math.max(greatest, v);
            for (int b = 0; b < asked.length; b++) {
                within[b] += v >= asked[b].low && v <= asked[b].high ? 1 : 0;
            }
        }
        return new GridValues(values.length, missing, negative, positive, least, greatest,
                LongStream.of(within).boxed().toList());
    }

    /** The values of both together; the order of joining makes no difference. */
    private GridValues and(GridValues other) {
        List<Long> both = IntStream.range(0, within.size())
                .mapToObj(b -> within.get(b) + other.within.get(b)).toList();
        return new GridValues(cells + other.cells, missing + other.missing, negative + other.negative,
                positive + other.positive, Math.min(least, other.least), Math.max(greatest, other.greatest), both);
    }

    /** Cells with a value. */
    public long present() {
        return cells - missing;
    }
}
