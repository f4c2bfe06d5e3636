package org.seacairn.place;

import org.locationtech.jts.geom.Coordinate;

/**
 * Where a rectangle lies on the map of the working grid: its centre and half its sides, in map metres.
 *
 * @param ux half the long side, from the centre toward the turn
 * @param vx half the short side, from the centre a quarter turn clockwise
 */
public record PlacedRectangle(double x, double y, double ux, double uy, double vx, double vy) {
    /** An overlap no deeper than this is rounding: the two touch. */
    private static final double TOUCH_M = 1e-6;

    static PlacedRectangle of(Footprint f, double x, double y) {
        return new PlacedRectangle(x, y, f.ux(), f.uy(), f.vx(), f.vy());
    }

    /**
     * A place in it.
     *
     * @param along -1..1 along the long side, 0 at the centre
     * @param across -1..1 along the short side
     */
    public Coordinate at(double along, double across) {
        return new Coordinate(x + along * ux + across * vx, y + along * uy + across * vy);
    }

    /**
     * Whether the insides of two rectangles have a point in common. Exact: two convex figures are apart
     * where a line along an edge of one of them parts them.
     */
    public boolean overlaps(PlacedRectangle o) {
        return !parted(o, ux, uy) && !parted(o, vx, vy) && !parted(o, o.ux, o.uy) && !parted(o, o.vx, o.vy);
    }

    /** Whether a line along an edge lies between the two. */
    private boolean parted(PlacedRectangle o, double edgeX, double edgeY) {
        double length = Math.hypot(edgeX, edgeY);
        double nx = -edgeY / length;
        double ny = edgeX / length;
        double distance = Math.abs((o.x - x) * nx + (o.y - y) * ny);
        return distance >= halfAlong(nx, ny) + o.halfAlong(nx, ny) - TOUCH_M;
    }

    private double halfAlong(double nx, double ny) {
        return Math.abs(ux * nx + uy * ny) + Math.abs(vx * nx + vy * ny);
    }
}
