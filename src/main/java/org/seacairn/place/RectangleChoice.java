package org.seacairn.place;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.function.Predicate;
import org.seacairn.grid.Window;

/**
 * The ranked rectangles: each the best that is left, overlaps none before it and is accepted. Exact over
 * all rectangles about cell centres: a queue of blocks by their best rectangle; where that one is
 * taken, refused or overlaps, the block alone is summed up again for those that rank after it.
 */
final class RectangleChoice {
    /** Rectangles of a block listed at a time. */
    private static final int LISTED = 256;

    private final CellSource source;
    private final AreaRequest request;
    private final Shapes shapes;
    private final RectangleBlocks blocks;
    private final ScoreTiles scores;
    /** Of the blocks summed up again what ranks after their best, best first. */
    private final Map<Integer, Listed> listed = new HashMap<>();
    private final List<PlacedRectangle> chosen = new ArrayList<>();

    /** @param all whether no others of the block are left */
    private record Listed(Deque<Rectangle> ranked, boolean all) {}

    RectangleChoice(CellSource source, AreaRequest request, Shapes shapes, RectangleBlocks blocks) {
        this.source = source;
        this.request = request;
        this.shapes = shapes;
        this.blocks = blocks;
        this.scores = new ScoreTiles(source);
    }

    /** Chooses the asked number, fewer where no more fit; {@code accept} is asked in the order of rank. */
    void choose(Predicate<Rectangle> accept) {
        // One entry a row of blocks: of a large grid there are thousands, while of blocks there are millions.
        PriorityQueue<Rectangle> queue = new PriorityQueue<>(Rectangle.BEST_FIRST);
        for (int row = 0; row < blocks.rows(); row++) {
            addBest(queue, row);
        }
        while (chosen.size() < request.count() && !queue.isEmpty()) {
            Rectangle best = queue.remove();
            PlacedRectangle placed = placed(best);
            if (isFree(placed) && accept.test(best)) {
                chosen.add(placed);
            }
            int block = blocks.block(best.col(), best.row());
            blocks.replace(block, next(block, best));
            addBest(queue, best.row() / RectangleBlocks.SIDE);
        }
    }

    private void addBest(PriorityQueue<Rectangle> queue, int row) {
        Rectangle best = blocks.bestOfRow(row);
        if (best != null) {
            queue.add(best);
        }
    }

    private PlacedRectangle placed(Rectangle r) {
        return PlacedRectangle.of(shapes.at(r.col(), r.row()).footprints().get(r.shape()),
                source.grid().centreX(r.col()), source.grid().centreY(r.row()));
    }

    private boolean isFree(PlacedRectangle placed) {
        return chosen.stream().noneMatch(placed::overlaps);
    }

    /** The best rectangle of a block that ranks after one and overlaps none chosen, or null. */
    private Rectangle next(int block, Rectangle after) {
        Listed list = listed.computeIfAbsent(block, b -> list(b, after));
        Rectangle last = after;
        while (true) {
            for (Rectangle r = list.ranked.poll(); r != null; r = list.ranked.poll()) {
                last = r;
                if (isFree(placed(r))) {
                    return r;
                }
            }
            if (list.all) {
                return null;
            }
            list = list(block, last);
            listed.put(block, list);
        }
    }

    /** The best rectangles of a block that rank after one and overlap none chosen. */
    private Listed list(int block, Rectangle after) {
        Window centres = blocks.window(block);
        BitSet live = liveShapes(centres);
        if (live.isEmpty()) {
            return new Listed(new ArrayDeque<>(), true);
        }
        Window reach = RectanglePass.onGrid(source.grid(), centres.grown(shapes.halo()));
        PriorityQueue<Rectangle> best = new PriorityQueue<>(Rectangle.BEST_FIRST.reversed());
        RectanglePass.walk(source, request, shapes, centres, CellSums.of(reach, scores.score(reach)), live::get,
                (shape, cells, row, col, n, sums) -> {
                    int most = CellSums.mostRuledOut(request.blemish(), cells);
                    for (int i = 0; i < n; i++) {
                        if (CellSums.ruledOut(sums[i]) <= most) {
                            Rectangle r = new Rectangle(CellSums.mean(sums[i], cells), col + i, row, shape);
                            boolean ranks = best.size() < LISTED || r.before(best.peek());
                            if (ranks && after.before(r) && isFree(placed(r))) {
                                best.add(r);
                                if (best.size() > LISTED) {
                                    best.remove();
                                }
                            }
                        }
                    }
                });
        List<Rectangle> ranked = new ArrayList<>(best);
        ranked.sort(Rectangle.BEST_FIRST);
        return new Listed(new ArrayDeque<>(ranked), ranked.size() < LISTED);
    }

    /**
     * The rectangles that may fit beside the chosen ones about some cell of a block. The places about which a
     * rectangle overlaps a chosen one are a convex region: if it holds the block's corners, it holds the block.
     */
    private BitSet liveShapes(Window centres) {
        List<Footprint> footprints = shapes.at(centres.col(), centres.row()).footprints();
        BitSet live = new BitSet();
        live.set(0, footprints.size());
        if (shapes.patchSide() % RectangleBlocks.SIDE == 0) {
            for (int shape = 0; shape < footprints.size(); shape++) {
                List<PlacedRectangle> atCorners = new ArrayList<>();
                for (int row : new int[] {centres.row(), centres.endRow() - 1}) {
                    for (int col : new int[] {centres.col(), centres.endCol() - 1}) {
                        atCorners.add(PlacedRectangle.of(footprints.get(shape), source.grid().centreX(col), source.grid().centreY(row)));
                    }
                }
                live.set(shape, chosen.stream().noneMatch(c -> atCorners.stream().allMatch(c::overlaps)));
            }
        }
        return live;
    }
}
