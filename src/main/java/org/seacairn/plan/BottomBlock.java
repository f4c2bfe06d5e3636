package org.seacairn.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.SitingPlan.Bottom;
import org.seacairn.plan.SitingPlan.BottomClass;

/** The plan's {@code bottom} block. */
final class BottomBlock {
    private static final String EXAMPLE = "classes: {sand: {suitability: 1.0}, hardbottom: never}";

    private BottomBlock() {}

    static Optional<Bottom> read(Block plan, PlanFolder folder) {
        return plan.get("bottom")
                .flatMap(value -> value.block("bottom", LayerBlock.keys("class", "unmapped", "classes", LayerBlock.REPAIR)))
                .map(block -> new Bottom(
                        LayerBlock.readWithClassAttribute(block, "bottom", "bottom-types.gpkg", folder),
                        block.needText("class", "class: kind"),
                        unmapped(block),
                        block.need("classes", EXAMPLE).map(BottomBlock::classes).orElse(List.of())));
    }

    private static OptionalDouble unmapped(Block block) {
        Optional<Value> value = block.get("unmapped");
        if (value.isEmpty() || value.get().text().equals("exclude")) {
            return OptionalDouble.empty();
        }
        String text = value.get().text();
        if (!text.isEmpty() && Character.isLetter(text.charAt(0))) {
            value.get().problem("unmapped is " + Shown.quoted(text) + "; write exclude, or a suitability from 0 to 1");
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(value.get().quantity(Kind.SHARE));
    }

    private static List<BottomClass> classes(Value classes) {
        List<BottomClass> found = new ArrayList<>();
        classes.entries().forEach((name, value) -> found.add(bottomClass(name, value)));
        if (found.isEmpty() && classes.isBlock()) {
            classes.problem("classes names no class; write for example \"" + EXAMPLE + "\"");
        }
        return found;
    }

    private static BottomClass bottomClass(String name, Value value) {
        OptionalDouble none = OptionalDouble.empty();
        if (!value.isBlock()) {
            String text = value.isList() ? "" : value.text();
            if (value.isList() || !(text.isEmpty() || text.equals("never"))) {
                value.problem(name + (value.isList() ? " is a list" : " is " + Shown.quoted(text))
                        + "; write \"" + name + ": {suitability: 0.5}\" or \"" + name + ": never\"");
            }
            return new BottomClass(name, none, none, none);
        }
        Block block = value.block(name, "suitability", "shear-strength", "gradient").orElseThrow();
        if (block.has("gradient") && !block.has("shear-strength")) {
            block.get("gradient").get().problem("gradient is given without a shear-strength to grow from; add it,"
                    + " for example \"shear-strength: 4 kPa\"");
        }
        return new BottomClass(name,
                OptionalDouble.of(block.needQuantity("suitability", Kind.SHARE, "suitability: 0.5")),
                block.quantity("shear-strength", Kind.PRESSURE),
                block.quantity("gradient", Kind.GRADIENT));
    }
}
