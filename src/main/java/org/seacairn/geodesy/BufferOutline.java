package org.seacairn.geodesy;

import java.util.ArrayList;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicMask;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateArrays;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.LinearComponentExtracter;

/**
 * Takes the outline of a roughly drawn buffer to its true place: every vertex to the stated geodesic
 * distance from the sources, and new vertices where an edge strays from it.
 */
final class BufferOutline {
    /** What counts as at the distance; a tenth of the millimetre that is aimed at. */
    private static final double SETTLED_M = 1e-4;
    /** Vertices nearer to each other than this are one: rounding must not turn an edge around. */
    private static final double MIN_EDGE_M = 1e-3;
    /** Far more than the six or so that the worst corner has been seen to need. */
    private static final int MAX_MOVES = 60;
    /** Halvings of one edge; the rough outline already has edges of a kilometre at most. */
    private static final int MAX_HALVINGS = 10;
    /** Where to split an edge; the middle has no place to go if it lies between two sources a distance and a hair away. */
    private static final double[] SPLITS = {0.5, 0.35, 0.65, 0.2, 0.8};
    /** Sine of the least turn of the ray by which a new nearest source is told from the next piece of the same. */
    private static final double CORNER = 0.02;
    /** Of the distance; two sources on opposite sides have their corner far along, if anywhere. */
    private static final double FURTHEST_SLIDE = 0.05;
    /** What the result must keep to; what is aimed at is far less. */
    private static final double VERTEX_LIMIT_M = 0.1;
    /** In edge tolerances. */
    private static final double EDGE_LIMIT = 10;
    private static final double METRES_PER_DEGREE = 111_000;

    private final SourceEdges sources;
    private final Geodesic geodesic;
    private final double distanceM;
    private final double edgeToleranceM;

