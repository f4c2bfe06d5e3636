package org.seacairn.criterion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.seacairn.drop.LandingRadius;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.PatchFrames;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.KeepOff;

/**
 * Clearance to the keep-off layers: each rules out what is nearer than its required distance; its
 * suitability rises linearly from 0 there to 1 at the comfortable distance (1 throughout where the
 * plan states none), and the criterion is the least over the layers.
 */
public final class ClearanceCriterion implements Criterion {
    private final List<KeepOffRule> rules = new ArrayList<>();
    private final double[] comfortableM;

    /** @param working the plan's keep-off layers, in its order */
    public ClearanceCriterion(SitingPlan plan, LandingRadius landing, List<WorkingLayer> working, GridGeometry grid,
            Reasons reasons) {
        this.comfortableM = new double[working.size()];
        for (int i = 0; i < working.size(); i++) {
            KeepOff layer = plan.keepOff().get(i);
            comfortableM[i] = layer.comfortableM().orElse(0);
            rules.add(new KeepOffRule(working.get(i).distanceField(grid),
                    new RequiredDistance(plan, landing, layer.distanceM(), layer.positionUncertaintyM()),
                    comfortableM[i], null, reasons.bit(Reasons.keepOff(layer.source().label()))));
        }
    }

    @Override
    public void rule(Tile tile, int[] reasons) {
        rules.forEach(rule -> rule.rule(tile, reasons));
    }

    @Override
    public void suitability(Tile tile, int[] cells, int count, double[] into) {
        Arrays.fill(into, 0, count, 1);
        float[] depth = tile.depth();
        for (int l = 0; l < rules.size(); l++) {
            float[] distance = rules.get(l).distances(tile);
            for (int i = 0; i < count; i++) {
                double d = distance[cells[i]];
                if (d < comfortableM[l]) {
                    double required = rules.get(l).required().atDepth(depth[cells[i]]);
                    into[i] = Math.min(into[i], Math.max(0, (d - required) / (comfortableM[l] - required)));
                }
            }
        }
    }

    /** Distance of one cell to each layer in metres, in the plan's order; infinite beyond reach. */
    public double[] distancesM(int col, int row, PatchFrames frames) {
        return rules.stream().mapToDouble(rule -> rule.exactM(col, row, frames)).toArray();
    }
}
