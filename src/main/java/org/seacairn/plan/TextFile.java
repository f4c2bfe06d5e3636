package org.seacairn.plan;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reads a small text file whole, as UTF-8 and nothing else. */
final class TextFile {
    /** A plan with a thousand bottom classes and a current of a thousand levels are smaller. */
    static final int MOST_BYTES = 1 << 18;

    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private TextFile() {}

    /** What is wrong with a file; line 0 for the file as a whole. */
    static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1L;
        private final int line;

        Unreadable(int line, String problem) {
            super(problem);
            this.line = line;
        }

        int line() {
            return line;
        }
    }

    /** The text without a byte order mark. */
    static String read(Path file) throws Unreadable {
        byte[] bytes = bytes(file);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(bytes.length);
        boolean malformed = StandardCharsets.UTF_8.newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT)
                .decode(in, out, true)
                .isError();
        if (malformed) {
            throw new Unreadable(lineAt(bytes, in.position()), "this is not UTF-8 text; save the file as UTF-8");
        }
        String text = out.flip().toString();
        return !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? text.substring(1) : text;
    }

    private static byte[] bytes(Path file) throws Unreadable {
        if (Files.isDirectory(file)) {
            throw new Unreadable(0, "this is a folder; name a file");
        }
        if (!Files.isRegularFile(file)) {
            throw new Unreadable(0, "there is no such file; check the name and the folder");
        }
        try {
            long size = Files.size(file);
            if (size > MOST_BYTES) {
                throw new Unreadable(0, "the file has " + size + " bytes and at most " + MOST_BYTES
                        + " are read; is this the right file?");
            }
            return Files.readAllBytes(file);
        } catch (IOException e) {
            Unreadable unreadable = new Unreadable(0, "the file cannot be read (" + e.getClass().getSimpleName()
                    + "); check its permissions");
            unreadable.initCause(e);
            throw unreadable;
        }
    }

    private static int lineAt(byte[] bytes, int position) {
        int line = 1;
        for (int i = 0; i < position; i++) {
            if (bytes[i] == '\n') {
                line++;
            }
        }
        return line;
    }
}
