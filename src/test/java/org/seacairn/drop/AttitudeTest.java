package org.seacairn.drop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seacairn.plan.ModuleBody;
import org.seacairn.plan.ModuleBody.AddedMass;
import org.seacairn.plan.ModuleBody.Base;
import org.seacairn.plan.ModuleBody.Drag;
import org.seacairn.plan.ModuleBody.Pole;
import org.seacairn.plan.ModuleBody.Shape;

class AttitudeTest {
    private static final SinkingBody SAMPLE = SinkingBody.of(Modules.sample(), Modules.SAMPLE_HEIGHT_M);

    /** Rounding alone tilts it a little: in this model the sample module ends up in a flutter of 0.3 to 0.7 degrees. */
    @Test
    void uprightStaysUprightInStillWater() {
        Attitude attitude = Attitude.of(SAMPLE, Currents.still(150), 0, 150);
        assertEquals(0, attitude.tiltDegAt(150), 1e-5);
        assertEquals(0, attitude.worstTiltDegNear(75), 1e-5);
        assertEquals(OptionalDouble.of(0), attitude.settledDepthM());
        assertEquals(OptionalDouble.of(0), attitude.settledTimeS());
        assertTrue(attitude.rightsItself());
    }

    /** And it takes as long as the closed form says. */
    @Test
    void uprightItSinksAsTheDescentDoes() {
        Swing swing = swing(SAMPLE, Currents.still(150), 0, true);
        assertEquals(Descent.of(SAMPLE, Currents.still(150), 100).at(100).timeS(), swing.timeS(swing.count() - 1), 1e-6);
    }

    @Test
    void inStillWaterItEndsInASmallFlutter() {
        Flow still = Currents.still(600);
        Swing ideal = new Swing(new PlanarMotion(SAMPLE, still, 0, true), 5, 600, 200);
        Swing separated = new Swing(new PlanarMotion(SAMPLE, still, 0, false), 5, 600, 200);
        assertEquals(0.675, ideal.worstTiltDeg(550, 600), 0.01);
        assertEquals(0.314, separated.worstTiltDeg(550, 600), 0.01);
    }

    /** Upright in still water nothing glides; in the current the leaning module does, the way that the Lagrangian test confirms. */
    @Test
    void aLeaningModuleGlides() {
        assertEquals(0, Attitude.of(SAMPLE, Currents.still(150), 0, 150).glideM(150), 1e-4);
        Attitude inCurrent = Attitude.of(SAMPLE, Currents.sample(), 0, 150);
        Touchdown upright = Descent.of(SAMPLE, Currents.sample(), 150).at(150);
        double along = upright.driftM() * Math.cos(Math.toRadians(12) - Math.atan2(upright.driftEastM(), upright.driftNorthM()));
        double leaningM = new Swing(new PlanarMotion(SAMPLE, Currents.sample(), 12, false), 0, 155, 60).forwardMAt(150);
        assertEquals(leaningM - along, inCurrent.glideM(150), 1e-6);
        assertTrue(inCurrent.glideM(150) > 10 && inCurrent.glideM(150) < 25, "" + inCurrent.glideM(150));
        assertEquals(0, inCurrent.glideM(0));
    }

    @ParameterizedTest
    @ValueSource(doubles = {30, 60, 90})
    void theSampleModuleRightsItselfFromItsSide(double tiltDeg) {
        for (Flow flow : new Flow[] {Currents.still(150), Currents.sample()}) {
            Attitude attitude = Attitude.of(SAMPLE, flow, tiltDeg, 150);
            assertTrue(attitude.rightsItself());
            assertTrue(attitude.settledDepthM().orElseThrow() < 25, attitude.settledDepthM().toString());
            assertTrue(attitude.settledTimeS().orElseThrow() < 8, attitude.settledTimeS().toString());
            assertTrue(attitude.worstTiltDegNear(100) < 3);
            assertTrue(attitude.tiltDegAt(100) <= attitude.worstTiltDegNear(100));
            assertEquals(tiltDeg, attitude.tiltDegAt(0), 1e-9);
            assertTrue(attitude.worstTiltDegNear(0) >= tiltDeg - 1e-9);
        }
    }

