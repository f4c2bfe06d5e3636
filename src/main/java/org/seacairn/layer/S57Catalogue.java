package org.seacairn.layer;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;

/**
 * Acronyms of the object classes and attributes of IHO S-57 edition 3.1, appendix A. Codes of no edition, such as those of
 * inland charts, go by {@code OBJL_17011} and {@code ATTL_17050}.
 */
final class S57Catalogue {
    private static final Map<Integer, String[]> CLASSES = table("s57-object-classes.csv");
    private static final Map<Integer, String[]> ATTRIBUTES = table("s57-attributes.csv");

    private S57Catalogue() {}

    static String objectClass(int code) {
        String[] row = CLASSES.get(code);
        return row == null ? "OBJL_" + code : row[1];
    }

    static String attribute(int code) {
        String[] row = ATTRIBUTES.get(code);
        return row == null ? ("ATTL_" + code).intern() : row[1];
    }

    /** Whether an attribute's value is a number: of type I or F, and no code. */
    static boolean isNumber(int code) {
        String[] row = ATTRIBUTES.get(code);
        return row != null && (row[2].equals("I") || row[2].equals("F"));
    }

    private static Map<Integer, String[]> table(String resource) {
        try (InputStream in = S57Catalogue.class.getResourceAsStream(resource)) {
            Map<Integer, String[]> rows = new HashMap<>();
            new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().filter(line -> !line.startsWith("#"))
                    .map(line -> line.split(",")).forEach(row -> rows.put(Integer.valueOf(row[0]), row));
            return Map.copyOf(rows);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
