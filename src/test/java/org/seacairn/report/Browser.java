package org.seacairn.report;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;

/**
 * Debian's chromium without a window, in which pages are opened as a reader opens them: from disk. Nothing a page
 * asks of the network leaves the machine. Tests get theirs from {@link BrowserExtension}.
 */
final class Browser implements AutoCloseable {
    /** How long any command may take, opening a page among them. */
    static final Duration PATIENCE = Duration.ofSeconds(15);

    private final ChromiumProcess process;
    private final DevTools tools;

    private Browser(ChromiumProcess process, DevTools tools) {
        this.process = process;
        this.tools = tools;
    }

    static Optional<Path> executable() {
        return ChromiumProcess.executable();
    }

    static Browser start(Path executable) {
        ChromiumProcess process = ChromiumProcess.start(executable);
        try {
            return new Browser(process, new DevTools(process.address()));
        } catch (RuntimeException e) {
            process.close();
            throw e;
        }
    }

    /** Opens a file in a window of 1280 x 800 pixels and waits until it is loaded and drawn. */
    BrowserPage open(Path file) {
        return open(file, 1280, 800);
    }

    /** Opens a file in a window of that many CSS pixels. */
    BrowserPage open(Path file, int widthPx, int heightPx) {
        return open(file, widthPx, heightPx, true);
    }

    /** Opens a file as a reader sees it who lets no script run. The harness can still evaluate. */
    BrowserPage openWithoutScript(Path file, int widthPx, int heightPx) {
        return open(file, widthPx, heightPx, false);
    }

    private BrowserPage open(Path file, int widthPx, int heightPx, boolean script) {
        // A context of its own: no page knows what another stored. A window of its own: a hidden tab is not drawn.
        String context = call("Target.createBrowserContext", Map.of()).get("browserContextId").text();
        String target = call("Target.createTarget", Map.of("url", "about:blank", "browserContextId", context, "newWindow", true))
                .get("targetId").text();
        String session = call("Target.attachToTarget", Map.of("targetId", target, "flatten", true)).get("sessionId").text();
        BrowserPage page = new BrowserPage(new PageSession(tools, session, context));
        try {
            page.load(URI.create(file.toUri().toASCIIString()), widthPx, heightPx, script);
            return page;
        } catch (RuntimeException e) {
            page.close();
            throw e;
        }
    }

    private JsonValue call(String command, Map<String, ?> parameters) {
        return tools.call(DevTools.BROWSER, command, parameters, PATIENCE);
    }

    /** Its process and its folder, for the harness's own test. */
    ChromiumProcess process() {
        return process;
    }

    /** Ends the browser, whatever state it is in, and removes its profile. */
    @Override
    public void close() {
        tools.close();
        process.close();
    }
}
