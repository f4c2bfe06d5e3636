package org.seacairn.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rings against every possible ring, over random annuli of few cells. */
class RingSearchTest {
    private static final int SCENES = 2500;

    private static Random random(long seed) {
        return new Random(seed * 0x9E3779B97F4A7C15L);
    }

    /** A scene small enough to try everything. */
    private record Scene(List<RingCell> cells, int modules, double apartM, String name) {
        static Scene of(long seed) {
            Random random = random(seed);
            // Small inner distances and the best scores there: neighbours of one module then stand near each other.
            boolean crowded = seed % 2 == 0;
            double innerM = random.nextInt(4) == 0 ? 0 : (crowded ? 10 : 10 + 90 * random.nextDouble());
            double outerM = innerM + 10 + (crowded ? 60 : 150) * random.nextDouble();
            double cellM = new double[] {5, 12.5, 20, 30}[random.nextInt(crowded ? 2 : 4)];
            double fromDeg = random.nextInt(crowded ? 20 : 3) == 0 ? 300 * random.nextDouble() : 0;
            double toDeg = random.nextInt(crowded ? 20 : 3) == 0 ? fromDeg + (360 - fromDeg) * random.nextDouble() : 360;
            int levels = new int[] {0, 1, 2, 4}[random.nextInt(4)];
            List<RingCell> cells = new RingScenes.Shape(innerM, outerM, cellM, fromDeg, toDeg, levels, crowded,
                    4 + random.nextInt(12)).cells(random);
            int modules = crowded ? 3 + random.nextInt(4) : 1 + random.nextInt(7);
            double apartM = random.nextInt(8) == 0 ? 0 : outerM * (0.1 + (crowded ? 0.5 : 1.2) * random.nextDouble());
            return new Scene(cells, modules, apartM, "seed " + seed + ", " + modules + " modules " + apartM + " m apart, "
                    + innerM + " to " + outerM + " m, " + cells.size() + " cells of " + cellM + " m, " + levels + " levels");
        }
    }

    private static List<String> places(List<Pick> picks) {
        return picks.stream().map(p -> p.col() + " " + p.row()).toList();
    }

    private static void assertSame(Scene scene, PlainRing plain, Optional<Ring> found) {
        assertEquals(plain.best != null, found.isPresent(), scene.name());
        found.ifPresent(ring -> {
            assertTrue(ring.exact(), scene.name());
            assertEquals(plain.evenness, ring.evennessDeg(), scene.name());
            assertEquals(plain.billionths, Math.round(ring.total() * 1e9), scene.name());
            assertEquals(places(plain.best.stream().map(RingCell::pick).toList()),
                    places(ring.modules().stream().map(RingModule::pick).toList()), scene.name());
            for (int i = 0; i < ring.gapsM().size(); i++) {
                assertEquals(PlainRing.metres(plain.best.get(i), plain.best.get((i + 1) % plain.best.size())),
                        ring.gapsM().get(i), 1e-9, scene.name());
            }
        });
    }

    @Test
    void ringIsTheBestOfAllRings() {
        int rings = 0;
        int branched = 0;
        int shortOfIdeal = 0;
        int none = 0;
        for (long seed = 1; seed <= SCENES; seed++) {
            Scene scene = Scene.of(seed);
            PlainRing plain = new PlainRing(scene.cells(), scene.modules(), scene.apartM(), scene.cells().size());
            RingCells cells = RingScenes.cells(scene.cells(), scene.apartM());
            RingSearch search = new RingSearch(cells, scene.modules(), RingSearch.MOST_WORK);
            Optional<Ring> ring = search.ring();
            assertSame(scene, plain, ring);
            if (ring.isEmpty()) {
                assertEquals(new RingFit(plain.fit, plain.fit), search.fit(), scene.name());
                none++;
            } else {
                rings++;
                shortOfIdeal += plain.evenness < 360 / scene.modules() ? 1 : 0;
                RingPath relaxed = null;
                for (int start = 0; start < cells.size(); start++) {
                    RingPath path = new RingRelaxation(cells, scene.modules(), ring.get().evennessDeg()).best(start, null);
                    relaxed = path != null && (relaxed == null || path.compareTo(relaxed) < 0) ? path : relaxed;
                }
                branched += new RingBiclique(cells).nearestPair(relaxed) == null ? 0 : 1;
            }
        }
        assertTrue(rings > SCENES / 3 && none > SCENES / 10 && branched > SCENES / 100 && shortOfIdeal > SCENES / 4,
                rings + " rings, " + none + " without, " + branched + " branched, " + shortOfIdeal + " short of the ideal");
    }

