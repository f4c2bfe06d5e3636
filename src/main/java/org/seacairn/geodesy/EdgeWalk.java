package org.seacairn.geodesy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import net.sf.geographiclib.GeoMath;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryCollection;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.seacairn.InputException;

/**
 * Walks the lines and rings of a geometry in longitude and latitude and draws each edge as it is told.
 *
 * <p>Longitudes run on continuously along each line and ring: an edge over the antimeridian goes the
 * shorter way and the vertices beyond it lie past 180 or before -180. Holes follow the shell of their
 * polygon; the parts of a collection each stay where their first vertex is. An edge from a longitude to
 * that longitude plus or minus 360 is no edge at all.
 *
 * <p>Every vertex stays as it is (save whole turns of longitude), and an edge gets the same points, bit for
 * bit, whichever way it is walked, so that neighbours which shared an edge still share it.
 */
final class EdgeWalk {
    /** One kind of edge. */
    interface Edge {
        /** Both ends and the points between, longitudes running on from that of {@code a}. */
        List<Coordinate> between(Coordinate a, Coordinate b);
    }

    private final Edge kind;
    private final GeometryFactory factory;

    private EdgeWalk(Edge kind, GeometryFactory factory) {
        this.kind = kind;
        this.factory = factory;
    }

    /**
     * @param lonLat longitude and latitude in degrees; a z value is dropped
     * @throws InputException if a coordinate is no place on Earth or a polygon goes around a pole
     */
    static Geometry draw(Geometry lonLat, Edge kind) {
        return new EdgeWalk(kind, lonLat.getFactory()).draw(lonLat);
    }

    private Geometry draw(Geometry any) {
        if (any.isEmpty()) {
            return any.copy();
        }
        if (any instanceof Point point) {
            return factory.createPoint(checked(point.getCoordinate()));
        }
        if (any instanceof LinearRing ring) {
            return ring(ring);
        }
        if (any instanceof LineString line) {
            return factory.createLineString(path(line.getCoordinates()));
        }
        if (any instanceof Polygon polygon) {
            return polygon(polygon);
        }
        if (any instanceof GeometryCollection) {
            List<Geometry> parts = new ArrayList<>();
            for (int i = 0; i < any.getNumGeometries(); i++) {
                parts.add(draw(any.getGeometryN(i)));
            }
            return switch (any.getGeometryType()) {
                case Geometry.TYPENAME_MULTIPOINT -> factory.createMultiPoint(parts.toArray(new Point[0]));
                case Geometry.TYPENAME_MULTILINESTRING ->
                        factory.createMultiLineString(parts.toArray(new LineString[0]));
                case Geometry.TYPENAME_MULTIPOLYGON -> factory.createMultiPolygon(parts.toArray(new Polygon[0]));
                default -> factory.createGeometryCollection(parts.toArray(new Geometry[0]));
            };
        }
        throw new IllegalArgumentException("no edges are known of a " + any.getGeometryType());
    }

    private Polygon polygon(Polygon polygon) {
        LinearRing shell = ring(polygon.getExteriorRing());
        double middleDeg = shell.getEnvelopeInternal().centre().x;
        LinearRing[] holes = new LinearRing[polygon.getNumInteriorRing()];
        for (int i = 0; i < holes.length; i++) {
            holes[i] = ring(polygon.getInteriorRingN(i));
            turn(holes[i], wholeTurns(middleDeg - holes[i].getEnvelopeInternal().centre().x));
        }
        return factory.createPolygon(shell, holes);
    }

    private LinearRing ring(LineString ring) {
        Coordinate[] path = path(ring.getCoordinates());
        if (path[0].x != path[path.length - 1].x) {
            throw new InputException("a polygon goes around a pole (ring through longitude " + path[0].x
                    + ", latitude " + path[0].y + "); cut it along a meridian");
        }
        return factory.createLinearRing(path);
    }

    private Coordinate[] path(Coordinate[] vertices) {
        List<Coordinate> path = new ArrayList<>();
        path.add(checked(vertices[0]));
        for (int i = 1; i < vertices.length; i++) {
            appendEdge(path, checked(vertices[i]));
        }
        return path.toArray(new Coordinate[0]);
    }

    /** Appends the points from the last point of the path to a vertex, and the vertex. */
    private void appendEdge(List<Coordinate> path, Coordinate to) {
        Coordinate from = path.get(path.size() - 1);
        Coordinate a = new Coordinate(canonical(from.x), from.y);
        Coordinate b = new Coordinate(canonical(to.x), to.y);
        boolean backwards = a.y != b.y ? a.y > b.y : a.x > b.x;
        List<Coordinate> edge = backwards ? kind.between(b, a) : kind.between(a, b);
        if (backwards) {
            Collections.reverse(edge);
        }
        double turnsDeg = wholeTurns(from.x - edge.get(0).x);
        for (Coordinate inner : edge.subList(1, edge.size() - 1)) {
            path.add(new Coordinate(inner.x + turnsDeg, inner.y));
        }
        double endDeg = edge.get(edge.size() - 1).x + turnsDeg;
        path.add(new Coordinate(to.x + wholeTurns(endDeg - to.x), to.y));
    }

    /** Within -180 (excluded) to 180, so that the two names of the antimeridian sort alike. */
    private static double canonical(double longitudeDeg) {
        double normal = GeoMath.AngNormalize(longitudeDeg);
        return normal == -180 ? 180 : normal;
    }

    /** The multiple of 360 nearest to a difference of longitudes. */
    private static double wholeTurns(double differenceDeg) {
        return 360 * Math.rint(differenceDeg / 360);
    }

    private static void turn(LinearRing ring, double byDeg) {
        if (byDeg != 0) {
            ring.apply((Coordinate c) -> c.x += byDeg);
            ring.geometryChanged();
        }
    }

    private static Coordinate checked(Coordinate vertex) {
        if (!Double.isFinite(vertex.x) || !(Math.abs(vertex.y) <= 90)) {
            throw new InputException("longitude " + vertex.x + ", latitude " + vertex.y
                    + " is no place on Earth; check the CRS that the layer states");
        }
        return new Coordinate(vertex.x, vertex.y);
    }
}
