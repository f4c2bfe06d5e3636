package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.InputException;

/** What readers take beside a layer must lie beside it: a plan is held to its folder, and no link leads a side file out. */
class RefusedLinksTest {
    @TempDir
    private Path root;

    private Path folder;
    private Path elsewhere;

    @BeforeEach
    void twoFolders() throws IOException {
        folder = Files.createDirectory(root.resolve("plan"));
        elsewhere = Files.createDirectory(root.resolve("elsewhere"));
    }

    @ParameterizedTest
    @CsvSource({"SHAPEFILE, a.prj, a.shp", "SHAPEFILE, a.dbf, a.shp", "SHAPEFILE, a.cpg, a.dbf", "ASCII_GRID, a.prj, a.asc", "GEOTIFF, a.tfw, a.tif",
        "GEOTIFF, a.prj, a.tif", "GEOTIFF, a.tif.ovr, a.tif"})
    void aSideFileThatIsALinkIntoAnotherFolder(AnyFormat format, String side, String main) throws IOException {
        Path file = format.write(folder);
        Path moved = elsewhere.resolve(side);
        if (Files.exists(folder.resolve(side))) {
            Files.move(folder.resolve(side), moved);
        } else {
            Files.writeString(moved, "10\n0\n0\n-10\n5\n5\n");
        }
        Files.createSymbolicLink(folder.resolve(side), moved);
        assertTold(side + ", the file: is a link into another folder; put the file itself beside " + main, file);
    }

    @ParameterizedTest
    @CsvSource({"SHAPEFILE, a.prj", "SHAPEFILE, a.dbf", "SHAPEFILE, a.cpg"})
    void aSideFileThatIsAFolderOrALinkToNothing(AnyFormat format, String side) throws IOException {
        Path file = format.write(folder);
        Files.delete(folder.resolve(side));
        Files.createDirectory(folder.resolve(side));
        assertTold(side + ", the file: is no file that can be read; put a file in its place, or take it away", file);
        Files.delete(folder.resolve(side));
        Files.createSymbolicLink(folder.resolve(side), elsewhere.resolve("gone"));
        assertTold(side + ", the file: is no file that can be read; put a file in its place, or take it away", file);
    }

    private static void assertTold(String expected, Path file) {
        assertEquals(expected, assertThrows(InputException.class, () -> AnyFormat.read(file)).getMessage());
    }

    /** Whoever may link the layer itself, by --allow-outside, links its side files to beside it. */
    @Test
    void linksThatStayTogetherAreFollowed() throws IOException {
        AnyFormat.SHAPEFILE.write(elsewhere);
        for (String name : AnyFormat.SHAPEFILE.files) {
            Files.createSymbolicLink(folder.resolve(name), elsewhere.resolve(name));
        }
        AnyFormat.read(folder.resolve("a.shp"));
        Files.delete(folder.resolve("a.prj"));
        Files.writeString(folder.resolve("crs.txt"), AnyFormat.WGS84);
        Files.createSymbolicLink(folder.resolve("a.prj"), folder.resolve("crs.txt"));
        AnyFormat.read(folder.resolve("a.shp"));
    }
}
