package org.seacairn.layer;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * How the values of one field follow each other, as the descriptive record lays it out: an array descriptor such as
 * {@code *YCOO!XCOO} (the asterisk: again and again) and format controls such as {@code (2b24)}.
 *
 * @param repeats whether the row of values is there any number of times, or once
 */
record Iso8211Layout(List<Subfield> subfields, boolean repeats) {
    /** More labels than any field of S-57 has (16), and few enough that formats cannot multiply without end. */
    private static final int MOST_SUBFIELDS = 64;

    /** What a value is written as. */
    enum Form { TEXT, UNSIGNED, SIGNED, BITS }

    /** @param bytes width, or 0: up to the next terminator */
    record Subfield(String label, Form form, int bytes) {}

    static Iso8211Layout parse(Iso8211File file, Iso8211File.Field field, int controlLength) {
        int start = Math.min(field.start() + controlLength, field.end());
        String[] parts = new String(file.bytes(), start, field.end() - start, StandardCharsets.ISO_8859_1)
                .replace((char) Iso8211File.FIELD_TERMINATOR, (char) Iso8211File.UNIT_TERMINATOR)
                .split("\u001f", -1);
        if (parts.length < 3) {
            throw file.damaged(field.start(), "field " + Iso8211File.shown(field.tag()) + " has no labels or no formats");
        }
        boolean repeats = parts[1].startsWith("*");
        String[] labels = parts[1].substring(repeats ? 1 : 0).split("!", -1);
        List<Subfield> forms = new Formats(file, field, parts[2]).parse();
        if (labels.length != forms.size()) {
            throw file.damaged(field.start(), "field " + Iso8211File.shown(field.tag()) + " has " + labels.length + " labels and "
                    + forms.size() + " formats");
        }
        List<Subfield> subfields = new ArrayList<>();
        for (int i = 0; i < labels.length; i++) {
            subfields.add(new Subfield(labels[i], forms.get(i).form(), forms.get(i).bytes()));
        }
        return new Iso8211Layout(List.copyOf(subfields), repeats);
    }

    /** Reads format controls: {@code (b11,2A(8),R(4),3(b24,B(40)))}. */
    private static final class Formats {
        private final Iso8211File file;
        private final Iso8211File.Field field;
        private final String text;
        private final List<Subfield> found = new ArrayList<>();
        private int at;

        Formats(Iso8211File file, Iso8211File.Field field, String text) {
            this.file = file;
            this.field = field;
            this.text = text;
        }

        List<Subfield> parse() {
            group(0);
            if (at != text.length()) {
                throw wrong();
            }
            return found;
        }

        private void group(int depth) {
            take('(');
            item(depth);
            while (isNext(',')) {
                at++;
                item(depth);
            }
            take(')');
        }

        private void item(int depth) {
            int times = Character.isDigit(peek()) ? digits() : 1;
            int first = found.size();
            if (isNext('(') && depth == 0) {
                group(depth + 1);
            } else {
                found.add(single());
            }
            List<Subfield> once = List.copyOf(found.subList(first, found.size()));
            if (times < 1 || first + (long) once.size() * times > MOST_SUBFIELDS) {
                throw wrong();
            }
            for (int i = 1; i < times; i++) {
                found.addAll(once);
            }
        }

        private Subfield single() {
            char type = peek();
            at++;
            if (type == 'b') {
                int code = digits();
                Form form = code / 10 == 1 ? Form.UNSIGNED : Form.SIGNED;
                if (code / 10 < 1 || code / 10 > 2 || code % 10 != 1 && code % 10 != 2 && code % 10 != 4) {
                    throw wrong();
                }
                return new Subfield("", form, code % 10);
            }
            int width = 0;
            if (isNext('(')) {
                at++;
                width = digits();
                take(')');
            }
            if ("AIR".indexOf(type) >= 0) {
                return new Subfield("", Form.TEXT, width);
            }
            if (type != 'B' || width == 0 || width % 8 != 0) {
                throw wrong();
            }
            return new Subfield("", Form.BITS, width / 8);
        }

        private int digits() {
            int from = at;
            while (Character.isDigit(peek()) && at - from < 4) {
                at++;
            }
            if (at == from) {
                throw wrong();
            }
            return Integer.parseInt(text.substring(from, at));
        }

        private char peek() {
            return at < text.length() ? text.charAt(at) : '\0';
        }

        private boolean isNext(char c) {
            return peek() == c;
        }

        private void take(char c) {
            if (!isNext(c)) {
                throw wrong();
            }
            at++;
        }

        private RuntimeException wrong() {
            return file.damaged(field.start(), "field " + Iso8211File.shown(field.tag()) + " has the format "
                    + Iso8211File.shown(text.length() > 60 ? text.substring(0, 60) : text) + ", which is none of S-57");
        }
    }
}
