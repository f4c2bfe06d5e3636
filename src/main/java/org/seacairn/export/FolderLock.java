package org.seacairn.export;

import java.io.Closeable;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.seacairn.InputException;

/**
 * Keeps two runs out of one folder: a file beside it that one process at a time holds locked. The
 * operating system lets go of the lock when the process dies, however it dies.
 */
final class FolderLock implements Closeable {
    /**
     * Locks of this process. POSIX drops a process's lock on a file as soon as the process closes
     * any handle to it, so a second attempt from within must not even open the file.
     */
    private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

    private final Path file;
    private final FileChannel channel;

    private FolderLock(Path file, FileChannel channel) {
        this.file = file;
        this.channel = channel;
    }

    /**
     * @param file the lock file; made here, removed on close
     * @param folder what it guards, for messages
     * @throws InputException if another run holds the lock, or the lock file cannot be made
     */
    static FolderLock acquire(Path file, Path folder) {
        if (!HELD.add(file)) {
            throw busy(folder);
        }
        try {
            FileChannel channel = open(file);
            if (channel != null) {
                return new FolderLock(file, channel);
            }
        } catch (IOException e) {
            HELD.remove(file);
            throw OutputFile.cannotWrite(folder, e);
        }
        HELD.remove(file);
        throw busy(folder);
    }

    /** The locked file, or null: another process holds it. */
    private static FileChannel open(Path file) throws IOException {
        while (true) {
            try {
                Files.createFile(file);
            } catch (FileAlreadyExistsException e) {
                // Left by a run that was killed, or in use: the lock tells which.
            }
            FileChannel channel = null;
            boolean keep = false;
            try {
                Object before = identity(file);
                channel = FileChannel.open(file, StandardOpenOption.WRITE);
                if (channel.tryLock() == null) {
                    return null;
                }
                // A run removes its lock file as it ends. If that happened in between, this lock is
                // on a file that nobody else can see, and the next run would lock a new one.
                keep = Objects.equals(before, identity(file));
                if (keep) {
                    return channel;
                }
            } catch (NoSuchFileException e) {
                // Removed in between: start over.
            } finally {
                if (channel != null && !keep) {
                    channel.close();
                }
            }
        }
    }

    /** Device and inode; null where the file system has none, and there an open file keeps its name. */
    private static Object identity(Path file) throws IOException {
        return Files.readAttributes(file, BasicFileAttributes.class).fileKey();
    }

    private static InputException busy(Path folder) {
        return new InputException(folder.getFileName()
                + ": another run is writing this folder; wait until it ends, or choose another output folder");
    }

    /** Removes the file, then lets go. */
    @Override
    public void close() throws IOException {
        try {
            Files.deleteIfExists(file);
        } finally {
            channel.close();
            HELD.remove(file);
        }
    }
}
