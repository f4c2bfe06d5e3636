package org.seacairn.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.PatchFrames;

/** Which offsets lie between two distances, against geodesics: never a wrong one, and none missing but at the very limit. */
class OffsetRunsTest {
    @ParameterizedTest
    @CsvSource({
        "32617, 499_000, 3_300_000, 5, 120, 250, 0.002", "32617, 830_000, 100_000, 5, 120, 250, 0.003",
        "32617, 180_000, 6_900_000, 20, 120, 1852, 0.04", "32733, 300_000, 6_200_000, 10, 60, 500, 0.008",
        "3035, 3_500_000, 2_300_000, 10, 120, 250, 0.01", "5070, 1_600_000, 900_000, 10, 120, 1000, 0.03"})
    void agreeWithGeodesics(int epsg, double west, double north, double cellM, double leastM, double mostM, double toleranceM) {
        Crs crs = Crs.ofEpsg(epsg);
        GridGeometry grid = new GridGeometry(crs, west, north, cellM, 2000, 2000);
        PatchFrames frames = new PatchFrames(grid);
        OffsetRuns between = OffsetRuns.between(grid, frames, leastM, mostM);
        OffsetRuns nearer = OffsetRuns.nearer(grid, frames, leastM);
        CoordinateTransform toLonLat = crs.to(crs.geographic());
        Geodesic geodesic = crs.geodesic();
        Random random = new Random(11);
        int held = 0;
        for (int i = 0; i < 20_000; i++) {
            int col = random.nextInt(grid.cols());
            int row = random.nextInt(grid.rows());
            // Offsets about the two limits, where they matter.
            double about = (random.nextBoolean() ? leastM : mostM) * (1 + 0.02 * random.nextGaussian());
            double turn = 2 * Math.PI * random.nextDouble();
            int dCol = (int) Math.rint(about * Math.cos(turn) / cellM);
            int dRow = (int) Math.rint(about * Math.sin(turn) / cellM);
            Coordinate a = toLonLat.apply(grid.centreX(col), grid.centreY(row));
            Coordinate b = toLonLat.apply(grid.centreX(col + dCol), grid.centreY(row + dRow));
            double metres = geodesic.Inverse(a.y, a.x, b.y, b.x).s12;
            String name = metres + " m from " + col + " " + row + " by " + dCol + " " + dRow;
            boolean holds = between.from(col, row).holds(dCol, dRow);
            assertFalse(holds && (metres < leastM || metres > mostM), name);
            assertTrue(holds || metres < leastM + toleranceM || metres > mostM - toleranceM, name);
            boolean near = nearer.from(col, row).holds(dCol, dRow);
            assertTrue(near || metres >= leastM, name);
            assertFalse(near && metres > leastM + toleranceM, name);
            held += holds ? 1 : 0;
        }
        assertTrue(held > 5000 && held < 15_000, held + " held");
    }

    @ParameterizedTest
    @CsvSource({"5, 0.001", "500, 0.001", "5000, 0.005"})
    void marginIsAMillimetreOrAMillionth(double lengthM, double marginM) {
        assertEquals(marginM, OffsetRuns.marginM(lengthM), 1e-12);
    }
}
