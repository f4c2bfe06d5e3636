package org.seacairn.place;

import java.util.List;
import org.seacairn.geodesy.GroundScale;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;

/**
 * For every cell of a window the turn along its isobath: perpendicular to the mean depth gradient (Horn's
 * differences) over the disc that has a rectangle's area, which unlike the rectangle does not depend on
 * the turn; the nearest of the turns tried. Cells without a gradient are left out; a flat bottom gives north.
 */
final class IsobathTurns {
    /** Steps of a depth difference, so that sums are whole numbers. */
    private static final double STEPS_PER_M = 1 << 16;

    private final Window centres;
    private final byte[][] turn;

    /** @param depth over {@code centres} grown by the shapes' halo and one cell more; NaN for none */
    IsobathTurns(GridGeometry grid, List<AreaSize> sizes, Shapes shapes, Window centres, float[] depth) {
        this.centres = centres;
        this.turn = new byte[sizes.size()][centres.cells()];
        Window inner = centres.grown(shapes.halo());
        Window wide = inner.grown(1);
        RowSums east = new RowSums(inner, i -> difference(depth, index(inner, wide, i), wide.cols(), 1));
        RowSums north = new RowSums(inner, i -> difference(depth, index(inner, wide, i), 1, -wide.cols()));
        int side = shapes.patchSide();
        long[] sumEast = new long[side];
        long[] sumNorth = new long[side];
        for (int row = centres.row(); row < centres.endRow(); row++) {
            for (int col = centres.col(); col < centres.endCol(); col = (col / side + 1) * side) {
                int n = Math.min((col / side + 1) * side, centres.endCol()) - col;
                GroundScale.Frame frame = shapes.at(col, row).frame();
                for (int s = 0; s < turn.length; s++) {
                    AreaSize size = sizes.get(s);
                    double radiusM = Math.sqrt(size.lengthM() * size.widthM() / Math.PI) / frame.mean();
                    Spans disc = Spans.disc(radiusM / grid.cellM());
                    east.over(disc, row, col, n, sumEast);
                    north.over(disc, row, col, n, sumNorth);
                    for (int i = 0; i < n; i++) {
                        turn[s][centres.index(col + i, row)] = (byte) turn(sumEast[i], sumNorth[i], frame, size.isSquare());
                    }
                }
            }
        }
    }

    private static int index(Window inner, Window wide, int i) {
        return wide.index(inner.col() + i % inner.cols(), inner.row() + i / inner.cols());
    }

    /** Eight times the change of depth over a cell, along {@code step}; 0 where one of the nine cells is missing. */
    private static long difference(float[] depth, int i, int across, int step) {
        double ahead = (double) depth[i + step - across] + 2.0 * depth[i + step] + depth[i + step + across];
        double behind = (double) depth[i - step - across] + 2.0 * depth[i - step] + depth[i - step + across];
        double all = ahead - behind + 0 * (depth[i] + depth[i - across] + depth[i + across]);
        return Double.isNaN(all) ? 0 : Math.round(all * STEPS_PER_M);
    }

    private static int turn(long mapEast, long mapNorth, GroundScale.Frame frame, boolean square) {
        if (mapEast == 0 && mapNorth == 0) {
            return 0;
        }
        double east = -frame.eastX() * mapNorth + frame.eastY() * mapEast;
        double north = -frame.northX() * mapNorth + frame.northY() * mapEast;
        int steps = (int) Math.floor(Math.toDegrees(Math.atan2(east, north)) / AreaTurns.STEP_DEG + 0.5);
        return Math.floorMod(steps, square ? AreaTurns.STEPS / 2 : AreaTurns.STEPS);
    }

    /** The number of the turn of a size at a cell. */
    int at(int size, int col, int row) {
        return turn[size][centres.index(col, row)];
    }
}
