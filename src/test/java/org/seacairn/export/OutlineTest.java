package org.seacairn.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.precision.GeometryPrecisionReducer;

class OutlineTest {
    /** Whole numbers, so that the cases can be read. */
    private static final PrecisionModel WHOLE = new PrecisionModel(1);

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        // Vertices that round to one place are one vertex.
        "POLYGON ((0 0, 9 0, 9.1 0.1, 9 9, 0 9, 0 0)) | MULTIPOLYGON (((0 0, 9 0, 9 9, 0 9, 0 0)))",
        // A hole smaller than the rounding is gone.
        "POLYGON ((0 0, 9 0, 9 9, 0 0), (5 2, 5.1 2, 5.1 2.1, 5 2)) | MULTIPOLYGON (((0 0, 9 0, 9 9, 0 0)))",
        "POLYGON ((0 0, 0.1 0, 0.1 0.1, 0 0)) | MULTIPOLYGON EMPTY",
        "POLYGON EMPTY | MULTIPOLYGON EMPTY",
    })
    void verticesAreRounded(String polygon, String outline) {
        Geometry expected = Samples.geometry(outline);
        MultiPolygon actual = Outline.of(Samples.geometry(polygon), WHOLE);
        assertTrue(expected.norm().equalsExact(actual.norm()), actual.toText());
    }

    @Test
    void shellsTurnCounterclockwiseAndHolesClockwise() {
        assertEquals("MULTIPOLYGON (((0 0, 9 0, 9 9, 0 9, 0 0), (1 1, 1 5, 5 5, 5 1, 1 1)))", Outline.of(
                Samples.geometry("POLYGON ((0 0, 0 9, 9 9, 9 0, 0 0), (1 1, 5 1, 5 5, 1 5, 1 1))"), WHOLE).toText());
    }

    /** A spike that crosses the far side once its vertices are rounded one by one. */
    @Test
    void roundingNeverMakesAnInvalidPolygon() {
        Geometry spike = Samples.geometry("POLYGON ((0 0, 10 0, 10 10, 6.4 0.4, 5.6 0.4, 0 10, 0 0))");
        Geometry pinched = Samples.geometry("POLYGON ((0 0, 10 0, 10 4, 5 0.4, 0 4, 0 0))");
        for (Geometry polygon : new Geometry[] {spike, pinched}) {
            assertTrue(polygon.isValid());
            assertFalse(GeometryPrecisionReducer.reducePointwise(polygon, WHOLE).isValid());
            assertTrue(Outline.of(polygon, WHOLE).isValid());
        }
    }

    @Test
    void theGivenPolygonIsLeftAsItIs() {
        Geometry polygon = Samples.geometry("POLYGON ((0 0, 0 9.4, 9 9, 9 0, 0 0))");
        Geometry before = polygon.copy();
        Outline.of(polygon, WHOLE);
        assertTrue(before.equalsExact(polygon));
    }
}
