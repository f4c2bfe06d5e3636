package org.seacairn.report;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;

/** What a page did that a report must not do, as the browser told it. */
final class PageLog {
    private final List<String> requests = new CopyOnWriteArrayList<>();
    private final List<String> errors = new CopyOnWriteArrayList<>();
    private final List<String> violations = new CopyOnWriteArrayList<>();
    private final PageSession session;
    private volatile long lastEventNanos = System.nanoTime();
    private final Set<String> loaded = ConcurrentHashMap.newKeySet();
    private volatile boolean asked;

    /** Listens from now on; the page is to be navigated after that. */
    PageLog(PageSession session) {
        this.session = session;
        session.listen(this::take);
        for (String domain : List.of("Page", "Runtime", "Log", "Network", "Audits")) {
            session.call(domain + ".enable", Map.of());
        }
        session.call("Page.setLifecycleEventsEnabled", Map.of("enabled", true));
    }

    private void take(String event, JsonValue about) {
        lastEventNanos = System.nanoTime();
        switch (event) {
            case "Page.lifecycleEvent" -> {
                if (about.get("name").text().equals("load")) {
                    loaded.add(about.get("loaderId").text());
                }
            }
            case "Page.javascriptDialogOpening" -> {
                errors.add(about.get("type").text() + " dialog: " + about.get("message").text());
                session.send("Page.handleJavaScriptDialog", Map.of("accept", false)); // Else the page would wait for ever.
            }
            case "Network.requestWillBeSent" -> request(about);
            case "Network.webSocketCreated", "Network.webTransportCreated" -> requests.add(about.get("url").text());
            case "Runtime.consoleAPICalled" -> console(about);
            case "Runtime.exceptionThrown" -> errors.add(described(about.get("exceptionDetails")));
            case "Log.entryAdded" -> entry(about.get("entry"));
            case "Audits.issueAdded" -> issue(about.get("issue"));
            case "Inspector.targetCrashed" -> errors.add("the page crashed");
            default -> { }
        }
    }

    private void request(JsonValue about) {
        boolean first = !asked;
        asked = true; // The first one is for the page itself.
        String url = about.get("request").get("url").text();
        if (!first && !url.startsWith("data:")) {
            requests.add(url);
        }
    }

    private void console(JsonValue call) {
        if (List.of("error", "assert").contains(call.get("type").text())) {
            List<String> words = call.get("args").items().stream().map(PageLog::shown).toList();
            errors.add("console: " + String.join(" ", words));
        }
    }

    private static String shown(JsonValue argument) {
        return argument.get("description").isNull() ? String.valueOf(argument.get("value").value()) : argument.get("description").text();
    }

    private void entry(JsonValue entry) {
        if (entry.get("level").text().equals("error")) {
            errors.add(entry.get("source").text() + ": " + entry.get("text").text());
        }
    }

    private void issue(JsonValue issue) {
        JsonValue details = issue.get("details").get("contentSecurityPolicyIssueDetails");
        if (!details.isNull()) {
            JsonValue blocked = details.get("blockedURL");
            violations.add(details.get("violatedDirective").text() + ": "
                    + (blocked.isNull() ? details.get("contentSecurityPolicyViolationType").text() : blocked.text()));
        }
    }

    /** What was thrown, from a protocol's ExceptionDetails. */
    static String described(JsonValue details) {
        JsonValue exception = details.get("exception");
        return details.get("text").text() + (exception.isNull() ? "" : " " + shown(exception));
    }

    /** @param loader what the navigation answered as its loaderId */
    boolean isLoaded(String loader) {
        return loaded.contains(loader);
    }

    /** Since the last event of this page. */
    long quietNanos() {
        return System.nanoTime() - lastEventNanos;
    }

    List<String> requests() {
        return List.copyOf(requests);
    }

    List<String> errors() {
        return List.copyOf(errors);
    }

    List<String> violations() {
        return List.copyOf(violations);
    }
}
