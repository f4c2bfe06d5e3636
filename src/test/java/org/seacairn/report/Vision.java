package org.seacairn.report;

/**
 * Kinds of colour vision, each as a matrix on linear sRGB: Machado, Oliveira and Fernandes, "A physiologically-based model for simulation
 * of color vision deficiency", IEEE TVCG 15(6), 2009, 1291-1298, table for severity 1.0; and grey print, which keeps the luminance only.
 */
enum Vision {
    NORMAL(1, 0, 0, 0, 1, 0, 0, 0, 1),
    PROTANOPIA(0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998),
    DEUTERANOPIA(0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881),
    TRITANOPIA(1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900),
    GREY_PRINT(0.2126729, 0.7151522, 0.0721750, 0.2126729, 0.7151522, 0.0721750, 0.2126729, 0.7151522, 0.0721750);

    private final double[] matrix;

    Vision(double... matrix) {
        this.matrix = matrix;
    }

    /** CIELAB (D65) of an sRGB colour as it is seen: IEC 61966-2-1 and CIE 15 (from memory). */
    double[] lab(int rgb) {
        double[] linear = new double[3];
        for (int i = 0; i < 3; i++) {
            linear[i] = linear(rgb >> 16 - 8 * i & 0xff);
        }
        double[] seen = times(matrix, linear);
        for (int i = 0; i < 3; i++) {
            seen[i] = Math.min(1, Math.max(0, seen[i]));
        }
        double[] xyz = times(new double[] {0.4124564, 0.3575761, 0.1804375, 0.2126729, 0.7151522, 0.0721750, 0.0193339, 0.1191920, 0.9503041}, seen);
        double x = root(xyz[0] / 0.95047);
        double y = root(xyz[1]);
        double z = root(xyz[2] / 1.08883);
        return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
    }

    double lightness(int rgb) {
        return lab(rgb)[0];
    }

    /** CIE 1976 colour difference. */
    double difference(int a, int b) {
        double[] p = lab(a);
        double[] q = lab(b);
        return Math.sqrt((p[0] - q[0]) * (p[0] - q[0]) + (p[1] - q[1]) * (p[1] - q[1]) + (p[2] - q[2]) * (p[2] - q[2]));
    }

    /** Contrast of a text on its ground: WCAG 2.1, success criterion 1.4.3. */
    static double contrast(int a, int b) {
        double p = luminance(a) + 0.05;
        double q = luminance(b) + 0.05;
        return Math.max(p, q) / Math.min(p, q);
    }

    private static double luminance(int rgb) {
        return 0.2126 * linear(rgb >> 16 & 0xff) + 0.7152 * linear(rgb >> 8 & 0xff) + 0.0722 * linear(rgb & 0xff);
    }

    private static double linear(int channel) {
        double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    private static double root(double t) {
        return t > 216.0 / 24389 ? Math.cbrt(t) : t * 841 / 108 + 4.0 / 29;
    }

    private static double[] times(double[] m, double[] v) {
        return new double[] {m[0] * v[0] + m[1] * v[1] + m[2] * v[2], m[3] * v[0] + m[4] * v[1] + m[5] * v[2], m[6] * v[0] + m[7] * v[1] + m[8] * v[2]};
    }
}
