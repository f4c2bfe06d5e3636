package org.seacairn.review;

import java.util.BitSet;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Point;
import org.seacairn.InputException;
import org.seacairn.criterion.ChartedCells;
import org.seacairn.criterion.DepthUncertainty;
import org.seacairn.drop.LandingRadius;
import org.seacairn.geodesy.GeodesicEdges;
import org.seacairn.geodesy.Vertices;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;
import org.seacairn.score.WorkingDepth;

/**
 * The cells of the working grid that a proposed site is judged on. A point: the cell that holds it and
 * every cell whose centre lies within the landing radius of it. A polygon: the cells whose centres lie
 * in it (if it holds none, the cell of a point inside), and every cell whose centre lies within the
 * landing radius of one of those. Lengths are those of the grid, as for landing room. One thread's: it remembers
 * the depths that it has read.
 */
final class SiteCells {
    /** Rounding of coordinates in a file; a cell this much beyond the radius counts as on it. */
    private static final double SLACK_M = 1e-3;
    /** More cells than this are a mistake in the proposal or the cell, and would not fit into memory. */
    private static final long MOST_CELLS = 100_000_000;

    /** Cells that are looked up in the depth areas at a time. */
    private static final int MOST_PAINTED = 1 << 20;

    private final GridGeometry grid;
    private final WorkingDepth depth;
    /** Where cells may be; those off the grid have no depth. */
    private final Window window;
    private final BitSet landing;
    /** The site's own cells, without those that only a landing may reach; within the window. */
    private final BitSet own;
    /** Whether some of the site lies so far off the grid that its cells there were not counted. */
    private final boolean partlyOff;
    private final double landingM;
    private Ground ground;
    private int groundHalo;
    private OptionalDouble ownDepthM = OptionalDouble.empty();

    private SiteCells(WorkingDepth depth, Window window, BitSet own, BitSet landing, boolean partlyOff, double landingM) {
        this.grid = depth.grid();
        this.depth = depth;
        this.window = window;
        this.own = own;
        this.landing = landing;
        this.partlyOff = partlyOff;
        this.landingM = landingM;
    }

    /**
     * The ground about a site, row by row.
     *
     * @param depthM positive down; NaN for none
     * @param cols cells in a row
     */
    record Ground(float[] depthM, DepthUncertainty uncertainty, int cols) {
        private static Ground of(WorkingDepth depth, Window window) {
            float[] depths = new float[window.cells()];
            depth.read(window, depths);
            return new Ground(depths, depth.uncertainty().over(window), window.cols());
        }
    }

    /** What a cell measures; NaN where it measures nothing. */
    interface Measure {
        /** @param i index of the cell in ground as wide as the window grown by the halo that was asked for */
        double at(Ground ground, int i);
    }

    /**
     * The cell that measures least.
     *
     * @param value NaN if no cell measures anything
     * @param depthM of that cell, positive down
     * @param missing cells that measure nothing
     * @param cells all that were looked at
     */
    record Least(int col, int row, double value, double depthM, long missing, long cells) {}

    /**
     * Finds a site's cells.
     *
     * @return empty where neither the site nor its landing circle comes near the grid
     * @throws InputException if a polygon holds far too many cells
     */
    static Optional<SiteCells> of(ProposedSite site, WorkingDepth depth, WorkingMap map, LandingRadius radius) {
        return site.isPoint() ? ofPoint((Point) site.geometry(), depth, map, radius)
                : ofPolygon(site, depth, map, radius);
    }

