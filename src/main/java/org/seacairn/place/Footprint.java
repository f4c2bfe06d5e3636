package org.seacairn.place;

import org.seacairn.geodesy.GroundScale;

/**
 * A rectangle of a ground size and turn about a cell's centre, as it lies on the map: on a conformal map
 * a rectangle, on another a parallelogram.
 *
 * @param size number of the size in the request
 * @param turnDeg true bearing of the long side
 * @param ux half the long side in map metres, toward the turn
 * @param vx half the short side in map metres, a quarter turn clockwise from u
 * @param spans the cells whose centres lie in it or on its edge
 */
record Footprint(int size, double turnDeg, double ux, double uy, double vx, double vy, Spans spans) {
    /** A rise over run that is rounding: a micrometre over the longest side. */
    private static final double LEVEL = 1e-10;

    static Footprint of(int number, AreaSize size, double turnDeg, GroundScale.Frame frame, double cellM) {
        double sin = Math.sin(Math.toRadians(turnDeg));
        double cos = Math.cos(Math.toRadians(turnDeg));
        double[] u = onMap(frame, size.lengthM() / 2 * sin, size.lengthM() / 2 * cos);
        double[] v = onMap(frame, size.widthM() / 2 * cos, -size.widthM() / 2 * sin);
        return new Footprint(number, turnDeg, u[0], u[1], v[0], v[1], spans(u, v, cellM));
    }

    /** The map displacement of one on the ground. */
    private static double[] onMap(GroundScale.Frame frame, double east, double north) {
        double determinant = frame.eastX() * frame.northY() - frame.eastY() * frame.northX();
        return new double[] {(east * frame.northY() - north * frame.eastY()) / determinant,
            (north * frame.eastX() - east * frame.northX()) / determinant};
    }

    private static Spans spans(double[] u, double[] v, double cellM) {
        int reach = (int) Math.floor((Math.abs(u[1]) + Math.abs(v[1])) / cellM + Spans.ON_EDGE);
        int[] from = new int[2 * reach + 1];
        int[] to = new int[2 * reach + 1];
        for (int dr = -reach; dr <= reach; dr++) {
            double y = -dr * cellM;
            double[] across = meet(meet(new double[] {Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY}, u, v, y), v, u, y);
            from[dr + reach] = (int) Math.ceil(across[0] / cellM - Spans.ON_EDGE);
            to[dr + reach] = Math.max(from[dr + reach] - 1, (int) Math.floor(across[1] / cellM + Spans.ON_EDGE));
        }
        return new Spans(from, to);
    }

    /** Cuts an interval of x to where (x, y) lies between the two edges that are parallel to {@code along}. */
    private static double[] meet(double[] x, double[] off, double[] along, double y) {
        if (Math.abs(along[1]) <= LEVEL * Math.abs(along[0])) {
            // The edges run along the row, and the reach keeps y between them.
            return x;
        }
        double a = y * along[0] / along[1];
        double b = Math.abs((off[0] * along[1] - off[1] * along[0]) / along[1]);
        return new double[] {Math.max(x[0], a - b), Math.min(x[1], a + b)};
    }

    /** How far it reaches to the east and west of its centre, map metres. */
    double halfAcrossM() {
        return Math.abs(ux) + Math.abs(vx);
    }

    /** How far it reaches to the north and south of its centre, map metres. */
    double halfDownM() {
        return Math.abs(uy) + Math.abs(vy);
    }

    /** The radius of the largest circle about the centre in it, map metres. */
    double innerRadiusM() {
        double area = Math.abs(ux * vy - uy * vx);
        return area / Math.max(Math.hypot(ux, uy), Math.hypot(vx, vy));
    }
}
