package org.seacairn.place;

import java.util.ArrayList;
import java.util.List;
import org.seacairn.grid.Window;
import org.seacairn.score.BlockMaxima;
import org.seacairn.score.ScoreEngine;
import org.seacairn.score.ScoredWindow;

/**
 * Highest score first (ties: the more northern, then the more western cell), each site at least the
 * stated distance from every site before it.
 *
 * <p>Exact without holding the scores: a heap of blocks by their best cell; where that cell is too near
 * a site already chosen, the block alone is scored again for the best cell that is not.
 */
final class GreedySites {
    private final ScoreEngine engine;
    private final BlockMaxima blocks;
    private final Spacing spacing;
    private final int[] heap;
    private int size;

    GreedySites(ScoreEngine engine, BlockMaxima blocks, Spacing spacing) {
        this.engine = engine;
        this.blocks = blocks;
        this.spacing = spacing;
        int scored = 0;
        for (int b = 0; b < blocks.blocks(); b++) {
            scored += Float.isNaN(blocks.best(b)) ? 0 : 1;
        }
        this.heap = new int[scored];
        for (int b = 0; b < blocks.blocks(); b++) {
            if (!Float.isNaN(blocks.best(b))) {
                heap[size++] = b;
            }
        }
        for (int i = size / 2 - 1; i >= 0; i--) {
            sink(i);
        }
    }

    /** Up to {@code count} sites, fewer where the grid has room for no more. */
    List<Pick> choose(int count) {
        List<Pick> chosen = new ArrayList<>();
        while (chosen.size() < count && size > 0) {
            int block = heap[0];
            Pick best = spacing.pick(blocks.bestCol(block), blocks.bestRow(block), blocks.best(block));
            if (!spacing.tooNearAny(best, chosen)) {
                chosen.add(best);
            }
            // Its best cell is taken or too near now: look for the next best of the block.
            rescore(block, chosen);
            if (Float.isNaN(blocks.best(block))) {
                heap[0] = heap[--size];
            }
            sink(0);
        }
        return chosen;
    }

    private void rescore(int block, List<Pick> chosen) {
        Window w = blocks.window(block);
        List<Pick> near = new ArrayList<>();
        int reach = spacing.reachCells();
        for (Pick p : chosen) {
            if (p.col() >= w.col() - reach && p.col() < w.endCol() + reach
                    && p.row() >= w.row() - reach && p.row() < w.endRow() + reach) {
                near.add(p);
            }
        }
        ScoredWindow scored = engine.score(w);
        float best = Float.NaN;
        int bestCol = w.col();
        int bestRow = w.row();
        for (int row = w.row(); row < w.endRow(); row++) {
            for (int col = w.col(); col < w.endCol(); col++) {
                float s = scored.score()[w.index(col, row)];
                if (!Float.isNaN(s) && !(s <= best) && !spacing.tooNearAny(spacing.pick(col, row, s), near)) {
                    best = s;
                    bestCol = col;
                    bestRow = row;
                }
            }
        }
        blocks.replace(block, best, bestCol, bestRow);
    }

    private boolean before(int a, int b) {
        int byScore = Float.compare(blocks.best(b), blocks.best(a));
        if (byScore != 0) {
            return byScore < 0;
        }
        long cellA = engine.grid().cellNumber(blocks.bestCol(a), blocks.bestRow(a));
        long cellB = engine.grid().cellNumber(blocks.bestCol(b), blocks.bestRow(b));
        return cellA < cellB;
    }

    private void sink(int i) {
        while (true) {
            int first = i;
            for (int child = 2 * i + 1; child <= 2 * i + 2 && child < size; child++) {
                if (before(heap[child], heap[first])) {
                    first = child;
                }
            }
            if (first == i) {
                return;
            }
            int spare = heap[i];
            heap[i] = heap[first];
            heap[first] = spare;
            i = first;
        }
    }
}
