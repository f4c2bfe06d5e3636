package org.seacairn.export;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ByteOrderValues;
import org.locationtech.jts.io.WKBWriter;

/** The geometry blob of GeoPackage: a header with the envelope, then well-known binary (OGC 12-128r18, 2.1.3). */
final class GeoPackageGeometry {
    /** Magic, version, flags, SRS id, four doubles of envelope. */
    static final int HEADER_BYTES = 8 + 4 * Double.BYTES;
    /** Little endian (bit 0); envelope of min x, max x, min y, max y (bits 1 to 3 hold 1). */
    private static final byte FLAGS = 0b0000_0011;

    private GeoPackageGeometry() {}

    /** @param geometry longitude and latitude on WGS 84; not empty */
    static byte[] encode(Geometry geometry) {
        byte[] wkb = new WKBWriter(2, ByteOrderValues.LITTLE_ENDIAN).write(geometry);
        Envelope box = geometry.getEnvelopeInternal();
        return ByteBuffer.allocate(HEADER_BYTES + wkb.length)
                .order(ByteOrder.LITTLE_ENDIAN)
                .put((byte) 'G').put((byte) 'P')
                .put((byte) 0)
                .put(FLAGS)
                .putInt(GeoPackageSchema.SRS_ID)
                .putDouble(box.getMinX()).putDouble(box.getMaxX())
                .putDouble(box.getMinY()).putDouble(box.getMaxY())
                .put(wkb)
                .array();
    }
}
