package org.seacairn.place;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.seacairn.geodesy.GroundScale;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.PatchFrames;
import org.seacairn.grid.Window;

/** The search for areas from its definition: every rectangle cell by cell, in plain loops. */
final class PlainAreas {
    private static final double EDGE = 1e-9;
    /** How deep two rectangles may overlap by rounding. */
    private static final double TOUCH_M = 1e-8;
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    /** A rectangle; {@code sizeNumber} and {@code turnDeg} order alike ones. */
    record Found(int col, int row, int sizeNumber, double turnDeg, double mean, int ruledOut, Polygon polygon) {
        static final Comparator<Found> BEST_FIRST = Comparator.comparingDouble((Found f) -> -f.mean)
                .thenComparingInt(Found::row).thenComparingInt(Found::col)
                .thenComparingInt(Found::sizeNumber).thenComparingDouble(Found::turnDeg);

        String text() {
            return col + " " + row + " size " + sizeNumber + " turn " + turnDeg + " mean " + mean + " out " + ruledOut;
        }
    }

    private final PlainCells cells;
    private final GridGeometry grid;
    private final List<AreaSize> sizes;
    private final double blemish;
    private final PatchFrames frames;

    PlainAreas(PlainCells cells, List<AreaSize> sizes, double blemish) {
        this.cells = cells;
        this.grid = cells.grid();
        this.sizes = sizes;
        this.blemish = blemish;
        this.frames = new PatchFrames(grid);
    }

    /** @param turnsDeg to try, or null: the nearest of the twelve to the isobath */
    List<Found> choose(double[] turnsDeg, int count, Predicate<Found> accept) {
        List<Found> chosen = new ArrayList<>();
        for (Found f : all(turnsDeg)) {
            if (chosen.size() < count && chosen.stream().allMatch(c -> apart(c.polygon, f.polygon)) && accept.test(f)) {
                chosen.add(f);
            }
        }
        return chosen;
    }

    private static boolean apart(Polygon a, Polygon b) {
        return !a.getEnvelopeInternal().intersects(b.getEnvelopeInternal()) || a.intersection(b).getArea() < TOUCH_M * a.getLength();
    }

    private List<Found> all(double[] turnsDeg) {
        List<Found> all = new ArrayList<>();
        for (int row = 0; row < grid.rows(); row++) {
            for (int col = 0; col < grid.cols(); col++) {
                GroundScale.Frame frame = frames.over(new Window(col, row, 1, 1)).frames()[0];
                for (int s = 0; s < sizes.size(); s++) {
                    double[] turns = turnsDeg != null ? turnsDeg : new double[] {isobathDeg(col, row, sizes.get(s), frame)};
                    for (double turn : turns) {
                        // A square turned by a quarter is the same square.
                        if (!(sizes.get(s).isSquare() && turnsDeg != null && turnsDeg.length > 1 && turn >= 90)) {
                            add(all, col, row, s, turn, frame);
                        }
                    }
                }
            }
        }
        all.sort(Found.BEST_FIRST);
        return all;
    }

    private void add(List<Found> all, int col, int row, int s, double turnDeg, GroundScale.Frame frame) {
        double sin = Math.sin(Math.toRadians(turnDeg));
        double cos = Math.cos(Math.toRadians(turnDeg));
        double halfLength = sizes.get(s).lengthM() / 2;
        double halfWidth = sizes.get(s).widthM() / 2;
        double x = grid.centreX(col);
        double y = grid.centreY(row);
        Coordinate[] ring = new Coordinate[5];
        double[][] signs = {{1, -1}, {1, 1}, {-1, 1}, {-1, -1}, {1, -1}};
        double det = frame.eastX() * frame.northY() - frame.eastY() * frame.northX();
        double farthest = 0;
        for (int i = 0; i < 5; i++) {
            double e = signs[i][0] * halfLength * sin + signs[i][1] * halfWidth * cos;
            double n = signs[i][0] * halfLength * cos - signs[i][1] * halfWidth * sin;
            ring[i] = new Coordinate(x + (e * frame.northY() - n * frame.eastY()) / det, y + (n * frame.eastX() - e * frame.northX()) / det);
            double edge = 1e-8 * grid.cellM();
            if (ring[i].x < grid.west() - edge || ring[i].x > grid.east() + edge || ring[i].y < grid.south() - edge || ring[i].y > grid.north() + edge) {
                return;
            }
            farthest = Math.max(farthest, ring[i].distance(new Coordinate(x, y)));
        }
        int reach = (int) (farthest / grid.cellM()) + 1;
        long sum = 0;
        int scored = 0;
        int total = 0;
        for (int r = Math.max(0, row - reach); r <= Math.min(grid.rows() - 1, row + reach); r++) {
            for (int c = Math.max(0, col - reach); c <= Math.min(grid.cols() - 1, col + reach); c++) {
                double dx = (c - col) * grid.cellM();
                double dy = (row - r) * grid.cellM();
                double e = frame.eastX() * dx + frame.eastY() * dy;
                double n = frame.northX() * dx + frame.northY() * dy;
                if (Math.abs(e * sin + n * cos) <= halfLength + EDGE * grid.cellM()
                        && Math.abs(e * cos - n * sin) <= halfWidth + EDGE * grid.cellM()) {
                    total++;
                    float score = cells.scores()[r * grid.cols() + c];
                    if (!Float.isNaN(score)) {
                        scored++;
                        sum += Math.round(score * (double) (1 << 20));
                    }
                }
            }
        }
        if (scored > 0 && total - scored <= blemish * total + 1e-9) {
            all.add(new Found(col, row, s, turnDeg, (double) sum / scored / (1 << 20), total - scored, GEOMETRY.createPolygon(ring)));
        }
    }

    private double isobathDeg(int col, int row, AreaSize size, GroundScale.Frame frame) {
        double radius = Math.sqrt(size.lengthM() * size.widthM() / Math.PI) / frame.mean();
        double gx = 0;
        double gy = 0;
        int reach = (int) (radius / grid.cellM()) + 1;
        for (int r = Math.max(0, row - reach); r <= Math.min(grid.rows() - 1, row + reach); r++) {
            for (int c = Math.max(0, col - reach); c <= Math.min(grid.cols() - 1, col + reach); c++) {
                if (Math.hypot(c - col, r - row) * grid.cellM() <= radius) {
                    double east = d(c + 1, r - 1) + 2 * d(c + 1, r) + d(c + 1, r + 1) - d(c - 1, r - 1) - 2 * d(c - 1, r) - d(c - 1, r + 1);
                    double north = d(c - 1, r - 1) + 2 * d(c, r - 1) + d(c + 1, r - 1) - d(c - 1, r + 1) - 2 * d(c, r + 1) - d(c + 1, r + 1);
                    if (!Double.isNaN(east + north + d(c, r))) {
                        gx += east;
                        gy += north;
                    }
                }
            }
        }
        if (gx == 0 && gy == 0) {
            return 0;
        }
        // Along the isobath on the map, then on the ground.
        double bearing = Math.toDegrees(Math.atan2(-gy * frame.eastX() + gx * frame.eastY(), -gy * frame.northX() + gx * frame.northY()));
        double nearest = 15 * Math.floor(bearing / 15 + 0.5);
        double period = size.isSquare() ? 90 : 180;
        return ((nearest % period) + period) % period;
    }

    private double d(int col, int row) {
        return grid.holds(col, row) ? cells.depths()[row * grid.cols() + col] : Double.NaN;
    }
}
