package org.seacairn.drop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EmbedmentTest {
    private static Bearing metre(double strengthPa, double gradientPaPerM) {
        return new Bearing(1, 1, 1, strengthPa, gradientPaPerM);
    }

    /**
     * Base of 1 m square, solved by hand. Down to 2.5 m Q = 6 (1 + 0.2 z) (su0 + k z) and its integral
     * 6 (su0 z + (k + 0.2 su0) z^2/2 + 0.2 k z^3/3); below Q = 9 (su0 + k z).
     */
    @ParameterizedTest
    @CsvSource({
        "1000,    0,   6000,   600,  1.0, 12.0",   // 6600 = 6000 + 600 x 1; Q = 7200
        "   0, 1000,   6600,  1000,  1.5, 11.7",   // 6000 (1.125 + 0.225) = 8100; Q = 6000 x 1.5 x 1.3
        "1000,    0,  12500,  2500,  2.5, 3.6",    // 18750 where the pieces meet; Q = 9000
        "1000,    0,   9750,  6000,  4.5, 1.5",    // 18750 + 2 x 9000 = 9750 + 4.5 x 6000
        "   0, 1000,  43000, 10000,  4.5, 4.05",   // 25000 + 9000 (2 x 2.5 + 2) = 88000
        "   0, 1000, 325000, 30000, 12.5, 3.75",   // 25000 + 9000 (25 + 50) = 700000; the weight is above Q at 2.5 m
    })
    void stopsWhereItDoesByHand(double strength, double gradient, double energy, double weight, double depth, double factor) {
        Embedment embedment = Embedment.of(metre(strength, gradient), energy, weight);
        assertEquals(depth, embedment.depthM(), 1e-12);
        assertEquals(factor, embedment.bearingFactor(), 1e-11);
    }

    @ParameterizedTest
    @CsvSource({
        "1000, 0,  9000, 1.0", // Nothing is left to stop it, however far it goes.
        "1000, 0, 10000, 0.9",
        "   0, 0,     1, 0",
    })
    void isInfiniteWhereTheWeightIsNeverBorne(double strength, double gradient, double weight, double factor) {
        Embedment embedment = Embedment.of(metre(strength, gradient), 100, weight);
        assertEquals(Double.POSITIVE_INFINITY, embedment.depthM());
        assertEquals(factor, embedment.bearingFactor(), 1e-12);
        assertEquals(0, embedment.reliefM(8));
    }

    @Test
    void staysOnTopWhenLaidDownOnGroundThatBearsIt() {
        assertEquals(new Embedment(0, 6), Embedment.of(metre(1000, 500), 0, 1000));
    }

    @Test
    void sinksUnderItsWeightAloneWhereTheGroundDoesNotBearIt() {
        // 6 x 1000 (z + 0.1 z^2) = 7000 z
        assertEquals(10.0 / 6, Embedment.of(metre(1000, 0), 0, 7000).depthM(), 1e-12);
    }

    @Test
    void isNotModelledWithoutAStrength() {
        for (Bearing bearing : new Bearing[] {metre(Double.NaN, 0), metre(1, Double.NaN)}) {
            Embedment embedment = Embedment.of(bearing, 1, 1);
            assertEquals(new Embedment(Double.NaN, Double.NaN), embedment);
            assertEquals(Double.NaN, embedment.reliefM(5));
        }
        assertEquals(Double.NaN, Embedment.of(metre(1, 1), Double.NaN, 1).depthM());
    }

    @Test
    void leavesNoReliefBelowTheBottom() {
        assertEquals(3.5, new Embedment(1.5, 4).reliefM(5));
        assertEquals(0, new Embedment(7, 4).reliefM(5));
    }

    @Test
    void refusesAModuleThatFloats() {
        assertThrows(IllegalArgumentException.class, () -> Embedment.of(metre(1, 1), 1, 0));
        assertThrows(IllegalArgumentException.class, () -> Embedment.of(metre(1, 1), -1, 1));
    }

    private static double log(Random random, double from, double to) {
        return from * Math.exp(random.nextDouble() * Math.log(to / from));
    }

    private static Bearing any(Random random) {
        double width = log(random, 0.5, 5);
        double length = log(random, 0.5, 5);
        return new Bearing(width, length, width * length * (0.3 + 0.7 * random.nextDouble()),
                random.nextInt(4) == 0 ? 0 : log(random, 100, 1e5), random.nextInt(4) == 0 ? 0 : log(random, 10, 1e4));
    }

    @Test
    void balancesEnergyAndWork() {
        Random random = new Random(51);
        int stopped = 0;
        for (int i = 0; i < 20_000; i++) {
            Bearing bearing = any(random);
            double energy = random.nextInt(10) == 0 ? 0 : log(random, 1, 1e6);
            double weight = log(random, 1e3, 2e5);
            double depth = Embedment.of(bearing, energy, weight).depthM();
            if (Double.isFinite(depth) && depth > 0) {
                stopped++;
                double in = energy + weight * depth;
                assertEquals(in, bearing.workJ(depth), 1e-12 * in, "case " + i);
                assertTrue(bearing.resistanceN(depth) >= weight * (1 - 1e-9), "still going down, case " + i);
            }
        }
        assertTrue(stopped > 15_000, "only " + stopped);
    }

    /** A plain march downward by the formula itself, in steps of half a millimetre. */
    @Test
    void stopsWhereAPlainMarchDoes() {
        Random random = new Random(52);
        for (int i = 0; i < 200; i++) {
            Bearing b = any(random);
            double energy = log(random, 1e3, 2e5);
            double weight = log(random, 1e3, 1e5);
            double step = 5e-4;
            double z = 0;
            double left = energy;
            while (left > 0 && z < 30) {
                double side = Math.min(b.widthM(), b.lengthM());
                double nc = 5 * (1 + 0.2 * Math.min((z + step / 2) / side, 2.5)) * (1 + 0.2 * side / Math.max(b.widthM(), b.lengthM()));
                left -= (nc * (b.strengthPa() + b.gradientPaPerM() * (z + step / 2)) * b.areaM2() - weight) * step;
                z += step;
            }
            double depth = Embedment.of(b, energy, weight).depthM();
            assertEquals(Math.min(z, 30), Math.min(depth, 30), 1e-3, "seed 52, case " + i + ": " + b);
        }
    }

    @Test
    void growsWithEnergyAndWeightAndShrinksWithStrength() {
        double depth = Embedment.of(metre(3000, 1000), 20_000, 9000).depthM();
        assertTrue(Embedment.of(metre(3000, 1000), 20_100, 9000).depthM() > depth);
        assertTrue(Embedment.of(metre(3000, 1000), 20_000, 9100).depthM() > depth);
        assertTrue(Embedment.of(metre(3100, 1000), 20_000, 9000).depthM() < depth);
        assertTrue(Embedment.of(metre(3000, 1100), 20_000, 9000).depthM() < depth);
    }
}
