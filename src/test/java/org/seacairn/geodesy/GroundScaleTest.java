package org.seacairn.geodesy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;

class GroundScaleTest {
    /** Snyder (1987), Map Projections, USGS PP 1395, p. 269: UTM zone 18, Clarke 1866: k = 0.9997989. */
    @Test
    void matchesSnydersPointScaleOfUtm() {
        Crs utm18Clarke = Crs.ofEpsg(26718);
        GroundScale.Frame frame = new GroundScale(utm18Clarke).at(627_106.47, 4_484_124.43);
        assertEquals(0.9997989, 1 / frame.mean(), 1e-7);
    }

    /** Geodesics of GeographicLib are the judge; conformal and equal-area maps, both hemispheres. */
    @ParameterizedTest
    @CsvSource({
        "32617, -79.3, 29.5, 500, 0.001", "32617, -79.3, 29.5, 9260, 0.01", "32617, -78.1, 29.5, 9260, 0.01",
        "32733, 17.9, -33.9, 9260, 0.01", "32633, 17.9, 69.5, 9260, 0.01", "3035, 5.0, 43.0, 1852, 0.005",
        "3035, 5.0, 43.0, 9260, 0.02", "5070, -79.3, 29.5, 500, 0.001", "5070, -79.3, 29.5, 9260, 0.02",
        "2154, 7.5, 43.2, 9260, 0.02"})
    void lengthsAgreeWithTheGeodesic(int epsg, double lon, double lat, double lengthM, double toleranceM) {
        Crs crs = Crs.ofEpsg(epsg);
        Geodesic geodesic = crs.geodesic();
        CoordinateTransform toMap = crs.geographic().to(crs);
        CoordinateTransform toLonLat = crs.to(crs.geographic());
        Coordinate centre = toMap.apply(lon, lat);
        GroundScale.Frame frame = new GroundScale(crs).at(centre.x, centre.y);
        Random random = new Random(7);
        double worst = 0;
        for (int i = 0; i < 200; i++) {
            // From anywhere in a patch of the frame, in any direction.
            double x = centre.x + 5000 * (random.nextDouble() - 0.5);
            double y = centre.y + 5000 * (random.nextDouble() - 0.5);
            double turn = 2 * Math.PI * random.nextDouble();
            double x1 = x + lengthM * Math.cos(turn);
            double y1 = y + lengthM * Math.sin(turn);
            Coordinate a = toLonLat.apply(x, y);
            Coordinate b = toLonLat.apply(x1, y1);
            double truth = geodesic.Inverse(a.y, a.x, b.y, b.x, GeodesicMask.DISTANCE).s12;
            worst = Math.max(worst, Math.abs(truth - frame.lengthM(x, y, x1, y1)));
        }
        assertTrue(worst <= toleranceM, "worst " + worst + " m");
    }
}
