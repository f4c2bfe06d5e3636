package org.seacairn.layer;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * How a binary file stores one number, and where in an element that may hold more than it.
 *
 * @param bytes of the number: 1, 2, 4 or 8; of a FLOAT 4 or 8
 * @param offset of the number in its element, bytes
 * @param elementBytes from one element to the next
 */
record StoredNumber(Form form, int bytes, ByteOrder order, int offset, int elementBytes) {
    enum Form { SIGNED, UNSIGNED, FLOAT }

    StoredNumber(Form form, int bytes, ByteOrder order) {
        this(form, bytes, order, 0, bytes);
    }

    /** This number as a member of a larger element. */
    StoredNumber within(int atOffset, int ofElementBytes) {
        return new StoredNumber(form, bytes, order, atOffset, ofElementBytes);
    }

    /**
     * The number of one element.
     *
     * @param from the elements, in this number's byte order
     * @param element counted from the buffer's start
     */
    double get(ByteBuffer from, int element) {
        int at = element * elementBytes + offset;
        if (form == Form.FLOAT) {
            return bytes == 4 ? from.getFloat(at) : from.getDouble(at);
        }
        boolean signed = form == Form.SIGNED;
        return switch (bytes) {
            case 1 -> signed ? from.get(at) : Byte.toUnsignedInt(from.get(at));
            case 2 -> signed ? from.getShort(at) : Short.toUnsignedInt(from.getShort(at));
            case 4 -> signed ? from.getInt(at) : Integer.toUnsignedLong(from.getInt(at));
            default -> signed || from.getLong(at) >= 0 ? from.getLong(at) : from.getLong(at) + 0x1p64;
        };
    }
}
