package org.seacairn.criterion;

import org.seacairn.grid.DistanceField;
import org.seacairn.grid.PatchFrames;
import org.seacairn.grid.Window;
import org.seacairn.plan.SitingPlan.Curve;

/** One layer's distances, tile by tile, and the reason that it gives where a cell is too near. */
final class KeepOffRule {
    /**
     * How far a distance on the grid may be off: 1 mm, and 3 millionths for the map's strain. A cell this near the
     * requirement is ruled out, so that no check on the ellipsoid ever fails a cell that was let free; and distance
     * 0, inside a polygon, is too near whatever the requirement.
     */
    private static final double DOUBT_M = 1e-3;
    private static final double DOUBT_SHARE = 3e-6;

    private final DistanceField field;
    private final RequiredDistance required;
    private final double farM;
    private final Curve curve;
    private final int bit;

    /**
     * @param farM distances beyond this have the same effect
     * @param curve of the distance, whose level top need not be told apart; may be null
     */
    KeepOffRule(DistanceField field, RequiredDistance required, double farM, Curve curve, int bit) {
        this.field = field;
        this.required = required;
        this.farM = farM;
        this.curve = curve;
        this.bit = bit;
    }

    RequiredDistance required() {
        return required;
    }

    /** Distances over the tile's outer window, true where they matter (see {@link DistanceField#fill}). */
    float[] distances(Tile tile) {
        return field(tile).metres();
    }

    private Field field(Tile tile) {
        return tile.once(this, () -> {
            float[] into = new float[tile.outer().cells()];
            double least = doubtless(0);
            double most = doubtless(tile.deepestM());
            double far = Math.max(most, farM);
            double topFrom = curve == null ? Double.POSITIVE_INFINITY : Math.max(most, curve.b());
            double topTo = curve == null ? Double.NEGATIVE_INFINITY : curve.c();
            return new Field(into, field.fill(tile.outer(), tile.frames(), far,
                    (low, high) -> high < least || low >= far || low >= topFrom && high <= topTo, into));
        });
    }

    /** @param least of the distances */
    private record Field(float[] metres, float least) {}

    /** The distance of one cell, told apart from every other; infinite where nothing is within reach. */
    double exactM(int col, int row, PatchFrames frames) {
        Window cell = new Window(col, row, 1, 1);
        float[] into = new float[1];
        field.fill(cell, frames.over(cell), Double.POSITIVE_INFINITY, (low, high) -> false, into);
        return into[0];
    }

    void rule(Tile tile, int[] reasons) {
        Field found = field(tile);
        double most = doubtless(tile.deepestM());
        if (found.least >= most) {
            return;
        }
        float[] depth = tile.depth();
        float[] distance = found.metres;
        double least = doubtless(0);
        for (int i = 0; i < distance.length; i++) {
            float d = distance[i];
            if (d < most && (d < least || d < doubtless(depth[i]))) {
                reasons[i] |= bit;
            }
        }
    }

    /** A distance on the grid that is surely no less than required at a depth. */
    private double doubtless(double depthM) {
        return required.atDepth(depthM) * (1 + DOUBT_SHARE) + DOUBT_M;
    }
}
