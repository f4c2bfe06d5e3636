package org.seacairn.layer;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.seacairn.InputException;

/**
 * The rows of delimited text (RFC 4180, also with semicolons or tabs) below its header line, while they are being read, and what
 * is wrong with them: all bad rows are found before the file is refused, so that they can be corrected in one go. Where the
 * delimiter is no comma, a comma may stand for the decimal point.
 */
final class CsvRows {
    /** More problems than this are counted and not told one by one. */
    private static final int PROBLEMS_TOLD = 20;

    private static final String SEPARATOR_LINE = "(?i)sep=[,;\t]\\s*";
    private static final String FORMULA_STARTS = "=+-@\t\r";

    private final Path file;
    private final List<String> notes;
    private final boolean decimalComma;
    private final CSVParser parser;
    private final Iterator<CSVRecord> records;
    private final List<String> header;
    private final List<String> problems = new ArrayList<>();
    private int badRows;
    private long line;

    private CsvRows(Path file, DecodedText decoded, char delimiter) throws IOException {
        this.file = file;
        this.notes = new ArrayList<>(decoded.notes());
        if (!decoded.text().endsWith("\n") && !decoded.text().endsWith("\r")) {
            notes.add(DecodedText.WITHOUT_END);
        }
        this.decimalComma = delimiter != ',';
        // It reads from memory, so that there is nothing to close.
        this.parser = CSVParser.parse(new StringReader(decoded.text()), CSVFormat.RFC4180.builder().setDelimiter(delimiter)
                .setIgnoreEmptyLines(false).setIgnoreSurroundingSpaces(true).build());
        this.records = parser.iterator();
        this.header = readHeader();
    }

    /** @throws InputException if the file cannot be read, is no text or has no header */
    static CsvRows open(Path file) {
        DecodedText decoded = DecodedText.read(file);
        try {
            return new CsvRows(file, decoded, delimiter(file, decoded.text()));
        } catch (IOException e) {
            throw VectorReader.problem(file, "text", "cannot be read (" + e.getMessage() + "); check the file", e);
        }
    }

    /** Names of the columns, no two alike; a nameless one is called after its place. */
    List<String> header() {
        return header;
    }

    /** Lines on the character set, where it had to be guessed, and on a missing end. */
    List<String> notes() {
        return notes;
    }

    /** Where the row that was read last begins, the header at first. */
    String place() {
        return "line " + line;
    }

    /** The same, and a column. */
    String place(int column) {
        return place() + ", column \"" + XmlElements.shown(header.get(column)) + "\"";
    }

    /** The next record that is not an empty line, or null at the end. */
    CSVRecord next() {
        try {
            while (true) {
                line = parser.getCurrentLineNumber() + 1;
                if (!records.hasNext()) {
                    return null;
                }
                CSVRecord row = records.next();
                if (row.size() > 1 || !row.get(0).isBlank()) {
                    return row;
                }
            }
        } catch (UncheckedIOException | IllegalStateException e) {
            throw VectorReader.problem(file, place(),
                    "its quotes do not match; put a value in quotes and write a quote inside it twice", e);
        }
    }

    /** Whether a row has a value for each column; a problem is noted if not. */
    boolean isWhole(CSVRecord row) {
        boolean whole = row.size() >= header.size();
        for (int i = header.size(); i < row.size(); i++) {
            whole &= row.get(i).isBlank();
        }
        if (!whole) {
            note(place(), "has " + row.size() + " values where the header has " + header.size()
                    + "; complete the row, or quote values that hold the delimiter");
        }
        return whole;
    }

    /** A value that may be a number, with a point for its decimals. */
    String numberText(CSVRecord row, int column) {
        String value = unguarded(row.get(column));
        return decimalComma && value.indexOf('.') < 0 ? value.replace(',', '.') : value;
    }

    /**
     * A value without white space about it, and without the apostrophe that exports put before a text that a
     * spreadsheet would run as a formula (OWASP, CSV injection), ours among them: {@code '=A} is read as {@code =A}, so that a name
     * is the same in the layer it came from and in a table of results. An apostrophe before anything else stays.
     */
    static String unguarded(String value) {
        String text = value.strip();
        boolean guarded = text.length() > 1 && text.charAt(0) == '\'' && FORMULA_STARTS.indexOf(text.charAt(1)) >= 0;
        return guarded ? text.substring(1) : text;
    }

    /** Notes a bad row. */
    void note(String place, String whatAndRemedy) {
        badRows++;
        if (badRows <= PROBLEMS_TOLD) {
            // A quoted value may hold the end of a line; a problem is one line.
            problems.add(file.getFileName() + ", " + place + ": " + whatAndRemedy.replaceAll("[\\s\\p{Cntrl}]+", " "));
        }
    }

    /** @throws InputException if a problem was noted */
    void refuseIfProblems() {
        if (badRows > PROBLEMS_TOLD) {
            problems.add(file.getFileName() + ": and " + (badRows - PROBLEMS_TOLD) + " more rows like these");
        }
        if (badRows > 0) {
            throw new InputException(problems);
        }
    }

    private List<String> readHeader() {
        CSVRecord first = next();
        if (first != null && first.size() == 2 && first.get(0).equalsIgnoreCase("sep=") && first.get(1).isEmpty()) {
            first = next();
        }
        if (first == null) {
            throw VectorReader.problem(file, "line 1", "holds no column name; export it again with a header line");
        }
        List<String> names = new ArrayList<>();
        for (String name : first) {
            String text = unguarded(name);
            names.add(text.isEmpty() ? "column " + (names.size() + 1) : text);
        }
        Set<String> seen = new HashSet<>();
        names.stream().filter(name -> !seen.add(name)).findFirst().ifPresent(twice -> {
            throw VectorReader.problem(file, place(), "two columns are named \"" + XmlElements.shown(twice) + "\"; rename one of them");
        });
        return List.copyOf(names);
    }

    /** The delimiter that a line {@code sep=;} states, as spreadsheets write it, or else the one that occurs most often in the first line that is not empty, outside quotes. */
    private static char delimiter(Path file, String text) {
        String header = text.lines().filter(line -> !line.isBlank()).findFirst().orElseThrow(
                () -> VectorReader.problem(file, "line 1", "holds only empty lines; export it again with a header line"));
        if (header.matches(SEPARATOR_LINE)) {
            return header.strip().charAt(4);
        }
        String bare = header.replaceAll("\"[^\"]*\"", "");
        char best = ',';
        for (char candidate : new char[] {',', ';', '\t'}) {
            if (count(bare, candidate) > count(bare, best)) {
                best = candidate;
            }
        }
        return best;
    }

    private static long count(String text, char wanted) {
        return text.chars().filter(c -> c == wanted).count();
    }
}
