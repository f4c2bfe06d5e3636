package org.seacairn.layer;

import it.geosolutions.imageio.plugins.tiff.TIFFDirectory;
import it.geosolutions.imageio.plugins.tiff.TIFFField;
import java.awt.Rectangle;
import java.awt.geom.AffineTransform;
import java.awt.image.DataBufferFloat;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.Stream;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;
import org.geotools.api.coverage.grid.GridEnvelope;
import org.geotools.api.referencing.datum.PixelInCell;
import org.geotools.coverage.grid.io.imageio.geotiff.GeoTiffIIOMetadataDecoder;
import org.geotools.gce.geotiff.GeoTiffReader;
import org.geotools.util.factory.Hints;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.layer.GeoTiffBands.Band;

/**
 * Bathymetry from the first band of a GeoTIFF (OGC 19-008r4): tiled or striped, any compression of
 * the image library, pixel-is-area or pixel-is-point, north-up or south-up. No-data is the value of
 * GDAL's tag 42113, NaN or an infinity, or a 0 in an alpha band or in a mask within the file (TIFF 6.0, NewSubfileType 4); scale, offset and
 * unit come from GDAL's tag 42112. Overviews are passed over, and a note tells of other bands. Rotated grids, pictures and grids tied to the ground by
 * control points are refused, and what lies beside the file and would change its numbers.
 */
final class GeoTiffBathymetry implements Bathymetry {
    private static final int GDAL_METADATA = 42112;
    /** What a library throws that did not expect the like of a file. */
    private static final List<Class<? extends RuntimeException>> STUMBLES = List.of(NullPointerException.class, IndexOutOfBoundsException.class,
            ClassCastException.class, ArithmeticException.class, NegativeArraySizeException.class);

    static {
        // A .prj of the same name must not outvote the CRS that the GeoTIFF itself states, which it does
        // without a word unless this is set before GeoTools' reader is loaded.
        System.setProperty(GeoTiffReader.OVERRIDE_CRS_SWITCH, "false");
    }

    private final Path file;
    private final Crs crs;
    private final int cols;
    private final int rows;
    private final AffineTransform cornerToWorld;
    private final double noData;
    private final Band heights;
    /** The band that says of itself that it is the uncertainty, or empty. */
    private final Optional<Band> uncertainty;
    private final String statedUnit;
    private final String statedDatum;
    private final List<String> notes;
    private final int blockCols;
    private final int blockRows;
    /** Number of the band that hides cells where it is 0, or 0 for none. */
    private final int alpha;
    /** Number of the image in the file that is the mask, or 0 for none. */
    private final int mask;
    /** An image reader serves one thread at a time; idle ones wait here. */
    private final ConcurrentLinkedQueue<ImageReader> idle = new ConcurrentLinkedQueue<>();

    private GeoTiffBathymetry(Path file, Crs crs, GridEnvelope range, AffineTransform cornerToWorld, GeoTiffIIOMetadataDecoder tags,
            GeoTiffPixels pixels) throws IOException {
        GeoTiffBands bands = new GeoTiffBands(file, pixels.bands(), pixels.alpha(), gdalMetadata(pixels));
        boolean ownNoData = tags != null && tags.hasNoData();
        GeoTiffBeside.requireNoOtherMeaning(file, ownNoData, bands.isScaled());
        this.alpha = bands.alpha();
        this.file = file;
        this.crs = crs;
        this.cols = range.getSpan(0);
        this.rows = range.getSpan(1);
        this.cornerToWorld = cornerToWorld;
        this.noData = ownNoData ? tags.getNoData() : Double.NaN;
        this.heights = bands.band(0);
        this.uncertainty = bands.uncertainty();
        GeoTiffHeights heights = GeoTiffHeights.of(tags);
        // As GDAL has it, the unit of the vertical CRS holds where no tag names that of the cells.
        this.statedUnit = bands.unit().orElse(heights.unit());
        this.statedDatum = heights.datum();
        this.notes = bands.notes();
        this.blockCols = pixels.getTileWidth(0);
        this.blockRows = pixels.getTileHeight(0);
        this.mask = pixels.mask(file);
    }

    static GeoTiffBathymetry open(Path file, Optional<Crs> stated) {
        TiffDirectories.requireWhole(file);
        requireNoLinksOut(file);
        GeoTiffBeside.requireNoMask(file);
        GeoTiffReader georeferenced = null;
        GeoTiffPixels pixels = null;
        try {
            // First, since what it does not take has a name, which the other library's refusals have not.
            pixels = openPixels(file);
            pixels.check(file);
            // Longitude first, as everywhere in the house.
            Hints hints = new Hints(Hints.FORCE_LONGITUDE_FIRST_AXIS_ORDER, true);
            // A code that the library does not know would end its reading, though the plan knows better.
            stated.ifPresent(crs -> hints.put(Hints.DEFAULT_COORDINATE_REFERENCE_SYSTEM, crs.library()));
            georeferenced = new GeoTiffReader(file.toFile(), hints);
            AffineTransform transform = affine(file, georeferenced);
            Crs crs = crsOf(file, georeferenced, stated);
            GeoTiffBathymetry opened = new GeoTiffBathymetry(file, crs, georeferenced.getOriginalGridRange(),
                    transform, georeferenced.getMetadata(), pixels);
            opened.idle.add(pixels);
            return opened;
        } catch (IOException | RuntimeException e) {
            if (pixels != null) {
                release(pixels);
            }
            throw e instanceof InputException ? (InputException) e : damaged(file, e);
        } finally {
            if (georeferenced != null) {
                georeferenced.dispose();
            }
        }
    }

