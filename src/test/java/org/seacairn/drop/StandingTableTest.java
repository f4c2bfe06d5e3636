package org.seacairn.drop;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.plan.SitingPlan;

class StandingTableTest {
    private static final SitingPlan PLAN = DropPlans.plan(DropPlans.MODULE, 0.1, 10, 5, DropPlans.STRONG, DropPlans.BACK);
    private static final List<StandingTable.Row> ROWS = StandingTable.of(PLAN, ModuleDrop.of(PLAN).orElseThrow());

    @ParameterizedTest
    @CsvSource({"60, 150, 60 80 100 120 140 150", "0, 9, 0 2 4 6 8 9", "60, 60, 60", "200, 150, 150", "61.5, 62, 61.5 62", "0, 2000, 0 500 1000 1500 2000"})
    void depthsAreRoundBetweenTheEnds(double shallowestM, double deepestM, String expected) {
        double[] depths = StandingTable.depths(shallowestM, deepestM);
        assertArrayEquals(java.util.Arrays.stream(expected.split(" ")).mapToDouble(Double::parseDouble).toArray(), depths, 1e-12,
                java.util.Arrays.toString(depths));
    }

    @Test
    void everyBottomThatIsAllowedMeetsEveryCurrentAtEveryDepth() {
        assertEquals(2 * 6 * 6, ROWS.size());
        assertEquals(List.of("mud", "sand"), ROWS.stream().map(StandingTable.Row::bottom).distinct().toList());
        assertEquals(12, ROWS.stream().filter(StandingTable.Row::asStated).count());
    }

    @Test
    void withoutCurrentThereIsNoDriftAndMoreOfItDriftsFarther() {
        List<StandingTable.Row> at100 = ROWS.stream().filter(r -> r.bottom().equals("mud") && r.depthM() == 100 && !r.asStated()).toList();
        assertEquals(0, at100.get(0).touchdown().driftM(), 1e-9);
        for (int i = 1; i < at100.size(); i++) {
            assertTrue(at100.get(i).touchdown().driftM() > at100.get(i - 1).touchdown().driftM());
            assertTrue(at100.get(i).steepestDeg() < at100.get(i - 1).steepestDeg() + 1e-9);
        }
    }

    /** Scaled to 4 kn at a surface that hardly moves, the water below would race. */
    @ParameterizedTest
    @CsvSource({"1, 6", "0.5, 6", "0.49, 2", "0.000001, 2", "0, 2"})
    void aProfileThatIsFasterBelowIsNotScaledByItsSurface(double surfaceMPerS, int currents) {
        SitingPlan plan = DropPlans.plan(DropPlans.MODULE, 0.1, 10, 5, DropPlans.profile("under", 0, surfaceMPerS, 12, 40, 1, 15, 160, 0.4, 30));
        List<StandingTable.Row> rows = StandingTable.of(plan, ModuleDrop.of(plan).orElseThrow());
        assertEquals(currents, rows.stream().filter(r -> r.bottom().equals("mud") && r.depthM() == 100).count());
    }

    @Test
    void theFactorIsThatOfThePlan() {
        assertEquals(1.5, StandingTable.factor(PLAN));
    }
}
