package org.seacairn.criterion;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.seacairn.InputException;
import org.seacairn.layer.Feature;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan.DepthAreas;
import org.seacairn.plan.Suggestion;

/**
 * What a charted depth area says of the water in it: nowhere shoaler than one depth, nowhere deeper than another. An area that
 * leaves out one end says nothing of it, and one that leaves out both says nothing at all.
 *
 * <p>A depth area is no survey. Its contours are drawn from soundings, and moved towards the deep side where the scale asks for it, so
 * that the water in it may be deeper near a contour, and should not be shoaler (IHO S-4, from memory; attributes of DEPARE: S-57
 * appendix B.1).
 *
 * @param shallowM its shallow end, positive down, negative where it dries; NaN where it is not known
 * @param deepM its deep end; NaN where it is not known
 */
public record ChartedDepth(double shallowM, double deepM) {
    /**
     * Where areas overlap, the first of them counts: that with the shoalest shallow end (its deep end where that is all it
     * states), of equal ones that with the shoalest deep end.
     */
    public static final Comparator<ChartedDepth> SHOALEST_FIRST = Comparator.comparingDouble(ChartedDepth::leadingM)
            .thenComparingDouble(ChartedDepth::deepM);

    private static final String NUMBER = "[+-]?[0-9]{1,15}(\\.[0-9]{0,15})?";

    /** A depth area and its depth. */
    public record Area(Feature feature, ChartedDepth depth) {}

    public ChartedDepth {
        if (Double.isNaN(shallowM) && Double.isNaN(deepM) || shallowM > deepM) {
            throw new IllegalArgumentException(shallowM + " to " + deepM);
        }
    }

    /**
     * The areas of a layer that state a depth, in its order; what is no polygon is passed over.
     *
     * @throws InputException if an end is no number, the shallow end is the deeper one, or the layer does not have the attributes
     */
    public static List<Area> of(DepthAreas plan, List<Feature> features) {
        List<Feature> polygons = features.stream().filter(f -> f.geometry().getDimension() == 2).toList();
        requireAttributes(plan, polygons);
        List<Area> areas = new ArrayList<>();
        List<String> problems = new ArrayList<>();
        for (Feature feature : polygons) {
            try {
                of(plan, feature).ifPresent(depth -> areas.add(new Area(feature, depth)));
            } catch (InputException e) {
                problems.addAll(e.problems());
            }
        }
        if (!problems.isEmpty()) {
            throw new InputException(problems.get(0)
                    + (problems.size() == 1 ? "" : " (and " + (problems.size() - 1) + " more polygons are not right)"));
        }
        return List.copyOf(areas);
    }

    private static Optional<ChartedDepth> of(DepthAreas plan, Feature feature) {
        double shallow = end(plan, feature, plan.shallowAttribute());
        double deep = end(plan, feature, plan.deepAttribute());
        if (shallow > deep) {
            throw problem(plan, feature, plan.shallowAttribute() + " is " + Shown.number(shallow) + " and " + plan.deepAttribute() + " is "
                    + Shown.number(deep) + ", so its shallow end is the deeper one; correct it, or swap shallow and deep in the plan");
        }
        return Double.isNaN(shallow) && Double.isNaN(deep) ? Optional.empty()
                : Optional.of(new ChartedDepth(shallow * plan.metresPerUnit(), deep * plan.metresPerUnit()));
    }

    /** NaN where the feature does not state it. Formats without numbers (KML, CSV) have it as text. */
    private static double end(DepthAreas plan, Feature feature, String attribute) {
        Object value = feature.attributes().get(attribute);
        if (value == null || value.toString().isBlank()) {
            return Double.NaN;
        }
        String text = value.toString().strip();
        double number = value instanceof Number n ? n.doubleValue() : text.matches(NUMBER) ? Double.parseDouble(text) : Double.NaN;
        if (!Double.isFinite(number)) {
            throw problem(plan, feature, attribute + " is " + Shown.quoted(text) + " and no depth; correct it, or leave it empty where it is not known");
        }
        return number;
    }

    private static InputException problem(DepthAreas plan, Feature feature, String text) {
        return new InputException(plan.source().file().getFileName() + ", feature " + feature.id() + ": " + text);
    }

    /** One end may be left out of a layer where the plan does not ask for it by another name. */
    private static void requireAttributes(DepthAreas plan, List<Feature> polygons) {
        List<String> known = polygons.stream().flatMap(f -> f.attributes().keySet().stream()).distinct().toList();
        boolean shallow = known.contains(plan.shallowAttribute());
        boolean deep = known.contains(plan.deepAttribute());
        boolean shallowMayMiss = deep && plan.shallowAttribute().equals(DepthAreas.USUAL_SHALLOW);
        boolean deepMayMiss = shallow && plan.deepAttribute().equals(DepthAreas.USUAL_DEEP);
        if (shallow && deep || shallow && deepMayMiss || deep && shallowMayMiss) {
            return;
        }
        String missing = shallow ? plan.deepAttribute() : plan.shallowAttribute();
        throw new InputException(plan.source().file().getFileName() + ", depth areas (line " + plan.source().line() + " of the plan): no polygon has the attribute "
                + Shown.quoted(missing) + "; " + (known.isEmpty() ? "they have no attributes at all"
                        : Suggestion.nearest(missing, known).map(near -> "did you mean \"" + near + "\"?")
                                .orElse("name the attributes with shallow: and deep:, from " + String.join(", ", known))));
    }

    private double leadingM() {
        return Double.isNaN(shallowM) ? deepM : shallowM;
    }

    /** How far a depth lies out of the range: below 0 shoaler than it, above 0 deeper, 0 within or where the end is not known. */
    public double missM(double depthM) {
        return depthM < shallowM ? depthM - shallowM : depthM > deepM ? depthM - deepM : 0;
    }

    /** The range as people read it, such as {@code 50 to 100 m}. */
    @Override
    public String toString() {
        return Double.isNaN(deepM) ? Shown.metres(shallowM) + " or more" : Double.isNaN(shallowM) ? Shown.metres(deepM) + " or less"
                : Shown.number(shallowM) + " to " + Shown.metres(deepM);
    }
}
