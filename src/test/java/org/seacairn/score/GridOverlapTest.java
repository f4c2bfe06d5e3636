package org.seacairn.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.seacairn.criterion.WorkingLayer;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;
import org.seacairn.layer.Feature;
import org.seacairn.layer.VectorLayer;
import org.seacairn.plan.SitingPlan.Edges;

class GridOverlapTest {
    /** 3000 x 2000 m about 81 W, 27 N; not square. */
    private static final GridGeometry GRID = new GridGeometry(Crs.ofEpsg(32617), 498_500, 2_988_000, 100, 30, 20);

    @Test
    void featuresThatMeetTheRectangleAreCountedOnce() {
        GridOverlap overlap = overlap(Crs.ofEpsg(32617),
                "POINT (500000 2987000)", "POINT (500000 2988100)",
                "LINESTRING (400000 2987000, 600000 2987000)",
                "MULTIPOINT ((499000 2987000), (499100 2987000))",
                "POLYGON ((490000 2980000, 510000 2980000, 510000 2990000, 490000 2990000, 490000 2980000))");
        assertEquals(new GridOverlap(5, 4, OptionalDouble.empty(), OptionalDouble.empty()), overlap);
    }

    /** Placed from the middle of a side by GeographicLib, away from the grid. */
    @ParameterizedTest
    @CsvSource(textBlock = """
            500000, 2988000, 0,   5000
            501500, 2987000, 90,  5000
            500000, 2986000, 180, 200000
            498500, 2987000, 270, 200000
            """)
    void theNearestFeatureIsFoundInItsDirection(double x, double y, double bearingDeg, double metres) {
        Coordinate from = GRID.crs().to(Crs.WGS84).apply(x, y);
        GeodesicData to = Geodesic.WGS84.Direct(from.y, from.x, bearingDeg, metres);
        GridOverlap overlap = overlap(Crs.WGS84, "POINT (10 10)", "POINT (" + to.lon2 + " " + to.lat2 + ")");
        assertEquals(0, overlap.onGrid());
        assertEquals(metres, overlap.nearestM().orElseThrow(), 0.01 * metres);
        double off = overlap.bearingDeg().orElseThrow() - bearingDeg;
        assertTrue(Math.abs(off - 360 * Math.rint(off / 360)) < 20, "bearing off by " + off);
    }

    @Test
    void aFeatureAcrossTheAntimeridianIsNearAGridThere() {
        GridGeometry grid = new GridGeometry(Crs.ofEpsg(32660), 730_000, 5_000_000, 100, 30, 20);
        GridOverlap overlap = GridOverlap.of(WorkingLayer.of(layer(Crs.WGS84, "POINT (-179.9 45.1)"), grid, 0), grid);
        assertTrue(overlap.nearestM().orElseThrow() < 20_000, overlap.toString());
    }

    @Test
    void swappedCoordinatesAreRecognised() {
        assertEquals(Optional.of("x and y (longitude and latitude) look swapped: the other way 2 of 2 features would lie"
                + " on the working grid; correct the file"), look(Crs.WGS84, "POINT (27.01 -81)", "POINT (27.011 -81.001)"));
        assertEquals(Optional.of("x and y (longitude and latitude) look swapped: the other way 1 of 2 features would lie"
                + " on the working grid; correct the file"), look(Crs.ofEpsg(32617), "POINT (2987000 500000)", "POINT (0 0)"));
    }

    @Test
    void aWestLongitudeWithoutItsMinusIsRecognised() {
        assertEquals(Optional.of("the longitudes look as if their sign were wrong (west is negative): the other way 1 of 1"
                + " features would lie on the working grid; correct the file"), look(Crs.WGS84, "POINT (81 27.01)"));
    }

    @Test
    void aLayerThatIsMerelyElsewhereLooksLikeNoMistake() {
        assertEquals(Optional.empty(), look(Crs.WGS84, "POINT (-80 27)", "POINT (2 48)"));
    }

    private static GridOverlap overlap(Crs crs, String... wkt) {
        return GridOverlap.of(WorkingLayer.of(layer(crs, wkt), GRID, 0), GRID);
    }

    private static Optional<String> look(Crs crs, String... wkt) {
        return MistakenAxes.look(layer(crs, wkt), GRID);
    }

    private static VectorLayer layer(Crs crs, String... wkt) {
        List<Feature> features = new ArrayList<>();
        for (String text : wkt) {
            features.add(new Feature(features.size() + 1, geometry(text), Map.of()));
        }
        return new VectorLayer("reefs", Path.of("reefs.csv"), "CSV", crs, Edges.GEODESIC, features, 0, List.of());
    }

    private static Geometry geometry(String wkt) {
        try {
            return new WKTReader().read(wkt);
        } catch (ParseException e) {
            throw new IllegalArgumentException(wkt, e);
        }
    }
}
