package org.seacairn.export;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Comma-separated values after RFC 4180: UTF-8 without a byte order mark, one header line, no space
 * after a comma, missing values empty. Lines end with LF alone, as other programs' text files here
 * do, where the RFC has CRLF; every reader we know of takes both.
 *
 * <p>A spreadsheet runs a cell that begins with {@code = + - @}, tab or carriage return as a formula,
 * and names come from files that anyone may have written. Such a text is quoted and begins with an
 * apostrophe, which a spreadsheet takes as "this is text" and a program has to expect (OWASP ASVS 5.0,
 * requirement 1.2.10; CWE-1236). A text that is a number stays as it is.
 */
final class CsvTable {
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?");
    private static final String FORMULA_STARTS = "=+-@\t\r";

    private CsvTable() {}

    /** @throws org.seacairn.InputException if the file cannot be written */
    static <T> void write(Path file, List<Column<T>> columns, List<T> rows) {
        OutputFile.text(file, out -> {
            line(out, columns.stream().map(column -> cell(column.name())).toList());
            for (T row : rows) {
                line(out, columns.stream().map(column -> column.kind() == Column.Kind.TEXT
                        ? cell(column.text(row)) : column.text(row)).toList());
            }
        });
    }

    private static void line(Writer out, List<String> cells) throws IOException {
        out.write(String.join(",", cells));
        out.write('\n');
    }

    static String cell(String text) {
        boolean formula = !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0
                && !NUMBER.matcher(text).matches();
        boolean quoted = formula || text.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
        return quoted ? '"' + (formula ? "'" : "") + text.replace("\"", "\"\"") + '"' : text;
    }
}
