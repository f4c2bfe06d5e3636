package org.seacairn.geodesy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

class CrsDomainTest {
    @ParameterizedTest
    @CsvSource({
        // UTM zone 17N: in the zone, ten degrees beside it, fifteen and more (where the series of the projection fail), no northing, no numbers.
        "32617, 500000, 3200000, true", "32617, 1475000, 3250000, true", "32617, 2460000, 3480000, false",
        "32617, 500000, 1e9, false", "32617, 1e8, 0, false", "32617, 1e9, 3e6, false", "32617, NaN, 3e6, false", "32617, 5e5, Infinity, false",
        "32617, 1e300, 1e300, false",
        // US survey feet, a conic map, an equal-area map far from its middle, both poles.
        "2236, 700000, 500000, true", "2236, 5e5, 1e9, false", "5070, 1500000, 1000000, true", "5070, 1e8, 0, false", "3031, 0, 0, true",
        // Mercator runs on past the antimeridian, but not around the globe again and again.
        "3857, 2.1e7, 0, true", "3857, 1e8, 0, false", "3857, 0, 1e9, false", "3832, 3e6, 1e6, true", "3832, 1e8, 0, false",
        "4326, -360, -90, true", "4326, 360, 90, true", "4326, 361, 0, false", "4326, 0, 91, false", "4326, NaN, 0, false", "4326, 0, Infinity, false",
        "4269, -80, 29, true", "4269, 29, -91, false",
    })
    void holdsWhatIsAPlaceInItsOwnUnits(int epsg, double x, double y, boolean holds) {
        assertEquals(holds, CrsDomain.of(Crs.ofEpsg(epsg)).holds(x, y));
    }

    @Test
    void namesTheFirstVertexThatIsNoPlace() {
        Coordinate[] vertices = {new Coordinate(5e5, 3e6), new Coordinate(5e5, 1e9), new Coordinate(1e9, 1e9)};
        CrsDomain domain = CrsDomain.of(Crs.ofEpsg(32617));
        assertEquals(Optional.of(vertices[1]), domain.firstOutside(new GeometryFactory().createLineString(vertices)));
        assertTrue(domain.firstOutside(new GeometryFactory().createPoint(vertices[0])).isEmpty());
    }
}
