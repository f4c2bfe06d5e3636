package org.seacairn.layer;

import java.io.BufferedInputStream;
import java.io.FilterReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The characters of an XML file in the encoding found as XML 1.0, appendix F, has it: byte order mark, first
 * bytes, encoding declaration, else UTF-8. A file of single bytes that states UTF-16, as some programs
 * write, is taken as UTF-8. Left to itself the JDK's parser prints a line to standard error about bytes that are
 * none of the encoding; here they are refused with their line.
 */
final class XmlCharacters extends FilterReader {
    private static final Pattern DECLARATION = Pattern.compile("<\\?xml\\s[^>]*?encoding\\s*=\\s*[\"']([A-Za-z0-9._-]+)[\"']");
    private static final int LONGEST_DECLARATION = 512;
    /** What stands for bytes that cannot be decoded. */
    private static final char REPLACEMENT = '\ufffd';

    private final Path file;
    private final Charset encoding;
    private int line = 1;
    private boolean afterReturn;
    private boolean ended;

    private XmlCharacters(Path file, InputStream in, Charset encoding) {
        super(new InputStreamReader(in, encoding));
        this.file = file;
        this.encoding = encoding;
    }

    /** @throws org.seacairn.InputException if the file states an encoding that is not known */
    static XmlCharacters open(Path file, InputStream stream) throws IOException {
        BufferedInputStream in = new BufferedInputStream(stream);
        in.mark(LONGEST_DECLARATION);
        byte[] start = in.readNBytes(LONGEST_DECLARATION);
        in.reset();
        // Each byte as one character, so that marks and declaration can be looked for in one way.
        String bytes = new String(start, StandardCharsets.ISO_8859_1);
        if (bytes.startsWith("\u00ef\u00bb\u00bf")) {
            in.skipNBytes(3);
            return new XmlCharacters(file, in, StandardCharsets.UTF_8);
        }
        if (bytes.startsWith("\u00fe\u00ff") || bytes.startsWith("\u00ff\u00fe")) {
            return new XmlCharacters(file, in, StandardCharsets.UTF_16);
        }
        if (bytes.startsWith("\0<")) {
            return new XmlCharacters(file, in, StandardCharsets.UTF_16BE);
        }
        if (bytes.startsWith("<\0")) {
            return new XmlCharacters(file, in, StandardCharsets.UTF_16LE);
        }
        Matcher declaration = DECLARATION.matcher(bytes);
        return new XmlCharacters(file, in, declaration.lookingAt() ? stated(file, declaration.group(1)) : StandardCharsets.UTF_8);
    }

    private static Charset stated(Path file, String name) {
        if (name.toUpperCase(Locale.ROOT).startsWith("UTF-16")) {
            return StandardCharsets.UTF_8;
        }
        try {
            return Charset.forName(name);
        } catch (IllegalArgumentException e) {
            throw VectorReader.problem(file, "line 1", "states the encoding \"" + XmlElements.shown(name)
                    + "\", which is not known; export it again as UTF-8", e);
        }
    }

    /** Whether more was asked for than there is. */
    boolean ended() {
        return ended;
    }

    @Override
    public int read() throws IOException {
        char[] one = new char[1];
        return read(one, 0, 1) < 0 ? -1 : one[0];
    }

    @Override
    public int read(char[] buffer, int offset, int length) throws IOException {
        int count = super.read(buffer, offset, length);
        ended |= count < 0;
        for (int i = offset; i < offset + count; i++) {
            char c = buffer[i];
            line += c == '\r' || c == '\n' && !afterReturn ? 1 : 0;
            afterReturn = c == '\r';
            if (c == REPLACEMENT) {
                throw VectorReader.problem(file, "line " + line, "holds a character that cannot be read as " + encoding.name()
                        + ", its encoding; export it again as UTF-8");
            }
        }
        return count;
    }
}
