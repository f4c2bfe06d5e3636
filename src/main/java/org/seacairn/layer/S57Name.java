package org.seacairn.layer;

/**
 * What identifies a record within a cell: RCNM and RCID of IHO S-57 edition 3.1, part 3.
 *
 * @param type one of the constants here, or another
 * @param number from 1
 */
record S57Name(int type, long number) {
    static final int FEATURE = 100;
    static final int ISOLATED_NODE = 110;
    static final int CONNECTED_NODE = 120;
    static final int EDGE = 130;
    static final int FACE = 140;

    @Override
    public String toString() {
        return switch (type) {
            case FEATURE -> "feature record ";
            case ISOLATED_NODE -> "isolated node ";
            case CONNECTED_NODE -> "connected node ";
            case EDGE -> "edge ";
            case FACE -> "face ";
            default -> "record of type " + type + ", number ";
        } + number;
    }
}
