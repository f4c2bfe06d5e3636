package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SqliteLibraryTest {
    @TempDir Path temporary;

    /** In a process of its own, since a library is loaded once. */
    @Test
    void nothingStaysInTheFolderForTemporaryFilesWhileItIsInUse() throws Exception {
        assumeFalse(System.getProperty("os.name").startsWith("Windows"), "a library in use cannot be deleted there");
        assertEquals("works, leaves []\n", run(temporary));
    }

    @Test
    void aFolderThatCannotTakeItIsNamed() throws Exception {
        Path missing = temporary.resolve("missing");
        assertTrue(run(missing).contains("InputException: SQLite's library cannot be unpacked to the folder for temporary files, " + missing
                + "; make room there, or name another folder with -Djava.io.tmpdir="));
    }

    private static String run(Path temporary) throws Exception {
        Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1",
                "-Djava.io.tmpdir=" + temporary, "-cp", System.getProperty("java.class.path"), Program.class.getName()).redirectErrorStream(true).start();
        return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }

    /** Loads and uses the library, and tells what lies about meanwhile. */
    static final class Program {
        private Program() {}

        public static void main(String[] args) throws Exception {
            SqliteLibrary.load();
            SqliteLibrary.load();
            try (Connection memory = DriverManager.getConnection("jdbc:sqlite::memory:");
                    Stream<Path> left = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
                memory.createStatement().execute("CREATE TABLE t (a)");
                List<String> names = left.map(path -> path.getFileName().toString()).filter(name -> !name.startsWith("hsperf")).toList();
                System.out.print("works, leaves " + names + "\n");
            }
        }
    }
}
