package org.seacairn.drop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.InputException;
import org.seacairn.drop.PastLandings.Drop;
import org.seacairn.drop.PastLandings.Estimate;

class PastLandingsTest {
    private static Drop drop(double eastM, double northM, OptionalDouble depthM) {
        double lon = -40.3;
        double lat = 31.7;
        GeodesicData to = Geodesic.WGS84.Direct(lat, lon, Math.toDegrees(Math.atan2(eastM, northM)), Math.hypot(eastM, northM));
        return new Drop(lon, lat, to.lon2, to.lat2, depthM);
    }

    private static List<Drop> drops(double... eastNorth) {
        List<Drop> drops = new ArrayList<>();
        for (int i = 0; i < eastNorth.length; i += 2) {
            drops.add(drop(eastNorth[i], eastNorth[i + 1], OptionalDouble.empty()));
        }
        return drops;
    }

    /**
     * Misses (1, 0), (3, 0), (2, 3): mean (2, 1), squares about it 2 and 6, so 8 / 4 = 2 for one axis. Chi-squared of 4 degrees of
     * freedom: 0.484419 and 11.14329 (published tables). F of 2 and 1: (0.05^-2 - 1) / 2 = 199.5; 4 x 199.5 / 3 = 266 times variances 1 and 3.
     */
    @Test
    void estimatesThreeDropsAsByHand() {
        PastLandings past = PastLandings.of("landings.csv", drops(1, 0, 3, 0, 2, 3));
        assertEquals(3, past.drops());
        assertEquals(2, past.bias().eastM(), 1e-6);
        assertEquals(1, past.bias().northM(), 1e-6);
        assertEquals(Math.sqrt(5), past.bias().lengthM(), 1e-6);
        assertEquals(63.434949, past.bias().bearingDeg(), 1e-5);
        assertEquals(Math.sqrt(3 * 266.0), past.bias().semiMajorM(), 1e-5);
        assertEquals(Math.sqrt(266.0), past.bias().semiMinorM(), 1e-5);
        assertEquals(0, Math.sin(Math.toRadians(past.bias().majorAxisDeg())), 1e-6);
        assertTrue(past.bias().zeroWithin());
        assertEquals(Math.sqrt(2), past.scatterM().value(), 1e-6);
        assertEquals(Math.sqrt(8 / 11.14329), past.scatterM().lower(), 1e-5);
        assertEquals(Math.sqrt(8 / 0.484419), past.scatterM().upper(), 1e-5);
        assertEquals(Optional.empty(), past.scatterDeg());
        double radius = OffsetCircle.radius95M(Math.sqrt(5), Math.sqrt(2));
        assertEquals(radius, past.radius95M(), 1e-5);
        // 4 degrees of freedom: chi-squared 0.710723 and t 2.131847 at 5 % (published tables).
        double byScatter = OffsetCircle.radius95M(Math.sqrt(5), Math.sqrt(8 / 0.710723)) - radius;
        double byBias = OffsetCircle.radius95M(Math.sqrt(5) + 2.131847 * Math.sqrt(2.0 / 3), Math.sqrt(2)) - radius;
        assertEquals(radius + Math.hypot(byScatter, byBias), past.radius95UpperM(), 1e-4);
        assertTrue(past.tooFew());
    }

    @Test
    void tellsTheAxisOfMissesOnALineAndTheirBiasOffIt() {
        MeanMiss off = PastLandings.of("f", drops(10, 20, 20, 30, 30, 40, 40, 50)).bias();
        assertEquals(45, off.majorAxisDeg(), 1e-4);
        assertEquals(0, off.semiMinorM(), 1e-2);
        assertFalse(off.zeroWithin());
        assertEquals(135, PastLandings.of("f", drops(-10, 10.1, 10, -10, 20, -20, -20, 20)).bias().majorAxisDeg(), 0.2);
    }

