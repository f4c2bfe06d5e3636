package org.seacairn.layer;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/** Writes tiny shapefiles byte by byte, so that a test can also write wrong ones. */
final class ShapefileFixture {
    private final int type;
    private final ByteArrayOutputStream records = new ByteArrayOutputStream();
    private int count;

    ShapefileFixture(int type) {
        this.type = type;
    }

    /** A record with these bytes as its content. */
    ShapefileFixture record(byte[] content) {
        ByteBuffer header = ByteBuffer.allocate(8).putInt(++count).putInt(content.length / 2);
        records.writeBytes(header.array());
        records.writeBytes(content);
        return this;
    }

    ShapefileFixture nullShape() {
        return record(little(4).putInt(0).array());
    }

    /** A point of the given type; z and m, where the type has them, are 7. */
    ShapefileFixture point(int pointType, double x, double y) {
        int extra = pointType == 1 ? 0 : pointType == 21 ? 1 : 2;
        ByteBuffer content = little(20 + 8 * extra).putInt(pointType).putDouble(x).putDouble(y);
        for (int i = 0; i < extra; i++) {
            content.putDouble(7);
        }
        return record(content.array());
    }

    ShapefileFixture multiPoint(int multiType, double... xy) {
        int n = xy.length / 2;
        ByteBuffer content = little(40 + 16 * n + tail(multiType, n)).putInt(multiType).position(36).putInt(n);
        return record(put(content, xy).array());
    }

    /** Lines or rings of the given type, one array of x, y a part; z and m are 0. */
    ShapefileFixture parts(int partsType, double[]... parts) {
        int n = 0;
        for (double[] part : parts) {
            n += part.length / 2;
        }
        ByteBuffer content = little(44 + 4 * parts.length + 16 * n + tail(partsType, n))
                .putInt(partsType).position(36).putInt(parts.length).putInt(n);
        int start = 0;
        for (double[] part : parts) {
            content.putInt(start);
            start += part.length / 2;
        }
        for (double[] part : parts) {
            put(content, part);
        }
        return record(content.array());
    }

    byte[] main() {
        ByteBuffer file = ByteBuffer.allocate(100 + records.size()).putInt(9994).position(24).putInt((100 + records.size()) / 2);
        file.order(ByteOrder.LITTLE_ENDIAN).putInt(1000).putInt(type).position(100).put(records.toByteArray());
        return file.array();
    }

    /** A dBASE table of one text column {@code NAME} and one number {@code DEPTH}; a row starting with * is deleted. */
    static byte[] table(int languageDriver, Charset charset, String[]... rows) {
        ByteBuffer file = ByteBuffer.allocate(97 + 31 * rows.length + 1).order(ByteOrder.LITTLE_ENDIAN);
        file.put((byte) 3).put((byte) 126).put((byte) 1).put((byte) 1).putInt(rows.length).putShort((short) 97).putShort((short) 31);
        file.position(29).put((byte) languageDriver).position(32);
        field(file, "NAME", 'C', 20, 0);
        field(file, "DEPTH", 'N', 10, 2);
        file.put((byte) 0x0d);
        for (String[] row : rows) {
            boolean deleted = row[0].startsWith("*");
            file.put((byte) (deleted ? '*' : ' '));
            file.put(padded(deleted ? row[0].substring(1) : row[0], charset, 20));
            file.put(padded(row[1], charset, 10));
        }
        return file.put((byte) 0x1a).array();
    }

    static Path write(Path folder, String name, byte[] bytes) throws IOException {
        return Files.write(folder.resolve(name), bytes);
    }

    private static void field(ByteBuffer file, String name, char type, int length, int decimals) {
        int start = file.position();
        file.put(name.getBytes(StandardCharsets.US_ASCII)).position(start + 11).put((byte) type);
        file.position(start + 16).put((byte) length).put((byte) decimals).position(start + 32);
    }

    private static byte[] padded(String text, Charset charset, int length) {
        byte[] field = new byte[length];
        Arrays.fill(field, (byte) ' ');
        byte[] bytes = text.getBytes(charset);
        System.arraycopy(bytes, 0, field, 0, bytes.length);
        return field;
    }

    private static int tail(int type, int n) {
        boolean z = type == 13 || type == 15 || type == 18;
        boolean m = type == 23 || type == 25 || type == 28;
        return z ? 2 * (16 + 8 * n) : m ? 16 + 8 * n : 0;
    }

    private static ByteBuffer put(ByteBuffer content, double[] xy) {
        for (double v : xy) {
            content.putDouble(v);
        }
        return content;
    }

    private static ByteBuffer little(int size) {
        return ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
    }
}
