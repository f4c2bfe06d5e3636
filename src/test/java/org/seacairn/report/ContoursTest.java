package org.seacairn.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ContoursTest {

    private static float[] lattice(int cols, int rows, DoubleBinaryOperator f) {
        float[] values = new float[cols * rows];
        for (int i = 0; i < values.length; i++) {
            values[i] = (float) f.applyAsDouble(i % cols, i / cols);
        }
        return values;
    }

    private static double[] axis(int n) {
        return IntStream.range(0, n).asDoubleStream().toArray();
    }

    private static List<Contour> contours(float[] values, int cols, int rows, double level) {
        return new Contours(values, axis(cols), axis(rows)).at(level);
    }

    @Test
    void aPlaneHasOneStraightLine() {
        List<Contour> lines = contours(lattice(40, 30, (x, y) -> 2 * x + 3 * y), 40, 30, 50.5);
        assertEquals(1, lines.size());
        assertFalse(lines.get(0).closed());
        for (int i = 0; i < lines.get(0).vertices(); i++) {
            // Linear interpolation is exact on a plane; floats hold these values exactly.
            assertEquals(50.5, 2 * lines.get(0).x(i) + 3 * lines.get(0).y(i), 1e-9);
        }
    }

    @Test
    void aConeHasARingWithinTheInterpolationError() {
        double cx = 20.3;
        double cy = 18.7;
        List<Contour> lines = contours(lattice(40, 40, (x, y) -> Math.hypot(x - cx, y - cy)), 40, 40, 12);
        assertEquals(1, lines.size());
        Contour ring = lines.get(0);
        assertTrue(ring.closed());
        assertEquals(ring.x(0), ring.x(ring.vertices() - 1));
        assertEquals(ring.y(0), ring.y(ring.vertices() - 1));
        for (int i = 0; i < ring.vertices(); i++) {
            // A linear step of 1 over a function of curvature 1/r errs by 1/8r at most, r being 11 or more on these edges.
            assertEquals(12, Math.hypot(ring.x(i) - cx, ring.y(i) - cy), 1 / (8 * 11.0));
        }
        assertEquals(Math.PI * 144, Math.abs(area(ring)), 2);
    }

    @Test
    void largerValuesLieToTheLeftWithYDownwards() {
        // The cone's outside is larger; with y downwards a ring whose inside is smaller turns clockwise on the screen, so that its shoelace area is positive.
        Contour pit = contours(lattice(20, 20, (x, y) -> Math.hypot(x - 9.5, y - 9.5)), 20, 20, 5).get(0);
        Contour hill = contours(lattice(20, 20, (x, y) -> -Math.hypot(x - 9.5, y - 9.5)), 20, 20, -5).get(0);
        assertTrue(area(pit) > 0 && area(hill) < 0, area(pit) + " " + area(hill));
    }

    @Test
    void aHoleCutsARing() {
        float[] values = lattice(40, 40, (x, y) -> Math.hypot(x - 20, y - 20));
        for (int row = 18; row < 23; row++) {
            for (int col = 30; col < 35; col++) {
                values[row * 40 + col] = Float.NaN;
            }
        }
        List<Contour> lines = contours(values, 40, 40, 12.2);
        assertEquals(1, lines.size());
        assertFalse(lines.get(0).closed());
        for (int i = 0; i < lines.get(0).vertices(); i++) {
            double x = lines.get(0).x(i);
            double y = lines.get(0).y(i);
            assertFalse(x > 29 && x < 35 && y > 17 && y < 23, x + " " + y + " lies in the hole");
        }
    }

    @Test
    void twoHillsHaveTwoRingsAndASaddleJoinsByItsMean() {
        float[] twoHills = lattice(60, 30, (x, y) -> Math.max(10 - Math.hypot(x - 15, y - 15), 10 - Math.hypot(x - 45, y - 15)));
        assertEquals(2, contours(twoHills, 60, 30, 5).size());
        // High corners north-west and south-east, mean 0.5: joined below it, apart above.
        float[] saddle = {1, 0, 0, 1};
        assertArrayEquals(new double[] {0, 0.6, 0.4, 1}, contours(saddle, 2, 2, 0.4).get(0).xy(), 1e-6);
        assertArrayEquals(new double[] {0, 0.4, 0.4, 0}, contours(saddle, 2, 2, 0.6).get(0).xy(), 1e-6);
    }

    /** Every crossing of an edge between two present values of a whole square is on a line, once. */
    @Test
    void noCrossingIsLostOnNoise() {
        Random random = new Random(7);
        float[] values = lattice(50, 37, (x, y) -> random.nextInt(20) == 0 ? Double.NaN : random.nextInt(5));
        for (double level : new double[] {0.5, 1, 2.5, 3}) {
            long vertices = contours(values, 50, 37, level).stream().mapToLong(c -> c.vertices() - (c.closed() ? 1 : 0)).sum();
            assertEquals(crossings(values, 50, 37, level), vertices);
            for (Contour line : contours(values, 50, 37, level)) {
                if (!line.closed()) {
                    assertTrue(isRim(values, 50, 37, line.x(0), line.y(0)));
                }
            }
        }
    }

    private static long crossings(float[] values, int cols, int rows, double level) {
        long count = 0;
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < cols; c++) {
                boolean inSquareEast = c + 1 < cols && (whole(values, cols, rows, c, r - 1) || whole(values, cols, rows, c, r));
                boolean inSquareSouth = r + 1 < rows && (whole(values, cols, rows, c - 1, r) || whole(values, cols, rows, c, r));
                float v = values[r * cols + c];
                count += inSquareEast && v >= level != values[r * cols + c + 1] >= level ? 1 : 0;
                count += inSquareSouth && v >= level != values[(r + 1) * cols + c] >= level ? 1 : 0;
            }
        }
        return count;
    }

    private static boolean whole(float[] values, int cols, int rows, int c, int r) {
        if (c < 0 || r < 0 || c + 1 >= cols || r + 1 >= rows) {
            return false;
        }
        int a = r * cols + c;
        return !Float.isNaN(values[a] + values[a + 1] + values[a + cols] + values[a + cols + 1]);
    }

    /** A place on an edge that has a whole square on one side only. */
    private static boolean isRim(float[] values, int cols, int rows, double x, double y) {
        int c = (int) Math.floor(x);
        int r = (int) Math.floor(y);
        boolean squares = false;
        for (int[] s : new int[][] {{c, r}, {c - 1, r}, {c, r - 1}, {c - 1, r - 1}}) {
            squares |= !whole(values, cols, rows, s[0], s[1]);
        }
        return squares;
    }

    private static double area(Contour ring) {
        double twice = 0;
        for (int i = 1; i < ring.vertices(); i++) {
            twice += ring.x(i - 1) * ring.y(i) - ring.x(i) * ring.y(i - 1);
        }
        return twice / 2;
    }
}
