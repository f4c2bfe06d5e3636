package org.seacairn.grid;

import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.hprtree.HPRtree;
import org.seacairn.geodesy.GroundScale.Frame;
import org.seacairn.geodesy.GroundScale.Strain;

/**
 * Ground distance from cell centres to the nearest point of a layer's own geometries, zero inside
 * polygons; exact to the geometry, not to a rasterised copy.
 *
 * <p>A window is worked patch by patch and each patch as a quadtree. One look at a node's centre gives
 * bounds for all its cells; where the caller's use of the distance is the same over those bounds, the
 * node is filled at once. Otherwise only the segments that can be nearest to some cell of the node go
 * down to its quarters.
 *
 * <p>Lengths are taken on the map and turned into ground lengths by the frame of the cell's patch, at
 * the midpoint between cell and feature: within 1 mm of the geodesic at 500 m and 1 cm at 5 nmi in a
 * UTM zone, and within 2 cm at 5 nmi on equal-area and conic maps of a continent. Immutable after construction; safe for several threads at once.
 */
public final class DistanceField {
    /** A node of this side or with this few segments is computed cell by cell. */
    private static final int LEAF_SIDE = 8;
    private static final int FEW_SEGMENTS = 2;
    /** Widens the bounds of a node beyond any error of frames and rounding. */
    private static final double SLACK = 1.001;
    private static final double[] RAMP = new double[64];

    static {
        Arrays.setAll(RAMP, i -> i);
    }

    /** How a caller uses distances: where it need not tell them apart. */
    @FunctionalInterface
    public interface Use {
        /**
         * Whether every distance from {@code lowM} to {@code highM} (which may be infinite) has the same
         * effect on every cell of the window.
         */
        boolean same(double lowM, double highM);
    }

    private final GridGeometry grid;
    private final double[] ax;
    private final double[] ay;
    private final double[] bx;
    private final double[] by;
    private final HPRtree index = new HPRtree();
    private final PolygonScan interiors;

    /** @param geometries in the grid's CRS: points, lines and polygons, collections of them */
    public DistanceField(GridGeometry grid, List<Geometry> geometries) {
        this.grid = grid;
        Segments segments = new Segments();
        geometries.forEach(segments::add);
        this.ax = segments.column(0);
        this.ay = segments.column(1);
        this.bx = segments.column(2);
        this.by = segments.column(3);
        for (int i = 0; i < ax.length; i++) {
            index.insert(new Envelope(ax[i], bx[i], ay[i], by[i]), i);
        }
        index.build();
        this.interiors = new PolygonScan(grid, geometries, new int[geometries.size()]);
    }

    /** Number of segments and points that distance is measured to. */
    public int segments() {
        return ax.length;
    }

    /**
     * Distances of a window's cells in metres. Where {@code use} does not tell distances apart, any
     * distance with the same effect may stand in their place; infinity stands for beyond {@code farM}.
     *
     * @param frames of the same grid and window
     * @param farM a distance from which on {@code use} is the same to infinity
     * @return the least distance put into the window
     */
    public float fill(Window window, PatchFrames.Over frames, double farM, Use use, float[] into) {
        int[] inside = interiors(window);
        float least = Float.POSITIVE_INFINITY;
        for (int p = 0; p < frames.frames().length; p++) {
            Window cells = frames.cells(p);
            Frame frame = frames.frames()[p];
            Patch patch = new Patch(window, frame, use, into, inside);
            patch.fill(cells, candidates(cells, farM / frame.mean()));
            least = Math.min(least, patch.least);
        }
        return least;
    }

    /** For each cell 0 where it lies in a polygon, else -1; null where the window meets no polygon. */
    private int[] interiors(Window window) {
        if (!interiors.meets(window)) {
            return null;
        }
        int[] inside = new int[window.cells()];
        Arrays.fill(inside, -1);
        interiors.paint(window, inside);
        return inside;
    }

