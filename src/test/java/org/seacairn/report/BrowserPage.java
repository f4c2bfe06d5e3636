package org.seacairn.report;

import java.net.URI;
import java.time.Duration;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/**
 * A page in a {@link Browser}. Lengths are CSS pixels. Elements are named by CSS selectors, and a selector that finds
 * none is an IllegalStateException. Every action waits until the page has been drawn again.
 */
final class BrowserPage implements AutoCloseable {
    private static final String TWO_FRAMES =
            "new Promise(drawn => requestAnimationFrame(() => requestAnimationFrame(() => drawn(true))))";
    /** Without an event for so long, a page has done what it was going to do. */
    private static final Duration QUIET = Duration.ofMillis(60);
    private static final Duration TO_QUIET = Duration.ofSeconds(2);

    private final PageSession session;
    private final Pointer pointer;
    private final PageLog log;
    private Duration loadTime = Duration.ZERO;

    BrowserPage(PageSession session) {
        this.session = session;
        this.pointer = new Pointer(this, session);
        this.log = new PageLog(session);
    }

    void load(URI address, int widthPx, int heightPx, boolean script) {
        resize(widthPx, heightPx);
        session.call("Emulation.setFocusEmulationEnabled", Map.of("enabled", true));
        session.call("Emulation.setScriptExecutionDisabled", Map.of("value", !script));
        long from = System.nanoTime();
        JsonValue answer = session.call("Page.navigate", Map.of("url", address.toString()));
        if (!answer.get("errorText").isNull()) {
            throw new IllegalStateException(address + ": " + answer.get("errorText").text());
        }
        String loader = answer.get("loaderId").text();
        if (!within(Browser.PATIENCE, () -> log.isLoaded(loader))) {
            throw new IllegalStateException(address + ": not loaded within " + Browser.PATIENCE.toMillis() + " ms");
        }
        // The page's scripts have not run and will not any more; the harness needs some.
        session.call("Emulation.setScriptExecutionDisabled", Map.of("value", false));
        evaluate(TWO_FRAMES);
        loadTime = Duration.ofNanos(System.nanoTime() - from);
    }

    /** From the moment the page was asked for until it was loaded and drawn. */
    Duration loadTime() {
        return loadTime;
    }

    void resize(int widthPx, int heightPx) {
        session.call("Emulation.setDeviceMetricsOverride",
                Map.of("width", widthPx, "height", heightPx, "deviceScaleFactor", 1, "mobile", false));
    }

    /** The value of a JavaScript expression; of a promise, what it comes to. */
    JsonValue evaluate(String expression) {
        return evaluate(expression, Browser.PATIENCE);
    }

    /** The value of a JavaScript expression, which is given up after that time. */
    JsonValue evaluate(String expression, Duration patience) {
        return evaluate(expression, patience, Map.of());
    }

    private JsonValue evaluate(String expression, Duration patience, Map<String, ?> more) {
        Map<String, Object> parameters = new LinkedHashMap<>(more);
        parameters.put("expression", expression);
        parameters.put("returnByValue", true);
        parameters.put("awaitPromise", true);
        parameters.put("timeout", patience.toMillis()); // Ends what never leaves the script; a promise it lets be.
        long from = System.nanoTime();
        JsonValue answer;
        try {
            answer = session.call("Runtime.evaluate", parameters, patience.plusMillis(200));
        } catch (IllegalStateException e) {
            boolean late = System.nanoTime() - from >= patience.toNanos();
            throw new IllegalStateException(head(expression) + ": "
                    + (late ? "not done within " + patience.toMillis() + " ms" : e.getMessage()), e);
        }
        JsonValue thrown = answer.get("exceptionDetails");
        if (!thrown.isNull()) {
            throw new IllegalStateException(head(expression) + ": " + PageLog.described(thrown));
        }
        return answer.get("result").get("value");
    }

    private static String head(String expression) {
        String line = expression.strip().lines().findFirst().orElse("");
        return line.substring(0, Math.min(line.length(), 100));
    }

    /** Waits until a JavaScript expression is true. */
    void await(String expression) {
        if (!within(Browser.PATIENCE, () -> evaluate(expression).truth())) {
            throw new IllegalStateException(head(expression) + ": not true within " + Browser.PATIENCE.toMillis() + " ms");
        }
    }

    /** Clicks where a reader would: scrolls the element into sight and presses the mouse on its middle, which nothing may cover. */
    void click(String selector) {
        pointer.click(selector);
        drawn();
    }

    /** Drags from the middle of an element. */
    void drag(String selector, int rightPx, int downPx) {
        pointer.drag(selector, rightPx, downPx);
        drawn();
    }

    /** Turns the wheel over the middle of an element; positive scrolls down. */
    void wheel(String selector, int downPx) {
        pointer.wheel(selector, downPx);
        drawn();
    }

