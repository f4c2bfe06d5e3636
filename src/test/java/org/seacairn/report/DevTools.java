package org.seacairn.report;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BiConsumer;

/**
 * One connection to a browser by the <a href="https://chromedevtools.github.io/devtools-protocol/">DevTools protocol</a>:
 * commands with their answers, and events handed to whoever listens to their session.
 *
 * <p>Nothing here waits for ever: a command without an answer in time, and one whose browser has gone, is an
 * IllegalStateException that names the command.
 */
final class DevTools implements AutoCloseable {
    /** The session of the browser itself; every page has a session of its own. */
    static final String BROWSER = "";
    private static final Duration TO_CONNECT = Duration.ofSeconds(10);

    private final Map<Integer, CompletableFuture<JsonValue>> waiting = new ConcurrentHashMap<>();
    private final Map<String, BiConsumer<String, JsonValue>> listeners = new ConcurrentHashMap<>();
    private final WebSocket socket;
    private CompletableFuture<?> lastSent = CompletableFuture.completedFuture(null);
    private int lastId;
    private volatile String whyClosed = "";

    DevTools(URI address) {
        try {
            socket = HttpClient.newBuilder().proxy(HttpClient.Builder.NO_PROXY).build().newWebSocketBuilder()
                    .connectTimeout(TO_CONNECT).buildAsync(address, new Receiver())
                    .get(TO_CONNECT.toSeconds() + 1, TimeUnit.SECONDS);
        } catch (ExecutionException | TimeoutException e) {
            throw new IllegalStateException("the browser does not answer at " + address, e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while connecting to the browser", e);
        }
    }

    /** @param listener takes an event's name and parameters, on the connection's thread: it must not wait for an answer */
    void listen(String session, BiConsumer<String, JsonValue> listener) {
        listeners.put(session, listener);
    }

    void stopListening(String session) {
        listeners.remove(session);
    }

    /** Sends a command and waits for its answer. */
    JsonValue call(String session, String command, Map<String, ?> parameters, Duration patience) {
        try {
            return send(session, command, parameters).get(patience.toMillis(), TimeUnit.MILLISECONDS);
        } catch (TimeoutException e) {
            throw new IllegalStateException(command + ": no answer within " + patience.toMillis() + " ms", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException(command + ": " + e.getCause().getMessage(), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(command + ": interrupted", e);
        }
    }

    /** Sends a command; what it answers may be left alone. */
    synchronized CompletableFuture<JsonValue> send(String session, String command, Map<String, ?> parameters) {
        int id = ++lastId;
        Map<String, Object> message = new LinkedHashMap<>();
        message.put("id", id);
        message.put("method", command);
        message.put("params", parameters);
        if (!session.equals(BROWSER)) {
            message.put("sessionId", session);
        }
        CompletableFuture<JsonValue> answer = new CompletableFuture<>();
        waiting.put(id, answer);
        // One after the other: a WebSocket refuses a text while it still sends the one before.
        lastSent = lastSent.thenCompose(sent -> socket.sendText(JsonValue.write(message), true));
        lastSent.whenComplete((sent, fault) -> {
            if (fault != null) {
                closed("the connection to the browser broke: " + fault.getMessage());
            }
        });
        if (!whyClosed.isEmpty()) {
            closed(whyClosed);
        }
        return answer;
    }

    private void closed(String why) {
        whyClosed = why;
        waiting.values().forEach(answer -> answer.completeExceptionally(new IllegalStateException(why)));
        waiting.clear();
    }

    private void received(JsonValue message) {
        if (message.get("id").isNull()) {
            JsonValue session = message.get("sessionId");
            BiConsumer<String, JsonValue> listener = listeners.get(session.isNull() ? BROWSER : session.text());
            if (listener != null) {
                listener.accept(message.get("method").text(), message.get("params"));
            }
            return;
        }
        CompletableFuture<JsonValue> answer = waiting.remove((int) message.get("id").number());
        if (answer != null && message.get("error").isNull()) {
            answer.complete(message.get("result"));
        } else if (answer != null) {
            answer.completeExceptionally(new IllegalStateException(message.get("error").get("message").text()));
        }
    }

    @Override
    public void close() {
        socket.abort();
        closed("the connection to the browser was closed");
    }

    private final class Receiver implements WebSocket.Listener {
        private final StringBuilder parts = new StringBuilder();

        @Override
        public CompletionStage<?> onText(WebSocket from, CharSequence part, boolean last) {
            parts.append(part);
            if (last) {
                String message = parts.toString();
                parts.setLength(0);
                received(JsonValue.read(message));
            }
            from.request(1);
            return null;
        }

        @Override
        public CompletionStage<?> onClose(WebSocket from, int status, String reason) {
            closed("the browser ended the connection");
            return null;
        }

        @Override
        public void onError(WebSocket from, Throwable fault) {
            closed("the connection to the browser broke: " + fault.getMessage());
        }
    }
}
