package org.seacairn.place;

import java.util.Arrays;
import java.util.Locale;
import org.seacairn.InputException;
import org.seacairn.Progress;

/**
 * The best ends of chains: for each cell and each number of modules the highest total score of a sequence
 * from that cell to the second stone, every gap kept, strictly forward. Exact dynamic programming.
 *
 * <p>A breadth-first search from the first stone gives the least number of modules to each cell. A chain
 * of at most {@code fewest + extra} modules can therefore meet a cell with {@code extra + 1} different
 * numbers of modules still to come, and only those are computed and kept.
 *
 * <p>Scores are whole numbers of 2^-24, so that sums are exact. A total and its cell's rank share one
 * long, the total above and the lower rank first: no two cells are equal, and the answer does not depend
 * on threads.
 */
final class ChainLevels {
    static final long NONE = -1;
    /** A total could overflow beyond 2^14, and the stack of {@link ApartSearch} before that. */
    static final int MOST_MODULES = (1 << 12) - 1;

    /** Values kept: a gigabyte. */
    private static final long MOST_KEPT = 1 << 27;
    private static final double SCALE = 1 << 24;
    private static final int RANK_BITS = 25;
    private static final int LAST_RANK = (1 << RANK_BITS) - 1;

    private final ChainGraph graph;
    private final Chunks chunks;
    private final Progress progress;
    /** By slot, the least number of modules up to a cell and with it; 0 where there is no way. */
    private final int[] fromStart;
    private final int fewest;
    private int most;
    /** By how many modules fewer than the most a chain through the cell has, and by slot. */
    private long[][] kept;

    ChainLevels(ChainGraph graph, Chunks chunks, Progress progress) {
        this.graph = graph;
        this.chunks = chunks;
        this.progress = progress;
        this.fromStart = new int[graph.corridor().cells().slots()];
        this.fewest = breadthFirst();
    }

    /** The least number of modules, above 0, of a chain whose consecutive gaps are kept; 0 where there is none. */
    int fewest() {
        return fewest;
    }

    boolean reached(int slot) {
        return fromStart[slot] > 0;
    }

    private int breadthFirst() {
        int found = 0;
        boolean[] closed = new boolean[(fromStart.length >> ChainGraph.BLOCK_BITS) + 1];
        int[] frontier = Arrays.stream(graph.slotOfRank()).filter(graph::first).toArray();
        for (int level = 1; frontier.length > 0; level++) {
            int next = level + 1;
            int[] from = frontier;
            for (int s : from) {
                fromStart[s] = level;
                found = found == 0 && graph.last(s) ? level : found;
            }
            // Several threads may mark a cell, or close a block, all in the same way.
            chunks.ranges(from.length, (a, b) -> {
                int[] runs = graph.space();
                for (int i = a; i < b; i++) {
                    mark(from[i], next, closed, runs);
                }
            });
            frontier = Arrays.stream(graph.slotOfRank()).filter(s -> fromStart[s] == next).toArray();
        }
        return found;
    }

    /** Marks the cells that can follow one, and closes the blocks in which no cell is left to mark. */
    private void mark(int slot, int level, boolean[] closed, int[] runs) {
        int n = graph.runs(slot, runs);
        for (int i = 0; i < n; i += 2) {
            int end = runs[i + 1];
            for (int s = runs[i], stop; s <= end; s = stop + 1) {
                int block = s >> ChainGraph.BLOCK_BITS;
                stop = Math.min(end, lastOf(block));
                if (!closed[block] && !graph.blockBehind(block, slot)) {
                    boolean marked = false;
                    for (; s <= stop; s++) {
                        if (open(s) && graph.ahead(slot, s)) {
                            fromStart[s] = level;
                            marked = true;
                        }
                    }
                    closed[block] = marked && noneOpen(block);
                }
            }
        }
    }

    private boolean open(int slot) {
        return fromStart[slot] == 0 && !Float.isNaN(graph.corridor().score()[slot]);
    }

    private boolean noneOpen(int block) {
        for (int s = block << ChainGraph.BLOCK_BITS; s <= lastOf(block); s++) {
            if (open(s)) {
                return false;
            }
        }
        return true;
    }

