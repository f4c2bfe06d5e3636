package org.seacairn.layer;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Point;
import org.seacairn.layer.S57Vector.Position;

/**
 * Points, lines and polygons in degrees from the chain-node topology of a cell (IHO S-57 edition 3.1, parts 2 and 3): a
 * feature names edges in order and turns them, an edge names the nodes at its ends. Masked edges are part of the geometry
 * like any other. A boundary that comes back to where it began is a ring; the next edge begins another.
 */
final class S57Geometry {
    private static final GeometryFactory GEOMETRIES = new GeometryFactory();

    /** Far more than one boundary touches itself; nesting them costs the square of their number. */
    private static final int MOST_EXTERIORS = 1000;

    private final S57Cell cell;
    private long verticesLeft;

    /** @param mostVertices so many, and no more, may all the geometries have together */
    S57Geometry(S57Cell cell, long mostVertices) {
        this.cell = cell;
        this.verticesLeft = mostVertices;
    }

    /** The geometry of a feature that has one and is no set of soundings. */
    Geometry of(S57Feature feature) {
        return switch (feature.primitive()) {
            case S57Feature.POINT -> point(feature);
            case S57Feature.LINE -> line(feature);
            default -> area(feature);
        };
    }

    /** One sounding: where, and how deep in the chart's unit of depth. */
    record Sounding(Point place, double depth) {}

    /** Whether a point feature stands for many soundings. */
    boolean isSoundings(S57Feature feature) {
        return feature.primitive() == S57Feature.POINT && !feature.spatial().isEmpty() && node(feature, feature.spatial().get(0)).isSoundings();
    }

    List<Sounding> soundings(S57Feature feature) {
        List<Sounding> soundings = new ArrayList<>();
        for (S57Pointer pointer : feature.spatial()) {
            S57Vector node = node(feature, pointer);
            spend(feature, node.positions().size());
            for (Position position : node.positions()) {
                soundings.add(new Sounding(GEOMETRIES.createPoint(coordinate(position)), position.depth() / cell.parameters().perDepthUnit()));
            }
        }
        return soundings;
    }

    private Point point(S57Feature feature) {
        if (feature.spatial().size() != 1) {
            throw cell.problem(feature.name(), "is a point and has " + feature.spatial().size() + " places");
        }
        S57Vector node = node(feature, feature.spatial().get(0));
        spend(feature, 1);
        return GEOMETRIES.createPoint(place(node));
    }

    private S57Vector node(S57Feature feature, S57Pointer pointer) {
        S57Vector node = vector(feature, pointer);
        if (node.name().type() != S57Name.ISOLATED_NODE && node.name().type() != S57Name.CONNECTED_NODE) {
            throw cell.problem(feature.name(), "is a point and lies on " + node.name());
        }
        return node;
    }

    private S57Vector vector(S57Feature feature, S57Pointer pointer) {
        S57Vector vector = cell.vectors().get(pointer.target());
        if (vector == null) {
            throw cell.problem(feature.name(), "points at " + pointer.target() + ", which the chart has not");
        }
        return vector;
    }

    private Coordinate place(S57Vector node) {
        if (node.positions().size() != 1) {
            throw cell.problem(node.name(), "has " + node.positions().size() + " positions in place of one");
        }
        return coordinate(node.positions().get(0));
    }

    private Coordinate coordinate(Position position) {
        double perDegree = cell.parameters().perDegree();
        return new Coordinate(position.longitude() / perDegree, position.latitude() / perDegree);
    }

    private Geometry line(S57Feature feature) {
        List<LineString> parts = new ArrayList<>();
        List<Coordinate> part = new ArrayList<>();
        for (S57Pointer pointer : feature.spatial()) {
            List<Coordinate> edge = edge(feature, pointer);
            if (!part.isEmpty() && !last(part).equals2D(edge.get(0))) {
                parts.add(GEOMETRIES.createLineString(part.toArray(Coordinate[]::new)));
                part = new ArrayList<>();
            }
            part.addAll(part.isEmpty() ? edge : edge.subList(1, edge.size()));
        }
        if (part.isEmpty()) {
            throw cell.problem(feature.name(), "is a line and has no edge");
        }
        parts.add(GEOMETRIES.createLineString(part.toArray(Coordinate[]::new)));
        return parts.size() == 1 ? parts.get(0) : GEOMETRIES.createMultiLineString(parts.toArray(LineString[]::new));
    }

