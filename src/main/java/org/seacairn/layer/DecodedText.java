package org.seacairn.layer;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seacairn.InputException;

/**
 * A text file of unstated character set: UTF-16 by its byte-order mark, or without one where most of it has zero bytes
 * as ASCII in UTF-16 has; else UTF-8 with or without a mark, else Windows-1252.
 *
 * @param notes a line if the character set had to be guessed
 */
record DecodedText(String text, List<String> notes) {
    /** A number that lost its last digits is still a number. */
    static final String WITHOUT_END = "its last line has no end of line; if the file was cut short, that line may lack digits";

    /** It is held in memory whole; far above any list of places. */
    private static final long LARGEST_BYTES = 256L << 20;

    /** @throws InputException if the file cannot be read, is no text or is larger than 256 MiB */
    static DecodedText read(Path file) {
        byte[] bytes;
        try {
            if (Files.size(file) > LARGEST_BYTES) {
                throw VectorReader.problem(file, "the file", "has " + Files.size(file) + " bytes, more than a table of text may have here ("
                        + LARGEST_BYTES + "); leave out what is not needed, or give it as GeoPackage");
            }
            bytes = Files.readAllBytes(file);
        } catch (IOException e) {
            throw VectorReader.problem(file, "the file", "cannot be read (" + e.getMessage() + "); check the file", e);
        }
        DecodedText decoded = decode(bytes);
        // Text has no zero character; workbooks and databases soon do.
        int zero = decoded.text.indexOf('\0');
        if (zero >= 0) {
            throw VectorReader.problem(file, "character " + (zero + 1), "is a zero byte, so this is no text file; export it as CSV");
        }
        return decoded;
    }

    private static DecodedText decode(byte[] bytes) {
        if (startsWith(bytes, 0xFE, 0xFF) || startsWith(bytes, 0xFF, 0xFE)) {
            return new DecodedText(new String(bytes, StandardCharsets.UTF_16), List.of());
        }
        return utf16WithoutMark(bytes).orElseGet(() -> decodeBytes(bytes));
    }

    private static DecodedText decodeBytes(byte[] bytes) {
        int mark = startsWith(bytes, 0xEF, 0xBB, 0xBF) ? 3 : 0;
        try {
            return new DecodedText(StandardCharsets.UTF_8.newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes, mark, bytes.length - mark)).toString(), List.of());
        } catch (CharacterCodingException e) {
            Charset fallback = Charset.forName("windows-1252");
            return new DecodedText(new String(bytes, fallback),
                    List.of("its text is no UTF-8 and is taken as " + fallback));
        }
    }

    /**
     * Empty unless most characters are ASCII as UTF-16 has it, and all of them are such as text has: a workbook
     * or a database has zero bytes too, and control characters soon.
     */
    private static Optional<DecodedText> utf16WithoutMark(byte[] bytes) {
        int[] zeros = new int[2];
        for (int i = 0; i < bytes.length; i++) {
            zeros[i % 2] += bytes[i] == 0 ? 1 : 0;
        }
        boolean bigEndian = zeros[0] > zeros[1];
        if (bytes.length % 2 != 0 || zeros[bigEndian ? 0 : 1] * 4L <= bytes.length) {
            return Optional.empty();
        }
        Charset charset = bigEndian ? StandardCharsets.UTF_16BE : StandardCharsets.UTF_16LE;
        String text = new String(bytes, charset);
        boolean plain = text.chars().allMatch(c -> c == '\t' || c == '\r' || c == '\n' || c >= ' ' && Character.isDefined(c) && c != '\ufffd');
        return plain ? Optional.of(new DecodedText(text, List.of("it has no byte order mark and is taken as " + charset))) : Optional.empty();
    }

    private static boolean startsWith(byte[] bytes, int... mark) {
        for (int i = 0; i < mark.length; i++) {
            if (i >= bytes.length || (bytes[i] & 0xff) != mark[i]) {
                return false;
            }
        }
        return true;
    }
}
