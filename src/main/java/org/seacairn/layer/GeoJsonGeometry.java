package org.seacairn.layer;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.seacairn.InputException;

/** Makes geometries of GeoJSON geometry objects (RFC 7946, section 3.1). Problems are thrown without a place. */
final class GeoJsonGeometry {
    private static final GeometryFactory GEOMETRIES = new GeometryFactory();

    private GeoJsonGeometry() {}

    /**
     * @return the geometry, or null where its coordinates are empty (section 3.1 lets them count as none)
     * @throws InputException if the object is no geometry
     */
    static Geometry of(GeoJsonNode node) {
        if (node.type == null) {
            throw new InputException("its geometry has no \"type\"; write \"type\": \"Point\" or the like");
        }
        if (node.type.equals("GeometryCollection")) {
            return collection(node);
        }
        if (node.coordinates == null) {
            throw new InputException("its " + shown(node.type) + " has no \"coordinates\"; correct or delete the feature");
        }
        return switch (node.type) {
            case "Point" -> node.coordinates instanceof Coordinate c ? GEOMETRIES.createPoint(c) : noneIfEmpty(list(node.coordinates), "Point");
            case "MultiPoint" -> orNone(GEOMETRIES.createMultiPointFromCoords(positions(node.coordinates)));
            case "LineString" -> orNone(line(node.coordinates));
            case "MultiLineString" -> orNone(GEOMETRIES.createMultiLineString(
                    list(node.coordinates).stream().map(GeoJsonGeometry::line).toArray(LineString[]::new)));
            case "Polygon" -> orNone(polygon(node.coordinates));
            case "MultiPolygon" -> orNone(GEOMETRIES.createMultiPolygon(
                    list(node.coordinates).stream().map(GeoJsonGeometry::polygon).toArray(Polygon[]::new)));
            default -> throw new InputException("its geometry is of the unknown type " + shown(node.type)
                    + "; GeoJSON has Point, LineString, Polygon, their Multi kinds and GeometryCollection");
        };
    }

    private static Geometry collection(GeoJsonNode node) {
        if (node.geometries == null) {
            throw new InputException("its GeometryCollection has no \"geometries\"; correct or delete the feature");
        }
        List<Geometry> members = node.geometries.stream().map(GeoJsonGeometry::of).filter(Objects::nonNull).toList();
        return orNone(GEOMETRIES.createGeometryCollection(members.toArray(Geometry[]::new)));
    }

    private static LineString line(Object coordinates) {
        Coordinate[] positions = positions(coordinates);
        if (positions.length == 1) {
            throw new InputException("a line has one point; delete it or add a second point");
        }
        return GEOMETRIES.createLineString(positions);
    }

    private static Polygon polygon(Object coordinates) {
        List<LinearRing> rings = new ArrayList<>();
        for (Object ring : list(coordinates)) {
            Coordinate[] positions = positions(ring);
            String which = "ring " + (rings.size() + 1) + " of a polygon";
            if (positions.length < 4) {
                throw new InputException(which + " has " + positions.length + " points; a ring has 4 or more, the last like the first");
            }
            if (!positions[0].equals2D(positions[positions.length - 1])) {
                throw new InputException(which + " is not closed: it starts at " + place(positions[0]) + " and ends at "
                        + place(positions[positions.length - 1]) + "; repeat the first point at the end");
            }
            rings.add(GEOMETRIES.createLinearRing(positions));
        }
        return rings.isEmpty() ? GEOMETRIES.createPolygon()
                : GEOMETRIES.createPolygon(rings.get(0), rings.subList(1, rings.size()).toArray(LinearRing[]::new));
    }

    private static Coordinate[] positions(Object coordinates) {
        List<?> list = list(coordinates);
        Coordinate[] positions = new Coordinate[list.size()];
        for (int i = 0; i < positions.length; i++) {
            if (!(list.get(i) instanceof Coordinate position)) {
                throw new InputException("its coordinates are nested deeper than its type allows; check the type");
            }
            positions[i] = position;
        }
        return positions;
    }

    private static List<?> list(Object coordinates) {
        if (!(coordinates instanceof List<?> list)) {
            throw new InputException("its coordinates are nested less deep than its type asks for; check the type");
        }
        return list;
    }

    private static Geometry noneIfEmpty(List<?> list, String type) {
        if (!list.isEmpty()) {
            throw new InputException("its coordinates are nested deeper than the type " + type + " allows; check the type");
        }
        return null;
    }

    private static Geometry orNone(Geometry geometry) {
        return geometry.isEmpty() ? null : geometry;
    }

    private static String place(Coordinate c) {
        return "(" + c.x + ", " + c.y + ")";
    }

    private static String shown(String type) {
        return "\"" + (type.length() <= 40 ? type : type.substring(0, 37) + "...") + "\"";
    }
}
