package org.seacairn.geodesy;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateArrays;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * Takes the outline of a roughly drawn buffer to its true place: every vertex onto the curve, and new
 * vertices where an edge strays from it.
 */
final class BufferOutline {
    /** Vertices nearer to each other than this are one: rounding must not turn an edge around. */
    private static final double MIN_EDGE_M = 1e-3;
    /** Splits of one edge within each other; the rough outline already has edges of a kilometre at most. */
    private static final int MAX_SPLITS = 10;
    /** Where to split; the middle has no place to go if it lies where two buffers overlap by a hair. */
    private static final double[] SPLITS = {0.5, 0.35, 0.65, 0.2, 0.8};
    private static final double METRES_PER_DEGREE = 111_000;

    private final DistanceCurve curve;
    private final double edgeToleranceM;

    /** @param edgeToleranceM how far an edge may be off the curve before it is split */
    BufferOutline(DistanceCurve curve, double edgeToleranceM) {
        this.curve = curve;
        this.edgeToleranceM = edgeToleranceM;
    }

    /** The same polygons with settled outlines; they may touch or cross where vertices have moved. */
    Geometry settle(Geometry rough) {
        GeometryFactory factory = rough.getFactory();
        List<Polygon> settled = new ArrayList<>();
        for (int i = 0; i < rough.getNumGeometries(); i++) {
            Polygon polygon = (Polygon) rough.getGeometryN(i);
            LinearRing shell = settle(polygon.getExteriorRing());
            if (shell == null) {
                continue;
            }
            List<LinearRing> holes = new ArrayList<>();
            for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
                LinearRing hole = settle(polygon.getInteriorRingN(h));
                if (hole != null) {
                    holes.add(hole);
                }
            }
            settled.add(factory.createPolygon(shell, holes.toArray(new LinearRing[0])));
        }
        return factory.buildGeometry(settled);
    }

    /** @return null if no area is left: a gap narrower than the tolerance is closed */
    private LinearRing settle(LinearRing rough) {
        List<Coordinate> vertices = new ArrayList<>();
        Coordinate[] from = rough.getCoordinates();
        for (int i = 0; i < from.length - 1; i++) {
            Coordinate vertex = curve.settle(from[i]);
            if (vertex != null && (vertices.isEmpty() || !isOne(vertices.get(vertices.size() - 1), vertex))) {
                vertices.add(vertex);
            }
        }
        if (vertices.size() > 1 && isOne(vertices.get(0), vertices.get(vertices.size() - 1))) {
            vertices.remove(vertices.size() - 1);
        }
        if (vertices.size() < 3) {
            return null;
        }
        List<Coordinate> ring = new ArrayList<>();
        for (int i = 0; i < vertices.size(); i++) {
            ring.add(vertices.get(i));
            split(vertices.get(i), vertices.get((i + 1) % vertices.size()), MAX_SPLITS, ring);
        }
        ring.add(ring.get(0).copy());
        Coordinate[] closed = ring.toArray(new Coordinate[0]);
        return isSliver(closed) ? null : rough.getFactory().createLinearRing(closed);
    }

    /** Appends what an edge needs between its ends to keep to the curve. */
    private void split(Coordinate a, Coordinate b, int splits, List<Coordinate> to) {
        if (splits == 0 || curve.offM(a, b) <= edgeToleranceM) {
            return;
        }
        for (double share : SPLITS) {
            Coordinate rough = DistanceCurve.between(a, b, share);
            Coordinate settled = curve.settle(rough);
            // One that runs to an end, or past it, has found a corner that is already there.
            double roomM = metres(a, b) * Math.min(share, 1 - share);
            if (settled != null && metres(settled, rough) <= roomM && !isOne(a, settled) && !isOne(settled, b)) {
                split(a, settled, splits - 1, to);
                to.add(settled);
                split(settled, b, splits - 1, to);
                return;
            }
        }
    }

    private boolean isSliver(Coordinate[] ring) {
        double perimeterM = 0;
        for (int i = 1; i < ring.length; i++) {
            perimeterM += metres(ring[i - 1], ring[i]);
        }
        double widthPerHeight = Math.cos(Math.toRadians(CoordinateArrays.envelope(ring).centre().y));
        double areaM2 = Area.ofRing(ring) * widthPerHeight * METRES_PER_DEGREE * METRES_PER_DEGREE;
        return 2 * areaM2 <= perimeterM * edgeToleranceM;
    }

    private static boolean isOne(Coordinate a, Coordinate b) {
        return metres(a, b) <= MIN_EDGE_M;
    }

    /** Between near places, to a percent. */
    private static double metres(Coordinate a, Coordinate b) {
        return METRES_PER_DEGREE * Math.hypot((a.x - b.x) * Math.cos(Math.toRadians(a.y)), a.y - b.y);
    }
}
