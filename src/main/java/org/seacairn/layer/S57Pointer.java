package org.seacairn.layer;

/**
 * A feature's pointer to a spatial record, or an edge's to its nodes (FSPT, VRPT: IHO S-57 edition 3.1, part 3, 7.6.8 and
 * 7.7.1.4). Masks say what a display leaves undrawn and have no meaning here.
 *
 * @param orientation {@link #FORWARD}, {@link #REVERSE} or neither
 * @param use of an area's boundary: {@link #INTERIOR}, or exterior (1, or 3 where the limit of the data cuts the area); of a node: {@link #BEGIN} or {@link #END}
 */
record S57Pointer(S57Name target, int orientation, int use) {
    static final int FORWARD = 1;
    static final int REVERSE = 2;

    static final int EXTERIOR = 1;
    static final int INTERIOR = 2;
    static final int EXTERIOR_CUT = 3;

    static final int BEGIN = 1;
    static final int END = 2;
}
