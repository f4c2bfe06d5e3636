package org.seacairn.layer;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.seacairn.InputException;
import org.seacairn.layer.Iso8211File.DataRecord;
import org.seacairn.layer.Iso8211File.Field;
import org.seacairn.layer.S57Vector.Position;

/**
 * One file of a cell, the chart itself or an update, whose records it puts into an {@link S57Cell}: what a record of an
 * update does, IHO S-57 edition 3.1, part 3, 8.4 says. Records of other kinds (history, accuracy, catalogue) are passed over.
 */
final class S57File {
    /** What stands for an attribute that an update takes away (part 3, 8.4.2.2): the character of code 127. */
    private static final String DELETED = "\u007f";

    private final Iso8211File file;
    private final S57DataSet dataSet;

    S57File(Path path, byte[] bytes) {
        file = new Iso8211File(path, bytes);
        if (!file.hasNext()) {
            throw file.damaged(bytes.length, "the file ends after its descriptive record");
        }
        dataSet = S57DataSet.parse(file, file.next());
    }

    S57DataSet dataSet() {
        return dataSet;
    }

    /** Reads the chart itself. */
    S57Cell read() {
        while (file.hasNext()) {
            DataRecord record = file.next();
            Field parameters = field(record, "DSPM");
            if (parameters != null) {
                S57Cell cell = new S57Cell(file.file(), S57Parameters.parse(file, parameters));
                applyTo(cell);
                requireComplete(cell);
                return cell;
            }
            if (field(record, "FRID") != null || field(record, "VRID") != null) {
                break;
            }
        }
        throw VectorReader.problem(file.file(), "start", "no record states its units (field DSPM); the chart is damaged or cut off, so get it again");
    }

    /** Applies every record that has not been read yet. */
    void applyTo(S57Cell cell) {
        while (file.hasNext()) {
            DataRecord record = file.next();
            Field feature = field(record, "FRID");
            Field vector = field(record, "VRID");
            if (feature != null) {
                new FeatureRecord(cell.features(), record, feature).apply();
            } else if (vector != null) {
                new VectorRecord(cell.vectors(), record, vector).apply();
            }
        }
    }

    private void requireComplete(S57Cell cell) {
        S57DataSet.Counts promised = dataSet.counts();
        require("features", promised.features(), cell.features().size());
        require("isolated nodes", promised.isolatedNodes(), count(cell, S57Name.ISOLATED_NODE));
        require("connected nodes", promised.connectedNodes(), count(cell, S57Name.CONNECTED_NODE));
        require("edges", promised.edges(), count(cell, S57Name.EDGE));
    }

    private static long count(S57Cell cell, int type) {
        return cell.vectors().keySet().stream().filter(name -> name.type() == type).count();
    }

    private void require(String what, long promised, long found) {
        if (found < promised) {
            throw VectorReader.problem(file.file(), "field DSSI", "it promises " + promised + " " + what + " and the file holds "
                    + found + "; the chart is damaged or cut off, so get it again");
        }
    }

    private static Field field(DataRecord record, String tag) {
        for (Field field : record.fields()) {
            if (field.tag().equals(tag)) {
                return field;
            }
        }
        return null;
    }

    /** A record that inserts, deletes or modifies one of the cell. */
    private abstract class Revision<R> {
        final Map<S57Name, R> records;
        final DataRecord record;
        final Iso8211Rows id;
        final S57Name name;
        private final int instruction;
        private final int version;

        Revision(Map<S57Name, R> records, DataRecord record, Field identifier) {
            this.records = records;
            this.record = record;
            this.id = file.rows(identifier, false).only();
            this.name = new S57Name(id.number("RCNM"), id.integer("RCID"));
            this.instruction = id.number("RUIN");
            this.version = id.number("RVER");
        }

