package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.seacairn.plan.PlanOnDisk.LEAST;
import static org.seacairn.plan.PlanOnDisk.WHOLE;
import static org.seacairn.plan.PlanOnDisk.with;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.plan.SitingPlan.Criterion;
import org.seacairn.plan.SitingPlan.Curve;

/** Criteria, their weights, and the pairwise comparisons that may give them. */
class CriteriaTest {
    private static final String DEPTH = "  depth: {weight: 1, curve: [60 m, 80 m, 120 m, 150 m]}\n";

    @TempDir
    private Path folder;

    private PlanOnDisk disk;

    @BeforeEach
    void writeTheFilesThatPlansName() {
        disk = new PlanOnDisk(folder);
    }

    @Test
    void cornersAreReadInTheUnitsOfTheMeasure() {
        SitingPlan plan = disk.read("reefs: {file: reefs.csv, keep-off: 60 m}\n" + with(LEAST, DEPTH, """
                  depth: {weight: 0.5, curve: [20 fathom, 200 ft, 100 m, 0.1 km]}
                  slope: {weight: 1.5, curve: [0 deg, 0 %, 100 %, 1 rad]}
                  ruggedness: {weight: 1, curve: [0, 0, 0.01, 0.05]}
                  spacing: {weight: 1, curve: [100 m, 200 m, 0.5 nmi, 1 nmi]}
                """.indent(2)));
        assertEquals(new Curve(20 * 1.8288, 200 * 0.3048, 100, 100), plan.criteria().get(0).curve().orElseThrow());
        assertEquals(new Curve(0, 0, 45, Math.toDegrees(1)), plan.criteria().get(1).curve().orElseThrow());
        assertEquals(new Curve(0, 0, 0.01, 0.05), plan.criteria().get(2).curve().orElseThrow());
        assertEquals(new Curve(100, 200, 926, 1852), plan.criteria().get(3).curve().orElseThrow());
        assertEquals(0.5, plan.criteria().get(0).weight());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            dept: {weight: 1, curve: [1 m, 2 m, 3 m, 4 m]}          | "dept" is not a key of criteria; did you mean "depth"?
            temperature: {weight: 1}                                | "temperature" is not a key of criteria; known here: depth, slope, ruggedness, bottom, clearance, spacing
            depth: {curve: [1 m, 2 m, 3 m, 4 m]}                    | criterion depth has no "weight"; add it, for example "weight: 2", or give pairwise comparisons
            depth: {weight: 0, curve: [1 m, 2 m, 3 m, 4 m]}         | weight is "0"; write a number over 0, or leave the criterion out
            depth: {weight: -1, curve: [1 m, 2 m, 3 m, 4 m]}        | weight is "-1"; write a number over 0, or leave the criterion out
            depth: {weight: .inf, curve: [1 m, 2 m, 3 m, 4 m]}      | weight is ".inf"; write a number over 0, or leave the criterion out
            depth: {weight: 1e999, curve: [1 m, 2 m, 3 m, 4 m]}     | weight is "1e999"; write a number over 0, or leave the criterion out
            depth: {weight: heavy, curve: [1 m, 2 m, 3 m, 4 m]}     | weight is "heavy"; write a number over 0, or leave the criterion out
            depth: {weight: 1}                                      | criterion depth has no "curve"; add it, for example "curve: [60 m, 80 m, 120 m, 150 m]"
            slope: {weight: 1}                                      | criterion slope has no "curve"; add it, for example "curve: [0 deg, 0 deg, 2 deg, 5 deg]"
            ruggedness: {weight: 1}                                 | criterion ruggedness has no "curve"; add it, for example "curve: [0, 0, 0.01, 0.05]"
            depth: {weight: 1, curve: [1, 2 m, 3 m, 4 m]}           | item 1 of curve is "1"; write the unit, for example "1 m"
            depth: {weight: 1, curve: [1 m, 2 m, 3 m]}              | curve has 3 corners; write four, for example "curve: [60 m, 80 m, 120 m, 150 m]"
            depth: {weight: 1, curve: [1 m, 2 m, 3 m, 2 m]}         | corner 4 of curve is less than corner 3; write the four corners so that none falls
            depth: {weight: 1, curve: 80 m}                         | curve is not a list; write its items in brackets, or one a line after "- "
            slope: {weight: 1, curve: [0 m, 1 deg, 2 deg, 3 deg]}   | item 1 of curve is "0 m", which is a length; a slope is written in deg, rad, %
            ruggedness: {weight: 1, curve: [0, 0, 0.01, 1.5]}       | item 4 of curve is "1.5"; a ruggedness is 0 to 1 here
            bottom: {weight: 1}                                     | bottom is a criterion and the plan names no bottom; add it or leave the criterion out
            clearance: {weight: 1}                                  | clearance is a criterion and the plan names no keep-off; add it or leave the criterion out
            spacing: {weight: 1, curve: [1 m, 2 m, 3 m, 4 m]}       | spacing is a criterion and the plan names no reefs; add it or leave the criterion out
            depth: 3                                                | depth is not a block of keys; write "key: value" lines below it
            depth: {wieght: 1, curve: [1 m, 2 m, 3 m, 4 m]}         | "wieght" is not a key of criterion depth; did you mean "weight"?
            """)
    void mistakesInACriterion(String criterion, String expected) {
        assertEquals(List.of("plan.yaml, line 9: " + expected), disk.problems(with(LEAST, DEPTH, "  " + criterion + "\n")));
    }

    @Test
    void bottomAndClearanceHaveNoCurve() {
        assertEquals(List.of(
                "plan.yaml, line 30: bottom has a curve, but it is a suitability already; leave the curve out",
                "plan.yaml, line 31: clearance has a curve, but it is a suitability already; leave the curve out"),
                disk.problems(with(with(WHOLE, "bottom:    {weight: 3}", "bottom: {weight: 3, curve: [0, 0, 1, 1]}"),
                        "clearance: {weight: 2}", "clearance: {weight: 2, curve: [0 m, 0 m, 1 m, 1 m]}")));
    }

    @Test
    void anEmptyKeepOffListGivesNoClearance() {
        assertEquals(List.of("plan.yaml, line 10: clearance is a criterion and the plan names no keep-off;"
                + " add it or leave the criterion out"),
                disk.problems("keep-off: []\n" + with(LEAST, DEPTH, "  clearance: {weight: 1}\n")));
    }

    @Test
    void criteriaMustNotBeEmpty() {
        assertEquals(List.of("plan.yaml, line 8: criteria names no criterion; write at least one of depth, slope,"
                + " ruggedness, bottom, clearance, spacing"),
                disk.problems(with(LEAST, "criteria:\n" + DEPTH, "criteria: {}\n")));
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            1,     2,       ''
            0.3,   0.7,     ''
            33.3,  66.7,    ''
            0.1,   0.2,     0.3
            0.5,   0.502,   1.002
            33.33, 66.66,   99.99
            """)
    void weightsThatSumToNoRoundFigureAreReported(String first, String second, String sum) {
        SitingPlan plan = disk.read(with(LEAST, DEPTH, "  depth: {weight: " + first + ", curve: [1 m, 2 m, 3 m, 4 m]}\n"
                + "  ruggedness: {weight: " + second + ", curve: [0, 0, 0.1, 0.2]}\n"));
        assertEquals(sum.isEmpty() ? List.of() : List.of("criteria: the weights sum to " + sum
                + ", which is no round figure; they are used as given"),
                plan.warnings().stream().filter(warning -> warning.startsWith("criteria")).toList());
        assertEquals(Double.parseDouble(second), plan.criteria().get(1).weight());
    }

