package org.seacairn.layer;

import java.io.BufferedInputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The lines of a text file of numbers, one at a time and none longer than {@value #LONGEST} bytes, so that a file of any size
 * and of any kind costs no memory. Empty lines and comments, which begin with {@code #} or {@code //}, are passed over.
 */
final class SoundingLines implements Closeable {
    private static final int LONGEST = 4096;

    private final Path file;
    private final InputStream in;
    private final byte[] bytes = new byte[LONGEST];
    private int line;
    private int ahead = -2;
    private boolean ended = true;

    SoundingLines(Path file) throws IOException {
        this.file = file;
        this.in = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
    }

    /** Number of the line that was read last, from 1. */
    int line() {
        return line;
    }

    /** Whether the line that was read last had an end, which the last of a file that was cut short has not. */
    boolean ended() {
        return ended;
    }

    /** The next line without white space about it, or null at the end. */
    String next() throws IOException {
        while (true) {
            int length = fill();
            if (length < 0) {
                return null;
            }
            String text = new String(bytes, 0, length, StandardCharsets.UTF_8).strip();
            if (line == 1 && text.startsWith("\uFEFF")) {
                text = text.substring(1).strip();
            }
            if (!text.isEmpty() && !text.startsWith("#") && !text.startsWith("//")) {
                return text;
            }
        }
    }

    /** Reads to the next end of a line, be it LF, CR LF or CR; -1 at the end of the file. */
    private int fill() throws IOException {
        int c = read();
        if (c < 0) {
            return -1;
        }
        line++;
        int length = 0;
        for (; c >= 0 && c != '\n' && c != '\r'; c = read()) {
            if (c == 0) {
                throw VectorReader.problem(file, "line " + line, "holds a zero byte, so this is no text of soundings, or text in UTF-16;"
                        + " save it as plain text in UTF-8");
            }
            if (length == LONGEST) {
                throw VectorReader.problem(file, "line " + line, "is longer than " + LONGEST + " bytes; this is no text of soundings");
            }
            bytes[length++] = (byte) c;
        }
        ended = c >= 0;
        if (c == '\r') {
            int after = read();
            ahead = after == '\n' ? -2 : after;
        }
        return length;
    }

    private int read() throws IOException {
        if (ahead == -2) {
            return in.read();
        }
        int c = ahead;
        ahead = -2;
        return c;
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
