package org.seacairn.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;

class DriftCheckTest {
    private static final Coordinate START = new Coordinate(-79.3, 29.5);

    /** A place so far along a drift of the heading and then so far to its right. */
    private static Pick place(double headingDeg, double alongM, double rightM) {
        GeodesicData foot = Geodesic.WGS84.Direct(START.y, START.x, headingDeg, alongM);
        GeodesicData at = Geodesic.WGS84.Direct(foot.lat2, foot.lon2, foot.azi2 + 90, rightM);
        return new Pick(0, 0, 0, 0, at.lon2, at.lat2, 0.5);
    }

    @ParameterizedTest
    @CsvSource({"0, 0.001", "37, 0.001", "90, 0.001", "200, 0.001", "315, 0.001"})
    void missIsTheDistanceFromTheGeodesic(double headingDeg, double toleranceM) {
        double[][] asked = {{100, 12}, {2500, -40}, {4000, 200}, {-700, 5}, {9000, 400}};
        List<Pick> modules = new ArrayList<>();
        for (double[] a : asked) {
            modules.add(place(headingDeg, a[0], a[1]));
        }
        DriftCheck check = DriftCheck.of(Geodesic.WGS84, START, modules, headingDeg, 15);
        for (int i = 0; i < asked.length; i++) {
            assertEquals(asked[i][1], check.missM().get(i), toleranceM, "module " + i);
            assertEquals(Math.abs(asked[i][1]), nearestM(headingDeg, modules.get(i)), toleranceM, "module " + i);
        }
    }

    /** By walking the drift metre by metre. */
    private static double nearestM(double headingDeg, Pick module) {
        GeodesicLine line = Geodesic.WGS84.Line(START.y, START.x, headingDeg);
        GeodesicData to = Geodesic.WGS84.Inverse(START.y, START.x, module.latitudeDeg(), module.longitudeDeg());
        double about = to.s12 * Math.cos(Math.toRadians(to.azi1 - headingDeg));
        double nearest = Double.POSITIVE_INFINITY;
        for (double along = about - 5; along <= about + 5; along += 0.05) {
            GeodesicData p = line.Position(along);
            nearest = Math.min(nearest, Geodesic.WGS84.Inverse(p.lat2, p.lon2, module.latitudeDeg(), module.longitudeDeg()).s12);
        }
        return nearest;
    }

    @Test
    void parallelDriftMakesTheLargestMissLeast() {
        List<Pick> modules = List.of(place(60, 200, 30), place(60, 400, 10), place(60, 600, 22));
        DriftCheck check = DriftCheck.of(Geodesic.WGS84, START, modules, 60, 15);
        assertFalse(check.seesAll());
        assertEquals(20, check.offsetM(), 1e-3);
        assertEquals(10, check.missFromOffsetM().get(0), 1e-3);
        assertEquals(-10, check.missFromOffsetM().get(1), 1e-3);
        assertTrue(check.seesAllFromOffset());
    }

    @Test
    void noModulesAreAllSeen() {
        DriftCheck check = DriftCheck.of(Geodesic.WGS84, START, List.of(), 60, 15);
        assertEquals(0, check.offsetM());
        assertTrue(check.seesAll() && check.seesAllFromOffset());
    }
}