    private Geometry area(S57Feature feature) {
        List<LinearRing> shells = new ArrayList<>();
        List<LinearRing> holes = new ArrayList<>();
        List<Coordinate> ring = new ArrayList<>();
        boolean hole = false;
        for (S57Pointer pointer : feature.spatial()) {
            if (ring.isEmpty()) {
                hole = isInterior(feature, pointer);
            } else if (hole != isInterior(feature, pointer)) {
                throw cell.problem(feature.name(), "has a boundary that is exterior and interior");
            }
            List<Coordinate> edge = edge(feature, pointer);
            if (!ring.isEmpty() && !last(ring).equals2D(edge.get(0))) {
                throw cell.problem(feature.name(), "has a boundary that does not close at " + pointer.target());
            }
            ring.addAll(ring.isEmpty() ? edge : edge.subList(1, edge.size()));
            if (last(ring).equals2D(ring.get(0))) {
                (hole ? holes : shells).add(ring(feature, ring, hole));
                ring = new ArrayList<>();
            }
        }
        if (!ring.isEmpty() || shells.isEmpty()) {
            throw cell.problem(feature.name(), shells.isEmpty() && ring.isEmpty() ? "is an area and has no exterior boundary"
                    : "has a boundary that does not close");
        }
        return polygons(feature, shells, holes);
    }

    private boolean isInterior(S57Feature feature, S57Pointer pointer) {
        if (pointer.use() < S57Pointer.EXTERIOR || pointer.use() > S57Pointer.EXTERIOR_CUT) {
            throw cell.problem(feature.name(), "does not say whether " + pointer.target() + " is an exterior or interior boundary (USAG "
                    + pointer.use() + ")");
        }
        return pointer.use() == S57Pointer.INTERIOR;
    }

    /** A ring turned as S-57 has it, the area on its right, even where the file has not. */
    private LinearRing ring(S57Feature feature, List<Coordinate> places, boolean hole) {
        if (places.size() < 4) {
            throw cell.problem(feature.name(), "has a boundary of " + places.size() + " places, which encloses nothing");
        }
        LinearRing ring = GEOMETRIES.createLinearRing(places.toArray(Coordinate[]::new));
        return Orientation.isCCW(ring.getCoordinateSequence()) == hole ? ring : ring.reverse();
    }

    private Geometry polygons(S57Feature feature, List<LinearRing> shells, List<LinearRing> holes) {
        if (shells.size() == 1) {
            return GEOMETRIES.createPolygon(shells.get(0), holes.toArray(LinearRing[]::new));
        }
        // An exterior that touches itself where it began comes as several rings.
        int parts = shells.size();
        if (parts > MOST_EXTERIORS) {
            throw cell.problem(feature.name(), "has " + parts + " exterior boundaries, where an area has one");
        }
        List<LinearRing> rings = new ArrayList<>(shells);
        rings.addAll(holes);
        Geometry polygons = RingNesting.polygons(rings, GEOMETRIES);
        if (polygons.getNumGeometries() != parts) {
            throw cell.problem(feature.name(), "has interior boundaries that lie in none of its " + parts + " exterior ones");
        }
        return polygons;
    }

    /** The places of an edge from end to end, as the pointer turns it. */
    private List<Coordinate> edge(S57Feature feature, S57Pointer pointer) {
        S57Vector edge = vector(feature, pointer);
        if (edge.name().type() != S57Name.EDGE) {
            throw cell.problem(feature.name(), "is drawn along " + edge.name() + ", which is no edge");
        }
        if (pointer.orientation() != S57Pointer.FORWARD && pointer.orientation() != S57Pointer.REVERSE) {
            throw cell.problem(feature.name(), "does not say which way it takes " + edge.name() + " (ORNT " + pointer.orientation() + ")");
        }
        spend(feature, edge.positions().size() + 2L);
        List<Coordinate> places = new ArrayList<>(edge.positions().size() + 2);
        places.add(end(edge, S57Pointer.BEGIN));
        edge.positions().forEach(position -> places.add(coordinate(position)));
        places.add(end(edge, S57Pointer.END));
        if (pointer.orientation() == S57Pointer.REVERSE) {
            Collections.reverse(places);
        }
        return places;
    }

    private Coordinate end(S57Vector edge, int which) {
        // Counted first: an edge of a damaged file may have a million, and many features may take it.
        S57Pointer end = edge.nodes().size() != 2 || edge.nodes().get(0).use() == edge.nodes().get(1).use() ? null
                : edge.nodes().get(edge.nodes().get(0).use() == which ? 0 : 1);
        if (end == null || end.use() != which) {
            throw cell.problem(edge.name(), "has not one node to begin at and one to end at");
        }
        S57Name name = end.target();
        S57Vector node = cell.vectors().get(name);
        if (node == null || name.type() != S57Name.CONNECTED_NODE) {
            throw cell.problem(edge.name(), "ends at " + name + ", which " + (node == null ? "the chart has not" : "is no connected node"));
        }
        return place(node);
    }

    private void spend(S57Feature feature, long vertices) {
        verticesLeft -= vertices;
        if (verticesLeft < 0) {
            throw cell.problem(feature.name(), "and those before it take the same edges over and over, to more vertices than the file has bytes");
        }
    }

    private static Coordinate last(List<Coordinate> places) {
        return places.get(places.size() - 1);
    }
}
