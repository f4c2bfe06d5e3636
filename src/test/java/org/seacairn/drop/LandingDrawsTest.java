package org.seacairn.drop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.seacairn.plan.ModuleBody;
import org.seacairn.plan.SitingPlan.CurrentProfile;

class LandingDrawsTest {
    private static ModuleBody body(double scatterDeg, double dragUncertainty) {
        ModuleBody m = DropPlans.MODULE;
        ModuleBody.Drag drag = m.drag();
        return new ModuleBody(m.base(), m.pole(), new ModuleBody.Drag(drag.baseAxial(), drag.baseLateral(), drag.poleAxial(),
                drag.poleLateral(), dragUncertainty), m.addedMass(), OptionalDouble.of(scatterDeg), 90);
    }

    private static ModuleDrop drop(double scatterDeg, double dragUncertainty, double speedShare, double directionDeg, double bargeM,
            CurrentProfile... profiles) {
        return ModuleDrop.of(DropPlans.plan(body(scatterDeg, dragUncertainty), speedShare, directionDeg, bargeM, profiles)).orElseThrow();
    }

    /** Scatter and barge are round normal errors, for which the radius is known. */
    @Test
    void roundErrorsAloneGiveTheirOwnRadius() {
        double scatterM = 2.4477 * 100 * Math.tan(Math.toRadians(5));
        int held = 0;
        for (int seed = 1; seed <= 20; seed++) {
            LandingDraws scatter = LandingDraws.of(drop(5, 0, 0, 0, 0, DropPlans.STRONG), 0, 100, 1000, seed);
            assertTrue(scatter.highM() - scatter.lowM() < 0.16 * scatterM, scatter.toString());
            LandingDraws barge = LandingDraws.of(drop(0, 0, 0, 0, 12, DropPlans.STRONG), 0, 100, 1000, 100 + seed);
            held += scatter.lowM() <= scatterM && scatterM <= scatter.highM() ? 1 : 0;
            held += barge.lowM() <= 12 && 12 <= barge.highM() ? 1 : 0;
        }
        // Of 40 intervals at 95 % two miss on average; six or more would in one run of seventy.
        assertTrue(held >= 35, "of 40 intervals only " + held + " hold the radius");
    }

    /** One error along one line: 95 % lie within its own 95 % figure. */
    @Test
    void aSpeedErrorAloneReachesAsFarAsItsPart() {
        ModuleDrop drop = drop(0, 0, 0.1, 0, 0, DropPlans.STRONG);
        LandingDraws draws = LandingDraws.of(drop, 0, 100, 4000, 3);
        assertEquals(drop.landing(0, 100).radiusM(), draws.radiusM(), 0.05 * draws.radiusM());
    }

    @Test
    void theRootOfSquaresIsOnTheSafeSideOfAllErrorsTogetherAndNotByMuch() {
        ModuleDrop drop = drop(3, 0.2, 0.2, 15, 5, DropPlans.STRONG);
        for (double depthM : new double[] {60, 100, 150}) {
            LandingDraws draws = LandingDraws.of(drop, 0, depthM, 4000, 4);
            double radiusM = drop.landing(0, depthM).radiusM();
            assertTrue(radiusM > 0.98 * draws.lowM() && radiusM < 1.25 * draws.highM(), depthM + " m: " + radiusM + ", " + draws);
        }
    }

    @Test
    void theSeedDecides() {
        ModuleDrop drop = drop(5, 0.2, 0.2, 10, 5, DropPlans.STRONG);
        assertEquals(LandingDraws.of(drop, 0, 90, 500, 7), LandingDraws.of(drop, 0, 90, 500, 7));
        assertNotEquals(LandingDraws.of(drop, 0, 90, 500, 7), LandingDraws.of(drop, 0, 90, 500, 8));
    }

    @Test
    void opinionsAreGivenInWords() {
        LandingDraws draws = new LandingDraws(20, 19.5, 20.5, 4000);
        assertEquals("the draws agree with it", draws.opinionOf(new LandingParts(20, 0, 0, 0)));
        assertTrue(draws.opinionOf(new LandingParts(25, 0, 0, 0)).startsWith("it is 25 % more than the draws"));
        assertTrue(draws.opinionOf(new LandingParts(15, 0, 0, 0)).startsWith("it is 25 % less than the draws"));
    }
}
