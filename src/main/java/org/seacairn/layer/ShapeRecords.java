package org.seacairn.layer;

import java.io.BufferedInputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.seacairn.InputException;

/**
 * The records of a shapefile's main file, in turn (ESRI Shapefile Technical Description, July 1998).
 * Every length is checked against the file's size before it is believed. Of z and m
 * shapes x and y are read. Each record counts by its own shape type, also where a file mixes types.
 */
final class ShapeRecords implements Closeable {
    private static final int HEADER_BYTES = 100;
    private static final int FILE_CODE = 9994;
    private static final GeometryFactory GEOMETRIES = new GeometryFactory();

    private final Path file;
    private final InputStream in;
    private final long statedBytes;
    private final long actualBytes;
    private final int fileType;
    private long offset;
    private long recordOffset;
    private int number;
    private int otherTypes;

    ShapeRecords(Path file) throws IOException {
        this.file = file;
        actualBytes = Files.size(file);
        in = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
        ByteBuffer header = ByteBuffer.wrap(in.readNBytes(HEADER_BYTES));
        offset = HEADER_BYTES;
        if (header.limit() < HEADER_BYTES || header.getInt(0) != FILE_CODE) {
            in.close();
            throw VectorReader.problem(file, "header", "is no main file of a shapefile; export it again");
        }
        // Lengths count 16-bit words; read as unsigned, files may reach 8 GB.
        statedBytes = 2 * Integer.toUnsignedLong(header.getInt(24));
        fileType = header.order(ByteOrder.LITTLE_ENDIAN).getInt(32);
        if (statedBytes > actualBytes || statedBytes < HEADER_BYTES) {
            in.close();
            throw VectorReader.problem(file, "header", "states " + statedBytes + " bytes where the file has " + actualBytes
                    + "; it was cut short or not closed, copy or export it again");
        }
    }

    boolean hasNext() {
        return offset < statedBytes;
    }

    /** Number of the record last read, from 1. */
    int number() {
        return number;
    }

    /** Reads the next record: its geometry, or null for a null shape or one without points. */
    Geometry next() throws IOException {
        number++;
        recordOffset = offset;
        if (statedBytes - offset < 8) {
            throw problem("its header is cut short; copy or export the file again");
        }
        long bytes = 2 * Integer.toUnsignedLong(ByteBuffer.wrap(in.readNBytes(8)).getInt(4));
        offset += 8 + bytes;
        if (offset > statedBytes || bytes < 4 || bytes > Integer.MAX_VALUE - 8) {
            throw problem("states a length of " + bytes + " bytes where " + (statedBytes - recordOffset - 8)
                    + " are left; the file is damaged, export it again");
        }
        ByteBuffer content = ByteBuffer.wrap(in.readNBytes((int) bytes)).order(ByteOrder.LITTLE_ENDIAN);
        if (content.limit() < bytes) {
            throw problem("the file ends within it; copy it again");
        }
        int type = content.getInt();
        otherTypes += type == 0 || type == fileType ? 0 : 1;
        return switch (type) {
            case 0 -> null;
            case 1, 11, 21 -> point(content);
            case 8, 18, 28 -> multiPoint(content);
            case 3, 13, 23 -> lines(parts(content));
            case 5, 15, 25 -> polygons(parts(content));
            case 31 -> throw problem("is a multipatch, which is not read; convert it to polygons");
            default -> throw problem("has the unknown shape type " + type + "; the file is damaged, export it again");
        };
    }

    /** What a careful reader should know of the records read so far. */
    List<String> notes() {
        List<String> notes = new ArrayList<>();
        if (otherTypes > 0) {
            notes.add(otherTypes + " records are of another shape type than the file's " + fileType + "; each is read by its own");
        }
        if (actualBytes > statedBytes) {
            notes.add((actualBytes - statedBytes) + " bytes after the end that the header states are not read");
        }
        return notes;
    }

    private Geometry point(ByteBuffer content) {
        requireBytes(content, 4 + 16);
        return GEOMETRIES.createPoint(coordinates(content, 1)[0]);
    }

    private Geometry multiPoint(ByteBuffer content) {
        requireBytes(content, 4 + 32 + 4);
        content.position(36);
        int points = content.getInt();
        requireBytes(content, 40 + 16L * count(points, "points"));
        return points == 0 ? null : GEOMETRIES.createMultiPointFromCoords(coordinates(content, points));
    }

    /** The points of each part; no part if the shape is empty. */
    private List<Coordinate[]> parts(ByteBuffer content) {
        requireBytes(content, 4 + 32 + 8);
        content.position(36);
        int parts = content.getInt();
        int points = content.getInt();
        requireBytes(content, 44 + 4L * count(parts, "parts") + 16L * count(points, "points"));
        if (parts == 0 || points == 0) {
            return List.of();
        }
        int[] starts = new int[parts + 1];
        for (int i = 0; i < parts; i++) {
            starts[i] = content.getInt();
        }
        starts[parts] = points;
        List<Coordinate[]> lists = new ArrayList<>(parts);
        for (int i = 0; i < parts; i++) {
            if (starts[0] != 0 || starts[i] >= starts[i + 1] || starts[i + 1] > points) {
                throw problem("its part " + (i + 1) + " starts at point " + starts[i] + " of " + points
                        + " and ends at " + starts[i + 1] + "; the file is damaged, export it again");
            }
            lists.add(coordinates(content, starts[i + 1] - starts[i]));
        }
        return lists;
    }

    private Geometry lines(List<Coordinate[]> parts) {
        LineString[] lines = new LineString[parts.size()];
        for (int i = 0; i < lines.length; i++) {
            if (parts.get(i).length < 2) {
                throw problem("its part " + (i + 1) + " is a line of one point; delete it or add a second point");
            }
            lines[i] = GEOMETRIES.createLineString(parts.get(i));
        }
        return switch (lines.length) {
            case 0 -> null;
            case 1 -> lines[0];
            default -> GEOMETRIES.createMultiLineString(lines);
        };
    }

    private Geometry polygons(List<Coordinate[]> parts) {
        List<LinearRing> rings = new ArrayList<>(parts.size());
        for (Coordinate[] part : parts) {
            if (part.length < 4 || !part[0].equals2D(part[part.length - 1])) {
                throw problem("its ring " + (rings.size() + 1) + " of " + part.length
                        + " points is not closed or encloses nothing; a ring has 4 points or more, the last like the first");
            }
            rings.add(GEOMETRIES.createLinearRing(part));
        }
        return rings.isEmpty() ? null : RingNesting.polygons(rings, GEOMETRIES);
    }

    private Coordinate[] coordinates(ByteBuffer content, int count) {
        Coordinate[] coordinates = new Coordinate[count];
        for (int i = 0; i < count; i++) {
            double x = content.getDouble();
            double y = content.getDouble();
            if (!Double.isFinite(x) || !Double.isFinite(y)) {
                throw problem("a coordinate is (" + x + ", " + y + ") and not a place; correct or delete the feature");
            }
            coordinates[i] = new Coordinate(x, y);
        }
        return coordinates;
    }

    private int count(int stated, String of) {
        if (stated < 0) {
            throw problem("states " + stated + " " + of + "; the file is damaged, export it again");
        }
        return stated;
    }

    private void requireBytes(ByteBuffer content, long needed) {
        if (content.limit() < needed) {
            throw problem("its shape needs " + needed + " bytes and the record has " + content.limit()
                    + "; the file is damaged, export it again");
        }
    }

    private InputException problem(String whatAndRemedy) {
        return VectorReader.problem(file, "record " + number + " (byte " + recordOffset + ")", whatAndRemedy);
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
