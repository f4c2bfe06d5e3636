package org.seacairn.drop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OverturningTest {
    /** A cube of 2 m of one material: its weight in water acts at 1 m above the underside, so that it tips at 45 degrees. */
    private static final Overturning CUBE = new Overturning(1000, 2500, 1500, 1, 0);

    @ParameterizedTest
    @CsvSource({"0,0,Infinity", "45,0,1", "0,45,1", "30,15,1", "26.56505117707799,0,2", "63.43494882292201,0,0.5", "90,0,0", "50,50,0", "NaN,0,NaN", "5,NaN,NaN"})
    void standsAsACubeDoes(double slope, double tilt, double factor) {
        assertEquals(factor, CUBE.factor(slope, tilt), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"1,0,45", "1,20,25", "2,0,26.56505117707799", "0.5,0,63.43494882292201", "1,45.001,NaN", "3,20,NaN", "1,NaN,NaN", "1,90,NaN"})
    void tellsTheSteepestSlopeOfACube(double factor, double tilt, double slope) {
        assertEquals(slope, CUBE.steepestSlopeDeg(factor, tilt), 1e-12);
    }

    /** 6 t and 2.5 m3 in a base of 2.4 x 2.4 x 0.6 m, 300 kg and 0.05 m3 in a pole from 0.6 to 7 m, moments by hand. */
    @Test
    void standsAsWorkedByHand() {
        double weight = (6300 - 1025 * 2.55) * 9.81;                    // 36162.1 N
        double mass = (6000 * 0.3 + 300 * 3.8) * 9.81;                  // 28841.4 N m
        double buoyancy = 1025 * (2.5 * 0.3 + 0.05 * 3.8) * 9.81;       //  9451.9 N m
        Overturning module = new Overturning(weight, mass, buoyancy, 1.2, 2000);
        // 36162.1 x 1.2 x cos 10 / (19389.5 sin 10 + 2000) = 42735.3 / 5366.9
        assertEquals(7.963, module.factor(6, 4), 0.001);
        assertEquals(43394.5 / 2000, module.factor(0, 0), 0.001);
    }

    @Test
    void isWorseWithSlopeCurrentAndHeightOfMass() {
        double before = Double.POSITIVE_INFINITY;
        for (int slope = 0; slope < 90; slope++) {
            double factor = new Overturning(1000, 2500, 1500, 1, 300).factor(slope, 0);
            assertTrue(factor < before, "at " + slope);
            before = factor;
        }
        assertTrue(new Overturning(1000, 2500, 1500, 1, 301).factor(5, 0) < new Overturning(1000, 2500, 1500, 1, 300).factor(5, 0));
        assertTrue(new Overturning(1000, 2501, 1500, 1, 300).factor(5, 0) < new Overturning(1000, 2500, 1500, 1, 300).factor(5, 0));
    }

    /** The buoyancy of a light pole may hold a module up: the factor then rises with the slope before it falls. */
    @Test
    void standsEverywhereWhereBuoyancyHoldsItUpAndNothingTurnsIt() {
        assertEquals(Double.POSITIVE_INFINITY, new Overturning(1000, 500, 1500, 1, 0).factor(80, 0));
        assertEquals(90, new Overturning(1000, 500, 1500, 1, 0).steepestSlopeDeg(2, 0));
    }

    @Test
    void findsTheSlopeThatAPlainSearchFinds() {
        Random random = new Random(61);
        int stood = 0;
        for (int i = 0; i < 2000; i++) {
            Overturning module = new Overturning(1000, 3000 * random.nextDouble(), 1500 * random.nextDouble(), 0.2 + random.nextDouble(),
                    random.nextInt(3) == 0 ? 0 : 1000 * random.nextDouble());
            double factor = 0.5 + 2 * random.nextDouble();
            double tilt = random.nextInt(2) * 10 * random.nextDouble();
            double slope = module.steepestSlopeDeg(factor, tilt);
            if (!(module.factor(0, tilt) >= factor)) {
                assertEquals(Double.NaN, slope);
                continue;
            }
            stood++;
            double plain = 0;
            while (module.factor(plain + 0.01, tilt) >= factor) {
                plain += 0.01;
            }
            assertEquals(plain, slope, 0.0101, "seed 61, case " + i + ": " + module);
        }
        assertTrue(stood > 1000, "only " + stood);
    }
}
