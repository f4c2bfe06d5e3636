package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ColumnNameTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            cables              | cables
            Shipping lanes (US) | shipping_lanes_us
            a--b__c  d          | a_b_c_d
            Kabelträger 2       | kabelträger_2
            I                   | i
            --                  | ''
            """)
    void lowerCasedAndJoined(String label, String expected) {
        assertEquals(expected, ColumnName.of(label));
    }

    @ParameterizedTest
    @CsvSource({"Kabeltra\u0308ger, Kabelträger"})
    void twoSpellingsOfOneLetterAreOneName(String decomposed, String composed) {
        assertEquals(ColumnName.of(composed), ColumnName.of(decomposed));
    }
}
