package org.seacairn.layer;

import io.jhdf.checksum.ChecksumUtils;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.Deflater;

/**
 * HDF5 files written by hand after the HDF5 File Format Specification 3.0: superblock 2, object headers of
 * version 1 (which no checksum guards), contiguous or chunked data with filters. What the library at hand
 * does not write.
 */
final class HandHdf {
    static final byte[] FLOAT = bytes(20).put(new byte[] {0x11, 0x20, 31, 0}).putInt(4).putShort((short) 0).putShort((short) 32)
            .put(new byte[] {23, 8, 0, 23}).putInt(127).array();
    static final byte[] DOUBLE = bytes(20).put(new byte[] {0x11, 0x20, 63, 0}).putInt(8).putShort((short) 0).putShort((short) 64)
            .put(new byte[] {52, 11, 0, 52}).putInt(1023).array();
    static final byte[] BIG_ENDIAN_FLOAT = bytes(20).put(new byte[] {0x11, 0x21, 31, 0}).putInt(4).putShort((short) 0).putShort((short) 32)
            .put(new byte[] {23, 8, 0, 23}).putInt(127).array();
    static final byte[] SHORT = whole(2, true);
    static final byte[] INT = whole(4, false);

    private static final long UNDEFINED = -1;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final Map<String, Long> root = new LinkedHashMap<>();
    private final Map<String, Long> inGroup = new LinkedHashMap<>();
    private String group = "";
    private Map<String, Object> ofGroup = Map.of();

    HandHdf() {
        out.writeBytes(new byte[48]);
    }

    private static ByteBuffer bytes(int count) {
        return ByteBuffer.allocate(count).order(ByteOrder.LITTLE_ENDIAN);
    }

    static byte[] whole(int size, boolean signed) {
        return bytes(12).put(new byte[] {0x10, (byte) (signed ? 8 : 0), 0, 0}).putInt(size).putShort((short) 0).putShort((short) (8 * size)).array();
    }

    static byte[] text(int size) {
        return bytes(8).put(new byte[] {0x13, 0, 0, 0}).putInt(size).array();
    }

    /** A compound type of version 3; each member is a name, an offset and a type. */
    static byte[] compound(int size, Object... members) {
        ByteBuffer type = bytes(1024).put((byte) 0x36).put((byte) (members.length / 3)).put(new byte[2]).putInt(size);
        for (int i = 0; i < members.length; i += 3) {
            type.put(((String) members[i]).getBytes(StandardCharsets.US_ASCII)).put((byte) 0).put((byte) (int) members[i + 1])
                    .put((byte[]) members[i + 2]);
        }
        byte[] used = new byte[type.position()];
        type.flip().get(used);
        return used;
    }

    /** What follows stands in a group of the root. */
    HandHdf group(String name, Map<String, Object> attributes) {
        group = name;
        ofGroup = attributes;
        return this;
    }

