package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SuggestionTest {
    private static final List<String> KNOWN =
            List.of("us", "metric", "keep-off", "clearance", "curve", "bathymetry", "Reef 12", "Reef 13");

    @ParameterizedTest
    @CsvSource(textBlock = """
            metrik,      metric
            METRIC,      metric
            keepoff,     keep-off
            keep_off,    keep-off
            clearnace,   clearance
            crve,        curve
            bathymetri,  bathymetry
            reef 12,     Reef 12
            Reef 14,     Reef 12
            u,           ''
            uk,          ''
            depth,       ''
            '',          ''
            """)
    void nearestKnownWord(String met, String expected) {
        assertEquals(Optional.of(expected).filter(word -> !word.isEmpty()), Suggestion.nearest(met, KNOWN));
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            kitten,   sitting,  3
            '',       abc,      3
            abc,      '',       3
            hieght,   height,   1
            ca,       abc,      3
            same,     same,     0
            """)
    void slipsBetweenTwoWords(String a, String b, int expected) {
        // kitten/sitting: the textbook case of Levenshtein distance. ca/abc: 3 and not 2 tells the
        // optimal string alignment from the unrestricted distance. Both from memory.
        assertEquals(expected, Suggestion.slips(a, b));
        assertEquals(expected, Suggestion.slips(b, a));
    }

    @Test
    void noKnownWordsGiveNoSuggestion() {
        assertEquals(Optional.empty(), Suggestion.nearest("depth", List.of()));
    }

    @Test
    void anEnormousWordIsNotCompared() {
        String junk = "x".repeat(1_000_000);
        assertTimeoutPreemptively(Duration.ofSeconds(60),
                () -> assertEquals(Optional.empty(), Suggestion.nearest(junk, List.of(junk + "y"))));
    }

    @Test
    void adviceListsAllWordsWhenNoneIsNear() {
        assertEquals("known here: us, metric", Suggestion.advice("imperial", List.of("us", "metric")));
        assertEquals("did you mean \"metric\"?", Suggestion.advice("metrik", List.of("us", "metric")));
    }
}
