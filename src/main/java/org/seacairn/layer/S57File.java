package org.seacairn.layer;

import java.nio.file.Path;
import org.seacairn.layer.Iso8211File.DataRecord;
import org.seacairn.layer.Iso8211File.Field;

/**
 * One file of a cell, the chart itself or an update, whose records it puts into an {@link S57Cell}: Records of other kinds (history, accuracy, catalogue) are passed over.
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
                new S57FeatureRevision(file, dataSet, record, feature).applyTo(cell.features());
            } else if (vector != null) {
                new S57VectorRevision(file, dataSet, record, vector).applyTo(cell.vectors());
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
}
