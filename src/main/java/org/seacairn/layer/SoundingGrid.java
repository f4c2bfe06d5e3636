package org.seacairn.layer;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import org.seacairn.InputException;
import org.seacairn.plan.Shown;

/**
 * Soundings gridded by the median: a cell that holds soundings takes the median of its own, any other the median of those
 * within reach of its centre, and no value where there are none. The median of an even number is the mean of the middle two.
 * A sounding on the edge of cells belongs to that in the east and south. Soundings that stand on a lattice of the
 * cell's spacing come to lie in the centres of cells; else cells are aligned to whole multiples of their side.
 */
final class SoundingGrid implements StoredArray {
    private static final long MOST_CELLS = 1 << 27;
    /** Farther off nothing is known of the bottom, and every cell would ask hundreds of others. */
    private static final double FARTHEST_CELLS = 10;
    private static final double USUAL_REACH_CELLS = 1.5;
    /** Mean resultant length from which on directions count as one: a scatter of a thirtieth of a turn. */
    private static final double ONE_PHASE = 0.98;

    private final int count;
    private final double cellM;
    private final double reachM;
    private final double west;
    private final double north;
    private final int cols;
    private final int rows;
    private final float[] values;
    /** Until the grid is made; then memory is wanted for other things. */
    private Soundings soundings;
    /** Cell and number of every sounding, by cell. */
    private long[] byCell;
    private float[] some = new float[64];

    private int ownCells;
    private int reachedCells;
    private long repeated;
    private long contradicting;
    private double shoalest;
    private int shoalestLine;

    /**
     * @param soundings in the working CRS
     * @param cellM side of a cell in metres
     * @param reachM metres, or NaN for one and a half cells
     * @param up 1 where greater values are shallower, -1 where smaller ones are
     * @throws InputException without the file's name, if the reach or the grid is too large
     */
    SoundingGrid(Soundings soundings, double cellM, double reachM, int up) {
        this.soundings = soundings;
        this.count = soundings.size();
        this.cellM = cellM;
        this.reachM = Double.isNaN(reachM) ? USUAL_REACH_CELLS * cellM : reachM;
        if (this.reachM > FARTHEST_CELLS * cellM) {
            throw new InputException("reach is " + Shown.metres(reachM) + ", more than " + Shown.number(FARTHEST_CELLS) + " cells of "
                    + Shown.metres(cellM) + "; so far from a sounding a depth would be made up: state a shorter reach or a larger cell");
        }
        int[] extremes = soundings.extremes();
        double originX = origin(true);
        double originY = origin(false);
        double firstCol = Math.floor((soundings.x(extremes[0]) - originX) / cellM);
        double lastCol = Math.floor((soundings.x(extremes[1]) - originX) / cellM);
        double firstRow = Math.floor((originY - soundings.y(extremes[3])) / cellM);
        double lastRow = Math.floor((originY - soundings.y(extremes[2])) / cellM);
        if (!((lastCol - firstCol + 1) * (lastRow - firstRow + 1) <= MOST_CELLS)) {
            throw new InputException(String.format(Locale.ROOT, "a grid of %s cells over the soundings has %.0f x %.0f cells, more than %d;"
                    + " state a larger cell in the plan, or look for a sounding out of place (the westernmost is in line %d, the easternmost"
                    + " in %d, the southernmost in %d, the northernmost in %d)", Shown.metres(cellM), lastCol - firstCol + 1,
                    lastRow - firstRow + 1, MOST_CELLS, soundings.line(extremes[0]), soundings.line(extremes[1]),
                    soundings.line(extremes[2]), soundings.line(extremes[3])));
        }
        this.cols = (int) (lastCol - firstCol) + 1;
        this.rows = (int) (lastRow - firstRow) + 1;
        this.west = originX + firstCol * cellM;
        this.north = originY - firstRow * cellM;
        this.values = new float[cols * rows];
        Arrays.fill(values, Float.NaN);
        sort(originX, originY, firstCol, firstRow);
        ownCells(up);
        reachedCells();
        this.soundings = null;
        byCell = null;
        some = null;
    }

    /** Where a column or row of cells begins: half a cell from soundings that all stand at the same share of one. */
    private double origin(boolean alongX) {
        double cos = 0;
        double sin = 0;
        for (int i = 0; i < soundings.size(); i++) {
            double cells = (alongX ? soundings.x(i) : soundings.y(i)) / cellM;
            double angle = 2 * Math.PI * (cells - Math.floor(cells));
            cos += Math.cos(angle);
            sin += Math.sin(angle);
        }
        boolean lattice = Math.hypot(cos, sin) > ONE_PHASE * soundings.size();
        return lattice ? cellM * (Math.atan2(sin, cos) / (2 * Math.PI) - 0.5) : 0;
    }

    private void sort(double originX, double originY, double firstCol, double firstRow) {
        byCell = new long[soundings.size()];
        for (int i = 0; i < byCell.length; i++) {
            long col = (long) (Math.floor((soundings.x(i) - originX) / cellM) - firstCol);
            long row = (long) (Math.floor((originY - soundings.y(i)) / cellM) - firstRow);
            byCell[i] = row * cols + col << 32 | i;
        }
        Arrays.parallelSort(byCell);
    }

    private void ownCells(int up) {
        for (int from = 0; from < byCell.length;) {
            int cell = (int) (byCell[from] >>> 32);
            int to = from;
            while (to < byCell.length && byCell[to] >>> 32 == cell) {
                take(to - from, (int) byCell[to]);
                to++;
            }
            values[cell] = median(to - from);
            ownCells++;
            remark(from, to, values[cell], up);
            from = to;
        }
    }

