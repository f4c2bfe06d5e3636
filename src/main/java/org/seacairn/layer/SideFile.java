package org.seacairn.layer;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;

/** A file that a reader takes beside a layer's own under the same name: attributes, CRS, character set, updates. */
final class SideFile {
    /** Far above any text that states a CRS or a character set. */
    private static final int LARGEST_TEXT_BYTES = 1 << 20;

    private SideFile() {}

    /**
     * The plan lets its files be in certain folders; a link must not lead what lies beside them out of these.
     *
     * @return the side file
     * @throws org.seacairn.InputException if it is a link into a folder that is neither the main file's nor that of what it links to,
     *     or is a folder or device
     */
    static Path beside(Path main, Path side) {
        try {
            if (!Files.isRegularFile(side)) {
                throw VectorReader.problem(side, "the file", "is no file that can be read; put a file in its place, or take it away");
            }
            Path folder = side.toRealPath().getParent();
            if (!folder.equals(main.toAbsolutePath().getParent().toRealPath()) && !folder.equals(main.toRealPath().getParent())) {
                throw VectorReader.problem(side, "the file", "is a link into another folder; put the file itself beside " + main.getFileName());
            }
            return side;
        } catch (IOException e) {
            throw VectorReader.problem(side, "the file", "cannot be read (" + e.getMessage() + "); check the file", e);
        }
    }

    /** Its text, which must be short. */
    static String text(Path main, Path side, Charset charset) throws IOException {
        try (InputStream in = Files.newInputStream(beside(main, side))) {
            byte[] bytes = in.readNBytes(LARGEST_TEXT_BYTES + 1);
            if (bytes.length > LARGEST_TEXT_BYTES) {
                throw VectorReader.problem(side, "the file", "is longer than " + LARGEST_TEXT_BYTES
                        + " bytes, so it is none of its kind; export it again, or take it away");
            }
            return new String(bytes, charset);
        }
    }
}
