package org.seacairn.layer;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.seacairn.InputException;

/** The records of a cell as its updates leave them, in the order of the file. */
final class S57Cell {
    private final Path file;
    private final S57Parameters parameters;
    private final Map<S57Name, S57Feature> features = new LinkedHashMap<>();
    private final Map<S57Name, S57Vector> vectors = new LinkedHashMap<>();

    S57Cell(Path file, S57Parameters parameters) {
        this.file = file;
        this.parameters = parameters;
    }

    S57Parameters parameters() {
        return parameters;
    }

    Map<S57Name, S57Feature> features() {
        return features;
    }

    Map<S57Name, S57Vector> vectors() {
        return vectors;
    }

    /** The error for one record of the cell. */
    InputException problem(S57Name record, String what) {
        return VectorReader.problem(file, record.toString(), what + "; the chart or an update of it is damaged, so get them again");
    }
}
