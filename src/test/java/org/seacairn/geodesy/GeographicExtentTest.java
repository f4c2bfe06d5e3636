package org.seacairn.geodesy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

class GeographicExtentTest {
    private static final double MILLIMETRE_DEG = 1e-8;

    /** Corners by gdaltransform of GDAL 3.6.2: north-west, south-west, north-east, south-east in turn. */
    @Test
    void theBoxOfAGridIsThatOfItsCornersWhereNoSideBulgesBeyondThem() {
        Envelope box = GeographicExtent.ofRectangle(new Envelope(534180, 548540, 5231520, 5241020), Crs.ofEpsg(32610)).orElseThrow();
        assertEquals(-122.548419486308, box.getMinX(), MILLIMETRE_DEG);
        assertEquals(-122.357674256819, box.getMaxX(), MILLIMETRE_DEG);
        assertEquals(47.2353709253122, box.getMinY(), MILLIMETRE_DEG);
        assertEquals(47.3217570630282, box.getMaxY(), MILLIMETRE_DEG);
    }

    @Test
    void theNorthernSideOfAGridAcrossTheCentralMeridianReachesFurthestInItsMiddle() {
        Crs utm = Crs.ofEpsg(32617);
        Envelope box = GeographicExtent.ofRectangle(new Envelope(400_000, 600_000, 5_000_000, 5_100_000), utm).orElseThrow();
        assertEquals(utm.to(Crs.WGS84).apply(500_000, 5_100_000).y, box.getMaxY(), MILLIMETRE_DEG);
        assertTrue(box.getMaxY() > utm.to(Crs.WGS84).apply(400_000, 5_100_000).y + 0.001);
    }

    /** Corners by gdaltransform of GDAL 3.6.2; the eastern ones are 179.126 W and 179.188 W. */
    @Test
    void longitudesOfAProjectedGridRunOnPastTheAntimeridian() {
        Envelope box = GeographicExtent.ofRectangle(new Envelope(700_000, 800_000, 5_000_000, 5_100_000), Crs.ofEpsg(32660)).orElseThrow();
        assertEquals(179.543123489783, box.getMinX(), MILLIMETRE_DEG);
        assertEquals(360 - 179.126394823852, box.getMaxX(), MILLIMETRE_DEG);
    }

    @Test
    void longitudesInDegreesStayAsTheFileCountsThem() {
        Envelope pacific = new Envelope(159.8, 220.2, -20, 20);
        assertEquals(Optional.of(pacific), GeographicExtent.ofRectangle(pacific, Crs.WGS84));
    }

    @Test
    void theBoxOfGeometriesHoldsEveryVertex() {
        assertEquals(Optional.of(new Envelope(-80, -79, 29, 31)),
                GeographicExtent.ofVertices(List.of(line(-80, 30, -79.5, 31), line(-79, 29, -79.2, 30)), Crs.WGS84));
    }

    @Test
    void coordinatesThatAreNoPlaceHaveNoBox() {
        assertEquals(Optional.empty(), GeographicExtent.ofVertices(List.of(line(47, -122, 48, -122)), Crs.WGS84));
        assertEquals(Optional.empty(), GeographicExtent.ofVertices(List.of(), Crs.WGS84));
        // 4763 km north of an origin at 49 degrees lie beyond the pole: the projection answers, and does not come back.
        assertEquals(Optional.empty(), GeographicExtent.ofVertices(List.of(line(478_315, 4_762_880, 481_645, 4_765_610)),
                Crs.ofEpsg(27700)));
    }

    private static Geometry line(double x0, double y0, double x1, double y1) {
        return new GeometryFactory().createLineString(new Coordinate[] {new Coordinate(x0, y0), new Coordinate(x1, y1)});
    }
}