    private int[] candidates(Window cells, double farOnMap) {
        Envelope box = new Envelope(grid.centreX(cells.col()), grid.centreX(cells.endCol() - 1),
                grid.centreY(cells.endRow() - 1), grid.centreY(cells.row()));
        box.expandBy(farOnMap * 1.01 + grid.cellM());
        @SuppressWarnings("unchecked")
        List<Integer> hit = index.query(box);
        int[] ids = new int[hit.size()];
        for (int i = 0; i < ids.length; i++) {
            ids[i] = hit.get(i);
        }
        return ids;
    }

    /** The work on one patch, in ground coordinates about the patch's frame. */
    private final class Patch {
        private final Window window;
        private final Frame f;
        private final Use use;
        private final float[] into;
        private final int[] inside;
        private final Strain strain;
        private float least = Float.POSITIVE_INFINITY;

        Patch(Window window, Frame frame, Use use, float[] into, int[] inside) {
            this.window = window;
            this.f = frame;
            this.strain = frame.strain();
            this.use = use;
            this.into = into;
            this.inside = inside;
        }

        /** @param ids segments in map coordinates that may matter */
        void fill(Window cells, int[] ids) {
            double[] segments = new double[4 * ids.length];
            for (int i = 0; i < ids.length; i++) {
                int s = ids[i];
                segments[4 * i] = f.east(ax[s], ay[s]);
                segments[4 * i + 1] = f.north(ax[s], ay[s]);
                segments[4 * i + 2] = f.east(bx[s], by[s]) - segments[4 * i];
                segments[4 * i + 3] = f.north(bx[s], by[s]) - segments[4 * i + 1];
            }
            node(cells, segments, ids.length);
        }

        private void node(Window w, double[] segments, int count) {
            double x = (grid.centreX(w.col()) + grid.centreX(w.endCol() - 1)) / 2;
            double y = (grid.centreY(w.row()) + grid.centreY(w.endRow() - 1)) / 2;
            double e = f.east(x, y);
            double n = f.north(x, y);
            double spanX = (w.cols() - 1) * grid.cellM() / 2;
            double spanY = (w.rows() - 1) * grid.cellM() / 2;
            double radius = SLACK * Math.max(
                    Math.hypot(f.eastX() * spanX + f.eastY() * spanY, f.northX() * spanX + f.northY() * spanY),
                    Math.hypot(f.eastX() * spanX - f.eastY() * spanY, f.northX() * spanX - f.northY() * spanY));
            double[] d = new double[count];
            double nearest = Double.POSITIVE_INFINITY;
            for (int i = 0; i < count; i++) {
                d[i] = Math.sqrt(squared(e, n, segments, i));
                nearest = Math.min(nearest, d[i]);
            }
            if (settled(w, nearest, radius)) {
                return;
            }
            double[] kept = new double[4 * count];
            int left = 0;
            for (int i = 0; i < count; i++) {
                if (d[i] <= (nearest + 2 * radius) * SLACK) {
                    System.arraycopy(segments, 4 * i, kept, 4 * left++, 4);
                }
            }
            if (left <= FEW_SEGMENTS || Math.max(w.cols(), w.rows()) <= LEAF_SIDE) {
                cellByCell(w, kept, left);
                return;
            }
            int halfCols = (w.cols() + 1) / 2;
            int halfRows = (w.rows() + 1) / 2;
            for (int row = w.row(); row < w.endRow(); row += halfRows) {
                for (int col = w.col(); col < w.endCol(); col += halfCols) {
                    node(new Window(col, row, Math.min(halfCols, w.endCol() - col),
                            Math.min(halfRows, w.endRow() - row)), kept, left);
                }
            }
        }

        /** Fills the node if one distance serves all its cells. */
        private boolean settled(Window w, double nearest, double radius) {
            if (inside != null && nearest <= radius) {
                // The boundary may cross the node: its cells lie between inside (0) and the far side.
                return use.same(0, nearest + radius) && fillAll(w, (float) nearest);
            }
            if (inside != null && inside[window.index(w.col(), w.row())] == 0) {
                return fillAll(w, 0);
            }
            return use.same(Math.max(0, nearest - radius), nearest + radius) && fillAll(w, (float) nearest);
        }

