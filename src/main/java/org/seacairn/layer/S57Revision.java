package org.seacairn.layer;

import java.util.List;
import java.util.Map;
import org.seacairn.InputException;
import org.seacairn.layer.Iso8211File.DataRecord;
import org.seacairn.layer.Iso8211File.Field;

/**
 * A record of a file that inserts, deletes or modifies one of a cell (IHO S-57 edition 3.1, part 3, 8.4). In the chart
 * itself every record inserts.
 *
 * @param <R> what is revised
 */
abstract class S57Revision<R> {
    final Iso8211File file;
    final S57DataSet dataSet;
    final DataRecord record;
    final Iso8211Rows id;
    final S57Name name;
    private final int instruction;
    private final int version;

    S57Revision(Iso8211File file, S57DataSet dataSet, DataRecord record, Field identifier) {
        this.file = file;
        this.dataSet = dataSet;
        this.record = record;
        this.id = file.rows(identifier, false).only();
        this.name = new S57Name(id.number("RCNM"), id.integer("RCID"));
        this.instruction = id.number("RUIN");
        this.version = id.number("RVER");
    }

    /** @throws InputException if the cell has not the record as this one supposes */
    final void applyTo(Map<S57Name, R> records) {
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
