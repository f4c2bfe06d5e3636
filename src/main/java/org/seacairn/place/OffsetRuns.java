package org.seacairn.place;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.seacairn.geodesy.GroundScale.Frame;
import org.seacairn.geodesy.GroundScale.Strain;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.PatchFrames;
import org.seacairn.grid.Window;

/**
 * From a cell to the cells whose ground distance lies between two limits: for each row of offsets at
 * most two runs of columns.
 *
 * <p>The runs are those of the cell's patch (see {@link PatchFrames}), taken from its middle. The limits
 * are drawn together by a margin that outweighs every error of that, so a geodesic never disagrees: a
 * millimetre or a millionth of the larger limit, and what the map's scale changes over half a patch.
 * Safe for several threads at once.
 */
final class OffsetRuns {
    private final GridGeometry grid;
    private final PatchFrames frames;
    private final double leastM;
    private final double mostM;
    private final boolean inward;
    private final Map<Long, Runs> byPatch = new ConcurrentHashMap<>();

    /**
     * The runs of one patch.
     *
     * @param reach rows of offsets go from minus this to this
     * @param bounds for each row first and last column of its western run, then of its eastern one; last
     *     below first where there is none
     */
    record Runs(int reach, int[] bounds) {
        boolean holds(int dCol, int dRow) {
            if (Math.abs(dRow) > reach) {
                return false;
            }
            int i = 4 * (dRow + reach);
            return dCol >= bounds[i] && dCol <= bounds[i + 1] || dCol >= bounds[i + 2] && dCol <= bounds[i + 3];
        }
    }

    private OffsetRuns(GridGeometry grid, PatchFrames frames, double leastM, double mostM, boolean inward) {
        this.grid = grid;
        this.frames = frames;
        this.leastM = leastM;
        this.mostM = mostM;
        this.inward = inward;
    }

    /** Cells that are certainly at least {@code leastM} and at most {@code mostM} away. */
    static OffsetRuns between(GridGeometry grid, PatchFrames frames, double leastM, double mostM) {
        return new OffsetRuns(grid, frames, leastM, mostM, true);
    }

    /** Cells that may be nearer than {@code apartM}. */
    static OffsetRuns nearer(GridGeometry grid, PatchFrames frames, double apartM) {
        return new OffsetRuns(grid, frames, 0, apartM, false);
    }

    /** What a ground length of up to {@code lengthM} may be wrong by, generously, in metres. */
    static double marginM(double lengthM) {
        return Math.max(1e-3, 1e-6 * lengthM);
    }

    /** The runs for a cell of the grid, or off it. */
    Runs from(int col, int row) {
        int side = frames.side();
        int patchCol = Math.floorDiv(col, side);
        int patchRow = Math.floorDiv(row, side);
        return byPatch.computeIfAbsent((long) patchRow << 32 | patchCol & 0xffffffffL, key -> runs(col, row));
    }

    private Runs runs(int col, int row) {
        Frame frame = frames.over(new Window(col, row, 1, 1)).frames()[0];
        double halfPatchM = Math.sqrt(0.5) * frames.side() * grid.cellM() * frame.mean();
        double margin = marginM(mostM) + steepest(frame.strain()) * halfPatchM * mostM;
        double low = inward ? leastM + margin : Double.NEGATIVE_INFINITY;
        double high = inward ? mostM - margin : mostM + margin;
        int reach = (int) Math.ceil(1.01 * mostM / (grid.cellM() * Math.min(
                Math.hypot(frame.eastX(), frame.northX()), Math.hypot(frame.eastY(), frame.northY())))) + 1;
        int[] bounds = new int[4 * (2 * reach + 1)];
        for (int dRow = -reach; dRow <= reach; dRow++) {
            row(frame, dRow, reach, low, high, bounds, 4 * (dRow + reach));
        }
        return new Runs(reach, bounds);
    }

    /** Along a row distance falls and then rises again. */
    private void row(Frame frame, int dRow, int reach, double low, double high, int[] bounds, int at) {
        int west = -reach;
        while (west <= reach && !(distance(frame, west, dRow) <= high)) {
            west++;
        }
        int east = reach;
        while (east >= west && !(distance(frame, east, dRow) <= high)) {
            east--;
        }
        int innerWest = west;
        while (innerWest <= east && distance(frame, innerWest, dRow) >= low) {
            innerWest++;
        }
        int innerEast = east;
        while (innerEast >= innerWest && distance(frame, innerEast, dRow) >= low) {
            innerEast--;
        }
        bounds[at] = west;
        bounds[at + 1] = innerWest - 1;
        bounds[at + 2] = innerEast + 1;
        bounds[at + 3] = east;
    }

    private double distance(Frame frame, int dCol, int dRow) {
        double dx = dCol * grid.cellM();
        double dy = -dRow * grid.cellM();
        double e = frame.eastX() * dx + frame.eastY() * dy;
        double n = frame.northX() * dx + frame.northY() * dy;
        return Math.sqrt(frame.strain().squared(0, 0, e, n));
    }

    /** A bound on how fast lengths grow with distance from the middle, per metre. */
    private static double steepest(Strain s) {
        return Math.hypot(s.eeE(), s.eeN()) + 2 * Math.hypot(s.enE(), s.enN()) + Math.hypot(s.nnE(), s.nnN());
    }
}
