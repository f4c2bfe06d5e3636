package org.seacairn.layer;

import java.util.ArrayList;
import java.util.List;
import org.seacairn.InputException;
import org.seacairn.geodesy.CoordinateTransform;

/**
 * Places with a value and the line of the file that each stands in: 24 bytes a sounding, kept in stretches so that
 * nothing is copied while they grow.
 */
final class Soundings {
    /** Bytes of a sounding here and in {@link SoundingGrid}. */
    private static final int BYTES = 40;
    /** So that a stretch is no object that the collector has to treat as a huge one. */
    private static final int BITS = 14;
    private static final int STRETCH = 1 << BITS;

    /** x and y by turns. */
    private final List<double[]> places = new ArrayList<>();
    private final List<float[]> values = new ArrayList<>();
    private final List<int[]> lines = new ArrayList<>();
    private int size;

    /** How many fit into half of the memory that Java may take. */
    static int most() {
        return (int) Math.min(1 << 29, Runtime.getRuntime().maxMemory() / 2 / BYTES);
    }

    void add(double x, double y, float value, int line) {
        int at = size & STRETCH - 1;
        if (at == 0) {
            places.add(new double[2 * STRETCH]);
            values.add(new float[STRETCH]);
            lines.add(new int[STRETCH]);
        }
        int stretch = size >>> BITS;
        places.get(stretch)[2 * at] = x;
        places.get(stretch)[2 * at + 1] = y;
        values.get(stretch)[at] = value;
        lines.get(stretch)[at] = line;
        size++;
    }

    int size() {
        return size;
    }

    double x(int i) {
        return places.get(i >>> BITS)[2 * (i & STRETCH - 1)];
    }

    double y(int i) {
        return places.get(i >>> BITS)[2 * (i & STRETCH - 1) + 1];
    }

    float value(int i) {
        return values.get(i >>> BITS)[i & STRETCH - 1];
    }

    int line(int i) {
        return lines.get(i >>> BITS)[i & STRETCH - 1];
    }

    /** The soundings that lie farthest to the west, east, south and north. */
    int[] extremes() {
        int[] found = new int[4];
        for (int i = 1; i < size; i++) {
            double x = x(i);
            double y = y(i);
            found[0] = x < x(found[0]) ? i : found[0];
            found[1] = x > x(found[1]) ? i : found[1];
            found[2] = y < y(found[2]) ? i : found[2];
            found[3] = y > y(found[3]) ? i : found[3];
        }
        return found;
    }

    /** @throws InputException that begins with the line of a sounding that the transform cannot take */
    void moveBy(CoordinateTransform transform) {
        for (int stretch = 0; stretch < places.size(); stretch++) {
            int count = Math.min(STRETCH, size - stretch * STRETCH);
            double[] moved = places.get(stretch).clone();
            try {
                transform.apply(moved, count);
            } catch (InputException e) {
                throw firstOutside(transform, stretch * STRETCH, count, e);
            }
            places.set(stretch, moved);
        }
    }

    private InputException firstOutside(CoordinateTransform transform, int from, int count, InputException cause) {
        for (int i = from; i < from + count; i++) {
            try {
                transform.apply(x(i), y(i));
            } catch (InputException e) {
                return new InputException("line " + line(i) + ": " + e.getMessage(), e);
            }
        }
        return cause;
    }
}
