package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.stream.Stream;
import org.junit.jupiter.api.function.Executable;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;

/**
 * A row of a table of faults.
 *
 * @param told the whole message, or "read"
 */
record Refused(AnyFormat format, String told) {
    private static final Duration MOST = Duration.ofSeconds(10);

    static {
        openDataSet();
    }

    /** The EPSG data set is opened once a program, which takes seconds that are no reader's. */
    static void openDataSet() {
        Crs.ofEpsg(32617).to(Crs.WGS84);
        assertThrows(InputException.class, () -> Crs.ofEpsg(999_999));
    }

    /** Rows of a text: the format, and what is told. */
    static Stream<Refused> rows(String table) {
        return table.lines().map(line -> line.split(" +", 2)).map(row -> new Refused(AnyFormat.valueOf(row[0]), row[1]));
    }

    void assertTold(Executable reading) {
        assertTold(told, reading);
    }

    /** Refused with exactly one line, which is that, or read; within ten seconds. */
    static void assertTold(String told, Executable reading) {
        assertTimeoutPreemptively(MOST, () -> {
            if (told.equals("read")) {
                assertDoesNotThrow(reading);
            } else {
                InputException e = assertThrows(InputException.class, reading);
                assertEquals(told, String.join("\n", e.problems()));
                Refusals.requireUsable(e);
            }
        });
    }

    @Override
    public String toString() {
        return format + ": " + told;
    }
}
