package org.seacairn.plan;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.SitingPlan.ReefModule;

/** The plan's {@code module} block, or the module file that it names. */
final class ModuleBlock {
    private static final String[] KEYS = {"name", "height", "landing-radius", "base", "pole", "drag", "added-mass",
        "scatter-angle", "release-tilt"};

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
        double heightM = block.needPositive("height", Kind.LENGTH, "height: 30 ft");
        OptionalDouble landingRadiusM = block.quantity("landing-radius", Kind.LENGTH);
        List<String> missing = new ArrayList<>();
        Optional<ModuleBody> body = BodyBlock.read(block, heightM, missing);
        return new ReefModule(file, block.text("name").orElse("module"), heightM, landingRadiusM, body, List.copyOf(missing));
    }
}
