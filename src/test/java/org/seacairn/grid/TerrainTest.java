package org.seacairn.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TerrainTest {
    /**
     * A widely printed hand-worked example of Horn's method (3 x 3 window, cell 5): rise over run
     * 3.80032, slope 75.25762 degrees with rounded constants; recomputed exactly 75.2576577.
     */
    @Test
    void slopeOfTheHandWorkedWindow() {
        float[] window = {50, 45, 50, 30, 30, 30, 8, 10, 10};
        float[] tangent = new float[9];
        Terrain.slopeTangent(window, 3, 3, 5, tangent);
        assertEquals(3.80032, tangent[4], 1e-5);
        assertEquals(75.25766, Math.toDegrees(Math.atan(tangent[4])), 1e-5);
    }

    @Test
    void planeHasItsOwnSlopeEverywhereAndNoRuggedness() {
        int cols = 7;
        int rows = 5;
        float[] depth = new float[cols * rows];
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < cols; c++) {
                depth[r * cols + c] = 100 + 0.03f * 10 * c - 0.04f * 10 * r;
            }
        }
        float[] tangent = new float[depth.length];
        float[] rugged = new float[depth.length];
        Terrain.slopeTangent(depth, cols, rows, 10, tangent);
        Terrain.ruggedness(depth, cols, rows, 10, 3, rugged);
        assertEquals(0.05, tangent[cols + 1], 1e-5);
        assertEquals(0.05, tangent[3 * cols + 5], 1e-5);
        assertEquals(0, rugged[2 * cols + 3], 1e-6);
        assertTrue(Float.isNaN(tangent[0]) && Float.isNaN(tangent[cols - 1]) && Float.isNaN(rugged[0]));
    }

    /** Never filled from the centre, which would flatten edges and holes. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7, 8})
    void cellWithAMissingNeighbourHasNoSlope(int missing) {
        float[] window = {1, 2, 3, 4, 5, 6, 7, 8, 9};
        window[missing] = Float.NaN;
        float[] tangent = new float[9];
        float[] rugged = new float[9];
        Terrain.slopeTangent(window, 3, 3, 1, tangent);
        Terrain.ruggedness(window, 3, 3, 1, 3, rugged);
        assertTrue(Float.isNaN(tangent[4]));
        assertTrue(Float.isNaN(rugged[4]));
    }

    /**
     * Sappington et al. (2007): 1 - |sum of unit normals| / n, here from three normals worked by hand:
     * a ridge across a window of one row of slopes +45, 0 and -45 degrees.
     */
    @Test
    void ruggednessOfARidgeByHand() {
        int cols = 7;
        int rows = 5;
        float[] depth = new float[cols * rows];
        float[] profile = {3, 2, 1, 0, 1, 2, 3};
        for (int i = 0; i < depth.length; i++) {
            depth[i] = profile[i % cols];
        }
        float[] rugged = new float[depth.length];
        Terrain.ruggedness(depth, cols, rows, 1, 3, rugged);
        // Horn at the crest is 0, beside it 45 degrees: normals (±s, 0, s), (0, 0, 1), s = sqrt(1/2).
        double z = (2 * Math.sqrt(0.5) + 1) / 3;
        assertEquals(1 - z, rugged[2 * cols + 3], 1e-6);
    }
}
