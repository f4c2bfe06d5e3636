package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seacairn.InputException;

class OutputFolderTest {
    @TempDir Path folder;
    private Path target;

    @BeforeEach
    void nameTarget() {
        target = folder.resolve("plan-out");
    }

    /** A whole output, as a run leaves it: every file holds the generation. */
    static void fill(Path output, String generation) throws IOException {
        Files.createDirectories(output.resolve("styles"));
        Files.writeString(output.resolve("sites.csv"), generation);
        Files.writeString(output.resolve("styles/sites.sld"), generation);
        Files.writeString(output.resolve("run.json"), "{\"program\":\"Seacairn\",\"generation\":\"" + generation
                + "\",\"files\":[\"run.json\",\"sites.csv\",\"styles/sites.sld\"]}");
    }

    /** The generation of a folder, after checking that it is whole. */
    static String generation(Path output) throws IOException {
        String generation = Files.readString(output.resolve("sites.csv"));
        assertEquals(generation, Files.readString(output.resolve("styles/sites.sld")));
        assertTrue(Files.readString(output.resolve("run.json")).contains("\"generation\":\"" + generation + "\""));
        assertEquals(List.of("run.json", "sites.csv", "styles/sites.sld"), FormerOutput.filesIn(output));
        return generation;
    }

    private static void run(Path target, String generation) throws IOException {
        try (OutputFolder output = OutputFolder.stage(target)) {
            fill(output.path(), generation);
            output.commit();
        }
    }

    private List<String> entries() throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void firstRunMakesTheFolderAndItsParents() throws IOException {
        target = folder.resolve("a/b/plan-out");
        run(target, "1");
        assertEquals("1", generation(target));
    }

    @Test
    void nextRunReplacesTheFolderWhole() throws IOException {
        run(target, "1");
        run(target, "2");
        assertEquals("2", generation(target));
        assertEquals(List.of("plan-out"), entries());
    }

    @Test
    void emptyFolderIsReplaced() throws IOException {
        Files.createDirectory(target);
        run(target, "1");
        assertEquals("1", generation(target));
    }

    @Test
    void runThatDoesNotCommitLeavesTheFormerOutput() throws IOException {
        run(target, "1");
        try (OutputFolder output = OutputFolder.stage(target)) {
            fill(output.path(), "2");
            assertEquals("1", generation(target));
        }
        assertEquals("1", generation(target));
        assertEquals(List.of("plan-out"), entries());
    }

    @Test
    void writerThatFailsLeavesTheFormerOutput() throws IOException {
        run(target, "1");
        InputException e = assertThrows(InputException.class, () -> {
            try (OutputFolder output = OutputFolder.stage(target)) {
                fill(output.path(), "2");
                OutputFile.text(output.resolve("score.tif"), out -> {
                    throw new IOException("No space left on device");
                });
                output.commit();
            }
        });
        assertEquals("cannot write score.tif: no space left on the disk; free some and run again", e.getMessage());
        assertEquals("1", generation(target));
        assertEquals(List.of("plan-out"), entries());
    }

    @Test
    void formerOutputIsPutBackWhenTheNewOneCannotBeMovedIn() throws IOException {
        run(target, "1");
        try (OutputFolder output = OutputFolder.stage(target)) {
            assertThrows(InputException.class, () -> {
                // Nothing to move in: the second of the renames fails.
                Files.delete(output.path());
                output.commit();
            });
        }
        assertEquals("1", generation(target));
        assertEquals(List.of("plan-out"), entries());
    }

    /**
     * What a run that is killed leaves at each instant: before the renames, between the first two,
     * between the second and the third, while it deletes the former output. The last two have the
     * user make the folder by hand after a kill between the renames.
     */
    @ParameterizedTest
    @CsvSource({
        "old,     '',      new/2, old",
        "'',      old,     new,   old",
        "new,     old,     '',    new",
        "new,     '',      old/1, new",
        "empty,   old,     new,   old",
        "desktop, old,     '',    old",
    })
    void nextRunPutsRightWhatAKillLeft(String inPlace, String former, String scrap, String expected) throws IOException {
        leave(target, inPlace);
        leave(folder.resolve(".plan-out.seacairn-former"), former);
        leave(folder.resolve(".plan-out.seacairn-tmp-1"), scrap);
        leave(folder.resolve(".plan-out.seacairn-tmp-" + ProcessHandle.current().pid()), scrap);
        Files.createFile(folder.resolve(".plan-out.seacairn-lock"));

        OutputFolder.stage(target).close();

        assertEquals(expected, generation(target));
        assertEquals(List.of("plan-out"), entries());
    }