    static Map<String, Object> attributes(Object... namesAndValues) {
        Map<String, Object> attributes = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            attributes.put((String) namesAndValues[i], namesAndValues[i + 1]);
        }
        return attributes;
    }

    HandHdf contiguous(String name, byte[] type, long[] shape, byte[] data, Map<String, Object> attributes) {
        long address = out.size();
        out.writeBytes(data);
        byte[] layout = bytes(18).put((byte) 3).put((byte) 1).putLong(data.length == 0 ? UNDEFINED : address).putLong(data.length).array();
        return dataset(name, type, shape, layout, null, attributes);
    }

    /**
     * @param chunks stored bytes by offset, already filtered; a null is a chunk that was never written
     * @param mask filters that the chunks skip
     */
    HandHdf chunked(String name, byte[] type, long[] shape, int[] chunk, int elementBytes, int[] filters, Map<long[], byte[]> chunks,
            int mask, Map<String, Object> attributes) {
        int rank = shape.length;
        List<long[]> at = new ArrayList<>();
        List<Long> addresses = new ArrayList<>();
        List<Integer> sizes = new ArrayList<>();
        chunks.forEach((offset, stored) -> {
            if (stored != null) {
                at.add(offset);
                addresses.add((long) out.size());
                sizes.add(stored.length);
                out.writeBytes(stored);
            }
        });
        long tree = out.size();
        // Nodes have room for 64 children, used or not.
        ByteBuffer node = bytes(24 + 64 * (16 + 8 * rank + 8) + 16 + 8 * rank);
        node.put("TREE".getBytes(StandardCharsets.US_ASCII)).put((byte) 1).put((byte) 0).putShort((short) at.size()).putLong(UNDEFINED).putLong(UNDEFINED);
        for (int i = 0; i < at.size(); i++) {
            node.putInt(sizes.get(i)).putInt(mask);
            for (long offset : at.get(i)) {
                node.putLong(offset);
            }
            node.putLong(0).putLong(addresses.get(i));
        }
        // The last key is the first chunk beyond all.
        node.putInt(0).putInt(0).putLong((shape[0] + chunk[0] - 1) / chunk[0] * chunk[0]);
        out.writeBytes(node.array());
        ByteBuffer layout = bytes(11 + 4 * (rank + 1)).put((byte) 3).put((byte) 2).put((byte) (rank + 1)).putLong(tree);
        for (int size : chunk) {
            layout.putInt(size);
        }
        layout.putInt(elementBytes);
        ByteBuffer pipeline = bytes(8 + 16 * filters.length).put((byte) 1).put((byte) filters.length).put(new byte[6]);
        for (int id : filters) {
            pipeline.putShort((short) id).putShort((short) 0).putShort((short) 1).putShort((short) 1).putInt(id == ChunkFilters.SHUFFLE ? elementBytes : 6).putInt(0);
        }
        return dataset(name, type, shape, layout.array(), filters.length == 0 ? null : pipeline.array(), attributes);
    }

    private HandHdf dataset(String name, byte[] type, long[] shape, byte[] layout, byte[] pipeline, Map<String, Object> attributes) {
        List<Map.Entry<Integer, byte[]>> messages = new ArrayList<>();
        messages.add(Map.entry(1, space(shape)));
        messages.add(Map.entry(3, type));
        messages.add(Map.entry(8, layout));
        if (pipeline != null) {
            messages.add(Map.entry(11, pipeline));
        }
        attributes.forEach((key, value) -> messages.add(Map.entry(12, attribute(key, value))));
        (group.isEmpty() ? root : inGroup).put(name, header(messages));
        return this;
    }

    private static byte[] space(long... shape) {
        ByteBuffer space = bytes(8 + 8 * shape.length).put((byte) 1).put((byte) shape.length).put(new byte[6]);
        for (long length : shape) {
            space.putLong(length);
        }
        return space.array();
    }

    private static byte[] attribute(String name, Object value) {
        byte[] key = (name + "\0").getBytes(StandardCharsets.UTF_8);
        byte[] data = value instanceof String text ? text.getBytes(StandardCharsets.UTF_8) : doubles((double[]) value);
        byte[] type = value instanceof String ? text(data.length) : DOUBLE;
        byte[] space = value instanceof String ? space() : space(((double[]) value).length);
        return bytes(9 + key.length + type.length + space.length + data.length).put((byte) 3).put((byte) 0).putShort((short) key.length)
                .putShort((short) type.length).putShort((short) space.length).put((byte) 0).put(key).put(type).put(space).put(data).array();
    }

    /** Writes an object header of version 1 and returns its address. */
    private long header(List<Map.Entry<Integer, byte[]>> messages) {
        while (out.size() % 8 != 0) {
            out.write(0);
        }
        long address = out.size();
        int length = messages.stream().mapToInt(m -> 8 + (m.getValue().length + 7) / 8 * 8).sum();
        ByteBuffer header = bytes(16 + length).put((byte) 1).put((byte) 0).putShort((short) messages.size()).putInt(1).putInt(length).putInt(0);
        for (Map.Entry<Integer, byte[]> message : messages) {
            int padded = (message.getValue().length + 7) / 8 * 8;
            header.putShort((short) (int) message.getKey()).putShort((short) padded).putInt(0).put(message.getValue())
                    .put(new byte[padded - message.getValue().length]);
        }
        out.writeBytes(header.array());
        return address;
    }

    private long links(Map<String, Long> children, Map<String, Object> attributes) {
        List<Map.Entry<Integer, byte[]>> messages = new ArrayList<>();
        messages.add(Map.entry(2, bytes(18).put((byte) 0).put((byte) 0).putLong(UNDEFINED).putLong(UNDEFINED).array()));
        children.forEach((name, address) -> {
            byte[] key = name.getBytes(StandardCharsets.UTF_8);
            messages.add(Map.entry(6, bytes(11 + key.length).put((byte) 1).put((byte) 0).put((byte) key.length).put(key).putLong(address).array()));
        });
        attributes.forEach((name, value) -> messages.add(Map.entry(12, attribute(name, value))));
        return header(messages);
    }

    byte[] toBytes() {
        if (!inGroup.isEmpty()) {
            root.put(group, links(inGroup, ofGroup));
        }
        long rootAddress = links(root, Map.of());
        byte[] file = out.toByteArray();
        ByteBuffer superblock = bytes(48).put(new byte[] {(byte) 0x89, 'H', 'D', 'F', '\r', '\n', 0x1a, '\n', 2, 8, 8, 0})
                .putLong(0).putLong(UNDEFINED).putLong(file.length).putLong(rootAddress);
        ByteBuffer summed = superblock.duplicate().order(ByteOrder.LITTLE_ENDIAN).flip();
        superblock.putInt(ChecksumUtils.checksum(summed));
        System.arraycopy(superblock.array(), 0, file, 0, 48);
        return file;
    }

    static byte[] floats(float... values) {
        ByteBuffer data = bytes(4 * values.length);
        data.asFloatBuffer().put(values);
        return data.array();
    }

    static byte[] doubles(double... values) {
        ByteBuffer data = bytes(8 * values.length);
        data.asDoubleBuffer().put(values);
        return data.array();
    }

    static byte[] shorts(int... values) {
        ByteBuffer data = bytes(2 * values.length);
        for (int value : values) {
            data.putShort((short) value);
        }
        return data.array();
    }

    static byte[] shuffled(byte[] plain, int elementBytes) {
        byte[] planes = new byte[plain.length];
        int count = plain.length / elementBytes;
        for (int i = 0; i < count * elementBytes; i++) {
            planes[i % elementBytes * count + i / elementBytes] = plain[i];
        }
        return planes;
    }

    static byte[] deflated(byte[] plain) {
        Deflater deflater = new Deflater();
        deflater.setInput(plain);
        deflater.finish();
        byte[] room = new byte[plain.length + 100];
        int length = deflater.deflate(room);
        byte[] packed = java.util.Arrays.copyOf(room, length);
        deflater.end();
        return packed;
    }
}
