package org.seacairn.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** That the harness sees what a report must not do, and that its hands work. */
@ExtendWith(BrowserExtension.class)
class BrowserTest {
    private static final String CLEAN = """
            <!DOCTYPE html>
            <html lang="en"><head><meta charset="utf-8"><title>Sites</title>%s
            <style>
              body { margin: 0; font: 16px sans-serif } main { padding: 8px } button { min-height: 32px }
              #map { width: 300px; height: 200px; background: #036; touch-action: none }
            </style></head>
            <body><main><h1>Sites</h1>%s</main></body></html>
            """;
    /** Each input leaves a word; one that a script made up, a question mark. */
    private static final String HANDS = """
            <p id="said"></p>
            <button id="north" type="button">North</button>
            <label>Name <input id="name"></label>
            <div id="map"></div>
            <div style="height: 3000px"></div>
            <button id="far" type="button">Far down</button>
            <script>
              const say = word => { document.querySelector('#said').textContent += word + ' '; };
              for (const b of document.querySelectorAll('button')) b.addEventListener('click', e => say(b.id + (e.isTrusted ? '' : '?')));
              const map = document.querySelector('#map'), down = new Map();
              const apart = () => { const [a, b] = [...down.values()]; return Math.round(Math.hypot(a.x - b.x, a.y - b.y)); };
              map.addEventListener('pointerdown', e => { down.set(e.pointerId, e); if (down.size === 2) say('fingers ' + apart()); });
              map.addEventListener('pointermove', e => { if (down.has(e.pointerId)) down.set(e.pointerId, e); });
              map.addEventListener('pointerup', e => {
                if (down.size === 2) say('then ' + apart()); else if (e.pointerType === 'mouse') say('dragged');
                down.delete(e.pointerId);
              });
              map.addEventListener('wheel', e => { e.preventDefault(); say('wheel ' + e.deltaY); });
              document.addEventListener('keydown', e => { if (e.target === document.body) say(e.shiftKey ? 'Shift+' + e.key : e.key); });
            </script>
            """;

    @TempDir Path folder;

    private Path page(String body) throws IOException {
        return page("", body);
    }

    private Path page(String head, String body) throws IOException {
        return Files.writeString(folder.resolve("sîtes & more.html"), CLEAN.formatted(head, body));
    }

    @Test
    void aPageThatAsksForNothingHasNothingAgainstIt(Browser browser) throws IOException {
        String dot = "<img alt=\"dot\" src=\"data:image/gif;base64,R0lGODlhAQABAAAAACwAAAAAAQABAAACAkQBADs=\">";
        try (BrowserPage page = browser.open(page("<p>Nothing here.</p>" + dot + "<script>console.log('fine')</script>"))) {
            assertEquals(List.of(), page.requests());
            assertEquals(List.of(), page.errors());
            assertEquals(List.of(), page.violations());
            assertEquals(List.of(), page.axe());
            assertEquals(List.of(), page.errors(), "axe leaves no trace");
            assertEquals("Sites", page.evaluate("document.title").text());
            assertTrue(page.evaluate("typeof axe === 'undefined'").truth());
        }
    }

    @Test
    void aRequestIsNoticedWhateverMakesIt(Browser browser) throws IOException {
        Path beside = Files.writeString(folder.resolve("beside.css"), "p { color: red }");
        String body = """
                <img alt="" src="http://charts.invalid/img">
                <link rel="stylesheet" href="http://charts.invalid/sheet">
                <link rel="stylesheet" href="beside.css">
                <iframe title="frame" src="http://charts.invalid/frame"></iframe>
                <script>
                  navigator.sendBeacon('http://192.0.2.1/beacon');
                  new WebSocket('ws://charts.invalid/socket');
                  setTimeout(() => fetch('http://charts.invalid/later').catch(() => 0), 30);
                </script>
                """;
        try (BrowserPage page = browser.open(page(body))) {
            assertEquals(Set.of("http://charts.invalid/img", "http://charts.invalid/sheet", beside.toUri().toString(),
                    "http://charts.invalid/frame", "http://192.0.2.1/beacon", "ws://charts.invalid/socket",
                    "http://charts.invalid/later"), Set.copyOf(page.requests()));
            assertTrue(page.errors().contains("network: Failed to load resource: net::ERR_NAME_NOT_RESOLVED"), page.errors().toString());
        }
    }

