package org.seacairn.export;

import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.precision.GeometryPrecisionReducer;

/** Polygons as the exchange formats want them. */
final class Outline {
    private Outline() {}

    /**
     * Rounds vertices without making the polygon invalid, and turns shells counterclockwise and holes
     * clockwise (RFC 7946, section 3.1.6).
     *
     * @param polygon a valid Polygon or MultiPolygon
     */
    static MultiPolygon of(Geometry polygon, PrecisionModel precision) {
        Geometry rounded = GeometryPrecisionReducer.reduce(polygon, precision);
        GeometryFactory factory = polygon.getFactory();
        Polygon[] parts = new Polygon[rounded.getNumGeometries()];
        for (int i = 0; i < parts.length; i++) {
            parts[i] = turned((Polygon) rounded.getGeometryN(i), factory);
        }
        return factory.createMultiPolygon(parts);
    }

    private static Polygon turned(Polygon polygon, GeometryFactory factory) {
        LinearRing[] holes = new LinearRing[polygon.getNumInteriorRing()];
        for (int i = 0; i < holes.length; i++) {
            holes[i] = turned(polygon.getInteriorRingN(i), false);
        }
        return factory.createPolygon(turned(polygon.getExteriorRing(), true), holes);
    }

    private static LinearRing turned(LinearRing ring, boolean counterclockwise) {
        return ring.isEmpty() || Orientation.isCCW(ring.getCoordinateSequence()) == counterclockwise ? ring : ring.reverse();
    }
}
