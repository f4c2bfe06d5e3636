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
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.seacairn.InputException;

/** How every file of the output is opened, closed and, when that fails, reported. */
public final class OutputFile {
    private static final String USUAL_REMEDY = "check space and permission";

    /** What Linux, macOS, Windows and SQLite say (from memory), in our words. */
    private static final List<Known> KNOWN = List.of(
            new Known("no space left|disk is full|not enough space|quota exceeded|SQLITE_FULL", "no space left on the disk", "free some and run again"),
            new Known("read-only file system|SQLITE_READONLY|write.protected", "the disk is read-only", "choose another output folder"),
            new Known("resource busy|used by another process", "it is in use, or is a disk of its own",
                    "close what has it open, or choose another output folder"),
            new Known("operation not permitted", "permission denied", USUAL_REMEDY),
            new Known("name too long|filename.* too long", "the name is too long", "choose a shorter one for the output folder"));

    /** @param pattern what the machine says */
    private record Known(Pattern pattern, String reason, String remedy) {
        Known(String says, String reason, String remedy) {
            this(Pattern.compile(says, Pattern.CASE_INSENSITIVE), reason, remedy);
        }
    }

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
        String remedy = known(cause).map(Known::remedy).orElse(USUAL_REMEDY);
        return new InputException("cannot write " + file.getFileName() + ": " + reason(cause) + "; " + remedy, cause);
    }

    /** What is known of the reason, wherever in the chain of causes it stands. */
    private static Optional<Known> known(Throwable cause) {
        return Stream.iterate(cause, Objects::nonNull, Throwable::getCause).filter(e -> e.getMessage() != null)
                .flatMap(e -> KNOWN.stream().filter(k -> k.pattern.matcher(e.getMessage()).find())).findFirst();
    }

    /** The cause in a few words, without the absolute path that file-system exceptions carry. */
    static String reason(Exception cause) {
        Optional<Known> known = known(cause);
        if (known.isPresent()) {
            return known.get().reason;
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
