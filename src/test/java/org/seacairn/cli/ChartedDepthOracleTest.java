package org.seacairn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.seacairn.cli.TinyScene.Outcome;

/**
 * Verdicts of {@code charted-depth} and the counts of {@code layers} beside plain code, on random areas that overlap, leave gaps and
 * leave ends out: point in polygon by JTS on the map, ranges by hand. What lies within {@value #NEAR_M} m of an outline is not judged,
 * for an edge of 1 km is drawn as a geodesic by the one and as a straight line on the map by the other.
 */
class ChartedDepthOracleTest {
    private static final double NEAR_M = 0.1;
    private static final double LANDING_M = 25;
    private static final double UNCERTAINTY_M = 0.5;
    /** The plan's limits, with a module of 8 m and 20 m of water over it. */
    private static final double LEAST_M = 60;
    private static final double MOST_M = 120;
    private static final int SITES = 150;
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final List<String> WORSE = List.of("pass", "marginal", "no data", "fail");

    @TempDir
    Path folder;

    /** NaN for an end that is left out. */
    private record Area(double shallowM, double deepM, Polygon onMap) {
        boolean isSilent() {
            return Double.isNaN(shallowM) && Double.isNaN(deepM);
        }

        double first() {
            return Double.isNaN(shallowM) ? deepM : shallowM;
        }

        boolean isShoalerThan(Area other) {
            return first() < other.first() || first() == other.first() && Double.compare(deepM, other.deepM) < 0;
        }
    }

    private static List<Area> areas(Random random) {
        List<Area> areas = new ArrayList<>();
        int count = 6 + random.nextInt(12);
        for (int i = 0; i < count; i++) {
            double x = 1200 * random.nextDouble();
            double y = 800 * random.nextDouble();
            double radius = 100 + 400 * random.nextDouble();
            int corners = 3 + random.nextInt(9);
            Coordinate[] ring = new Coordinate[corners + 1];
            for (int c = 0; c < corners; c++) {
                double turn = 2 * Math.PI * c / corners;
                double reach = radius * (0.3 + 0.7 * random.nextDouble());
                ring[c] = new Coordinate(x + reach * Math.cos(turn), y + reach * Math.sin(turn));
            }
            ring[corners] = ring[0].copy();
            // Around the depths of the ground there, and now and then far from them.
            double aboutM = random.nextInt(4) == 0 ? 150 * random.nextDouble() : 65 + 50 * Math.min(1, x / 1200);
            double shallowM = Math.rint(10 * (aboutM - 30 * random.nextDouble())) / 10;
            double deepM = Math.rint(10 * (shallowM + 50 * random.nextDouble())) / 10;
            areas.add(new Area(random.nextInt(6) == 0 ? Double.NaN : shallowM, random.nextInt(6) == 0 ? Double.NaN : deepM, FACTORY.createPolygon(ring)));
        }
        return areas;
    }

    private static String json(Area area) {
        double[] xy = new double[2 * area.onMap.getNumPoints()];
        for (int i = 0; i < area.onMap.getNumPoints(); i++) {
            xy[2 * i] = area.onMap.getCoordinates()[i].x;
            xy[2 * i + 1] = area.onMap.getCoordinates()[i].y;
        }
        return String.format(Locale.ROOT, "{\"type\": \"Feature\", \"properties\": {\"DRVAL1\": %s, \"DRVAL2\": %s}, \"geometry\": {\"type\": \"Polygon\", \"coordinates\": [%s]}}",
                Double.isNaN(area.shallowM) ? "null" : area.shallowM, Double.isNaN(area.deepM) ? "null" : area.deepM, TinyScene.line(xy));
    }

    /** NaN where there is none, and off the grid. */
    private static double depthM(int col, int row) {
        boolean on = col >= 0 && row >= 0 && col < TinyScene.COLS && row < TinyScene.ROWS;
        return on && isSurveyed(col, row) ? (float) (Math.round(100 * TinyScene.depthM(col, row)) / 100.0) : Double.NaN;
    }

