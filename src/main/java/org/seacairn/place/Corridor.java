package org.seacairn.place;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.Progress;
import org.seacairn.criterion.Reasons;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.GroundScale;
import org.seacairn.grid.DistanceField;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.PatchFrames;
import org.seacairn.grid.Window;
import org.seacairn.score.ScoreEngine;
import org.seacairn.score.ScoredWindow;

/**
 * The cells about an axis, with their scores.
 *
 * <p>A cell belongs to the corridor if its centre lies within the half-width of the axis, on the ground,
 * and abreast of it: neither before its start nor beyond its end. Only these cells are kept. Immutable;
 * safe for several threads at once.
 */
public final class Corridor {
    private static final int TILE = 128;
    private static final int MOST_TILE = 1024;

    private final GridGeometry grid;
    private final Axis axis;
    private final double halfWidthM;
    private final CorridorCells cells;
    private final float[] score;
    private final int[] reasons;
    private final PatchFrames frames;
    private final CoordinateTransform toLonLat;

    private Corridor(GridGeometry grid, Axis axis, double halfWidthM, CorridorCells cells, float[] score, int[] reasons) {
        this.grid = grid;
        this.axis = axis;
        this.halfWidthM = halfWidthM;
        this.cells = cells;
        this.score = score;
        this.reasons = reasons;
        this.frames = new PatchFrames(grid);
        this.toLonLat = grid.crs().to(grid.crs().geographic());
    }

    /**
     * Scores the corridor, tile by tile.
     *
     * @param halfWidthM on the ground, to each side of the axis
     * @param threads at least 1; the result is the same for any number
     * @param progress counts cells
     * @throws org.seacairn.InputException if the corridor has more cells than can be told apart
     */
    public static Corridor of(ScoreEngine engine, Axis axis, double halfWidthM, int threads, Progress progress) {
        int side = TILE;
        while (side < MOST_TILE && side < 4 * engine.halo()) {
            side *= 2;
        }
        progress.expect(0, "cells");
        return of(engine.grid(), axis, halfWidthM, side, threads, window -> {
            ScoredWindow scored = engine.score(window);
            progress.done(window.cells());
            return scored;
        }, engine.reasons().bit(Reasons.NO_DEPTH));
    }

    /** As above, with any way to score a window of the grid. */
    static Corridor of(GridGeometry grid, Axis axis, double halfWidthM, int tileSide, int threads,
            Function<Window, ScoredWindow> scores, int noDepth) {
        CorridorCells cells = CorridorCells.about(axis, halfWidthM, grid);
        float[] score = new float[cells.slots()];
        int[] reasons = new int[cells.slots()];
        Arrays.fill(score, Float.NaN);
        Arrays.fill(reasons, noDepth);
        List<Window> tiles = cells.tiles(tileSide, grid);
        try (Chunks chunks = new Chunks(threads)) {
            chunks.run(tiles.size(), t -> {
                ScoredWindow scored = scores.apply(tiles.get(t));
                cells.forEach(tiles.get(t), (slot, i) -> {
                    score[slot] = scored.score()[i];
                    reasons[slot] = scored.reasons()[i];
                });
            });
        }
        return new Corridor(grid, axis, halfWidthM, cells, score, reasons);
    }

    /**
     * This corridor without the cells that stand nearer than {@code apartM} to modules placed already, such as
     * those of an earlier leg. Such a cell has neither a score nor a reason.
     */
    public Corridor clearOf(List<Pick> placed, double apartM) {
        float[] left = score.clone();
        GroundScale scale = new GroundScale(grid.crs());
        for (Pick module : placed) {
            GroundScale.Frame frame = scale.at(module.x(), module.y());
            int reach = (int) Math.ceil(apartM * (1 + 2 * scale.scaleError(module.x(), module.y())) / grid.cellM()) + 1;
            Window about = new Window(module.col() - reach, module.row() - reach, 2 * reach + 1, 2 * reach + 1);
            cells.forEach(about, (slot, i) -> {
                double x = grid.centreX(about.col() + i % about.cols());
                double y = grid.centreY(about.row() + i / about.cols());
                if (frame.lengthM(module.x(), module.y(), x, y) < apartM + OffsetRuns.marginM(apartM)) {
                    left[slot] = Float.NaN;
                }
            });
        }
        return new Corridor(grid, axis, halfWidthM, cells, left, reasons);
    }

    /** By slot, whether the cell has a score and its distance to a stone keeps within limits on the ground. */
    boolean[] within(Stone stone, double leastM, double mostM, Chunks chunks) {
        double least = leastM + OffsetRuns.marginM(mostM);
        double most = mostM - OffsetRuns.marginM(mostM);
        DistanceField field = new DistanceField(grid, List.of(stone.onMap()));
        boolean[] within = new boolean[cells.slots()];
        List<Window> tiles = cells.tiles(TILE, grid);
        chunks.run(tiles.size(), t -> {
            Window tile = tiles.get(t);
            float[] distance = new float[tile.cells()];
            field.fill(tile, frames.over(tile), mostM, (low, high) -> high < least || low > most, distance);
            cells.forEach(tile, (slot, i) -> within[slot] = !Float.isNaN(score[slot]) && distance[i] >= least && distance[i] <= most);
        });
        return within;
    }

    public GridGeometry grid() {
        return grid;
    }

    public Axis axis() {
        return axis;
    }

    /** Metres on the ground to each side of the axis. */
    public double halfWidthM() {
        return halfWidthM;
    }

    CorridorCells cells() {
        return cells;
    }

    /** By slot, 0..1; NaN where a reason stands, outside the corridor, and near what is placed already. */
    float[] score() {
        return score;
    }

    /** By slot, masks as those of {@link ScoredWindow}; off the grid counts as no depth. */
    int[] reasons() {
        return reasons;
    }

    /** How many cells have a score. */
    public int scoredCells() {
        int count = 0;
        for (float s : score) {
            count += Float.isNaN(s) ? 0 : 1;
        }
        return count;
    }

    int col(int slot) {
        int r = cells.rowOf(slot);
        return cells.firstCol()[r] + slot - cells.start()[r];
    }

    int row(int slot) {
        return cells.firstRow() + cells.rowOf(slot);
    }

    /** Metres along the axis. */
    double alongM(int slot) {
        return cells.alongMm()[slot] / 1000.0;
    }

    Pick pick(int slot) {
        double x = grid.centreX(col(slot));
        double y = grid.centreY(row(slot));
        Coordinate at = lonLat(new Coordinate(x, y));
        return new Pick(col(slot), row(slot), x, y, at.x, at.y, score[slot]);
    }

    /** Longitude and latitude of a place on the map, on the working CRS's own datum. */
    Coordinate lonLat(Coordinate onMap) {
        return toLonLat.apply(onMap.x, onMap.y);
    }

    PatchFrames frames() {
        return frames;
    }
}
