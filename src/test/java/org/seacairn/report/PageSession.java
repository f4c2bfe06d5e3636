package org.seacairn.report;

import java.time.Duration;
import java.util.Map;
import java.util.function.BiConsumer;

/** The DevTools of one page, which is all its browser context holds. */
record PageSession(DevTools tools, String id, String context) implements AutoCloseable {
    JsonValue call(String command, Map<String, ?> parameters) {
        return call(command, parameters, Browser.PATIENCE);
    }

    JsonValue call(String command, Map<String, ?> parameters, Duration patience) {
        return tools.call(id, command, parameters, patience);
    }

    void send(String command, Map<String, ?> parameters) {
        tools.send(id, command, parameters);
    }

    void listen(BiConsumer<String, JsonValue> listener) {
        tools.listen(id, listener);
    }

    /** Closes the page, and forgets what it stored. */
    @Override
    public void close() {
        tools.stopListening(id);
        tools.send(DevTools.BROWSER, "Target.disposeBrowserContext", Map.of("browserContextId", context));
    }
}
