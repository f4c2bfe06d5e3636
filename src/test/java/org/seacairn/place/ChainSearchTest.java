package org.seacairn.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Chains against every possible chain, by geodesic distances and plain loops. */
class ChainSearchTest {
    private static final int MOST_STEPS = 100_000;

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

    @Test
    void isTheBestOfAllChainsOfEachNumber() {
        Random random = new Random(20260102);
        int joined = 0;
        int several = 0;
        int none = 0;
        int doubledBack = 0;
        for (int i = 0; i < 4000; i++) {
            ChainScene scene = new ChainScene(random, 4 + random.nextInt(14), 1 + random.nextInt(8), 26, random.nextDouble());
            EveryChain every = new EveryChain(scene);
            if (every.steps > MOST_STEPS) {
                continue;
            }
            ChainSearch.Result found = ChainSearch.fewest(scene.corridor, scene.gaps, 1 + i % 2);
            String name = "scene " + i;
            assertEquals(List.of(), found.undecided(), name);
            if (every.best.isEmpty()) {
                none++;
                assertEquals(List.of(), found.chains(), name);
                assertEquals(every.chains == 0, found.unbridged().isPresent(), name);
                continue;
            }
            int fewest = every.best.keySet().iterator().next();
            List<Integer> expected = every.best.keySet().stream().filter(k -> k <= fewest + 2).toList();
            assertEquals(expected, found.chains().stream().map(c -> c.modules().size()).toList(), name);
            for (Chain chain : found.chains()) {
                int k = chain.modules().size();
                assertEquals(every.names(k), names(chain), name);
                assertTrue(chain.proven(), name);
                assertEquals(k == 0 ? Double.NaN : every.total.get(k) / 16_777_216.0 / k, chain.meanScore(), name);
                assertGaps(scene, chain, name);
            }
            joined += fewest == 0 ? 1 : 0;
            several += fewest > 1 ? 1 : 0;
            doubledBack += every.doubled.contains(fewest) ? 1 : 0;
            assertFalse(every.doubled.contains(fewest) && (fewest - 1) * scene.gaps.mostM() + scene.gaps.apartM() < scene.stonesApartM,
                    () -> name + ": too near each other, though the stones are too far apart for that");
        }
        assertTrue(joined > 50 && several > 300 && none > 300 && doubledBack > 50,
                joined + " joined, " + several + " of several modules, " + none + " without, " + doubledBack + " that double back");
    }

    private static void assertGaps(ChainScene scene, Chain chain, String name) {
        assertEquals(chain.modules().size() + 1, chain.gaps().size(), name);
        for (Chain.Gap gap : chain.gaps()) {
            assertTrue(scene.gap(gap.distanceM()), () -> name + ": " + gap + " for " + scene.gaps);
        }
    }
}
