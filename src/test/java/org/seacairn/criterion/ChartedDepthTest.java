package org.seacairn.criterion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.InputException;
import org.seacairn.layer.Feature;
import org.seacairn.plan.SitingPlan.DepthAreas;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;

class ChartedDepthTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final DepthAreas PLAN = plan("DRVAL1", "DRVAL2", 1);

    private static DepthAreas plan(String shallow, String deep, double metresPerUnit) {
        Optional<String> none = Optional.empty();
        return new DepthAreas(new LayerFile("depth areas", Path.of("chart.000"), none, none, none, none, 4, Edges.GEODESIC),
                shallow, deep, metresPerUnit, "", none, false);
    }

    private static Feature area(long id, Object... attributes) {
        Map<String, Object> named = new LinkedHashMap<>();
        for (int i = 0; i < attributes.length; i += 2) {
            named.put((String) attributes[i], attributes[i + 1]);
        }
        return new Feature(id, FACTORY.toGeometry(new Envelope(0, 1, 0, 1)), named);
    }

    private static String refusal(DepthAreas plan, Feature... features) {
        return assertThrows(InputException.class, () -> ChartedDepth.of(plan, List.of(features))).getMessage();
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            20,  50,  35,   0
            20,  50,  20,   0
            20,  50,  50,   0
            20,  50,  17,  -3
            20,  50,  50.5, 0.5
            20,  NaN, 900,  0
            20,  NaN, 19,  -1
            NaN, 50, -900,  0
            NaN, 50,  51,   1
            -2,  0,  -3,   -1
            -2,  0,   1,    1
            30,  30,  30,   0
            """)
    void howFarADepthLiesOutOfTheRange(double shallowM, double deepM, double depthM, double missM) {
        assertEquals(missM, new ChartedDepth(shallowM, deepM).missM(depthM));
    }

    @Test
    void ofSeveralTheShoalestComesFirst() {
        double no = Double.NaN;
        List<ChartedDepth> sorted = List.of(new ChartedDepth(-2, 0), new ChartedDepth(0, 5), new ChartedDepth(0, 200), new ChartedDepth(0, no),
                new ChartedDepth(no, 5), new ChartedDepth(50, 100), new ChartedDepth(no, 100));
        for (int seed = 0; seed < 50; seed++) {
            List<ChartedDepth> shuffled = new ArrayList<>(sorted);
            Collections.shuffle(shuffled, new Random(seed));
            shuffled.sort(ChartedDepth.SHOALEST_FIRST);
            assertEquals(sorted, shuffled);
        }
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            20,  50,   20 to 50 m
            -2,  0,    -2 to 0 m
            20,  NaN,  20 m or more
            NaN, 50,   50 m or less
            9.1, 18.2, 9.1 to 18.2 m
            """)
    void asPeopleReadIt(double shallowM, double deepM, String text) {
        assertEquals(text, new ChartedDepth(shallowM, deepM).toString());
    }

    @Test
    void endsMayBeNumbersOrTextAndMissing() {
        List<ChartedDepth.Area> areas = ChartedDepth.of(PLAN, List.of(area(1, "DRVAL1", 20L, "DRVAL2", 50.5),
                area(2, "DRVAL1", " 20 ", "DRVAL2", "+50.5"), area(3, "DRVAL1", null, "DRVAL2", 50), area(4, "DRVAL1", -2.5),
                area(5, "DRVAL1", "", "DRVAL2", " "), area(6), area(7, "DRVAL1", 0, "DRVAL2", 0)));
        assertEquals(List.of("1 20 to 50.5 m", "2 20 to 50.5 m", "3 50 m or less", "4 -2.5 m or more", "7 0 to 0 m"),
                areas.stream().map(a -> a.feature().id() + " " + a.depth()).toList());
    }

    /** 85 FR 62698: the foot is 0.3048 m. */
    @Test
    void otherNamesAndUnits() {
        List<ChartedDepth.Area> areas = ChartedDepth.of(plan("MIN", "MAX", 0.3048), List.of(area(1, "MIN", 100, "MAX", 200, "DRVAL1", 7)));
        assertEquals(new ChartedDepth(100 * 0.3048, 200 * 0.3048), areas.get(0).depth());
    }

    @Test
    void linesAndPointsSayNothing() {
        Feature point = new Feature(1, FACTORY.createPoint(new Coordinate(0, 0)), Map.of("DRVAL1", "none"));
        assertEquals(1, ChartedDepth.of(PLAN, List.of(point, area(2, "DRVAL1", 1, "DRVAL2", 2))).size());
    }

    @Test
    void aShallowEndBelowTheDeepEndIsRefused() {
        assertEquals("chart.000, feature 7: DRVAL1 is 50 and DRVAL2 is 20, so its shallow end is the deeper one; correct it, or swap shallow"
                + " and deep in the plan", refusal(PLAN, area(6, "DRVAL1", 1, "DRVAL2", 2), area(7, "DRVAL1", 50, "DRVAL2", 20)));
    }

    @ParameterizedTest
    @CsvSource({"deep", "1e3", "1_000", "'1,5'", "NaN", "Infinity", "0x10", "12345678901234567"})
    void whatIsNoDepthIsRefused(String text) {
        assertEquals("chart.000, feature 3: DRVAL2 is \"" + text + "\" and no depth; correct it, or leave it empty where it is not known",
                refusal(PLAN, area(3, "DRVAL1", 1, "DRVAL2", text)));
    }

    @Test
    void numbersThatAreNoneAreRefused() {
        String remedy = " and no depth; correct it, or leave it empty where it is not known";
        assertEquals("chart.000, feature 3: DRVAL1 is \"NaN\"" + remedy, refusal(PLAN, area(3, "DRVAL1", Double.NaN)));
        assertEquals("chart.000, feature 3: DRVAL1 is \"true\"" + remedy, refusal(PLAN, area(3, "DRVAL1", true)));
    }

    @Test
    void ofManyMistakesTheFirstIsToldAndTheOthersCounted() {
        assertEquals("chart.000, feature 1: DRVAL1 is 5 and DRVAL2 is 2, so its shallow end is the deeper one; correct it, or swap shallow"
                + " and deep in the plan (and 2 more polygons are not right)", refusal(PLAN, area(1, "DRVAL1", 5, "DRVAL2", 2),
                area(2, "DRVAL1", 5, "DRVAL2", 2), area(3, "DRVAL1", "x"), area(4, "DRVAL1", 0)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            DRVAL1  | DRVAL2 | DRVAL_1, DRVAL_2   | no polygon has the attribute "DRVAL1"; did you mean "DRVAL_1"?
            DRVAL1  | DRVAL2 | MIN, MAX           | no polygon has the attribute "DRVAL1"; name the attributes with shallow: and deep:, from MIN, MAX
            MINIMUM | DRVAL2 | DRVAL1, DRVAL2     | no polygon has the attribute "MINIMUM"; name the attributes with shallow: and deep:, from DRVAL1, DRVAL2
            DRVAL1  | MAXIM  | DRVAL1, MAXIMA     | no polygon has the attribute "MAXIM"; did you mean "MAXIMA"?
            """)
    void attributesThatAreNotThereAreRefused(String shallow, String deep, String there, String problem) {
        String[] names = there.split(", ");
        assertEquals("chart.000, depth areas (line 4 of the plan): " + problem, refusal(plan(shallow, deep, 1), area(1, names[0], 1, names[1], 2)));
    }

    @Test
    void aLayerMayLeaveOneOfTheUsualEndsOut() {
        assertEquals("20 m or more", ChartedDepth.of(PLAN, List.of(area(1, "DRVAL1", 20))).get(0).depth().toString());
        assertEquals("20 m or less", ChartedDepth.of(PLAN, List.of(area(1, "DRVAL2", 20))).get(0).depth().toString());
        assertEquals("chart.000, depth areas (line 4 of the plan): no polygon has the attribute \"DRVAL1\"; they have no attributes at all",
                refusal(PLAN, area(1)));
    }
}