    @Test
    void whenTheWorkRunsOutTheBoundsHold() {
        int open = 0;
        for (long seed = 1; seed <= SCENES / 4; seed++) {
            Scene scene = Scene.of(100_000 + seed);
            PlainRing plain = new PlainRing(scene.cells(), scene.modules(), scene.apartM(), scene.cells().size());
            RingSearch search = new RingSearch(RingScenes.cells(scene.cells(), scene.apartM()), scene.modules(),
                    1 + random(seed).nextInt(2000));
            Optional<Ring> found = search.ring();
            if (found.isEmpty()) {
                RingFit fit = search.fit();
                int least = Math.min(plain.fit, scene.modules());
                assertTrue(fit.atLeast() <= least && least <= fit.atMost(), () -> scene.name() + ": " + fit + " of " + plain.fit);
                continue;
            }
            Ring ring = found.get();
            open += ring.exact() ? 0 : 1;
            int even = plain.evenness;
            assertTrue(ring.evennessDeg() <= even && even <= ring.evennessBoundDeg(), () -> scene.name() + ": " + ring);
            if (ring.evennessDeg() == even) {
                assertTrue(ring.total() <= plain.billionths * 1e-9 + 1e-12, scene.name());
            }
            assertTrue(ring.totalBound() >= ring.total() && ring.totalBound() >= plain.billionths * 1e-9 - 1e-12, () -> scene.name() + ": " + ring);
            if (ring.exact()) {
                assertEquals(even, ring.evennessDeg(), scene.name());
                assertEquals(plain.billionths, Math.round(ring.total() * 1e9), scene.name());
            }
        }
        assertTrue(open > 20, open + " scenes left open");
    }

    /** Enough cells for wide windows and many branches; two to four modules keep the plain search short. */
    @Test
    void ringOfFewAmongManyCellsIsTheBest() {
        for (long seed = 1; seed <= 40; seed++) {
            Random random = random(200_000 + seed);
            double innerM = 10 + 40 * random.nextDouble();
            double outerM = innerM * (1.2 + 2 * random.nextDouble());
            int modules = 2 + random.nextInt(3);
            List<RingCell> cells = new RingScenes.Shape(innerM, outerM, outerM / 12, 0, 360, random.nextInt(3), random.nextBoolean(),
                    modules == 4 ? 50 : 120).cells(random);
            Scene scene = new Scene(cells, modules, innerM * (0.8 + 0.8 * random.nextDouble()), "seed " + (200_000 + seed));
            RingSearch search = new RingSearch(RingScenes.cells(cells, scene.apartM()), modules, RingSearch.MOST_WORK);
            assertSame(scene, new PlainRing(cells, modules, scene.apartM(), modules), search.ring());
        }
    }

    /** The sizes met in practice, by the work that is counted: that is the same on every machine. */
    @ParameterizedTest
    @CsvSource({"60, 150, 5, 0, false, 8, 60, 44", "60, 150, 5, 1, false, 8, 60, 44", "60, 150, 5, 0, true, 8, 60, 44",
        "60, 150, 5, 0, true, 12, 60, 29", "60, 150, 5, 0, false, 5, 150, 71", "60, 500, 20, 0, true, 12, 100, 29",
        "60, 300, 5, 0, false, 12, 100, 29", "60, 1000, 20, 0, true, 10, 150, 35"})
    void ringsOfAUsualSizeAreExactWithATwentiethOfTheWork(double innerM, double outerM, double cellM, int levels,
            boolean bestWithin, int modules, double apartM, int evennessDeg) {
        List<RingCell> cells = new RingScenes.Shape(innerM, outerM, cellM, 0, 360, levels, bestWithin, 20_000).cells(random(7));
        RingSearch search = new RingSearch(RingScenes.cells(cells, apartM), modules, RingSearch.MOST_WORK);
        Ring ring = search.ring().orElseThrow();
        assertTrue(ring.exact(), () -> "" + ring);
        assertEquals(evennessDeg, ring.evennessDeg());
        long used = RingSearch.MOST_WORK - search.workLeft();
        assertTrue(used < RingSearch.MOST_WORK / 20, () -> "work " + used);
    }
}
