package org.seacairn.layer;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;

/**
 * Makes geometries of KML geometry elements (OGC 12-007r2, section 10). Geometries whose coordinates are empty
 * are left out; a ring outside a polygon is a closed line. Altitudes are passed over.
 */
final class KmlGeometry {
    static final Set<String> ELEMENTS = Set.of("Point", "LineString", "LinearRing", "Polygon", "MultiGeometry");

    private static final GeometryFactory GEOMETRIES = new GeometryFactory();

    private KmlGeometry() {}

    /**
     * Reads the geometry element in hand and goes to its end tag.
     *
     * @param into receives the geometry, or the members of a MultiGeometry
     * @param skipped counts, by name, the members that are no such geometry
     * @throws org.seacairn.InputException if it is damaged
     */
    static void read(XmlElements xml, List<Geometry> into, Map<String, Integer> skipped) {
        int line = xml.line();
        switch (xml.name()) {
            case "Point" -> {
                Coordinate[] places = coordinates(xml);
                if (places.length > 1) {
                    throw xml.problem(line, "a Point has " + places.length + " places; leave one, or use a LineString");
                }
                if (places.length == 1) {
                    into.add(GEOMETRIES.createPoint(places[0]));
                }
            }
            case "LineString" -> {
                Coordinate[] places = coordinates(xml);
                if (places.length == 1) {
                    throw xml.problem(line, "a LineString has one place; delete it or add a second");
                }
                if (places.length > 1) {
                    into.add(GEOMETRIES.createLineString(places));
                }
            }
            case "LinearRing" -> {
                LinearRing ring = ring(xml);
                if (!ring.isEmpty()) {
                    into.add(GEOMETRIES.createLineString(ring.getCoordinateSequence()));
                }
            }
            case "Polygon" -> polygon(xml, into);
            default -> {
                while (xml.nextChild()) {
                    if (ELEMENTS.contains(xml.name())) {
                        read(xml, into, skipped);
                    } else {
                        skipped.merge(xml.name(), 1, Integer::sum);
                        xml.skip();
                    }
                }
            }
        }
    }

    /** @return null if there are none */
    static Geometry together(List<Geometry> geometries) {
        return geometries.isEmpty() ? null : GEOMETRIES.buildGeometry(geometries);
    }

    private static void polygon(XmlElements xml, List<Geometry> into) {
        int line = xml.line();
        List<LinearRing> outer = new ArrayList<>();
        List<LinearRing> inner = new ArrayList<>();
        while (xml.nextChild()) {
            switch (xml.name()) {
                case "outerBoundaryIs" -> rings(xml, outer);
                case "innerBoundaryIs" -> rings(xml, inner);
                default -> xml.skip();
            }
        }
        if (outer.size() > 1) {
            throw xml.problem(line, "a Polygon has " + outer.size() + " outer rings; make each a Polygon of its own");
        }
        if (outer.isEmpty() && !inner.isEmpty()) {
            throw xml.problem(line, "a Polygon has an inner ring and no outer one; correct or delete it");
        }
        if (!outer.isEmpty()) {
            into.add(GEOMETRIES.createPolygon(outer.get(0), inner.toArray(LinearRing[]::new)));
        }
    }

    private static void rings(XmlElements xml, List<LinearRing> into) {
        while (xml.nextChild()) {
            if (xml.name().equals("LinearRing")) {
                LinearRing ring = ring(xml);
                if (!ring.isEmpty()) {
                    into.add(ring);
                }
            } else {
                xml.skip();
            }
        }
    }

    private static LinearRing ring(XmlElements xml) {
        int line = xml.line();
        Coordinate[] places = coordinates(xml);
        if (places.length > 0 && places.length < 4) {
            throw xml.problem(line, "a LinearRing has " + places.length + " places; a ring has 4 or more, the last like the first");
        }
        if (places.length > 0 && !places[0].equals2D(places[places.length - 1])) {
            throw xml.problem(line, "a LinearRing is not closed: it starts at " + shown(places[0]) + " and ends at "
                    + shown(places[places.length - 1]) + "; repeat the first place at the end");
        }
        return GEOMETRIES.createLinearRing(places);
    }

    private static Coordinate[] coordinates(XmlElements xml) {
        Coordinate[] places = {};
        while (xml.nextChild()) {
            if (xml.name().equals("coordinates")) {
                places = KmlCoordinates.read(xml);
            } else {
                xml.skip();
            }
        }
        return places;
    }

    private static String shown(Coordinate c) {
        return "(" + c.x + ", " + c.y + ")";
    }
}
