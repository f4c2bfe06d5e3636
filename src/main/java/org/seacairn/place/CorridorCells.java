package org.seacairn.place;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.seacairn.InputException;
import org.seacairn.geodesy.GroundScale;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;

/**
 * Which cells lie about an axis, and how far along it.
 *
 * <p>Each row is kept from its first to its last cell of the corridor, in places called slots, which are
 * numbered from north to south and then from west to east. Between two bends of the axis a slot may
 * hold a cell outside the corridor. Cells may lie off the grid.
 *
 * @param firstRow northernmost row
 * @param firstCol by row
 * @param start by row, the slot of its first column; one more at the end, the number of slots
 * @param alongMm by slot, along the axis in millimetres on the ground; 0 outside the corridor
 */
record CorridorCells(int firstRow, int[] firstCol, int[] start, int[] alongMm) {
    /** Slots are told apart in 25 bits. */
    static final int MOST_SLOTS = 1 << 25;

    /** Takes a cell. */
    @FunctionalInterface
    interface CellUse {
        /** @param index of the cell in its window */
        void take(int slot, int index);
    }

    /** @throws InputException if there are more than {@link #MOST_SLOTS} or the axis is longer than 2000 km */
    static CorridorCells about(Axis axis, double halfWidthM, GridGeometry grid) {
        Bands bands = new Bands(axis, halfWidthM, grid);
        Envelope box = new Envelope();
        bands.boxes.forEach(box::expandToInclude);
        int firstRow = grid.rowAt(box.getMaxY());
        int rows = grid.rowAt(box.getMinY()) - firstRow + 1;
        if (rows > MOST_SLOTS || axis.lengthM() > 2e6) {
            throw tooLarge(axis);
        }
        int[] firstCol = new int[rows];
        int[] endCol = new int[rows];
        Arrays.fill(firstCol, Integer.MAX_VALUE);
        Arrays.fill(endCol, Integer.MIN_VALUE);
        bands.scan(firstRow, (row, col, squaredM, mm) -> {
            firstCol[row] = Math.min(firstCol[row], col);
            endCol[row] = Math.max(endCol[row], col + 1);
        });
        int[] start = new int[rows + 1];
        for (int r = 0; r < rows; r++) {
            firstCol[r] = endCol[r] < firstCol[r] ? 0 : firstCol[r];
            long next = (long) start[r] + Math.max(0, (long) endCol[r] - firstCol[r]);
            if (next > MOST_SLOTS) {
                throw tooLarge(axis);
            }
            start[r + 1] = (int) next;
        }
        int[] alongMm = new int[start[rows]];
        float[] nearest = new float[alongMm.length];
        Arrays.fill(nearest, Float.POSITIVE_INFINITY);
        int lengthMm = millimetres(axis.lengthM());
        bands.scan(firstRow, (row, col, squaredM, mm) -> {
            int slot = start[row] + col - firstCol[row];
            if ((float) squaredM < nearest[slot]) {
                nearest[slot] = (float) squaredM;
                alongMm[slot] = mm >= lengthMm ? 0 : mm;
            }
        });
        return new CorridorCells(firstRow, firstCol, start, alongMm);
    }

    private static InputException tooLarge(Axis axis) {
        return new InputException(String.format(Locale.ROOT, "the corridor from \"%s\" to \"%s\" is %.0f km long and holds over %d"
                + " million cells; make it narrower, or state a larger cell", axis.from().name(), axis.to().name(),
                axis.lengthM() / 1000, MOST_SLOTS >> 20));
    }

    private static int millimetres(double metres) {
        return (int) Math.rint(metres * 1000);
    }

    int rows() {
        return firstCol.length;
    }

    int slots() {
        return alongMm.length;
    }

    int cols(int row) {
        return start[row + 1] - start[row];
    }

    /** Row of the corridor, from 0 in the north, that holds a slot. */
    int rowOf(int slot) {
        int found = Arrays.binarySearch(start, slot);
        // Rows without cells share their start with the next; the last of them holds the slot.
        int row = found < 0 ? -found - 2 : found;
        while (start[row + 1] == slot) {
            row++;
        }
        return row;
    }