    /**
     * The files in which the library looks for a CRS or a place where the GeoTIFF states none (found by watching what it opens).
     * Auxiliary metadata are none of them: programs that show a grid write them at any time, and they change no number here.
     */
    static List<Path> beside(Path file) {
        String base = file.getFileName().toString().replaceFirst("\\.[^.]*$", "");
        return Stream.of(".prj", ".tfw", ".wld").map(ending -> file.resolveSibling(base + ending)).filter(Files::isRegularFile).toList();
    }

    /** The library looks for a CRS and a place on the ground in files beside, and for smaller versions. */
    private static void requireNoLinksOut(Path file) {
        String name = file.getFileName().toString();
        String stem = name.substring(0, name.lastIndexOf('.'));
        for (String beside : List.of(stem + ".prj", stem + ".tfw", stem + ".tifw", stem + ".wld", stem + ".TFW", stem + ".PRJ", name + ".ovr", name + ".aux.xml")) {
            Path path = file.resolveSibling(beside);
            if (Files.isSymbolicLink(path)) {
                SideFile.beside(file, path);
            }
        }
    }

    private static Crs crsOf(Path file, GeoTiffReader reader, Optional<Crs> stated) {
        if (stated.isPresent()) {
            return stated.get();
        }
        var found = reader.getCoordinateReferenceSystem();
        if (found == null || found.getName().getCode().startsWith("Wildcard")
                || found instanceof org.geotools.api.referencing.crs.EngineeringCRS) {
            throw Bathymetries.withoutCrs(file);
        }
        try {
            return Crs.of(found);
        } catch (InputException e) {
            throw new InputException(file.getFileName() + ": " + e.getMessage(), e);
        }
    }

    private static AffineTransform affine(Path file, GeoTiffReader reader) {
        GeoTiffIIOMetadataDecoder tags = reader.getMetadata();
        boolean controlPoints = tags != null && tags.hasTiePoints() && tags.getModelTiePoints().length > 1 && !tags.hasPixelScales()
                && !tags.hasModelTrasformation();
        if (controlPoints || !(reader.getOriginalGridToWorld(PixelInCell.CELL_CORNER) instanceof AffineTransform t)) {
            throw new InputException(file.getFileName() + ": the grid is tied to the ground by control points;"
                    + " resample it to a regular grid first");
        }
        double tiny = 1e-9 * Math.max(Math.abs(t.getScaleX()), Math.abs(t.getScaleY()));
        if (Math.abs(t.getShearX()) > tiny || Math.abs(t.getShearY()) > tiny || t.getScaleX() <= 0) {
            throw new InputException(file.getFileName() + ": the grid is rotated or runs from east to west;"
                    + " resample it to a north-up grid first");
        }
        return t;
    }

    private static GeoTiffPixels openPixels(Path file) throws IOException {
        GeoTiffPixels reader = new GeoTiffPixels();
        reader.setInput(new FileImageInputStream(file.toFile()), false, false);
        return reader;
    }

    private static String gdalMetadata(ImageReader pixels) throws IOException {
        TIFFField field = TIFFDirectory.createFromMetadata(pixels.getImageMetadata(0)).getTIFFField(GDAL_METADATA);
        return field == null ? "" : field.getAsString(0);
    }

    @Override
    public void read(int col, int row, int cols, int rows, float[] into) {
        read(heights, col, row, cols, rows, into);
    }

    /** The band beside the heights; what is 0 or less is no uncertainty. */
    @Override
    public Optional<CellUncertainty> uncertainty() {
        return uncertainty.map(band -> new CellUncertainty() {
            @Override
            public String kind() {
                return "band " + (band.index() + 1);
            }

            @Override
            public void read(int col, int row, int cols, int rows, float[] into) {
                GeoTiffBathymetry.this.read(band, col, row, cols, rows, into);
                for (int i = 0; i < cols * rows; i++) {
                    into[i] = into[i] > 0 ? into[i] : Float.NaN;
                }
            }
        });
    }

