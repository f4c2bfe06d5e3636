package org.seacairn.layer;

import it.geosolutions.imageio.plugins.tiff.TIFFDirectory;
import it.geosolutions.imageio.plugins.tiff.TIFFField;
import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageReader;
import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageReaderSpi;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.seacairn.InputException;

/**
 * The image library's reader, and a look whether it can read the pixels right: it fills what is missing
 * at the end of a file with zeros, and takes kinds of number that it does not know for others. Tags and
 * codes after TIFF 6.0 and the registry of its libraries.
 */
final class GeoTiffPixels extends TIFFImageReader {
    private static final int NEW_SUBFILE_TYPE = 254;
    /** Bits of the subfile type: a smaller version of another image, and a mask of another image. */
    private static final int REDUCED = 1;
    private static final int MASK = 4;
    private static final int BITS_PER_SAMPLE = 258;
    private static final int COMPRESSION = 259;
    private static final int PHOTOMETRIC = 262;
    private static final int SAMPLES_PER_PIXEL = 277;
    private static final int PLANAR_CONFIGURATION = 284;
    private static final int PREDICTOR = 317;
    private static final int EXTRA_SAMPLES = 338;
    private static final int SAMPLE_FORMAT = 339;

    /** Photometric interpretations of numbers that count something: 0 is white, and 0 is black. */
    private static final Set<Integer> COUNTS = Set.of(0, 1);
    /** Sample format * 1000 + bits: unsigned 1, signed 2, IEEE floating point 3. */
    private static final Set<Integer> KINDS = Set.of(1008, 1016, 2008, 2016, 2032, 3032, 3064);
    /** None, LZW, JPEG, deflate under two numbers, PackBits, Zstandard. */
    private static final Set<Integer> COMPRESSIONS = Set.of(1, 5, 7, 8, 32946, 32773, 50000);

    GeoTiffPixels() {
        super(new TIFFImageReaderSpi());
    }

    /**
     * Number of the image that is a mask of the first (0: no value), or 0 if there is none.
     *
     * @throws InputException if there is one that does not cover the first image cell for cell
     */
    int mask(Path file) throws IOException {
        for (int i = 1; i < getNumImages(true); i++) {
            int type = first(TIFFDirectory.createFromMetadata(getImageMetadata(i)), NEW_SUBFILE_TYPE, 0);
            if ((type & MASK) == 0 || (type & REDUCED) != 0) {
                continue;
            }
            if (getWidth(i) != getWidth(0) || getHeight(i) != getHeight(0)) {
                throw new InputException(file.getFileName() + ": its mask has " + getWidth(i) + " x " + getHeight(i) + " cells and its grid "
                        + getWidth(0) + " x " + getHeight(0) + "; write the file again with the masked cells as no-data");
            }
            check(file, i);
            return i;
        }
        return 0;
    }

    /** How many bands the first image has. */
    int bands() throws IOException {
        return first(TIFFDirectory.createFromMetadata(getImageMetadata(0)), SAMPLES_PER_PIXEL, 1);
    }

    /** Number of the first image's band, from 0, that hides cells where it is 0; 0 if there is none. */
    int alpha() throws IOException {
        TIFFField extra = TIFFDirectory.createFromMetadata(getImageMetadata(0)).getTIFFField(EXTRA_SAMPLES);
        for (int i = 0; extra != null && i < extra.getCount(); i++) {
            // Associated or unassociated alpha; other extra samples are bands of their own.
            if (extra.getAsInt(i) == 1 || extra.getAsInt(i) == 2) {
                return bands() - extra.getCount() + i;
            }
        }
        return 0;
    }

    /** @throws InputException if the numbers are of a kind not read here, or pixels are missing */
    void check(Path file) throws IOException {
        TIFFDirectory directory = TIFFDirectory.createFromMetadata(getImageMetadata(0));
        int photometric = first(directory, PHOTOMETRIC, 1);
        if (!COUNTS.contains(photometric)) {
            throw new InputException(file.getFileName() + ": its cells are colours of a picture (TIFF photometric interpretation " + photometric
                    + ") and no depths; give the grid that the picture was made from");
        }
        int bits = first(directory, BITS_PER_SAMPLE, 1);
        int format = first(directory, SAMPLE_FORMAT, 1);
        if (!KINDS.contains(1000 * format + bits)) {
            throw new InputException(file.getFileName() + ": its cells are numbers of " + bits + " bits in TIFF sample format "
                    + format + ", which is not read here; write the file again with Float32 cells");
        }
        if (bits == 64 && first(directory, PREDICTOR, 1) == 2) {
            throw new InputException(file.getFileName() + ": its cells are numbers of 64 bits under TIFF predictor 2, which is not read here;"
                    + " write the file again with Float32 cells, or with predictor 3");
        }
        check(file, 0);
    }

    /** Whether the pixels of an image are whole and of a compression read here. */
    private void check(Path file, int image) throws IOException {
        TIFFDirectory directory = TIFFDirectory.createFromMetadata(getImageMetadata(image));
        int compression = first(directory, COMPRESSION, 1);
        if (!COMPRESSIONS.contains(compression)) {
            throw new InputException(file.getFileName() + ": TIFF compression " + compression
                    + " is not read here; write the file again with deflate");
        }
        long size = Files.size(file);
        long across = (getWidth(image) - 1) / getTileWidth(image) + 1;
        long down = (getHeight(image) - 1) / getTileHeight(image) + 1;
        boolean plain = compression == 1;
        long rowBytes = rowBytes(directory, getTileWidth(image));
        requireMemory(file, rowBytes * Math.min(getTileHeight(image), getHeight(image)), plain);
        for (int i = 0; i < across * down; i++) {
            long length = getTileOrStripByteCount(i);
            if (plain && length > 0) {
                // The library does not ask how long an uncompressed block is; the last strip ends with the image.
                long rows = across > 1 ? getTileHeight(image) : Math.min(getTileHeight(image), getHeight(image) - (long) i * getTileHeight(image));
                length = Math.max(length, rows * rowBytes);
            }
            long end = getTileOrStripOffset(i) + length;
            // A length of 0 is a block that was never written: no-data.
            if (length > 0 && end > size) {
                throw new InputException(file.getFileName() + ": its pixels reach to byte " + end + " and the file has " + size
                        + "; it is cut short, get it again");
            }
        }
    }

    /** Bytes of a row of a block, its bands beside each other unless each has blocks of its own. */
    private static long rowBytes(TIFFDirectory directory, int cols) {
        int bands = first(directory, PLANAR_CONFIGURATION, 1) == 1 ? first(directory, SAMPLES_PER_PIXEL, 1) : 1;
        return ((long) cols * bands * first(directory, BITS_PER_SAMPLE, 1) + 7) / 8;
    }

    /** A compressed block is unpacked whole. */
    private static void requireMemory(Path file, long blockBytes, boolean plain) {
        long most = Math.min(Integer.MAX_VALUE, Runtime.getRuntime().maxMemory() / 2);
        if (!plain && blockBytes > most) {
            throw new InputException(file.getFileName() + ": its pixels stand in compressed blocks of " + blockBytes + " bytes each, of which"
                    + " Java may take " + most + " here; write the file again in tiles of 512 x 512 cells, or give Java more with -Xmx");
        }
    }

    private static int first(TIFFDirectory directory, int tag, int usual) {
        TIFFField field = directory.getTIFFField(tag);
        return field == null ? usual : field.getAsInt(0);
    }
}