    /** An ideal flow holds the plate broadside either way up; without that it comes round. The worse counts. */
    @Test
    void nearlyUpsideDownMayStaySo() {
        Flow still = Currents.still(150);
        assertFalse(Attitude.of(SAMPLE, still, 179, 150).rightsItself());
        assertTrue(swing(SAMPLE, still, 179, true).tiltDegAt(100) > 170);
        assertTrue(swing(SAMPLE, still, 179, false).tiltDegAt(100) < 5);
    }

    /** The plan lets a pole pass that is just lighter than the base; it does not come upright from its side. */
    @Test
    void aPoleAsHeavyAsTheBaseDoesNotRightItself() {
        SinkingBody body = SinkingBody.of(Modules.sample(7711, 7700), Modules.SAMPLE_HEIGHT_M);
        Attitude attitude = Attitude.of(body, Currents.still(150), 90, 150);
        assertFalse(attitude.rightsItself());
        assertEquals(OptionalDouble.empty(), attitude.settledTimeS());
        assertEquals(OptionalDouble.empty(), attitude.settledDepthM());
        assertTrue(attitude.tiltDegAt(150) > 90);
    }

    /** Nearly massless water and no drag: nothing turns it, and it falls at g. */
    @Test
    void withoutWaterItFallsFreelyAsItWasLetGo() {
        OptionalDouble none = OptionalDouble.of(0);
        SinkingBody body = SinkingBody.of(new ModuleBody(new Base(Shape.SQUARE, 2, 2, 0.5, 6000, 1e-9, 0),
                new Pole(1e-9, 6, 500, 1e-30), new Drag(none, none, none, none, 0), new AddedMass(none, none, none), none, 0), 6.5);
        Swing swing = new Swing(new PlanarMotion(body, Currents.still(100), 0, true), 40, 100, 100);
        assertEquals(40, swing.tiltDegAt(100), 1e-6);
        assertEquals(Math.sqrt(2 * 100 / 9.81), swing.timeS(swing.count() - 1), 1e-6);
    }

    @Test
    void mirroredItTiltsTheOtherWay() {
        for (int seed = 0; seed < 10; seed++) {
            Random random = new Random(seed);
            SinkingBody body = random(random);
            Flow flow = Currents.random(random, 50);
            double tiltDeg = 100 * random.nextDouble();
            Swing one = new Swing(new PlanarMotion(body, flow, 70, seed % 2 == 0), tiltDeg, 40, 60);
            Swing other = new Swing(new PlanarMotion(body, flow.turned(180), 70, seed % 2 == 0), -tiltDeg, 40, 60);
            for (int i = 0; i < one.count(); i += 50) {
                assertEquals(one.signedTiltDeg(i), -other.signedTiltDeg(i), 1e-4, "seed " + seed);
                assertEquals(one.depthM(i), other.depthM(i), 1e-5, "seed " + seed);
            }
        }
    }

    /** Seen from water that moves along, kinetic energy is what weight gave and drag took. */
    @Test
    void energyIsAccountedFor() {
        for (int seed = 0; seed < 20; seed++) {
            Random random = new Random(seed);
            SinkingBody body = random(random);
            double waterMPerS = seed < 10 ? 0 : 2 * random.nextDouble();
            double tiltDeg = 175 * random.nextDouble();
            PlanarMotion motion = new PlanarMotion(body, Currents.uniform(waterMPerS, 30, 100), 30, seed % 2 == 0);
            double[] start = new double[PlanarMotion.DIMENSION];
            start[PlanarMotion.TILT] = Math.toRadians(tiltDeg);
            double[] end = new Swing(motion, tiltDeg, 100, 100).end();
            start[PlanarMotion.SPEED_X] -= waterMPerS;
            end[PlanarMotion.SPEED_X] -= waterMPerS;
            double gainedJ = motion.kineticJ(end) - motion.kineticJ(start);
            double givenJ = motion.potentialJ(start) - motion.potentialJ(end) + motion.workJ(end);
            assertTrue(motion.kineticJ(end) > 1e4);
            assertEquals(givenJ, gainedJ, 1e-6 * motion.kineticJ(end), "seed " + seed);
            assertTrue(end[PlanarMotion.DRAG_WORK] < 0);
        }
    }

