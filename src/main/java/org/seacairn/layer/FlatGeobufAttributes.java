package org.seacairn.layer;

import java.math.BigInteger;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seacairn.InputException;
import org.seacairn.layer.FlatGeobufHeader.Column;

/**
 * Reads the properties of one FlatGeobuf feature: the number of a column and its value, again and again. What has no
 * value is left out; binary values are left out too. Problems are thrown without a place.
 */
final class FlatGeobufAttributes {
    private static final int BINARY = 14;

    private FlatGeobufAttributes() {}

    /** @param properties in little-endian order, or null for none */
    static Map<String, Object> of(ByteBuffer properties, List<Column> columns) {
        Map<String, Object> attributes = new LinkedHashMap<>();
        try {
            while (properties != null && properties.hasRemaining()) {
                int number = Short.toUnsignedInt(properties.getShort());
                if (number >= columns.size()) {
                    throw new InputException("it has a value of column " + (number + 1) + ", and the file has " + columns.size()
                            + " columns; the file is damaged, export it again");
                }
                Column column = columns.get(number);
                Object value = value(properties, column);
                if (column.type() != BINARY) {
                    attributes.put(column.name(), value);
                }
            }
        } catch (BufferUnderflowException e) {
            throw new InputException("its attributes are cut short; the file is damaged, export it again", e);
        }
        return Collections.unmodifiableMap(attributes);
    }

    private static Object value(ByteBuffer from, Column column) {
        return switch (column.type()) {
            case 0 -> (int) from.get();
            case 1 -> Byte.toUnsignedInt(from.get());
            case 2 -> from.get() != 0;
            case 3 -> (int) from.getShort();
            case 4 -> Short.toUnsignedInt(from.getShort());
            case 5 -> from.getInt();
            case 6 -> Integer.toUnsignedLong(from.getInt());
            case 7 -> from.getLong();
            case 8 -> unsigned(from.getLong());
            case 9 -> from.getFloat();
            case 10 -> from.getDouble();
            // Text, JSON and ISO 8601 dates.
            case 11, 12, 13 -> FlatTable.utf8(bytes(from));
            case BINARY -> bytes(from);
            default -> throw new InputException("column \"" + XmlElements.shown(column.name()) + "\" is of no known type (" + column.type()
                    + "); export the file again");
        };
    }

    private static Number unsigned(long bits) {
        return bits >= 0 ? (Number) bits : new BigInteger(Long.toUnsignedString(bits));
    }

    private static ByteBuffer bytes(ByteBuffer from) {
        long length = Integer.toUnsignedLong(from.getInt());
        if (length > from.remaining()) {
            throw new BufferUnderflowException();
        }
        ByteBuffer bytes = from.slice(from.position(), (int) length);
        from.position(from.position() + (int) length);
        return bytes;
    }
}
