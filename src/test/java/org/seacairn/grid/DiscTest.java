package org.seacairn.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DiscTest {
    @ParameterizedTest
    @CsvSource({"0, 10, 1", "9.99, 10, 1", "10, 10, 5", "14.1, 10, 5", "14.143, 10, 9", "20, 10, 13", "0.3, 0.1, 29"})
    void countsTheCellsWithinTheRadius(double radiusM, double cellM, long cells) {
        assertEquals(cells, new Disc(radiusM, cellM).cells());
    }

    @Test
    void agreesWithLookingAtEveryCell() {
        Random random = new Random(11);
        for (int run = 0; run < 300; run++) {
            double radius = Math.exp(random.nextDouble() * Math.log(12)) - 1;
            Disc disc = new Disc(radius, 1);
            int reach = disc.reach();
            int cols = 1 + random.nextInt(20);
            int rows = 1 + random.nextInt(15);
            int wide = cols + 2 * reach;
            boolean[] bad = new boolean[wide * (rows + 2 * reach)];
            double share = Math.pow(random.nextDouble(), 4);
            for (int i = 0; i < bad.length; i++) {
                bad[i] = random.nextDouble() < share;
            }
            boolean[] found = new boolean[cols * rows];
            disc.touches(bad, wide, rows + 2 * reach, found);
            double[] radii = random.doubles(found.length, 0, radius).toArray();
            boolean[] foundOwn = new boolean[found.length];
            disc.touches(bad, wide, rows + 2 * reach, radii, foundOwn);
            for (int r = 0; r < rows; r++) {
                for (int c = 0; c < cols; c++) {
                    boolean expected = false;
                    boolean expectedOwn = false;
                    double own = radii[r * cols + c];
                    for (int dy = -reach; dy <= reach; dy++) {
                        for (int dx = -reach; dx <= reach; dx++) {
                            boolean isBad = bad[(r + reach + dy) * wide + c + reach + dx];
                            expected |= dx * dx + dy * dy <= radius * radius && isBad;
                            expectedOwn |= dx * dx + dy * dy <= own * own && isBad;
                        }
                    }
                    assertEquals(expected, found[r * cols + c], "run " + run + ", cell " + c + ", " + r);
                    assertEquals(expectedOwn, foundOwn[r * cols + c], "run " + run + ", own radius, cell " + c + ", " + r);
                }
            }
        }
    }
}
