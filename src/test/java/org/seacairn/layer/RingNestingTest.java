package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

class RingNestingTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    @Test
    void oneRingIsAPolygonWhicheverWayItTurns() throws ParseException {
        check("POLYGON ((0 0, 0 9, 9 9, 9 0, 0 0))", clockwise(0, 0, 9));
        check("POLYGON ((0 0, 9 0, 9 9, 0 9, 0 0))", counterClockwise(0, 0, 9));
    }

    @Test
    void holesFindTheirShellAndIslandsInHolesAreShells() throws ParseException {
        Geometry polygons = polygons(counterClockwise(1, 1, 7), clockwise(20, 0, 9), clockwise(0, 0, 9), clockwise(2, 2, 3),
                counterClockwise(21, 1, 2), counterClockwise(24, 1, 2));
        assertEquals(new WKTReader().read("MULTIPOLYGON ("
                + "((0 0, 0 9, 9 9, 9 0, 0 0), (1 1, 8 1, 8 8, 1 8, 1 1)),"
                + "((2 2, 2 5, 5 5, 5 2, 2 2)),"
                + "((20 0, 20 9, 29 9, 29 0, 20 0), (21 1, 23 1, 23 3, 21 3, 21 1), (24 1, 26 1, 26 3, 24 3, 24 1)))").norm(), polygons.norm());
    }

    @Test
    void aFileThatTurnsEverythingTheOtherWayReadsTheSame() {
        Geometry right = polygons(clockwise(0, 0, 9), counterClockwise(1, 1, 7), clockwise(2, 2, 3));
        Geometry reversed = polygons(counterClockwise(0, 0, 9), clockwise(1, 1, 7), counterClockwise(2, 2, 3));
        assertTrue(right.equalsTopo(reversed));
        assertEquals(2, reversed.getNumGeometries());
    }

    @Test
    void aLoneCounterClockwiseRingBesideAShellIsAShell() {
        Geometry both = polygons(clockwise(0, 0, 9), counterClockwise(20, 0, 9));
        assertEquals(162, both.getArea(), 0);
        assertTrue(both.isValid());
    }

    @Test
    void aRingInARingOfTheSameTurnIsNeverMadeAHole() {
        Geometry doubtful = polygons(clockwise(0, 0, 9), clockwise(1, 1, 2));
        assertEquals(2, doubtful.getNumGeometries());
        assertFalse(doubtful.isValid());
    }

    @Test
    void aHoleThatTouchesItsShellWithEveryCornerIsStillInside() throws ParseException {
        LinearRing diamond = ring(5, 0, 10, 5, 5, 10, 0, 5, 5, 0);
        check("POLYGON ((0 0, 0 10, 10 10, 10 0, 0 0), (5 0, 10 5, 5 10, 0 5, 5 0))", clockwise(0, 0, 10), diamond);
    }

    @Test
    void theSameRingTwiceStaysTwoShells() {
        Geometry twice = polygons(clockwise(0, 0, 9), clockwise(0, 0, 9));
        assertEquals(2, twice.getNumGeometries());
        assertFalse(twice.isValid());
    }

    @Test
    void anyOrderOfRingsGivesTheSamePolygons() {
        long seed = 20260115;
        Random random = new Random(seed);
        for (int draw = 0; draw < 50; draw++) {
            List<LinearRing> rings = new ArrayList<>();
            nest(new Envelope(0, 1000, 0, 1000), true, rings, random);
            Geometry first = RingNesting.polygons(rings, FACTORY);
            // Shells less holes, computed without looking at which ring lies in which.
            double area = rings.stream().mapToDouble(r -> (isClockwise(r) ? 1 : -1) * FACTORY.createPolygon(r).getArea()).sum();
            assertEquals(area, first.getArea(), 1e-6, "seed " + seed + ", draw " + draw);
            assertTrue(first.isValid(), "seed " + seed + ", draw " + draw);
            Collections.shuffle(rings, random);
            assertEquals(first.norm(), RingNesting.polygons(rings, FACTORY).norm(), "seed " + seed + ", draw " + draw);
        }
    }

    /** Fills a box with one to four squares, each of them filled in turn by rings of the other turn. */
    private static void nest(Envelope box, boolean clockwise, List<LinearRing> rings, Random random) {
        int across = 1 + random.nextInt(2);
        double step = box.getWidth() / across;
        for (int i = 0; i < across; i++) {
            for (int j = 0; j < across; j++) {
                double side = step * (0.4 + 0.5 * random.nextDouble());
                double x = box.getMinX() + i * step + (step - side) / 2;
                double y = box.getMinY() + j * step + (step - side) / 2;
                rings.add(clockwise ? clockwise(x, y, side) : counterClockwise(x, y, side));
                if (side > 60 && random.nextInt(4) > 0) {
                    nest(new Envelope(x, x + side, y, y + side), !clockwise, rings, random);
                }
            }
        }
    }

    private static boolean isClockwise(LinearRing ring) {
        return ring.getCoordinateN(1).x == ring.getCoordinateN(0).x;
    }

    private static void check(String wkt, LinearRing... rings) throws ParseException {
        assertEquals(new WKTReader().read(wkt), polygons(rings));
    }

    private static Geometry polygons(LinearRing... rings) {
        return RingNesting.polygons(List.of(rings), FACTORY);
    }

    private static LinearRing clockwise(double x, double y, double side) {
        return ring(x, y, x, y + side, x + side, y + side, x + side, y, x, y);
    }

    private static LinearRing counterClockwise(double x, double y, double side) {
        return ring(x, y, x + side, y, x + side, y + side, x, y + side, x, y);
    }

    private static LinearRing ring(double... xy) {
        Coordinate[] coordinates = new Coordinate[xy.length / 2];
        for (int i = 0; i < coordinates.length; i++) {
            coordinates[i] = new Coordinate(xy[2 * i], xy[2 * i + 1]);
        }
        return FACTORY.createLinearRing(coordinates);
    }
}
