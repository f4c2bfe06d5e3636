package org.seacairn.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.seacairn.Progress;

/** Chains against every possible chain, by geodesic distances and plain loops. */
class ChainSearchTest {
    private static final int MOST_STEPS = 30_000;

    /** All chains of a scene, one after the other; keeps the best of each number of modules. */
    private static final class EveryChain {
        final ChainScene scene;
        final Map<Integer, List<Integer>> best = new TreeMap<>();
        final Map<Integer, Long> total = new TreeMap<>();
        /** Numbers of modules for which a chain keeps all gaps but not every distance apart. */
        final Set<Integer> doubled = new TreeSet<>();
        final List<Integer> chain = new ArrayList<>();
        int chains;
        int steps;

        EveryChain(ChainScene scene) {
            this.scene = scene;
            if (scene.gap(scene.stonesApartM)) {
                take();
            }
            for (int i = 0; i < scene.cells.size(); i++) {
                if (scene.gap(scene.fromStart[i])) {
                    extend(i);
                }
            }
        }

        private void extend(int cell) {
            if (steps++ > MOST_STEPS) {
                return;
            }
            chain.add(cell);
            if (scene.gap(scene.toEnd[cell])) {
                take();
            }
            for (int next = cell + 1; next < scene.cells.size(); next++) {
                if (scene.follows(next, cell)) {
                    extend(next);
                }
            }
            chain.remove(chain.size() - 1);
        }

        private void take() {
            chains++;
            for (int i = 0; i < chain.size(); i++) {
                for (int j = 0; j < i; j++) {
                    if (scene.between[chain.get(i)][chain.get(j)] < scene.gaps.apartM()) {
                        doubled.add(chain.size());
                        return;
                    }
                }
            }
            long sum = chain.stream().mapToLong(i -> units(scene.cells.get(i).score())).sum();
            // Chains come in the order of the rule for ties: only a higher total displaces the first.
            if (sum > total.getOrDefault(chain.size(), -1L)) {
                total.put(chain.size(), sum);
                best.put(chain.size(), List.copyOf(chain));
            }
        }

        List<String> names(int modules) {
            return best.get(modules).stream().map(i -> scene.cells.get(i).name()).toList();
        }
    }

    /** A score in units of 2^-24, halves to the even one. */
    private static long units(float score) {
        return (long) Math.rint(score * 16_777_216.0);
    }

    private static List<String> names(Chain chain) {
        return chain.modules().stream().map(p -> p.col() + " " + p.row()).toList();
    }

    /** Long and narrow scenes, as they come. */
    @Test
    void isTheBestOfAllChainsOfEachNumber() {
        Tally tally = compareAll(20260102, 1000, random -> new ChainScene(random, 4 + random.nextInt(14), 1 + random.nextInt(8),
                10 + random.nextInt(14), random.nextDouble(), 1 + 2 * random.nextDouble()));
        assertTrue(tally.joined > 5 && tally.several > 200 && tally.none > 100, tally::toString);
    }

    /** Short and wide scenes with a narrow range of gaps, in which chains double back on themselves. */
    @Test
    void isTheBestOfAllChainsWhereTheyDoubleBack() {
        Tally tally = compareAll(20260103, 1000, random -> new ChainScene(random, 3 + random.nextInt(5), 5 + random.nextInt(8),
                26, 0.9, 0.15 + 0.4 * random.nextDouble()));
        assertTrue(tally.doubledBackLater > 60, tally::toString);
    }

    private static final class Tally {
        int joined;
        int several;
        int none;
        int doubledBack;
        int doubledBackLater;

        @Override
        public String toString() {
            return joined + " joined, " + several + " of several modules, " + none + " without; of the fewest modules " + doubledBack
                    + ", of more " + doubledBackLater + " that double back";
        }
    }

    private static Tally compareAll(long seed, int scenes, Function<Random, ChainScene> next) {
        Random random = new Random(seed);
        Tally tally = new Tally();
        for (int i = 0; i < scenes; i++) {
            ChainScene scene = next.apply(random);
            EveryChain every = new EveryChain(scene);
            if (every.steps <= MOST_STEPS) {
                compare("scene " + i, scene, every, 1 + i % 2, tally);
            }
        }
        return tally;
    }

