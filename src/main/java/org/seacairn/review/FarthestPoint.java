package org.seacairn.review;

import java.util.Comparator;
import java.util.PriorityQueue;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/**
 * The point of an area that is farthest from another, on a plane: its box is quartered for as long as a
 * part may hold a farther one. No point of a square is farther than its centre and half its diagonal.
 */
final class FarthestPoint {
    private static final double ENOUGH_M = 1e-4;
    /** Areas that lie along a long border hold many points as far as each other. */
    private static final int MOST_PARTS = 20_000;

    private final Geometry area;
    private final IndexedPointInAreaLocator inArea;
    private final IndexedFacetDistance toOther;
    private final PriorityQueue<Part> parts = new PriorityQueue<>(
            Comparator.comparingDouble(Part::mostM).reversed().thenComparing(Part::x).thenComparing(Part::y));
    private Coordinate farthest;
    private double farthestM = Double.NEGATIVE_INFINITY;

    private record Part(double x, double y, double halfM, double mostM) {}

    private FarthestPoint(Geometry area, Geometry other) {
        this.area = area;
        this.inArea = new IndexedPointInAreaLocator(area);
        this.toOther = new IndexedFacetDistance(other);
    }

    /** @param area no part of it lies inside the other */
    static Coordinate of(Geometry area, Geometry other) {
        return new FarthestPoint(area, other).search();
    }

    private Coordinate search() {
        for (Coordinate vertex : area.getCoordinates()) {
            offer(vertex, toOther.distance(point(vertex)));
        }
        Envelope box = area.getEnvelopeInternal();
        look(box.centre().x, box.centre().y, Math.max(box.getWidth(), box.getHeight()) / 2);
        for (int i = 0; i < MOST_PARTS && !parts.isEmpty() && parts.peek().mostM > farthestM + ENOUGH_M; i++) {
            Part part = parts.poll();
            double quarterM = part.halfM / 2;
            look(part.x - quarterM, part.y - quarterM, quarterM);
            look(part.x - quarterM, part.y + quarterM, quarterM);
            look(part.x + quarterM, part.y - quarterM, quarterM);
            look(part.x + quarterM, part.y + quarterM, quarterM);
        }
        return farthest;
    }

    private void look(double x, double y, double halfM) {
        Coordinate centre = new Coordinate(x, y);
        double awayM = toOther.distance(point(centre));
        if (inArea.locate(centre) != Location.EXTERIOR) {
            offer(centre, awayM);
        } else if (!area.getFactory().toGeometry(new Envelope(x - halfM, x + halfM, y - halfM, y + halfM)).intersects(area)) {
            return;
        }
        parts.add(new Part(x, y, halfM, awayM + halfM * Math.sqrt(2)));
    }

    private void offer(Coordinate place, double awayM) {
        if (awayM > farthestM) {
            farthestM = awayM;
            farthest = place;
        }
    }

    private Point point(Coordinate at) {
        return area.getFactory().createPoint(at);
    }
}
