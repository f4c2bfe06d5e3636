package org.seacairn.export;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.seacairn.InputException;

/** How every file of the output is opened, closed and, when that fails, reported. */
public final class OutputFile {
    /** What Linux, macOS, Windows and SQLite say when there is no room left (from memory). */
    private static final Pattern DISK_FULL = Pattern.compile(
            "no space left|disk is full|not enough space|quota exceeded|SQLITE_FULL", Pattern.CASE_INSENSITIVE);

    private OutputFile() {}

    /** Fills an open file. */
    @FunctionalInterface
    public interface Body<T> {
        void writeTo(T out) throws IOException;
    }

    /**
     * Writes a UTF-8 text file, replacing one that is there.
     *
     * @throws InputException if it cannot be written in full
     */
    public static void text(Path file, Body<? super Writer> body) {
        bytes(file, out -> {
            Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
            body.writeTo(writer);
            writer.flush();
        });
    }

    /**
     * Writes a file, replacing one that is there.
     *
     * @throws InputException if it cannot be written in full
     */
    public static void bytes(Path file, Body<? super OutputStream> body) {
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16)) {
            body.writeTo(out);
        } catch (IOException | UncheckedIOException e) {
            throw cannotWrite(file, e);
        }
    }

    /** The one message for a file or folder that cannot be written, whatever the reason. */
    public static InputException cannotWrite(Path file, Exception cause) {
        return new InputException(
                "cannot write " + file.getFileName() + ": " + reason(cause) + "; check space and permission", cause);
    }

    /** The cause in a few words, without the absolute path that file-system exceptions carry. */
    static String reason(Exception cause) {
        for (Throwable e = cause; e != null; e = e.getCause()) {
            if (e.getMessage() != null && DISK_FULL.matcher(e.getMessage()).find()) {
                return "the disk is full";
            }
        }
        Throwable e = cause instanceof UncheckedIOException ? cause.getCause() : cause;
        if (e instanceof AccessDeniedException) {
            return "permission denied";
        }
        if (e instanceof NoSuchFileException) {
            return "no such file or folder";
        }
        if (e instanceof FileAlreadyExistsException inTheWay && inTheWay.getFile() != null) {
            return Path.of(inTheWay.getFile()).getFileName() + " is in the way, and is no folder";
        }
        if (e instanceof FileSystemException file) {
            return file.getReason() == null ? e.getClass().getSimpleName() : file.getReason();
        }
        return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
    }
}
