package org.seacairn.sample;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The committed sample is what the generator writes, and stays small. */
class SampleCoastTest {
    private static final Path COMMITTED = Path.of("sample-layers");
    private static final List<String> BY_HAND = List.of("README.md", "layouts.png", "report.png", "plan.yaml", "module.yaml", "proposal.csv", "earlier-drops.csv");
    private static final long MOST_BYTES = 3_000_000;
    private static final int TILES = 5 * 4;
    private static final int TILE_BYTES = 256 * 256 * 4;

    @TempDir
    private static Path fresh;

    @BeforeAll
    static void generate() throws Exception {
        SampleCoast.write(fresh);
    }

    @Test
    void generatorWritesEachFileAsCommitted() throws Exception {
        for (Path file : files(fresh)) {
            byte[] expected = Files.readAllBytes(file);
            byte[] committed = Files.readAllBytes(COMMITTED.resolve(file.getFileName()));
            if (!Arrays.equals(expected, committed) && file.toString().endsWith(".tif")) {
                // Another build of zlib may pack the same cells otherwise.
                expected = tiles(expected);
                committed = tiles(committed);
            }
            assertArrayEquals(expected, committed,
                    file.getFileName() + ": run the generator (sample-layers/README.md)");
        }
    }

    @Test
    void folderHoldsTheGeneratedFilesAndThoseWrittenByHand() throws IOException {
        List<String> expected = Stream.concat(names(fresh), BY_HAND.stream()).sorted().toList();
        assertEquals(expected, names(COMMITTED).sorted().toList());
    }

    @Test
    void folderIsSmall() throws IOException {
        long bytes = 0;
        for (Path file : files(COMMITTED)) {
            bytes += Files.size(file);
        }
        assertTrue(bytes < MOST_BYTES, bytes + " bytes in sample-layers");
    }

    /** Files only: a folder of results may stand beside them. */
    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(Files::isRegularFile).sorted().toList();
        }
    }

    private static Stream<String> names(Path folder) throws IOException {
        return files(folder).stream().map(file -> file.getFileName().toString());
    }

    /** The cells of a GeoTIFF of {@link GeoTiffFile}, whose tiles follow its header of 8 bytes one after another. */
    private static byte[] tiles(byte[] tiff) throws DataFormatException {
        byte[] cells = new byte[TILES * TILE_BYTES];
        int at = 8;
        for (int tile = 0; tile < TILES; tile++) {
            Inflater inflater = new Inflater();
            inflater.setInput(tiff, at, tiff.length - at);
            assertEquals(TILE_BYTES, inflater.inflate(cells, tile * TILE_BYTES, TILE_BYTES));
            at += (int) inflater.getBytesRead();
            at += at % 2;
            inflater.end();
        }
        return cells;
    }
}
