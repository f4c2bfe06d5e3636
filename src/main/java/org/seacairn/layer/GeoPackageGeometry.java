package org.seacairn.layer;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.CoordinateSequenceFactory;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.impl.CoordinateArraySequence;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;
import org.seacairn.InputException;

/**
 * Geometry of a GeoPackage: a header and well-known binary (GeoPackage Encoding Standard,
 * OGC 12-128r18, clause 2.1.3). Only x and y are kept. A ring that the file leaves open
 * is closed. Problems are thrown without a place.
 */
final class GeoPackageGeometry {
    private static final int HEADER_BYTES = 8;
    /** Bytes of the envelope by its code: none, xy, xyz, xym, xyzm. */
    private static final int[] ENVELOPE_BYTES = {0, 32, 48, 48, 64};
    private static final GeometryFactory FLAT = new GeometryFactory(new FlatSequences());

    private GeoPackageGeometry() {}

    /**
     * @return the geometry, or null if it is empty
     * @throws InputException if the bytes are no geometry that can be read
     */
    static Geometry parse(byte[] blob) {
        if (blob.length < HEADER_BYTES || blob[0] != 'G' || blob[1] != 'P') {
            throw new InputException("the geometry does not start with \"GP\" and so is no GeoPackage geometry; export the table again");
        }
        int flags = blob[3];
        int envelope = flags >> 1 & 7;
        if (blob[2] != 0 || envelope >= ENVELOPE_BYTES.length) {
            throw new InputException("the geometry's header (version " + blob[2] + ", envelope code " + envelope
                    + ") is of no known version; export the table again");
        }
        if ((flags & 0x20) != 0) {
            throw new InputException("the geometry is of an extended type, which is not read; export it as points, lines or polygons");
        }
        int start = HEADER_BYTES + ENVELOPE_BYTES[envelope];
        if (start >= blob.length) {
            throw new InputException("the geometry is cut short at " + blob.length + " bytes; export the table again");
        }
        Geometry geometry = wellKnownBinary(Arrays.copyOfRange(blob, start, blob.length));
        if (geometry.isEmpty()) {
            return null;
        }
        for (Coordinate c : geometry.getCoordinates()) {
            if (!Double.isFinite(c.x) || !Double.isFinite(c.y)) {
                throw noPlace(c.x, c.y);
            }
        }
        return geometry;
    }

    private static InputException noPlace(double x, double y) {
        return new InputException("a coordinate is (" + x + ", " + y + ") and not a place; correct or delete the feature");
    }

    private static Geometry wellKnownBinary(byte[] wkb) {
        try {
            return new WKBReader(FLAT).read(wkb);
        } catch (InputException e) {
            throw e;
        } catch (ParseException | RuntimeException | StackOverflowError e) {
            // The library recurses into collections, as deep as a hostile file asks for.
            int type = typeCode(wkb);
            throw new InputException((type >= 8 && type <= 17
                    ? "the geometry has arcs or surfaces (well-known binary type " + type + "), which are not read; convert it to straight lines"
                    : "the geometry is damaged (" + (e.getMessage() == null ? "nested too deep" : e.getMessage().strip()) + "); export the table again"), e);
        }
    }

    private static int typeCode(byte[] wkb) {
        if (wkb.length < 5) {
            return 0;
        }
        ByteOrder order = wkb[0] == 0 ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
        return (ByteBuffer.wrap(wkb).order(order).getInt(1) & 0xffff) % 1000;
    }

    /** Makes sequences of x and y alone, so that the library's reader drops z and m. */
    private static final class FlatSequences implements CoordinateSequenceFactory {
        @Override
        public CoordinateSequence create(Coordinate[] coordinates) {
            return new FlatSequence(coordinates);
        }

        @Override
        public CoordinateSequence create(CoordinateSequence other) {
            return create(other.toCoordinateArray());
        }

        @Override
        public CoordinateSequence create(int size, int dimension) {
            return new FlatSequence(size);
        }
    }

    /** Two numbers that are none make an empty point (clause 2.1.3); the library takes it for one where only one is none. */
    private static final class FlatSequence extends CoordinateArraySequence {
        private static final long serialVersionUID = 1;

        FlatSequence(int size) {
            super(size, 2);
        }

        FlatSequence(Coordinate[] coordinates) {
            super(coordinates, 2);
        }

        @Override
        public double getX(int index) {
            Coordinate c = getCoordinate(index);
            if (Double.isNaN(c.x) != Double.isNaN(c.y)) {
                throw noPlace(c.x, c.y);
            }
            return c.x;
        }
    }
}