    @Test
    void anErrorIsNoticedWhateverMakesIt(Browser browser) throws IOException {
        String scripts = """
                <script>console.error('depth is', 3); console.warn('a warning is none')</script>
                <script>alert('no depth')</script>
                <script>depth()</script>
                <script>Promise.reject(new Error('no landing'))</script>
                """;
        try (BrowserPage page = browser.open(page(scripts))) {
            List<String> firstLines = page.errors().stream().map(error -> error.lines().findFirst().orElseThrow()).sorted().toList();
            assertEquals(List.of("Uncaught (in promise) Error: no landing", "Uncaught ReferenceError: depth is not defined",
                    "alert dialog: no depth", "console: depth is 3"), firstLines);
        }
    }

    @Test
    void aBreachOfThePolicyIsNoticedWhateverMakesIt(Browser browser) throws IOException {
        String policy = "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">";
        String body = """
                <img alt="" src="http://charts.invalid/img">
                <link rel="stylesheet" href="http://charts.invalid/sheet">
                <script>document.title = 'taken'</script>
                <p onclick="document.title = 'taken'">Text</p>
                """;
        try (BrowserPage page = browser.open(page(policy, body))) {
            assertEquals(Set.of("img-src: http://charts.invalid/img", "style-src-elem: http://charts.invalid/sheet",
                    "script-src-elem: kInlineViolation", "script-src-attr: kInlineViolation"), Set.copyOf(page.violations()));
            assertEquals("Sites", page.evaluate("document.title").text());
            assertEquals(List.of(), page.axe(), "axe runs under any policy");
            assertEquals(4, page.violations().size(), "and breaks none");
            assertEquals(Set.of("http://charts.invalid/img", "http://charts.invalid/sheet"), Set.copyOf(page.requests()),
                    "what was forbidden was asked for");
        }
    }

    @Test
    void handsAreThoseOfAReader(Browser browser) throws IOException {
        try (BrowserPage page = browser.open(page(HANDS))) {
            page.click("#north");
            page.drag("#map", 40, -30);
            page.wheel("#map", 120);
            page.pinch("#map", 1.5);
            page.click("#far");
            assertEquals("north dragged wheel 120 fingers 100 then 150 far ", page.evaluate("document.querySelector('#said').textContent").text());
            assertTrue(page.evaluate("scrollY").number() > 2000);
            assertEquals(List.of(), page.errors());
        }
    }

    @Test
    void keysAreThoseOfAKeyboard(Browser browser) throws IOException {
        try (BrowserPage page = browser.open(page(HANDS))) {
            page.press("ArrowLeft", "+", "Shift+Home", "Tab");
            assertTrue(page.hasFocus("#north"));
            page.press("Enter", "Space", "Tab");
            page.type("Färöbank 7");
            assertEquals("ArrowLeft + Shift+Home Tab north north ", page.evaluate("document.querySelector('#said').textContent").text());
            assertEquals("Färöbank 7", page.evaluate("document.querySelector('#name').value").text());
            page.press("Shift+Tab");
            assertTrue(page.hasFocus("#north"));
        }
    }

    @Test
    void whatCannotBeClickedSaysWhy(Browser browser) throws IOException {
        String covered = "<button id=\"under\" type=\"button\">A</button><div id=\"veil\" style=\"position: fixed; inset: 0\"></div><p id=\"gone\" hidden>B</p>";
        try (BrowserPage page = browser.open(page(covered))) {
            assertEquals("#none: no such element", assertThrows(IllegalStateException.class, () -> page.click("#none")).getMessage());
            assertEquals("#gone: not displayed", assertThrows(IllegalStateException.class, () -> page.click("#gone")).getMessage());
            String message = assertThrows(IllegalStateException.class, () -> page.click("#under")).getMessage();
            assertTrue(message.startsWith("#under: covered by <div id=\"veil\""), message);
        }
    }

    @Test
    void aScreenshotHasTheSizeAndColoursOfThePage(Browser browser) throws IOException {
        try (BrowserPage page = browser.open(page("<div id=\"map\"></div><div style=\"height: 1000px\"></div>"), 390, 844)) {
            BufferedImage sight = image(page.screenshot());
            assertEquals(390, sight.getWidth());
            assertEquals(844, sight.getHeight());
            double top = page.evaluate("document.querySelector('#map').getBoundingClientRect().top").number();
            assertEquals(0xff003366, sight.getRGB(100, (int) top + 100));
            BufferedImage whole = image(page.screenshotOfWhole());
            assertEquals(390, whole.getWidth());
            assertEquals((int) page.evaluate("document.documentElement.scrollHeight").number(), whole.getHeight());
            assertTrue(whole.getHeight() > 1200);
        }
    }

