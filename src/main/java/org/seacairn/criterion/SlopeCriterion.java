package org.seacairn.criterion;

import java.util.OptionalDouble;
import org.seacairn.plan.SitingPlan.Curve;

/** Slope of the bottom in degrees (Horn 1981). */
public final class SlopeCriterion implements Criterion {
    private final double steepestTangent;
    private final Curve curve;
    private final int noTerrain;
    private final int tooSteep;

    /** @param curve may be null: slope is not scored */
    public SlopeCriterion(OptionalDouble steepestDeg, Reasons reasons, Curve curve) {
        this.steepestTangent = steepestDeg.isPresent()
                ? Math.tan(Math.toRadians(Math.min(90, steepestDeg.getAsDouble()))) : Double.POSITIVE_INFINITY;
        this.curve = curve;
        this.noTerrain = reasons.bit(Reasons.NO_TERRAIN);
        this.tooSteep = reasons.bit(Reasons.TOO_STEEP);
    }

    @Override
    public void rule(Tile tile, int[] reasons) {
        float[] tangent = tile.slopeTangent();
        float[] depth = tile.depth();
        for (int i = 0; i < tangent.length; i++) {
            float t = tangent[i];
            if (t > steepestTangent) {
                reasons[i] |= tooSteep;
            } else if (Float.isNaN(t) && !Float.isNaN(depth[i])) {
                reasons[i] |= noTerrain;
            }
        }
    }

    @Override
    public void suitability(Tile tile, int[] cells, int count, double[] into) {
        float[] tangent = tile.slopeTangent();
        for (int i = 0; i < count; i++) {
            into[i] = curve.at(degrees(tangent[cells[i]]));
        }
    }

    /** Degrees of a slope's tangent; NaN stays NaN. */
    public static double degrees(double tangent) {
        return Math.toDegrees(Math.atan(tangent));
    }
}
