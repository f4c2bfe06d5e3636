package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The oracle of {@code review} before it judges anything: cases with an answer that is known by construction. */
class PlainFigureTest {
    private static final double[] CENTRE = {-80.5, 29.5};

    /** A perpendicular from an edge is the nearest way back to it. */
    @ParameterizedTest
    @CsvSource({"-80.5, 29.5, 92600, 37", "0.001, 0.001, 92600, 80", "179.99, -17, 92600, 100", "-179.995, 66, 92600, 275",
        "15, 79.9, 92600, 85", "15, 70, 92600, 5", "147, -44, 92600, 200", "20, 0, 92600, 90", "15, 75, 900, 60"})
    void aPerpendicularIsTheNearestWay(double lon, double lat, double lengthM, double azimuth) {
        GeodesicLine edge = Geodesic.WGS84.Line(lat, lon, azimuth);
        for (double share : new double[] {-0.5, -0.31, 0.003, 0.17, 0.5}) {
            GeodesicData foot = edge.Position(lengthM * share);
            for (double awayM : new double[] {-40_000, -1500, -1, 0.01, 3, 250, 5000}) {
                GeodesicData place = Geodesic.WGS84.Direct(foot.lat2, foot.lon2, foot.azi2 + 90, awayM);
                PlainPlane plane = new PlainPlane(new double[] {foot.lon2, foot.lat2});
                PlainFigure figure = new PlainFigure("edge", plane, false).line(end(edge, -lengthM / 2), end(edge, lengthM / 2));
                double[] at = {place.lon2, place.lat2};
                // The ends of the edge are exact to some nanometres, which rounding in degrees blows up to a tenth of a micrometre.
                assertEquals(Math.abs(awayM), PlainFigure.edgeM(at, plane.of(at), figure.pieces), 1e-6, share + " of the edge, " + awayM + " m off");
            }
        }
    }

    private static double[] end(GeodesicLine edge, double alongM) {
        GeodesicData at = edge.Position(alongM);
        return new double[] {at.lon2, at.lat2};
    }

    @Test
    void beyondTheEndOfAnEdgeItIsTheVertex() {
        PlainPlane plane = new PlainPlane(CENTRE);
        double[] vertex = plane.lonLat(100, 0);
        PlainFigure figure = new PlainFigure("edge", plane, false).line(plane.lonLat(-5000, 0), vertex);
        double[] place = plane.lonLat(130, 40);
        assertEquals(PlainFigure.inverseM(place, vertex), PlainFigure.edgeM(place, plane.of(place), figure.pieces), 1e-9);
    }

    /** GeographicLib's manual page of RhumbSolve: from 40:38:23N 073:46:44W to 01:21:33N 103:59:22E the azimuth is 103:34:58.2. */
    @Test
    void aRhumbLineHasTheAzimuthOfTheManual() {
        double[] a = {-(73 + 46 / 60.0 + 44 / 3600.0), 40 + 38 / 60.0 + 23 / 3600.0};
        double[] b = {103 + 59 / 60.0 + 22 / 3600.0, 1 + 21 / 60.0 + 33 / 3600.0};
        PlainPath path = PlainPath.rhumbLine(a, b);
        for (double share : new double[] {0, 0.2, 0.5, 0.77, 1}) {
            double[] here = path.at(share - 5e-7);
            double[] next = path.at(share + 5e-7);
            GeodesicData chord = Geodesic.WGS84.Inverse(here[1], here[0], next[1], next[0]);
            double azimuth = (chord.azi1 + chord.azi2) / 2;
            assertEquals(103 + 34 / 60.0 + 58.2 / 3600, azimuth, 0.05 / 3600, share + " of the way");
        }
        assertEquals(b[1], path.at(1)[1], 1e-12);
        assertEquals(b[0], path.at(1)[0], 1e-12);
    }

    /** A chord of an arc of radius R / tan(latitude). */
    @ParameterizedTest
    @CsvSource({"30, 10000", "-30, 10000", "75, 10000", "79, 1000"})
    void aRhumbLineBendsAsACircleDoes(double lat, double lengthM) {
        PlainPlane plane = new PlainPlane(new double[] {180, lat});
        GeodesicLine edge = Geodesic.WGS84.Line(lat, 180, 90);
        PlainFigure rhumb = new PlainFigure("rhumb", plane, true).line(end(edge, -lengthM / 2), end(edge, lengthM / 2));
        double radiusM = Geodesic.WGS84.EquatorialRadius() / Math.sqrt(1 - 0.00669438 * Math.pow(Math.sin(Math.toRadians(lat)), 2));
        double expectedM = lengthM * lengthM * Math.abs(Math.tan(Math.toRadians(lat))) / (8 * radiusM);
        assertEquals(expectedM, PlainFigure.edgeM(plane.centre(), new double[2], rhumb.pieces), 0.001 * expectedM);
    }

    @Test
    void aHoleIsOutside() {
        PlainPlane plane = new PlainPlane(new double[] {15, -79.9});
        PlainFigure figure = square(plane, "a", 0, 0, 1000);
        addSquare(plane, figure, 200, 0, 300);
        assertTrue(figure.holds(new double[] {-500, 0}));
        assertFalse(figure.holds(new double[] {200, 0}));
        assertFalse(figure.holds(new double[] {1200, 0}));
        double[] inHole = plane.lonLat(200, 10);
        assertEquals(290, PlainFigure.nearest(inHole, plane.of(inHole), List.of(figure)).distanceM(), 1e-3);
        double[] inside = plane.lonLat(-500, 10);
        assertEquals(0, PlainFigure.nearest(inside, plane.of(inside), List.of(figure)).distanceM());
    }

