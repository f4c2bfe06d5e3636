package org.seacairn.layer;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.seacairn.layer.Iso8211Layout.Form;
import org.seacairn.layer.Iso8211Layout.Subfield;

/**
 * The rows of one field, one after the other: {@link #next()}, then values by label. Binary numbers have the lowest byte
 * first. Not for several threads.
 */
final class Iso8211Rows {
    private final Iso8211File file;
    private final Iso8211File.Field field;
    private final Iso8211Layout layout;
    private final boolean wide;
    private final int[] starts;
    private final int[] ends;
    private final int end;
    private int at;
    private boolean begun;

    /** @param wideText whether texts are of two bytes a character, their terminators too */
    Iso8211Rows(Iso8211File file, Iso8211Layout layout, Iso8211File.Field field, boolean wideText) {
        this.file = file;
        this.field = field;
        this.layout = layout;
        this.wide = wideText;
        this.starts = new int[layout.subfields().size()];
        this.ends = new int[layout.subfields().size()];
        this.at = field.start();
        this.end = endOfValues();
    }

    private int endOfValues() {
        byte[] bytes = file.bytes();
        int last = field.end() - 1;
        if (bytes[last] == Iso8211File.FIELD_TERMINATOR) {
            return last;
        }
        if (wide && last > field.start() && bytes[last] == 0 && bytes[last - 1] == Iso8211File.FIELD_TERMINATOR) {
            return last - 1;
        }
        throw file.damaged(last, "field " + Iso8211File.shown(field.tag()) + " does not end with a terminator");
    }

    /** Goes on to the next row; false if there is none. */
    boolean next() {
        if (layout.repeats() ? at >= end : begun) {
            return false;
        }
        begun = true;
        List<Subfield> subfields = layout.subfields();
        for (int i = 0; i < starts.length; i++) {
            int width = subfields.get(i).bytes();
            starts[i] = at;
            if (width == 0) {
                ends[i] = terminator();
                at = Math.min(end, ends[i] + (wide ? 2 : 1));
                continue;
            }
            if (end - at < width) {
                throw file.damaged(at, "field " + Iso8211File.shown(field.tag()) + " ends within a row");
            }
            at += width;
            ends[i] = at;
        }
        return true;
    }

    /** The only row of a field that must have one. */
    Iso8211Rows only() {
        if (!next()) {
            throw file.damaged(field.start(), "field " + Iso8211File.shown(field.tag()) + " is empty");
        }
        return this;
    }

    private int terminator() {
        byte[] bytes = file.bytes();
        for (int i = at; i < end; i += wide ? 2 : 1) {
            if (bytes[i] == Iso8211File.UNIT_TERMINATOR && (!wide || i + 1 >= end || bytes[i + 1] == 0)) {
                return i;
            }
        }
        return end;
    }

    /** A whole number, binary or in digits. */
    long integer(String label) {
        int i = index(label);
        Subfield subfield = layout.subfields().get(i);
        if (subfield.form() == Form.TEXT) {
            String text = text(label).strip();
            if (!text.matches("-?[0-9]{1,18}")) {
                throw file.damaged(starts[i], label + " is " + Iso8211File.shown(text) + " and no whole number");
            }
            return Long.parseLong(text);
        }
        return binary(starts[i], ends[i], subfield.form() == Form.SIGNED);
    }

    /** A whole number that must lie within the 32 bits of a Java integer. */
    int number(String label) {
        long number = integer(label);
        if (number != (int) number) {
            throw file.damaged(starts[index(label)], label + " is " + number + ", which is more than it can be");
        }
        return (int) number;
    }

    /**
     * The name of a record that another points at: the type of record in the lowest byte, then its number.
     */
    S57Name name(String label) {
        int i = index(label);
        if (ends[i] - starts[i] != 5) {
            throw file.damaged(starts[i], label + " is no name of five bytes");
        }
        return new S57Name((int) binary(starts[i], starts[i] + 1, false), binary(starts[i] + 1, ends[i], false));
    }

    private long binary(int from, int to, boolean signed) {
        long number = 0;
        for (int i = to - 1; i >= from; i--) {
            number = number << 8 | file.bytes()[i] & 0xff;
        }
        int unused = 64 - 8 * (to - from);
        return signed ? number << unused >> unused : number;
    }

    /** A text as it stands, without its terminator. */
    String text(String label) {
        int i = index(label);
        Charset charset = wide && layout.subfields().get(i).bytes() == 0 ? StandardCharsets.UTF_16LE : StandardCharsets.ISO_8859_1;
        return new String(file.bytes(), starts[i], ends[i] - starts[i], charset);
    }

    private int index(String label) {
        List<Subfield> subfields = layout.subfields();
        for (int i = 0; i < subfields.size(); i++) {
            if (subfields.get(i).label().equals(label)) {
                return i;
            }
        }
        throw file.damaged(field.start(), "field " + Iso8211File.shown(field.tag()) + " has no value " + label);
    }
}
