package org.seacairn.layer;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** FlatGeobuf files byte by byte (header.fbs and feature.fbs of the specification), right or wrong as a test wants them. */
final class FlatGeobufFixture {
    static final byte[] MAGIC = {'f', 'g', 'b', 3, 'f', 'g', 'b', 1};

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();

    /** A table by the number of each field; bytes, shorts, ints and longs are scalars, all else goes by offset. */
    static Map<Integer, Object> table(Object... fieldsAndValues) {
        Map<Integer, Object> table = new TreeMap<>();
        for (int i = 0; i < fieldsAndValues.length; i += 2) {
            table.put((Integer) fieldsAndValues[i], fieldsAndValues[i + 1]);
        }
        return table;
    }

    static Map<Integer, Object> epsg(int code) {
        return table(0, "EPSG", 1, code);
    }

    static Map<Integer, Object> column(String name, int type) {
        return table(0, name, 1, (byte) type);
    }

    static Map<Integer, Object> header(int geometryType, long features, List<Map<Integer, Object>> columns) {
        return table(2, (byte) geometryType, 7, columns, 8, features, 9, (short) 0, 10, epsg(4326));
    }

    static Map<Integer, Object> positions(double... xy) {
        return table(1, xy);
    }

    static Map<Integer, Object> rings(int[] ends, double... xy) {
        return table(0, ends, 1, xy);
    }

    /** The file's first bytes and its header. */
    static FlatGeobufFixture of(Map<Integer, Object> header) {
        FlatGeobufFixture file = new FlatGeobufFixture();
        file.out.writeBytes(MAGIC);
        return file.message(header);
    }

    FlatGeobufFixture feature(Map<Integer, Object> geometry, byte... properties) {
        return message(geometry == null ? table(1, properties) : table(0, geometry, 1, properties));
    }

    FlatGeobufFixture message(Map<Integer, Object> table) {
        byte[] message = bytes(table);
        return raw(ByteBuffer.allocate(4).order(ByteOrder.LITTLE_ENDIAN).putInt(message.length).array()).raw(message);
    }

    FlatGeobufFixture raw(byte... bytes) {
        out.writeBytes(bytes);
        return this;
    }

    byte[] toBytes() {
        return out.toByteArray();
    }

    static byte[] bytes(Map<Integer, Object> table) {
        Writer writer = new Writer();
        writer.into.position(4);
        writer.into.putInt(0, writer.table(table));
        byte[] bytes = new byte[writer.into.position()];
        writer.into.get(0, bytes);
        return bytes;
    }

    /** A file of one layer with every kind of geometry and attribute. */
    static byte[] everyKind() {
        List<Map<Integer, Object>> columns = new ArrayList<>();
        for (int type = 0; type <= 14; type++) {
            columns.add(column("c" + type, type));
        }
        ByteBuffer all = ByteBuffer.allocate(200).order(ByteOrder.LITTLE_ENDIAN);
        all.putShort((short) 0).put((byte) -1).putShort((short) 1).put((byte) -1).putShort((short) 2).put((byte) 1)
                .putShort((short) 3).putShort((short) -2).putShort((short) 4).putShort((short) -2).putShort((short) 5).putInt(-3)
                .putShort((short) 6).putInt(-3).putShort((short) 7).putLong(-4).putShort((short) 8).putLong(-4)
                .putShort((short) 9).putFloat(0.5f).putShort((short) 10).putDouble(0.1);
        for (int type = 11; type <= 14; type++) {
            byte[] text = (type == 12 ? "{\"a\": 1}" : type == 13 ? "2026-01-02T03:04:05Z" : "\u00c9pave").getBytes(StandardCharsets.UTF_8);
            all.putShort((short) type).putInt(text.length).put(text);
        }
        byte[] properties = new byte[all.position()];
        all.get(0, properties);
        double[] square = {0, 0, 9, 0, 9, 9, 0, 9, 0, 0};
        double[] holed = {0, 0, 9, 0, 9, 9, 0, 9, 0, 0, 2, 1, 3, 1, 3, 2, 2, 1};
        return of(header(0, 8, columns))
                .feature(with(6, (byte) 1, 1, new double[] {1, 2}, 2, new double[] {-5}), properties)
                .feature(with(6, (byte) 2, 1, new double[] {0, 0, 1, 1}))
                .feature(with(6, (byte) 3, 0, new int[] {5, 9}, 1, holed))
                .feature(with(6, (byte) 4, 1, new double[] {0, 0, 1, 1}))
                .feature(with(6, (byte) 5, 0, new int[] {2, 4}, 1, new double[] {0, 0, 1, 1, 2, 2, 3, 3}))
                .feature(with(6, (byte) 6, 7, List.of(positions(square), rings(new int[] {5, 9}, shifted(holed, 20)))))
                .feature(with(6, (byte) 7, 7, List.of(with(6, (byte) 1, 1, new double[] {5, 6}), with(6, (byte) 3, 1, square))))
                .feature(null, properties).toBytes();
    }

