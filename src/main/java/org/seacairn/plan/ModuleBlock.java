package org.seacairn.plan;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.SitingPlan.ReefModule;

/**
 * The plan's {@code module} block, or the module file that it names. Base, pole, drag and added mass
 * are checked and not kept: nothing is computed from them yet.
 */
final class ModuleBlock {
    private static final String[] KEYS =
            {"name", "height", "landing-radius", "base", "pole", "drag", "added-mass"};

    private static final Map<String, Kind> PART_KINDS = Map.of(
            "width", Kind.LENGTH, "length", Kind.LENGTH, "height", Kind.LENGTH, "diameter", Kind.LENGTH,
            "mass", Kind.MASS, "volume", Kind.VOLUME, "open-share", Kind.SHARE);

    private ModuleBlock() {}

    static Optional<ReefModule> read(Block plan, PlanFolder folder) {
        return plan.need("module", "module: {file: module.yaml}")
                .flatMap(value -> value.block("module",
                        Stream.concat(Stream.of("file"), Stream.of(KEYS)).toArray(String[]::new)))
                .flatMap(block -> block.has("file") ? fromFile(block, folder)
                        : Optional.of(module(block, Optional.empty())));
    }

    private static Optional<ReefModule> fromFile(Block block, PlanFolder folder) {
        if (block.values().size() > 1) {
            block.problem("module names a file and describes the module as well; leave out the one or the other");
        }
        Optional<Path> file = folder.file(block.get("file").get());
        return file.flatMap(path -> YamlText.read(path, "the module file", block.findings()))
                .flatMap(root -> root.block("the module file", KEYS))
                .map(inFile -> module(inFile, file));
    }

    private static ReefModule module(Block block, Optional<Path> file) {
        block.get("base").flatMap(value -> value.block("base",
                "shape", "width", "length", "height", "mass", "volume", "open-share")).ifPresent(ModuleBlock::checkPart);
        block.get("pole").flatMap(value -> value.block("pole",
                "diameter", "length", "mass", "volume")).ifPresent(ModuleBlock::checkPart);
        block.get("drag").ifPresent(ModuleBlock::checkCoefficients);
        block.get("added-mass").ifPresent(ModuleBlock::checkCoefficients);
        if (!block.has("landing-radius")) {
            block.problem("the module has no \"landing-radius\", and computing it is not available yet;"
                    + " state it, for example \"landing-radius: 25 m\"");
        }
        return new ReefModule(file,
                block.text("name").orElse("module"),
                block.needPositive("height", Kind.LENGTH, "height: 30 ft"),
                block.quantity("landing-radius", Kind.LENGTH).orElse(Double.NaN));
    }

    private static void checkPart(Block part) {
        part.values().forEach((key, value) -> {
            if (PART_KINDS.containsKey(key)) {
                value.quantity(PART_KINDS.get(key));
            } else {
                value.text();
            }
        });
    }

    private static void checkCoefficients(Value coefficients) {
        for (Value value : coefficients.entries().values()) {
            String text = value.text();
            if (!text.isEmpty() && !(PlanNumber.read(text) >= 0)) {
                value.problem(value.name() + " is " + Shown.quoted(text) + "; write a bare number, 0 or more");
            }
        }
    }
}
