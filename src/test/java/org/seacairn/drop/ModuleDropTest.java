package org.seacairn.drop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.junit.jupiter.api.Test;
import org.seacairn.plan.SitingPlan;

class ModuleDropTest {
    private static final SitingPlan PLAN = DropPlans.plan(DropPlans.MODULE, 0.15, 10, 5, DropPlans.STRONG, DropPlans.BACK);
    private static final ModuleDrop DROP = ModuleDrop.of(PLAN).orElseThrow();

    @Test
    void theLandingRadiusIsTheRootOfTheSquaresOfItsParts() {
        LandingParts parts = DROP.landing(0, 100);
        // DERIVED in the handbook way: 100 m, 5 deg: delta 8.75 m, 95 % in the plane 2.4477 delta.
        assertEquals(2.4477 * 8.7489, parts.scatterM(), 0.001);
        assertEquals(5, parts.bargeM());
        assertEquals(Math.sqrt(Math.pow(parts.scatterM(), 2) + Math.pow(parts.driftM(), 2) + Math.pow(parts.dragM(), 2) + 25),
                parts.radiusM(), 1e-12);
    }

    @Test
    void driftAndDragErrorsAreThoseOfDescentsWithTheErrorInThem() {
        SinkingBody body = DROP.body();
        Flow flow = Flow.of(DropPlans.STRONG);
        Touchdown stated = Descent.of(body, flow, 100).at(100);
        double faster = apartM(stated, Descent.of(body, flow.scaled(1.15), 100).at(100));
        double turned = apartM(stated, Descent.of(body, flow.turned(10), 100).at(100));
        assertEquals(Math.hypot(faster, turned), DROP.landing(0, 100).driftM(), 1e-6);
        assertEquals(apartM(stated, Descent.of(body.withDragScaled(1.2), flow, 100).at(100)), DROP.landing(0, 100).dragM(), 1e-6);
    }

    private static double apartM(Touchdown a, Touchdown b) {
        return Math.hypot(a.driftEastM() - b.driftEastM(), a.driftNorthM() - b.driftNorthM());
    }

    @Test
    void ofSeveralProfilesTheWorstMakesTheRadius() {
        assertTrue(DROP.landing(0, 120).radiusM() > DROP.landing(1, 120).radiusM());
        assertEquals(DROP.landing(0, 120), DROP.landing(120));
        SitingPlan turnedRound = DropPlans.plan(DropPlans.MODULE, 0.15, 10, 5, DropPlans.BACK, DropPlans.STRONG);
        assertEquals(LandingRadius.of(PLAN).atM(120), LandingRadius.of(turnedRound).atM(120));
    }

    @Test
    void aStatedRadiusHoldsEverywhere() {
        LandingRadius radius = LandingRadius.of(DropPlans.plan(DropPlans.MODULE, OptionalDouble.of(25), 0.15, 10, 5, DropPlans.STRONG));
        assertEquals(List.of(25.0, 25.0, 25.0, 25.0), List.of(radius.atM(Double.NaN), radius.atM(0), radius.atM(150), radius.largestM()));
        assertFalse(radius.isComputed());
    }

    @Test
    void aComputedRadiusNeverShrinksWithDepth() {
        // Below 60 m the water runs back and takes the module toward where it left the deck.
        SitingPlan plan = DropPlans.plan(DropPlans.MODULE, 0.3, 0, 0, DropPlans.profile("", 0, 2, 0, 60, 0, 0, 61, 2, 180, 160, 2, 180));
        LandingRadius radius = LandingRadius.of(plan);
        ModuleDrop drop = ModuleDrop.of(plan).orElseThrow();
        assertTrue(drop.landing(0, 100).driftM() < drop.landing(0, 60).driftM());
        for (double depthM = 0; depthM < 150; depthM += 0.7) {
            assertTrue(radius.atM(depthM + 0.7) >= radius.atM(depthM), "at " + depthM);
            assertTrue(radius.atM(depthM) >= drop.landing(depthM).radiusM() - 1e-3, "at " + depthM);
        }
        assertEquals(radius.largestM(), radius.atM(9000));
        assertEquals(radius.atM(0), radius.atM(Double.NaN));
    }

