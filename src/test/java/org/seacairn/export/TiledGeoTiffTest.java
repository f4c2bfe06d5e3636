package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Rectangle;
import java.awt.geom.AffineTransform;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.geotools.api.metadata.spatial.PixelOrientation;
import org.geotools.coverage.grid.GridCoverage2D;
import org.geotools.coverage.util.CoverageUtilities;
import org.geotools.gce.geotiff.GeoTiffReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.InputException;
import org.seacairn.export.TiledGeoTiff.Cell;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;

/** Opened again by GeoTools, which had no part in the writing. */
class TiledGeoTiffTest {
    /** A transverse Mercator map that no authority lists. */
    private static final String UNLISTED = "PROJCS[\"Invented local map\", GEOGCS[\"WGS 84\", DATUM[\"World Geodetic System 1984\","
            + " SPHEROID[\"WGS 84\", 6378137.0, 298.257223563]], PRIMEM[\"Greenwich\", 0.0], UNIT[\"degree\", 0.017453292519943295],"
            + " AXIS[\"Longitude\", EAST], AXIS[\"Latitude\", NORTH]], PROJECTION[\"Transverse_Mercator\"],"
            + " PARAMETER[\"central_meridian\", -79.3], PARAMETER[\"latitude_of_origin\", 30.5], PARAMETER[\"scale_factor\", 0.99987],"
            + " PARAMETER[\"false_easting\", 123456.7], PARAMETER[\"false_northing\", 654321.0], UNIT[\"m\", 1.0],"
            + " AXIS[\"Easting\", EAST], AXIS[\"Northing\", NORTH]]";

    @TempDir
    Path folder;

    private static GridGeometry grid(Crs crs, int cols, int rows) {
        return new GridGeometry(crs, 512_345.5, 3_210_987.25, 12.5, cols, rows);
    }

    private Path write(String name, GridGeometry grid, int side, Cell cell, String noData, int[] values) {
        Path file = folder.resolve(name);
        try (TiledGeoTiff tiff = new TiledGeoTiff(file, grid, side, cell, noData)) {
            for (int row = 0; row < grid.rows(); row += side) {
                for (int col = 0; col < grid.cols(); col += side) {
                    Window tile = new Window(col, row, Math.min(side, grid.cols() - col), Math.min(side, grid.rows() - row));
                    int[] part = new int[tile.cells()];
                    for (int i = 0; i < part.length; i++) {
                        part[i] = values[(row + i / tile.cols()) * grid.cols() + col + i % tile.cols()];
                    }
                    tiff.write(tiff.encode(tile, part));
                }
            }
            tiff.finish();
        }
        return file;
    }

    private static int[] floats(long seed, int cells) {
        Random random = new Random(seed);
        return random.doubles(cells).mapToInt(x -> Float.floatToRawIntBits(x < 0.1 ? Float.NaN : (float) (2000 * x - 1000))).toArray();
    }

