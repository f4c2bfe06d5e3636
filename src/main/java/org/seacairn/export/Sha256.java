package org.seacairn.export;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.seacairn.InputException;

/** The SHA-256 digest of a file (FIPS 180-4). */
public final class Sha256 {
    private static final int BUFFER_BYTES = 1 << 16;

    private Sha256() {}

    /**
     * Reads the file once, a buffer at a time.
     *
     * @return 64 lower-case hexadecimal digits
     * @throws InputException if the file cannot be read
     */
    public static String of(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] buffer = new byte[BUFFER_BYTES];
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                digest.update(buffer, 0, n);
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (IOException e) {
            throw new InputException(file.getFileName() + ": cannot be read (" + OutputFile.reason(e)
                    + "); check that the file is there and may be read", e);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
