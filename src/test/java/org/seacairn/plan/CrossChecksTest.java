package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.seacairn.plan.PlanOnDisk.WHOLE;
import static org.seacairn.plan.PlanOnDisk.with;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CrossChecksTest {
    /** What the whole plan warns of already. */
    private static final List<String> USUAL = List.of("reefs: the rule names no source",
            "keep-off \"cables\": the rule's source is not confirmed");

    @TempDir
    private Path folder;

    private PlanOnDisk disk;

    @BeforeEach
    void writeTheFilesThatPlansName() {
        disk = new PlanOnDisk(folder);
    }

    private List<String> newWarnings(String plan) {
        return disk.read(plan).warnings().stream().filter(warning -> !USUAL.contains(warning)).toList();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            curve: [60 m, 80 m     | curve: [50 m, 80 m      | criteria: the depth curve begins at 50 m, limits allow no less than 60 m
            120 m, 150 m]          | 120 m, 160 m]           | criteria: the depth curve ends at 160 m, limits allow no more than 150 m
            height-share: 0.5      | height-share: 0.06      | module: a height of 9.144 m is over the height-share 0.06 at every depth down to the limit of 150 m; no place can take it
            clearance-above: 85 ft | clearance-above: 139 m  | module: even at the depth limit of 150 m only 138.843 m of water are left over it, clearance-above asks for 139 m; no place can take it
            keep-off: 60 m         | keep-off: 20 m          | reefs: the distance 20 m is less than the landing radius 25 m
            comfortable: 1 nmi,    | name: n,                | keep-off "shipping lanes": no comfortable distance is given; more distance than required earns nothing
            comfortable: 1 nmi,    | comfortable: 532 m,     | keep-off "shipping lanes": the comfortable distance 532 m lies within the required 533 m (distance and uncertainties); more distance than required earns nothing
            file: lanes.shp,  distance: 500 m | file: lanes.shp, distance: 24.9 m | keep-off "shipping lanes": the distance 24.9 m is less than the landing radius 25 m
            """)
    void doubtfulCombinationsAreWarnedOf(String good, String doubtful, String expected) {
        // 533 = 500 + sqrt(20² + 8² + 25²): S-44 order 1a allows 5 m + 5 % at 60 m, the shallowest depth.
        // 138.843 = 150 - 2.013 (order 1a at 150 m) - 9.144.
        assertEquals(List.of(expected), newWarnings(with(WHOLE, good, doubtful)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            height-share: 0.5      | height-share: 0.061
            clearance-above: 85 ft | clearance-above: 138.8 m
            keep-off: 60 m         | keep-off: 25 m
            comfortable: 1 nmi,    | comfortable: 533.1 m,
            curve: [60 m, 80 m     | curve: [60.1 m, 80 m
            """)
    void whatJustFitsIsNotWarnedOf(String good, String fits) {
        assertEquals(List.of(), newWarnings(with(WHOLE, good, fits)));
    }

    @Test
    void comfortableDistancesMatterOnlyWhereClearanceIsScored() {
        String unscored = with(with(WHOLE, "  clearance: {weight: 2}\n", ""), "comfortable: 1 nmi,", "");
        assertEquals(List.of(), newWarnings(unscored));
    }

    @Test
    void withoutDepthLimitsThereIsNothingToCompareWith() {
        String plan = with(with(with(WHOLE, "depth: [60 m, 150 m], ", ""), "height-share: 0.5", "height-share: 0.001"),
                "120 m, 150 m]", "120 m, 9000 m]");
        assertEquals(List.of(), newWarnings(plan));
    }
}
