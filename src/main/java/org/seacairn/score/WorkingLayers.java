package org.seacairn.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.seacairn.InputException;
import org.seacairn.criterion.ChartedDepth;
import org.seacairn.criterion.RequiredDistance;
import org.seacairn.criterion.WorkingLayer;
import org.seacairn.drop.LandingRadius;
import org.seacairn.grid.GridGeometry;
import org.seacairn.layer.GeometryCheck;
import org.seacairn.layer.GeometryRepair;
import org.seacairn.layer.VectorLayer;
import org.seacairn.layer.VectorLayers;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Criterion;
import org.seacairn.plan.SitingPlan.Curve;
import org.seacairn.plan.SitingPlan.DepthAreas;
import org.seacairn.plan.SitingPlan.KeepOff;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.plan.SitingPlan.Measure;

/**
 * A plan's vector layers, made ready for its working grid.
 *
 * @param keepOff in the plan's order
 * @param coverage of each keep-off layer what its survey or compilation covers, or empty: not stated
 * @param warnings what may be wrong, one line each
 * @param notes how the files were read, one line each
 */
public record WorkingLayers(
        Optional<WorkingLayer> bottom, Optional<WorkingLayer> reefs, Optional<WorkingLayer> inside, Optional<WorkingLayer> depthAreas,
        List<WorkingLayer> keepOff, List<Optional<WorkingLayer>> coverage, List<String> warnings, List<String> notes) {
    /** No survey is deeper; bounds an uncertainty that grows with depth. */
    private static final double DEEPEST_M = 12_000;

    /**
     * Reads and prepares every layer; problems of several layers are reported together.
     *
     * @throws InputException if a layer cannot be read, or crosses itself where it must hold an area, or
     *     the bottom, permit or depth areas lie wholly off the grid, or any layer does so by swapped coordinates,
     *     a missing sign or the wrong unit
     */
    public static WorkingLayers load(SitingPlan plan, GridGeometry grid) {
        LandingRadius landing = LandingRadius.of(plan);
        Loader loader = new Loader(grid);
        Optional<WorkingLayer> bottom = plan.bottom().flatMap(b -> loader.areas(b.source()));
        Optional<WorkingLayer> inside = plan.inside().flatMap(loader::areas);
        Optional<WorkingLayer> reefs = plan.reefs().flatMap(r -> loader.layer(r.source(),
                Math.max(spacingReachM(plan), new RequiredDistance(plan, landing, r.keepOffM(), r.positionUncertaintyM()).atDepth(DEEPEST_M))));
        Optional<WorkingLayer> depthAreas = plan.depthAreas().flatMap(d -> loader.depthAreas(d, landing));
        List<WorkingLayer> keepOff = new ArrayList<>();
        for (KeepOff rule : plan.keepOff()) {
            loader.layer(rule.source(), Math.max(rule.comfortableM().orElse(0),
                    new RequiredDistance(plan, landing, rule.distanceM(), rule.positionUncertaintyM()).atDepth(DEEPEST_M)))
                    .ifPresent(keepOff::add);
        }
        List<Optional<WorkingLayer>> coverage = plan.keepOff().stream()
                .map(rule -> rule.coverage().flatMap(loader::coverage)).toList();
        if (!loader.problems.isEmpty()) {
            throw new InputException(loader.problems);
        }
        return new WorkingLayers(bottom, reefs, inside, depthAreas, List.copyOf(keepOff), coverage,
                List.copyOf(loader.warnings), List.copyOf(loader.notes));
    }

    /** How far from a reef its distance still changes a score. */
    static double spacingReachM(SitingPlan plan) {
        return plan.criteria().stream().filter(c -> c.measure() == Measure.SPACING)
                .map(Criterion::curve).flatMap(Optional::stream).mapToDouble(Curve::d).findFirst().orElse(0);
    }

    private static final class Loader {
        private final GridGeometry grid;
        private final List<String> problems = new ArrayList<>();
        private final List<String> warnings = new ArrayList<>();
        private final List<String> notes = new ArrayList<>();

        Loader(GridGeometry grid) {
            this.grid = grid;
        }

        /** A layer whose polygons say what lies inside them: some must meet the grid. */
        Optional<WorkingLayer> areas(LayerFile source) {
            return areas(source, grid.cellM());
        }

        private Optional<WorkingLayer> areas(LayerFile source, double reachM) {
            return load(source, layer -> {
                requirePolygons(source, layer, ", only points or lines, which say nothing of the ground between; give polygons, or leave it out of the plan");
                WorkingLayer working = WorkingLayer.of(layer, grid, reachM);
                if (working.pieces().stream().noneMatch(p -> p.geometry().getDimension() == 2)) {
                    refuseIfMistaken(layer);
                    throw new InputException(source.file().getFileName() + ": no polygon of \"" + source.label()
                            + "\" meets the working grid; check the file and its CRS (" + layer.crs().label() + ")");
                }
                return working;
            });
        }

        private static void requirePolygons(LayerFile source, VectorLayer layer, String remedy) {
            if (layer.features().stream().noneMatch(f -> f.geometry().getDimension() == 2)) {
                throw new InputException(source.file().getFileName() + ": \"" + source.label() + "\" has no polygon" + remedy);
            }
        }

        /** Areas with a depth each, every one of which must make sense; a landing circle may reach for one off the grid. */
        Optional<WorkingLayer> depthAreas(DepthAreas plan, LandingRadius landing) {
            Optional<WorkingLayer> areas = areas(plan.source(), landing.largestM() + 2 * grid.cellM());
            try {
                areas.ifPresent(layer -> ChartedDepth.of(plan, layer.lonLat()));
            } catch (InputException e) {
                problems.addAll(e.problems());
            }
            return areas;
        }

        /** What a layer's survey covers; it may leave the grid out. */
        Optional<WorkingLayer> coverage(LayerFile source) {
            return load(source, layer -> {
                WorkingLayer working = WorkingLayer.of(layer, grid, grid.cellM());
                requirePolygons(source, layer, "; draw the extent of the survey as one, or leave coverage out");
                if (working.pieces().isEmpty()) {
                    refuseIfMistaken(layer);
                    warnings.add(source.file().getFileName() + ": \"" + source.label()
                            + "\" leaves the whole working grid out; if that is unexpected, check its CRS (" + layer.crs().label() + ")");
                }
                return working;
            });
        }

        Optional<WorkingLayer> layer(LayerFile source, double reachM) {
            return load(source, layer -> {
                WorkingLayer working = WorkingLayer.of(layer, grid, reachM);
                if (working.pieces().isEmpty()) {
                    refuseIfMistaken(layer);
                    warnings.add(source.file().getFileName() + ": no feature of \"" + source.label()
                            + "\" comes near the working grid; if that is unexpected, check its CRS (" + layer.crs().label() + ")");
                }
                return working;
            });
        }

        /** A layer away from the grid may be meant so; one that a usual mistake put there would go unheeded. */
        private void refuseIfMistaken(VectorLayer layer) {
            MistakenAxes.look(layer, grid)
                    .or(() -> GeometryCheck.of(layer).stream().map(GeometryCheck.Finding::message).findFirst())
                    .ifPresent(mistake -> {
                        throw new InputException(layer.file().getFileName() + ", layer \"" + layer.label() + "\": " + mistake);
                    });
        }

        private Optional<WorkingLayer> load(LayerFile source, Function<VectorLayer, WorkingLayer> prepare) {
            try {
                GeometryRepair.Repaired asPlanned = GeometryRepair.asPlanned(source, VectorLayers.read(source));
                asPlanned.repairs().forEach(repair -> warnings.add(source.file().getFileName() + ": " + repair));
                VectorLayer layer = asPlanned.layer();
                GeometryCheck.requireValid(layer);
                layer.notes().forEach(note -> notes.add(source.file().getFileName() + ": " + note));
                return Optional.of(prepare.apply(layer));
            } catch (InputException e) {
                problems.addAll(e.problems());
                return Optional.empty();
            }
        }
    }
}
