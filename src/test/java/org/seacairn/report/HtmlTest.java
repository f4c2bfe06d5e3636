package org.seacairn.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HtmlTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            <script>alert(1)</script> | &lt;script&gt;alert(1)&lt;/script&gt;
            AT&T &amp; co             | AT&amp;T &amp;amp; co
            "quoted" 'twice'          | "quoted" 'twice'
            ]]> -->                   | ]]&gt; --&gt;
            Mélèze 海 🌊              | Mélèze 海 🌊
            """)
    void aTextIsEscaped(String text, String expected) {
        assertEquals(expected, new Html().text(text).done());
    }

    @Test
    void aValueOfAnAttributeCannotEndIt() {
        assertEquals("<p title=\"&quot; onclick=&quot;x &lt;&amp;'\">a</p>", new Html().element("p", "a", "title", "\" onclick=\"x <&'").done());
    }

    /** HTML Standard, 13.1.4: a text holds no control but tab and line ends, no surrogate alone and no noncharacter. */
    @Test
    void whatHtmlDoesNotAllowIsReplaced() {
        assertEquals("a\uFFFDb\uFFFDc\uFFFDd\uFFFDe\tf\ng", new Html().text("a\u0000b\u001Bc\uD800d\uFFFEe\tf\ng").done());
    }

    /** UAX 9: an override or isolate that is never ended would turn the rest of a line about. */
    @Test
    void whatSteersTheDirectionOfReadingIsReplaced() {
        assertEquals("<bdi>a\uFFFDb\uFFFDc\uFFFDd</bdi>", new Html().name("a\u202Eb\u2067c\u2069d").done());
    }

    @Test
    void aNameReadsInItsOwnDirection() {
        assertEquals("<bdi>שונית</bdi>", new Html().name("שונית").done());
    }

    @Test
    void aLongNameIsCutBetweenCharacters() {
        assertEquals("<bdi>" + "🌊".repeat(79) + "…</bdi>", new Html().name("🌊".repeat(10_000)).done());
        assertEquals("<bdi>" + "n".repeat(80) + "</bdi>", new Html().name("n".repeat(80)).done());
    }

    @ParameterizedTest
    @CsvSource({"onclick, alert(1)", "href, javascript:alert(1)", "href, https://example.org", "href, //example.org", "src, https://example.org/a.png",
            "src, data:text/html;base64,AA", "srcset, a.png", "formaction, #", "bad name, x"})
    void anAttributeThatCouldLoadOrRunSomethingIsRefused(String name, String value) {
        assertThrows(IllegalArgumentException.class, () -> new Html().open("a", name, value));
    }

    @Test
    void aLinkWithinThePageIsAllowed() {
        assertEquals("<a href=\"#sites\">Sites</a>", new Html().element("a", "Sites", "href", "#sites").done());
    }

    @Test
    void elementsCloseInOrder() {
        Html html = new Html().open("div").open("p");
        assertEquals("</div> where <p> is open", assertThrows(IllegalStateException.class, () -> html.close("div")).getMessage());
        assertEquals("<p> was never closed", assertThrows(IllegalStateException.class, html::done).getMessage());
    }

    @Test
    void elementsWithoutContentAreWellFormed() {
        assertEquals("<br/><rect x=\"1\"></rect>", new Html().empty("br").empty("rect", "x", "1").done());
    }
}
