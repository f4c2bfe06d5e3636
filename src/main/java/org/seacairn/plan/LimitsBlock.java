package org.seacairn.plan;

import java.util.List;
import java.util.OptionalDouble;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.SitingPlan.Limits;

/** The plan's {@code limits} block. */
final class LimitsBlock {
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private LimitsBlock() {}

    static Limits read(Block plan) {
        return plan.get("limits")
                .flatMap(value -> value.block("limits", "depth", "slope", "ruggedness", "clearance-above",
                        "height-share", "embedment", "stability"))
                .map(LimitsBlock::limits)
                .orElse(new Limits(NONE, NONE, NONE, NONE, NONE, NONE, NONE, NONE));
    }

    private static Limits limits(Block block) {
        List<Double> depthsM = block.get("depth").map(LimitsBlock::depths).orElse(List.of());
        return new Limits(
                depthsM.isEmpty() ? NONE : OptionalDouble.of(depthsM.get(0)),
                depthsM.isEmpty() ? NONE : OptionalDouble.of(depthsM.get(1)),
                block.quantity("slope", Kind.SLOPE),
                block.quantity("ruggedness", Kind.RUGGEDNESS),
                block.quantity("clearance-above", Kind.LENGTH),
                block.get("height-share").map(value -> OptionalDouble.of(value.positive(Kind.SHARE))).orElse(NONE),
                block.quantity("embedment", Kind.LENGTH),
                block.get("stability").map(value -> OptionalDouble.of(value.positive(Kind.FACTOR))).orElse(NONE));
    }

    private static List<Double> depths(Value value) {
        List<Double> depthsM = value.items().stream().map(item -> item.quantity(Kind.LENGTH)).toList();
        if (value.isList() && depthsM.size() != 2) {
            value.problem("depth is a list of " + depthsM.size()
                    + "; write the shallowest and the deepest, for example \"[60 m, 150 m]\"");
        } else if (depthsM.size() == 2 && depthsM.get(0) >= depthsM.get(1)) {
            value.problem("depth does not run from shallow to deep; write the shallowest first,"
                    + " for example \"[60 m, 150 m]\"");
        }
        return depthsM.size() == 2 ? depthsM : List.of();
    }
}
