package org.seacairn.drop;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.seacairn.plan.SitingPlan.CurrentLevel;
import org.seacairn.plan.SitingPlan.CurrentProfile;

/** Currents of the tests. */
final class Currents {
    private static final double KNOT = 1852.0 / 3600;

    private Currents() {}

    static Flow still(double deepestM) {
        return uniform(0, 0, deepestM);
    }

    static Flow uniform(double speedMPerS, double towardDeg, double deepestM) {
        return levels(new CurrentLevel(0, speedMPerS, towardDeg), new CurrentLevel(deepestM, speedMPerS, towardDeg));
    }

    static Flow levels(CurrentLevel... levels) {
        return Flow.of(new CurrentProfile("", List.of(levels)));
    }

    /** That of the sample layers. */
    static Flow sample() {
        return levels(new CurrentLevel(0, 3.8 * KNOT, 12), new CurrentLevel(15, 3.6 * KNOT, 13),
                new CurrentLevel(40, 2.9 * KNOT, 15), new CurrentLevel(80, 1.9 * KNOT, 19),
                new CurrentLevel(130, 1.1 * KNOT, 26), new CurrentLevel(220, 0.5 * KNOT, 35));
    }

    /** Up to six levels, up to 2 m/s, in any direction each. */
    static Flow random(Random random, double deepestM) {
        List<CurrentLevel> levels = new ArrayList<>();
        for (double m = 20 * random.nextDouble(); m < deepestM; m += 5 + 50 * random.nextDouble()) {
            levels.add(new CurrentLevel(m, 2 * random.nextDouble(), 360 * random.nextDouble()));
        }
        levels.add(new CurrentLevel(deepestM, random.nextDouble(), 360 * random.nextDouble()));
        return levels(levels.toArray(CurrentLevel[]::new));
    }
}
