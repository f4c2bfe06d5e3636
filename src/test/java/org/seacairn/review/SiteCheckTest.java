package org.seacairn.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.seacairn.geodesy.PlaceFrom.place;

import java.util.List;
import java.util.Map;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.layer.Feature;

class SiteCheckTest {
    private static final List<Feature> REEF =
            List.of(new Feature(1, new GeometryFactory().createPoint(new Coordinate(-79, 29)), Map.of()));

    private static SiteCheck.Site site(String id, double eastM) {
        Coordinate c = place(-79, 29, eastM, 0);
        return new SiteCheck.Site(id, c.x, c.y);
    }

    private static List<SiteCheck.Disagreement> check(double rasterM, double requiredM) {
        return SiteCheck.check(List.of(site("S01", 500)),
                List.of(new SiteCheck.Rule("reefs", REEF, List.of(new SiteCheck.Claim(rasterM, requiredM)))), 0, 0.02, Geodesic.WGS84);
    }

    @Test
    void agreementWithinTheToleranceIsNoDisagreement() {
        assertEquals(List.of(), check(500.015, 500.01));
        assertEquals(List.of(), check(Double.NaN, 400));
    }

    @Test
    void wrongDistanceAndShortDistanceAreTold() {
        assertEquals("reefs", check(500.03, 400).get(0).rule());
        assertEquals(500, check(Double.NaN, 500.03).get(0).ellipsoidM(), 1e-6);
        assertThrows(IllegalArgumentException.class, () -> check(500, Double.NaN));
    }

    @Test
    void sitesTooNearEachOtherAreTold() {
        List<SiteCheck.Disagreement> found = SiteCheck.check(List.of(site("S01", 0), site("S02", 149.9), site("S03", 300)),
                List.of(), 150, 0.02, Geodesic.WGS84);
        assertEquals(1, found.size());
        assertEquals("S02", found.get(0).site());
        assertEquals("apart:S01", found.get(0).rule());
        assertEquals(149.9, found.get(0).ellipsoidM(), 1e-6);
    }
}