    /** Two fingers on an element, 100 px apart, go to {@code factor} times that. */
    void pinch(String selector, double factor) {
        pointer.pinch(selector, factor);
        drawn();
    }

    /** Presses keys one after the other. @param keys such as Enter, Shift+Tab, ArrowLeft, Space, + */
    void press(String... keys) {
        for (String key : keys) {
            Keys.press(session, key);
        }
        drawn();
    }

    /** Types into what has the focus. */
    void type(String text) {
        session.call("Input.insertText", Map.of("text", text));
        drawn();
    }

    private void drawn() {
        evaluate(TWO_FRAMES);
    }

    /** Whether the element has the focus. */
    boolean hasFocus(String selector) {
        return evaluate("document.activeElement === document.querySelector(" + JsonValue.write(selector) + ")").truth();
    }

    /** Addresses the page asked for or tried to, other than its own and data: URIs; also those that its policy forbade. */
    List<String> requests() {
        settle();
        return log.requests();
    }

    /** Errors of the console: thrown and not caught, logged as an error, failed to load, forbidden by policy; and dialogs. */
    List<String> errors() {
        settle();
        return log.errors();
    }

    /** What the content-security policy forbade: directive and address. */
    List<String> violations() {
        settle();
        return log.violations();
    }

    private void settle() {
        drawn();
        within(TO_QUIET, () -> log.quietNanos() > QUIET.toNanos());
    }

    /** What is in sight, as a PNG. */
    byte[] screenshot() {
        return screenshot(false);
    }

    /** The page from top to bottom, as a PNG. */
    byte[] screenshotOfWhole() {
        return screenshot(true);
    }

    private byte[] screenshot(boolean whole) {
        Map<String, Object> parameters = new LinkedHashMap<>(Map.of("format", "png"));
        if (whole) {
            JsonValue size = evaluate("({ w: innerWidth, h: Math.max(innerHeight, document.documentElement.scrollHeight) })");
            parameters.put("captureBeyondViewport", true);
            parameters.put("clip", Map.of("x", 0, "y", 0, "width", size.get("w").number(), "height", size.get("h").number(), "scale", 1));
        }
        return bytes(session.call("Page.captureScreenshot", parameters));
    }

    /** Prints with backgrounds, on the page's own margins, else 1 cm. */
    PrintedPages print(Paper paper) {
        return PrintedPages.of(bytes(session.call("Page.printToPDF", Map.of(
                "paperWidth", paper.widthInch(), "paperHeight", paper.heightInch(), "printBackground", true))));
    }

    private static byte[] bytes(JsonValue answer) {
        return Base64.getDecoder().decode(answer.get("data").text());
    }

    /** Lays the page out for print, as wide as a sheet between its margins, to be looked at and measured; {@link #asOnScreen} undoes it. */
    void asPrinted(Paper paper, double marginMm) {
        session.call("Emulation.setEmulatedMedia", Map.of("media", "print"));
        resize((int) Math.floor((paper.widthInch() - 2 * marginMm / 25.4) * 96), 1000);
        drawn();
    }

    void asOnScreen(int widthPx, int heightPx) {
        session.call("Emulation.setEmulatedMedia", Map.of("media", ""));
        resize(widthPx, heightPx);
        drawn();
    }

    /** Shows the page as someone sees it with {@code deuteranopia}, {@code protanopia}, {@code tritanopia}, {@code achromatopsia} or {@code none} of these. */
    void seenWith(String deficiency) {
        session.call("Emulation.setEmulatedVisionDeficiency", Map.of("type", deficiency));
        drawn();
    }

    /** What sticks out of the window to the right and makes it scroll sideways; empty where it does not. */
    List<String> overflow() {
        return evaluate(Overflow.SCRIPT).texts();
    }

    /** What axe-core finds wrong. It runs beside the page's own scripts, which do not see it. */
    List<Axe.Fault> axe() {
        String frame = session.call("Page.getFrameTree", Map.of()).get("frameTree").get("frame").get("id").text();
        JsonValue world = session.call("Page.createIsolatedWorld", Map.of("frameId", frame, "worldName", "axe")).get("executionContextId");
        Map<String, ?> there = Map.of("contextId", (long) world.number());
        evaluate(Axe.source() + "; true", Browser.PATIENCE, there);
        return Axe.read(evaluate(Axe.RUN, Browser.PATIENCE, there));
    }

    private static boolean within(Duration patience, BooleanSupplier condition) {
        long from = System.nanoTime();
        while (!condition.getAsBoolean()) {
            if (System.nanoTime() - from > patience.toNanos()) {
                return false;
            }
            try {
                TimeUnit.MILLISECONDS.sleep(2);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException("interrupted while waiting for the page", e);
            }
        }
        return true;
    }

    @Override
    public void close() {
        session.close();
    }
}
