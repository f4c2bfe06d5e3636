package org.seacairn.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.sf.geographiclib.GeodesicMask;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.distance.DistanceOp;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;

class DistanceFieldTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final DistanceField.Use TELL_ALL_APART = (low, high) -> false;

    /** A grid that is not square, away from the central meridian of its zone. */
    private static GridGeometry grid(int epsg, double lon, double lat, double cellM) {
        Crs crs = Crs.ofEpsg(epsg);
        Coordinate corner = crs.geographic().to(crs).apply(lon, lat);
        return new GridGeometry(crs, Math.rint(corner.x), Math.rint(corner.y), cellM, 90, 70);
    }

    private static float[] fill(GridGeometry grid, List<Geometry> scene, Window window, double farM, DistanceField.Use use) {
        float[] into = new float[window.cells()];
        new DistanceField(grid, scene).fill(window, new PatchFrames(grid).over(window), farM, use, into);
        return into;
    }

    private static List<Geometry> scene(GridGeometry grid, Random random) {
        List<Geometry> scene = new ArrayList<>();
        double w = grid.east() - grid.west();
        double h = grid.north() - grid.south();
        int n = 1 + random.nextInt(25);
        for (int i = 0; i < n; i++) {
            double x = grid.west() + w * (2 * random.nextDouble() - 0.5);
            double y = grid.south() + h * (2 * random.nextDouble() - 0.5);
            double size = w / 3 * random.nextDouble();
            switch (random.nextInt(3)) {
                case 0 -> scene.add(FACTORY.createPoint(new Coordinate(x, y)));
                case 1 -> scene.add(FACTORY.createLineString(new Coordinate[] {new Coordinate(x, y),
                    new Coordinate(x + size, y - size / 2), new Coordinate(x + size / 2, y + size)}));
                default -> {
                    Geometry square = FACTORY.createPoint(new Coordinate(x, y)).buffer(size, 2);
                    scene.add(random.nextBoolean() ? square.difference(square.buffer(-size / 3)) : square);
                }
            }
        }
        return scene;
    }

    /**
     * The judge is GeographicLib's geodesic between the cell centre and the nearest point that JTS finds
     * on the map; on a conformal map that is the nearest point on the ground to second order.
     */
    @ParameterizedTest
    @CsvSource({"32617, -78.6, 29.5, 20, 0.002", "32617, -81, 29.5, 5, 0.001", "32733, 17.0, -33.9, 10, 0.001",
        "32633, 17.0, 69.0, 20, 0.002"})
    void agreesWithTheGeodesicToTheNearestPoint(int epsg, double lon, double lat, double cellM, double toleranceM) {
        GridGeometry grid = grid(epsg, lon, lat, cellM);
        CoordinateTransform toLonLat = grid.crs().to(grid.crs().geographic());
        Random random = new Random(epsg);
        for (int run = 0; run < 6; run++) {
            List<Geometry> scene = scene(grid, random);
            float[] distance = fill(grid, scene, grid.whole(), Double.POSITIVE_INFINITY, TELL_ALL_APART);
            Geometry all = FACTORY.buildGeometry(scene);
            for (int i = 0; i < 200; i++) {
                int col = random.nextInt(grid.cols());
                int row = random.nextInt(grid.rows());
                Coordinate centre = new Coordinate(grid.centreX(col), grid.centreY(row));
                Coordinate nearest = DistanceOp.nearestPoints(all, FACTORY.createPoint(centre))[0];
                Coordinate a = toLonLat.apply(centre.x, centre.y);
                Coordinate b = toLonLat.apply(nearest.x, nearest.y);
                double truth = nearest.equals2D(centre) ? 0
                        : grid.crs().geodesic().Inverse(a.y, a.x, b.y, b.x, GeodesicMask.DISTANCE).s12;
                assertEquals(truth, distance[row * grid.cols() + col], toleranceM,
                        "run " + run + ", cell " + col + ", " + row);
            }
        }
    }

    /** Where pruning takes one distance for another, both must have the same effect. */
    @Test
    void pruningNeverChangesWhatTheCallerSees() {
        GridGeometry grid = grid(32617, -79.3, 29.5, 10);
        Random random = new Random(3);
        for (int run = 0; run < 40; run++) {
            List<Geometry> scene = scene(grid, random);
            double near = 300 * random.nextDouble();
            double topFrom = near + 200 * random.nextDouble();
            double topTo = topFrom + 200 * random.nextDouble();
            double far = topTo + 300 * random.nextDouble();
            float[] exact = fill(grid, scene, grid.whole(), Double.POSITIVE_INFINITY, TELL_ALL_APART);
            float[] pruned = fill(grid, scene, grid.whole(), far,
                    (low, high) -> high < near || low >= far || low >= topFrom && high <= topTo);
            for (int i = 0; i < exact.length; i++) {
                boolean told = exact[i] >= near && exact[i] < far && !(exact[i] >= topFrom && exact[i] <= topTo);
                if (told) {
                    assertEquals(exact[i], pruned[i], "run " + run + ", cell " + i);
                } else {
                    assertEquals(exact[i] < near, pruned[i] < near, "run " + run + ", cell " + i);
                    assertEquals(exact[i] >= far, pruned[i] >= far, "run " + run + ", cell " + i);
                }
            }
        }
    }

    @Test
    void cellHasTheSameDistanceInEveryWindow() {
        GridGeometry grid = grid(32617, -79.3, 29.5, 10);
        List<Geometry> scene = scene(grid, new Random(9));
        float[] whole = fill(grid, scene, grid.whole(), Double.POSITIVE_INFINITY, TELL_ALL_APART);
        for (Window window : List.of(new Window(0, 0, 1, 1), new Window(63, 63, 3, 3), new Window(17, 5, 60, 44), new Window(89, 69, 1, 1))) {
            float[] part = fill(grid, scene, window, Double.POSITIVE_INFINITY, TELL_ALL_APART);
            for (int row = window.row(); row < window.endRow(); row++) {
                for (int col = window.col(); col < window.endCol(); col++) {
                    assertEquals(whole[row * grid.cols() + col], part[window.index(col, row)]);
                }
            }
        }
    }

    @Test
    void nothingWithinReachIsInfinitelyFar() {
        GridGeometry grid = grid(32617, -79.3, 29.5, 10);
        Geometry far = FACTORY.createPoint(new Coordinate(grid.east() + 5000, grid.north()));
        float[] distance = fill(grid, List.of(far), grid.whole(), 1000, (low, high) -> low >= 1000);
        assertEquals(Float.POSITIVE_INFINITY, distance[0]);
        assertTrue(fill(grid, List.of(), grid.whole(), 1000, (low, high) -> low >= 1000)[5] >= 1000);
    }

    @Test
    void insideAPolygonIsZeroAndInAHoleIsNot() {
        GridGeometry grid = grid(32617, -79.3, 29.5, 10);
        Geometry square = FACTORY.toGeometry(new org.locationtech.jts.geom.Envelope(
                grid.west() - 5000, grid.east() + 5000, grid.south() - 5000, grid.north() + 5000));
        Geometry hole = FACTORY.createPoint(new Coordinate(grid.centreX(40), grid.centreY(30))).buffer(101, 32);
        float[] distance = fill(grid, List.of(square.difference(hole)), grid.whole(), Double.POSITIVE_INFINITY, TELL_ALL_APART);
        assertEquals(0, distance[0]);
        assertEquals(101, distance[30 * grid.cols() + 40], 0.2);
    }
}
