package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.seacairn.InputException;
import org.seacairn.plan.SitingPlan.LayerFile;

/** What every refusal of a layer must be like. */
final class Refusals {
    private Refusals() {}

    /** Reads a layer that must be refused for exactly one problem; returns its text. */
    static String of(LayerFile source) {
        InputException e = assertThrows(InputException.class, () -> VectorLayers.read(source));
        assertEquals(1, e.problems().size(), e.getMessage());
        requireUsable(e);
        return e.getMessage();
    }

    /** A problem is one line, says what to do after a semicolon, and gives away no absolute path. */
    static void requireUsable(InputException e) {
        assertAll(e.problems().stream().map(problem -> () -> {
            assertFalse(problem.contains("\n"), problem);
            assertFalse(problem.contains("/tmp/") || problem.contains("java."), problem);
            assertTrue(problem.contains("; ") || problem.contains("more rows like these"), problem);
            assertTrue(problem.length() < 700, problem);
        }));
    }
}
