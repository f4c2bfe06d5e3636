package org.seacairn.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.layer.Feature;
import org.seacairn.review.SiteCheck.Claim;
import org.seacairn.review.SiteCheck.Disagreement;
import org.seacairn.review.SiteCheck.Rule;
import org.seacairn.review.SiteCheck.Site;

class SiteCheckTest {
    private static final Geodesic WGS84 = Geodesic.WGS84;
    private static final double TOLERANCE_M = 0.5;
    private static final Site FIRST = new Site("S01", -87, 29.5);
    private static final Site SECOND = site("S02", 90, 150);

    private static Site site(String id, double azimuthDeg, double fromFirstM) {
        GeodesicData at = WGS84.Direct(29.5, -87, azimuthDeg, fromFirstM);
        return new Site(id, at.lon2, at.lat2);
    }

    /** A cable running north and south, a distance east of the first site, and so 150 m less of the second. */
    private static Rule cable(double eastM, Claim... claims) {
        GeodesicData foot = WGS84.Direct(29.5, -87, 90, eastM);
        GeodesicData north = WGS84.Direct(foot.lat2, foot.lon2, foot.azi2 - 90, 5000);
        GeodesicData south = WGS84.Direct(foot.lat2, foot.lon2, foot.azi2 + 90, 5000);
        return new Rule("keep-off:cables", List.of(new Feature(1, new GeometryFactory().createLineString(
                new Coordinate[] {new Coordinate(north.lon2, north.lat2), new Coordinate(south.lon2, south.lat2)}),
                Map.of())), List.of(claims));
    }

    private static List<Disagreement> check(Rule... rules) {
        return SiteCheck.check(List.of(FIRST, SECOND), List.of(rules), 150, TOLERANCE_M, WGS84);
    }

    @Test
    void sitesThatHoldAreConfirmed() {
        assertEquals(List.of(), check(cable(800, new Claim(800.4, 500), new Claim(649.6, 500))));
    }

    @Test
    void aDistanceThatDiffersByMoreThanTheToleranceIsReportedEitherWay() {
        List<Disagreement> found = check(cable(800, new Claim(800.6, 500), new Claim(649.4, 500)));
        assertEquals(2, found.size());
        assertEquals("S01", found.get(0).site());
        assertEquals("keep-off:cables", found.get(0).rule());
        assertEquals(800.6, found.get(0).rasterM());
        assertEquals(800, found.get(0).ellipsoidM(), 1e-3);
        assertEquals("S02", found.get(1).site());
        assertEquals(650, found.get(1).ellipsoidM(), 1e-3);
    }

    @Test
    void aSiteTooNearIsReportedThoughBothPathsAgree() {
        List<Disagreement> found = check(cable(640, new Claim(640, 500), new Claim(490, 500)));
        assertEquals(1, found.size());
        assertEquals("S02", found.get(0).site());
        assertEquals(490, found.get(0).ellipsoidM(), 1e-3);
    }

    @Test
    void aShortfallWithinTheToleranceIsNotReported() {
        assertEquals(List.of(), check(cable(649.7, new Claim(650, 500), new Claim(500, 500))));
    }

    @Test
    void withoutARasterDistanceOnlyTheRequirementCounts() {
        assertEquals(1, check(cable(640, new Claim(Double.NaN, 500), new Claim(Double.NaN, 500))).size());
    }

    @Test
    void aLayerWithoutFeaturesIsInfinitelyFar() {
        double far = Double.POSITIVE_INFINITY;
        Rule agreed = new Rule("keep-off:none", List.of(), List.of(new Claim(far, 500), new Claim(far, 500)));
        assertEquals(List.of(), check(agreed));
        Rule differing = new Rule("keep-off:none", List.of(), List.of(new Claim(900, 500), new Claim(far, 500)));
        assertEquals(List.of(new Disagreement("S01", "keep-off:none", 900, far)), check(differing));
    }

    @Test
    void sitesTooNearToEachOtherAreReportedToTheMillimetre() {
        List<Site> sites = List.of(FIRST, site("S02", 0, 149.99), site("S03", 180, 150));
        List<Disagreement> found = SiteCheck.check(sites, List.of(), 150, TOLERANCE_M, WGS84);
        assertEquals(1, found.size());
        assertEquals("S02", found.get(0).site());
        assertEquals("apart:S01", found.get(0).rule());
        assertEquals(150, found.get(0).rasterM());
        assertEquals(149.99, found.get(0).ellipsoidM(), 1e-6);
    }

    @Test
    void spacingIsMeasuredOverTheAntimeridian() {
        List<Site> sites = List.of(new Site("S01", 179.9995, -17), new Site("S02", -179.9995, -17));
        List<Disagreement> found = SiteCheck.check(sites, List.of(), 150, TOLERANCE_M, WGS84);
        assertEquals(106.5, found.get(0).ellipsoidM(), 0.1);
    }

    @Test
    void claimsMustMatchTheSites() {
        IllegalArgumentException e =
                assertThrows(IllegalArgumentException.class, () -> check(cable(800, new Claim(800, 500))));
        assertEquals("keep-off:cables: 1 claims for 2 sites", e.getMessage());
    }

    @Test
    void valuesThatWouldLetEverythingPassAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Claim(800, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> new Site("S01", Double.NaN, 29));
        assertThrows(IllegalArgumentException.class,
                () -> SiteCheck.check(List.of(FIRST), List.of(), 150, Double.NaN, WGS84));
        assertThrows(IllegalArgumentException.class,
                () -> SiteCheck.check(List.of(FIRST), List.of(), Double.NaN, 0.5, WGS84));
    }
}
