package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CsvTableTest {
    // RFC 4180, section 2, rules 5 to 7; OWASP ASVS 5.0, requirement 1.2.10.
    @ParameterizedTest
    @CsvSource(quoteCharacter = '`', value = {
        "plain | plain",
        "`` | ``",
        "two words | two words",
        "a,b | \"a,b\"",
        "say \"x\" | \"say \"\"x\"\"\"",
        "`a\nb` | `\"a\nb\"`",
        "`a\rb` | `\"a\rb\"`",
        "=1+1 | \"'=1+1\"",
        "+1 reef | \"'+1 reef\"",
        "-cable | \"'-cable\"",
        "@old | \"'@old\"",
        "`\tx` | `\"'\tx\"`",
        "`\rx` | `\"'\rx\"`",
        "=\"a\",b | \"'=\"\"a\"\",b\"",
        "-12.5 | -12.5",
        "+7 | +7",
        "-.5e3 | -.5e3",
        "- | \"'-\"",
        "-1-1 | \"'-1-1\"",
        "+1+cmd | \"'+1+cmd\"",
        "#7 | #7",
        "'quoted' | 'quoted'",
    }, delimiter = '|')
    void cellIsQuotedWhereItMust(String text, String cell) {
        assertEquals(cell, CsvTable.cell(text));
    }
}