        final void apply() {
            if (instruction != S57Change.INSERT && !dataSet.update()) {
                throw wrong("is an instruction to change a record (RUIN " + instruction + "), which only an update may give");
            }
            R known = records.get(name);
            switch (instruction) {
                case S57Change.INSERT -> {
                    if (known != null) {
                        throw wrong("is there already");
                    }
                    R created = create(version);
                    records.put(name, created);
                    change(created, true);
                }
                case S57Change.DELETE -> {
                    require(known);
                    records.remove(name);
                }
                case S57Change.MODIFY -> {
                    require(known);
                    if (version != version(known) + 1) {
                        throw wrong("is to become version " + version + ", while the chart has version " + version(known));
                    }
                    setVersion(known, version);
                    change(known, false);
                }
                default -> throw wrong("has the instruction " + instruction + " (RUIN), which is neither insert, delete nor modify");
            }
        }

        private void require(R known) {
            if (known == null) {
                throw wrong("is to be " + (instruction == S57Change.DELETE ? "deleted" : "modified") + ", and the chart has none");
            }
        }

        abstract R create(int version);

        abstract int version(R known);

        abstract void setVersion(R known, int version);

        abstract void change(R target, boolean created);

        final InputException wrong(String what) {
            return file.damaged(record.start(), name + " " + what);
        }

        /** Puts values into a list: at its end in a record that is new, else where the control field before says. */
        final <T> void put(List<T> list, List<T> values, S57Change change, boolean created) {
            if (created) {
                list.addAll(values);
            } else if (change == null || !change.apply(list, values)) {
                throw wrong(change == null ? "is to be changed, and nothing says where" : "has " + list.size()
                        + " entries, of which " + change.count() + " from number " + change.index() + " cannot be changed by "
                        + values.size() + " (instruction " + change.instruction() + ")");
            }
        }

        /** Reads a control field, and applies it if it deletes. */
        final <T> S57Change control(Field field, String prefix, String count, List<T> list, boolean created) {
            if (created) {
                return null;
            }
            S57Change change = S57Change.of(file.rows(field, false).only(), prefix + "UI", prefix + "IX", count);
            if (change.instruction() != S57Change.DELETE) {
                return change;
            }
            put(list, List.of(), change, false);
            return null;
        }
    }

    private final class FeatureRecord extends Revision<S57Feature> {
        FeatureRecord(Map<S57Name, S57Feature> features, DataRecord record, Field identifier) {
            super(features, record, identifier);
        }

        @Override
        S57Feature create(int version) {
            return new S57Feature(name, id.number("PRIM"), id.number("OBJL"), version);
        }

        @Override
        int version(S57Feature known) {
            return known.version();
        }

        @Override
        void setVersion(S57Feature known, int version) {
            known.setVersion(version);
        }

        @Override
        void change(S57Feature feature, boolean created) {
            S57Change change = null;
            for (Field field : record.fields()) {
                switch (field.tag()) {
                    case "ATTF" -> attributes(feature, file.rows(field, false));
                    case "NATF" -> attributes(feature, file.rows(field, dataSet.nationalLevel() == S57DataSet.WIDE));
                    case "FSPC" -> change = control(field, "FS", "NSPT", feature.spatial(), created);
                    case "FSPT" -> {
                        put(feature.spatial(), pointers(field), change, created);
                        change = null;
                    }
                    default -> { }
                }
            }
        }

        private void attributes(S57Feature feature, Iso8211Rows rows) {
            while (rows.next()) {
                String value = rows.text("ATVL");
                if (value.equals(DELETED)) {
                    feature.attributes().remove(rows.number("ATTL"));
                } else {
                    feature.attributes().put(rows.number("ATTL"), value);
                }
            }
        }

        private List<S57Pointer> pointers(Field field) {
            List<S57Pointer> pointers = new ArrayList<>();
            Iso8211Rows rows = file.rows(field, false);
            while (rows.next()) {
                pointers.add(new S57Pointer(rows.name("NAME"), rows.number("ORNT"), rows.number("USAG")));
            }
            return pointers;
        }
    }

    private final class VectorRecord extends Revision<S57Vector> {
        VectorRecord(Map<S57Name, S57Vector> vectors, DataRecord record, Field identifier) {
            super(vectors, record, identifier);
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
}
