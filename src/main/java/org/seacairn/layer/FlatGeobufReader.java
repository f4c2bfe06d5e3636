package org.seacairn.layer;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.layer.FlatGeobufHeader.Column;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * Reads FlatGeobuf (specification of major version 3: magic bytes, a header, an index that is passed over, features one
 * after the other). Coordinates are easting or longitude first. A feature's id is its place in the file, from 1; a file with an
 * index has them in the order of the index and not in that of its source.
 */
final class FlatGeobufReader implements VectorReader {
    /** "fgb", the major version, "fgb"; the patch level after them does not matter. */
    private static final byte[] MAGIC = {'f', 'g', 'b', 3, 'f', 'g', 'b'};
    private static final int VERSION_AT = 3;
    /** Room for a hundred thousand columns. */
    private static final int MOST_HEADER_BYTES = 16 << 20;

    @Override
    public String format() {
        return "FlatGeobuf";
    }

    @Override
    public List<String> extensions() {
        return List.of(".fgb");
    }

    @Override
    public VectorLayer read(LayerFile source) {
        Path file = source.file();
        Content content;
        try (DataInputStream in = new DataInputStream(new BufferedInputStream(Files.newInputStream(file)))) {
            content = new Content(in, Files.size(file));
            read(file, content);
        } catch (IOException e) {
            throw VectorReader.problem(file, "the file", "cannot be read (" + e.getMessage() + "); check the file", e);
        }
        List<String> notes = new ArrayList<>();
        Crs crs = LayerCrs.choose(source, () -> crs(file, content.header), notes);
        return new VectorLayer(source.label(), file, format(), crs, source.edges(), List.copyOf(content.features),
                Math.toIntExact(content.number - content.features.size()), List.copyOf(notes));
    }

    private static void read(Path file, Content content) throws IOException {
        try {
            content.read();
        } catch (InputException e) {
            throw VectorReader.problem(file, content.place, e.getMessage(), e);
        }
    }

    private static Crs crs(Path file, FlatGeobufHeader header) {
        try {
            return header.crsOrThrow();
        } catch (InputException e) {
            throw VectorReader.problem(file, "header", e.getMessage(), e);
        }
    }

    /** What has been read of one file so far. */
    private static final class Content {
        private final DataInputStream in;
        private final List<Feature> features = new ArrayList<>();
        private FlatGeobufHeader header;
        private long bytesLeft;
        private long number;
        private String place = "header";

        Content(DataInputStream in, long bytes) {
            this.in = in;
            this.bytesLeft = bytes;
        }

        void read() throws IOException {
            requireMagic();
            header = FlatGeobufHeader.parse(message("header", MOST_HEADER_BYTES));
            long index = header.indexBytes(bytesLeft);
            take(index);
            in.skipNBytes(index);
            while (header.features() == 0 ? bytesLeft > 0 : number < header.features()) {
                number++;
                place = "feature " + number;
                readFeature(FlatTable.root(message("feature", Integer.MAX_VALUE - 8)));
            }
            place = "end";
            if (bytesLeft > 0) {
                throw new InputException(bytesLeft + " bytes follow after the " + header.features()
                        + " features that its header states; the file is damaged, export it again");
            }
        }

        private void requireMagic() throws IOException {
            byte[] magic = in.readNBytes(MAGIC.length + 1);
            bytesLeft -= magic.length;
            for (int i = 0; i < MAGIC.length; i++) {
                if (i >= magic.length || i != VERSION_AT && magic[i] != MAGIC[i]) {
                    throw new InputException("is no FlatGeobuf; export it again");
                }
            }
            if (magic[VERSION_AT] != MAGIC[VERSION_AT]) {
                throw new InputException("is FlatGeobuf of version " + magic[VERSION_AT] + ", and version " + MAGIC[VERSION_AT]
                        + " can be read; export it again");
            }
        }

        private void readFeature(FlatTable feature) {
            FlatTable table = feature.table(0);
            Geometry geometry = table == null ? null : FlatGeobufGeometry.of(table, header.geometryType());
            if (geometry != null) {
                List<Column> own = FlatGeobufHeader.columns(feature, 2);
                features.add(new Feature(number, geometry,
                        FlatGeobufAttributes.of(feature.vector(1, Byte.BYTES), own.isEmpty() ? header.columns() : own)));
            }
        }

        /** The next message, after its size. */
        private byte[] message(String what, int most) throws IOException {
            take(Integer.BYTES);
            long bytes = Integer.toUnsignedLong(Integer.reverseBytes(in.readInt()));
            if (bytes > most) {
                throw new InputException("states " + bytes + " bytes for the " + what + ", which no file has; it is damaged, export it again");
            }
            take(bytes);
            return in.readNBytes((int) bytes);
        }

        /** Nothing is read, and no room made for it, that the file does not have. */
        private void take(long bytes) {
            if (bytes > bytesLeft) {
                throw new InputException("needs " + bytes + " bytes where the file has " + bytesLeft + " left; it is damaged or cut short, export it again");
            }
            bytesLeft -= bytes;
        }
    }
}