    /** Tight windows about the cells in each tile of the grid. */
    List<Window> tiles(int side, GridGeometry grid) {
        List<Window> tiles = new ArrayList<>();
        int lastRow = Math.min(grid.rows(), firstRow + rows());
        for (int top = Math.max(0, firstRow); top < lastRow; top = (top / side + 1) * side) {
            int bottom = Math.min(lastRow, (top / side + 1) * side);
            int west = Integer.MAX_VALUE;
            int east = 0;
            for (int row = top; row < bottom; row++) {
                west = Math.min(west, cols(row - firstRow) == 0 ? west : Math.max(0, firstCol[row - firstRow]));
                east = Math.max(east, Math.min(grid.cols(), firstCol[row - firstRow] + cols(row - firstRow)));
            }
            for (int left = west; left < east; left = (left / side + 1) * side) {
                tight(left, Math.min(east, (left / side + 1) * side), top, bottom, tiles);
            }
        }
        return tiles;
    }

    private void tight(int left, int right, int top, int bottom, List<Window> tiles) {
        int west = right;
        int east = left;
        int north = bottom;
        int south = top;
        for (int row = top; row < bottom; row++) {
            int from = Math.max(left, firstCol[row - firstRow]);
            int to = Math.min(right, firstCol[row - firstRow] + cols(row - firstRow));
            if (from < to) {
                west = Math.min(west, from);
                east = Math.max(east, to);
                north = Math.min(north, row);
                south = row + 1;
            }
        }
        if (west < east) {
            tiles.add(new Window(west, north, east - west, south - north));
        }
    }

    /** The corridor's cells in a window. */
    void forEach(Window window, CellUse use) {
        int from = Math.max(window.row(), firstRow);
        int to = Math.min(window.endRow(), firstRow + rows());
        for (int row = from; row < to; row++) {
            int r = row - firstRow;
            int left = Math.max(window.col(), firstCol[r]);
            int right = Math.min(window.endCol(), firstCol[r] + cols(r));
            for (int col = left; col < right; col++) {
                int slot = start[r] + col - firstCol[r];
                if (alongMm[slot] > 0) {
                    use.take(slot, window.index(col, row));
                }
            }
        }
    }

    /** Takes a cell within the half-width of a piece of the axis. */
    @FunctionalInterface
    private interface Near {
        void take(int row, int col, double squaredM, int alongMm);
    }

    /** The pieces of the axis, each with a box on the map about the cells that may be near it. */
    private static final class Bands {
        private final Axis axis;
        private final double halfWidthM;
        private final GridGeometry grid;
        private final GroundScale.Frame[] frames;
        private final List<Envelope> boxes = new ArrayList<>();

        Bands(Axis axis, double halfWidthM, GridGeometry grid) {
            this.axis = axis;
            this.halfWidthM = halfWidthM;
            this.grid = grid;
            GroundScale scale = new GroundScale(grid.crs());
            Coordinate[] p = axis.onMap();
            this.frames = new GroundScale.Frame[p.length - 1];
            for (int i = 0; i < frames.length; i++) {
                double x = (p[i].x + p[i + 1].x) / 2;
                double y = (p[i].y + p[i + 1].y) / 2;
                frames[i] = scale.at(x, y);
                Envelope box = new Envelope(p[i], p[i + 1]);
                box.expandBy(halfWidthM * (1 + 2 * scale.scaleError(x, y)) + grid.cellM());
                boxes.add(box);
            }
        }

        /** Each piece as straight about its middle: off by less than a millimetre in a UTM zone. */
        void scan(int firstRow, Near near) {
            for (int i = 0; i < frames.length; i++) {
                Coordinate a = axis.onMap()[i];
                Coordinate b = axis.onMap()[i + 1];
                GroundScale.Frame f = frames[i];
                double ae = f.east(a.x, a.y);
                double an = f.north(a.x, a.y);
                double de = f.east(b.x, b.y) - ae;
                double dn = f.north(b.x, b.y) - an;
                double length2 = de * de + dn * dn;
                Envelope box = boxes.get(i);
                int west = grid.colAt(box.getMinX());
                int east = grid.colAt(box.getMaxX());
                for (int row = grid.rowAt(box.getMaxY()); row <= grid.rowAt(box.getMinY()); row++) {
                    for (int col = west; col <= east; col++) {
                        double e = f.east(grid.centreX(col), grid.centreY(row)) - ae;
                        double n = f.north(grid.centreX(col), grid.centreY(row)) - an;
                        double t = length2 == 0 ? 0 : Math.max(0, Math.min(1, (e * de + n * dn) / length2));
                        double squared = (e - t * de) * (e - t * de) + (n - t * dn) * (n - t * dn);
                        if (squared <= halfWidthM * halfWidthM) {
                            near.take(row - firstRow, col, squared,
                                    millimetres(axis.alongM()[i] + t * (axis.alongM()[i + 1] - axis.alongM()[i])));
                        }
                    }
                }
            }
        }
    }
}
