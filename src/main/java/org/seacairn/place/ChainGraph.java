package org.seacairn.place;

import java.util.Arrays;
import org.seacairn.grid.GridGeometry;

/**
 * Which cells of a corridor can follow which in a chain: strictly further along the axis, and a gap away.
 *
 * <p>The scored cells have ranks: by distance along the axis (in millimetres), then from north to south,
 * then from west to east. Safe for several threads at once.
 */
final class ChainGraph {
    /** Slots are looked at in blocks, so that those behind can be passed over at one look. */
    static final int BLOCK_BITS = 4;

    private final Corridor corridor;
    private final CorridorCells cells;
    private final Gaps rules;
    private final OffsetRuns gaps;
    private final OffsetRuns tooNear;
    private final boolean[] first;
    private final boolean[] last;
    private final int[] slotOfRank;
    private final int[] rank;
    private final int[] blockAlong;

    ChainGraph(Corridor corridor, Gaps rules, Chunks chunks) {
        this.corridor = corridor;
        this.cells = corridor.cells();
        this.rules = rules;
        GridGeometry grid = corridor.grid();
        this.gaps = OffsetRuns.between(grid, corridor.frames(), rules.leastM(), rules.mostM());
        this.tooNear = OffsetRuns.nearer(grid, corridor.frames(), rules.apartM());
        this.first = corridor.within(corridor.axis().from(), rules.leastM(), rules.mostM(), chunks);
        this.last = corridor.within(corridor.axis().to(), rules.leastM(), rules.mostM(), chunks);
        this.rank = new int[cells.slots()];
        this.slotOfRank = ranked();
        this.blockAlong = new int[(cells.slots() >> BLOCK_BITS) + 1];
        for (int s : slotOfRank) {
            blockAlong[s >> BLOCK_BITS] = Math.max(blockAlong[s >> BLOCK_BITS], cells.alongMm()[s]);
        }
    }

    private int[] ranked() {
        long[] keys = new long[corridor.scoredCells()];
        int count = 0;
        for (int s = 0; s < rank.length; s++) {
            if (!Float.isNaN(corridor.score()[s])) {
                keys[count++] = (long) cells.alongMm()[s] << 32 | s;
            }
        }
        Arrays.sort(keys);
        int[] slots = new int[count];
        for (int i = 0; i < count; i++) {
            slots[i] = (int) keys[i];
            rank[slots[i]] = i;
        }
        return slots;
    }

    Corridor corridor() {
        return corridor;
    }

    Gaps rules() {
        return rules;
    }

    /** The slots of the scored cells by rank. */
    int[] slotOfRank() {
        return slotOfRank;
    }

    int rank(int slot) {
        return rank[slot];
    }

    /** Whether a chain may begin with this cell. */
    boolean first(int slot) {
        return first[slot];
    }

    /** Whether a chain may end with this cell. */
    boolean last(int slot) {
        return last[slot];
    }

    /** Whether no module is needed: the stones are themselves a gap apart. */
    boolean joined() {
        double marginM = OffsetRuns.marginM(rules.mostM());
        double apartM = corridor.axis().stonesApartM();
        return apartM >= rules.leastM() + marginM && apartM <= rules.mostM() - marginM;
    }

    /** Whether the second cell is strictly further along the axis than the first. */
    boolean ahead(int slot, int next) {
        return cells.alongMm()[next] > cells.alongMm()[slot];
    }

    /** Whether no slot of a block is further along the axis. */
    boolean blockBehind(int block, int slot) {
        return blockAlong[block] <= cells.alongMm()[slot];
    }

    /** Whether two cells of one chain may stand nearer than the modules must be apart; in either order. */
    boolean tooNear(int one, int other) {
        int a = Math.min(one, other);
        int b = Math.max(one, other);
        int col = corridor.col(a);
        int row = corridor.row(a);
        return tooNear.from(col, row).holds(corridor.col(b) - col, corridor.row(b) - row);
    }

    /** Space for {@link #runs}. */
    int[] space() {
        return new int[4 * cells.rows()];
    }

    /**
     * The runs of slots that are a gap away from a cell, before and behind, scored or not.
     *
     * @param into receives first and last slot of each
     * @return twice their number
     */
    int runs(int slot, int[] into) {
        int r0 = cells.rowOf(slot);
        int col = cells.firstCol()[r0] + slot - cells.start()[r0];
        OffsetRuns.Runs runs = gaps.from(col, cells.firstRow() + r0);
        int[] bounds = runs.bounds();
        int n = 0;
        int top = Math.max(0, r0 - runs.reach());
        int bottom = Math.min(cells.rows() - 1, r0 + runs.reach());
        for (int r = top; r <= bottom; r++) {
            int toSlot = cells.start()[r] - cells.firstCol()[r];
            int i = 4 * (r - r0 + runs.reach());
            for (int k = i; k < i + 4; k += 2) {
                int from = Math.max(cells.start()[r], toSlot + col + bounds[k]);
                int to = Math.min(cells.start()[r + 1] - 1, toSlot + col + bounds[k + 1]);
                if (from <= to) {
                    into[n++] = from;
                    into[n++] = to;
                }
            }
        }
        return n;
    }
}
