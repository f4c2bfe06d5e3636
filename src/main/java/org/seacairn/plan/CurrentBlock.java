package org.seacairn.plan;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.SitingPlan.CurrentLevel;

/** The plan's {@code current} block: levels in place, or the table that it names. */
final class CurrentBlock {
    private static final String EXAMPLE = "- {depth: 0 m, speed: 3.5 kn, toward: 20 deg}";

    private CurrentBlock() {}

    static List<CurrentLevel> read(Block plan, PlanFolder folder) {
        Optional<Value> current = plan.get("current");
        if (current.isEmpty()) {
            return List.of();
        }
        return current.get().isBlock() ? fromFile(current.get(), folder) : inPlace(current.get());
    }

    private static List<CurrentLevel> fromFile(Value current, PlanFolder folder) {
        Optional<Path> file = current.block("current", "file")
                .flatMap(block -> block.need("file", "file: current.csv"))
                .flatMap(folder::file);
        return file.map(path -> CurrentTable.read(path, current.findings())).orElse(List.of());
    }

    private static List<CurrentLevel> inPlace(Value current) {
        List<CurrentLevel> levels = new ArrayList<>();
        for (Value item : current.items()) {
            item.block("this level of the current", "depth", "speed", "toward").ifPresent(block -> {
                CurrentLevel level = level(
                        block.needQuantity("depth", Kind.LENGTH, EXAMPLE),
                        block.needQuantity("speed", Kind.SPEED, EXAMPLE),
                        block.needQuantity("toward", Kind.ANGLE, EXAMPLE));
                if (!levels.isEmpty() && level.depthM() <= levels.get(levels.size() - 1).depthM()) {
                    item.problem(NOT_DEEPER);
                }
                levels.add(level);
            });
        }
        if (levels.isEmpty() && current.isList()) {
            current.problem("current has no level; write for example \"" + EXAMPLE + "\"");
        }
        return levels;
    }

    static final String NOT_DEEPER = "this level is not deeper than the one before; write the levels from the surface down";

    /** North is 0 and not 360, so that one direction has one number. */
    static CurrentLevel level(double depthM, double speedMPerS, double towardDeg) {
        return new CurrentLevel(depthM, speedMPerS, towardDeg == 360 ? 0 : towardDeg);
    }
}
