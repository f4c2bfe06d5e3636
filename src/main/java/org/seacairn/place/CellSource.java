package org.seacairn.place;

import java.util.Optional;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.Window;
import org.seacairn.score.ScoreEngine;

/** What the search for areas reads of the working grid. Safe for several threads at once. */
interface CellSource {
    GridGeometry grid();

    /** Scores of a window on the grid, NaN where a reason stands. */
    float[] score(Window window);

    /** Depths of any window, positive down, NaN for none. */
    float[] depth(Window window);

    /** Depths of any window less their vertical uncertainty (95 %), NaN where either is not known. */
    double[] sureDepth(Window window);

    /** Bottom classes of a window on the grid, empty text where none is mapped; empty without a bottom layer. */
    Optional<String[]> bottom(Window window);

    static CellSource of(ScoreEngine engine) {
        return new CellSource() {
            @Override
            public GridGeometry grid() {
                return engine.grid();
            }

            @Override
            public float[] score(Window window) {
                return engine.score(window).score();
            }

            @Override
            public float[] depth(Window window) {
                return engine.depth(window);
            }

            @Override
            public double[] sureDepth(Window window) {
                return engine.sureDepth(window);
            }

            @Override
            public Optional<String[]> bottom(Window window) {
                return engine.bottom(window);
            }
        };
    }
}