    private static Optional<SiteCells> ofPoint(Point point, WorkingDepth depth, WorkingMap map, LandingRadius radius) {
        GridGeometry grid = depth.grid();
        Optional<Coordinate> found = map.onMap(point.getX(), point.getY());
        if (found.isEmpty() || !extent(grid, radius.largestM() + grid.cellM()).contains(found.get())) {
            return Optional.empty();
        }
        Coordinate at = found.get();
        int col = grid.colAt(at.x);
        int row = grid.rowAt(at.y);
        float[] depthM = new float[1];
        depth.read(new Window(col, row, 1, 1), depthM);
        double landingM = radius.atM(depthM[0]);
        int reach = (int) Math.ceil((landingM + SLACK_M) / grid.cellM());
        Window window = new Window(col, row, 1, 1).grown(reach);
        BitSet own = new BitSet();
        own.set(window.index(col, row));
        BitSet landing = new BitSet();
        landing.or(own);
        for (int r = window.row(); r < window.endRow(); r++) {
            for (int c = window.col(); c < window.endCol(); c++) {
                if (Math.hypot(grid.centreX(c) - at.x, grid.centreY(r) - at.y) <= landingM + SLACK_M) {
                    landing.set(window.index(c, r));
                }
            }
        }
        return Optional.of(new SiteCells(depth, window, own, landing, false, landingM));
    }

    private static Optional<SiteCells> ofPolygon(ProposedSite site, WorkingDepth depth, WorkingMap map, LandingRadius radius) {
        GridGeometry grid = depth.grid();
        Optional<Geometry> onMap = onMap(site.geometry(), map);
        // With a border that tells whether cells off the grid are meant too.
        Envelope whole = extent(grid, radius.largestM() + 2 * grid.cellM());
        if (onMap.isEmpty() || !onMap.get().getEnvelopeInternal().intersects(whole)) {
            return Optional.empty();
        }
        Envelope box = onMap.get().getEnvelopeInternal();
        boolean partlyOff = !whole.contains(box);
        Envelope held = whole.intersection(box);
        int reach = (int) Math.ceil((radius.largestM() + SLACK_M) / grid.cellM());
        int col = grid.colAt(held.getMinX());
        int row = grid.rowAt(held.getMaxY());
        int endCol = (int) Math.ceil((held.getMaxX() - grid.west()) / grid.cellM());
        int endRow = (int) Math.ceil((grid.north() - held.getMinY()) / grid.cellM());
        Window inner = new Window(col, row, Math.max(1, endCol - col), Math.max(1, endRow - row));
        if ((long) (inner.cols() + 2 * reach) * (inner.rows() + 2 * reach) > MOST_CELLS) {
            throw new InputException("site " + site.name() + ": spans " + inner.cols() + " x " + inner.rows()
                    + " cells of the working grid, more than can be judged at once; check it, or state a larger cell in the plan");
        }
        Window window = inner.grown(reach);
        BitSet own = cellsIn(onMap.get(), grid, window, inner);
        if (own.isEmpty()) {
            Coordinate inside = onMap.get().getInteriorPoint().getCoordinate();
            int c = grid.colAt(inside.x);
            int r = grid.rowAt(inside.y);
            if (!whole.contains(inside)) {
                return Optional.empty();
            }
            own.set(window.index(c, r));
        }
        double landingM = radius.atM(new SiteCells(depth, window, own, own, partlyOff, 0).ownDepthM());
        return Optional.of(new SiteCells(depth, window, own, reached(own, window, reach, landingM / grid.cellM()), partlyOff,
                landingM));
    }

    private static Envelope extent(GridGeometry grid, double grownM) {
        Envelope extent = new Envelope(grid.west(), grid.east(), grid.south(), grid.north());
        extent.expandBy(grownM);
        return extent;
    }

    private static Optional<Geometry> onMap(Geometry lonLat, WorkingMap map) {
        Geometry dense = GeodesicEdges.densify(lonLat, map.grid().crs().geodesic(), GeodesicEdges.PIECE_M);
        for (Coordinate c : dense.getCoordinates()) {
            if (map.onMap(c.x, c.y).isEmpty()) {
                return Optional.empty();
            }
        }
        return Optional.of(Vertices.moved(dense, c -> map.onMap(c.x, c.y).orElseThrow()));
    }

    private static BitSet cellsIn(Geometry polygon, GridGeometry grid, Window window, Window inner) {
        IndexedPointInAreaLocator locator = new IndexedPointInAreaLocator(polygon);
        BitSet cells = new BitSet();
        Coordinate centre = new Coordinate();
        for (int r = inner.row(); r < inner.endRow(); r++) {
            for (int c = inner.col(); c < inner.endCol(); c++) {
                centre.x = grid.centreX(c);
                centre.y = grid.centreY(r);
                if (locator.locate(centre) != Location.EXTERIOR) {
                    cells.set(window.index(c, r));
                }
            }
        }
        return cells;
    }