    private static void leave(Path place, String what) throws IOException {
        switch (what) {
            case "" -> { }
            case "empty" -> Files.createDirectory(place);
            case "desktop" -> Files.createFile(Files.createDirectory(place).resolve(".DS_Store"));
            case "old", "new" -> fill(place, what);
            case "new/2" -> {
                fill(place, "new");
                Files.delete(place.resolve("run.json"));
            }
            case "old/1" -> {
                fill(place, "old");
                Files.delete(place.resolve("sites.csv"));
            }
            default -> throw new IllegalArgumentException(what);
        }
    }

    @Test
    void scrapOfOtherOutputsIsLeftAlone() throws IOException {
        Path other = Files.createDirectory(folder.resolve(".plan-out-2.seacairn-tmp-1"));
        run(target, "1");
        assertTrue(Files.exists(other));
    }

    @Test
    void folderOfSomeoneElseIsRefused() throws IOException {
        Files.writeString(Files.createDirectory(target).resolve("thesis.tex"), "mine");
        InputException e = assertThrows(InputException.class, () -> OutputFolder.stage(target));
        assertEquals("plan-out: holds files and no run.json of Seacairn, so it is not a former output;"
                + " empty it, or choose another output folder", e.getMessage());
        assertEquals(List.of("plan-out"), entries());
        assertEquals("mine", Files.readString(target.resolve("thesis.tex")));
    }

    @Test
    void folderOfSomeoneElseIsRefusedBeforeAKilledRunIsPutRight() throws IOException {
        Files.writeString(Files.createDirectory(target).resolve("thesis.tex"), "mine");
        Path former = folder.resolve(".plan-out.seacairn-former");
        fill(former, "old");
        assertThrows(InputException.class, () -> OutputFolder.stage(target));
        assertEquals("old", generation(former));
    }

    @ParameterizedTest
    @ValueSource(strings = {"{}", "[]", "", "{\"program\":\"Other\",\"files\":[\"run.json\"]}", "{\"program\":", "\u0000"})
    void runJsonOfAnotherProgramIsRefused(String runJson) throws IOException {
        Files.writeString(Files.createDirectory(target).resolve("run.json"), runJson);
        InputException e = assertThrows(InputException.class, () -> OutputFolder.stage(target));
        assertTrue(e.getMessage().startsWith("plan-out: holds files and no run.json of Seacairn"), e.getMessage());
    }

    @Test
    void filesThatPeopleAddedAreNamedAndKept() throws IOException {
        run(target, "1");
        for (String name : List.of("a.qgz", "b.txt", "c.txt", "styles/d.txt", "e.txt")) {
            Files.createFile(target.resolve(name));
        }
        InputException e = assertThrows(InputException.class, () -> OutputFolder.stage(target));
        assertEquals("plan-out: holds a.qgz, b.txt, c.txt, 2 more, which Seacairn did not write and would delete;"
                + " move that elsewhere, or choose another output folder", e.getMessage());
    }

    @Test
    void linkThatPeopleAddedIsNamedAndItsFolderKept() throws IOException {
        run(target, "1");
        Path elsewhere = Files.createDirectory(folder.resolve("elsewhere"));
        Files.createSymbolicLink(target.resolve("link"), elsewhere);
        InputException e = assertThrows(InputException.class, () -> OutputFolder.stage(target));
        assertTrue(e.getMessage().startsWith("plan-out: holds link, which Seacairn did not write"), e.getMessage());
        assertTrue(Files.exists(elsewhere));
    }

