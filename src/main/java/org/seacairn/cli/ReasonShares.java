package org.seacairn.cli;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.seacairn.criterion.Reasons;
import org.seacairn.plan.Shown;

/** What rules a stretch of ground out, in a few words. */
final class ReasonShares {
    private static final int SHOWN = 4;

    private ReasonShares() {}

    /**
     * The reasons that take most cells, as {@code near-reef 12.5 %}. Landing room follows from the others and
     * is told only where there is no other.
     *
     * @param names in the order of {@code cells}
     * @param all cells that there are
     */
    static List<String> lines(List<String> names, List<Long> cells, long all) {
        List<Integer> most = IntStream.range(0, names.size()).filter(i -> cells.get(i) > 0).boxed()
                .sorted(Comparator.comparingLong(cells::get).reversed()).toList();
        List<Integer> first = most.stream().filter(i -> !names.get(i).equals(Reasons.LANDING_ROOM)).toList();
        return (first.isEmpty() ? most : first).stream().limit(SHOWN)
                .map(i -> names.get(i) + " " + Shown.percent(cells.get(i), all)).toList();
    }
}