    private int lastOf(int block) {
        return Math.min(fromStart.length, block + 1 << ChainGraph.BLOCK_BITS) - 1;
    }

    /**
     * Computes what chains of up to {@code fewest + extra} modules need.
     *
     * @throws InputException if that is too much to keep
     */
    void compute(int extra) {
        int slots = fromStart.length;
        if (fewest + extra > MOST_MODULES || (extra + 1L) * slots > MOST_KEPT) {
            throw new InputException(String.format(Locale.ROOT, "chains of %d modules over %d cells, with %d modules to spare, are"
                    + " more than can be searched; make the corridor narrower, the gaps wider, or the cell larger",
                    fewest + extra, slots, extra));
        }
        most = fewest + extra;
        kept = new long[extra + 1][slots];
        for (long[] k : kept) {
            Arrays.fill(k, NONE);
        }
        long[] next = new long[slots];
        long[] now = new long[slots];
        long[] blockBest = new long[(slots >> ChainGraph.BLOCK_BITS) + 1];
        progress.expect((long) most * slots, "cells");
        for (int toCome = 1; toCome <= most; toCome++) {
            long[] into = now;
            long[] ahead = next;
            int modules = toCome;
            Arrays.fill(into, NONE);
            chunks.ranges(slots, (a, b) -> {
                int[] runs = graph.space();
                for (int s = a; s < b; s++) {
                    int spare = spare(s, modules);
                    if (spare >= 0 && spare <= extra) {
                        into[s] = modules == 1 ? end(s) : onward(s, best(s, ahead, blockBest, runs));
                        kept[spare][s] = into[s];
                    }
                }
                progress.done(b - a);
            });
            Arrays.fill(blockBest, NONE);
            for (int s = 0; s < slots; s++) {
                int block = s >> ChainGraph.BLOCK_BITS;
                blockBest[block] = Math.max(blockBest[block], into[s]);
            }
            now = ahead;
            next = into;
        }
    }

    /** How many modules fewer than the most the shortest chain has that meets a cell with so many still to come. */
    private int spare(int slot, int toCome) {
        return fromStart[slot] == 0 ? -1 : most - (fromStart[slot] + toCome - 1);
    }

    /** The best end from a cell with {@code toCome} modules, itself among them; {@link #NONE} where there is none. */
    long value(int slot, int toCome) {
        int spare = spare(slot, toCome);
        return spare < 0 || spare >= kept.length ? NONE : kept[spare][slot];
    }

    private long end(int slot) {
        return graph.last(slot) ? packed(units(graph.corridor().score()[slot]), graph.rank(slot)) : NONE;
    }

    private long onward(int slot, long best) {
        return best == NONE ? NONE : packed(units(graph.corridor().score()[slot]) + total(best), graph.rank(slot));
    }

    private long best(int slot, long[] values, long[] blockBest, int[] runs) {
        int n = graph.runs(slot, runs);
        long best = NONE;
        for (int i = 0; i < n; i += 2) {
            int s = runs[i];
            int end = runs[i + 1];
            while (s <= end) {
                int block = s >> ChainGraph.BLOCK_BITS;
                int stop = Math.min(end, lastOf(block));
                if (blockBest[block] > best && !graph.blockBehind(block, slot)) {
                    for (; s <= stop; s++) {
                        if (values[s] > best && graph.ahead(slot, s)) {
                            best = values[s];
                        }
                    }
                }
                s = stop + 1;
            }
        }
        return best;
    }

    /** A score as a whole number of units. */
    static long units(float score) {
        return (long) Math.rint(score * SCALE);
    }

    /** A whole number of units as a score. */
    static double score(long units) {
        return units / SCALE;
    }

    static long packed(long units, int rank) {
        return units << RANK_BITS | LAST_RANK - rank;
    }

    static long total(long packed) {
        return packed >> RANK_BITS;
    }

    static int rank(long packed) {
        return LAST_RANK - (int) (packed & LAST_RANK);
    }
}
