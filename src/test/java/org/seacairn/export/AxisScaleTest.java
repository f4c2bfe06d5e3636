package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AxisScaleTest {
    private static String labels(int steps, double... values) {
        AxisScale scale = AxisScale.of(values, steps);
        return scale.ticks().stream().map(scale::label).collect(Collectors.joining(" "));
    }

    @ParameterizedTest
    @CsvSource({
        "0,122,7,0 20 40 60 80 100 120 140", "0,120,6,0 20 40 60 80 100 120", "0,0.3,3,0.0 0.1 0.2 0.3", "-3,7,5,-4 -2 0 2 4 6 8",
        "0.012,0.019,4,0.012 0.014 0.016 0.018 0.020", "0,9.7,5,0 2 4 6 8 10", "0,97000,5,0 20000 40000 60000 80000 100000", "0,0.97,1,0 1",
        "0,0,5,0.0 0.2 0.4 0.6 0.8 1.0", "5,5,5,0 1 2 3 4 5", "-4,-4,4,-4 -3 -2 -1 0", "NaN,Infinity,2,0.0 0.5 1.0", "2,NaN,2,0 1 2",
    })
    void endsOnRoundNumbers(double a, double b, int steps, String labels) {
        assertEquals(labels, labels(steps, a, b));
    }

    @Test
    void holdsWhateverItIsGiven() {
        Random random = new Random(91);
        for (int i = 0; i < 10_000; i++) {
            double size = Math.pow(10, random.nextInt(12) - 6);
            double a = size * random.nextGaussian();
            double b = a + size * Math.pow(10, -random.nextInt(4)) * random.nextGaussian();
            int steps = 2 + random.nextInt(10);
            AxisScale scale = AxisScale.of(new double[] {a, b}, steps);
            assertTrue(scale.along(a) >= -1e-6 && scale.along(a) <= 1 + 1e-6, scale + " holds " + a);
            assertTrue(scale.along(b) >= -1e-6 && scale.along(b) <= 1 + 1e-6, scale + " holds " + b);
            assertTrue(scale.ticks().size() >= 2 && scale.ticks().size() <= steps + 3, scale + " for " + steps);
        }
    }
}