    @Test
    void coloursAreShownAsTheColourBlindSeeThem(Browser browser) throws IOException {
        try (BrowserPage page = browser.open(page("<div id=\"map\" style=\"position: fixed; inset: 0; background: #c00\"></div>"), 320, 200)) {
            page.seenWith("achromatopsia");
            int grey = image(page.screenshot()).getRGB(150, 100);
            assertEquals(grey & 0xff, grey >> 8 & 0xff);
            assertEquals(grey & 0xff, grey >> 16 & 0xff);
            page.seenWith("none");
            assertEquals(0xffcc0000, image(page.screenshot()).getRGB(150, 100));
        }
    }

    private static BufferedImage image(byte[] png) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(png));
    }

    @Test
    void printingMakesSheetsOfThePaper(Browser browser) throws IOException {
        String threeSheets = "<p>One</p><p style=\"break-before: page\">Two</p><p style=\"break-before: page\">Three</p>";
        try (BrowserPage page = browser.open(page(threeSheets))) {
            // ISO 216: 210 x 297 mm. Chromium rounds to whole pixels of 1/96 inch.
            assertSheets(3, 210 / 25.4 * 72, 297 / 25.4 * 72, page.print(Paper.A4));
            assertSheets(3, 8.5 * 72, 11 * 72, page.print(Paper.LETTER));
        }
    }

    private static void assertSheets(int count, double widthPt, double heightPt, PrintedPages printed) {
        assertEquals("%PDF-", new String(printed.pdf(), 0, 5, StandardCharsets.US_ASCII));
        assertEquals(count, printed.count());
        for (PrintedPages.Sheet sheet : printed.sheets()) {
            assertEquals(widthPt, sheet.widthPt(), 0.75);
            assertEquals(heightPt, sheet.heightPt(), 0.75);
        }
    }

    @Test
    void theLayoutOfPrintCanBeMeasured(Browser browser) throws IOException {
        String style = "<style>@media print { #only { display: none } }</style>";
        try (BrowserPage page = browser.open(page(style, "<p id=\"only\">On screen</p><div style=\"width: 700px\">A table</div>"))) {
            page.asPrinted(Paper.A4, 12);
            assertEquals(702, (int) page.evaluate("innerWidth").number()); // (210 mm - 2 x 12 mm) x 96 / 25.4
            assertEquals("none", page.evaluate("getComputedStyle(document.querySelector('#only')).display").text());
            assertFalse(page.overflow().isEmpty());
            page.asOnScreen(1280, 800);
            assertEquals("block", page.evaluate("getComputedStyle(document.querySelector('#only')).display").text());
            assertEquals(List.of(), page.overflow());
        }
    }

    @Test
    void axeFindsWhatWasPlanted(Browser browser) throws IOException {
        String picture = "<img id=\"chart\" src=\"data:image/gif;base64,R0lGODlhAQABAAAAACwAAAAAAQABAAACAkQBADs=\">";
        try (BrowserPage page = browser.open(page(picture + "<p id=\"pale\" style=\"color: #999\">Pale</p>"))) {
            assertEquals(List.of(
                    new Axe.Fault("color-contrast", "serious", "Elements must have sufficient color contrast", List.of("#pale")),
                    new Axe.Fault("image-alt", "critical", "Images must have alternate text", List.of("#chart"))), page.axe());
        }
    }

    @Test
    void whatIsTooWideForAPhoneIsNamed(Browser browser) throws IOException {
        String wide = "<table id=\"sites\" style=\"width: 600px\"><tr><td>1</td></tr></table>"
                + "<div style=\"overflow-x: auto\"><p style=\"width: 700px\">scrolls by itself</p></div>";
        try (BrowserPage page = browser.open(page(wide), 390, 844)) {
            assertEquals("table#sites reaches 608 of 390 px", page.overflow().get(0));
            assertTrue(page.overflow().stream().noneMatch(named -> named.startsWith("p ")), page.overflow().toString());
            page.evaluate("document.querySelector('#sites').remove()");
            assertEquals(List.of(), page.overflow());
        }
    }

    @Test
    void theTimeToLoadIsMeasured(Browser browser) throws IOException {
        String slow = "<script>for (const t = performance.now(); performance.now() - t < 300;);</script>";
        try (BrowserPage quick = browser.open(page("<p>Quick</p>"))) {
            try (BrowserPage page = browser.open(page(slow))) {
                assertTrue(page.loadTime().toMillis() >= 300, page.loadTime().toString());
                assertTrue(quick.loadTime().compareTo(page.loadTime()) < 0, quick.loadTime() + " " + page.loadTime());
            }
        }
    }

    @Test
    void aPageCanBeReadWithoutItsScript(Browser browser) throws IOException {
        try (BrowserPage page = browser.openWithoutScript(page("<p>Text</p><noscript><p id=\"plain\">Plain</p></noscript>"
                + "<script>document.title = 'By script'</script>"), 1280, 800)) {
            assertEquals("Sites", page.evaluate("document.title").text());
            assertEquals("Plain", page.evaluate("document.querySelector('#plain').textContent").text());
            assertEquals(List.of(), page.errors());
            assertEquals(List.of(), page.axe());
        }
    }

    @Test
    void noPageKnowsWhatAnotherStored(Browser browser) throws IOException {
        Path file = page("<p>Text</p>");
        try (BrowserPage first = browser.open(file)) {
            first.evaluate("localStorage.setItem('a', '1')");
            try (BrowserPage second = browser.open(file)) {
                assertTrue(second.evaluate("localStorage.getItem('a')").isNull());
            }
        }
    }

    @Test
    void whatNeverEndsIsGivenUp(Browser browser) throws IOException {
        try (BrowserPage page = browser.open(page("<p>Text</p>"))) {
            Duration patience = Duration.ofMillis(200);
            assertEquals("for (;;);: not done within 200 ms",
                    assertThrows(IllegalStateException.class, () -> page.evaluate("for (;;);", patience)).getMessage());
            assertEquals("new Promise(() => 0): not done within 200 ms",
                    assertThrows(IllegalStateException.class, () -> page.evaluate("new Promise(() => 0)", patience)).getMessage());
            assertEquals(2, page.evaluate("1 + 1").number());
        }
    }

    @Test
    void whatAScriptThrowsIsTold(Browser browser) throws IOException {
        try (BrowserPage page = browser.open(page("<p>Text</p>"))) {
            String message = assertThrows(IllegalStateException.class, () -> page.evaluate("depth.metres")).getMessage();
            assertTrue(message.startsWith("depth.metres: Uncaught ReferenceError: depth is not defined"), message);
        }
    }

    @Test
    void aMissingFileIsTold(Browser browser) {
        String message = assertThrows(IllegalStateException.class, () -> browser.open(folder.resolve("none.html"))).getMessage();
        assertTrue(message.endsWith("none.html: net::ERR_FILE_NOT_FOUND"), message);
    }

    @Test
    void nothingIsLeftOfABrowser() throws IOException {
        Path own;
        try (Browser browser = Browser.start(Browser.executable().orElseThrow())) {
            own = browser.process().folder();
            browser.open(page("<p>Text</p>"));
            assertTrue(ChromiumProcess.naming(own).size() > 1, "this test sees processes");
        }
        assertFalse(Files.exists(own));
        assertEquals(List.of(), ChromiumProcess.naming(own));
    }

    @Test
    void aBrowserThatDiesIsTold() throws IOException {
        Browser browser = Browser.start(Browser.executable().orElseThrow());
        Path own = browser.process().folder();
        try (browser) {
            BrowserPage page = browser.open(page("<p>Text</p>"));
            ProcessHandle.of(browser.process().pid()).orElseThrow().destroyForcibly();
            String message = assertThrows(IllegalStateException.class, () -> page.evaluate("new Promise(() => 0)")).getMessage();
            assertTrue(message.contains("the connection to the browser"), message);
            assertThrows(IllegalStateException.class, () -> page.evaluate("1"));
        }
        assertFalse(Files.exists(own));
        assertEquals(List.of(), ChromiumProcess.naming(own));
    }

    @Test
    void whatIsNoBrowserIsToldWithItsOutput() throws IOException {
        Path script = Files.writeString(folder.resolve("chromium"), "#!/bin/sh\necho no display here; exit 3\n");
        assertTrue(script.toFile().setExecutable(true));
        assertEquals("chromium ended with status 3 before it was ready:\nno display here\n",
                assertThrows(IllegalStateException.class, () -> Browser.start(script)).getMessage());
    }

    @ParameterizedTest
    @CsvSource({"true, true, false", "true, false, false", "false, true, false", "false, false, true"})
    void testsAreSkippedOnlyWhereThereIsNoBrowserAndNoneIsRequired(boolean required, boolean there, boolean skipped) {
        assertEquals(skipped, BrowserExtension.condition(required, there).isDisabled());
    }
}
