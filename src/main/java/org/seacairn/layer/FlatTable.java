package org.seacairn.layer;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import org.seacairn.InputException;

/**
 * One table of a FlatBuffers message ("FlatBuffers internals" in the documentation of that format), of which FlatGeobuf
 * needs only the reading. Every offset comes from the file, so none is followed without a look at the bounds; those to
 * other objects must lead forward, as the format has it, so that no message can hold itself. Problems are thrown without a
 * place.
 */
final class FlatTable {
    private final ByteBuffer message;
    private final int start;
    private final int layout;
    private final int layoutBytes;

    private FlatTable(ByteBuffer message, int start) {
        this.message = message;
        this.start = start;
        int back = at(start, Integer.BYTES).getInt(start);
        this.layout = Math.toIntExact(inside((long) start - back, 2 * Short.BYTES));
        this.layoutBytes = Short.toUnsignedInt(message.getShort(layout));
        inside(layout, layoutBytes);
    }

    /** The outermost table of a message. */
    static FlatTable root(byte[] message) {
        ByteBuffer buffer = ByteBuffer.wrap(message).order(ByteOrder.LITTLE_ENDIAN);
        if (message.length < Integer.BYTES) {
            throw damaged();
        }
        return new FlatTable(buffer, target(buffer, 0));
    }

    /** Bytes of the whole message. */
    int messageBytes() {
        return message.limit();
    }

    boolean has(int field) {
        return place(field) != 0;
    }

    int unsignedByte(int field, int absent) {
        int place = place(field);
        return place == 0 ? absent : Byte.toUnsignedInt(at(place, Byte.BYTES).get(place));
    }

    int unsignedShort(int field, int absent) {
        int place = place(field);
        return place == 0 ? absent : Short.toUnsignedInt(at(place, Short.BYTES).getShort(place));
    }

    int integer(int field, int absent) {
        int place = place(field);
        return place == 0 ? absent : at(place, Integer.BYTES).getInt(place);
    }

    /** 64 bits, of which the first is no sign to the format. */
    long bits64(int field, long absent) {
        int place = place(field);
        return place == 0 ? absent : at(place, Long.BYTES).getLong(place);
    }

    /** @return the text, or null where there is none */
    String text(int field) {
        ByteBuffer bytes = vector(field, Byte.BYTES);
        return bytes == null ? null : utf8(bytes);
    }

    /** @return a view of the elements of a vector, or null where there is none */
    ByteBuffer vector(int field, int bytesEach) {
        int place = place(field);
        if (place == 0) {
            return null;
        }
        int vector = target(message, place);
        long bytes = Integer.toUnsignedLong(at(vector, Integer.BYTES).getInt(vector)) * bytesEach;
        int from = Math.toIntExact(inside((long) vector + Integer.BYTES, bytes));
        return message.slice(from, (int) bytes).order(ByteOrder.LITTLE_ENDIAN);
    }

    /** @return the table, or null where there is none */
    FlatTable table(int field) {
        int place = place(field);
        return place == 0 ? null : new FlatTable(message, target(message, place));
    }

    /** How many tables a vector of tables has. */
    int tables(int field) {
        ByteBuffer offsets = vector(field, Integer.BYTES);
        return offsets == null ? 0 : offsets.limit() / Integer.BYTES;
    }

    /** One of the tables of a vector that has it. */
    FlatTable table(int field, int index) {
        int place = target(message, place(field)) + Integer.BYTES * (index + 1);
        return new FlatTable(message, target(message, place));
    }

    /** @throws InputException if the bytes are no UTF-8 */
    static String utf8(ByteBuffer bytes) {
        try {
            return StandardCharsets.UTF_8.newDecoder().decode(bytes).toString();
        } catch (CharacterCodingException e) {
            throw new InputException("a text is not in UTF-8, as the format has it; export the file again in UTF-8", e);
        }
    }

    static InputException damaged() {
        return new InputException("an offset leads out of its message, so the file is damaged; export it again");
    }

    /** Where a field's value stands, or 0 where it is left out. */
    private int place(int field) {
        int entry = 2 * Short.BYTES + Short.BYTES * field;
        int offset = entry + Short.BYTES > layoutBytes ? 0 : Short.toUnsignedInt(message.getShort(layout + entry));
        return offset == 0 ? 0 : Math.toIntExact(inside((long) start + offset, Byte.BYTES));
    }

    private ByteBuffer at(int place, int bytes) {
        inside(place, bytes);
        return message;
    }

    private long inside(long place, long bytes) {
        if (place < 0 || bytes < 0 || place + bytes > message.limit()) {
            throw damaged();
        }
        return place;
    }

    private static int target(ByteBuffer message, int place) {
        long offset = place + (long) Integer.BYTES > message.limit() ? 0 : Integer.toUnsignedLong(message.getInt(place));
        if (offset == 0 || place + offset + Integer.BYTES > message.limit()) {
            throw damaged();
        }
        return (int) (place + offset);
    }
}
