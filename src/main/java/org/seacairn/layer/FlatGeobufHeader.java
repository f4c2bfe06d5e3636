package org.seacairn.layer;

import java.util.ArrayList;
import java.util.List;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;

/**
 * The header of a FlatGeobuf file ({@code header.fbs} of the specification, major version 3).
 *
 * @param geometryType of every feature, 0 where each states its own
 * @param features how many, 0 where that is not stated; unsigned
 * @param indexNodeSize entries of a node of the index, 0 for no index
 * @param crs the table of the CRS, or null
 */
record FlatGeobufHeader(int geometryType, List<Column> columns, long features, int indexNodeSize, FlatTable crs) {
    /** Four doubles and an offset. */
    private static final int NODE_BYTES = 40;

    /** @param type number of the kind in the specification's list */
    record Column(String name, int type) {}

    static FlatGeobufHeader parse(byte[] message) {
        FlatTable header = FlatTable.root(message);
        return new FlatGeobufHeader(header.unsignedByte(2, 0), columns(header, 7), header.bits64(8, 0), header.unsignedShort(9, 16),
                header.table(10));
    }

    /** The columns that a header or a feature describes. */
    static List<Column> columns(FlatTable table, int field) {
        List<Column> columns = new ArrayList<>();
        long nameBytes = 0;
        for (int i = 0; i < table.tables(field); i++) {
            FlatTable column = table.table(field, i);
            String name = column.text(0);
            if (name == null) {
                throw new InputException("column " + (i + 1) + " has no name; export the file again");
            }
            nameBytes += name.length();
            // Offsets may lead to the same text again and again.
            if (nameBytes > table.messageBytes()) {
                throw FlatTable.damaged();
            }
            columns.add(new Column(name, column.unsignedByte(1, 0)));
        }
        return List.copyOf(columns);
    }

    /**
     * Size of the packed R-tree between header and features: all levels, leaves to root.
     *
     * @param bytesLeft of the file after the header
     * @throws InputException if that is more than the file has
     */
    long indexBytes(long bytesLeft) {
        if (features == 0 || indexNodeSize == 0) {
            return 0;
        }
        if (indexNodeSize == 1) {
            throw new InputException("the nodes of its index have room for 1 entry, which is none; export the file again");
        }
        if (Long.compareUnsigned(features, bytesLeft / NODE_BYTES) > 0) {
            throw new InputException("states " + Long.toUnsignedString(features) + " features with an index, which is more than its "
                    + bytesLeft + " bytes can hold; the file is damaged or cut short, export it again");
        }
        long nodes = features;
        for (long level = features; level > 1; nodes += level) {
            level = (level + indexNodeSize - 1) / indexNodeSize;
        }
        // A single feature has a root beside its leaf.
        return NODE_BYTES * (features == 1 ? 2 : nodes);
    }

    /** @throws InputException if the header states no CRS or one that is not known */
    Crs crsOrThrow() {
        String organization = crs == null ? null : crs.text(0);
        int code = crs == null ? 0 : crs.integer(1, 0);
        String wkt = crs == null ? null : crs.text(4);
        boolean known = code != 0 && (organization == null || organization.isEmpty() || organization.equalsIgnoreCase("EPSG"));
        if (!known && (wkt == null || wkt.isBlank())) {
            throw new InputException("its header states no CRS" + (code == 0 ? "" : " that is known here (" + organization + ":" + code + ")")
                    + LayerCrs.REMEDY);
        }
        try {
            return known ? Crs.ofEpsg(code) : LayerCrs.parse(wkt);
        } catch (InputException newerThanOurDataSet) {
            if (!known || wkt == null || wkt.isBlank()) {
                throw newerThanOurDataSet;
            }
            return LayerCrs.parse(wkt);
        }
    }
}
