package org.seacairn.layer;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import org.seacairn.InputException;
import org.sqlite.ProgressHandler;
import org.sqlite.SQLiteConnection;
import org.sqlite.SQLiteLimits;

/**
 * Keeps a GeoPackage, whose views are programs, to the work that reading a file of its size can need. A view may recurse without end,
 * with rows or without, and make values of any length from nothing.
 */
final class GeoPackageBounds extends ProgressHandler {
    /** Values no longer than this are taken of any file. */
    private static final int USUAL_VALUE_BYTES = 1 << 20;
    private static final int STEPS_BETWEEN_LOOKS = 1 << 20;
    /** Some seconds, with sorting ten; a row of a table takes a few steps a column, and some 100 bytes. */
    private static final long LEAST_STEPS = 1L << 27;
    private static final long STEPS_PER_BYTE = 100;

    /** What is told of a query that was ended, which SQLite calls interrupted. */
    static final String TOO_MUCH = "its views ask for more work than a file of its size can need, perhaps without end; name a table, or export the view as one";

    private final Path file;
    private final long bytes;
    private long looksLeft;

    private GeoPackageBounds(Path file, long bytes) {
        this.file = file;
        this.bytes = bytes;
        this.looksLeft = (LEAST_STEPS + STEPS_PER_BYTE * bytes) / STEPS_BETWEEN_LOOKS;
    }

    /** Sets the bounds of everything that is asked over a connection. */
    static GeoPackageBounds set(Connection connection, Path file, long bytes) throws SQLException {
        GeoPackageBounds bounds = new GeoPackageBounds(file, bytes);
        ((SQLiteConnection) connection).setLimit(SQLiteLimits.SQLITE_LIMIT_LENGTH, (int) Math.max(USUAL_VALUE_BYTES, Math.min(bytes, Integer.MAX_VALUE)));
        try (Statement statement = connection.createStatement()) {
            // What the file's own views may call is what harms nobody.
            statement.execute("PRAGMA trusted_schema = OFF");
        }
        ProgressHandler.setHandler(connection, STEPS_BETWEEN_LOOKS, bounds);
        return bounds;
    }

    @Override
    protected int progress() {
        return --looksLeft < 0 ? 1 : 0;
    }

    /** @throws InputException if a table has more rows than the file has bytes */
    void requireRow(String table, long row) {
        if (row > bytes) {
            throw VectorReader.problem(file, "table \"" + table + "\"", "gives more rows than the file has bytes (" + bytes
                    + "), so it is a view without end; name a table, or export the view as one");
        }
    }
}
