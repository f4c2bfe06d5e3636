package org.seacairn.layer;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.seacairn.InputException;
import org.sqlite.SQLiteJDBCLoader;

/**
 * SQLite's native library, a megabyte that the driver unpacks to the folder for temporary files and deletes as the process
 * ends, so that every killed run would leave one. Here its name is taken away once it is loaded; it stays with the process.
 */
public final class SqliteLibrary {
    private static final String FOLDER = "org.sqlite.tmpdir";
    private static boolean loaded;

    private SqliteLibrary() {}

    /**
     * Loads the library; to be called before the first connection.
     *
     * @throws InputException if it cannot be unpacked
     */
    public static synchronized void load() {
        if (loaded) {
            return;
        }
        try {
            Path folder = Files.createTempDirectory("seacairn-sqlite-");
            // Windows deletes no library in use: there the driver deletes it at the end, and then this its folder.
            folder.toFile().deleteOnExit();
            System.setProperty(FOLDER, folder.toString());
            try {
                SQLiteJDBCLoader.initialize();
                loaded = true;
            } finally {
                clear(folder);
            }
        } catch (Exception e) {
            // The driver throws Exception itself.
            throw new InputException("SQLite's library cannot be unpacked to the folder for temporary files, "
                    + System.getProperty("java.io.tmpdir") + "; make room there, or name another folder with -Djava.io.tmpdir=", e);
        }
    }

    private static void clear(Path folder) throws IOException {
        File[] unpacked = folder.toFile().listFiles();
        boolean all = true;
        for (File file : unpacked == null ? new File[0] : unpacked) {
            all &= file.delete();
        }
        if (all) {
            Files.deleteIfExists(folder);
        }
    }
}