    private static String pairwise(String block) {
        return with(LEAST, DEPTH, """
                  depth: {curve: [60 m, 80 m, 120 m, 150 m]}
                  slope: {curve: [0 deg, 0 deg, 2 deg, 5 deg]}
                  ruggedness: {curve: [0, 0, 0.01, 0.05]}
                """.indent(2)) + "pairwise: " + block + "\n";
    }

    private static final String ORDER = "order: [depth, slope, ruggedness]";
    private static final String GOOD = "matrix: [[1, 3, 5], [1/3, 1, 3], [1/5, 1/3, 1]]";

    @Test
    void theOtherRandomIndexListIsUsedWhenAskedFor() {
        SitingPlan.Pairwise pairwise = disk.read(pairwise("{" + ORDER + ", " + GOOD + ", random-index: saaty-tran-2007}"))
                .pairwise().orElseThrow();
        assertEquals(0.019255 / 0.5251686, pairwise.consistencyRatio(), 2e-6);
        assertEquals("simulated with 500,000 matrices, as used with Saaty and Tran 2007", pairwise.randomIndexList());
    }

    @Test
    void everyReciprocalRoundedToTwoDecimalsIsMadeExact() {
        for (String[] rounded : new String[][] {{"2", "0.50"}, {"3", "0.33"}, {"4", "0.25"}, {"5", "0.20"}, {"6", "0.17"},
            {"7", "0.14"}, {"8", "0.13"}, {"8", "0.12"}, {"9", "0.11"}, {"1.5", "0.67"}}) {
            double[][] matrix = disk.read(with(LEAST, DEPTH, """
                      depth: {curve: [60 m, 80 m, 120 m, 150 m]}
                      slope: {curve: [0 deg, 0 deg, 2 deg, 5 deg]}
                    """.indent(2)) + "pairwise: {order: [depth, slope], matrix: [[1, " + rounded[1] + "], ["
                    + rounded[0] + ", 1]]}\n").pairwise().orElseThrow().matrix();
            double more = Double.parseDouble(rounded[0]);
            assertArrayEquals(new double[] {1, 1 / more}, matrix[0], 0, rounded[0]);
            assertArrayEquals(new double[] {more, 1}, matrix[1], 0, rounded[0]);
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            [[1, 8, 5], [1/9, 1, 3], [1/5, 1/3, 1]]   | slope against depth is 0.111111, but depth against slope is 8; one must be 1 over the other
            [[1, 3, 5], [3, 1, 3], [1/5, 1/3, 1]]     | slope against depth is 3, but depth against slope is 3; one must be 1 over the other
            [[1, 3, 5], [1/3, 2, 3], [1/5, 1/3, 1]]   | slope against itself is 2; write 1
            [[1, 3, 5], [1/3, 1], [1/5, 1/3, 1]]      | item 2 of matrix has 2 numbers; write 3
            [[1, 3], [1/3, 1]]                        | matrix has 2 rows; write one for each of the 3 criteria in order
            [[1, 3, 10], [1/3, 1, 3], [1/10, 1/3, 1]] | item 3 of item 1 of matrix is "10"; write a number from 1/9 to 9
            [[1, x, 5], [1/3, 1, 3], [1/5, 1/3, 1]]   | item 2 of item 1 of matrix is "x"; write a number from 1/9 to 9
            [[1, 1/0, 5], [1/3, 1, 3], [1/5, 1/3, 1]] | item 2 of item 1 of matrix is "1/0"; write a number from 1/9 to 9
            [[1, -3, 5], [1/3, 1, 3], [1/5, 1/3, 1]]  | item 2 of item 1 of matrix is "-3"; write a number from 1/9 to 9
            [[1, 3, 5], [1/3, 1, 3], a]               | item 3 of matrix is not a list; write its items in brackets, or one a line after "- "
            """)
    void mistakesInTheMatrix(String matrix, String expected) {
        assertEquals("plan.yaml, line 13: " + expected, disk.problems(pairwise("{" + ORDER + ", matrix: " + matrix + "}")).get(0));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            order: [depth, slope]                     | order must name each criterion once: depth, slope, ruggedness
            order: [depth, slope, slope]              | order must name each criterion once: depth, slope, ruggedness
            order: [depth, slope, rugedness]          | item 3 of order is "rugedness"; did you mean "ruggedness"?
            order: [depth, slope, bottom]             | item 3 of order is "bottom"; known here: depth, slope, ruggedness
            ordr: [depth, slope, ruggedness]          | "ordr" is not a key of pairwise; did you mean "order"?
            consistency-limit: 0.1                    | pairwise has no "order"; add it, for example "order: [depth, slope]"
            """)
    void mistakesInTheOrder(String order, String expected) {
        assertTrue(disk.problems(pairwise("{" + order + ", " + GOOD + "}")).contains("plan.yaml, line 13: " + expected),
                () -> String.join("\n", disk.problems(pairwise("{" + order + ", " + GOOD + "}"))));
    }

    @Test
    void contradictoryComparisonsAreRefusedWithTheWorstOfThem() {
        String contradictory = "matrix: [[1, 3, 1/5], [1/3, 1, 3], [5, 1/3, 1]]";
        List<String> problems = disk.problems(pairwise("{" + ORDER + ", " + contradictory + "}"));
        // A 3 x 3 reciprocal matrix has lambda max = 1 + q + 1/q with q the cube root of a12 a23 / a13, here of 45.
        double q = Math.cbrt(45);
        double ratio = (1 + q + 1 / q - 3) / 2 / 0.58;
        assertEquals(List.of("plan.yaml, line 13: the comparisons contradict each other: consistency ratio "
                + Shown.number(ratio) + " is over the limit 0.1 (random index: Saaty 1980). Farthest off is depth against"
                + " slope, 3 where all together make it 0.843433; think it over, or write a higher consistency-limit"),
                problems);
        SitingPlan allowed = disk.read(pairwise("{" + ORDER + ", matrix: [[1, 3, 1], [1/3, 1, 3], [1, 1/3, 1]],"
                + " consistency-limit: 60 %}"));
        assertEquals(0.5, allowed.pairwise().orElseThrow().consistencyRatio(), 0.1);
    }

    @Test
    void weightsAndComparisonsTogetherAreRefused() {
        assertEquals(List.of("plan.yaml, line 11: pairwise is given and criteria have weights as well;"
                + " leave out the one or the other"), disk.problems(LEAST + "pairwise: {order: [depth], matrix: [[1]]}\n"));
    }

    @Test
    void oneCriterionMayBeComparedWithItself() {
        List<Criterion> criteria = disk.read(with(LEAST, "{weight: 1, curve", "{curve")
                + "pairwise: {order: [depth], matrix: [[1]]}\n").criteria();
        assertEquals(1, criteria.get(0).weight());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            consistency-limit: 2            | consistency-limit is "2"; a share is 0 to 1 here
            random-index: saaty-1981        | random-index is "saaty-1981"; did you mean "saaty-1980"?
            random-index: other             | random-index is "other"; known here: saaty-1980, saaty-tran-2007
            """)
    void mistakesInTheSettings(String key, String expected) {
        assertEquals(List.of("plan.yaml, line 13: " + expected),
                disk.problems(pairwise("{" + ORDER + ", " + GOOD + ", " + key + "}")));
    }
}
