package org.seacairn.score;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.seacairn.export.TiledGeoTiff;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;

/** Writes small grids to disk for the tests of the packages that read them. */
public final class GridFiles {
    private GridFiles() {}

    /** A GeoTIFF of one band of floats, no-data NaN, tiles of 16 so that small grids have several. */
    public static void geoTiff(Path file, GridGeometry grid, float[] values) {
        int side = 16;
        try (TiledGeoTiff tiff = new TiledGeoTiff(file, grid, side, TiledGeoTiff.Cell.FLOAT32, "nan")) {
            for (int row = 0; row < grid.rows(); row += side) {
                for (int col = 0; col < grid.cols(); col += side) {
                    Window tile = new Window(col, row, Math.min(side, grid.cols() - col), Math.min(side, grid.rows() - row));
                    tiff.write(tiff.encode(tile, bits(values, grid.cols(), tile)));
                }
            }
            tiff.finish();
        }
    }

    /** The cells of a tile as the bits of their floats. */
    public static int[] bits(float[] values, int cols, Window tile) {
        int[] bits = new int[tile.cells()];
        for (int i = 0; i < bits.length; i++) {
            bits[i] = Float.floatToRawIntBits(values[(tile.row() + i / tile.cols()) * cols + tile.col() + i % tile.cols()]);
        }
        return bits;
    }

    /** An Esri ASCII grid, no-data -9999, with a {@code .prj} beside it. */
    public static void ascii(Path file, GridGeometry grid, float[] values) {
        StringBuilder text = new StringBuilder(String.format(Locale.ROOT,
                "ncols %d%nnrows %d%nxllcorner %s%nyllcorner %s%ncellsize %s%nNODATA_value -9999%n",
                grid.cols(), grid.rows(), grid.west(), grid.south(), grid.cellM()));
        for (int i = 0; i < values.length; i++) {
            text.append(Float.isNaN(values[i]) ? "-9999" : Float.toString(values[i]))
                    .append(i % grid.cols() == grid.cols() - 1 ? '\n' : ' ');
        }
        write(file, text.toString());
        write(file.resolveSibling(file.getFileName().toString().replaceFirst("\\.[^.]*$", ".prj")), grid.crs().wkt());
    }

    public static void write(Path file, String text) {
        try {
            Files.writeString(file, text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The grid of a UTM zone on WGS 84. */
    public static GridGeometry utm(int zone, boolean south, double west, double north, double cellM, int cols, int rows) {
        return new GridGeometry(Crs.ofEpsg((south ? 32700 : 32600) + zone), west, north, cellM, cols, rows);
    }
}