    /** Lagrange's equations, with a mass matrix summed up from the parts and its slope by differences, in small plain steps. */
    @Test
    void plainStepsOfLagrangesEquationsGiveTheSame() {
        for (int seed = 0; seed < 8; seed++) {
            Random random = new Random(seed);
            SinkingBody body = seed == 0 ? SAMPLE : random(random);
            Flow flow = Currents.random(random, 110);
            double tiltDeg = 240 * random.nextDouble() - 120;
            boolean baseMunk = seed % 2 == 0;
            Swing swing = new Swing(new PlanarMotion(body, flow, 40, baseMunk), tiltDeg, 30, 60);
            PlainTurning plain = new PlainTurning(body, flow, 40, baseMunk, tiltDeg);
            int compared = 0;
            while (compared < swing.count() - 1) {
                assertEquals(swing.timeS(compared), plain.seconds(), 1e-9);
                assertEquals(plain.tiltDeg(), swing.signedTiltDeg(compared), 0.02, "seed " + seed + ", depth " + plain.depthM());
                assertEquals(plain.depthM(), swing.depthM(compared), 0.002, "seed " + seed + ", depth " + plain.depthM());
                assertEquals(plain.forwardM(), swing.forwardM(compared), 0.01, "seed " + seed + ", depth " + plain.depthM());
                plain.step(0.02);
                compared++;
            }
            assertTrue(compared > 200);
        }
    }

    /** However it is let go, in whatever current, it comes down within the time it is given. */
    @Test
    void everyModuleComesDown() {
        for (int seed = 0; seed < 40; seed++) {
            Random random = new Random(seed);
            Attitude attitude = Attitude.of(random(random), Currents.random(random, 100), 180 * random.nextDouble(), 100);
            double tiltDeg = attitude.worstTiltDegNear(100);
            assertTrue(tiltDeg >= attitude.tiltDegAt(100) && tiltDeg <= 180, "seed " + seed + ", tilt " + tiltDeg);
            assertTrue(attitude.settledDepthM().isEmpty() || attitude.rightsItself(), "seed " + seed);
        }
    }

    @Test
    void whatIsNotKnownIsRefused() {
        assertEquals("release tilt 181.0 deg, which is not 0 to 180", assertThrows(IllegalArgumentException.class,
                () -> Attitude.of(SAMPLE, Currents.sample(), 181, 100)).getMessage());
        assertEquals("descent to 221.0 m in a current known to 220.0 m", assertThrows(IllegalArgumentException.class,
                () -> Attitude.of(SAMPLE, Currents.sample(), 0, 221)).getMessage());
        Attitude attitude = Attitude.of(SAMPLE, Currents.sample(), 0, 60);
        assertThrows(IllegalArgumentException.class, () -> attitude.tiltDegAt(61));
        assertThrows(IllegalArgumentException.class, () -> attitude.worstTiltDegNear(Double.NaN));
    }

    private static Swing swing(SinkingBody body, Flow flow, double tiltDeg, boolean baseMunk) {
        return new Swing(new PlanarMotion(body, flow, flow.surfaceTowardDeg(), baseMunk), tiltDeg, 100, 60);
    }

    private static SinkingBody random(Random random) {
        ModuleBody module = Modules.random(random);
        return SinkingBody.of(module, Modules.heightM(module));
    }
}
