package org.seacairn.export;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.stream.Stream;
import org.seacairn.InputException;

/**
 * The output folder of one run: filled under a temporary name, moved into place at the end.
 *
 * <p>Three names stand beside each other on one file system, and each always means the same:
 * <ul>
 * <li>{@code out} is a whole output;
 * <li>{@code .out.seacairn-former} is a whole output that has made room for its successor;
 * <li>{@code .out.seacairn-tmp-<pid>} is scrap that may be deleted at any time.
 * </ul>
 * Every step of {@link #commit} is one rename, so a run that is killed leaves the former output whole
 * at each instant: under its own name, or, between two renames, under the second. The next
 * {@link #stage} puts it back and clears the scrap. This holds for a process that dies; against a
 * power cut the files would have to be forced to the disk first, which is not done. A process that is asked
 * to end (Ctrl-C) clears its scrap itself.
 */
public final class OutputFolder implements AutoCloseable {
    /** As many as Linux follows (path_resolution(7), from memory). */
    private static final int MAX_LINKS = 40;
    /** How often a folder is cleared that other threads are still writing to, and the pause between. */
    private static final int MOST_CLEARINGS = 100;
    private static final int PAUSE_MS = 10;

    private final Path target;
    private final Path former;
    private final Path staged;
    private final FolderLock lock;
    private final Thread atExit = new Thread(this::abandon, "seacairn-abandon");
    private boolean closed;

    private OutputFolder(Path target, Path former, Path staged, FolderLock lock) {
        this.target = target;
        this.former = former;
        this.staged = staged;
        this.lock = lock;
    }

    /**
     * Makes an empty folder to write to, after putting right what a killed run has left.
     *
     * @param target the folder to replace or make; missing parents are made
     * @throws InputException if the target holds anything that Seacairn did not write or the current folder, another
     *     run is writing to it, or it cannot be written
     */
    public static OutputFolder stage(Path target) {
        Path folder = resolveLinks(target, 0);
        String name = folder.getFileName().toString();
        FolderLock lock = FolderLock.acquire(folder.resolveSibling("." + name + ".seacairn-lock"), folder);
        Path former = folder.resolveSibling("." + name + ".seacairn-former");
        String scrap = "." + name + ".seacairn-tmp-";
        Path staged = folder.resolveSibling(scrap + ProcessHandle.current().pid());
        OutputFolder output = new OutputFolder(folder, former, staged, lock);
        output.prepare(scrap);
        return output;
    }

    private synchronized void prepare(String scrap) {
        boolean ready = false;
        try {
            Runtime.getRuntime().addShutdownHook(atExit);
            // Under the lock no other process can be using these names.
            for (Path leftover : siblings(target, scrap)) {
                delete(leftover);
            }
            FormerOutput.requireReplaceable(target);
            recover();
            Files.createDirectory(staged);
            ready = true;
        } catch (IOException e) {
            throw OutputFile.cannotWrite(target, e);
        } finally {
            if (!ready) {
                close();
            }
        }
    }

    /** A link is followed, so that it goes on pointing to the output instead of being replaced by it. */
    private static Path resolveLinks(Path target, int links) {
        Path path = target.toAbsolutePath().normalize();
        if (path.getFileName() == null) {
            throw new InputException(target + ": is the root of a file system; choose a folder for the output");
        }
        if (links > MAX_LINKS) {
            throw new InputException(path.getFileName() + ": links to itself; choose a folder for the output");
        }
        try {
            if (Files.isSymbolicLink(path)) {
                return resolveLinks(path.resolveSibling(Files.readSymbolicLink(path)), links + 1);
            }
            Path parent = path.getParent();
            if (!Files.isDirectory(parent)) {
                Files.createDirectories(parent);
            }
            Path folder = parent.toRealPath().resolve(path.getFileName());
            if (Path.of("").toRealPath().startsWith(folder)) {
                // It would be renamed under the user's feet: no command finds its way there any more.
                throw new InputException(path.getFileName() + ": is, or holds, the current folder, and would be replaced; go elsewhere,"
                        + " or choose another output folder");
            }
            return folder;
        } catch (IOException e) {
            throw OutputFile.cannotWrite(path, e);
        }
    }

