package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ColumnNameTest {
    @ParameterizedTest
    @CsvSource(quoteCharacter = '`', value = {
        "cables, cables",
        "Shipping lanes, shipping_lanes",
        "Shipping lanes (N-S), shipping_lanes_n_s",
        "`  a -- b  `, a_b",
        "_a__b_, a_b",
        "50 m \"line\", 50_m_line",
        "Câbles, câbles",
        "Ca\u0302bles, câbles",
        "海底 ケーブル, 海底_ケーブル",
        "***, unnamed",
    })
    void labelBecomesName(String label, String name) {
        assertEquals(name, ColumnName.of(label));
    }

    @Test
    void namesDoNotFollowTheMachinesLanguage() {
        Locale machine = Locale.getDefault();
        try {
            // Turkish lower case of I has no dot.
            Locale.setDefault(new Locale.Builder().setLanguage("tr").build());
            assertEquals("pipelines", ColumnName.of("PIPELINES"));
        } finally {
            Locale.setDefault(machine);
        }
    }

    @Test
    void labelsThatCollideAreNumbered() {
        assertEquals(List.of("lanes", "lanes_2", "lanes_3", "lanes_2_2", "stone_2"),
                ColumnName.distinct(List.of("Lanes", "lanes", "LANES!", "lanes 2", "stone"), Set.of("stone")));
    }
}
