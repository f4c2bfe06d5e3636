package org.seacairn.layer;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seacairn.InputException;

/**
 * The records of one data descriptive file (ISO/IEC 8211:1994), as far as IHO S-57 uses it: a descriptive record that
 * lays out the fields, then data records, each with its own leader and directory. Fields must follow each other without
 * gap or overlap, so that no byte is read twice however the directory is written.
 *
 * <p>A place in the file is told as the number of the byte, from 0.
 */
final class Iso8211File {
    static final byte UNIT_TERMINATOR = 0x1F;
    static final byte FIELD_TERMINATOR = 0x1E;

    /** Tag of the descriptive record's own field, which lays out no data. */
    private static final String FILE_CONTROL = "0000";

    private final Path file;
    private final byte[] bytes;
    private final Map<String, Iso8211Layout> layouts = new HashMap<>();
    private int next;

    /** One field of a record: what lies between two places of the file, terminator included. */
    record Field(String tag, int start, int end) {}

    /** One record: the byte that it begins at and its fields in the order of its directory. */
    record DataRecord(int start, List<Field> fields) {}

    /** @throws InputException if the descriptive record is damaged */
    Iso8211File(Path file, byte[] bytes) {
        this.file = file;
        this.bytes = bytes;
        Iso8211Leader leader = Iso8211Leader.parse(this, 0, 'L');
        for (Field field : record(0, leader).fields()) {
            if (!field.tag().equals(FILE_CONTROL)) {
                layouts.put(field.tag(), Iso8211Layout.parse(this, field, leader.fieldControlLength()));
            }
        }
    }

    /** Whether a file begins as a descriptive record does. */
    static boolean isBegunBy(byte[] head) {
        return head.length >= Iso8211Leader.LENGTH && head[6] == 'L' && isDigits(head, 0, 6) && isDigits(head, 10, 7)
                && isDigits(head, 20, 4);
    }

    private static boolean isDigits(byte[] head, int start, int count) {
        for (int i = start; i < start + count; i++) {
            if (head[i] < '0' || head[i] > '9') {
                return false;
            }
        }
        return true;
    }

    boolean hasNext() {
        return next < bytes.length;
    }

    DataRecord next() {
        return record(next, Iso8211Leader.parse(this, next, 'D'));
    }

    private DataRecord record(int start, Iso8211Leader leader) {
        List<Field> fields = new ArrayList<>();
        int fieldArea = start + leader.fieldAreaStart();
        long end = fieldArea;
        for (int entry = start + Iso8211Leader.LENGTH; entry + 1 < fieldArea; entry += leader.entryLength()) {
            String tag = new String(bytes, entry, leader.tagDigits(), StandardCharsets.ISO_8859_1);
            int lengthAt = entry + leader.tagDigits();
            long length = number(lengthAt, leader.lengthDigits());
            long position = number(lengthAt + leader.lengthDigits(), leader.positionDigits());
            if (position != end - fieldArea || length < 1) {
                throw damaged(entry, "field " + shown(tag) + " is said to lie " + position + " bytes into its record, "
                        + length + " long, which does not follow the field before it");
            }
            if (end + length > bytes.length) {
                throw damaged(entry, "field " + shown(tag) + " is said to be " + length + " bytes long, and the file ends after "
                        + (bytes.length - end));
            }
            fields.add(new Field(tag, (int) end, (int) (end + length)));
            end += length;
        }
        if (leader.recordLength() != 0 && start + (long) leader.recordLength() != end) {
            throw damaged(start, "the record is said to be " + leader.recordLength() + " bytes long, and its fields end after "
                    + (end - start));
        }
        next = (int) end;
        return new DataRecord(start, fields);
    }

    /** The rows of a field, each a set of values by the labels of the descriptive record. */
    Iso8211Rows rows(Field field, boolean wideText) {
        Iso8211Layout layout = layouts.get(field.tag());
        if (layout == null) {
            throw damaged(field.start(), "field " + shown(field.tag()) + " is not laid out in the file's first record");
        }
        return new Iso8211Rows(this, layout, field, wideText);
    }

    byte[] bytes() {
        return bytes;
    }

    /** A number written in decimal digits. */
    long number(int at, int digits) {
        long number = 0;
        for (int i = at; i < at + digits; i++) {
            if (i >= bytes.length || bytes[i] < '0' || bytes[i] > '9') {
                throw damaged(i, i >= bytes.length ? "the file ends within a record" : "a digit should stand here");
            }
            number = 10 * number + bytes[i] - '0';
        }
        return number;
    }

    /** The error for one place in the file. */
    InputException damaged(int at, String what) {
        return VectorReader.problem(file, "byte " + at, what + "; the chart is damaged or cut off, so get it again");
    }

    Path file() {
        return file;
    }

    /** Text of the file as a message may show it. */
    static String shown(String text) {
        return "\"" + text.replaceAll("[^ -~]", "?") + "\"";
    }
}
