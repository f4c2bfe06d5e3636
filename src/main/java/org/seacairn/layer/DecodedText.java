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
import org.seacairn.InputException;

/**
 * A text file of unstated character set: UTF-16 by its byte-order mark, else UTF-8 with or without one,
 * else Windows-1252.
 *
 * @param notes a line if the text is no UTF-8
 */
record DecodedText(String text, List<String> notes) {
    /** @throws InputException if the file cannot be read or is no text */
    static DecodedText read(Path file) {
        byte[] bytes;
        try {
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

    private static boolean startsWith(byte[] bytes, int... mark) {
        for (int i = 0; i < mark.length; i++) {
            if (i >= bytes.length || (bytes[i] & 0xff) != mark[i]) {
                return false;
            }
        }
        return true;
    }
}
