package org.seacairn.layer;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.algorithm.PointLocation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Makes polygons from the rings of one shapefile record, which does not say which hole belongs to which
 * shell.
 *
 * <p>A ring is a hole if the smallest ring around it is a shell that turns the other way, else it is a
 * shell. For a file that follows the specification (shells clockwise, holes counter-clockwise) this is
 * the specification's own meaning; it also reads files that turn everything the other way. A ring that
 * lies in a shell and turns the same way stays a shell of its own: whether a hole or a second cover was
 * meant cannot be told, so the invalid result is left for {@link GeometryCheck} to report, and no hole
 * is ever torn into a keep-off area by guesswork.
 */
final class RingNesting {
    /** One ring and what was found out about it. */
    private static final class Node {
        final LinearRing ring;
        final boolean clockwise;
        final double area;
        final List<LinearRing> holes = new ArrayList<>();
        boolean hole;

        Node(LinearRing ring) {
            double signedArea = Area.ofRingSigned(ring.getCoordinateSequence());
            this.ring = ring;
            this.clockwise = signedArea > 0;
            this.area = Math.abs(signedArea);
        }
    }

    private RingNesting() {}

    /** @return a polygon, or a multi-polygon if there are several shells */
    static Geometry polygons(List<LinearRing> rings, GeometryFactory factory) {
        List<Node> nodes = rings.stream().map(Node::new).toList();
        STRtree index = new STRtree();
        nodes.forEach(node -> index.insert(node.ring.getEnvelopeInternal(), node));
        // From the outside in, so that what a ring lies in is known before the ring itself.
        List<Node> outsideIn = new ArrayList<>(nodes);
        outsideIn.sort(Comparator.comparingDouble((Node n) -> n.area).reversed());
        for (Node node : outsideIn) {
            Node around = smallestAround(node, index);
            if (around != null && !around.hole && around.clockwise != node.clockwise) {
                node.hole = true;
                around.holes.add(node.ring);
            }
        }
        Polygon[] polygons = nodes.stream().filter(node -> !node.hole)
                .map(node -> factory.createPolygon(node.ring, node.holes.toArray(LinearRing[]::new)))
                .toArray(Polygon[]::new);
        return polygons.length == 1 ? polygons[0] : factory.createMultiPolygon(polygons);
    }

    private static Node smallestAround(Node node, STRtree index) {
        Envelope extent = node.ring.getEnvelopeInternal();
        Node smallest = null;
        for (Object found : index.query(extent)) {
            Node other = (Node) found;
            if (other != node && (smallest == null || other.area < smallest.area)
                    && other.ring.getEnvelopeInternal().covers(extent) && contains(other.ring, node.ring)) {
                smallest = other;
            }
        }
        return smallest;
    }

    /** Decided by the first vertex, or else the first middle of an edge, that is off the outer ring's boundary. */
    private static boolean contains(LinearRing outer, LinearRing inner) {
        Coordinate[] boundary = outer.getCoordinates();
        Coordinate[] points = inner.getCoordinates();
        for (Coordinate point : points) {
            int location = PointLocation.locateInRing(point, boundary);
            if (location != Location.BOUNDARY) {
                return location == Location.INTERIOR;
            }
        }
        for (int i = 1; i < points.length; i++) {
            Coordinate middle = new Coordinate((points[i - 1].x + points[i].x) / 2, (points[i - 1].y + points[i].y) / 2);
            int location = PointLocation.locateInRing(middle, boundary);
            if (location != Location.BOUNDARY) {
                return location == Location.INTERIOR;
            }
        }
        return false;
    }
}