    /** @param cols not a multiple of the tile: the last ones reach over the east and south edges */
    @ParameterizedTest
    @CsvSource({"37, 23, 16", "16, 16, 16", "1, 1, 16", "48, 32, 16", "33, 17, 64", "100, 3, 32", "3, 100, 32"})
    void sizePlaceAndEveryValueComeBack(int cols, int rows, int side) throws IOException {
        GridGeometry grid = grid(Crs.ofEpsg(32617), cols, rows);
        int[] values = floats(cols, cols * rows);
        Path file = write("floats.tif", grid, side, Cell.FLOAT32, "nan", values);
        GeoTiffReader reader = new GeoTiffReader(file.toFile());
        try {
            GridCoverage2D coverage = reader.read(null);
            Raster raster = coverage.getRenderedImage().getData();
            assertEquals(cols, raster.getWidth());
            assertEquals(rows, raster.getHeight());
            assertEquals(1, raster.getNumBands());
            for (int i = 0; i < values.length; i++) {
                float found = raster.getSampleFloat(raster.getMinX() + i % cols, raster.getMinY() + i / cols, 0);
                assertEquals(Float.intBitsToFloat(values[i]), found, "cell " + i);
            }
            AffineTransform toMap = (AffineTransform) coverage.getGridGeometry().getGridToCRS2D(PixelOrientation.UPPER_LEFT);
            assertEquals(new AffineTransform(12.5, 0, 0, -12.5, 512_345.5, 3_210_987.25), toMap);
            assertEquals(32617, Crs.of(reader.getCoordinateReferenceSystem()).epsg().orElse(-1));
            assertTrue(Double.isNaN(CoverageUtilities.getNoDataProperty(coverage).getAsSingleValue()));
        } finally {
            reader.dispose();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {32617, 32733, 26917, 3035, 25832, 2154, 5070, 3395, 28992, 3577})
    void theCrsComesBackByItsCode(int epsg) throws IOException {
        Path file = write("crs.tif", grid(Crs.ofEpsg(epsg), 5, 4), 16, Cell.FLOAT32, null, new int[20]);
        GeoTiffReader reader = new GeoTiffReader(file.toFile());
        try {
            assertEquals(Crs.ofEpsg(epsg), Crs.of(reader.getCoordinateReferenceSystem()));
            assertEquals(epsg, Crs.of(reader.getCoordinateReferenceSystem()).epsg().orElse(-1));
        } finally {
            reader.dispose();
        }
    }

    /** Spelled out: the places it gives must be those of the original to the millimetre. */
    @Test
    void aCrsWithoutCodeComesBackByItsParameters() throws IOException {
        Crs unlisted = Crs.parse(UNLISTED);
        assertTrue(unlisted.epsg().isEmpty());
        Path file = write("unlisted.tif", grid(unlisted, 5, 4), 16, Cell.FLOAT32, "nan", new int[20]);
        GeoTiffReader reader = new GeoTiffReader(file.toFile());
        try {
            Crs found = Crs.of(reader.getCoordinateReferenceSystem());
            assertTrue(found.isMetric(), found.toString());
            for (double[] at : new double[][] {{123_456.7, 654_321}, {0, 0}, {400_000, 900_000}}) {
                Coordinate expected = unlisted.to(Crs.WGS84).apply(at[0], at[1]);
                Coordinate actual = found.to(Crs.WGS84).apply(at[0], at[1]);
                assertEquals(expected.x, actual.x, 1e-8);
                assertEquals(expected.y, actual.y, 1e-8);
            }
        } finally {
            reader.dispose();
        }
    }

    @Test
    void aCrsThatNoKeySpellsIsRefused() {
        Crs polyconic = Crs.parse(UNLISTED.replace("Transverse_Mercator", "Polyconic").replace("PARAMETER[\"scale_factor\", 0.99987], ", ""));
        InputException e = assertThrows(InputException.class,
                () -> write("polyconic.tif", grid(polyconic, 5, 4), 16, Cell.FLOAT32, "nan", new int[20]));
        assertTrue(e.getMessage().startsWith("the working CRS Invented local map cannot be stated in a GeoTIFF"), e.getMessage());
    }

    @ParameterizedTest
    @CsvSource({"UINT16, 65535", "UINT32, 4294967295"})
    void unsignedNumbersUpToTheLargestComeBack(Cell cell, long largest) throws IOException {
        GridGeometry grid = grid(Crs.ofEpsg(32617), 21, 18);
        Random random = new Random(9);
        long[] values = random.longs(21 * 18, 0, largest + 1).toArray();
        values[0] = largest;
        values[20] = largest - 1;
        values[21 * 18 - 1] = largest / 2 + 1;
        Path file = write("masks.tif", grid, 16, cell, null, Arrays.stream(values).mapToInt(v -> (int) v).toArray());
        GeoTiffReader reader = new GeoTiffReader(file.toFile());
        try {
            Raster raster = reader.read(null).getRenderedImage().getData();
            for (int i = 0; i < values.length; i++) {
                // GeoTools hands 32 bits on as int; the file's sample format says they are unsigned.
                long found = raster.getSample(raster.getMinX() + i % 21, raster.getMinY() + i / 21, 0) & largest;
                assertEquals(values[i], found, "cell " + i);
            }
            assertEquals(1, shorts(file, 339)[0], "sample format: unsigned");
            assertEquals(cell == Cell.UINT16 ? 16 : 32, shorts(file, 258)[0], "bits per sample");
        } finally {
            reader.dispose();
        }
    }

    /** Values of a SHORT entry of a little-endian classic TIFF, read here byte by byte. */
    private static int[] shorts(Path file, int tag) throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(file)).order(ByteOrder.LITTLE_ENDIAN);
        assertEquals(0x4949, bytes.getShort(0));
        assertEquals(42, bytes.getShort(2));
        int at = bytes.getInt(4);
        int entries = bytes.getShort(at);
        int last = 0;
        int[] found = null;
        for (int i = 0; i < entries; i++) {
            int entry = at + 2 + 12 * i;
            int own = bytes.getShort(entry) & 0xFFFF;
            assertTrue(own > last, "TIFF 6.0, section 2: entries in ascending order of tags");
            last = own;
            if (own == tag) {
                assertEquals(3, bytes.getShort(entry + 2));
                int count = bytes.getInt(entry + 4);
                int from = count <= 2 ? entry + 8 : bytes.getInt(entry + 8);
                assertEquals(0, from % 2, "TIFF 6.0, section 2: values begin on a word");
                found = new int[count];
                for (int k = 0; k < count; k++) {
                    found[k] = bytes.getShort(from + 2 * k) & 0xFFFF;
                }
            }
        }
        assertEquals(0, at % 2, "TIFF 6.0, section 2: a directory begins on a word");
        return found;
    }

    @Test
    void isTiledAndDeflated() throws IOException {
        Path file = write("layout.tif", grid(Crs.ofEpsg(32617), 37, 23), 32, Cell.FLOAT32, "nan", floats(1, 37 * 23));
        assertArrayEquals(new int[] {8}, shorts(file, 259), "Adobe deflate");
        assertArrayEquals(new int[] {3}, shorts(file, 339), "IEEE floating point");
        assertArrayEquals(new int[] {1}, shorts(file, 277), "samples");
    }

    @Test
    void theSameTilesGiveTheSameBytes() throws IOException {
        int[] values = floats(2, 37 * 23);
        Path one = write("one.tif", grid(Crs.ofEpsg(32617), 37, 23), 16, Cell.FLOAT32, "nan", values);
        Path two = write("two.tif", grid(Crs.ofEpsg(32617), 37, 23), 16, Cell.FLOAT32, "nan", values);
        assertEquals(-1, Files.mismatch(one, two));
    }

    /** 4.8 GB of cells in a few megabytes, since all tiles but two are alike and compressed once. */
    @Test
    void moreThanFourGigabytesMakeABigTiff() throws IOException {
        int side = 1024;
        GridGeometry grid = grid(Crs.ofEpsg(32617), 40_000, 30_001);
        int across = 40;
        int down = 30;
        Path file = folder.resolve("big.tif");
        try (TiledGeoTiff tiff = new TiledGeoTiff(file, grid, side, Cell.FLOAT32, "nan")) {
            int[] cells = new int[side * side];
            Arrays.fill(cells, Float.floatToRawIntBits(-77.5f));
            byte[] alike = tiff.encode(new Window(0, 0, side, side), cells);
            Window corner = new Window((across - 1) * side, (down - 1) * side, 40_000 - (across - 1) * side, 30_001 - (down - 1) * side);
            int[] last = new int[corner.cells()];
            Arrays.fill(last, Float.floatToRawIntBits(0.25f));
            last[last.length - 1] = Float.floatToRawIntBits(0.5f);
            byte[] other = tiff.encode(corner, last);
            for (int i = 0; i < across * down; i++) {
                tiff.write(i == across * down - 1 ? other : alike);
            }
            tiff.finish();
        }
        ByteBuffer head = ByteBuffer.wrap(Files.readAllBytes(file)).order(ByteOrder.LITTLE_ENDIAN);
        assertEquals(43, head.getShort(2), "BigTIFF");
        assertEquals(8, head.getShort(4), "bytes in offsets");
        assertEquals(0, head.getShort(6));
        GeoTiffReader reader = new GeoTiffReader(file.toFile());
        try {
            assertEquals(40_000, reader.getOriginalGridRange().getSpan(0));
            assertEquals(30_001, reader.getOriginalGridRange().getSpan(1));
            assertEquals(512_345.5 + 40_000 * 12.5, reader.getOriginalEnvelope().getMaximum(0), 1e-6);
            assertEquals(32617, Crs.of(reader.getCoordinateReferenceSystem()).epsg().orElse(-1));
            var image = reader.read(null).getRenderedImage();
            assertEquals(-77.5f, image.getData(new Rectangle(image.getMinX(), image.getMinY(), 1, 1))
                    .getSampleFloat(image.getMinX(), image.getMinY(), 0));
            Raster corner = image.getData(new Rectangle(image.getMinX() + 39_998, image.getMinY() + 30_000, 2, 1));
            assertEquals(0.25f, corner.getSampleFloat(corner.getMinX(), corner.getMinY(), 0));
            assertEquals(0.5f, corner.getSampleFloat(corner.getMinX() + 1, corner.getMinY(), 0));
        } finally {
            reader.dispose();
        }
    }

    @Test
    void aFileWithATileMissingCannotBeFinishedNorRead() throws IOException {
        Path file = folder.resolve("short.tif");
        try (TiledGeoTiff tiff = new TiledGeoTiff(file, grid(Crs.ofEpsg(32617), 37, 23), 16, Cell.FLOAT32, "nan")) {
            byte[] tile = tiff.encode(new Window(0, 0, 16, 16), new int[256]);
            for (int i = 0; i < 5; i++) {
                tiff.write(tile);
            }
            assertThrows(IllegalStateException.class, tiff::finish);
        }
        assertUnreadable(file);
    }

    @Test
    void aFileThatWasNotFinishedCannotBeRead() throws IOException {
        Path file = folder.resolve("unfinished.tif");
        try (TiledGeoTiff tiff = new TiledGeoTiff(file, grid(Crs.ofEpsg(32617), 16, 16), 16, Cell.FLOAT32, "nan")) {
            tiff.write(tiff.encode(new Window(0, 0, 16, 16), new int[256]));
        }
        assertUnreadable(file);
    }

    private static void assertUnreadable(Path file) {
        if (Files.exists(file)) {
            assertThrows(Exception.class, () -> new GeoTiffReader(file.toFile()).read(null).getRenderedImage().getData());
        }
    }

    @Test
    void moreTilesThanTheGridHasAreRefused() {
        try (TiledGeoTiff tiff = new TiledGeoTiff(folder.resolve("long.tif"), grid(Crs.ofEpsg(32617), 16, 16), 16, Cell.FLOAT32, "nan")) {
            byte[] tile = tiff.encode(new Window(0, 0, 16, 16), new int[256]);
            tiff.write(tile);
            assertThrows(RuntimeException.class, () -> tiff.write(tile));
        }
    }

    @Test
    void withoutNoDataThereIsNoSuchTag() throws IOException {
        Path file = write("plain.tif", grid(Crs.ofEpsg(32617), 5, 4), 16, Cell.UINT16, null, new int[20]);
        String text = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
        assertFalse(text.contains("nan"));
        GeoTiffReader reader = new GeoTiffReader(file.toFile());
        try {
            assertEquals(null, CoverageUtilities.getNoDataProperty(reader.read(null)));
        } finally {
            reader.dispose();
        }
    }
}
