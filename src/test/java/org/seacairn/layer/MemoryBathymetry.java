package org.seacairn.layer;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.seacairn.geodesy.Crs;

/** Bathymetry made in a test, which remembers how it was read. */
public record MemoryBathymetry(
        Crs crs, int cols, int rows, double west, double north, double cellWidth, double cellHeight,
        int blockCols, int blockRows, String statedUnit, float[] values, List<int[]> reads) implements Bathymetry {

    public MemoryBathymetry(int cols, int rows, int blockCols, int blockRows, float... values) {
        this(Crs.ofEpsg(32617), cols, rows, 500_000, 3_000_000, 100, 100, blockCols, blockRows, "", values,
                Collections.synchronizedList(new ArrayList<>()));
    }

    /** The same numbers with a unit of the file's own. */
    public MemoryBathymetry stating(String unit) {
        return new MemoryBathymetry(crs, cols, rows, west, north, cellWidth, cellHeight, blockCols, blockRows, unit, values, reads);
    }

    @Override
    public void read(int col, int row, int width, int height, float[] into) {
        reads.add(new int[] {col, row, width, height});
        for (int r = 0; r < height; r++) {
            System.arraycopy(values, (row + r) * cols + col, into, r * width, width);
        }
    }

    @Override
    public Path file() {
        return Path.of("memory.tif");
    }

    @Override
    public String format() {
        return "memory";
    }

    @Override
    public void close() {
        // Nothing is open.
    }
}
