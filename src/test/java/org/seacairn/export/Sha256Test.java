package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.InputException;

class Sha256Test {
    @TempDir Path folder;

    // NIST, example values for SHA-256 and the long message of a million letters a (from memory).
    @ParameterizedTest
    @CsvSource({
        "'', 1, e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
        "abc, 1, ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        "a, 1000000, cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0",
    })
    void digestIsThePublishedOne(String text, int times, String digest) throws IOException {
        assertEquals(digest, Sha256.of(Files.writeString(folder.resolve("a"), text.repeat(times))));
    }

    @Test
    void missingFileIsNamed() {
        InputException e = assertThrows(InputException.class, () -> Sha256.of(folder.resolve("lanes.shp")));
        assertEquals("lanes.shp: cannot be read (no such file or folder); check that the file is there and may be read",
                e.getMessage());
    }
}
