package org.seacairn.drop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class DescentTest {
    private static final SinkingBody SAMPLE = SinkingBody.of(Modules.sample(), Modules.SAMPLE_HEIGHT_M);

    /** Time and energy of the worked example of {@link SinkingBodyTest}, derived by hand from the closed form. */
    @Test
    void workedExample() {
        Descent descent = Descent.of(Modules.block(2, 6000, 2.5, 1.2, 2.5, 1, 1), Currents.still(150), 150);
        Touchdown at = descent.at(100);
        assertEquals(27.6608, at.timeS(), 5e-5);
        assertEquals(3.702442, at.sinkSpeedMPerS(), 5e-7);
        assertEquals(58_687.7, at.impactEnergyJ(), 0.05);
        assertEquals(0.99 * 3.702442, descent.at(6.82).sinkSpeedMPerS(), 1e-4);
    }

    @Test
    void stillWaterFromTheSurfaceDown() {
        double vt = SAMPLE.terminalSpeedMPerS();
        double scaleS = (SAMPLE.massKg() + SAMPLE.axialAddedMassKg()) * vt / SAMPLE.submergedWeightN();
        Descent descent = Descent.of(SAMPLE, Currents.still(150), 150);
        for (double t = 0.001; t < 40; t *= 1.3) {
            double z = vt * scaleS * Math.log(Math.cosh(t / scaleS));
            assertEquals(t, descent.at(z).timeS(), 1e-9 * t + 1e-11, "time to " + z);
            assertEquals(vt * Math.tanh(t / scaleS), descent.at(z).sinkSpeedMPerS(), 1e-8);
            assertEquals(0, descent.at(z).driftM());
        }
    }

    /** du/dt = k (U - u)^2 from rest: u = U - U / (1 + k U t), and the integral of that. */
    @Test
    void driftInAUniformCurrent() {
        double k = 1025 * SAMPLE.lateralDragAreaM2() / (2 * (SAMPLE.massKg() + SAMPLE.lateralAddedMassKg()));
        Descent descent = Descent.of(SAMPLE, Currents.uniform(1.8, 30, 150), 150);
        for (double z = 0.01; z <= 150; z *= 1.4) {
            Touchdown at = descent.at(z);
            double drift = 1.8 * at.timeS() - Math.log1p(k * 1.8 * at.timeS()) / k;
            assertEquals(drift, at.driftM(), 1e-6 * drift);
            assertEquals(drift / 2, at.driftEastM(), 1e-6 * drift);
            assertEquals(1.8 - 1.8 / (1 + k * 1.8 * at.timeS()), Math.hypot(at.eastMPerS(), at.northMPerS()), 1e-6);
        }
    }

    /** Without drag sideways nothing carries it away; without drag along the axis (all but) it falls freely. */
    @Test
    void withoutDragItFallsFreelyAndStraight() {
        SinkingBody body = Modules.block(2, 6000, 2.5, 1e-12, 2.5, 0, 1);
        Descent descent = Descent.of(body, Currents.uniform(2, 90, 150), 150);
        double acceleration = 33_721.875 / 8562.5;
        for (double z : new double[] {1e-6, 0.1, 10, 150}) {
            assertEquals(Math.sqrt(2 * z / acceleration), descent.at(z).timeS(), 1e-8);
            assertEquals(Math.sqrt(2 * z * acceleration), descent.at(z).sinkSpeedMPerS(), 1e-8);
            assertEquals(33_721.875 * z, descent.at(z).impactEnergyJ(), 1e-6 * 33_721.875 * z);
            assertEquals(0, descent.at(z).driftM());
        }
    }

    @Test
    void atTheSurfaceAllIsZero() {
        assertEquals(new Touchdown(0, 0, 0, 0, 0, 0, 0, 0), Descent.of(SAMPLE, Currents.sample(), 100).at(0));
        assertEquals(new Touchdown(0, 0, 0, 0, 0, 0, 0, 0), Descent.of(SAMPLE, Currents.sample(), 0).at(0));
    }

    @Test
    void itDoesNotMatterHowDeepItWasComputed() {
        Descent deep = Descent.of(SAMPLE, Currents.sample(), 220);
        for (double z : new double[] {0.5, 7, 15, 39.9, 61.3, 80}) {
            Touchdown shallow = Descent.of(SAMPLE, Currents.sample(), z).at(z);
            assertEquals(shallow.driftEastM(), deep.at(z).driftEastM(), 1e-6 * shallow.driftM());
            assertEquals(shallow.driftNorthM(), deep.at(z).driftNorthM(), 1e-6 * shallow.driftM());
            assertEquals(shallow.northMPerS(), deep.at(z).northMPerS(), 1e-6);
        }
    }

    @Test
    void whatIsNotKnownIsRefused() {
        assertEquals("descent to 221.0 m in a current known to 220.0 m",
                assertThrows(IllegalArgumentException.class, () -> Descent.of(SAMPLE, Currents.sample(), 221)).getMessage());
        Descent descent = Descent.of(SAMPLE, Currents.sample(), 100);
        assertEquals("depth 100.5 m of a descent from 0 to 100.0 m",
                assertThrows(IllegalArgumentException.class, () -> descent.at(100.5)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> descent.at(Double.NaN));
    }

    /** Random modules in random currents against small plain steps of all six equations. */
    @Test
    void plainStepsGiveTheSame() {
        for (int seed = 0; seed < 25; seed++) {
            Random random = new Random(seed);
            var module = Modules.random(random);
            SinkingBody body = SinkingBody.of(module, Modules.heightM(module));
            Flow flow = Currents.random(random, 150);
            Descent descent = Descent.of(body, flow, 150);
            PlainSinking plain = new PlainSinking(body, flow);
            double next = 0.05;
            while (plain.z() < 149) {
                plain.step(0.002);
                if (plain.z() > next) {
                    Touchdown at = descent.at(plain.z());
                    String where = "seed " + seed + ", depth " + plain.z();
                    assertEquals(plain.seconds(), at.timeS(), 1e-5, where);
                    assertEquals(plain.east(), at.driftEastM(), 1e-5 + 1e-6 * at.driftM(), where);
                    assertEquals(plain.north(), at.driftNorthM(), 1e-5 + 1e-6 * at.driftM(), where);
                    assertEquals(plain.sinking(), at.sinkSpeedMPerS(), 1e-5, where);
                    assertEquals(plain.speedEast(), at.eastMPerS(), 1e-5, where);
                    assertEquals(plain.speedNorth(), at.northMPerS(), 1e-5, where);
                    next = 1.5 * plain.z();
                }
            }
            assertTrue(next > 100);
        }
    }
}
