package org.seacairn.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.criterion.Reasons;
import org.seacairn.criterion.WorkingLayer;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.plan.PlanReader;
import org.seacairn.plan.SitingPlan;
import org.seacairn.review.EllipsoidalDistance;

/**
 * One line of two vertices, 50 nautical miles apart on the parallel of 30 degrees north, in two layers, and an area with
 * such a line for its northern side, on an invented sea floor about its middle: as a rhumb line it is the parallel, as a
 * geodesic it passes 97 m north of it.
 */
class RhumbLineSceneTest {
    private static final int COLS = 21;
    private static final int ROWS = 40;
    private static final double REQUIRED_M = 45;
    private static final double MIDDLE_DEG = -81;
    private static final double HALF_DEG = Geodesic.WGS84.Direct(30, 0, 90, 46_300).lon2;
    private static final Crs UTM = Crs.ofEpsg(32617);
    private static final CoordinateTransform TO_LON_LAT = UTM.to(Crs.WGS84);
    private static final double NORTHING_M = Crs.WGS84.to(UTM).apply(MIDDLE_DEG, 30).y;
    private static final GridGeometry GRID =
            new GridGeometry(UTM, 500_000 - 105, Math.rint(NORTHING_M) + 250, 10, COLS, ROWS);

    private static final String PLAN = """
            bathymetry: {file: depths.tif, values: depth, unit: m, vertical-uncertainty: 0 m, horizontal-uncertainty: 0 m}
            module: {height: 9 m, landing-radius: 5 m}
            inside: {file: area.geojson, edges: rhumb-line}
            keep-off:
              - {layer: cable, file: line.geojson, distance: 40 m, source: invented}
              - {layer: lane, file: line.geojson, distance: 40 m, edges: rhumb-line, source: invented}
            criteria: {depth: {weight: 1, curve: [60 m, 70 m, 90 m, 150 m]}}
            sites: {count: 1, apart: 150 m}
            """;

    @TempDir
    Path folder;

    @BeforeEach
    void writeScene() {
        float[] depths = new float[COLS * ROWS];
        Arrays.fill(depths, 80);
        GridFiles.geoTiff(folder.resolve("depths.tif"), GRID, depths);
        double west = MIDDLE_DEG - HALF_DEG;
        double east = MIDDLE_DEG + HALF_DEG;
        GridFiles.write(folder.resolve("line.geojson"), String.format(Locale.ROOT,
                "{\"type\": \"LineString\", \"coordinates\": [[%s, 30], [%s, 30]]}", west, east));
        GridFiles.write(folder.resolve("area.geojson"), String.format(Locale.ROOT,
                "{\"type\": \"Polygon\", \"coordinates\": [[[%1$s, 29], [%2$s, 29], [%2$s, 30], [%1$s, 30], [%1$s, 29]]]}", west, east));
        GridFiles.write(folder.resolve("plan.yaml"), PLAN);
    }

    /** From a cell to a line that runs east and west where its meridian meets it: along that meridian. */
    private static double alongMeridianM(double fromDeg, double toDeg) {
        return Geodesic.WGS84.Inverse(fromDeg, MIDDLE_DEG, toDeg, MIDDLE_DEG).s12;
    }

    @Test
    void keepOffAndAreaFollowTheKindOfEdge() {
        double azimuth = Geodesic.WGS84.Inverse(30, MIDDLE_DEG - HALF_DEG, 30, MIDDLE_DEG + HALF_DEG).azi1;
        double topDeg = Geodesic.WGS84.Direct(30, MIDDLE_DEG - HALF_DEG, azimuth, 46_300).lat2;
        assertEquals(97, alongMeridianM(30, topDeg), 0.1);
        SitingPlan plan = PlanReader.read(folder.resolve("plan.yaml"), false);
        try (WorkingDepth depth = WorkingDepth.open(plan)) {
            WorkingLayers layers = WorkingLayers.load(plan, depth.grid());
            ScoreEngine engine = new ScoreEngine(plan, depth, layers);
            int[] reasons = engine.score(engine.grid().whole()).reasons();
            int col = COLS / 2;
            int ruledOut = 0;
            for (int row = 0; row < ROWS; row++) {
                Coordinate place = TO_LON_LAT.apply(GRID.west() + (col + 0.5) * 10, GRID.north() - (row + 0.5) * 10);
                double toCableM = alongMeridianM(place.y, topDeg);
                double toLaneM = alongMeridianM(place.y, 30);
                double[] onGridM = engine.keepOffDistancesM(col, row);
                assertEquals(toCableM, onGridM[0], 2e-3);
                assertEquals(toLaneM, onGridM[1], 2e-3);
                assertEquals(toCableM, exactM(layers.keepOff().get(0), place), 1e-3);
                assertEquals(toLaneM, exactM(layers.keepOff().get(1), place), 1e-3);
                int mask = reasons[row * COLS + col];
                assertEquals(toCableM < REQUIRED_M, has(engine, mask, Reasons.keepOff("cable")), "row " + row);
                assertEquals(toLaneM < REQUIRED_M, has(engine, mask, Reasons.keepOff("lane")), "row " + row);
                assertEquals(place.y > 30, has(engine, mask, Reasons.OUTSIDE_AREA), "row " + row);
                ruledOut += has(engine, mask, Reasons.keepOff("lane")) ? 1 : 0;
            }
            assertTrue(ruledOut == 9, ruledOut + " cells of 10 m");
        }
    }

    private static double exactM(WorkingLayer layer, Coordinate place) {
        return EllipsoidalDistance.of(layer.lonLat(), Geodesic.WGS84).nearest(place.x, place.y).distanceM();
    }

    private static boolean has(ScoreEngine engine, int mask, String reason) {
        return (mask & engine.reasons().bit(reason)) != 0;
    }
}