    /** @param edgeToleranceM how far the middle of an edge may be off the distance before it is split */
    BufferOutline(SourceEdges sources, Geodesic geodesic, double distanceM, double edgeToleranceM) {
        this.sources = sources;
        this.geodesic = geodesic;
        this.distanceM = distanceM;
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

    /**
     * Makes sure of the result. If all of an outline keeps the distance and every source is inside, then
     * no place nearer than the distance is outside: from a source the way to it would have to cross the outline.
     *
     * @throws IllegalStateException if the buffer is not what it should be
     */
    void verify(Geometry buffer, List<Coordinate[]> paths) {
        if (!buffer.isValid()) {
            throw failure("is not valid");
        }
        for (Object ring : LinearComponentExtracter.getLines(buffer)) {
            verifyRing((LineString) ring);
        }
        IndexedPointInAreaLocator area = new IndexedPointInAreaLocator(buffer);
        for (Coordinate[] path : paths) {
            if (area.locate(path[0]) != Location.INTERIOR) {
                throw failure("leaves out the source at " + path[0]);
            }
        }
    }

    private void verifyRing(LineString ring) {
        Coordinate[] vertices = ring.getCoordinates();
        for (int i = 1; i < vertices.length; i++) {
            SourceEdges.Foot foot = nearest(vertices[i]);
            if (foot == null || Math.abs(foot.distanceM() - distanceM) > VERTEX_LIMIT_M) {
                throw failure("has a vertex at " + vertices[i] + " that is "
                        + (foot == null ? "far" : foot.distanceM() + " m") + " from all sources");
            }
            if (!(straysM(vertices[i - 1], vertices[i]) <= EDGE_LIMIT * edgeToleranceM)) {
                throw failure("has an edge from " + vertices[i - 1] + " to " + vertices[i] + " that strays");
            }
        }
    }

    private IllegalStateException failure(String what) {
        return new IllegalStateException("the buffer of " + distanceM + " m " + what);
    }

    /** How far an edge is off the distance at its worst quarter; NaN: far from all sources. */
    private double straysM(Coordinate a, Coordinate b) {
        double worstM = 0;
        for (int quarter = 1; quarter <= 3; quarter++) {
            double atM = sources.roughlyM(between(a, b, quarter / 4.0), reachM());
            worstM = Math.max(worstM, Math.abs(atM - distanceM));
        }
        return worstM;
    }

    private static Coordinate between(Coordinate a, Coordinate b, double share) {
        return new Coordinate(a.x + share * (b.x - a.x), a.y + share * (b.y - a.y));
    }

    /** @return null if no area is left: a gap narrower than the tolerance is closed */
    private LinearRing settle(LinearRing rough) {
        List<Coordinate> vertices = new ArrayList<>();
        Coordinate[] from = rough.getCoordinates();
        for (int i = 0; i < from.length - 1; i++) {
            Coordinate vertex = settle(from[i]);
            if (vertex != null && (vertices.isEmpty() || metres(vertices.get(vertices.size() - 1), vertex) > MIN_EDGE_M)) {
                vertices.add(vertex);
            }
        }
        if (vertices.size() > 1 && metres(vertices.get(0), vertices.get(vertices.size() - 1)) <= MIN_EDGE_M) {
            vertices.remove(vertices.size() - 1);
        }
        if (vertices.size() < 3) {
            return null;
        }
        List<Coordinate> refined = new ArrayList<>();
        for (int i = 0; i < vertices.size(); i++) {
            refined.add(vertices.get(i));
            split(vertices.get(i), vertices.get((i + 1) % vertices.size()), MAX_HALVINGS, refined);
        }
        refined.add(refined.get(0).copy());
        Coordinate[] ring = refined.toArray(new Coordinate[0]);
        return isSliver(ring) ? null : rough.getFactory().createLinearRing(ring);
    }

    /** The vertex moved to the distance, or null: no such place is near, so the corner does not exist. */
    private Coordinate settle(Coordinate rough) {
        Coordinate place = rough;
        double formerAwayDeg = Double.NaN;
        for (int i = 0; i < MAX_MOVES; i++) {
            SourceEdges.Foot foot = nearest(place);
            if (foot == null) {
                return null;
            }
            double shortM = distanceM - foot.distanceM();
            if (Math.abs(shortM) <= SETTLED_M) {
                return place;
            }
            double turnDeg = foot.awayDeg() - formerAwayDeg;
            double across = Math.sin(Math.toRadians(turnDeg));
            if (Math.abs(across) > CORNER || Math.cos(Math.toRadians(turnDeg)) < 0) {
                // Another source is nearest now: keep the distance from the former one, slide along it.
                double furthestM = FURTHEST_SLIDE * distanceM;
                place = moved(place, formerAwayDeg + 90, Math.max(-furthestM, Math.min(furthestM, shortM / across)));
            } else {
                place = moved(place, foot.awayDeg(), shortM);
            }
            formerAwayDeg = foot.awayDeg();
        }
        return null;
    }

    /** Appends what an edge needs between its ends to keep to the distance. */
    private void split(Coordinate a, Coordinate b, int halvings, List<Coordinate> to) {
        if (halvings == 0 || straysM(a, b) <= edgeToleranceM) {
            return;
        }
        for (double share : SPLITS) {
            Coordinate rough = between(a, b, share);
            Coordinate settled = settle(rough);
            // One that runs to an end, or past it, has found a corner that is already there.
            double roomM = metres(a, b) * Math.min(share, 1 - share);
            if (settled != null && metres(settled, rough) <= roomM
                    && metres(a, settled) > MIN_EDGE_M && metres(settled, b) > MIN_EDGE_M) {
                split(a, settled, halvings - 1, to);
                to.add(settled);
                split(settled, b, halvings - 1, to);
                return;
            }
        }
    }

    private SourceEdges.Foot nearest(Coordinate place) {
        return sources.nearest(place, reachM());
    }

    /** Within this of any place that may come up there is a source. */
    private double reachM() {
        return 1 + 1.05 * distanceM;
    }

    private Coordinate moved(Coordinate from, double azimuthDeg, double byM) {
        GeodesicData to = geodesic.Direct(from.y, from.x, azimuthDeg, byM,
                GeodesicMask.LATITUDE | GeodesicMask.LONGITUDE | GeodesicMask.LONG_UNROLL);
        return new Coordinate(to.lon2, to.lat2);
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

    /** Between near places, to a percent. */
    private static double metres(Coordinate a, Coordinate b) {
        return METRES_PER_DEGREE * Math.hypot((a.x - b.x) * Math.cos(Math.toRadians(a.y)), a.y - b.y);
    }
}
