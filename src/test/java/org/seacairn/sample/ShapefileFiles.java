package org.seacairn.sample;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/**
 * Writes polygons of one ring as a shapefile with one text attribute, after the ESRI Shapefile
 * Technical Description (July 1998): big-endian lengths, little-endian shapes, outer rings clockwise.
 */
final class ShapefileFiles {
    /** @param ring closed, clockwise */
    record Polygon(String text, List<Coordinate> ring) {}

    private static final int POLYGON = 5;
    private static final int FIELD_BYTES = 40;

    private ShapefileFiles() {}

    /** @param stem path without extension */
    static void write(Path folder, String stem, String column, List<Polygon> polygons, String wkt) throws IOException {
        Envelope all = new Envelope();
        polygons.forEach(polygon -> all.expandToInclude(envelope(polygon)));
        int shapeBytes = polygons.stream().mapToInt(polygon -> 8 + contentBytes(polygon)).sum();
        ByteBuffer shapes = header(100 + shapeBytes, all);
        ByteBuffer index = header(100 + 8 * polygons.size(), all);
        for (int i = 0; i < polygons.size(); i++) {
            int words = contentBytes(polygons.get(i)) / 2;
            index.order(ByteOrder.BIG_ENDIAN).putInt(shapes.position() / 2).putInt(words);
            shapes.order(ByteOrder.BIG_ENDIAN).putInt(i + 1).putInt(words);
            putContent(shapes.order(ByteOrder.LITTLE_ENDIAN), polygons.get(i));
        }
        Files.write(folder.resolve(stem + ".shp"), shapes.array());
        Files.write(folder.resolve(stem + ".shx"), index.array());
        Files.write(folder.resolve(stem + ".dbf"), table(column, polygons));
        Files.writeString(folder.resolve(stem + ".prj"), wkt);
        Files.writeString(folder.resolve(stem + ".cpg"), "UTF-8");
    }

    private static ByteBuffer header(int bytes, Envelope box) {
        ByteBuffer out = ByteBuffer.allocate(bytes).putInt(9994).position(24).putInt(bytes / 2)
                .order(ByteOrder.LITTLE_ENDIAN).putInt(1000).putInt(POLYGON);
        return putBox(out, box).position(100);
    }

    private static int contentBytes(Polygon polygon) {
        return 48 + 16 * polygon.ring().size();
    }

    private static void putContent(ByteBuffer out, Polygon polygon) {
        putBox(out.putInt(POLYGON), envelope(polygon)).putInt(1).putInt(polygon.ring().size()).putInt(0);
        polygon.ring().forEach(point -> out.putDouble(point.x).putDouble(point.y));
    }

    private static ByteBuffer putBox(ByteBuffer out, Envelope box) {
        return out.putDouble(box.getMinX()).putDouble(box.getMinY()).putDouble(box.getMaxX()).putDouble(box.getMaxY());
    }

    private static Envelope envelope(Polygon polygon) {
        Envelope box = new Envelope();
        polygon.ring().forEach(box::expandToInclude);
        return box;
    }

    /** A dBASE III table of one character field; its date is fixed. */
    private static byte[] table(String column, List<Polygon> polygons) {
        int headerBytes = 32 + 32 + 1;
        ByteBuffer out = ByteBuffer.allocate(headerBytes + polygons.size() * (1 + FIELD_BYTES) + 1)
                .order(ByteOrder.LITTLE_ENDIAN);
        out.put((byte) 3).put((byte) 126).put((byte) 1).put((byte) 1)
                .putInt(polygons.size()).putShort((short) headerBytes).putShort((short) (1 + FIELD_BYTES));
        out.position(32).put(column.getBytes(StandardCharsets.US_ASCII));
        out.position(32 + 11).put((byte) 'C').position(32 + 16).put((byte) FIELD_BYTES);
        out.position(headerBytes - 1).put((byte) 0x0D);
        for (Polygon polygon : polygons) {
            byte[] text = polygon.text().getBytes(StandardCharsets.UTF_8);
            byte[] field = Arrays.copyOf(text, FIELD_BYTES);
            Arrays.fill(field, text.length, FIELD_BYTES, (byte) ' ');
            out.put((byte) ' ').put(field);
        }
        return out.put((byte) 0x1A).array();
    }
}
