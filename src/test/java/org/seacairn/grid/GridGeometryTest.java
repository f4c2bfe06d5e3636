package org.seacairn.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.geodesy.Crs;

class GridGeometryTest {
    private static final GridGeometry GRID = new GridGeometry(Crs.ofEpsg(32617), 1000, 5000, 20, 10, 5);

    @ParameterizedTest
    @CsvSource({"1000, 0", "1019.999, 0", "1020, 1", "1199.9, 9", "1200, 9", "1200.0001, 10", "1220, 11", "999.9, -1", "980, -1"})
    void theLastEdgeBelongsToTheLastColumn(double x, int col) {
        assertEquals(col, GRID.colAt(x));
    }

    @ParameterizedTest
    @CsvSource({"5000, 0", "4980.001, 0", "4980, 1", "4900.1, 4", "4900, 4", "4899.9999, 5", "5000.1, -1"})
    void andToTheLastRow(double y, int row) {
        assertEquals(row, GRID.rowAt(y));
    }
}
