package org.seacairn.export;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateArrays;
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
        // Snap rounding takes seconds where rounding each vertex takes milliseconds, and is seldom needed.
        Geometry pointwise = GeometryPrecisionReducer.reducePointwise(polygon, precision);
        Geometry rounded = pointwise.isValid() ? pointwise : GeometryPrecisionReducer.reduce(polygon, precision);
        GeometryFactory factory = polygon.getFactory();
        List<Polygon> parts = new ArrayList<>();
        for (int i = 0; i < rounded.getNumGeometries(); i++) {
            if (!rounded.getGeometryN(i).isEmpty()) {
                parts.add(turned((Polygon) rounded.getGeometryN(i), factory));
            }
        }
        return factory.createMultiPolygon(parts.toArray(Polygon[]::new));
    }

    private static Polygon turned(Polygon polygon, GeometryFactory factory) {
        LinearRing[] holes = new LinearRing[polygon.getNumInteriorRing()];
        for (int i = 0; i < holes.length; i++) {
            holes[i] = turned(polygon.getInteriorRingN(i), false);
        }
        return factory.createPolygon(turned(polygon.getExteriorRing(), true), holes);
    }

    private static LinearRing turned(LinearRing ring, boolean counterclockwise) {
        Coordinate[] vertices = CoordinateArrays.removeRepeatedPoints(ring.getCoordinates());
        if (Orientation.isCCW(vertices) != counterclockwise) {
            CoordinateArrays.reverse(vertices);
        }
        return ring.getFactory().createLinearRing(vertices);
    }
}
