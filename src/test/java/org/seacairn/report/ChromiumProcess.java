package org.seacairn.report;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A headless chromium with a profile of its own, both gone once it is closed. */
final class ChromiumProcess implements AutoCloseable {
    private static final Duration TO_START = Duration.ofSeconds(30);
    private static final Duration TO_END = Duration.ofSeconds(3);

    /**
     * Becomes the browser. What it leaves behind waits for a line on the standard input, which {@link #close} sends;
     * an end of it without one means that this Java machine was killed: then it ends the browser and removes the
     * folder, which is {@code $0}.
     */
    private static final String SHELL =
            "exec 3<&0; { read -r done <&3 || { kill -KILL $$; sleep 1; rm -rf -- \"$0\"; }; } </dev/null >/dev/null 2>&1 & "
            + "exec \"$@\" 3<&- </dev/null";

    private final Process process;
    private final Path folder;
    private final Thread atExit = new Thread(this::close, "end chromium");

    private ChromiumProcess(Process process, Path folder) {
        this.process = process;
        this.folder = folder;
        Runtime.getRuntime().addShutdownHook(atExit);
    }

    /** Debian's {@code chromium} on the PATH, empty where there is none. */
    static Optional<Path> executable() {
        String path = Optional.ofNullable(System.getenv("PATH")).orElse("");
        return Stream.of(path.split(Pattern.quote(File.pathSeparator))).filter(folder -> !folder.isEmpty())
                .map(folder -> Path.of(folder, "chromium")).filter(Files::isExecutable).findFirst();
    }

    static ChromiumProcess start(Path executable) {
        try {
            Path folder = Files.createTempDirectory("seacairn-browser-");
            ProcessBuilder builder = new ProcessBuilder(command(executable, folder));
            // Whatever it keeps outside the profile goes into the folder too.
            for (String name : List.of("HOME", "XDG_CONFIG_HOME", "XDG_CACHE_HOME", "TMPDIR")) {
                builder.environment().put(name, folder.toString());
            }
            builder.redirectErrorStream(true).redirectOutput(folder.resolve("output.txt").toFile());
            return new ChromiumProcess(builder.start(), folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> command(Path executable, Path folder) {
        return List.of("sh", "-c", SHELL, folder.toString(), executable.toString(),
                "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
                "--disable-background-networking", "--disable-component-update", "--disable-sync",
                "--disable-dev-shm-usage", // Containers may have 64 MB there.
                "--disable-breakpad",
                "--host-resolver-rules=MAP * ~NOTFOUND", // What a page asks of the network is recorded and never leaves.
                "--force-color-profile=srgb", "--lang=en-US",
                "--remote-debugging-port=0", "--user-data-dir=" + folder.resolve("profile"));
    }

    /** Where its DevTools answer, once they do. */
    URI address() {
        // Two lines: the port, then the path.
        Path file = folder.resolve("profile").resolve("DevToolsActivePort");
        long from = System.nanoTime();
        try {
            while (System.nanoTime() - from < TO_START.toNanos()) {
                List<String> lines = Files.exists(file) ? Files.readAllLines(file, StandardCharsets.UTF_8) : List.of();
                if (lines.size() == 2 && !lines.get(1).isEmpty()) {
                    return URI.create("ws://127.0.0.1:" + lines.get(0) + lines.get(1));
                }
                if (process.waitFor(20, TimeUnit.MILLISECONDS)) {
                    throw new IllegalStateException("chromium ended with status " + process.exitValue() + " before it was ready:\n" + output());
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while chromium started", e);
        }
        throw new IllegalStateException("chromium was not ready within " + TO_START.toSeconds() + " s:\n" + output());
    }

    long pid() {
        return process.pid();
    }

    Path folder() {
        return folder;
    }

    private String output() {
        try {
            return new String(Files.readAllBytes(folder.resolve("output.txt")), StandardCharsets.UTF_8);
        } catch (IOException e) {
            return "(no output: " + e.getMessage() + ")";
        }
    }

    /** Kills it with all its children, whatever state it is in: its profile holds nothing worth a farewell. */
    @Override
    public synchronized void close() {
        if (Thread.currentThread() != atExit) {
            try {
                Runtime.getRuntime().removeShutdownHook(atExit);
            } catch (IllegalStateException e) {
                return; // The machine is going down, and the hook does what is to be done.
            }
        }
        if (!Files.exists(folder)) {
            return;
        }
        try (OutputStream watcher = process.getOutputStream()) {
            watcher.write("done\n".getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            // The watcher has gone already, with a browser that was killed.
            assert !process.isAlive() : e;
        }
        List<ProcessHandle> all = new ArrayList<>(process.descendants().toList());
        all.add(process.toHandle());
        all.addAll(naming(folder)); // Children of one that died belong to it no more.
        all.forEach(ProcessHandle::destroyForcibly);
        awaitEnd(all);
        delete();
    }

    /** Processes on whose command line the folder stands; its random name is in no other's. */
    static List<ProcessHandle> naming(Path folder) {
        try (Stream<ProcessHandle> all = ProcessHandle.allProcesses()) {
            return all.filter(process -> process.info().commandLine().orElse("").contains(folder.toString())).toList();
        }
    }

    private static void awaitEnd(List<ProcessHandle> all) {
        long from = System.nanoTime();
        while (all.stream().anyMatch(ProcessHandle::isAlive) && System.nanoTime() - from < TO_END.toNanos()) {
            pause();
        }
    }

    private void delete() {
        long from = System.nanoTime();
        IOException fault = null;
        // A child may write its last while the folder is being emptied.
        do {
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.deleteIfExists(file);
                }
                return;
            } catch (IOException | UncheckedIOException e) {
                fault = e instanceof IOException io ? io : new IOException(e);
                pause();
            }
        } while (System.nanoTime() - from < TO_END.toNanos());
        throw new UncheckedIOException("the browser's folder cannot be removed", fault);
    }

    private static void pause() {
        try {
            TimeUnit.MILLISECONDS.sleep(10);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
