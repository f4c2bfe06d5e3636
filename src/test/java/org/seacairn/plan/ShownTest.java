package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShownTest {
    @ParameterizedTest
    @CsvSource(textBlock = """
            0.1,                 0.1
            100,                 100
            1234567.8,           1234570
            0.30000000000000004, 0.3
            0,                   0
            -2.5,                -2.5
            1e-9,                0.000000001
            NaN,                 NaN
            -3.4028235e38,       -3.40282E+38
            """)
    void numbersHaveSixDigitsAndAnExponentOnlyBeyondAllUse(double number, String expected) {
        assertEquals(expected, Shown.number(number));
    }

    @Test
    void longOrUnprintableValuesAreShownShortAndOnOneLine() {
        assertEquals("\"" + "é".repeat(60) + "\"", Shown.quoted("é".repeat(60)));
        assertEquals("\"" + "é".repeat(57) + "...\"", Shown.quoted("é".repeat(61)));
        assertEquals("\"a?b\"", Shown.quoted("a\nb"));
        assertEquals("\"a?b?\"", Shown.quoted("a\u2028b\u202E"));
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            0,       7,       0 %
            7,       7,       100 %
            1,       3,       33.3 %
            1,       1000000, less than 0.1 %
            999999,  1000000, more than 99.9 %
            """)
    void aShareIsAllOrNothingOnlyWhereItIsExact(long part, long whole, String expected) {
        assertEquals(expected, Shown.percent(part, whole));
    }
}
