package org.seacairn.layer;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

/** KMZ: a zip archive whose first {@code .kml} is the document (OGC 12-007r2, annex C). */
final class Kmz {
    /** Far above any drawing that people exchange, and small enough to hold what is read from it. */
    private static final long LARGEST_BYTES = 256L << 20;

    private Kmz() {}

    static boolean isArchive(Path file) {
        return file.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".kmz");
    }

    /** @throws org.seacairn.InputException if the archive is damaged or holds no KML; also on reading more than 256 MiB */
    static InputStream openDocument(Path file) throws IOException {
        return openDocument(file, LARGEST_BYTES);
    }

    static InputStream openDocument(Path file, long largestBytes) throws IOException {
        ZipFile zip;
        try {
            // Only for names that are not marked as UTF-8; no name fails in it.
            zip = new ZipFile(file.toFile(), StandardCharsets.ISO_8859_1);
        } catch (ZipException e) {
            throw VectorReader.problem(file, "the file", "is no whole zip archive (" + e.getMessage()
                    + "), as a KMZ is; copy or export it again, or rename it if it is KML", e);
        }
        try {
            ZipEntry entry = zip.stream().filter(Kmz::isDocument).findFirst()
                    .orElseThrow(() -> VectorReader.problem(file, "the file", "is an archive without a .kml in it; export it again"));
            return new Bounded(file, zip, zip.getInputStream(entry), entry.getName(), largestBytes);
        } catch (RuntimeException | IOException e) {
            zip.close();
            throw e;
        }
    }

    /** Archives from a Mac hold a stub of the same name beside each file. */
    private static boolean isDocument(ZipEntry entry) {
        return !entry.isDirectory() && entry.getName().toLowerCase(Locale.ROOT).endsWith(".kml") && !entry.getName().startsWith("__MACOSX/");
    }

    /** Ends in a refusal where a small archive unpacks to a flood; closes the archive. */
    private static final class Bounded extends FilterInputStream {
        private final Path file;
        private final ZipFile zip;
        private final String entry;
        private final long largestBytes;
        private long bytes;

        Bounded(Path file, ZipFile zip, InputStream in, String entry, long largestBytes) {
            super(in);
            this.file = file;
            this.zip = zip;
            this.entry = entry;
            this.largestBytes = largestBytes;
        }

        @Override
        public int read() throws IOException {
            int next = super.read();
            count(next < 0 ? 0 : 1);
            return next;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) throws IOException {
            int count = super.read(buffer, offset, length);
            count(Math.max(0, count));
            return count;
        }

        private void count(int more) {
            bytes += more;
            if (bytes > largestBytes) {
                throw VectorReader.problem(file, "entry \"" + XmlElements.shown(entry) + "\"", "unpacks to more than " + largestBytes
                        + " bytes; unpack it and give the .kml itself, or export less");
            }
        }

        @Override
        public void close() throws IOException {
            try (zip) {
                super.close();
            }
        }
    }
}
