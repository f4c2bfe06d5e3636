package org.seacairn.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Chains in corridors of some hundred cells, without a distance between modules that are no neighbours, against a plain table. */
class ChainPlainTest {

    /** By cell and modules to come, the highest total to the end, or -1. */
    private static long[][] ends(ChainScene scene, int most) {
        int n = scene.cells.size();
        long[][] ends = new long[most + 1][n];
        for (int k = 0; k <= most; k++) {
            for (int i = 0; i < n; i++) {
                long best = k == 1 && scene.gap(scene.toEnd[i]) ? 0 : -1;
                for (int j = i + 1; k > 1 && j < n; j++) {
                    best = scene.follows(j, i) ? Math.max(best, ends[k - 1][j]) : best;
                }
                ends[k][i] = best < 0 ? -1 : best + (long) Math.rint(scene.cells.get(i).score() * 16_777_216.0);
            }
        }
        return ends;
    }

    /** The best chain of so many modules, the first by the rule for ties; empty: there is none. */
    private static List<String> best(ChainScene scene, long[][] ends, int modules) {
        List<String> chain = new ArrayList<>();
        int last = -1;
        for (int k = modules; k > 0; k--) {
            int best = -1;
            for (int i = last + 1; i < scene.cells.size(); i++) {
                boolean follows = last < 0 ? scene.gap(scene.fromStart[i]) : scene.follows(i, last);
                best = follows && ends[k][i] > (best < 0 ? -1 : ends[k][best]) ? i : best;
            }
            if (best < 0) {
                return List.of();
            }
            chain.add(scene.cells.get(best).name());
            last = best;
        }
        return chain;
    }

    @Test
    void isTheBestByAPlainTableWithOneThreadAndTwo() {
        Random random = new Random(20260104);
        int bridged = 0;
        int longest = 0;
        for (int i = 0; i < 60; i++) {
            ChainScene scene = new ChainScene(random, 20 + random.nextInt(30), 5 + random.nextInt(12), 300, 0, 0.3 + random.nextDouble());
            ChainSearch.Result found = ChainSearch.fewest(scene.corridor, scene.gaps, 1);
            ChainSearch.Result again = ChainSearch.fewest(scene.corridor, scene.gaps, 2);
            assertEquals(found.toString(), again.toString(), "scene " + i);
            int fewest = found.fewest().orElse(0);
            long[][] ends = ends(scene, fewest + 2);
            for (int k = 1; k <= fewest + 2; k++) {
                int modules = k;
                List<String> chain = found.chains().stream().filter(c -> c.modules().size() == modules).findFirst()
                        .map(c -> c.modules().stream().map(p -> p.col() + " " + p.row()).toList()).orElse(List.of());
                assertEquals(best(scene, ends, k), chain, "scene " + i + ", " + k + " modules");
            }
            bridged += fewest > 0 ? 1 : 0;
            longest = Math.max(longest, fewest);
        }
        assertTrue(bridged > 20 && longest > 5, bridged + " bridged, the longest by " + longest);
    }

    /** The ends of the stretch are the furthest cells of a plain closure from either stone. */
    @Test
    void unbridgedStretchEndsWhereAPlainClosureEnds() {
        Random random = new Random(20260105);
        int stretches = 0;
        for (int i = 0; i < 500; i++) {
            ChainScene scene = new ChainScene(random, 10 + random.nextInt(30), 2 + random.nextInt(8), 40, 0.5, 0.1 + random.nextDouble());
            ChainSearch.Result found = ChainSearch.fewest(scene.corridor, scene.gaps, 2);
            if (found.unbridged().isEmpty()) {
                continue;
            }
            Unbridged unbridged = found.unbridged().get();
            assertEquals(furthest(scene), unbridged.fromAlongM(), "scene " + i);
            assertEquals(leastBack(scene), unbridged.toAlongM(), "scene " + i);
            assertEquals(unbridged.fromAlongM() == 0, unbridged.from().isEmpty(), "scene " + i);
            assertEquals(scene.stonesApartM, unbridged.stonesApartM(), 1e-3, "scene " + i);
            stretches += unbridged.lengthM() > 0 && unbridged.from().isPresent() && unbridged.to().isPresent() ? 1 : 0;
        }
        assertTrue(stretches > 10, stretches + " stretches between two cells");
    }

    private static double furthest(ChainScene scene) {
        boolean[] reached = new boolean[scene.cells.size()];
        double furthest = 0;
        for (int i = 0; i < reached.length; i++) {
            reached[i] = scene.gap(scene.fromStart[i]);
            for (int j = 0; j < i; j++) {
                reached[i] |= reached[j] && scene.follows(i, j);
            }
            furthest = reached[i] ? Math.max(furthest, scene.cells.get(i).alongMm() / 1000.0) : furthest;
        }
        return furthest;
    }

    private static double leastBack(ChainScene scene) {
        boolean[] reaching = new boolean[scene.cells.size()];
        double least = scene.corridor.axis().lengthM();
        for (int i = reaching.length - 1; i >= 0; i--) {
            reaching[i] = scene.gap(scene.toEnd[i]);
            for (int j = i + 1; j < reaching.length; j++) {
                reaching[i] |= reaching[j] && scene.follows(j, i);
            }
            least = reaching[i] ? Math.min(least, scene.cells.get(i).alongMm() / 1000.0) : least;
        }
        return least;
    }
}
