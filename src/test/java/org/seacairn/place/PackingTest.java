package org.seacairn.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.InputException;

class PackingTest {
    private static final double MILLIMETRE = 0.001;

    private static int squareLattice(double lengthM, double widthM, double apartM) {
        return ((int) (lengthM / apartM) + 1) * ((int) (widthM / apartM) + 1);
    }

    private static double nearest(List<Packing.Place> places) {
        double nearest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < places.size(); i++) {
            for (int k = 0; k < i; k++) {
                nearest = Math.min(nearest, Math.hypot(places.get(i).alongM() - places.get(k).alongM(),
                        places.get(i).acrossM() - places.get(k).acrossM()));
            }
        }
        return nearest;
    }

    @Test
    void packsApartInsideAndBetweenSquareLatticeAndBound() {
        Random random = new Random(7);
        int better = 0;
        int atBound = 0;
        for (int i = 0; i < 3000; i++) {
            double apart = 20 + 300 * random.nextDouble();
            double length = apart * Math.pow(10, -1 + 2.2 * random.nextDouble());
            // Every fourth a whole multiple, where one more or less hangs on rounding.
            length = i % 4 == 0 ? apart * Math.ceil(length / apart) : length;
            double width = length * (random.nextInt(4) == 0 ? 1 : random.nextDouble());
            AreaSize size = new AreaSize(length, width);
            Packing packing = Packing.of(size, apart, place -> true);
            String name = size + ", apart " + apart;
            assertTrue(nearest(packing.places()) >= apart - MILLIMETRE, () -> name + ": " + nearest(packing.places()));
            assertTrue(packing.places().stream().allMatch(p -> Math.abs(p.alongM()) <= size.lengthM() / 2
                    && Math.abs(p.acrossM()) <= size.widthM() / 2), name);
            int square = squareLattice(length, width, apart);
            assertTrue(packing.places().size() >= square, name);
            assertTrue(packing.places().size() <= packing.upperBound(), () -> name + ": " + packing.places().size() + " over " + packing.upperBound());
            better += packing.places().size() > square ? 1 : 0;
            atBound += packing.places().size() == packing.upperBound() ? 1 : 0;
        }
        assertTrue(better > 1000, "better than the square lattice in " + better);
        assertTrue(atBound > 100, "as many as the bound in " + atBound);
    }

    @Test
    void keepsOffWhatIsNotFreeAndShiftsToFitMore() {
        Random random = new Random(8);
        int shifted = 0;
        for (int i = 0; i < 300; i++) {
            AreaSize size = new AreaSize(300 + 500 * random.nextDouble(), 200 + 100 * random.nextDouble());
            double strip = 30 * random.nextDouble();
            double apart = 60 + 60 * random.nextDouble();
            Packing.Ground ground = p -> p.alongM() > strip - size.lengthM() / 2;
            Packing packing = Packing.of(size, apart, ground);
            assertTrue(packing.places().stream().allMatch(ground::isFree));
            assertTrue(nearest(packing.places()) >= apart - MILLIMETRE);
            long kept = Packing.of(size, apart, p -> true).places().stream().filter(ground::isFree).count();
            assertTrue(packing.places().size() >= kept);
            shifted += packing.places().size() > kept ? 1 : 0;
        }
        assertTrue(shifted > 100, "shifting helped in " + shifted);
    }

    @Test
    void noFreeGroundHoldsNone() {
        assertEquals(List.of(), Packing.of(new AreaSize(500, 500), 100, p -> false).places());
    }

    /**
     * Largest least distances of n points in a unit square, OEIS A281065 (n = 2..10, proved optimal): at that
     * distance no bound may be below n.
     */
    @ParameterizedTest
    @CsvSource({"2, 1.4142135623730951", "3, 1.0352761804100830", "4, 1", "5, 0.7071067811865476", "6, 0.6009252125773316",
        "7, 0.5358983848622454", "8, 0.5176380902050415", "9, 0.5", "10, 0.42127954398390343"})
    void boundAllowsTheKnownOptima(int points, double distance) {
        assertTrue(Packing.bound(new AreaSize(100, 100), 100 * distance) >= points);
    }

    /** Counted by hand: lattices of 2, 2 x 2, 4 x 4, a zigzag of 2 + 2 + 2, one row, and rows of 4 + 3 + 4. */
    @ParameterizedTest
    @CsvSource({"1000, 1000, 1000.1, 2", "1000, 1000, 1000, 4", "900, 900, 300, 16", "600, 600, 300.1, 6",
        "1000, 0.001, 100, 11", "450, 259.9, 150, 11"})
    void knownCounts(double lengthM, double widthM, double apartM, int count) {
        assertEquals(count, Packing.of(new AreaSize(lengthM, widthM), apartM, p -> true).places().size());
    }

    /** 2/sqrt(3) x 0.25 + 0.5 + 0.5 + 1 = 2.29 for half by half; 1.1547 x 9 + 6 + 1 = 17.39 for three by three. */
    @ParameterizedTest
    @CsvSource({"50, 50, 100, 2", "300, 300, 100, 17", "463, 463, 150, 18"})
    void boundByHand(double lengthM, double widthM, double apartM, int bound) {
        assertEquals(bound, Packing.bound(new AreaSize(lengthM, widthM), apartM));
    }

    @Test
    void refusesMoreThanAMillion() {
        assertEquals("apart is 1 m, at which more than a million modules fit into 2000 m x 1000 m; state a larger distance",
                assertThrows(InputException.class, () -> Packing.of(new AreaSize(1000, 2000), 1, p -> true)).getMessage());
    }
}
