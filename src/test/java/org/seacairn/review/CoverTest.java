package org.seacairn.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.seacairn.geodesy.PlainDistance;
import org.seacairn.layer.Feature;

class CoverTest {
    private static final Geodesic WGS84 = Geodesic.WGS84;

    private static Geometry wkt(String text) {
        try {
            return new WKTReader().read(text);
        } catch (ParseException e) {
            throw new IllegalArgumentException(text, e);
        }
    }

    private static Cover cover(String... polygons) {
        List<Feature> features = new ArrayList<>();
        for (String polygon : polygons) {
            features.add(new Feature(features.size() + 1, wkt(polygon), Map.of("kind", "k" + features.size())));
        }
        return new Cover(features, WGS84);
    }

    @Test
    void insideOnePolygonItIsTheDistanceToItsEdge() {
        String square = "POLYGON ((-87 29, -86.9 29, -86.9 29.1, -87 29.1, -87 29))";
        Cover.Margin margin = cover(square).at(-86.97, 29.04);
        assertEquals(PlainDistance.toEdges(wkt(square), -86.97, 29.04, WGS84), margin.distanceM(), 1e-4);
        assertEquals(270, margin.azimuthDeg(), 0.1);
    }

    @Test
    void outsideItIsNegative() {
        String square = "POLYGON ((-87 29, -86.9 29, -86.9 29.1, -87 29.1, -87 29))";
        Cover.Margin margin = cover(square).at(-86.89, 29.04);
        assertEquals(-PlainDistance.toEdges(wkt(square), -86.89, 29.04, WGS84), margin.distanceM(), 1e-4);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 30, -55, 75})
    void theBorderBetweenNeighboursIsNone(double latDeg) {
        double n = latDeg + 0.1;
        // The second has a vertex of its own on the common border; the third overlaps the second.
        Cover three = cover("POLYGON ((10 %1$s, 10.1 %1$s, 10.1 %2$s, 10 %2$s, 10 %1$s))".formatted(latDeg, n),
                "POLYGON ((10.1 %1$s, 10.2 %1$s, 10.2 %2$s, 10.1 %2$s, 10.1 %3$s, 10.1 %1$s))".formatted(latDeg, n, latDeg + 0.04),
                "POLYGON ((10.19 %1$s, 10.3 %1$s, 10.3 %2$s, 10.19 %2$s, 10.19 %1$s))".formatted(latDeg, n));
        Cover.Margin margin = three.at(10.1001, latDeg + 0.02);
        double toSouthM = PlainDistance.toEdges(wkt("LINESTRING (10.1 %1$s, 10.2 %1$s)".formatted(latDeg)), 10.1001, latDeg + 0.02, WGS84);
        assertEquals(toSouthM, margin.distanceM(), 0.003);
        assertEquals(List.of("k1"), three.holding(10.1001, latDeg + 0.02).stream().map(f -> f.attributes().get("kind")).toList());
    }

    @Test
    void aGapThatRoundingOpensIsNoGapAndOneOfAMillimetreIs() {
        String west = "POLYGON ((10 30, 10.1 30, 10.1 30.1, 10 30.1, 10 30))";
        double tenthDeg = 1e-4 / 96_486; // a tenth of a millimetre of longitude at 30 N
        for (int tenths : new int[] {0, 10}) {
            double gap = tenths == 0 ? 0.8 * tenthDeg : tenths * tenthDeg;
            double e = 10.1 + gap;
            String east = "POLYGON ((%1$.14f 30, 10.2 30, 10.2 30.1, %1$.14f 30.1, %1$.14f 30))".formatted(e);
            double marginM = cover(west, east).at(10.099, 30.05).distanceM();
            if (tenths == 0) {
                assertTrue(marginM > 5000, "closed: " + marginM);
            } else {
                assertEquals(96.5, marginM, 0.2);
            }
        }
    }

    @Test
    void neighboursOverTheAntimeridianAreNeighbours() {
        Cover cover = cover("POLYGON ((179.9 10, 180 10, 180 10.1, 179.9 10.1, 179.9 10))",
                "POLYGON ((-180 10, -179.9 10, -179.9 10.1, -180 10.1, -180 10))");
        assertEquals(WGS84.Inverse(10, 180, 10.05, 180).s12, cover.at(180, 10.05).distanceM(), 1);
        assertEquals(WGS84.Inverse(10, 180, 10.05, 180).s12, cover.at(-179.999, 10.05).distanceM(), 1);
    }

    @Test
    void aPolygonInsideIsMeasuredFromItsNearestPoint() {
        Cover cover = cover("POLYGON ((-87 29, -86.9 29, -86.9 29.1, -87 29.1, -87 29))");
        Cover.Margin margin = cover.of(wkt("POLYGON ((-86.98 29.02, -86.96 29.02, -86.96 29.04, -86.98 29.04, -86.98 29.02))"));
        // Western side to western side, shortest at the northern corner where meridians are closer.
        assertEquals(WGS84.Inverse(29.04, -86.98, 29.04, -87).s12, margin.distanceM(), 0.01);
        assertEquals(29.04, margin.placeLatitudeDeg(), 1e-6);
    }

    @Test
    void aPolygonPartlyOutsideIsMeasuredAtItsFarthestPoint() {
        Cover cover = cover("POLYGON ((-87 29, -86.9 29, -86.9 29.1, -87 29.1, -87 29))");
        Cover.Margin margin = cover.of(wkt("POLYGON ((-87.01 29.02, -86.96 29.02, -86.96 29.04, -87.01 29.04, -87.01 29.02))"));
        assertEquals(-WGS84.Inverse(29.02, -87.01, 29.02, -87).s12, margin.distanceM(), 0.01);
    }

    @Test
    void aPolygonAcrossTwoNeighboursIsInside() {
        Cover cover = cover("POLYGON ((10 30, 10.1 30, 10.1 30.1, 10 30.1, 10 30))", "POLYGON ((10.1 30, 10.2 30, 10.2 30.1, 10.1 30.1, 10.1 30))");
        Cover.Margin margin = cover.of(wkt("POLYGON ((10.08 30.05, 10.12 30.05, 10.12 30.06, 10.08 30.06, 10.08 30.05))"));
        assertEquals(WGS84.Inverse(30.06, 10.1, 30.1, 10.1).s12, margin.distanceM(), 2);
        assertEquals(2, cover.meeting(wkt("POLYGON ((10.08 30.05, 10.12 30.05, 10.12 30.06, 10.08 30.06, 10.08 30.05))")).size());
    }

    @Test
    void depthOfAnOverlapIsAboutHowFarItReachesIn() {
        Cover cover = cover("POLYGON ((10 30, 10.1 30, 10.1 30.1, 10 30.1, 10 30))");
        String reachesIn = "POLYGON ((10.099 30.05, 10.12 30.05, 10.12 30.06, 10.099 30.06, 10.099 30.05))";
        assertEquals(WGS84.Inverse(30.05, 10.099, 30.05, 10.1).s12, cover.deepest(wkt(reachesIn)).orElseThrow().distanceM(), 0.1);
        assertTrue(cover.deepest(wkt("POLYGON ((10.1 30, 10.2 30, 10.2 30.1, 10.1 30.1, 10.1 30))")).isEmpty());
    }

    /** A patchwork with holes, judged about the places only and as a whole. */
    @Test
    void aboutItsPlacesACoverIsThatOfAll() {
        Random random = new Random(20261125);
        List<Feature> patches = new ArrayList<>();
        for (int row = 0; row < 12; row++) {
            for (int col = 0; col < 12; col++) {
                if (random.nextInt(8) > 0) {
                    double west = 179.95 + 0.01 * col;
                    double south = -40 + 0.01 * row;
                    patches.add(new Feature(patches.size(), wkt("POLYGON ((%1$s %2$s, %3$s %2$s, %3$s %4$s, %1$s %4$s, %1$s %2$s))"
                            .formatted(west, south, west + 0.01, south + 0.01)), Map.of()));
                }
            }
        }
        Cover whole = new Cover(patches, WGS84);
        int inside = 0;
        for (int i = 0; i < 60; i++) {
            double lonDeg = 179.94 + 0.14 * random.nextDouble();
            double latDeg = -40.01 + 0.14 * random.nextDouble();
            Geometry place = wkt("POINT (" + (lonDeg > 180 ? lonDeg - 360 : lonDeg) + " " + latDeg + ")");
            double expectedM = whole.at(lonDeg, latDeg).distanceM();
            double aboutM = 500;
            double metM = Cover.about(List.of(place), aboutM, patches, WGS84).at(place.getCoordinate().x, latDeg).distanceM();
            if (expectedM <= aboutM) {
                assertEquals(expectedM, metM, 1e-3, lonDeg + " " + latDeg);
                inside += expectedM > 0 ? 1 : 0;
            } else {
                assertTrue(metM > aboutM, lonDeg + " " + latDeg + ": " + metM);
            }
        }
        assertTrue(inside > 10, inside + " inside");
    }
}
