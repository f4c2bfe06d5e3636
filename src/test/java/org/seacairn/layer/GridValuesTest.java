package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.layer.GridValues.Band;

class GridValuesTest {
    private static final float NONE = Float.NaN;

    @Test
    void countsSignsAndMissingCellsAndFindsTheRange() {
        GridValues values = GridValues.of(new MemoryBathymetry(3, 2, 0, 0, -5, NONE, 0, 2.5f, -7, NONE), List.of(new Band(-5, 0)));
        assertEquals(new GridValues(6, 2, 2, 1, -7, 2.5f, List.of(2L)), values);
        assertEquals(4, values.present());
    }

    @Test
    void aGridWithoutValuesHasNoRange() {
        assertEquals(new GridValues(2, 2, 0, 0, Float.POSITIVE_INFINITY, Float.NEGATIVE_INFINITY, List.of()),
                GridValues.of(new MemoryBathymetry(2, 1, 0, 0, NONE, NONE), List.of()));
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            0,    0
            256,  256
            2500, 1
            100,  1200
            2500, 1200
            """)
    void windowsCoverEveryCellOnceInWholeBlocksAndNeverHoldTheGrid(int blockCols, int blockRows) {
        int cols = 2500;
        int rows = 1200;
        Random random = new Random(20_240_611);
        float[] cells = new float[cols * rows];
        long missing = 0;
        float least = Float.POSITIVE_INFINITY;
        long within = 0;
        for (int i = 0; i < cells.length; i++) {
            cells[i] = random.nextInt(10) == 0 ? NONE : random.nextFloat() * 300 - 250;
            missing += Float.isNaN(cells[i]) ? 1 : 0;
            least = cells[i] < least ? cells[i] : least;
            within += cells[i] >= -150 && cells[i] <= -60 ? 1 : 0;
        }
        MemoryBathymetry file = new MemoryBathymetry(cols, rows, blockCols, blockRows, cells);
        GridValues values = GridValues.of(file, List.of(new Band(-150, -60)));
        assertEquals(missing, values.missing());
        assertEquals(least, values.least());
        assertEquals(List.of(within), values.within());
        assertEquals(cells.length, file.reads().stream().mapToLong(w -> (long) w[2] * w[3]).sum());
        int most = Math.max(1 << 20, blockCols * blockRows);
        for (int[] w : file.reads()) {
            assertTrue((long) w[2] * w[3] <= most, w[2] + " x " + w[3] + " cells at once");
            assertTrue(blockCols == 0 || w[0] % blockCols == 0 && w[1] % blockRows == 0, "starts within a block");
        }
    }
}
