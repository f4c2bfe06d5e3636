package org.seacairn.grid;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.hprtree.HPRtree;

/**
 * Which cell centres lie in which polygons, by even-odd crossings along the rows of cell centres.
 *
 * <p>A crossing is computed from the lower end of an edge, so two polygons that share an edge share
 * its crossings: a centre near or on a common edge lies in exactly one of them. Immutable after
 * construction; safe for several threads at once.
 */
public final class PolygonScan {
    private final GridGeometry grid;
    private final double[][][] rings;
    private final int[] values;
    private final HPRtree index = new HPRtree();
    private final Envelope[] envelopes;

    /**
     * @param polygons polygons or multi-polygons in the grid's CRS; other geometries are passed over
     * @param values what each paints, 0 or more; of polygons that overlap the one later in the list wins
     */
    public PolygonScan(GridGeometry grid, List<Geometry> polygons, int[] values) {
        this.grid = grid;
        this.values = values.clone();
        this.rings = new double[polygons.size()][][];
        this.envelopes = new Envelope[polygons.size()];
        for (int i = 0; i < polygons.size(); i++) {
            rings[i] = rings(polygons.get(i));
            envelopes[i] = polygons.get(i).getEnvelopeInternal();
            if (rings[i].length > 0) {
                index.insert(envelopes[i], i);
            }
        }
        index.build();
    }

    private static double[][] rings(Geometry geometry) {
        List<double[]> rings = new java.util.ArrayList<>();
        for (int i = 0; i < geometry.getNumGeometries(); i++) {
            Geometry part = geometry.getGeometryN(i);
            if (part instanceof Polygon polygon) {
                rings.add(flat(polygon.getExteriorRing()));
                for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
                    rings.add(flat(polygon.getInteriorRingN(h)));
                }
            } else if (part.getNumGeometries() > 1) {
                rings.addAll(List.of(rings(part)));
            }
        }
        return rings.toArray(double[][]::new);
    }

    private static double[] flat(LinearRing ring) {
        CoordinateSequence points = ring.getCoordinateSequence();
        double[] xy = new double[2 * points.size()];
        Coordinate c = new Coordinate();
        for (int i = 0; i < points.size(); i++) {
            points.getCoordinate(i, c);
            xy[2 * i] = c.x;
            xy[2 * i + 1] = c.y;
        }
        return xy;
    }

    /** Whether any polygon's envelope meets a window. */
    public boolean meets(Window window) {
        return !index.query(envelope(window)).isEmpty();
    }

    /**
     * Paints a window.
     *
     * @param into receives for each cell the value of the last polygon that holds its centre; cells in
     *     no polygon are left as they are
     */
    public void paint(Window window, int[] into) {
        @SuppressWarnings("unchecked")
        List<Integer> hit = index.query(envelope(window));
        hit.sort(null);
        byte[] toggles = new byte[window.cells()];
        for (int i : hit) {
            paint(window, i, toggles, into);
        }
    }

    private Envelope envelope(Window w) {
        return new Envelope(grid.centreX(w.col()), grid.centreX(w.endCol() - 1),
                grid.centreY(w.endRow() - 1), grid.centreY(w.row()));
    }

    private void paint(Window window, int polygon, byte[] toggles, int[] into) {
        Envelope box = envelopes[polygon];
        int firstRow = Math.max(window.row(), rowAtOrBelow(box.getMaxY()));
        int lastRow = Math.min(window.endRow() - 1, rowAtOrBelow(box.getMinY()));
        int firstCol = Math.max(window.col(), colAtOrAfter(box.getMinX()));
        int endCol = Math.min(window.endCol(), colAtOrAfter(box.getMaxX()) + 1);
        if (firstRow > lastRow || firstCol >= endCol) {
            return;
        }
        for (double[] ring : rings[polygon]) {
            for (int i = 0; i + 3 < ring.length; i += 2) {
                cross(window, ring[i], ring[i + 1], ring[i + 2], ring[i + 3], firstRow, lastRow, firstCol, endCol,
                        toggles);
            }
        }
        int value = values[polygon];
        for (int row = firstRow; row <= lastRow; row++) {
            int start = (row - window.row()) * window.cols();
            int inside = 0;
            for (int i = start + firstCol - window.col(); i < start + endCol - window.col(); i++) {
                inside ^= toggles[i];
                toggles[i] = 0;
                if (inside != 0) {
                    into[i] = value;
                }
            }
        }
    }

    private void cross(Window window, double x0, double y0, double x1, double y1, int firstRow, int lastRow,
            int firstCol, int endCol, byte[] toggles) {
        if (y0 == y1) {
            return;
        }
        double lowX = y0 < y1 ? x0 : x1;
        double lowY = Math.min(y0, y1);
        double highX = y0 < y1 ? x1 : x0;
        double highY = Math.max(y0, y1);
        // An edge owns the rows with lowY <= centre < highY; the test below settles rounding at the ends.
        int from = Math.max(firstRow, rowAtOrBelow(highY) - 1);
        int to = Math.min(lastRow, rowAtOrBelow(lowY));
        double slope = (highX - lowX) / (highY - lowY);
        for (int row = from; row <= to; row++) {
            double y = grid.centreY(row);
            if (y < lowY || y >= highY) {
                continue;
            }
            // Held within the polygon's columns, which a rounded crossing can miss by one.
            int col = Math.max(firstCol, colAtOrAfter(lowX + (y - lowY) * slope));
            if (col < endCol) {
                toggles[window.index(col, row)] ^= 1;
            }
        }
    }

    /** The first row whose centre is at or south of a northing, give or take a rounding. */
    private int rowAtOrBelow(double y) {
        return clampToInt(Math.ceil((grid.north() - y) / grid.cellM() - 0.5));
    }

    /** The first column whose centre is at or east of an easting. */
    private int colAtOrAfter(double x) {
        return clampToInt(Math.ceil((x - grid.west()) / grid.cellM() - 0.5));
    }

    private static int clampToInt(double v) {
        return (int) Math.max(-1e9, Math.min(1e9, v));
    }
}
