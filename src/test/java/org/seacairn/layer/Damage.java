package org.seacairn.layer;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;

/**
 * Seeded damage, mostly where it hurts: bits and bytes, lengths and addresses of every width and both byte orders, the two of them
 * exchanged, floating-point numbers at their limits, numbers in text blown up, pieces doubled, lost, exchanged or written over, and cuts.
 */
final class Damage {
    private static final long[] AWKWARD = {0, 1, -1, 0x7fff, 0xffff, 0x10000, 1_000_000, 1_000_000_000, 0x40000000, 0x7fffffff, 0x80000000L, 0xffffffffL,
        1_000_000_000_000L, Long.MAX_VALUE, Long.MIN_VALUE};
    private static final double[] NUMBERS = {Double.NaN, Double.POSITIVE_INFINITY, -Double.MAX_VALUE, Double.MIN_VALUE, 1e300, 1e9, -0.0, 90.000001, 180, 360.5};
    private static final String[] PIECES = {"NaN", "1e999", "-", "\"", "<", "&", "]]>", "<!DOCTYPE a>", "[[[", "{", "}", ",", "\n", "999999999", "\u0000"};
    private static final String[] TEXT_NUMBERS = {"1e999", "-1e308", "NaN", "1e9", "91", "1000000000000", "0", "-1", "0x7f", "1,5", "9".repeat(400), ""};

    private final Random random;
    private byte[] bytes;

    private Damage(byte[] whole, Random random) {
        this.bytes = whole.clone();
        this.random = random;
    }

    /** A copy with one to six faults. */
    static byte[] done(byte[] whole, Random random) {
        Damage damage = new Damage(whole, random);
        for (int i = random.nextInt(6); i >= 0 && damage.bytes.length > 16; i--) {
            damage.once();
        }
        return damage.bytes;
    }

    private void once() {
        int at = place();
        switch (random.nextInt(13)) {
            case 0 -> bytes[at] = (byte) random.nextInt(256);
            case 1 -> bytes[at] = (byte) (random.nextBoolean() ? 0 : 0xff);
            case 2 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
            case 3, 4 -> number(at);
            case 5 -> over(at, buffer(8).putDouble(NUMBERS[random.nextInt(NUMBERS.length)]).array());
            case 6 -> over(at, PIECES[random.nextInt(PIECES.length)].getBytes(StandardCharsets.UTF_8));
            case 7, 8 -> textNumber(at);
            case 9 -> exchange(at, place(), 1 << random.nextInt(4));
            case 10 -> splice(at, at, piece());
            case 11 -> splice(at, Math.min(bytes.length, at + 1 + random.nextInt(60)), random.nextBoolean() ? new byte[0] : piece());
            default -> bytes = random.nextInt(4) == 0 ? Arrays.copyOf(bytes, at) : bytes;
        }
    }

    /** Mostly near the front, where lengths and types are. */
    private int place() {
        return random.nextInt(random.nextBoolean() ? bytes.length : Math.min(bytes.length, 300));
    }

    private ByteBuffer buffer(int length) {
        return ByteBuffer.allocate(length).order(random.nextBoolean() ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    }

    /** Fields mostly stand at multiples of two. */
    private void number(int at) {
        long number = AWKWARD[random.nextInt(AWKWARD.length)];
        int from = random.nextInt(3) == 0 ? at : at / 2 * 2;
        switch (random.nextInt(3)) {
            case 0 -> over(from, buffer(2).putShort((short) number).array());
            case 1 -> over(from, buffer(4).putInt((int) number).array());
            default -> over(from, buffer(8).putLong(number).array());
        }
    }

    private void over(int at, byte[] piece) {
        System.arraycopy(piece, 0, bytes, at, Math.min(piece.length, bytes.length - at));
    }

    /** The next number in text becomes another. */
    private void textNumber(int at) {
        int from = at;
        while (from < bytes.length && !isNumber(bytes[from])) {
            from++;
        }
        int to = from;
        while (to < bytes.length && isNumber(bytes[to])) {
            to++;
        }
        splice(from, to, TEXT_NUMBERS[random.nextInt(TEXT_NUMBERS.length)].getBytes(StandardCharsets.US_ASCII));
    }

    private static boolean isNumber(byte b) {
        return b >= '0' && b <= '9' || b == '.' || b == '-';
    }

    private void exchange(int a, int b, int length) {
        if (Math.max(a, b) + length <= bytes.length) {
            byte[] first = Arrays.copyOfRange(bytes, a, a + length);
            over(a, Arrays.copyOfRange(bytes, b, b + length));
            over(b, first);
        }
    }

    private byte[] piece() {
        int from = place();
        return Arrays.copyOfRange(bytes, from, Math.min(bytes.length, from + 1 + random.nextInt(60)));
    }

    private void splice(int from, int to, byte[] piece) {
        byte[] changed = new byte[bytes.length - (to - from) + piece.length];
        System.arraycopy(bytes, 0, changed, 0, from);
        System.arraycopy(piece, 0, changed, from, piece.length);
        System.arraycopy(bytes, to, changed, from + piece.length, bytes.length - to);
        bytes = changed;
    }
}