        private boolean fillAll(Window w, float distance) {
            least = Math.min(least, distance);
            for (int row = w.row(); row < w.endRow(); row++) {
                int start = window.index(w.col(), row);
                Arrays.fill(into, start, start + w.cols(), distance);
            }
            return true;
        }

        private void cellByCell(Window w, double[] segments, int count) {
            double stepE = f.eastX() * grid.cellM();
            double stepN = f.northX() * grid.cellM();
            double[] best = new double[w.cols()];
            double x = grid.centreX(w.col());
            for (int row = w.row(); row < w.endRow(); row++) {
                double y = grid.centreY(row);
                Arrays.fill(best, Double.POSITIVE_INFINITY);
                for (int i = 0; i < count; i++) {
                    lower(best, w.cols(), f.east(x, y), f.north(x, y), stepE, stepN, segments, i);
                }
                int start = window.index(w.col(), row);
                for (int c = 0; c < w.cols(); c++) {
                    float distance = inside != null && inside[start + c] == 0 ? 0 : (float) Math.sqrt(best[c]);
                    into[start + c] = distance;
                    if (distance < least) {
                        least = distance;
                    }
                }
            }
        }

        /** Lowers the squared distances of a row of cells to those of one segment. Free of branches, so that it can run as vectors. */
        private void lower(double[] best, int cols, double e0, double n0, double stepE, double stepN,
                double[] segments, int i) {
            double ae = segments[4 * i];
            double an = segments[4 * i + 1];
            double de = segments[4 * i + 2];
            double dn = segments[4 * i + 3];
            double length2 = de * de + dn * dn;
            double inverse = length2 == 0 ? 0 : 1 / length2;
            for (int c = 0; c < cols; c++) {
                double e = e0 + RAMP[c] * stepE;
                double n = n0 + RAMP[c] * stepN;
                double t = ((e - ae) * de + (n - an) * dn) * inverse;
                t = t < 0 ? 0 : t > 1 ? 1 : t;
                double ve = ae + t * de - e;
                double vn = an + t * dn - n;
                double d = strain.squared(e, n, ve, vn);
                if (d < best[c]) {
                    best[c] = d;
                }
            }
        }

        private double squared(double e, double n, double[] segments, int i) {
            double[] best = {Double.POSITIVE_INFINITY};
            lower(best, 1, e, n, 0, 0, segments, i);
            return best[0];
        }
    }

    /** Collects the segments of geometries; a point is a segment of no length. */
    private static final class Segments {
        private double[] data = new double[64];
        private int count;

        void add(Geometry geometry) {
            if (geometry instanceof Point point) {
                put(point.getX(), point.getY(), point.getX(), point.getY());
            } else if (geometry instanceof LineString line) {
                CoordinateSequence points = line.getCoordinateSequence();
                for (int i = 1; i < points.size(); i++) {
                    Coordinate a = points.getCoordinate(i - 1);
                    Coordinate b = points.getCoordinate(i);
                    put(a.x, a.y, b.x, b.y);
                }
            } else if (geometry instanceof Polygon polygon) {
                add(polygon.getExteriorRing());
                for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
                    add(polygon.getInteriorRingN(i));
                }
            } else {
                for (int i = 0; i < geometry.getNumGeometries(); i++) {
                    add(geometry.getGeometryN(i));
                }
            }
        }

        private void put(double ax, double ay, double bx, double by) {
            if (count + 4 > data.length) {
                data = Arrays.copyOf(data, 2 * data.length);
            }
            data[count] = ax;
            data[count + 1] = ay;
            data[count + 2] = bx;
            data[count + 3] = by;
            count += 4;
        }

        double[] column(int which) {
            double[] column = new double[count / 4];
            for (int i = 0; i < column.length; i++) {
                column[i] = data[4 * i + which];
            }
            return column;
        }
    }
}
