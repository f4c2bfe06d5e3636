package org.seacairn.grid;

import java.util.Arrays;

/** Slope and ruggedness of a window of depths. A cell with a missing neighbour has neither. */
public final class Terrain {
    private Terrain() {}

    /**
     * Tangent of the slope: Horn (1981), third-order finite difference over 3 x 3 cells.
     *
     * <p>Horn, B. K. P. (1981): Hill shading and the reflectance map. Proc. IEEE 69(1), 14-47.
     *
     * @param depth values of a window; its outermost cells get no slope
     * @param into receives the tangent, NaN where one of the nine cells is missing
     */
    public static void slopeTangent(float[] depth, int cols, int rows, double cellM, float[] into) {
        float scale = (float) (1 / (8 * cellM));
        Arrays.fill(into, 0, cols, Float.NaN);
        Arrays.fill(into, (rows - 1) * cols, rows * cols, Float.NaN);
        for (int r = 1; r < rows - 1; r++) {
            int up = (r - 1) * cols;
            int here = r * cols;
            int down = (r + 1) * cols;
            into[here] = Float.NaN;
            into[here + cols - 1] = Float.NaN;
            // Differences of neighbours first: depths of one place differ by little, so the float
            // differences are exact or nearly so, and the loop runs as vectors of floats.
            for (int c = 1; c < cols - 1; c++) {
                float dx = (depth[up + c + 1] - depth[up + c - 1]) + 2 * (depth[here + c + 1] - depth[here + c - 1])
                        + (depth[down + c + 1] - depth[down + c - 1]);
                float dy = (depth[down + c - 1] - depth[up + c - 1]) + 2 * (depth[down + c] - depth[up + c])
                        + (depth[down + c + 1] - depth[up + c + 1]);
                // Horn leaves the centre out; a missing centre must still leave the cell without slope.
                float missing = depth[here + c] - depth[here + c];
                into[here + c] = (float) Math.sqrt(dx * dx + dy * dy) * scale + missing;
            }
        }
    }

    /**
     * Vector ruggedness measure: 1 - |sum of unit normals| / n over a square window, 0 on any plane.
     *
     * <p>Sappington, Longshore and Thompson (2007): Quantifying landscape ruggedness for animal
     * habitat analysis. J. Wildl. Manage. 71(5), 1419-1426. Normals are those of Horn's slope; cells of
     * the window without one are left out of the sum and of n.
     *
     * @param side odd number of cells of the window's side
     * @param into receives the measure, NaN where the cell itself has no slope
     */
    public static void ruggedness(float[] depth, int cols, int rows, double cellM, int side, float[] into) {
        int cells = cols * rows;
        float[] nx = new float[cells];
        float[] ny = new float[cells];
        float[] nz = new float[cells];
        normals(depth, cols, rows, cellM, nx, ny, nz);
        int half = side / 2;
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < cols; c++) {
                if (Float.isNaN(nz[r * cols + c])) {
                    into[r * cols + c] = Float.NaN;
                    continue;
                }
                double x = 0;
                double y = 0;
                double z = 0;
                int n = 0;
                for (int i = Math.max(0, r - half); i <= Math.min(rows - 1, r + half); i++) {
                    for (int k = i * cols + Math.max(0, c - half); k <= i * cols + Math.min(cols - 1, c + half); k++) {
                        if (!Float.isNaN(nz[k])) {
                            x += nx[k];
                            y += ny[k];
                            z += nz[k];
                            n++;
                        }
                    }
                }
                into[r * cols + c] = (float) Math.max(0, 1 - Math.sqrt(x * x + y * y + z * z) / n);
            }
        }
    }

    private static void normals(float[] depth, int cols, int rows, double cellM, float[] nx, float[] ny, float[] nz) {
        double scale = 1 / (8 * cellM);
        Arrays.fill(nz, Float.NaN);
        for (int r = 1; r < rows - 1; r++) {
            for (int c = 1; c < cols - 1; c++) {
                int i = r * cols + c;
                double nw = depth[i - cols - 1];
                double ne = depth[i - cols + 1];
                double sw = depth[i + cols - 1];
                double se = depth[i + cols + 1];
                double dx = (ne + 2.0 * depth[i + 1] + se - (nw + 2.0 * depth[i - 1] + sw)) * scale;
                double dy = (sw + 2.0 * depth[i + cols] + se - (nw + 2.0 * depth[i - cols] + ne)) * scale;
                double length = Math.sqrt(dx * dx + dy * dy + 1) + (depth[i] - depth[i]);
                nx[i] = (float) (dx / length);
                ny[i] = (float) (dy / length);
                nz[i] = (float) (1 / length);
            }
        }
    }
}
