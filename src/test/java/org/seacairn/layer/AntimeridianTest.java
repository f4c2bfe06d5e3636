package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.stream.Stream;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Envelope;
import org.seacairn.criterion.WorkingLayer;
import org.seacairn.geodesy.Crs;
import org.seacairn.grid.GridGeometry;

/** Edges over the antimeridian go the shorter way, from whatever format and however the longitudes are counted. */
class AntimeridianTest {
    /** A degree about 180 E, 17 S, in UTM zone 60 (its eastern border). */
    private static final GridGeometry GRID = new GridGeometry(Crs.ofEpsg(32760), 750_000, 8_180_000, 1000, 140, 120);

    @TempDir
    Path folder;

    static Stream<Arguments> linesAndPolygons() {
        return AnyGeometry.formats().stream().filter(format -> format != AnyFormat.CSV).flatMap(format -> Stream.of(
                Arguments.of(format, new AnyGeometry(2, 179.9, -17, -179.9, -17)),
                Arguments.of(format, new AnyGeometry(2, -179.9, -17, 179.9, -17)),
                Arguments.of(format, new AnyGeometry(3, 179.9, -17, -179.9, -17, -179.9, -16.9, 179.9, -16.9, 179.9, -17)),
                Arguments.of(format, new AnyGeometry(2, 179.9, -17, 180.1, -17)),
                Arguments.of(format, new AnyGeometry(3, 179.9, -17, 180.1, -17, 180.1, -16.9, 179.9, -16.9, 179.9, -17))))
                // Neither a polygon nor a longitude over 180 can stand in GPX.
                .filter(row -> row.get()[0] != AnyFormat.GPX || ((AnyGeometry) row.get()[1]).type() == 2 && ((AnyGeometry) row.get()[1]).xy()[2] < 180);
    }

    /** The judge is GeographicLib's distance between the ends, 21.3 km, scaled to the map; around the world it is 38 000 km. */
    @ParameterizedTest
    @MethodSource("linesAndPolygons")
    void goTheShorterWay(AnyFormat format, AnyGeometry geometry) throws IOException, SQLException {
        VectorLayer layer = GeometryCheck.requireValid(VectorLayers.read(Sources.plain(geometry.write(format, folder, null))));
        List<WorkingLayer.Piece> pieces = WorkingLayer.of(layer, GRID, 1000).pieces();
        assertEquals(1, pieces.size());
        Envelope box = pieces.get(0).geometry().getEnvelopeInternal();
        double groundM = Geodesic.WGS84.Inverse(-17, 179.9, -17, -179.9).s12;
        assertEquals(21_291, groundM, 10);
        assertEquals(groundM * 1.0009, box.getWidth(), geometry.type() == 2 ? 30 : 400);
        assertTrue(box.getMinX() > 800_000 && box.getMaxX() < 850_000, box.toString());
    }
}
