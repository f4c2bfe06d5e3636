package org.seacairn.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.seacairn.InputException;
import org.seacairn.layer.Bathymetries;
import org.seacairn.layer.Bathymetry;
import org.seacairn.plan.SitingPlan;

/**
 * What the layers of a plan hold and what looks wrong with them, before anything is computed.
 *
 * @param grid the working grid, or empty if there can be none
 * @param bathymetry or empty if it cannot be read
 * @param layers the vector layers that can be read, in the plan's order
 * @param problems why the others cannot, one line each
 */
public record LayersReport(
        SitingPlan plan, Optional<GridFacts> grid, Optional<BathymetryFacts> bathymetry, List<LayerFacts> layers,
        List<String> problems) {

    /** Reads every layer of a plan; one that cannot be read becomes a problem and keeps no other back. */
    public static LayersReport of(SitingPlan plan) {
        List<String> problems = new ArrayList<>();
        Optional<WorkingDepth> depth = attempt(() -> WorkingDepth.open(plan), problems);
        try {
            Optional<BathymetryFacts> bathymetry = attempt(() -> depth.isPresent()
                    ? BathymetryFacts.of(plan, depth.get().bathymetry()) : bathymetryAlone(plan), problems);
            LayerFactsReader reader = new LayerFactsReader(plan, depth);
            List<LayerFacts> layers = new ArrayList<>();
            for (PlanLayer layer : PlanLayer.of(plan)) {
                attempt(() -> reader.read(layer), problems).ifPresent(layers::add);
            }
            return new LayersReport(plan, depth.map(d -> GridFacts.of(plan, d)), bathymetry, List.copyOf(layers),
                    List.copyOf(problems));
        } finally {
            depth.ifPresent(WorkingDepth::close);
        }
    }

    private static <T> Optional<T> attempt(Supplier<T> work, List<String> problems) {
        try {
            return Optional.of(work.get());
        } catch (InputException e) {
            e.problems().stream().filter(p -> !problems.contains(p)).forEach(problems::add);
            return Optional.empty();
        }
    }

    /** The file where no working grid can be made of it. */
    private static BathymetryFacts bathymetryAlone(SitingPlan plan) {
        try (Bathymetry file = Bathymetries.open(plan)) {
            return BathymetryFacts.of(plan, file);
        }
    }

    /** Every warning, the plan's own among them. */
    public int warningCount() {
        return plan.warnings().size() + grid.map(g -> g.warnings().size()).orElse(0)
                + bathymetry.map(b -> b.warnings().size()).orElse(0) + layers.stream().mapToInt(l -> l.warnings().size()).sum();
    }
}
