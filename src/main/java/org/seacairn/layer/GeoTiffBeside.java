package org.seacairn.layer;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.seacairn.InputException;

/**
 * What lies beside a GeoTIFF and would change what its numbers mean: a mask ({@code .msk}), and no-data, scale or offset in GDAL's auxiliary
 * metadata ({@code .aux.xml}). Neither is read; a file that needs one is refused.
 */
final class GeoTiffBeside {
    /** The first band in GDAL's auxiliary metadata; the others are not read. */
    private static final Pattern BAND = Pattern.compile("<PAMRasterBand band=\"1\"(.*?)(?:</PAMRasterBand>|\\z)", Pattern.DOTALL);
    /** What of it changes the meaning of numbers. */
    private static final Pattern ELEMENT = Pattern.compile("<(NoDataValue|Scale|Offset)(?:\\s[^>]*)?>([^<]*)<");
    /** … and what says nothing. */
    private static final Set<String> NOTHING = Set.of("Scale 1", "Offset 0");
    /** More than metadata, histograms and tables of attributes need. */
    private static final int MOST_BYTES = 64 << 20;

    private GeoTiffBeside() {}

    /** @throws InputException if a mask lies beside the file */
    static void requireNoMask(Path file) {
        Path mask = file.resolveSibling(file.getFileName() + ".msk");
        if (Files.exists(mask)) {
            throw new InputException(file.getFileName() + ": beside it lies a mask, " + mask.getFileName() + ", which is not read here;"
                    + " write both into one file with the masked cells as no-data, or move the mask away if it does not count");
        }
    }

    /**
     * @param ownNoData whether the file itself states its no-data
     * @param ownScale whether the file itself states a scale or an offset
     * @throws InputException if auxiliary metadata state what the file does not
     */
    static void requireNoOtherMeaning(Path file, boolean ownNoData, boolean ownScale) {
        Path beside = file.resolveSibling(file.getFileName() + ".aux.xml");
        if (!Files.exists(beside)) {
            return;
        }
        Matcher band = BAND.matcher(text(beside));
        Matcher element = ELEMENT.matcher(band.find() ? band.group(1) : "");
        while (element.find()) {
            String name = element.group(1);
            String value = element.group(2).strip();
            boolean own = name.equals("NoDataValue") ? ownNoData : ownScale;
            if (!own && !NOTHING.contains(name + " " + value.replaceFirst("\\.0*$", ""))) {
                throw new InputException(file.getFileName() + ": beside it lies " + beside.getFileName() + ", which states <" + name + "> " + value
                        + " where the file itself states none, and is not read here; write both into one GeoTIFF (gdal_translate "
                        + file.getFileName() + " new.tif), or move it away if it does not count");
            }
        }
    }

    private static String text(Path beside) {
        try (InputStream in = Files.newInputStream(beside)) {
            return new String(in.readNBytes(MOST_BYTES), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new InputException(beside.getFileName() + ": cannot be read (" + e.getMessage() + "); check the file", e);
        }
    }
}
