package org.seacairn.place;

import java.util.Arrays;

/**
 * The best chain of a given number of modules in which any two modules, not only neighbours, stand apart.
 *
 * <p>Branch and bound from the first stone on: the best end without that condition, from
 * {@link ChainLevels}, bounds what a beginning can still become, and of equal totals the one whose first
 * differing module has the lower rank wins. Where the best chain without the condition keeps it anyway,
 * which is the rule (see {@link ChainSearch}), the first descent finds it and proves it. After
 * a stated number of steps the search gives up, and states the bound that it has.
 */
final class ApartSearch {
    private final ChainGraph graph;
    private final ChainLevels levels;
    private final int mostSteps;
    private final int[] runs;
    private final int[] chain;
    private int[] best;
    private long bestTotal = -1;
    private long open = -1;
    private int steps;

    /**
     * @param slots of the modules in order, or null: none was found
     * @param total of the scores, in units of {@link ChainLevels}
     * @param bound no such chain has a higher total; -1: there is no such chain
     */
    record Found(int[] slots, long total, long bound) {}

    private ApartSearch(ChainGraph graph, ChainLevels levels, int modules, int mostSteps) {
        this.graph = graph;
        this.levels = levels;
        this.mostSteps = mostSteps;
        this.runs = graph.space();
        this.chain = new int[modules];
    }

    /**
     * @param modules at least 1
     * @param mostSteps after which the search gives up
     */
    static Found best(ChainGraph graph, ChainLevels levels, int modules, int mostSteps) {
        ApartSearch search = new ApartSearch(graph, levels, modules, mostSteps);
        long[] starts = Arrays.stream(graph.slotOfRank()).filter(graph::first)
                .mapToLong(s -> levels.value(s, modules)).filter(v -> v != ChainLevels.NONE).sorted().toArray();
        search.extend(0, 0, starts);
        return new Found(search.best, search.bestTotal, Math.max(search.bestTotal, search.open));
    }

    /** @param ends best ends of the next module, ascending */
    private void extend(int depth, long sum, long[] ends) {
        for (int i = ends.length - 1; i >= 0; i--) {
            long bound = sum + ChainLevels.total(ends[i]);
            if (bound < bestTotal) {
                return;
            }
            int slot = graph.slotOfRank()[ChainLevels.rank(ends[i])];
            if (bound == bestTotal && !mayPrecede(depth, slot) || !apart(depth, slot)) {
                continue;
            }
            chain[depth] = slot;
            if (depth + 1 == chain.length) {
                best = chain.clone();
                bestTotal = bound;
                continue;
            }
            if (steps++ >= mostSteps) {
                open = Math.max(open, bound);
                return;
            }
            extend(depth + 1, sum + ChainLevels.units(graph.corridor().score()[slot]), onward(slot, depth, sum));
        }
    }

    /** Whether the chain so far, with one more module, does not come after the best one in rank. */
    private boolean mayPrecede(int depth, int slot) {
        for (int i = 0; i < depth; i++) {
            if (chain[i] != best[i]) {
                return graph.rank(chain[i]) < graph.rank(best[i]);
            }
        }
        return graph.rank(slot) <= graph.rank(best[depth]);
    }

    /** The module before is a gap away, and so far enough. */
    private boolean apart(int depth, int slot) {
        for (int i = depth - 2; i >= 0; i--) {
            if (graph.tooNear(chain[i], slot)) {
                return false;
            }
        }
        return true;
    }

    private long[] onward(int slot, int depth, long sum) {
        int toCome = chain.length - depth - 1;
        long least = bestTotal - sum - ChainLevels.units(graph.corridor().score()[slot]);
        int n = graph.runs(slot, runs);
        long[] ends = new long[64];
        int count = 0;
        for (int i = 0; i < n; i += 2) {
            for (int s = runs[i]; s <= runs[i + 1]; s++) {
                long value = graph.ahead(slot, s) ? levels.value(s, toCome) : ChainLevels.NONE;
                if (value != ChainLevels.NONE && ChainLevels.total(value) >= least) {
                    ends = count == ends.length ? Arrays.copyOf(ends, 2 * count) : ends;
                    ends[count++] = value;
                }
            }
        }
        Arrays.sort(ends, 0, count);
        return Arrays.copyOf(ends, count);
    }
}
