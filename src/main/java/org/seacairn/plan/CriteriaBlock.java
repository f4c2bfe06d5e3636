package org.seacairn.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.SitingPlan.Criterion;
import org.seacairn.plan.SitingPlan.Curve;
import org.seacairn.plan.SitingPlan.Measure;
import org.seacairn.plan.SitingPlan.Pairwise;

/** The plan's {@code criteria} block with the {@code pairwise} block that may give its weights. */
final class CriteriaBlock {
    /** What the curve of a measure is written in. The measures that are missing are suitabilities already. */
    private static final Map<Measure, Kind> CURVE_KINDS = Map.of(
            Measure.DEPTH, Kind.LENGTH,
            Measure.SLOPE, Kind.SLOPE,
            Measure.RUGGEDNESS, Kind.RUGGEDNESS,
            Measure.SPACING, Kind.LENGTH);

    private static final Map<Kind, String> CURVE_EXAMPLES = Map.of(
            Kind.LENGTH, "curve: [60 m, 80 m, 120 m, 150 m]",
            Kind.SLOPE, "curve: [0 deg, 0 deg, 2 deg, 5 deg]",
            Kind.RUGGEDNESS, "curve: [0, 0, 0.01, 0.05]");

    /** The layer without which a measure has nothing to measure. */
    private static final Map<Measure, String> NEEDED = Map.of(
            Measure.BOTTOM, "bottom",
            Measure.CLEARANCE, "keep-off",
            Measure.SPACING, "reefs");

    private static final double ROUND = 1e-9;

    /** The criteria in the plan's order, with their weights. */
    record Criteria(List<Criterion> list, Optional<Pairwise> pairwise) {}

    private record Unweighted(Measure measure, OptionalDouble weight, Optional<Curve> curve, Value value) {}

    private CriteriaBlock() {}

    static Criteria read(Block plan) {
        String[] measures = Arrays.stream(Measure.values()).map(Value::word).toArray(String[]::new);
        List<Unweighted> read = new ArrayList<>();
        plan.need("criteria", "criteria: {bottom: {weight: 1}}")
                .flatMap(value -> value.block("criteria", measures))
                .ifPresent(block -> {
                    block.values().forEach((word, value) -> criterion(word, value, plan).ifPresent(read::add));
                    if (block.isEmpty()) {
                        block.problem("criteria names no criterion; write at least one of " + String.join(", ", measures));
                    }
                });
        return plan.get("pairwise").map(value -> derived(value, read)).orElseGet(() -> stated(read));
    }

    private static Optional<Unweighted> criterion(String word, Value value, Block plan) {
        Measure measure = Arrays.stream(Measure.values()).filter(m -> Value.word(m).equals(word)).findAny().orElseThrow();
        String needed = NEEDED.get(measure);
        if (needed != null && plan.get(needed).filter(layers -> !layers.isEmptyList()).isEmpty()) {
            value.problem(word + " is a criterion and the plan names no " + needed + "; add it or leave the criterion out");
        }
        return value.block("criterion " + word, "weight", "curve").map(block -> new Unweighted(
                measure, block.get("weight").map(w -> OptionalDouble.of(weight(w))).orElse(OptionalDouble.empty()),
                curve(block, word, Optional.ofNullable(CURVE_KINDS.get(measure))), value));
    }

    private static double weight(Value value) {
        String text = value.text();
        double weight = PlanNumber.read(text);
        if (!text.isEmpty() && !(weight > 0)) {
            value.problem("weight is " + Shown.quoted(text) + "; write a number over 0, or leave the criterion out");
        }
        return weight;
    }

    private static Optional<Curve> curve(Block block, String word, Optional<Kind> kind) {
        if (kind.isEmpty()) {
            block.get("curve").ifPresent(value -> value.problem(
                    word + " has a curve, but it is a suitability already; leave the curve out"));
            return Optional.empty();
        }
        Optional<Value> value = block.need("curve", CURVE_EXAMPLES.get(kind.get()));
        if (value.isEmpty()) {
            return Optional.empty();
        }
        double[] corners = value.get().items().stream().mapToDouble(item -> item.quantity(kind.get())).toArray();
        if (!value.get().isList() || Arrays.stream(corners).anyMatch(Double::isNaN)) {
            return Optional.empty();
        }
        if (corners.length != 4) {
            value.get().problem("curve has " + corners.length + " corners; write four, for example \""
                    + CURVE_EXAMPLES.get(kind.get()) + "\"");
            return Optional.empty();
        }
        for (int i = 1; i < corners.length; i++) {
            if (corners[i] < corners[i - 1]) {
                value.get().problem("corner " + (i + 1) + " of curve is less than corner " + i
                        + "; write the four corners so that none falls");
                return Optional.empty();
            }
        }
        return Optional.of(new Curve(corners[0], corners[1], corners[2], corners[3]));
    }

    private static Criteria stated(List<Unweighted> read) {
        List<Criterion> list = new ArrayList<>();
        for (Unweighted criterion : read) {
            if (criterion.weight().isEmpty()) {
                criterion.value().problem("criterion " + Value.word(criterion.measure())
                        + " has no \"weight\"; add it, for example \"weight: 2\", or give pairwise comparisons");
            }
            list.add(new Criterion(criterion.measure(), criterion.weight().orElse(Double.NaN), criterion.curve()));
        }
        double sum = list.stream().mapToDouble(Criterion::weight).sum();
        // 1, 10 and 100 are whole numbers too; more than that no one sums by hand.
        if (!read.isEmpty() && Math.abs(sum - Math.rint(sum)) > ROUND) {
            read.get(0).value().findings().warning("criteria: the weights sum to " + Shown.number(sum)
                    + ", which is no round figure; they are used as given");
        }
        return new Criteria(list, Optional.empty());
    }

    private static Criteria derived(Value pairwise, List<Unweighted> read) {
        if (read.stream().anyMatch(criterion -> criterion.weight().isPresent())) {
            pairwise.problem("pairwise is given and criteria have weights as well; leave out the one or the other");
        }
        Optional<PairwiseBlock.Derived> derived =
                PairwiseBlock.read(pairwise, read.stream().map(Unweighted::measure).toList());
        List<Criterion> list = read.stream().map(criterion -> new Criterion(criterion.measure(),
                derived.map(d -> d.weights().get(criterion.measure())).orElse(Double.NaN), criterion.curve())).toList();
        return new Criteria(list, derived.map(PairwiseBlock.Derived::pairwise));
    }
}