    @Test
    void dividesMissesByDepthForTheAngle() {
        double[][] misses = {{0.1, 0}, {-0.1, 0.1}, {0, -0.2}, {0.2, 0.1}};
        List<Drop> scaled = new ArrayList<>();
        double[] depths = {60, 90, 120, 150};
        for (int i = 0; i < 4; i++) {
            scaled.add(drop(misses[i][0] * depths[i], misses[i][1] * depths[i], OptionalDouble.of(depths[i])));
        }
        // Means 0.05 and 0; squares about them 0.05 and 0.06; over 6 degrees of freedom.
        Estimate angle = PastLandings.of("f", scaled).scatterDeg().orElseThrow();
        assertEquals(Math.toDegrees(Math.atan(Math.sqrt(0.11 / 6))), angle.value(), 1e-6);
        // Chi-squared of 6 degrees of freedom: 1.237344 and 14.44938 (published tables).
        assertEquals(Math.toDegrees(Math.atan(Math.sqrt(0.11 / 14.44938))), angle.lower(), 1e-4);
        assertEquals(Math.toDegrees(Math.atan(Math.sqrt(0.11 / 1.237344))), angle.upper(), 1e-4);
        scaled.set(2, drop(1, 2, OptionalDouble.empty()));
        assertEquals(Optional.empty(), PastLandings.of("f", scaled).scatterDeg());
    }

    @Test
    void measuresAcrossTheAntimeridian() {
        Miss miss = new Drop(179.9999, 0, -179.9999, 0, OptionalDouble.empty()).miss();
        assertEquals(0.0002 * Math.PI / 180 * 6378137, miss.eastM(), 1e-6);
        assertEquals(0, miss.northM(), 1e-6);
    }

    /** Published upper factors of the deviation cross 1.5 between 16 and 18 degrees of freedom (1.522, 1.479). */
    @ParameterizedTest
    @CsvSource({"3,true", "9,true", "10,false", "40,false"})
    void saysHowManyDropsAreTooFew(int n, boolean tooFew) {
        assertEquals(tooFew, PastLandings.of("f", simulated(new Random(81), n, 0, 0, 5)).tooFew());
    }

    @Test
    void refusesWhatTellsNothing() {
        assertEquals("landings.csv: 1 landing tells nothing of scatter; give 3 or more (10 for bounds that are of use)",
                refusal(drops(1, 2)));
        assertEquals("landings.csv: 2 landings tell nothing of scatter; give 3 or more (10 for bounds that are of use)",
                refusal(drops(1, 2, 3, 4)));
        assertEquals("landings.csv: all surveyed places miss the planned ones by the same 5 m, so they look computed and not surveyed;"
                + " give positions as surveyed", refusal(drops(3, 4, 3, 4, 3, 4)));
        assertThrows(IllegalArgumentException.class, () -> drop(1, 1, OptionalDouble.of(0)));
    }

    private static String refusal(List<Drop> drops) {
        return assertThrows(InputException.class, () -> PastLandings.of("landings.csv", drops)).getMessage();
    }

    private static List<Drop> simulated(Random random, int n, double eastM, double northM, double scatterM) {
        List<Drop> drops = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            drops.add(drop(eastM + scatterM * random.nextGaussian(), northM + scatterM * random.nextGaussian(), OptionalDouble.empty()));
        }
        return drops;
    }

    /** 3000 trials: a coverage of 95 % shows within 1.6 % (four standard errors). */
    @ParameterizedTest
    @CsvSource({"3", "5", "12"})
    void boundsHoldTheTruthAsOftenAsTheySay(int n) {
        Random random = new Random(82);
        int trials = 3000;
        int scatter = 0;
        int bias = 0;
        for (int i = 0; i < trials; i++) {
            PastLandings past = PastLandings.of("f", simulated(random, n, 0, 0, 6));
            scatter += past.scatterM().lower() <= 6 && 6 <= past.scatterM().upper() ? 1 : 0;
            bias += past.bias().zeroWithin() ? 1 : 0;
        }
        assertEquals(0.95, scatter / (double) trials, 0.016);
        assertEquals(0.95, bias / (double) trials, 0.016);
    }

    /** The upper radius holds the truth in 95 to 98 % of trials, within two and a half standard errors of 800; the estimate in about half. */
    @ParameterizedTest
    @CsvSource({"3,0", "5,9", "12,40"})
    void upperRadiusHoldsTheTruth(int n, double bias) {
        double truth = OffsetCircle.radius95M(bias, 6);
        Random random = new Random(83);
        int trials = 800;
        int upper = 0;
        int estimate = 0;
        for (int i = 0; i < trials; i++) {
            PastLandings past = PastLandings.of("f", simulated(random, n, bias, 0, 6));
            upper += past.radius95UpperM() >= truth ? 1 : 0;
            estimate += past.radius95M() >= truth ? 1 : 0;
        }
        assertEquals(0.965, upper / (double) trials, 0.034);
        assertEquals(0.5, estimate / (double) trials, 0.2);
    }
}