    /** The cells and those within a radius of them; only a cell with a neighbour outside can add any. */
    private static BitSet reached(BitSet own, Window window, int reach, double radiusCells) {
        BitSet reached = (BitSet) own.clone();
        double limit = radiusCells * (1 + 1e-12);
        for (int i = own.nextSetBit(0); i >= 0; i = own.nextSetBit(i + 1)) {
            if (own.get(i - 1) && own.get(i + 1) && own.get(i - window.cols()) && own.get(i + window.cols())) {
                continue;
            }
            for (int dy = -reach; dy <= reach; dy++) {
                if (Math.abs(dy) <= limit) {
                    int half = (int) Math.floor(Math.sqrt(limit * limit - (double) dy * dy));
                    reached.set(i + dy * window.cols() - half, i + dy * window.cols() + half + 1);
                }
            }
        }
        return reached;
    }

    /** Over the window and a border. Most rules ask for the same. */
    private Ground ground(int halo) {
        if (ground == null || groundHalo != halo) {
            ground = Ground.of(depth, window.grown(halo));
            groundHalo = halo;
        }
        return ground;
    }

    /**
     * The cell with the least of a measure; of equal ones the more northern, then the more western.
     *
     * @param halo how many cells beyond a cell its measure looks
     */
    Least least(int halo, Measure measure) {
        return least(landing, halo, measure);
    }

    private Least least(BitSet cells, int halo, Measure measure) {
        Ground about = ground(halo);
        Least least = new Least(0, 0, Double.NaN, Double.NaN, 0, 0);
        long missing = 0;
        for (int i = cells.nextSetBit(0); i >= 0; i = cells.nextSetBit(i + 1)) {
            int c = i % window.cols();
            int r = i / window.cols();
            int at = (r + halo) * about.cols() + c + halo;
            double value = measure.at(about, at);
            if (Double.isNaN(value)) {
                missing++;
            } else if (!(value >= least.value)) {
                least = new Least(window.col() + c, window.row() + r, value, about.depthM()[at], 0, 0);
            }
        }
        return new Least(least.col, least.row, least.value, least.depthM, missing, cells.cardinality());
    }

    /**
     * A cell: its depth in metres, positive down, and how far that may be off (95 %), either NaN for none; and its charted area, or
     * {@link ChartedCells#NONE}.
     */
    interface CellOnChart {
        void at(int col, int row, double depthM, double uncertaintyM, int area);
    }

    /** Shows every cell, from the north, of a row from the west. */
    void forEach(ChartedCells charted, CellOnChart shown) {
        Ground about = ground(0);
        int bandRows = Math.max(1, MOST_PAINTED / window.cols());
        for (int from = 0; from < window.rows(); from += bandRows) {
            Window band = new Window(window.col(), window.row() + from, window.cols(), Math.min(bandRows, window.rows() - from));
            int first = from * window.cols();
            int end = first + band.cells();
            int[] areas = charted.in(band);
            for (int i = landing.nextSetBit(first); i >= 0 && i < end; i = landing.nextSetBit(i + 1)) {
                shown.at(window.col() + i % window.cols(), window.row() + i / window.cols(), about.depthM()[i],
                        about.uncertainty().atM(i, about.depthM()[i]), areas[i - first]);
            }
        }
    }

    /** A cell of the grid and its eight neighbours, whether they are cells of the site or not. */
    Ground about(int col, int row) {
        return Ground.of(depth, new Window(col - 1, row - 1, 3, 3));
    }

    /** The greatest depth over the site's own cells, for what grows with depth; NaN where none has a depth. */
    double ownDepthM() {
        if (ownDepthM.isEmpty()) {
            ownDepthM = OptionalDouble.of(-least(own, 0, (about, i) -> -about.depthM()[i]).value);
        }
        return ownDepthM.getAsDouble();
    }

    /** The landing radius at that depth, in metres. */
    double landingM() {
        return landingM;
    }

    boolean partlyOff() {
        return partlyOff;
    }
}
