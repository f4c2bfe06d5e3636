package org.seacairn.score;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seacairn.layer.MemoryBathymetry;
import org.seacairn.plan.PlanReader;
import org.seacairn.plan.SitingPlan;

class BathymetryDoubtsTest {
    private static final float NONE = Float.NaN;

    @TempDir
    private Path folder;

    @Test
    void elevationsBelowTheDatumWithinTheLimitsRaiseNoDoubt() {
        assertEquals(List.of(), doubts("elevation", "m", -60, -80, NONE, -200));
    }

    @Test
    void depthsInAnElevationGridAndElevationsInADepthGrid() {
        assertEquals(List.of("no value is negative while the plan says \"values: elevation\"; if they count downward,"
                        + " write \"values: depth\"", "no depth lies within the limits of 60 to 150 m; no place can be feasible"),
                doubts("elevation", "m", 60, 80, 0, 100));
        assertEquals("no value is positive while the plan says \"values: depth\"; if they count upward, write \"values: elevation\"",
                doubts("depth", "m", -60, -80, 0, -100).get(0));
    }

    @Test
    void landIsCountedAndMoreLandThanWaterDoubted() {
        assertEquals(List.of("1 of 4 cells with a value (25.0 %) lie above the datum, up to 2.5 m: land or drying heights,"
                + " too shallow for any site"), doubts("elevation", "m", -60, -80, 2.5f, -100));
        assertEquals(List.of("3 of 4 cells with a value (75.0 %) lie above the datum, up to 100 m: land or drying heights,"
                        + " too shallow for any site; more cells are dry than wet, so check \"values: depth\""),
                doubts("depth", "m", -60, -80, 80, -100));
    }

    @Test
    void feetReadAsMetresAndMetresReadAsFeet() {
        assertEquals(List.of("no depth lies within the limits of 60 to 150 m when the file is read in m, but 75.0 % of them do"
                + " in ft; check \"unit: m\""), doubts("depth", "m", 200, 300, 450, 600));
        assertEquals(List.of("no depth lies within the limits of 60 to 150 m when the file is read in ft, but 100 % of them do"
                + " in m; check \"unit: ft\""), doubts("elevation", "ft", -61, -90, -120, -149));
        assertEquals(List.of("no depth lies within the limits of 60 to 150 m when the file is read in m, but 50.0 % of them do"
                + " in fathom; check \"unit: m\""), doubts("depth", "m", 34, 35, 2, 3));
    }

    @Test
    void theUnitThatTheFileStatesIsHeldAgainstThePlans() {
        assertEquals(List.of(), BathymetryFacts.of(plan("depth", "ft"), file(300, 400).stating("US survey foot")).warnings());
        assertEquals(List.of("the file states the unit \"ft\" and the plan \"unit: m\", which is what counts; make sure which is right"),
                BathymetryFacts.of(plan("depth", "m"), file(60, 80).stating("ft")).warnings());
        assertEquals(List.of("the file states the unit \"cubits\", which is not known; check it against the plan's \"unit: m\""),
                BathymetryFacts.of(plan("depth", "m"), file(60, 80).stating("cubits")).warnings());
    }

    @Test
    void aFillThatTheFileDoesNotStateIsNamedAndSpoilsNoOtherFigure() {
        assertEquals(List.of("the least value -9999 looks like a no-data value that the file does not state; state it in the file"),
                doubts("elevation", "m", -9999, -80, -70, -60));
        assertEquals(List.of("the greatest value 3.40282E+38 looks like a no-data value that the file does not state; state it in the file"),
                doubts("elevation", "m", Float.MAX_VALUE, -80, -70, -60));
    }

    @Test
    void valuesBeyondAnyOceanOrMountain() {
        assertEquals(List.of("depths reach 18288 m, deeper than any ocean; check \"unit: fathom\" and the file's no-data value"),
                doubts("depth", "fathom", 10_000, 40, 50, 60));
        assertEquals("heights reach 9500 m, above any mountain; check \"unit: m\" and the file's no-data value",
                doubts("elevation", "m", 9500, -80, -70, -60).get(1));
    }

    @Test
    void emptyAndFlatGrids() {
        assertEquals(List.of("no cell has a value; check the file and the no-data value that it states"), doubts("depth", "m", NONE, NONE));
        assertEquals(List.of("every cell has the same value 75; check the file"), doubts("depth", "m", 75, 75, NONE));
    }

    @Test
    void depthsAreUnderstoodInMetresPositiveDown() {
        BathymetryFacts facts = BathymetryFacts.of(plan("elevation", "ft"), file(-100, 10, NONE));
        assertEquals(-3.048, facts.shallowestM(), 1e-9);
        assertEquals(30.48, facts.deepestM(), 1e-9);
        assertEquals(1, facts.dryCells());
        assertEquals(1, facts.wetCells());
    }

    private List<String> doubts(String values, String unit, float... cells) {
        return BathymetryFacts.of(plan(values, unit), file(cells)).warnings();
    }

    private static MemoryBathymetry file(float... cells) {
        return new MemoryBathymetry(cells.length, 1, 0, 0, cells);
    }

    private SitingPlan plan(String values, String unit) {
        try {
            Files.writeString(folder.resolve("depths.tif"), "");
            Path plan = folder.resolve("plan.yaml");
            Files.writeString(plan, """
                    bathymetry: {file: depths.tif, values: %s, unit: %s, datum: MLLW, survey-order: 1a}
                    limits: {depth: [60 m, 150 m]}
                    module: {height: 9 m, landing-radius: 25 m}
                    criteria: {depth: {weight: 1, curve: [60 m, 80 m, 120 m, 150 m]}}
                    sites: {apart: 150 m}
                    """.formatted(values, unit));
            return PlanReader.read(plan, false);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