    @Test
    void fromTheReleasePointTheDriftLeadsToTheTarget() {
        List<PlannedDrop> drops = DROP.drops(-79.5, 29.5, 130, Geodesic.WGS84);
        assertEquals(List.of("strong", "back"), drops.stream().map(PlannedDrop::profile).toList());
        for (PlannedDrop drop : drops) {
            GeodesicData back = Geodesic.WGS84.Inverse(drop.releaseLatitudeDeg(), drop.releaseLongitudeDeg(), 29.5, -79.5);
            assertEquals(drop.touchdown().driftM(), back.s12, 1e-6);
            double toward = Math.toRadians(back.azi1);
            assertEquals(drop.touchdown().driftEastM(), back.s12 * Math.sin(toward), 1e-3);
            assertEquals(drop.touchdown().driftNorthM(), back.s12 * Math.cos(toward), 1e-3);
        }
        assertTrue(drops.get(0).bearingDeg() > 180 && drops.get(0).bearingDeg() < 210, "up-current: " + drops.get(0).bearingDeg());
    }

    @Test
    void inStillWaterTheReleasePointIsOverTheTarget() {
        ModuleDrop still = ModuleDrop.of(DropPlans.plan(DropPlans.MODULE, 0, 0, 0, DropPlans.profile("", 0, 0, 0, 150, 0, 0))).orElseThrow();
        PlannedDrop drop = still.drops(10, 60, 100, Geodesic.WGS84).get(0);
        assertEquals(10, drop.releaseLongitudeDeg(), 1e-12);
        assertEquals(60, drop.releaseLatitudeDeg(), 1e-12);
        assertTrue(Double.isNaN(drop.bearingDeg()));
    }

    @Test
    void itStandsWithTheFactorAskedForUpToTheSteepestSlope() {
        for (double depthM : new double[] {40, 60, 101.3, 150}) {
            double steepestDeg = DROP.steepestSlopeDeg(depthM, 1.5);
            assertEquals(1.5, DROP.stability(depthM, steepestDeg), 1e-9);
            assertTrue(DROP.stability(depthM, steepestDeg + 0.01) < 1.5);
            assertEquals(steepestDeg, DROP.steepestSlopeDeg(1.5).at(depthM), 0.05);
        }
    }

    @Test
    void theWorstProfileOverturns() {
        ModuleDrop strongOnly = ModuleDrop.of(DropPlans.plan(DropPlans.MODULE, 0, 0, 0, DropPlans.STRONG)).orElseThrow();
        ModuleDrop backOnly = ModuleDrop.of(DropPlans.plan(DropPlans.MODULE, 0, 0, 0, DropPlans.BACK)).orElseThrow();
        assertTrue(DROP.stability(70, 3) <= Math.min(strongOnly.stability(70, 3), backOnly.stability(70, 3)));
    }

    @Test
    void aBottomWithoutStrengthIsNotModelled() {
        Standing sand = DROP.standing(90, 1, Optional.of(DropPlans.SAND));
        assertTrue(Double.isNaN(sand.embedment().depthM()) && Double.isNaN(sand.reliefM()));
        assertTrue(sand.stability() > 1);
        assertEquals(sand.embedment(), DROP.standing(90, 1, Optional.empty()).embedment());
        Standing mud = DROP.standing(90, Double.NaN, Optional.of(DropPlans.MUD));
        assertEquals(7.62, mud.reliefM() + mud.embedment().depthM(), 1e-12);
        assertTrue(Double.isNaN(mud.stability()));
        assertEquals(mud.embedment().depthM(), DROP.embedmentM(DropPlans.MUD).at(90), 1e-4);
    }

    @Test
    void aKnotMoreCarriesItFartherAndLeavesTheTimeAsItIs() {
        ModuleDrop faster = DROP.inFasterCurrent(1852.0 / 3600);
        assertTrue(faster.touchdown(0, 100).driftM() > DROP.touchdown(0, 100).driftM() + 5);
        assertEquals(DROP.touchdown(0, 100).timeS(), faster.touchdown(0, 100).timeS());
        assertTrue(faster.stability(100, 2) < DROP.stability(100, 2));
    }

    @Test
    void aPlanWithoutModuleOrCurrentTellsNothing() {
        assertTrue(ModuleDrop.of(DropPlans.plan(null, 0, 0, 0, DropPlans.STRONG)).isEmpty());
        assertTrue(ModuleDrop.of(DropPlans.plan(DropPlans.MODULE, 0, 0, 0)).isEmpty());
        assertTrue(ModuleDrop.of(DropPlans.plan(DropPlans.MODULE, 0, 0, 0, DropPlans.profile("", 0, 1, 0))).isEmpty());
    }

    @Test
    void itReachesNoDeeperThanItsShallowestProfile() {
        ModuleDrop drop = ModuleDrop.of(DropPlans.plan(DropPlans.MODULE, 0, 0, 0, DropPlans.STRONG, DropPlans.profile("short", 0, 1, 0, 80, 1, 0))).orElseThrow();
        assertEquals(80, drop.deepestM());
        assertEquals(150, DROP.deepestM());
    }
}