    /** A quarter of the ground has no depth. */
    private static boolean isSurveyed(int col, int row) {
        return !(row < 20 && col > 30) && !Double.isNaN(TinyScene.depthM(col, row));
    }

    private static String grid() {
        String[] lines = TinyScene.asciiGrid(TinyScene.ROWS).split("\\R");
        for (int row = 0; row < TinyScene.ROWS; row++) {
            String[] cells = lines[6 + row].strip().split(" ");
            for (int col = 0; col < TinyScene.COLS; col++) {
                cells[col] = isSurveyed(col, row) ? cells[col] : "-9999";
            }
            lines[6 + row] = String.join(" ", cells);
        }
        return String.join("\n", lines) + "\n";
    }

    private static Point centre(int col, int row) {
        return FACTORY.createPoint(new Coordinate((col + 0.5) * TinyScene.CELL_M, (TinyScene.ROWS - row - 0.5) * TinyScene.CELL_M));
    }

    private static Area shoalest(List<Area> areas, Point at) {
        Area first = null;
        for (Area area : areas) {
            if (!area.isSilent() && area.onMap.contains(at) && (first == null || area.isShoalerThan(first))) {
                first = area;
            }
        }
        return first;
    }

    /** Whether an area comes that near to a place where no shoaler one lies over it. */
    private static boolean isSeenWithin(List<Area> areas, Area area, Point place, double distanceM) {
        Geometry seen = area.onMap.intersection(place.buffer(distanceM, 16));
        for (Area other : areas) {
            seen = !other.isSilent() && other.isShoalerThan(area) ? seen.difference(other.onMap) : seen;
        }
        return !seen.isEmpty();
    }

    private static boolean isNearAnOutline(List<Area> areas, Point at, double withinM) {
        return areas.stream().anyMatch(area -> area.onMap.getExteriorRing().distance(at) < withinM);
    }

    private static String verdict(double depthM, Area area) {
        if (area == null) {
            return "no data";
        }
        if (!Double.isNaN(depthM)) {
            return depthM < area.shallowM - UNCERTAINTY_M || depthM > area.deepM + UNCERTAINTY_M ? "marginal" : "pass";
        }
        return area.deepM < LEAST_M || area.shallowM > MOST_M ? "fail" : "marginal";
    }

    private static String worse(String a, String b) {
        return WORSE.indexOf(a) >= WORSE.indexOf(b) ? a : b;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void verdictsAndCountsAreThoseOfPlainCode(long seed) throws IOException {
        Random random = new Random(seed);
        List<Area> areas = areas(random);
        TinyScene scene = new TinyScene(folder).write("depths.asc", grid());
        scene.write("plan.yaml", TinyScene.PLAN.replace("keep-off:\n", "depth-areas: {file: areas.geojson, source: chart 7}\nkeep-off:\n"));
        scene.write("areas.geojson", TinyScene.features(areas.stream().map(ChartedDepthOracleTest::json).toArray(String[]::new)));
        List<Point> places = new ArrayList<>();
        StringBuilder proposal = new StringBuilder("name,longitude,latitude\n");
        for (int i = 0; i < SITES; i++) {
            places.add(FACTORY.createPoint(new Coordinate(30 + 1140 * random.nextDouble(), 30 + 740 * random.nextDouble())));
            proposal.append("P").append(i).append(',').append(TinyScene.lonLat(places.get(i).getX(), places.get(i).getY()).replace(" ", "")).append('\n');
        }
        scene.write("proposal.csv", proposal.toString());
        Outcome outcome = TinyScene.run("review", scene.path("plan.yaml").toString(), scene.path("proposal.csv").toString());
        assertTrue(outcome.status() <= 1, outcome::err);
        List<CSVRecord> rows;
        try (CSVParser parser = CSVParser.parse(scene.path("plan-review/review.csv"), StandardCharsets.UTF_8,
                CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).build())) {
            rows = parser.getRecords().stream().filter(r -> r.get("rule").equals("charted-depth")).toList();
        }
        int judged = 0;
        for (int i = 0; i < SITES; i++) {
            judged += isAsPlain(areas, places.get(i), rows.get(i)) ? 1 : 0;
        }
        assertTrue(judged > SITES / 3, "only " + judged + " sites could be judged");
        layers(scene, areas);
    }