    private static void compare(String name, ChainScene scene, EveryChain every, int threads, Tally tally) {
        ChainSearch.Result found = ChainSearch.fewest(scene.corridor, scene.gaps, threads);
        assertEquals(List.of(), found.undecided(), name);
        if (every.best.isEmpty()) {
            tally.none++;
            assertEquals(List.of(), found.chains(), name);
            assertEquals(every.chains == 0, found.unbridged().isPresent(), name);
            return;
        }
        int fewest = every.best.keySet().iterator().next();
        assertEquals(fewest, found.fewest().orElseThrow(), name);
        assertEquals(every.best.keySet().stream().filter(k -> k <= fewest + 2).toList(), sizes(found), name);
        found.chains().forEach(chain -> assertBest(name, scene, every, chain));
        assertExactly(name, scene, every, fewest, threads);
        tally.joined += fewest == 0 ? 1 : 0;
        tally.several += fewest > 1 ? 1 : 0;
        tally.doubledBack += every.doubled.contains(fewest) ? 1 : 0;
        tally.doubledBackLater += every.doubled.contains(fewest + 1) || every.doubled.contains(fewest + 2) ? 1 : 0;
        for (int k : every.doubled) {
            assertTrue((k - 1) * scene.gaps.mostM() + scene.gaps.apartM() > scene.stonesApartM,
                    () -> name + ": the stones are too far apart for " + k + " modules to double back");
        }
    }

    private static List<Integer> sizes(ChainSearch.Result found) {
        return found.chains().stream().map(c -> c.modules().size()).toList();
    }

    private static void assertBest(String name, ChainScene scene, EveryChain every, Chain chain) {
        int k = chain.modules().size();
        assertEquals(every.names(k), names(chain), name);
        assertTrue(chain.proven(), name);
        assertEquals(k == 0 ? Double.NaN : every.total.get(k) / 16_777_216.0 / k, chain.meanScore(), name);
        assertGaps(scene, chain, name);
    }

    private static void assertExactly(String name, ChainScene scene, EveryChain every, int fewest, int threads) {
        for (int k = Math.max(0, fewest - 1); k <= fewest + 4; k++) {
            if (k > ChainSearch.mostThatFit(scene.corridor, scene.gaps.apartM())) {
                return;
            }
            ChainSearch.Result asked = ChainSearch.exactly(scene.corridor, scene.gaps, k, threads);
            int most = k < fewest ? fewest + 2 : k;
            assertEquals(every.best.containsKey(k) ? List.of(k) : every.best.keySet().stream().filter(n -> n <= most).toList(),
                    sizes(asked), name + ", exactly " + k);
            asked.chains().forEach(chain -> assertBest(name, scene, every, chain));
        }
    }

    /** A search that gives up early states a bound that no chain exceeds, and calls nothing proven that is not. */
    @Test
    void boundOfAnUnfinishedSearchIsNoLessThanTheBest() {
        Random random = new Random(20260106);
        int unfinished = 0;
        for (int i = 0; i < 400; i++) {
            ChainScene scene = new ChainScene(random, 3 + random.nextInt(5), 5 + random.nextInt(8), 26, 0.9, 0.15 + 0.4 * random.nextDouble());
            EveryChain every = new EveryChain(scene);
            try (Chunks chunks = new Chunks(1)) {
                ChainGraph graph = new ChainGraph(scene.corridor, scene.gaps, chunks);
                ChainLevels levels = new ChainLevels(graph, chunks, Progress.NONE);
                if (levels.fewest() == 0 || every.steps > MOST_STEPS) {
                    continue;
                }
                levels.compute(2);
                for (int k = levels.fewest(); k <= levels.fewest() + 2; k++) {
                    ApartSearch.Found found = ApartSearch.best(graph, levels, k, random.nextInt(6));
                    long best = every.total.getOrDefault(k, -1L);
                    assertTrue(found.bound() >= best, "scene " + i);
                    assertTrue(found.total() <= best, "scene " + i);
                    assertEquals(found.slots() == null, found.total() < 0, "scene " + i);
                    unfinished += found.total() < found.bound() ? 1 : 0;
                }
            }
        }
        assertTrue(unfinished > 30, unfinished + " unfinished");
    }

    private static void assertGaps(ChainScene scene, Chain chain, String name) {
        assertEquals(chain.modules().size() + 1, chain.gaps().size(), name);
        for (Chain.Gap gap : chain.gaps()) {
            assertTrue(scene.gap(gap.distanceM()), () -> name + ": " + gap + " for " + scene.gaps);
        }
    }
}