    /** Ends or undoes the renames of a run that was killed between them; the target is known to be ours. */
    private void recover() throws IOException {
        if (!Files.exists(former)) {
            return;
        }
        if (Files.exists(target.resolve(RunJson.FILE_NAME))) {
            move(former, staged);
            delete(staged);
        } else {
            delete(target);
            move(former, target);
        }
    }

    /** Where to write: the temporary folder. */
    public Path path() {
        return staged;
    }

    /** Where to write one file of the output. */
    public Path resolve(String name) {
        return staged.resolve(name);
    }

    /**
     * Moves the finished output into place and deletes the one before it.
     *
     * @throws InputException if that cannot be done; the former output is then where it was
     * @throws IllegalStateException if {@code run.json} is missing or was not written last, or the process is ending
     */
    public synchronized void commit() {
        if (closed) {
            throw new IllegalStateException("the output was closed before it was committed");
        }
        try {
            requireComplete();
            FormerOutput.requireReplaceable(target);
            boolean replaces = Files.exists(target);
            if (replaces) {
                move(target, former);
            }
            moveIn(replaces);
            if (replaces) {
                retire();
            }
        } catch (IOException e) {
            throw OutputFile.cannotWrite(target, e);
        }
    }

    private void moveIn(boolean replaces) throws IOException {
        try {
            move(staged, target);
        } catch (IOException e) {
            if (replaces) {
                move(former, target);
            }
            throw e;
        }
    }

    /** Makes scrap of the former output, for {@link #close} to delete. */
    private void retire() {
        try {
            move(former, staged);
        } catch (IOException e) {
            // The new output is in place, and the next run clears the one before it.
        }
    }

    /** An output that does not list its own files could never be replaced by the next run. */
    private void requireComplete() {
        if (Files.isDirectory(staged) && !Files.exists(resolve(RunJson.FILE_NAME))) {
            throw new IllegalStateException("run.json must be written before the output is committed");
        }
        try {
            FormerOutput.requireReplaceable(staged);
        } catch (InputException e) {
            throw new IllegalStateException("run.json must be written last", e);
        }
    }

    /**
     * Deletes what was not committed, or the output that was replaced, and lets the next run in.
     * What cannot be deleted now is scrap by its name, and the next run deletes it.
     */
    @Override
    public synchronized void close() {
        if (closed) {
            return;
        }
        closed = true;
        try (lock) {
            delete(staged);
        } catch (IOException e) {
            // Nothing is lost and nothing is in the way: see above.
        }
        try {
            Runtime.getRuntime().removeShutdownHook(atExit);
        } catch (IllegalStateException e) {
            // The process is ending; there is nothing left to do then.
        }
    }

    /** When the process is asked to end: as {@link #close}, after a commit that is under way, and although threads go on writing. */
    private synchronized void abandon() {
        for (int i = 0; i < MOST_CLEARINGS && !closed && Files.exists(staged); i++) {
            try {
                delete(staged);
            } catch (IOException e) {
                pause();
            }
        }
        close();
    }

    private static void pause() {
        try {
            Thread.sleep(PAUSE_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void move(Path from, Path to) throws IOException {
        Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    }

    private static List<Path> siblings(Path folder, String prefix) throws IOException {
        try (Stream<Path> entries = Files.list(folder.getParent())) {
            return entries.filter(entry -> entry.getFileName().toString().startsWith(prefix)).toList();
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private static void delete(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        Files.walkFileTree(folder, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Files.delete(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path visited, IOException failure) throws IOException {
                if (failure != null) {
                    throw failure;
                }
                Files.delete(visited);
                return FileVisitResult.CONTINUE;
            }
        });
    }
}
