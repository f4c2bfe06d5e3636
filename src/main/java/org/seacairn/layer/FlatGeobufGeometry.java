package org.seacairn.layer;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.seacairn.InputException;

/**
 * Makes geometries of the tables of one FlatGeobuf feature ({@code feature.fbs} of the specification). Only x and y are
 * read. Problems are thrown without a place.
 */
final class FlatGeobufGeometry {
    private static final GeometryFactory GEOMETRIES = new GeometryFactory();
    private static final int ENDS = 0;
    private static final int XY = 1;
    private static final int TYPE = 6;
    private static final int PARTS = 7;
    private static final int POLYGON = 3;
    private static final int POSITION_BYTES = 2 * Double.BYTES;
    /** A table in a vector: its offset there and one to its layout. */
    private static final int LEAST_TABLE_BYTES = 2 * Integer.BYTES;
    private static final int DEEPEST_NESTING = 32;

    // Tables may be referred to again and again, which a whole file never needs.
    private long positionsLeft;
    private long tablesLeft;

    private FlatGeobufGeometry(FlatTable table) {
        this.positionsLeft = table.messageBytes() / POSITION_BYTES;
        this.tablesLeft = table.messageBytes() / LEAST_TABLE_BYTES;
    }

    /**
     * @param headerType of all features, or 0: the geometry states its own
     * @return the geometry, or null if it is empty
     * @throws InputException if the table is no geometry that can be read
     */
    static Geometry of(FlatTable table, int headerType) {
        int type = headerType == 0 ? table.unsignedByte(TYPE, 0) : headerType;
        Geometry geometry = new FlatGeobufGeometry(table).geometry(table, type, DEEPEST_NESTING);
        return geometry.isEmpty() ? null : geometry;
    }

    private Geometry geometry(FlatTable table, int type, int levelsLeft) {
        if (--tablesLeft < 0 || levelsLeft == 0) {
            throw new InputException("the geometry has more parts, or parts deeper in each other, than it has room for; export the file again");
        }
        return switch (type) {
            case 1 -> point(positions(table));
            case 2 -> line(positions(table));
            case POLYGON -> polygon(table);
            case 4 -> GEOMETRIES.createMultiPointFromCoords(positions(table));
            case 5 -> GEOMETRIES.createMultiLineString(cut(table).stream().map(FlatGeobufGeometry::line).toArray(LineString[]::new));
            case 6 -> GEOMETRIES.createMultiPolygon(parts(table, true, levelsLeft).toArray(Polygon[]::new));
            case 7 -> GEOMETRIES.createGeometryCollection(parts(table, false, levelsLeft).toArray(Geometry[]::new));
            case 8, 9, 10, 11, 12, 13, 14, 15, 16, 17 -> throw new InputException("the geometry has arcs or surfaces (type " + type
                    + "), which are not read; convert it to points, lines or polygons");
            default -> throw new InputException("the geometry is of no known type (" + type + "); export the file again");
        };
    }

    private List<Geometry> parts(FlatTable table, boolean polygons, int levelsLeft) {
        int count = table.tables(PARTS);
        if (count == 0 && table.has(XY)) {
            throw new InputException("the geometry has coordinates where it should have parts; export the file again");
        }
        List<Geometry> parts = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            FlatTable part = table.table(PARTS, i);
            parts.add(geometry(part, polygons ? POLYGON : part.unsignedByte(TYPE, 0), levelsLeft - 1));
        }
        return parts;
    }

    private static Geometry point(Coordinate[] positions) {
        if (positions.length > 1) {
            throw new InputException("a point has " + positions.length + " positions; correct the feature or export the file again");
        }
        return positions.length == 0 ? GEOMETRIES.createPoint() : GEOMETRIES.createPoint(positions[0]);
    }

    private static LineString line(Coordinate[] positions) {
        if (positions.length == 1) {
            throw new InputException("a line has one point; delete it or add a second point");
        }
        return GEOMETRIES.createLineString(positions);
    }

    private Polygon polygon(FlatTable table) {
        List<LinearRing> rings = new ArrayList<>();
        for (Coordinate[] ring : cut(table)) {
            if (ring.length < 4 || !ring[0].equals2D(ring[ring.length - 1])) {
                throw new InputException("ring " + (rings.size() + 1) + " of a polygon, of " + ring.length
                        + " points, is not closed or encloses nothing; a ring has 4 points or more, the last like the first");
            }
            rings.add(GEOMETRIES.createLinearRing(ring));
        }
        return rings.isEmpty() ? GEOMETRIES.createPolygon()
                : GEOMETRIES.createPolygon(rings.get(0), rings.subList(1, rings.size()).toArray(LinearRing[]::new));
    }

    /** The positions of lines or rings one after the other; without ends, all are of one. Empty ones, as GDAL writes them, are left out. */
    private List<Coordinate[]> cut(FlatTable table) {
        Coordinate[] all = positions(table);
        ByteBuffer ends = table.vector(ENDS, Integer.BYTES);
        if (ends == null || !ends.hasRemaining()) {
            return all.length == 0 ? List.of() : List.<Coordinate[]>of(all);
        }
        List<Coordinate[]> pieces = new ArrayList<>();
        int from = 0;
        while (ends.hasRemaining()) {
            long end = Integer.toUnsignedLong(ends.getInt());
            // Without its first ring a polygon's holes would be ground.
            if (end < from || end > all.length || end == 0 && all.length > 0) {
                throw new InputException("the geometry's lines or rings end at position " + end + " after " + from + " of " + all.length
                        + "; the file is damaged, export it again");
            }
            if (end > from) {
                pieces.add(Arrays.copyOfRange(all, from, (int) end));
            }
            from = (int) end;
        }
        if (from != all.length) {
            throw new InputException("the geometry has " + all.length + " positions, and its lines or rings end at " + from
                    + "; the file is damaged, export it again");
        }
        return pieces;
    }

    private Coordinate[] positions(FlatTable table) {
        ByteBuffer xy = table.vector(XY, Double.BYTES);
        if (xy == null) {
            return new Coordinate[0];
        }
        int count = xy.limit() / POSITION_BYTES;
        positionsLeft -= count;
        if (xy.limit() % POSITION_BYTES != 0 || positionsLeft < 0) {
            throw new InputException("the geometry has " + (positionsLeft < 0 ? "more coordinates than it has room for"
                    : "an x without its y") + "; the file is damaged, export it again");
        }
        Coordinate[] positions = new Coordinate[count];
        for (int i = 0; i < count; i++) {
            double x = xy.getDouble();
            double y = xy.getDouble();
            if (!Double.isFinite(x) || !Double.isFinite(y)) {
                throw new InputException("a coordinate is (" + x + ", " + y + ") and not a place; correct or delete the feature");
            }
            positions[i] = new Coordinate(x, y);
        }
        return positions;
    }
}
