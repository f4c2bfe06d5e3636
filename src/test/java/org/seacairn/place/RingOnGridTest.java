package org.seacairn.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.grid.GridGeometry;
import org.seacairn.layer.Feature;
import org.seacairn.plan.PlanReader;
import org.seacairn.plan.SitingPlan;
import org.seacairn.review.EllipsoidalDistance;
import org.seacairn.score.GridFiles;
import org.seacairn.score.ScoreEngine;
import org.seacairn.score.WorkingDepth;
import org.seacairn.score.WorkingLayers;

/** Rings on scored grids, judged by GeographicLib and by the distances of the review. */
class RingOnGridTest {
    /** The depth curve makes a hundredth of the depth the score. */
    private static final String PLAN = """
            crs: %s
            bathymetry: {file: depths.tif, values: depth, unit: m}
            module: {height: 1 m, landing-radius: 0 m}
            criteria: {depth: {weight: 1, curve: [0 m, 100 m, 100 m, 100 m]}}
            sites: {count: 1, apart: 100 m}
            """;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    @TempDir
    Path folder;

    private int scenes;

    /** A point, line or polygon of some tens of metres on or beside the grid, longitude and latitude. */
    private static Geometry stone(Random random, GridGeometry grid) {
        double span = grid.cellM() * grid.cols();
        double x = grid.west() + span * (-0.2 + 1.4 * random.nextDouble());
        double y = grid.south() + grid.cellM() * grid.rows() * random.nextDouble();
        double size = 20 + 100 * random.nextDouble();
        Coordinate[] corners = new Coordinate[6];
        for (int i = 0; i < 5; i++) {
            double angle = 2 * Math.PI * i / 5;
            double r = size * (0.2 + 0.8 * random.nextDouble());
            corners[i] = new Coordinate(x + r * Math.cos(angle), y + r * Math.sin(angle));
        }
        corners[5] = corners[0].copy();
        Geometry onGrid = switch (random.nextInt(3)) {
            case 0 -> FACTORY.createPoint(new Coordinate(x, y));
            case 1 -> FACTORY.createLineString(Arrays.copyOf(corners, 4));
            default -> FACTORY.createPolygon(corners);
        };
        return grid.crs().to(grid.crs().geographic()).apply(onGrid);
    }

