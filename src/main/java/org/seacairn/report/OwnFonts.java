package org.seacairn.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.FontBoxFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.font.CIDFontMapping;
import org.apache.pdfbox.pdmodel.font.FontMapper;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.font.FontMapping;
import org.apache.pdfbox.pdmodel.font.PDCIDSystemInfo;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;

/**
 * Gives Liberation Sans for every font that the PDF library asks for by name. Left to itself it would list the fonts of the
 * machine, and keep that list in a file in the user's home.
 */
final class OwnFonts implements FontMapper {
    private final TrueTypeFont font;

    private OwnFonts(TrueTypeFont font) {
        this.font = font;
    }

    /** Takes the library's place of asking, once for the program. */
    private static final class Installed {
        static {
            try (InputStream in = OwnFonts.class.getResourceAsStream("/liberation/LiberationSans-Regular.ttf")) {
                FontMappers.set(new OwnFonts(new TTFParser().parse(new RandomAccessReadBuffer(in))));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        private static void now() {}
    }

    static void install() {
        Installed.now();
    }

    @Override
    public FontMapping<TrueTypeFont> getTrueTypeFont(String name, PDFontDescriptor descriptor) {
        return new FontMapping<>(font, false);
    }

    @Override
    public FontMapping<FontBoxFont> getFontBoxFont(String name, PDFontDescriptor descriptor) {
        return new FontMapping<>(font, false);
    }

    @Override
    public CIDFontMapping getCIDFont(String name, PDFontDescriptor descriptor, PDCIDSystemInfo system) {
        return new CIDFontMapping(null, font, false);
    }
}
