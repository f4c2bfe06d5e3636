package org.seacairn.place;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.seacairn.score.ScoreEngine;
import org.seacairn.score.ScoreRun;
import org.seacairn.score.ScoredWindow;

/**
 * Finds the rectangles with the highest mean score: rides on one {@link ScoreRun} over the grid, then
 * chooses.
 *
 * <p>Tried are, about the centre of every cell, all asked sizes in all asked turns that lie wholly on
 * the grid and in which no more than the stated share of cells is ruled out. Of these each area is the
 * best that overlaps none before it and is accepted: highest mean score over its scored cells first, ties
 * the more northern centre, then the more western, then the earlier size, then the lesser turn. That
 * choice is exact; rectangles about other places or in other turns are not tried. The same for any
 * number of threads.
 *
 * <p>Memory: the rows of scores that a rectangle spans, and 11 bytes for every 256 cells of the grid.
 */
public final class AreaScan implements ScoreRun.Sink<ScoredWindow>, AutoCloseable {
    private final CellSource source;
    private final AreaRequest request;
    private final Shapes shapes;
    private final RectangleBlocks blocks;
    private final RectanglePass pass;

    /**
     * @param threads at least 1
     * @throws org.seacairn.InputException if a size does not fit on the grid, or has too many cells
     */
    public AreaScan(ScoreEngine engine, AreaRequest request, int threads) {
        this(CellSource.of(engine), request, threads);
    }

    AreaScan(CellSource source, AreaRequest request, int threads) {
        this.source = source;
        this.request = request;
        this.shapes = new Shapes(source.grid(), request);
        this.blocks = new RectangleBlocks(source.grid(), request.blemish());
        this.pass = new RectanglePass(source, request, shapes, blocks, threads);
    }

    @Override
    public ScoredWindow encode(ScoredWindow tile) {
        return tile;
    }

    @Override
    public void write(ScoredWindow tile) {
        pass.take(tile.window(), tile.score());
    }

    /**
     * The ranked areas, best first, up to the asked count. To be asked once, after the whole grid was taken.
     *
     * @param accept asked in the order of rank; where it refuses an area, the next best takes its place
     */
    public List<Area> choose(Predicate<Area> accept) {
        AreaFacts facts = new AreaFacts(source, request, shapes);
        List<Area> areas = new ArrayList<>();
        new RectangleChoice(source, request, shapes, blocks).choose(rectangle -> {
            Area area = facts.of(rectangle);
            boolean accepted = accept.test(area);
            if (accepted) {
                areas.add(area);
            }
            return accepted;
        });
        return List.copyOf(areas);
    }

    /**
     * How many modules fit into an area. They stand on scored cells anywhere in it or on its edge.
     *
     * @param apartM least distance between modules, above 0
     */
    public Packing capacity(Area area, double apartM) {
        return Packing.of(area.size(), apartM, new AreaFacts(source, request, shapes).ground(area));
    }

    @Override
    public void close() {
        pass.close();
    }
}
