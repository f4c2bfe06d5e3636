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
        assertEquals("cannot write full: the disk is full; check space and permission", e.getMessage());
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
        "No space left on device, the disk is full",
        "There is not enough space on the disk, the disk is full",
        "[SQLITE_FULL] Insertion failed because database is full (database or disk is full), the disk is full",
        "Disk quota exceeded, the disk is full",
        "Input/output error, Input/output error",
    })
    void reasonComesFromTheCause(String text, String reason) {
        IOException cause = new IOException(text);
        InputException e = assertThrows(InputException.class, () -> OutputFile.bytes(folder.resolve("score.tif"), out -> {
            throw new UncheckedIOException(cause);
        }));
        assertEquals("cannot write score.tif: " + reason + "; check space and permission", e.getMessage());
        assertSame(cause, e.getCause().getCause());
    }
}