    @Test
    void theNearestOfSeveralAndTheNext() {
        PlainPlane plane = new PlainPlane(new double[] {179.9999, 10});
        PlainFigure a = new PlainFigure("a", plane, false).point(plane.lonLat(100, 0));
        PlainFigure b = new PlainFigure("b", plane, false).point(plane.lonLat(0, 90)).point(plane.lonLat(0, 5000));
        PlainFigure far = new PlainFigure("far", plane, false).point(plane.lonLat(60_000, 60_000));
        PlainFigure.Nearest nearest = PlainFigure.nearest(plane.centre(), new double[2], List.of(a, far, b));
        assertSame(b, nearest.figure());
        assertEquals(90, nearest.distanceM(), 1e-6);
        assertEquals(Double.POSITIVE_INFINITY, nearest.otherM(), "only those as near as the roughness of the plane matter");
        b.point(plane.lonLat(100.5, 0));
        assertEquals(100, PlainFigure.nearest(plane.centre(), new double[2], List.of(a, far)).distanceM(), 1e-6);
    }

    @Test
    void theNearestApproachOfPolygons() {
        PlainPlane plane = new PlainPlane(CENTRE);
        PlainFigure a = square(plane, "a", 0, 0, 100);
        PlainFigure b = square(plane, "b", 330, 240, 100);
        PlainFigure inA = square(plane, "in a", 10, 10, 20);
        PlainFigure crossing = square(plane, "crossing", 120, 0, 40);
        // 130 m east and 40 m north.
        assertEquals(Math.hypot(130, 40), a.approach(List.of(b)).distanceM(), 1e-3);
        assertEquals(0, a.approach(List.of(b, inA)).distanceM());
        assertEquals(0, inA.approach(List.of(a)).distanceM());
        assertEquals(0, a.approach(List.of(crossing)).distanceM());
        assertTrue(a.sharesGroundWith(inA) && inA.sharesGroundWith(a) && a.sharesGroundWith(crossing));
        assertFalse(a.sharesGroundWith(b));
        assertTrue(a.sharesGroundWith(square(plane, "same", 0, 0, 100)));
    }

    @Test
    void neighboursTouchAndShareNoGround() {
        PlainPlane plane = new PlainPlane(CENTRE);
        PlainFigure west = square(plane, "west", -100, 0, 100);
        PlainFigure east = square(plane, "east", 100, 0, 100);
        assertEquals(0, west.approach(List.of(east)).distanceM(), 1e-6);
        assertFalse(west.sharesGroundWith(east));
        double[] place = plane.lonLat(10, 30);
        // The border in common is none of what both cover.
        assertEquals(70, PlainFigure.edgeM(place, plane.of(place), PlainFigure.outline(List.of(west, east))), 1e-3);
        assertEquals(10, PlainFigure.edgeM(place, plane.of(place), PlainFigure.outline(List.of(east))), 1e-3);
    }

    @Test
    void theOutlineOfPolygonsThatOverlap() {
        PlainPlane plane = new PlainPlane(new double[] {-179.9999, 66});
        PlainFigure low = square(plane, "low", 0, 0, 100);
        PlainFigure high = square(plane, "high", 50, 50, 100);
        List<PlainFigure.Piece> outline = PlainFigure.outline(List.of(low, high));
        double lengthM = outline.stream().mapToDouble(p -> PlainPlane.lengthM(p.a(), p.b())).sum();
        assertEquals(2 * 800 - 4 * 150, lengthM, 0.01);
        double[] place = plane.lonLat(40, 40);
        // Nearest is a corner where the two borders cross: (100, -50) or (-50, 100).
        assertEquals(Math.hypot(60, 90), PlainFigure.edgeM(place, plane.of(place), outline), 1e-3);
    }

    @Test
    void theWorstPlaceOfAPolygonMayBeNoCorner() {
        PlainPlane plane = new PlainPlane(CENTRE);
        PlainFigure site = square(plane, "site", 0, 0, 50);
        PlainFigure west = square(plane, "west", -200, 0, 160);
        PlainFigure east = square(plane, "east", 210, 0, 160);
        // Between -40 and 50 the middle is 45 m from both.
        assertEquals(45, new WorstPlace(site, List.of(west, east)).distanceM, 1e-3);
        assertEquals(90, new WorstPlace(site, List.of(west)).distanceM, 1e-3);
        assertEquals(0, new WorstPlace(site, List.of(square(plane, "all", 0, 0, 300))).distanceM);
    }

    private static PlainFigure square(PlainPlane plane, String name, double x, double y, double halfM) {
        return addSquare(plane, new PlainFigure(name, plane, false), x, y, halfM);
    }

    private static PlainFigure addSquare(PlainPlane plane, PlainFigure figure, double x, double y, double halfM) {
        double[][] corners = {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}, {-1, -1}};
        return figure.ring(Arrays.stream(corners).map(c -> plane.lonLat(x + c[0] * halfM, y + c[1] * halfM)).toArray(double[][]::new));
    }
}
