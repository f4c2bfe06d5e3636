package org.seacairn.layer;

import java.util.ArrayList;
import java.util.List;
import org.seacairn.layer.Iso8211File.DataRecord;
import org.seacairn.layer.Iso8211File.Field;
import org.seacairn.layer.S57Vector.Position;

/** A spatial record: positions, and of an edge the pointers to its nodes. */
final class S57VectorRevision extends S57Revision<S57Vector> {
    S57VectorRevision(Iso8211File file, S57DataSet dataSet, DataRecord record, Field identifier) {
        super(file, dataSet, record, identifier);
    }

    @Override
    S57Vector create(int version) {
        return new S57Vector(name, version);
    }

    @Override
    int version(S57Vector known) {
        return known.version();
    }

    @Override
    void setVersion(S57Vector known, int version) {
        known.setVersion(version);
    }

    @Override
    void change(S57Vector vector, boolean created) {
        S57Change nodes = null;
        S57Change positions = null;
        for (Field field : record.fields()) {
            switch (field.tag()) {
                case "VRPC" -> nodes = control(field, "VP", "NVPT", vector.nodes(), created);
                case "VRPT" -> {
                    put(vector.nodes(), nodes(field), nodes, created);
                    nodes = null;
                }
                case "SGCC" -> positions = control(field, "CC", "CCNC", vector.positions(), created);
                case "SG2D", "SG3D" -> {
                    put(vector.positions(), positions(field, vector), positions, created);
                    positions = null;
                }
                case "ARCC" -> throw wrong("is drawn as an arc or curve (ARCC), which charts for navigation may not have");
                default -> { }
            }
        }
    }

    private List<S57Pointer> nodes(Field field) {
        List<S57Pointer> nodes = new ArrayList<>();
        Iso8211Rows rows = file.rows(field, false);
        while (rows.next()) {
            nodes.add(new S57Pointer(rows.name("NAME"), rows.number("ORNT"), rows.number("TOPI")));
        }
        return nodes;
    }

    private List<Position> positions(Field field, S57Vector vector) {
        boolean soundings = field.tag().equals("SG3D");
        if (soundings != vector.isSoundings() && !vector.positions().isEmpty()) {
            throw wrong("has positions with depths and without");
        }
        if (soundings) {
            vector.setSoundings();
        }
        List<Position> positions = new ArrayList<>();
        Iso8211Rows rows = file.rows(field, false);
        while (rows.next()) {
            positions.add(new Position(rows.number("YCOO"), rows.number("XCOO"), soundings ? rows.number("VE3D") : 0));
        }
        return positions;
    }
}
