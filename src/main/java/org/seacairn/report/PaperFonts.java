package org.seacairn.report;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.util.EnumMap;
import java.util.Map;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The fonts of a PDF: Liberation Sans and Mono out of a library, embedded with the letters that are used. No font of the machine
 * is used, so the file is the same on every machine and can be made on one that has none.
 */
final class PaperFonts implements Closeable {
    /** Where their license stands beside them. */
    private static final String FOLDER = "/liberation/Liberation";

    enum Face {
        REGULAR("Sans-Regular"), BOLD("Sans-Bold"), ITALIC("Sans-Italic"), BOLD_ITALIC("Sans-BoldItalic"), MONO("Mono-Regular");

        private final String file;

        Face(String file) {
            this.file = file;
        }

        static Face of(boolean bold, boolean italic) {
            return bold ? italic ? BOLD_ITALIC : BOLD : italic ? ITALIC : REGULAR;
        }
    }

    private final Map<Face, TrueTypeFont> files = new EnumMap<>(Face.class);
    private final Map<Face, CmapLookup> letters = new EnumMap<>(Face.class);
    private final Map<Face, PDFont> fonts = new EnumMap<>(Face.class);

    /** @param document takes the fonts, and is to be saved before these are closed */
    PaperFonts(PDDocument document) throws IOException {
        for (Face face : Face.values()) {
            try (InputStream in = PaperFonts.class.getResourceAsStream(FOLDER + face.file + ".ttf")) {
                TrueTypeFont file = new TTFParser().parse(new RandomAccessReadBuffer(in));
                // No ligatures: a name stays letter for letter what a search looks for.
                file.setEnableGsub(false);
                files.put(face, file);
                letters.put(face, file.getUnicodeCmapLookup());
                fonts.put(face, PDType0Font.load(document, file, true));
            }
        }
    }

    PDFont get(Face face) {
        return fonts.get(face);
    }

    /** Whether every face has a letter. */
    boolean has(int codePoint) {
        return letters.values().stream().allMatch(letter -> letter.getGlyphId(codePoint) > 0);
    }

    @Override
    public void close() throws IOException {
        for (TrueTypeFont file : files.values()) {
            file.close();
        }
    }
}
