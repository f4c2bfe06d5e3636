package org.seacairn.report;

/**
 * A piece of one contour line.
 *
 * @param level the value it follows
 * @param xy x and y of each vertex in turn; of a closed one the first vertex comes again at the end. Larger values
 *     lie to the left of the way along it, seen with y downwards
 * @param closed whether it is a ring; else it ends at the border or at missing values
 */
record Contour(double level, double[] xy, boolean closed) {
    int vertices() {
        return xy.length / 2;
    }

    double x(int i) {
        return xy[2 * i];
    }

    double y(int i) {
        return xy[2 * i + 1];
    }
}