    /** What the median of a cell hides. */
    private void remark(int from, int to, float median, int up) {
        long[] places = new long[to - from];
        long[] whole = new long[to - from];
        for (int k = from; k < to; k++) {
            int i = (int) byCell[k];
            double above = up * (soundings.value(i) - (double) median);
            if (above > shoalest) {
                shoalest = above;
                shoalestLine = soundings.line(i);
            }
            places[k - from] = mixed(mixed(Double.doubleToLongBits(soundings.x(i))) + Double.doubleToLongBits(soundings.y(i)));
            whole[k - from] = mixed(places[k - from] + Float.floatToIntBits(soundings.value(i)));
        }
        long alike = repeats(whole);
        repeated += alike;
        contradicting += repeats(places) - alike;
    }

    /** Numbers that came before, for numbers that stand for what is compared; by chance alone one pair in 2^64. */
    private static long repeats(long[] numbers) {
        Arrays.sort(numbers);
        long count = 0;
        for (int i = 1; i < numbers.length; i++) {
            count += numbers[i] == numbers[i - 1] ? 1 : 0;
        }
        return count;
    }

    /** The finalizer of MurmurHash3 (public domain). */
    private static long mixed(long bits) {
        long h = bits;
        h = (h ^ h >>> 33) * 0xff51afd7ed558ccdL;
        h = (h ^ h >>> 33) * 0xc4ceb9fe1a85ec53L;
        return h ^ h >>> 33;
    }

    private void reachedCells() {
        int around = (int) Math.ceil(reachM / cellM + 0.5);
        BitSet near = new BitSet(values.length);
        for (int cell = 0; cell < values.length; cell++) {
            if (!Float.isNaN(values[cell])) {
                int row = cell / cols;
                int col = cell % cols;
                for (int r = Math.max(0, row - around); r <= Math.min(rows - 1, row + around); r++) {
                    near.set(r * cols + Math.max(0, col - around), r * cols + Math.min(cols - 1, col + around) + 1);
                }
            }
        }
        BitSet own = new BitSet(values.length);
        for (int cell = near.nextSetBit(0); cell >= 0; cell = near.nextSetBit(cell + 1)) {
            own.set(cell, !Float.isNaN(values[cell]));
        }
        near.andNot(own);
        for (int cell = near.nextSetBit(0); cell >= 0; cell = near.nextSetBit(cell + 1)) {
            int count = within(cell, around);
            if (count > 0) {
                values[cell] = median(count);
                reachedCells++;
            }
        }
    }

    /** Takes the soundings within reach of a cell's centre; gives their number. */
    private int within(int cell, int around) {
        int row = cell / cols;
        int col = cell % cols;
        double x = west + (col + 0.5) * cellM;
        double y = north - (row + 0.5) * cellM;
        int count = 0;
        for (int r = Math.max(0, row - around); r <= Math.min(rows - 1, row + around); r++) {
            long first = (long) r * cols + Math.max(0, col - around);
            long last = (long) r * cols + Math.min(cols - 1, col + around);
            for (int k = firstFrom(first << 32); k < byCell.length && byCell[k] >>> 32 <= last; k++) {
                int i = (int) byCell[k];
                double dx = soundings.x(i) - x;
                double dy = soundings.y(i) - y;
                if (dx * dx + dy * dy <= reachM * reachM) {
                    take(count++, i);
                }
            }
        }
        return count;
    }

    private int firstFrom(long key) {
        int found = Arrays.binarySearch(byCell, key);
        return found >= 0 ? found : -found - 1;
    }

    private void take(int at, int sounding) {
        if (at == some.length) {
            some = Arrays.copyOf(some, 2 * at);
        }
        some[at] = soundings.value(sounding);
    }

    private float median(int count) {
        Arrays.sort(some, 0, count);
        float middle = some[count / 2];
        return count % 2 == 1 ? middle : (float) (((double) some[count / 2 - 1] + middle) / 2);
    }

    double west() {
        return west;
    }

    double north() {
        return north;
    }

    /** How the grid came about, one line each. */
    List<String> notes(String unit) {
        List<String> notes = new ArrayList<>();
        notes.add(String.format(Locale.ROOT, "gridded by the median: %,d soundings on cells of %s; %,d cells hold soundings, %,d more have one"
                + " within the reach of %s of their centre, %,d have no depth", count, Shown.metres(cellM), ownCells, reachedCells,
                Shown.metres(reachM), (long) values.length - ownCells - reachedCells));
        if (shoalest > 0) {
            notes.add("the sounding in line " + shoalestLine + " is " + Shown.number((float) shoalest) + " " + unit
                    + " shallower than its cell, more than any other: a median leaves rocks and wrecks out as it does errors");
        }
        if (repeated + contradicting > 0) {
            notes.add(String.format(Locale.ROOT, "%,d soundings repeat another with place and value, %,d give another value for the same place;"
                    + " all are counted", repeated, contradicting));
        }
        return notes;
    }

    @Override
    public int rows() {
        return rows;
    }

    @Override
    public int cols() {
        return cols;
    }

    @Override
    public int blockRows() {
        return 0;
    }

    @Override
    public int blockCols() {
        return 0;
    }

    @Override
    public void read(int col, int row, int cols, int rows, Sink into) {
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < cols; c++) {
                into.put(r, c, values[(row + r) * this.cols + col + c]);
            }
        }
    }
}
