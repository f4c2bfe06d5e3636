package org.seacairn.sample;

/**
 * Smooth noise over the plane: random gradients on the whole-number lattice, blended by a quintic.
 * About -0.7 to 0.7, zero on the lattice points, the same for the same seed on every machine.
 */
final class GradientNoise {
    /** As many as the top 6 bits of a hash can name. */
    private static final int DIRECTIONS = 64;
    private static final double[] COS = new double[DIRECTIONS];
    private static final double[] SIN = new double[DIRECTIONS];

    static {
        for (int i = 0; i < DIRECTIONS; i++) {
            COS[i] = StrictMath.cos(2 * StrictMath.PI * i / DIRECTIONS);
            SIN[i] = StrictMath.sin(2 * StrictMath.PI * i / DIRECTIONS);
        }
    }

    private final long seed;

    GradientNoise(long seed) {
        this.seed = seed;
    }

    double at(double x, double y) {
        long i = (long) StrictMath.floor(x);
        long j = (long) StrictMath.floor(y);
        double u = x - i;
        double v = y - j;
        double south = blend(u, slope(i, j, u, v), slope(i + 1, j, u - 1, v));
        double north = blend(u, slope(i, j + 1, u, v - 1), slope(i + 1, j + 1, u - 1, v - 1));
        return blend(v, south, north);
    }

    private double slope(long i, long j, double u, double v) {
        int direction = (int) (hash(seed, i, j) >>> 58);
        return COS[direction] * u + SIN[direction] * v;
    }

    private static double blend(double t, double from, double to) {
        return from + (to - from) * t * t * t * (t * (6 * t - 15) + 10);
    }

    /** Three numbers mixed into one; the multipliers are those of the SplitMix64 generator. */
    static long hash(long seed, long i, long j) {
        long z = seed + i * 0x9E3779B97F4A7C15L;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L + j;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    /** A number in [0, 1) from two. */
    static double uniform(long seed, long i) {
        return (hash(seed, i, 0) >>> 11) * 0x1p-53;
    }
}
