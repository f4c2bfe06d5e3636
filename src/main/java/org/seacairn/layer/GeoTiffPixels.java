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
    private static final int BITS_PER_SAMPLE = 258;
    private static final int COMPRESSION = 259;
    private static final int SAMPLE_FORMAT = 339;

    /** Sample format * 1000 + bits: unsigned 1, signed 2, IEEE floating point 3. */
    private static final Set<Integer> KINDS = Set.of(1008, 1016, 2008, 2016, 2032, 3032, 3064);
    /** None, LZW, JPEG, deflate under two numbers, PackBits, Zstandard. */
    private static final Set<Integer> COMPRESSIONS = Set.of(1, 5, 7, 8, 32946, 32773, 50000);

    GeoTiffPixels() {
        super(new TIFFImageReaderSpi());
    }

    /** @throws InputException if the numbers are of a kind not read here, or pixels are missing */
    void check(Path file) throws IOException {
        TIFFDirectory directory = TIFFDirectory.createFromMetadata(getImageMetadata(0));
        int bits = first(directory, BITS_PER_SAMPLE, 1);
        int format = first(directory, SAMPLE_FORMAT, 1);
        if (!KINDS.contains(1000 * format + bits)) {
            throw new InputException(file.getFileName() + ": its cells are numbers of " + bits + " bits in TIFF sample format "
                    + format + ", which is not read here; write the file again with Float32 cells");
        }
        int compression = first(directory, COMPRESSION, 1);
        if (!COMPRESSIONS.contains(compression)) {
            throw new InputException(file.getFileName() + ": TIFF compression " + compression
                    + " is not read here; write the file again with deflate");
        }
        long size = Files.size(file);
        long blocks = (long) ((getWidth(0) - 1) / getTileWidth(0) + 1) * ((getHeight(0) - 1) / getTileHeight(0) + 1);
        for (int i = 0; i < blocks; i++) {
            long length = getTileOrStripByteCount(i);
            long end = getTileOrStripOffset(i) + length;
            // A length of 0 is a block that was never written: no-data.
            if (length > 0 && end > size) {
                throw new InputException(file.getFileName() + ": its pixels reach to byte " + end + " and the file has " + size
                        + "; it is cut short, get it again");
            }
        }
    }

    private static int first(TIFFDirectory directory, int tag, int usual) {
        TIFFField field = directory.getTIFFField(tag);
        return field == null ? usual : field.getAsInt(0);
    }
}