    private RingResult search(GridGeometry grid, float[] hundredths, RingRequest asked) {
        try {
            Path own = Files.createDirectory(folder.resolve("scene-" + scenes++));
            GridFiles.geoTiff(own.resolve("depths.tif"), grid, hundredths);
            GridFiles.write(own.resolve("plan.yaml"), String.format(Locale.ROOT, PLAN, "EPSG:" + grid.crs().epsg().getAsInt()));
            SitingPlan plan = PlanReader.read(own.resolve("plan.yaml"), false);
            try (WorkingDepth depth = WorkingDepth.open(plan)) {
                return RingSearch.of(new ScoreEngine(plan, depth, WorkingLayers.load(plan, depth.grid())), asked);
            }
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private static double metres(RingModule a, RingModule b) {
        return Geodesic.WGS84.Inverse(a.pick().latitudeDeg(), a.pick().longitudeDeg(),
                b.pick().latitudeDeg(), b.pick().longitudeDeg()).s12;
    }

    private static void assertModules(Ring ring, GridGeometry grid, Geometry stone, RingRequest asked, String name) {
        CoordinateTransform toLonLat = grid.crs().to(grid.crs().geographic());
        EllipsoidalDistance toStone = EllipsoidalDistance.of(List.of(new Feature(1, stone, Map.of())), Geodesic.WGS84);
        Point middle = grid.crs().geographic().to(grid.crs()).apply(stone).getCentroid();
        Coordinate centre = toLonLat.apply(middle.getX(), middle.getY());
        List<RingModule> modules = ring.modules();
        assertEquals(asked.modules(), modules.size(), name);
        for (int i = 0; i < modules.size(); i++) {
            RingModule module = modules.get(i);
            Coordinate at = toLonLat.apply(grid.centreX(module.pick().col()), grid.centreY(module.pick().row()));
            double distanceM = toStone.nearest(at.x, at.y).distanceM();
            assertEquals(distanceM, module.distanceM(), 0.001, name);
            assertTrue(distanceM >= asked.innerM() && distanceM <= asked.outerM(), () -> name + ": " + module);
            GeodesicData ray = Geodesic.WGS84.Inverse(centre.y, centre.x, at.y, at.x);
            // A millimetre of the densified outline's centroid, seen from the module.
            double tolerance = Math.toDegrees(0.001 / ray.s12);
            assertEquals(0, Math.IEEEremainder(ray.azi1 - module.bearingDeg(), 360), tolerance, name);
            assertTrue(i == 0 || module.bearingDeg() >= modules.get(i - 1).bearingDeg(), () -> name + ": " + modules);
            for (RingModule other : modules.subList(0, i)) {
                assertTrue(metres(module, other) >= asked.apartM(), () -> name + ": " + module + " and " + other);
            }
            if (asked.modules() > 1) {
                assertEquals(metres(module, modules.get((i + 1) % modules.size())), ring.gapsM().get(i), 1e-6, name);
            }
        }
        assertEquals(modules.stream().mapToDouble(m -> m.pick().score()).sum(), ring.total(), 1e-8, name);
    }

    @Test
    void cellsOfTheAnnulusAndTheirReasonsAreThoseOfAPlainLookAtEachCell() {
        int rings = 0;
        for (long seed = 1; seed <= 25; seed++) {
            Random random = new Random(seed * 0x9E3779B97F4A7C15L);
            int zone = new int[] {17, 33, 60, 1}[random.nextInt(4)];
            double cellM = new double[] {5, 12.5, 20}[random.nextInt(3)];
            int cols = 8 + random.nextInt(20);
            int rows = 8 + random.nextInt(20);
            // On the equator the edges of zones 60 and 1, and with them the antimeridian, lie at 833979 and 166021.
            double west = zone == 60 ? 833_900 : zone == 1 ? 165_900 : 200_000 + 500_000 * random.nextDouble();
            double north = zone == 60 || zone == 1 ? 50_000 : 7e6 * random.nextDouble() + 1000;
            GridGeometry grid = GridFiles.utm(zone, false, west, north, cellM, cols, rows);
            float[] depths = new float[cols * rows];
            for (int i = 0; i < depths.length; i++) {
                depths[i] = random.nextInt(6) == 0 ? Float.NaN : random.nextInt(6) == 0 ? -3 : 5 + 90 * random.nextFloat();
            }
            Geometry stone = stone(random, grid);
            double innerM = random.nextInt(4) == 0 ? 0 : 60 * random.nextDouble();
            RingRequest asked = new RingRequest(stone, innerM, innerM + 10 + 15 * cellM * random.nextDouble(),
                    1 + random.nextInt(6), 4 * cellM * random.nextDouble());
            String name = "seed " + seed + ", " + asked + " on " + grid;

            EllipsoidalDistance toStone = EllipsoidalDistance.of(List.of(new Feature(1, stone, Map.of())), Geodesic.WGS84);
            CoordinateTransform toLonLat = grid.crs().to(grid.crs().geographic());
            long cells = 0;
            long onTheEdge = 0;
            long scored = 0;
            Map<String, Long> reasons = new TreeMap<>();
            int beyond = (int) ((asked.outerM() + 140) / cellM + 0.2 * cols) + 1;
            for (int row = -beyond; row < rows + beyond; row++) {
                for (int col = -beyond; col < cols + beyond; col++) {
                    Coordinate at = toLonLat.apply(grid.centreX(col), grid.centreY(row));
                    double d = toStone.nearest(at.x, at.y).distanceM();
                    onTheEdge += Math.abs(d - asked.innerM() - 0.001) < 0.001 || Math.abs(d - asked.outerM() + 0.001) < 0.001 ? 1 : 0;
                    if (d >= asked.innerM() + 0.001 && d <= asked.outerM() - 0.001) {
                        cells++;
                        double depth = grid.holds(col, row) ? depths[row * cols + col] : Double.NaN;
                        if (depth > 0) {
                            scored++;
                        } else {
                            reasons.merge("landing-room", 1L, Long::sum);
                            reasons.merge(Double.isNaN(depth) ? "no-depth" : "too-shallow", 1L, Long::sum);
                        }
                    }
                }
            }
            RingResult result = search(grid, depths, asked);
            assertEquals(cells, result.cells(), onTheEdge, name);
            assertEquals(scored, result.scoredCells(), onTheEdge, name);
            if (onTheEdge == 0) {
                assertEquals(reasons, new TreeMap<>(result.reasons()), name);
            }
            assertEquals(result.ring().isEmpty(), result.fit().isPresent(), name);
            rings += result.ring().isPresent() ? 1 : 0;
            result.ring().ifPresent(ring -> assertModules(ring, grid, stone, asked, name));
        }
        assertTrue(rings > 10, rings + " rings in 25 scenes");
    }

    /** All alike: eight bearings of 45 degrees would need cells just there, so 44 is what the ground allows. */
    @Test
    void eightAboutAPointOnEvenGroundStandFortyFourDegreesApartOrMore() {
        GridGeometry grid = GridFiles.utm(17, false, 400_000, 3_000_000, 5, 70, 70);
        float[] depths = new float[4900];
        Arrays.fill(depths, 50);
        Geometry stone = grid.crs().to(grid.crs().geographic()).apply(FACTORY.createPoint(new Coordinate(400_171, 2_999_823)));
        RingRequest asked = new RingRequest(stone, 60, 150, 8, 60);
        Ring ring = search(grid, depths, asked).ring().orElseThrow();
        assertModules(ring, grid, stone, asked, "even ground");
        assertEquals(44, ring.evennessDeg());
        assertEquals(4.0, ring.total(), 1e-6);
        assertTrue(ring.exact());
        assertEquals(8, ring.gapsM().size());
    }

    /** Four stand 150 m apart within 150 m only if they span half a turn; what lies south of the stone spans less. */
    @Test
    void moreThanFitSaysHowMany() {
        GridGeometry grid = GridFiles.utm(17, false, 400_000, 3_000_000, 5, 70, 70);
        float[] depths = new float[4900];
        Arrays.fill(depths, 50);
        Arrays.fill(depths, 0, 70 * 36, Float.NaN);
        Geometry stone = grid.crs().to(grid.crs().geographic()).apply(FACTORY.createPoint(new Coordinate(400_171, 2_999_823)));
        RingResult result = search(grid, depths, new RingRequest(stone, 60, 150, 8, 150));
        assertEquals(Optional.empty(), result.ring());
        assertEquals(Optional.of(new RingFit(3, 3)), result.fit());
        assertEquals(List.of("no-depth", "landing-room"), List.copyOf(result.reasons().keySet()));
        assertEquals(result.cells(), result.scoredCells() + result.reasons().get("no-depth"));
    }

    @Test
    void nothingToStandOnFitsNone() {
        GridGeometry grid = GridFiles.utm(17, false, 400_000, 3_000_000, 20, 10, 10);
        float[] depths = new float[100];
        Arrays.fill(depths, Float.NaN);
        Geometry stone = grid.crs().to(grid.crs().geographic()).apply(FACTORY.createPoint(new Coordinate(400_100, 2_999_900)));
        RingResult result = search(grid, depths, new RingRequest(stone, 10, 80, 1, 0));
        assertEquals(Optional.of(new RingFit(0, 0)), result.fit());
        assertEquals(0, result.scoredCells());
        assertEquals(Map.of("no-depth", result.cells(), "landing-room", result.cells()), result.reasons());
    }

    @ParameterizedTest
    @CsvSource({"-1, 10, 1, 0", "10, 10, 1, 0", "10, 5, 1, 0", "0, Infinity, 1, 0", "0, 10, 0, 0", "0, 10, 1, -1", "NaN, 10, 1, 0"})
    void requestsThatMakeNoSenseAreRefused(double innerM, double outerM, int modules, double apartM) {
        Point stone = FACTORY.createPoint(new Coordinate(-82, 27));
        assertThrows(IllegalArgumentException.class, () -> new RingRequest(stone, innerM, outerM, modules, apartM));
    }
}