    @Test
    void fileAddedDuringTheRunIsKept() throws IOException {
        run(target, "1");
        try (OutputFolder output = OutputFolder.stage(target)) {
            fill(output.path(), "2");
            Files.createFile(target.resolve("notes.txt"));
            assertThrows(InputException.class, output::commit);
        }
        assertTrue(Files.exists(target.resolve("notes.txt")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"sites.csv.aux.xml", "sites.csv-wal", ".DS_Store", "styles/Thumbs.db"})
    void sidecarsOfProgramsThatShowTheOutputAreNotInTheWay(String name) throws IOException {
        run(target, "1");
        Files.createFile(target.resolve(name));
        run(target, "2");
        assertEquals("2", generation(target));
    }

    @Test
    void fileInPlaceOfTheFolderIsRefused() throws IOException {
        Files.createFile(target);
        InputException e = assertThrows(InputException.class, () -> OutputFolder.stage(target));
        assertEquals("plan-out: is a file; choose a folder for the output", e.getMessage());
    }

    @Test
    void rootIsRefused() {
        InputException e = assertThrows(InputException.class, () -> OutputFolder.stage(folder.getRoot()));
        assertTrue(e.getMessage().endsWith("is the root of a file system; choose a folder for the output"), e.getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "..", "../x/.."})
    void currentFolderIsRefused(String name) {
        InputException e = assertThrows(InputException.class, () -> OutputFolder.stage(Path.of(name)));
        assertTrue(e.getMessage().endsWith(": is, or holds, the current folder, and would be replaced; go elsewhere, or choose another output folder"),
                e.getMessage());
    }

    @Test
    void secondCloseDoesNothing() throws IOException {
        run(target, "1");
        OutputFolder output = OutputFolder.stage(target);
        output.close();
        try (OutputFolder next = OutputFolder.stage(target)) {
            output.close();
            assertTrue(Files.isDirectory(next.path()));
            assertEquals("the output was closed before it was committed", assertThrows(IllegalStateException.class, output::commit).getMessage());
        }
    }

    @Test
    void folderInsideAFileCannotBeMade() throws IOException {
        Files.createFile(target);
        InputException e = assertThrows(InputException.class, () -> OutputFolder.stage(target.resolve("x")));
        assertTrue(e.getMessage().startsWith("cannot write x: "), e.getMessage());
    }

    @Test
    void folderThatMayNotBeWrittenIsNamed() throws IOException {
        run(target, "1");
        assumeFalse(System.getProperty("os.name").startsWith("Windows"));
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("r-xr-xr-x"));
        try {
            // A superuser may write everywhere.
            assumeFalse(Files.isWritable(folder));
            InputException e = assertThrows(InputException.class, () -> OutputFolder.stage(target));
            assertEquals("cannot write plan-out: permission denied; check space and permission", e.getMessage());
        } finally {
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
        }
    }

    @Test
    void linkGoesOnPointingToTheOutput() throws IOException {
        Path disk = Files.createDirectory(folder.resolve("disk"));
        Path link = Files.createSymbolicLink(folder.resolve("link"), disk.resolve("plan-out"));
        run(link, "1");
        run(link, "2");
        assertTrue(Files.isSymbolicLink(link));
        assertEquals("2", generation(disk.resolve("plan-out")));
    }

    @Test
    void linkToItselfIsRefused() throws IOException {
        Path link = Files.createSymbolicLink(folder.resolve("link"), folder.resolve("link"));
        InputException e = assertThrows(InputException.class, () -> OutputFolder.stage(link));
        assertEquals("link: links to itself; choose a folder for the output", e.getMessage());
    }

    @Test
    void secondRunInTheSameProcessIsTurnedAway() throws IOException {
        try (OutputFolder first = OutputFolder.stage(target)) {
            for (int i = 0; i < 2; i++) {
                InputException e = assertThrows(InputException.class, () -> OutputFolder.stage(target));
                assertEquals("plan-out: another run is writing this folder; wait until it ends,"
                        + " or choose another output folder", e.getMessage());
            }
            assertTrue(Files.isDirectory(first.path()));
        }
        OutputFolder.stage(target).close();
    }

    @Test
    void secondRunInAnotherProcessIsTurnedAway() throws Exception {
        try (OutputFolder first = OutputFolder.stage(target)) {
            Process second = KillLoop.start(target);
            assertTrue(second.waitFor(30, TimeUnit.SECONDS));
            assertEquals("InputException: plan-out: another run is writing this folder; wait until it ends,"
                    + " or choose another output folder\n", new String(second.getInputStream().readAllBytes()));
            assertTrue(Files.isDirectory(first.path()));
        }
    }

    @Test
    void lockThatSomeoneElseHoldsOnTheFileIsRespected() throws IOException {
        Path lock = folder.resolve(".plan-out.seacairn-lock");
        try (FileChannel held = FileChannel.open(lock, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            held.lock();
            assertThrows(RuntimeException.class, () -> OutputFolder.stage(target));
        }
        assertFalse(Files.exists(target));
    }

    @Test
    void outputThatDoesNotListItsFilesIsOurOwnMistake() throws IOException {
        try (OutputFolder output = OutputFolder.stage(target)) {
            fill(output.path(), "1");
            Files.createFile(output.resolve("late.txt"));
            IllegalStateException e = assertThrows(IllegalStateException.class, output::commit);
            assertEquals("run.json must be written last", e.getMessage());
        }
        assertFalse(Files.exists(target));
    }

    @Test
    void outputWithoutRunJsonIsOurOwnMistake() throws IOException {
        run(target, "1");
        try (OutputFolder output = OutputFolder.stage(target)) {
            IllegalStateException e = assertThrows(IllegalStateException.class, output::commit);
            assertEquals("run.json must be written before the output is committed", e.getMessage());
        }
        assertEquals("1", generation(target));
    }
}
