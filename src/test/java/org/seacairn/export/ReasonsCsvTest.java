package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReasonsCsvTest {
    @TempDir Path folder;

    @Test
    void oneLineAReason() throws IOException {
        Path file = folder.resolve("reasons.csv");
        ReasonsCsv.write(file, List.of(
                new ReasonCount("no-depth", 1, 2500, 1.0, 0),
                new ReasonCount("keep-off:lanes, \"inner\"", 1L << 31, 3_000_000_000L, 1200000.0000004, 17)));
        assertEquals("""
                reason,bit,cells,km2,alone_cells
                no-depth,1,2500,1.000000,0
                "keep-off:lanes, ""inner""\",2147483648,3000000000,1200000.000000,17
                """, Files.readString(file));
    }
}
