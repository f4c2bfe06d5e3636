package org.seacairn.layer;

import com.linuxense.javadbf.DBFCharsetHelper;
import com.linuxense.javadbf.DBFReader;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Date;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.seacairn.InputException;

/**
 * The attributes of a shapefile (dBASE table). Its text is in the character set of the .cpg file, else
 * in that of the language driver (byte 29 of the header), else it is taken as Windows-1252.
 *
 * @param rows one map a record, or null for a record that is marked as deleted
 * @param notes which character set was used, and why
 */
record DbfTable(List<Map<String, Object>> rows, List<String> notes) {
    private static final Charset FALLBACK = Charset.forName("windows-1252");
    private static final int HEADER_BYTES = 32;
    private static final int LANGUAGE_DRIVER_AT = 29;

    /**
     * How many rows the header states.
     *
     * @throws InputException if the file is too short to hold them
     */
    static long rows(Path dbf) {
        try (InputStream in = Files.newInputStream(dbf)) {
            ByteBuffer header = ByteBuffer.wrap(Arrays.copyOf(in.readNBytes(HEADER_BYTES), HEADER_BYTES)).order(ByteOrder.LITTLE_ENDIAN);
            long rows = Integer.toUnsignedLong(header.getInt(4));
            long first = Short.toUnsignedLong(header.getShort(8));
            long rowBytes = Short.toUnsignedLong(header.getShort(10));
            // Of a row there is at least the mark of deletion.
            if (rowBytes < 1 || first + rows * rowBytes > Files.size(dbf)) {
                throw VectorReader.problem(dbf, "header", "states " + rows + " rows of " + rowBytes + " bytes from byte " + first
                        + " where the file has " + Files.size(dbf) + "; it was cut short, copy or export it again");
            }
            return rows;
        } catch (IOException e) {
            throw VectorReader.problem(dbf, "header", "cannot be read (" + e.getMessage() + "); check the file", e);
        }
    }

    /** @throws InputException if the table is damaged or cut short */
    static DbfTable read(Path dbf, Optional<Path> cpg) {
        List<String> notes = new ArrayList<>();
        Charset charset = charset(dbf, cpg, notes);
        try (InputStream in = new BufferedInputStream(Files.newInputStream(dbf));
                DBFReader reader = new DBFReader(in, charset, true)) {
            List<Map<String, Object>> rows = new ArrayList<>();
            // With deleted rows shown, the reader puts a column of its own in front that tells them.
            for (Object[] row = reader.nextRecord(); row != null; row = reader.nextRecord()) {
                rows.add(Boolean.TRUE.equals(row[0]) ? null : attributes(reader, row));
            }
            if (rows.size() != reader.getRecordCount()) {
                throw VectorReader.problem(dbf, "header", "states " + reader.getRecordCount() + " rows where the file has "
                        + rows.size() + "; it was cut short, copy or export it again");
            }
            return new DbfTable(rows, notes);
        } catch (InputException e) {
            throw e;
        } catch (IOException | RuntimeException e) {
            // The library meets damage with whatever exception comes first.
            throw VectorReader.problem(dbf, "table", "cannot be read (" + (e.getMessage() == null ? "it ends too soon" : e.getMessage()) + "); export the shapefile again", e);
        }
    }

    private static Map<String, Object> attributes(DBFReader reader, Object[] row) {
        Map<String, Object> attributes = new LinkedHashMap<>();
        for (int i = 1; i < row.length; i++) {
            if (!(row[i] instanceof byte[])) {
                attributes.putIfAbsent(reader.getField(i).getName(), plain(row[i]));
            }
        }
        return attributes;
    }

    private static Object plain(Object value) {
        if (value instanceof BigDecimal number) {
            return number.stripTrailingZeros().scale() <= 0 && number.precision() - number.scale() <= 18
                    ? (Object) number.longValue() : (Object) number.doubleValue();
        }
        if (value instanceof Date date) {
            return date.toInstant().atZone(ZoneId.systemDefault()).toLocalDate().toString();
        }
        return value instanceof String text && text.isBlank() ? null : value;
    }

    private static Charset charset(Path dbf, Optional<Path> cpg, List<String> notes) {
        try {
            if (cpg.isPresent()) {
                String name = SideFile.text(dbf, cpg.get(), StandardCharsets.ISO_8859_1).strip();
                Optional<Charset> stated = named(name);
                if (stated.isPresent()) {
                    notes.add("attributes are read as " + stated.get() + ", which the .cpg file states");
                    return stated.get();
                }
                notes.add("the .cpg file states \"" + XmlElements.shown(name) + "\", which is no known character set");
            }
            try (InputStream in = Files.newInputStream(dbf)) {
                byte[] head = in.readNBytes(LANGUAGE_DRIVER_AT + 1);
                Charset stated = head.length <= LANGUAGE_DRIVER_AT || head[LANGUAGE_DRIVER_AT] == 0
                        ? null : DBFCharsetHelper.getCharsetByByte(head[LANGUAGE_DRIVER_AT] & 0xff);
                if (stated != null) {
                    notes.add("attributes are read as " + stated + ", the language driver of the .dbf file");
                    return stated;
                }
            }
        } catch (IOException e) {
            throw VectorReader.problem(dbf, "character set", "cannot be read (" + e.getMessage() + "); check the file", e);
        }
        notes.add("attributes are taken as " + FALLBACK + ", since neither a .cpg file nor the .dbf file states a character set");
        return FALLBACK;
    }

    /** Names as they occur in .cpg files: {@code UTF-8}, {@code 65001}, {@code ANSI 1252}, {@code ISO 88591}. */
    private static Optional<Charset> named(String name) {
        String digits = name.replaceAll("\\D", "");
        List<String> spellings = List.of(name.toUpperCase(Locale.ROOT).replace(' ', '-'),
                digits.equals("65001") ? "UTF-8" : digits.startsWith("8859") ? "ISO-8859-" + digits.substring(4) : "windows-" + digits,
                "IBM" + digits);
        for (String spelling : spellings) {
            try {
                return Optional.of(Charset.forName(spelling));
            } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
                // The next spelling may be the one that this machine knows.
            }
        }
        return Optional.empty();
    }
}
