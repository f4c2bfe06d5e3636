package org.seacairn.grid;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.io.WKTReader;
import org.seacairn.geodesy.Crs;

class PolygonScanTest {
    private final GridGeometry grid = new GridGeometry(Crs.ofEpsg(32617), 1000, 2000, 10, 13, 9);

    private int[] painted(Window window, int[] values, String... wkt) throws Exception {
        List<Geometry> polygons = new ArrayList<>();
        for (String text : wkt) {
            polygons.add(new WKTReader().read(text));
        }
        int[] into = new int[window.cells()];
        Arrays.fill(into, -1);
        new PolygonScan(grid, polygons, values).paint(window, into);
        return into;
    }

    @Test
    void takesCellsByTheirCentres() throws Exception {
        // Centres at 1005, 1015, ... and 1995, 1985, ...; the polygon holds columns 1 to 2, rows 0 to 1.
        int[] into = painted(new Window(0, 0, 4, 3), new int[] {7},
                "POLYGON ((1010 2000, 1028 2000, 1028 1981, 1010 1981, 1010 2000))");
        assertArrayEquals(new int[] {-1, 7, 7, -1, -1, 7, 7, -1, -1, -1, -1, -1}, into);
    }

    @Test
    void laterPolygonLiesOnTopAndHolesStayOpen() throws Exception {
        int[] into = painted(new Window(0, 0, 4, 1), new int[] {1, 2},
                "POLYGON ((1000 2000, 1040 2000, 1040 1900, 1000 1900, 1000 2000), (1010 2000, 1020 2000, 1020 1990, 1010 1990, 1010 2000))",
                "POLYGON ((1028 2000, 1032 2000, 1032 1900, 1028 1900, 1028 2000))");
        assertArrayEquals(new int[] {1, -1, 1, 1}, into);
        assertArrayEquals(new int[] {1, -1, 1, 2}, painted(new Window(0, 0, 4, 1), new int[] {1, 2},
                "POLYGON ((1000 2000, 1040 2000, 1040 1900, 1000 1900, 1000 2000), (1010 2000, 1020 2000, 1020 1990, 1010 1990, 1010 2000))",
                "POLYGON ((1028 2000, 1036 2000, 1036 1900, 1028 1900, 1028 2000))"));
    }

    /** A centre on the common edge of two neighbours lies in exactly one of them. */
    @Test
    void neighboursShareNoCellAndLeaveNone() throws Exception {
        Window all = grid.whole();
        String left = "POLYGON ((900 2100, 1045 2100, 1055 1995, 1045 1955, 1065 1900, 900 1900, 900 2100))";
        String right = "POLYGON ((1300 2100, 1045 2100, 1055 1995, 1045 1955, 1065 1900, 1300 1900, 1300 2100))";
        int[] a = painted(all, new int[] {0}, left);
        int[] b = painted(all, new int[] {0}, right);
        for (int i = 0; i < a.length; i++) {
            assertEquals(1, (a[i] == 0 ? 1 : 0) + (b[i] == 0 ? 1 : 0), "cell " + i);
        }
    }

    @Test
    void windowOfAWindowIsTheSame() throws Exception {
        String star = "POLYGON ((1020 1990, 1100 1960, 1030 1930, 1110 1925, 1060 1995, 1020 1990))";
        int[] all = painted(grid.whole(), new int[] {3}, star);
        Window part = new Window(3, 2, 5, 4);
        int[] some = painted(part, new int[] {3}, star);
        for (int row = 2; row < 6; row++) {
            for (int col = 3; col < 8; col++) {
                assertEquals(all[grid.whole().index(col, row)], some[part.index(col, row)]);
            }
        }
    }

    @Test
    void farPolygonMeetsNothing() throws Exception {
        List<Geometry> far = List.of(new WKTReader().read("POLYGON ((0 0, 1 0, 1 1, 0 0))"));
        assertFalse(new PolygonScan(grid, far, new int[1]).meets(grid.whole()));
    }

    /** JTS's point-in-area locator is the judge, over random stars with holes. */
    @Test
    void agreesWithPointInAreaOnRandomPolygons() {
        Random random = new Random(5);
        GeometryFactory factory = new GeometryFactory();
        for (int run = 0; run < 200; run++) {
            double cx = 1000 + 130 * random.nextDouble();
            double cy = 1910 + 90 * random.nextDouble();
            Geometry polygon = factory.createPolygon(star(random, cx, cy, 60, 30).getCoordinates())
                    .difference(factory.createPolygon(star(random, cx, cy, 20, 8).getCoordinates()));
            if (!polygon.isValid()) {
                continue;
            }
            int[] into = new int[grid.whole().cells()];
            Arrays.fill(into, -1);
            new PolygonScan(grid, List.of(polygon), new int[1]).paint(grid.whole(), into);
            IndexedPointInAreaLocator judge = new IndexedPointInAreaLocator(polygon);
            for (int row = 0; row < grid.rows(); row++) {
                for (int col = 0; col < grid.cols(); col++) {
                    int where = judge.locate(new Coordinate(grid.centreX(col), grid.centreY(row)));
                    if (where != Location.BOUNDARY) {
                        assertEquals(where == Location.INTERIOR ? 0 : -1, into[grid.whole().index(col, row)],
                                "run " + run + ", cell " + col + ", " + row);
                    }
                }
            }
        }
    }

    private static Geometry star(Random random, double cx, double cy, double outer, double inner) {
        int n = 3 + random.nextInt(20);
        Coordinate[] ring = new Coordinate[n + 1];
        for (int i = 0; i < n; i++) {
            double r = inner + (outer - inner) * random.nextDouble();
            ring[i] = new Coordinate(cx + r * Math.cos(2 * Math.PI * i / n), cy + r * Math.sin(2 * Math.PI * i / n));
        }
        ring[n] = ring[0];
        return new GeometryFactory().createLineString(ring);
    }
}
