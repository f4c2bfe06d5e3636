package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.Edges;

class PointLatticeTest {
    @ParameterizedTest
    @CsvSource(textBlock = """
            whole degrees,                -79,        29,        -80,        30
            tenths of a degree,           -79.1,      29,        -80,        30
            whole minutes,                -79.25,     29.01667,  -79.26667,  29.5
            hundredths of a degree,       -79.27,     29.01,     -79.26,     29.5
            tenths of a minute,           -79.251667, 29.016667, -79.266667, 29.505
            thousandths of a degree,      -79.271,    29.012,    -79.263,    29.5
            whole seconds,                -79.000278, 29.000556, -79.266667, 29.5
            hundredths of a minute,       -79.250167, 29.016667, -79.266667, 29.5
            ten-thousandths of a degree,  -79.2711,   29.0123,   -79.263,    29.5
            """)
    void theCoarsestStepThatHoldsEveryPointIsFound(String step, double lon0, double lat0, double lon1, double lat1) {
        assertEquals(step, lattice(Crs.WGS84, lon0, lat0, lon1, lat1).map(PointLattice::step).orElse("none"));
    }

    @Test
    void coordinatesInMetresHaveStepsToo() {
        assertEquals(Optional.of(new PointLattice("whole hundreds", 50)),
                lattice(Crs.ofEpsg(32617), 500_100, 3_000_000, 501_000, 3_000_200));
    }

    @Test
    void fullCoordinatesOnePlaceOrOnePointOffStandOnNone() {
        assertEquals(Optional.empty(), lattice(Crs.WGS84, -79.123456, 29.654321, -79.25, 29.5));
        assertEquals(Optional.empty(), lattice(Crs.WGS84, -79.25, 29.5));
        assertEquals(Optional.empty(), lattice(Crs.WGS84, -79.25, 29.5, -79.25, 29.5));
        assertEquals(Optional.empty(), lattice(Crs.ofEpsg(32617), 500_100, 3_000_000, 501_001, 3_000_200));
    }

    @Test
    void aWholeMinuteMovesAPlaceByHalfANauticalMileAtMost() {
        assertEquals(926, lattice(Crs.WGS84, -79.25, 29.01667, -79.26667, 29.5).orElseThrow().roundingM(), 2);
    }

    private static Optional<PointLattice> lattice(Crs crs, double... xy) {
        List<Feature> features = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            features.add(new Feature(i / 2 + 1, new GeometryFactory().createPoint(new Coordinate(xy[i], xy[i + 1])), Map.of()));
        }
        return PointLattice.of(new VectorLayer("reefs", Path.of("reefs.csv"), "CSV", crs, Edges.GEODESIC, features, 0, List.of()));
    }
}
