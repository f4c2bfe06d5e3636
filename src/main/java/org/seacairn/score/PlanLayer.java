package org.seacairn.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * A vector layer of a plan and what the plan wants of it.
 *
 * @param nameAttribute attribute with the features' names, or empty
 * @param positionUncertaintyM of its features, 95 %
 * @param reachM how far from the grid a feature still matters, uncertainties left aside
 */
public record PlanLayer(
        Role role, LayerFile source, Optional<String> nameAttribute, double positionUncertaintyM, double reachM) {

    /** What a layer is to a plan. */
    public enum Role {
        BOTTOM(true), REEFS(false), INSIDE(true), DEPTH_AREAS(true), KEEP_OFF(false), COVERAGE(true);

        private final boolean areas;

        Role(boolean areas) {
            this.areas = areas;
        }

        /** Whether its polygons say what lies in them: other geometries mean nothing then. */
        public boolean areas() {
            return areas;
        }
    }

    /** Every vector layer of a plan: bottom, reefs, permit areas, charted depth areas, and the keep-off layers in their order, each before its coverage. */
    static List<PlanLayer> of(SitingPlan plan) {
        List<PlanLayer> layers = new ArrayList<>();
        plan.bottom().ifPresent(b -> layers.add(new PlanLayer(Role.BOTTOM, b.source(), Optional.empty(), 0, 0)));
        plan.reefs().ifPresent(r -> layers.add(new PlanLayer(Role.REEFS, r.source(), r.nameAttribute(),
                r.positionUncertaintyM(), Math.max(r.keepOffM(), WorkingLayers.spacingReachM(plan)))));
        plan.inside().ifPresent(i -> layers.add(new PlanLayer(Role.INSIDE, i, Optional.empty(), 0, 0)));
        plan.depthAreas().ifPresent(d -> layers.add(new PlanLayer(Role.DEPTH_AREAS, d.source(), Optional.empty(), 0, 0)));
        plan.keepOff().forEach(k -> {
            layers.add(new PlanLayer(Role.KEEP_OFF, k.source(), k.nameAttribute(),
                    k.positionUncertaintyM(), Math.max(k.distanceM(), k.comfortableM().orElse(0))));
            k.coverage().ifPresent(c -> layers.add(new PlanLayer(Role.COVERAGE, c, Optional.empty(), 0, 0)));
        });
        return List.copyOf(layers);
    }
}
