package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.InputException;

class Iso8211FileTest {
    private static final String UNIT = "\u001f";
    private static final String END = "\u001e";

    /** A file whose field TRY0 has these labels and formats, and one record of it with this content. */
    private static byte[] file(String labels, String formats, String content) {
        String layout = "0000;&   " + "trial" + UNIT + labels + UNIT + formats + END;
        return (record("3LE1 09", " ! ", layout) + record(" D     ", "   ", content + END)).getBytes(StandardCharsets.ISO_8859_1);
    }

    private static String record(String afterLength, String afterBase, String field) {
        String directory = String.format(Locale.ROOT, "TRY0%04d%03d", field.length(), 0) + END;
        int base = 24 + directory.length();
        return String.format(Locale.ROOT, "%05d%s%05d%s4304", base + field.length(), afterLength, base, afterBase) + directory + field;
    }

    private static Iso8211Rows rows(byte[] bytes) {
        Iso8211File file = new Iso8211File(Path.of("a.000"), bytes);
        return file.rows(file.next().fields().get(0), false);
    }

    private static String refusal(byte[] bytes) {
        return assertThrows(InputException.class, () -> rows(bytes).next()).getMessage();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "A|(A)|TEXT 0", "A|(A(8))|TEXT 8", "A!B|(2A)|TEXT 0, TEXT 0", "A!B!C|(b11,2b24)|UNSIGNED 1, SIGNED 4, SIGNED 4",
        "A|(B(40))|BITS 5", "A!B|(R(4),I(2))|TEXT 4, TEXT 2", "A!B!C!D!E|(2(b12,A),b21)|UNSIGNED 2, TEXT 0, UNSIGNED 2, TEXT 0, SIGNED 1"})
    void readsFormatControls(String labels, String formats, String expected) {
        Iso8211File file = new Iso8211File(Path.of("a.000"), file(labels, formats, ""));
        byte[] bytes = file(labels, formats, "");
        Iso8211Layout layout = Iso8211Layout.parse(file, new Iso8211File.Field("TRY0", 36, 36 + new String(bytes, StandardCharsets.ISO_8859_1)
                .substring(36).indexOf(END) + 1), 9);
        assertEquals(expected, layout.subfields().stream().map(s -> s.form() + " " + s.bytes()).collect(Collectors.joining(", ")));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"(", "()", "(b13)", "(b31)", "(b1)", "(B(3))", "(B)", "(A", "A", "(A)A", "(99A)", "(9999b11)", "(0A)", "(2(2(A)))",
        "(((((A)))))", "(A,)", "(X)", "''", "(A(12345))", "(99999999999A)"})
    void refusesFormatControlsOfNoSort(String formats) {
        assertTrue(refusal(file("A", formats, "")).matches("a.000, byte 36: field \"TRY0\" has the format .*, which is none of S-57; the chart is .*"), formats);
    }

    @Test
    void refusesLabelsWithoutFormats() {
        assertTrue(refusal(file("A!B", "(b11)", "x")).contains("field \"TRY0\" has 2 labels and 1 formats"));
    }

    @Test
    void takesTheLowestByteOfANumberFirst() {
        Iso8211Rows rows = rows(file("U!S!N", "(b14,b24,B(40))", "\u0001\u0002\u0003\u0080\u0001\u0002\u0003\u0080\u0082\u0001\u0002\u0003\u0080"));
        assertTrue(rows.next());
        assertEquals(0x80030201L, rows.integer("U"));
        assertEquals(0x80030201, rows.number("S"));
        assertEquals(new S57Name(S57Name.EDGE, 0x80030201L), rows.name("N"));
        assertFalse(rows.next());
        assertThrows(InputException.class, () -> rows.number("U"), "too large for 32 bits");
        assertThrows(InputException.class, () -> rows.integer("X"), "no such label");
    }

    @Test
    void repeatsARowToTheEndOfTheField() {
        Iso8211Rows rows = rows(file("*N!T", "(b11,A)", "A" + "one" + UNIT + "B" + UNIT + "C" + "three"));
        StringBuilder read = new StringBuilder();
        while (rows.next()) {
            read.append(rows.integer("N")).append(rows.text("T")).append(';');
        }
        assertEquals("65one;66;67three;", read.toString());
    }

    @Test
    void readsNumbersInDigits() {
        Iso8211Rows rows = rows(file("A!B", "(I,I(3))", "-12" + UNIT + "  7")).only();
        assertEquals(-12, rows.integer("A"));
        assertEquals(7, rows.integer("B"));
        assertTrue(assertThrows(InputException.class, () -> rows(file("A", "(I)", "x1")).only().integer("A")).getMessage()
                .contains("A is \"x1\" and no whole number"));
    }

    @Test
    void refusesARowThatIsCutOff() {
        Iso8211Rows rows = rows(file("*A!B", "(b14,b11)", "1234567"));
        assertTrue(rows.next());
        assertTrue(assertThrows(InputException.class, rows::next).getMessage().contains("field \"TRY0\" ends within a row; "));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "0|x|a digit should stand here",
        "0|9|the record is said to be 90",
        "6|X|no data record of ISO/IEC 8211 begins here",
        "6|R|no data record of ISO/IEC 8211 begins here",
        "15|9|the record's directory does not end where its leader says",
        "20|0|the record's directory has a column without digits",
        "20|9|the record's directory does not end where its leader says",
        "28|9|field \"TRY0\" is said to be 9",
        "32|9|field \"TRY0\" is said to lie 900 bytes into its record"})
    void refusesLeadersAndDirectoriesThatDoNotFit(int place, char put, String expected) {
        byte[] bytes = file("A", "(A)", "x");
        int second = new String(bytes, StandardCharsets.ISO_8859_1).indexOf(" D     ") - 5;
        bytes[second + place] = (byte) put;
        assertTrue(refusal(bytes).contains(expected), refusal(bytes));
    }

    @Test
    void takesTheLengthOfALongRecordFromItsFields() {
        byte[] bytes = file("A", "(A)", "long");
        int second = new String(bytes, StandardCharsets.ISO_8859_1).indexOf(" D     ") - 5;
        System.arraycopy("00000".getBytes(StandardCharsets.US_ASCII), 0, bytes, second, 5);
        assertEquals("long", rows(bytes).only().text("A"));
    }
}
