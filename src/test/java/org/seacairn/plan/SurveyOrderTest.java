package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SurveyOrderTest {
    @ParameterizedTest
    @CsvSource(textBlock = """
            1a,          20, 0.56, 0.005
            1a,          30, 0.63, 0.005
            1a,          40, 0.72, 0.005
            1a,          50, 0.82, 0.005
            1a,          60, 0.93, 0.005
            1a,         100, 1.39, 0.005
            1b,         100, 1.39, 0.005
            2,         5000, 115,  0.5
            exclusive,   10, 0.16771, 5e-6
            """)
    void verticalUncertaintyOfPrintedTables(String order, double depthM, double expectedM, double half) {
        // Printed results for S-44 table 1 in texts that quote it, each to the digits printed.
        assertEquals(expectedM, SurveyOrder.byLabel().get(order).uncertainty().verticalM(depthM), half);
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            special,  60, 0.5148
            special, 100, 0.7906
            special, 150, 1.1524
            1a,       60, 0.9265
            1a,      100, 1.3928
            1a,      150, 2.0131
            2,        60, 1.7042
            2,       100, 2.5080
            2,       150, 3.5920
            """)
    void verticalUncertaintyInTheDepthsOfReefModules(String order, double depthM, double expectedM) {
        // Worked by hand from sqrt(a² + (b d)²) with the a and b of the table.
        assertEquals(expectedM, SurveyOrder.byLabel().get(order).uncertainty().verticalM(depthM), 5e-5);
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            exclusive, 100, 1
            special,   100, 2
            1a,         60, 8
            1a,        100, 10
            1b,        150, 12.5
            2,          60, 26
            2,         100, 30
            2,         150, 35
            1a,          0, 5
            1a,         -3, 5
            """)
    void horizontalUncertainty(String order, double depthM, double expectedM) {
        assertEquals(expectedM, SurveyOrder.byLabel().get(order).uncertainty().horizontalM(depthM), 1e-12);
    }

    @Test
    void ordersInTheirOwnWords() {
        assertEquals(List.of("exclusive", "special", "1a", "1b", "2"), List.copyOf(SurveyOrder.byLabel().keySet()));
        assertEquals("IHO S-44 order 1a", SurveyOrder.ORDER_1A.uncertainty().source());
    }
}