    /** Whether the site could be judged: no area is seen in its landing circle that is not at the centre of one of its cells. */
    private static boolean isAsPlain(List<Area> areas, Point place, CSVRecord row) {
        String expected = "pass";
        List<Area> holding = new ArrayList<>();
        int centreCol = (int) (place.getX() / TinyScene.CELL_M);
        int centreRow = (int) (TinyScene.ROWS - place.getY() / TinyScene.CELL_M);
        for (int r = centreRow - 2; r <= centreRow + 2; r++) {
            for (int c = centreCol - 2; c <= centreCol + 2; c++) {
                Point centre = centre(c, r);
                double distanceM = centre.distance(place);
                boolean own = c == centreCol && r == centreRow;
                if (Math.abs(distanceM - LANDING_M) < NEAR_M && !own || isNearAnOutline(areas, centre, NEAR_M)) {
                    return false;
                }
                if (own || distanceM <= LANDING_M) {
                    Area area = shoalest(areas, centre);
                    holding.add(area);
                    expected = worse(expected, verdict(depthM(c, r), area));
                }
            }
        }
        boolean between = areas.stream().anyMatch(area -> !area.isSilent() && !holding.contains(area)
                && isSeenWithin(areas, area, place, LANDING_M + NEAR_M));
        if (between) {
            assertEquals(row.get("verdict"), worse(expected, row.get("verdict")), "seed's site " + row.get("site") + ": an area between centres cannot better it");
            return false;
        }
        assertEquals(expected, row.get("verdict"), row.get("site") + ": " + row.get("note"));
        return true;
    }

    private static void layers(TinyScene scene, List<Area> areas) {
        int within = 0;
        int shoaler = 0;
        int deeper = 0;
        int outside = 0;
        int chartOnly = 0;
        int unsure = 0;
        for (int row = 0; row < TinyScene.ROWS; row++) {
            for (int col = 0; col < TinyScene.COLS; col++) {
                Area area = shoalest(areas, centre(col, row));
                double depthM = depthM(col, row);
                unsure += isNearAnOutline(areas, centre(col, row), NEAR_M) ? 1 : 0;
                if (Double.isNaN(depthM)) {
                    chartOnly += area == null ? 0 : 1;
                } else if (area == null) {
                    outside++;
                } else if (depthM < area.shallowM - UNCERTAINTY_M) {
                    shoaler++;
                } else if (depthM > area.deepM + UNCERTAINTY_M) {
                    deeper++;
                } else {
                    within++;
                }
            }
        }
        String json = TinyScene.run("layers", scene.path("plan.yaml").toString(), "--json").out();
        assertEquals(within, told(json, "within"), unsure);
        assertEquals(shoaler, told(json, "shoaler"), unsure);
        assertEquals(deeper, told(json, "deeper"), unsure);
        assertEquals(outside, told(json, "in_no_area"), unsure);
        assertEquals(chartOnly, told(json, "without_depth"), unsure);
        assertEquals(TinyScene.COLS * TinyScene.ROWS, told(json, "cells_looked_at"), 0.0);
        assertTrue(unsure < 20, "too many cells on outlines: " + unsure);
    }

    private static double told(String json, String name) {
        String chart = json.substring(json.indexOf("\"charted_depth\""));
        return Double.parseDouble(chart.replaceAll("(?s).*?\"" + name + "\" : ([0-9]+).*", "$1"));
    }
}