    private void read(Band band, int col, int row, int cols, int rows, float[] into) {
        boolean southUp = cornerToWorld.getScaleY() > 0;
        int firstFileRow = southUp ? this.rows - row - rows : row;
        ImageReader reader = idle.poll();
        try {
            if (reader == null) {
                reader = openPixels(file);
            }
            ImageReadParam window = reader.getDefaultReadParam();
            window.setSourceRegion(new Rectangle(col, firstFileRow, cols, rows));
            Raster raster = reader.read(0, window).getRaster();
            if (raster.getDataBuffer() instanceof DataBufferFloat floats && raster.getNumBands() == 1
                    && floats.getSize() == cols * rows) {
                System.arraycopy(floats.getData(), 0, into, 0, cols * rows);
            } else {
                raster.getSamples(0, 0, cols, rows, band.index(), into);
            }
            toValues(band, into, cols * rows);
            if (alpha > 0) {
                float[] shown = raster.getSamples(0, 0, cols, rows, alpha, (float[]) null);
                for (int i = 0; i < shown.length; i++) {
                    into[i] = shown[i] == 0 ? Float.NaN : into[i];
                }
            }
            if (mask > 0) {
                Raster shown = reader.read(mask, window).getRaster();
                hide(shown.getSamples(0, 0, cols, rows, 0, (int[]) null), into);
            }
        } catch (IOException | RuntimeException e) {
            throw new InputException(file.getFileName() + ", rows " + firstFileRow + " to " + (firstFileRow + rows - 1)
                    + ": the pixels cannot be read; the file is damaged or cut short, get it again", e);
        } finally {
            if (reader != null) {
                idle.add(reader);
            }
        }
        if (southUp) {
            flipRows(into, cols, rows);
        }
    }

    private void toValues(Band band, float[] values, int count) {
        float missing = (float) noData;
        boolean scaled = band.scale() != 1 || band.offset() != 0;
        for (int i = 0; i < count; i++) {
            float v = values[i];
            if (v == missing || !Float.isFinite(v)) {
                values[i] = Float.NaN;
            } else if (scaled) {
                values[i] = (float) (v * band.scale() + band.offset());
            }
        }
    }

    private static void hide(int[] shown, float[] values) {
        for (int i = 0; i < shown.length; i++) {
            if (shown[i] == 0) {
                values[i] = Float.NaN;
            }
        }
    }

    private static void flipRows(float[] values, int cols, int rows) {
        float[] spare = new float[cols];
        for (int top = 0, bottom = rows - 1; top < bottom; top++, bottom--) {
            System.arraycopy(values, top * cols, spare, 0, cols);
            System.arraycopy(values, bottom * cols, values, top * cols, cols);
            System.arraycopy(spare, 0, values, bottom * cols, cols);
        }
    }

    private static InputException damaged(Path file, Throwable cause) {
        String name = file.getFileName().toString();
        // Where the library falls over what it did not expect, its words are about itself; else they may be a report,
        // which begins with a headline and ends with all that the file states.
        boolean stumbled = Stream.iterate(cause, Objects::nonNull, Throwable::getCause)
                .anyMatch(e -> STUMBLES.stream().anyMatch(kind -> kind.isInstance(e)));
        String reason = stumbled ? "what it states does not fit together" : String.valueOf(cause.getMessage()).replace(file.toString(), name).lines()
                .filter(line -> !line.isBlank() && !line.startsWith("GEOTIFF Module Error Report")).findFirst().orElse("no reason given")
                        .replaceAll("[\\s\\p{Cntrl}]+", " ").strip();
        if (reason.contains("Raster to Model Transformation")) {
            return new InputException(name + ": nothing says where its grid lies, neither in it nor in a world file beside it;"
                    + " export it as GeoTIFF with its place on the ground", cause);
        }
        String shown = reason.length() <= 200 ? reason : reason.substring(0, 197) + "...";
        if (reason.startsWith("No code ")) {
            return new InputException(name + ": the file states a CRS that is not known (" + shown + "); state it in the plan beside the"
                    + " file, for example crs: EPSG:32617", cause);
        }
        return new InputException(name + ": not a readable GeoTIFF (" + shown + "); the file is damaged or cut short, get it again", cause);
    }

    @Override
    public Path file() {
        return file;
    }

    @Override
    public String format() {
        return "GeoTIFF";
    }

    @Override
    public Crs crs() {
        return crs;
    }

    @Override
    public int cols() {
        return cols;
    }

    @Override
    public int rows() {
        return rows;
    }

    @Override
    public double west() {
        return cornerToWorld.getTranslateX();
    }

    @Override
    public double north() {
        double y = cornerToWorld.getTranslateY();
        return cornerToWorld.getScaleY() > 0 ? y + rows * cornerToWorld.getScaleY() : y;
    }

    @Override
    public double cellWidth() {
        return cornerToWorld.getScaleX();
    }

    @Override
    public double cellHeight() {
        return Math.abs(cornerToWorld.getScaleY());
    }

    @Override
    public int blockCols() {
        return blockCols;
    }

    @Override
    public int blockRows() {
        return blockRows;
    }

    @Override
    public String statedUnit() {
        return statedUnit;
    }

    @Override
    public String statedDatum() {
        return statedDatum;
    }

    @Override
    public List<String> notes() {
        return notes;
    }

    @Override
    public void close() {
        for (ImageReader reader = idle.poll(); reader != null; reader = idle.poll()) {
            release(reader);
        }
    }

    private static void release(ImageReader reader) {
        Object input = reader.getInput();
        reader.dispose();
        if (input instanceof FileImageInputStream stream) {
            try {
                stream.close();
            } catch (IOException e) {
                // Opened for reading only: nothing can be lost.
            }
        }
    }
}
