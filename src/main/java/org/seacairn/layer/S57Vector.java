package org.seacairn.layer;

import java.util.ArrayList;
import java.util.List;

/** A spatial record of a cell: a node, or an edge between two, which updates change. */
final class S57Vector {
    /** A position as written, in the cell's units of latitude and longitude; {@code depth} is 0 but for soundings. */
    record Position(int latitude, int longitude, int depth) {}

    private final S57Name name;
    private final List<Position> positions = new ArrayList<>();
    private final List<S57Pointer> nodes = new ArrayList<>();
    private boolean soundings;
    private int version;

    S57Vector(S57Name name, int version) {
        this.name = name;
        this.version = version;
    }

    S57Name name() {
        return name;
    }

    /** Of a node its own, of an edge those between its nodes; changed by updates. */
    List<Position> positions() {
        return positions;
    }

    /** Of an edge its two nodes; changed by updates. */
    List<S57Pointer> nodes() {
        return nodes;
    }

    /** Whether the positions have a depth each. */
    boolean isSoundings() {
        return soundings;
    }

    void setSoundings() {
        soundings = true;
    }

    int version() {
        return version;
    }

    void setVersion(int version) {
        this.version = version;
    }
}
