package org.seacairn.criterion;

import java.util.IdentityHashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.seacairn.grid.PatchFrames;
import org.seacairn.grid.Terrain;
import org.seacairn.grid.Window;

/**
 * One tile of the working grid while it is being scored. {@link #outer()} is the tile itself with the
 * border that landing room needs; every array here is over it. Belongs to one thread.
 */
public final class Tile {
    private final Window outer;
    private final Window terrainWindow;
    private final float[] terrainDepth;
    private final float[] depth;
    private final DepthUncertainty uncertainty;
    private final double deepestM;
    private final double cellM;
    private final PatchFrames frames;
    private final Map<Object, Object> computed = new IdentityHashMap<>();
    private PatchFrames.Over framesOver;
    private float[] slopeTangent;

    /**
     * @param outer the cells to work on
     * @param terrainHalo how many cells more than {@code outer} the depths reach on every side, 1 or more
     * @param terrainDepth depths in metres, positive down, over {@code outer.grown(terrainHalo)}; NaN
     *     for none
     * @param uncertainty of the depths over {@code outer}
     */
    public Tile(Window outer, int terrainHalo, float[] terrainDepth, DepthUncertainty uncertainty, double cellM, PatchFrames frames) {
        this.outer = outer;
        this.terrainWindow = outer.grown(terrainHalo);
        this.terrainDepth = terrainDepth;
        this.depth = inner(terrainDepth);
        this.uncertainty = uncertainty;
        this.deepestM = deepest(depth);
        this.cellM = cellM;
        this.frames = frames;
    }

    /** The cells worked on; may reach over the grid's edge, where there is no depth. */
    public Window outer() {
        return outer;
    }

    /** Depth in metres, positive down; NaN for none. */
    public float[] depth() {
        return depth;
    }

    /** Of the depths, by their index. */
    public DepthUncertainty uncertainty() {
        return uncertainty;
    }

    /** The deepest depth of the tile, or 0 where it has none. */
    public double deepestM() {
        return deepestM;
    }

    private static double deepest(float[] depth) {
        double deepest = 0;
        for (float d : depth) {
            if (d > deepest) {
                deepest = d;
            }
        }
        return deepest;
    }

    /** Tangent of the slope; NaN for none. */
    public float[] slopeTangent() {
        if (slopeTangent == null) {
            float[] wide = new float[terrainDepth.length];
            Terrain.slopeTangent(terrainDepth, terrainWindow.cols(), terrainWindow.rows(), cellM, wide);
            slopeTangent = inner(wide);
        }
        return slopeTangent;
    }

    /** Vector ruggedness over a window of an odd number of cells a side; NaN where there is no slope. */
    public float[] ruggedness(int side) {
        float[] wide = new float[terrainDepth.length];
        Terrain.ruggedness(terrainDepth, terrainWindow.cols(), terrainWindow.rows(), cellM, side, wide);
        return inner(wide);
    }

    /** Ground frames of the outer window. */
    public PatchFrames.Over frames() {
        if (framesOver == null) {
            framesOver = frames.over(outer);
        }
        return framesOver;
    }

    /** Something that its owner computes once for the tile and asks for again. */
    @SuppressWarnings("unchecked")
    public <T> T once(Object owner, Supplier<T> compute) {
        // An owner asks for one thing only, so what is found under it is of the type it asks for.
        T found = (T) computed.get(owner);
        if (found == null) {
            found = compute.get();
            computed.put(owner, found);
        }
        return found;
    }

    private float[] inner(float[] wide) {
        float[] inner = new float[outer.cells()];
        for (int r = 0; r < outer.rows(); r++) {
            System.arraycopy(wide, terrainWindow.index(outer.col(), outer.row() + r), inner, r * outer.cols(), outer.cols());
        }
        return inner;
    }
}
