package org.seacairn.score;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.layer.Feature;
import org.seacairn.layer.GeometryCheck;
import org.seacairn.layer.PointLattice;
import org.seacairn.layer.VectorLayer;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan.Bottom;
import org.seacairn.score.LayerFacts.ClassCount;
import org.seacairn.score.PlanLayer.Role;

/** What a careful reader doubts about a vector layer as it stands, the working grid left aside. */
final class LayerDoubts {
    private static final int PLACES_TOLD = 3;
    private static final int ATTRIBUTES_TOLD = 12;
    /** Rounding that moves a point by less than this is the usual precision of chart plotters and charts. */
    private static final double USUAL_ROUNDING_M = 5;

    private final PlanLayer planned;
    private final VectorLayer layer;
    private final List<String> attributes;
    private final List<String> warnings = new ArrayList<>();

    LayerDoubts(PlanLayer planned, VectorLayer layer) {
        this.planned = planned;
        this.layer = layer;
        this.attributes = LayerFactsReader.attributes(layer);
    }

    List<String> warnings(List<GeometryCheck.Finding> invalid, Optional<Bottom> bottom, List<ClassCount> classes) {
        if (layer.featuresWithoutGeometry() > 0) {
            warnings.add(layer.featuresWithoutGeometry() + " of " + (layer.features().size() + layer.featuresWithoutGeometry())
                    + " records have no geometry and are left out"
                    + (planned.role().areas() ? "" : "; nothing is kept clear of them"));
        }
        for (GeometryCheck.Finding finding : invalid) {
            warnings.add(finding.message() + (finding.fatal() ? "; no run takes the layer until this is corrected" : ""));
        }
        if (planned.role().areas()) {
            notAreas();
        }
        planned.nameAttribute().ifPresent(this::names);
        bottom.ifPresent(b -> classes(b, classes));
        if (planned.role() == Role.REEFS) {
            duplicates();
        }
        PointLattice.of(layer).ifPresent(this::lattice);
        return List.copyOf(warnings);
    }

    private void notAreas() {
        long others = layer.features().stream().filter(f -> f.geometry().getDimension() != 2).count();
        if (others > 0) {
            warnings.add(others + " of " + layer.features().size() + " features are no polygons and say nothing of any cell");
        }
    }

    private void names(String attribute) {
        if (isMissing("name", attribute, "")) {
            return;
        }
        long unnamed = layer.features().stream().map(f -> f.attributes().get(attribute))
                .filter(name -> name == null || name.toString().isBlank()).count();
        if (unnamed > 0) {
            warnings.add(unnamed + " of " + layer.features().size() + " features have an empty name (" + Shown.quoted(attribute)
                    + "); they go by their number in the file");
        }
    }

    private boolean isMissing(String key, String attribute, String effect) {
        if (attributes.contains(attribute)) {
            return false;
        }
        warnings.add("no feature has the attribute " + Shown.quoted(attribute) + " that the plan names as its " + key
                + effect + "; " + choice(attribute));
        return true;
    }

    private String choice(String attribute) {
        Optional<String> sameLetters = attributes.stream().filter(a -> a.equalsIgnoreCase(attribute)).findFirst();
        if (sameLetters.isPresent()) {
            return "write " + Shown.quoted(sameLetters.get());
        }
        int more = attributes.size() - ATTRIBUTES_TOLD;
        return attributes.isEmpty() ? "the file has no attributes"
                : "the file has " + attributes.stream().limit(ATTRIBUTES_TOLD).map(Shown::quoted).collect(Collectors.joining(", "))
                        + (more > 0 ? " and " + more + " more" : "");
    }

    private void classes(Bottom bottom, List<ClassCount> classes) {
        if (isMissing("class", bottom.classAttribute(), ", so every polygon counts as unmapped")) {
            return;
        }
        for (ClassCount c : classes) {
            if (c.name().isEmpty()) {
                warnings.add(polygons(c) + " without a class (" + Shown.quoted(bottom.classAttribute())
                        + " is empty) count as unmapped");
            } else if (c.planned().isEmpty()) {
                warnings.add("the plan does not name the class " + Shown.quoted(c.name()) + " of " + polygons(c)
                        + spelling(c.name(), bottom) + "; no run takes it on the grid until the plan does");
            } else if (c.polygons() == 0) {
                warnings.add("no polygon has the class " + Shown.quoted(c.name()) + " that the plan names");
            }
        }
    }

    private static String polygons(ClassCount c) {
        return c.polygons() + (c.polygons() == 1 ? " polygon" : " polygons");
    }

    private static String spelling(String met, Bottom bottom) {
        return bottom.classes().stream().filter(c -> plain(c.name()).equals(plain(met))).findFirst()
                .map(c -> " (it does name " + Shown.quoted(c.name()) + ")").orElse("");
    }

    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
    }

    private void duplicates() {
        Map<List<Long>, Feature> firsts = new HashMap<>();
        List<String> pairs = new ArrayList<>();
        for (Feature feature : layer.features()) {
            Feature first = firsts.putIfAbsent(place(feature.geometry()), feature);
            if (first != null) {
                pairs.add(name(first) + " and " + name(feature));
            }
        }
        if (!pairs.isEmpty()) {
            warnings.add("the same place stands more than once: "
                    + String.join("; ", pairs.subList(0, Math.min(PLACES_TOLD, pairs.size())))
                    + (pairs.size() > PLACES_TOLD ? "; and " + (pairs.size() - PLACES_TOLD) + " more" : ""));
        }
    }

    /** The vertices to about 0.1 m, which is the same place however it was written. */
    private List<Long> place(Geometry geometry) {
        double step = layer.crs().isGeographic() ? 1e-6 : 0.1 / layer.crs().metresPerUnit();
        return Stream.of(geometry.norm().getCoordinates())
                .flatMap(c -> Stream.of(Math.round(c.x / step), Math.round(c.y / step))).toList();
    }

    private String name(Feature feature) {
        Object name = planned.nameAttribute().map(feature.attributes()::get).orElse(null);
        return "feature " + feature.id() + (name == null || name.toString().isBlank() ? "" : " " + Shown.quoted(name.toString()));
    }

    private void lattice(PointLattice lattice) {
        if (lattice.roundingM() > Math.max(USUAL_ROUNDING_M, planned.positionUncertaintyM())) {
            warnings.add("all coordinates are rounded to " + lattice.step() + ", which moves a place by up to "
                    + Shown.metres(Math.round(lattice.roundingM())) + " each way; find the full coordinates, or state a"
                    + " position-uncertainty that covers it");
        }
    }
}
