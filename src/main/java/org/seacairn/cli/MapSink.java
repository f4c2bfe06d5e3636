package org.seacairn.cli;

import org.seacairn.Progress;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;
import org.seacairn.report.ReducedRasters;
import org.seacairn.report.ReducedRastersBuilder;
import org.seacairn.score.ScoreRun;
import org.seacairn.score.ScoredWindow;
import org.seacairn.score.WorkingDepth;

/** Reduces scored tiles for the report's map on their way to another sink. */
final class MapSink<T> implements ScoreRun.Sink<T> {
    private final ReducedRastersBuilder reduced;
    private final ScoreRun.Sink<T> next;

    MapSink(GridGeometry grid, ScoreRun.Sink<T> next) {
        this.reduced = new ReducedRastersBuilder(grid, true);
        this.next = next;
    }

    /** Of a run that scores no tiles: the whole grid's depths are read for it. */
    static ReducedRasters ofDepth(WorkingDepth depth, int threads, Progress progress) {
        return ofDepth(depth, depth.grid().whole(), threads, progress);
    }

    /** The depths of a part of the grid, at a resolution that suits it. */
    static ReducedRasters ofDepth(WorkingDepth depth, Window part, int threads, Progress progress) {
        GridGeometry grid = depth.grid();
        GridGeometry shown = new GridGeometry(grid.crs(), grid.west() + part.col() * grid.cellM(), grid.north() - part.row() * grid.cellM(),
                grid.cellM(), part.cols(), part.rows());
        return ReducedRasters.ofDepth(shown, (col, row, cols, rows, into) ->
                depth.read(new Window(part.col() + col, part.row() + row, cols, rows), into), threads, progress);
    }

    @Override
    public T encode(ScoredWindow tile) {
        reduced.take(tile.window(), tile.depth(), tile.score(), tile.reasons());
        return next.encode(tile);
    }

    @Override
    public void write(T encoded) {
        next.write(encoded);
    }

    ReducedRasters rasters() {
        return reduced.build();
    }
}