    private static double[] shifted(double[] xy, double by) {
        double[] shifted = xy.clone();
        for (int i = 0; i < shifted.length; i += 2) {
            shifted[i] += by;
        }
        return shifted;
    }

    private static Map<Integer, Object> with(Object... fieldsAndValues) {
        return table(fieldsAndValues);
    }

    /** Each object before those that it refers to, so that all offsets lead forward. */
    private static final class Writer {
        private final ByteBuffer into = ByteBuffer.allocate(100_000).order(ByteOrder.LITTLE_ENDIAN);

        int table(Map<Integer, Object> table) {
            int fields = table.keySet().stream().mapToInt(f -> f + 1).max().orElse(0);
            int layout = into.position();
            into.putShort((short) (4 + 2 * fields)).putShort((short) 0).position(layout + 4 + 2 * fields);
            int start = into.position();
            into.putInt(start - layout);
            Map<Integer, Object> later = new TreeMap<>();
            table.forEach((field, value) -> {
                into.putShort(layout + 4 + 2 * field, (short) (into.position() - start));
                if (value instanceof Byte scalar) {
                    into.put(scalar);
                } else if (value instanceof Short scalar) {
                    into.putShort(scalar);
                } else if (value instanceof Integer scalar) {
                    into.putInt(scalar);
                } else if (value instanceof Long scalar) {
                    into.putLong(scalar);
                } else {
                    later.put(into.position(), value);
                    into.putInt(0);
                }
            });
            into.putShort(layout + 2, (short) (into.position() - start));
            later.forEach((place, value) -> into.putInt(place, object(value) - place));
            return start;
        }

        @SuppressWarnings("unchecked")
        private int object(Object value) {
            if (value instanceof Map<?, ?> table) {
                return table((Map<Integer, Object>) table);
            }
            int start = into.position();
            if (value instanceof String text) {
                byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
                into.putInt(bytes.length).put(bytes);
            } else if (value instanceof byte[] bytes) {
                into.putInt(bytes.length).put(bytes);
            } else if (value instanceof int[] numbers) {
                into.putInt(numbers.length);
                for (int number : numbers) {
                    into.putInt(number);
                }
            } else if (value instanceof double[] numbers) {
                into.putInt(numbers.length);
                for (double number : numbers) {
                    into.putDouble(number);
                }
            } else {
                List<Map<Integer, Object>> tables = (List<Map<Integer, Object>>) value;
                into.putInt(tables.size());
                into.position(start + 4 + 4 * tables.size());
                Map<Object, Integer> written = new IdentityHashMap<>();
                for (int i = 0; i < tables.size(); i++) {
                    int place = start + 4 + 4 * i;
                    Map<Integer, Object> table = tables.get(i);
                    // One and the same table is written once.
                    into.putInt(place, (written.containsKey(table) ? written.get(table) : table(table)) - place);
                    written.put(table, place + into.getInt(place));
                }
            }
            return start;
        }
    }
}
