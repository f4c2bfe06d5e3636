package org.seacairn.criterion;

import java.util.OptionalDouble;
import org.seacairn.plan.SitingPlan.Curve;

/** Vector ruggedness (Sappington et al. 2007): rough ground is a sign of natural hard bottom. */
public final class RuggednessCriterion implements Criterion {
    private final double roughest;
    private final int windowCells;
    private final Curve curve;
    private final int noTerrain;
    private final int tooRough;

    /** @param curve may be null: ruggedness is not scored */
    public RuggednessCriterion(OptionalDouble roughest, int windowCells, Reasons reasons, Curve curve) {
        this.roughest = roughest.orElse(Double.POSITIVE_INFINITY);
        this.windowCells = windowCells;
        this.curve = curve;
        this.noTerrain = reasons.bit(Reasons.NO_TERRAIN);
        this.tooRough = reasons.bit(Reasons.TOO_ROUGH);
    }

    @Override
    public void rule(Tile tile, int[] reasons) {
        float[] ruggedness = ruggedness(tile);
        float[] depth = tile.depth();
        for (int i = 0; i < ruggedness.length; i++) {
            if (ruggedness[i] > roughest) {
                reasons[i] |= tooRough;
            } else if (Float.isNaN(ruggedness[i]) && !Float.isNaN(depth[i])) {
                reasons[i] |= noTerrain;
            }
        }
    }

    @Override
    public void suitability(Tile tile, int[] cells, int count, double[] into) {
        float[] ruggedness = ruggedness(tile);
        for (int i = 0; i < count; i++) {
            into[i] = curve.at(ruggedness[cells[i]]);
        }
    }

    private float[] ruggedness(Tile tile) {
        return tile.once(this, () -> tile.ruggedness(windowCells));
    }
}
