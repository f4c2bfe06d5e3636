package org.seacairn.place;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Why no chain joins two stones: the stretch of the corridor that cannot be bridged.
 *
 * @param fromAlongM how far along the axis a chain from the first stone can come
 * @param toAlongM how far back a chain from the second stone can come; not above {@code fromAlongM} where it is not the
 *     ground that parts them but the range of gaps, which fits no sequence of cells
 * @param from the cell reached furthest along; empty: no cell, the stone itself
 * @param to the cell reached furthest back; empty: no cell, the stone itself
 * @param cells of the corridor in the stretch between, its ends excluded
 * @param freeCells of them with a score
 * @param takenCells of them without score or reason: near what is placed already
 * @param cellsByReason of them by each reason, in the order of the plan's reasons
 * @param stonesApartM geodesic distance between the two stones
 * @param fewestByDistance modules that the distance alone demands: so many that no gap is above the largest
 * @param mostInLine modules that fit in a straight line with no gap below the least; under {@code fewestByDistance} no
 *     number fits in a straight line
 */
public record Unbridged(double fromAlongM, double toAlongM, Optional<Pick> from, Optional<Pick> to,
        long cells, long freeCells, long takenCells, List<Long> cellsByReason,
        double stonesApartM, int fewestByDistance, int mostInLine) {

    /** Length of the stretch along the axis in metres; 0 where it is not the ground that parts the stones. */
    public double lengthM() {
        return Math.max(0, toAlongM - fromAlongM);
    }

    static Unbridged of(ChainGraph graph, ChainLevels levels) {
        Corridor corridor = graph.corridor();
        int from = -1;
        int to = -1;
        boolean[] toEnd = reachingEnd(graph);
        int[] along = corridor.cells().alongMm();
        for (int s : graph.slotOfRank()) {
            from = levels.reached(s) && (from < 0 || along[s] > along[from]) ? s : from;
            to = toEnd[s] && to < 0 ? s : to;
        }
        double fromM = from < 0 ? 0 : corridor.alongM(from);
        double toM = to < 0 ? corridor.axis().lengthM() : corridor.alongM(to);
        long cells = 0;
        long free = 0;
        long taken = 0;
        long[] byReason = new long[Integer.SIZE];
        for (int s = 0; s < along.length; s++) {
            if (along[s] > 0 && corridor.alongM(s) > fromM && corridor.alongM(s) < toM) {
                cells++;
                boolean scored = !Float.isNaN(corridor.score()[s]);
                free += scored ? 1 : 0;
                taken += !scored && corridor.reasons()[s] == 0 ? 1 : 0;
                for (int rest = corridor.reasons()[s]; rest != 0; rest &= rest - 1) {
                    byReason[Integer.numberOfTrailingZeros(rest)]++;
                }
            }
        }
        List<Long> counts = new ArrayList<>();
        for (long count : byReason) {
            counts.add(count);
        }
        double apartM = corridor.axis().stonesApartM();
        return new Unbridged(fromM, toM, pick(corridor, from), pick(corridor, to), cells, free, taken, List.copyOf(counts), apartM,
                (int) Math.ceil(apartM / graph.rules().mostM()) - 1, (int) Math.floor(apartM / graph.rules().leastM()) - 1);
    }

    private static Optional<Pick> pick(Corridor corridor, int slot) {
        return slot < 0 ? Optional.empty() : Optional.of(corridor.pick(slot));
    }

    /** By slot, whether a chain to the second stone can begin there. */
    private static boolean[] reachingEnd(ChainGraph graph) {
        boolean[] reaching = new boolean[graph.corridor().cells().slots()];
        int[] runs = graph.space();
        int[] slots = graph.slotOfRank();
        for (int i = slots.length - 1; i >= 0; i--) {
            int slot = slots[i];
            reaching[slot] = graph.last(slot);
            int n = reaching[slot] ? 0 : graph.runs(slot, runs);
            for (int k = 0; k < n && !reaching[slot]; k += 2) {
                for (int s = runs[k]; s <= runs[k + 1] && !reaching[slot]; s++) {
                    // What lies behind is not decided yet, and so counts as not reaching.
                    reaching[slot] = reaching[s] && graph.ahead(slot, s);
                }
            }
        }
        return reaching;
    }
}
