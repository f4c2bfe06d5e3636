package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.InputException;

class OutputFileTest {
    @TempDir Path folder;

    @Test
    void textIsUtf8WhateverTheMachine() throws IOException {
        Path file = folder.resolve("a.txt");
        OutputFile.text(file, out -> out.write("é海"));
        assertEquals("é海", Files.readString(file));
    }

    /** The kernel's own full disk. */
    @Test
    void fullDiskIsNamed() {
        Path full = Path.of("/dev/full");
        assumeTrue(Files.isWritable(full));
        InputException e = assertThrows(InputException.class, () -> OutputFile.text(full, out -> out.write("x")));
        assertEquals("cannot write full: no space left on the disk; free some and run again", e.getMessage());
    }

    @Test
    void missingFolderIsNamed() {
        InputException e = assertThrows(InputException.class,
                () -> OutputFile.text(folder.resolve("no/a.txt"), out -> out.write("x")));
        assertEquals("cannot write a.txt: no such file or folder; check space and permission", e.getMessage());
    }

    // Messages of Linux, Windows, SQLite and macOS, from memory.
    @ParameterizedTest
    @CsvSource({
        "No space left on device, no space left on the disk; free some and run again",
        "There is not enough space on the disk, no space left on the disk; free some and run again",
        "[SQLITE_FULL] Insertion failed because database is full (database or disk is full), no space left on the disk; free some and run again",
        "Disk quota exceeded, no space left on the disk; free some and run again",
        "/mnt/plan-out: Read-only file system, the disk is read-only; choose another output folder",
        "/mnt/plan-out: Operation not permitted, permission denied; check space and permission",
        "/mnt: Device or resource busy, 'it is in use, or is a disk of its own; close what has it open, or choose another output folder'",
        "/mnt/plan-out: File name too long, the name is too long; choose a shorter one for the output folder",
        "Input/output error, Input/output error; check space and permission",
    })
    void reasonComesFromTheCause(String text, String reason) {
        IOException cause = new IOException(text);
        InputException e = assertThrows(InputException.class, () -> OutputFile.bytes(folder.resolve("score.tif"), out -> {
            throw new UncheckedIOException(cause);
        }));
        assertEquals("cannot write score.tif: " + reason, e.getMessage());
        assertSame(cause, e.getCause().getCause());
    }
}
