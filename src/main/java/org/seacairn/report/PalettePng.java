package org.seacairn.report;

import java.awt.image.BufferedImage;
import java.awt.image.DataBuffer;
import java.awt.image.IndexColorModel;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.function.IntUnaryOperator;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.ImageWriteParam;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** A picture with a palette as a PNG in a {@code data:} URI. Needs no screen: nothing is drawn, only pixels are packed. */
final class PalettePng {
    /** Of the writer from 1, none, to 0, most; the last third costs twice the time for a hundredth of the size. */
    private static final float EFFORT = 0.33f;

    private PalettePng() {}

    /**
     * @param argb the palette, 0xaarrggbb; at most 256 colours, of which fewer make a smaller file
     * @param entry of the palette, by the number of a pixel in row-major order
     */
    static String dataUri(int cols, int rows, int[] argb, IntUnaryOperator entry) {
        int bits = argb.length <= 2 ? 1 : argb.length <= 16 ? 4 : 8;
        IndexColorModel palette = new IndexColorModel(bits, argb.length, argb, 0, true, -1, DataBuffer.TYPE_BYTE);
        BufferedImage image = new BufferedImage(cols, rows,
                bits == 8 ? BufferedImage.TYPE_BYTE_INDEXED : BufferedImage.TYPE_BYTE_BINARY, palette);
        int[] line = new int[cols];
        for (int row = 0; row < rows; row++) {
            for (int col = 0; col < cols; col++) {
                line[col] = entry.applyAsInt(row * cols + col);
            }
            image.getRaster().setPixels(0, row, cols, 1, line);
        }
        return "data:image/png;base64," + Base64.getEncoder().encodeToString(png(image));
    }

    private static byte[] png(BufferedImage image) {
        ImageWriter writer = ImageIO.getImageWriters(ImageTypeSpecifier.createFromRenderedImage(image), "png").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam packed = writer.getDefaultWriteParam();
            packed.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            packed.setCompressionQuality(EFFORT);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), packed);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
