package org.seacairn.score;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.TopologyException;
import org.seacairn.InputException;
import org.seacairn.criterion.BottomCriterion;
import org.seacairn.criterion.WorkingLayer;
import org.seacairn.geodesy.GeographicExtent;
import org.seacairn.layer.Feature;
import org.seacairn.layer.GeometryCheck;
import org.seacairn.layer.GeometryRepair;
import org.seacairn.layer.VectorLayer;
import org.seacairn.layer.VectorLayers;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Bottom;
import org.seacairn.score.LayerFacts.ClassCount;
import org.seacairn.score.PlanLayer.Role;

/** Reads vector layers one by one and keeps of each only what there is to tell of it. */
final class LayerFactsReader {
    private static final int AREAS_TOLD = 5;

    private final SitingPlan plan;
    private final Optional<WorkingDepth> depth;

    /** @param depth the working grid, or empty if there can be none: nothing is told of overlap then */
    LayerFactsReader(SitingPlan plan, Optional<WorkingDepth> depth) {
        this.plan = plan;
        this.depth = depth;
    }

    /** @throws InputException if the layer cannot be read */
    LayerFacts read(PlanLayer planned) {
        GeometryRepair.Repaired asPlanned = GeometryRepair.asPlanned(planned.source(), VectorLayers.read(planned.source()));
        VectorLayer layer = asPlanned.layer();
        List<GeometryCheck.Finding> invalid = GeometryCheck.of(layer);
        Optional<Bottom> bottom = planned.role() == Role.BOTTOM ? plan.bottom() : Optional.empty();
        List<ClassCount> classes = bottom.map(b -> classes(b, layer)).orElse(List.of());
        List<String> warnings = new ArrayList<>(asPlanned.repairs());
        warnings.addAll(new LayerDoubts(planned, layer).warnings(invalid, bottom, classes));
        Optional<Envelope> lonLat = GeographicExtent.ofVertices(
                layer.features().stream().map(Feature::geometry).toList(), layer.crs());
        if (lonLat.isEmpty() && !isOutsideDomain(invalid)) {
            warnings.add("its coordinates are no places of its CRS, " + layer.crs().label()
                    + "; check the CRS that the file or the plan states");
        }
        Optional<GridOverlap> overlap = depth.flatMap(d -> overlap(planned, layer, lonLat.isPresent(), d, warnings));
        Optional<ChartComparison> chart = planned.role() == Role.DEPTH_AREAS && overlap.isPresent()
                ? chart(layer, depth.orElseThrow(), warnings) : Optional.empty();
        return new LayerFacts(planned, layer.format(), layer.crs(), layer.features().size(),
                layer.featuresWithoutGeometry(), kinds(layer), attributes(layer), extent(layer), lonLat, classes,
                invalid, overlap, chart, layer.notes(), List.copyOf(warnings));
    }

    private static boolean isOutsideDomain(List<GeometryCheck.Finding> invalid) {
        return invalid.stream().anyMatch(finding -> finding.code().equals(GeometryCheck.OUTSIDE_DOMAIN));
    }

    private Optional<GridOverlap> overlap(PlanLayer planned, VectorLayer layer, boolean onGlobe,
            WorkingDepth working, List<String> warnings) {
        try {
            if (!onGlobe) {
                MistakenAxes.look(layer, working.grid()).ifPresent(warnings::add);
                return Optional.empty();
            }
            WorkingLayer onGrid = WorkingLayer.of(layer, working.grid(), 0);
            GridOverlap overlap = GridOverlap.of(onGrid, working.grid());
            if (overlap.onGrid() == 0) {
                warnings.addAll(offGrid(planned, layer, overlap, working));
            } else if (planned.role() == Role.INSIDE) {
                warnings.addAll(barren(onGrid, working));
            }
            return Optional.of(overlap);
        } catch (InputException e) {
            warnings.addAll(e.problems());
        } catch (TopologyException e) {
            warnings.add("how it lies to the working grid cannot be told while geometries are invalid");
        }
        return Optional.empty();
    }

    private Optional<ChartComparison> chart(VectorLayer layer, WorkingDepth working, List<String> warnings) {
        try {
            ChartComparison chart = ChartComparison.of(plan, WorkingLayer.of(layer, working.grid(), 0), working);
            warnings.addAll(chart.warnings());
            return Optional.of(chart);
        } catch (InputException e) {
            e.problems().forEach(problem -> warnings.add(problem + "; no run takes the layer until this is corrected"));
            return Optional.empty();
        }
    }

    private static List<String> offGrid(PlanLayer planned, VectorLayer layer, GridOverlap overlap, WorkingDepth working) {
        Optional<String> mistake = MistakenAxes.look(layer, working.grid());
        if (mistake.isPresent()) {
            return List.of(mistake.get());
        }
        return overlap.nearestM().orElseThrow() <= planned.reachM() ? List.of() : List.of("no feature "
                + (planned.role().areas() ? "meets the working grid, and no run takes the layer so"
                        : "comes near enough to the working grid to matter")
                + "; if that is unexpected, check the file and its CRS, " + layer.crs().label());
    }

    private List<String> barren(WorkingLayer areas, WorkingDepth working) {
        List<Feature> barren = new BarrenAreas(working, plan.limits()).among(areas);
        return barren.isEmpty() ? List.of() : List.of("no depth within the plan's limits lies in "
                + (barren.size() == 1 ? "feature " : "features ")
                + String.join(", ", barren.stream().limit(AREAS_TOLD).map(f -> Long.toString(f.id())).toList())
                + (barren.size() > AREAS_TOLD ? " and " + (barren.size() - AREAS_TOLD) + " more" : ""));
    }

    private static Map<String, Integer> kinds(VectorLayer layer) {
        Map<String, Integer> kinds = new TreeMap<>();
        layer.features().forEach(f -> kinds.merge(f.geometry().getGeometryType(), 1, Integer::sum));
        return kinds;
    }

    static List<String> attributes(VectorLayer layer) {
        Set<String> names = new LinkedHashSet<>();
        layer.features().forEach(f -> names.addAll(f.attributes().keySet()));
        return List.copyOf(names);
    }

    private static Envelope extent(VectorLayer layer) {
        Envelope extent = new Envelope();
        layer.features().forEach(f -> extent.expandToInclude(f.geometry().getEnvelopeInternal()));
        return extent;
    }

    private static List<ClassCount> classes(Bottom bottom, VectorLayer layer) {
        Map<String, Integer> polygons = new TreeMap<>();
        layer.features().stream().filter(f -> f.geometry().getDimension() == 2)
                .forEach(f -> polygons.merge(BottomCriterion.className(bottom, f.attributes()), 1, Integer::sum));
        List<ClassCount> counts = new ArrayList<>();
        polygons.forEach((name, count) -> counts.add(new ClassCount(name, count,
                bottom.classes().stream().filter(c -> c.name().equals(name)).findFirst())));
        bottom.classes().stream().filter(c -> !polygons.containsKey(c.name()))
                .forEach(c -> counts.add(new ClassCount(c.name(), 0, Optional.of(c))));
        return List.copyOf(counts);
    }
}
