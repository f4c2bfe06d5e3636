package org.seacairn.drop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScatterTest {
    /** DNV-RP-F107, table 10 (October 2010), flat/long shaped; the mass bands from memory. */
    @ParameterizedTest
    @CsvSource({"1,15", "1999.9,15", "2000,9", "8000,9", "8000.1,5", "20000,5"})
    void takesTheAngleOfTheMass(double mass, double angle) {
        assertEquals(angle, Scatter.ofMass(mass).angleDeg());
    }

    /**
     * Excursion plot of 20 degrees, slides of a marine consultancy of 27 February 2018
     * (www.scribd.com/document/632688231). The depth of 99 m is not printed; every row fits it.
     */
    @ParameterizedTest
    @CsvSource({"0,0", "5,0.1104", "10,0.2186", "20,0.4211", "30,0.5949", "40,0.7330", "50,0.8347", "60,0.9041", "70,0.9479", "80,0.9736",
        "90,0.9875", "100,0.9945", "110,0.9977", "120,0.9991", "130,0.9997", "140,0.9999", "150,1.0000"})
    void meetsAPublishedTable(double distance, double share) {
        assertEquals(share, new Scatter(20).shareAlongLine(distance, 99), 0.000051);
    }

    /** d tan(alpha), reckoned apart from this program, to the centimetre. */
    @ParameterizedTest
    @CsvSource({"15,16.08,26.79,40.19", "9,9.50,15.84,23.76", "5,5.25,8.75,13.12", "3,3.14,5.24,7.86", "2,2.10,3.49,5.24"})
    void deviatesByDepth(double angle, double at60, double at100, double at150) {
        Scatter scatter = new Scatter(angle);
        assertEquals(at60, scatter.deviationM(60), 0.0051);
        assertEquals(at100, scatter.deviationM(100), 0.0051);
        assertEquals(at150, scatter.deviationM(150), 0.0051);
    }

    /** "68 %" is along a line, and 95 % there is 1.95996 deviations. */
    @Test
    void holds68PercentAlongALine() {
        Scatter scatter = new Scatter(9);
        assertEquals(0.6827, scatter.shareAlongLine(scatter.deviationM(80), 80), 0.00005);
        assertEquals(0.95, scatter.shareAlongLine(1.959964 * scatter.deviationM(80), 80), 1e-6);
        assertEquals(2.4477, scatter.radius95M(80) / scatter.deviationM(80), 0.00005);
    }

    @Test
    void holdsLandingsInThePlaneAsItSays() {
        Scatter scatter = new Scatter(9);
        Random random = new Random(71);
        int within = 0;
        int withinDeviation = 0;
        int trials = 400_000;
        for (int i = 0; i < trials; i++) {
            double miss = Math.hypot(random.nextGaussian(), random.nextGaussian()) * scatter.deviationM(100);
            within += miss <= scatter.radius95M(100) ? 1 : 0;
            withinDeviation += miss <= scatter.deviationM(100) ? 1 : 0;
        }
        // Four standard errors of 400,000 trials.
        assertEquals(0.95, within / (double) trials, 0.0014);
        assertEquals(0.393, withinDeviation / (double) trials, 0.0031);
    }

    @Test
    void hasNoneAtTheSurfaceOrWithoutAnAngle() {
        assertEquals(0, new Scatter(9).radius95M(0));
        assertEquals(0, new Scatter(0).radius95M(100));
        assertEquals(0, new Scatter(9).shareAlongLine(0, 0));
        assertEquals(1, new Scatter(9).shareAlongLine(1, 0));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', nullValues = "-", value = {
        "1899 | -", "1900 | 1.90 t is near 2 t, where the angle of scatter steps from 15 to 9 degrees",
        "2100 | 2.10 t is near 2 t, where the angle of scatter steps from 15 to 9 degrees", "2101 | -", "5000 | -", "7599 | -",
        "7600 | 7.60 t is near 8 t, where the angle of scatter steps from 9 to 5 degrees",
        "8400 | 8.40 t is near 8 t, where the angle of scatter steps from 9 to 5 degrees", "8401 | -",
    })
    void tellsOfAMassNearAStep(double mass, String text) {
        assertEquals(Optional.ofNullable(text), Scatter.nearStep(mass));
    }

    @Test
    void refusesWhatIsNoAngle() {
        assertThrows(IllegalArgumentException.class, () -> new Scatter(90));
        assertThrows(IllegalArgumentException.class, () -> new Scatter(-1));
        assertThrows(IllegalArgumentException.class, () -> new Scatter(Double.NaN));
    }
}
