package org.seacairn.layer;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.seacairn.InputException;
import org.seacairn.layer.Iso8211File.DataRecord;
import org.seacairn.layer.Iso8211File.Field;

/**
 * One file of a cell, the chart itself or an update, whose records it puts into an {@link S57Cell}. Records
 * of other kinds (history, accuracy, catalogue) are passed over.
 */
final class S57File {
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
                return cell;
            }
            if (field(record, "FRID") != null || field(record, "VRID") != null) {
                break;
            }
        }
        throw VectorReader.problem(file.file(), "start", "no record states its units (field DSPM); the chart is damaged or cut off, so get it again");
    }

    /**
     * Applies every record that has not been read yet.
     *
     * @throws InputException if there are fewer than the file's first record promises: a file may be cut off between two
     */
    void applyTo(S57Cell cell) {
        Map<Integer, Integer> read = new HashMap<>();
        while (file.hasNext()) {
            DataRecord record = file.next();
            Field feature = field(record, "FRID");
            Field vector = field(record, "VRID");
            if (feature != null) {
                S57FeatureRevision revision = new S57FeatureRevision(file, dataSet, record, feature);
                revision.applyTo(cell.features());
                read.merge(revision.name.type(), 1, Integer::sum);
            } else if (vector != null) {
                S57VectorRevision revision = new S57VectorRevision(file, dataSet, record, vector);
                revision.applyTo(cell.vectors());
                read.merge(revision.name.type(), 1, Integer::sum);
            }
        }
        S57DataSet.Counts promised = dataSet.counts();
        require("features", promised.features(), read.getOrDefault(S57Name.FEATURE, 0));
        require("isolated nodes", promised.isolatedNodes(), read.getOrDefault(S57Name.ISOLATED_NODE, 0));
        require("connected nodes", promised.connectedNodes(), read.getOrDefault(S57Name.CONNECTED_NODE, 0));
        require("edges", promised.edges(), read.getOrDefault(S57Name.EDGE, 0));
    }

    private void require(String what, long promised, int read) {
        if (read < promised) {
            throw VectorReader.problem(file.file(), "field DSSI", "it promises records of " + promised + " " + what + " and the file holds "
                    + read + "; the chart is damaged or cut off, so get it again");
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
}
