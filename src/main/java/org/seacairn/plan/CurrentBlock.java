package org.seacairn.plan;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.SitingPlan.Current;
import org.seacairn.plan.SitingPlan.CurrentLevel;
import org.seacairn.plan.SitingPlan.CurrentProfile;

/** The plan's {@code current} block: levels in place, or the table that it names. */
final class CurrentBlock {
    private static final String EXAMPLE = "- {depth: 0 m, speed: 3.5 kn, toward: 20 deg}";

    private CurrentBlock() {}

    static Optional<Current> read(Block plan, PlanFolder folder) {
        return plan.get("current").map(current -> current.isBlock() ? fromBlock(current, folder)
                : new Current(Optional.empty(), List.of(new CurrentProfile("", inPlace(current))), 0, 0, 0));
    }

    private static Current fromBlock(Value current, PlanFolder folder) {
        Block block = current.block("current", "file", "levels", "speed-uncertainty", "direction-uncertainty").orElseThrow();
        if (block.has("file") && block.has("levels")) {
            block.problem("current names a file and levels as well; leave out the one or the other");
        }
        Optional<Path> file = block.has("levels") ? Optional.empty() : block.need("file", "file: current.csv").flatMap(folder::file);
        List<CurrentProfile> profiles = block.get("levels")
                .map(levels -> List.of(new CurrentProfile("", inPlace(levels))))
                .orElseGet(() -> file.map(path -> CurrentTable.read(path, current.findings())).orElse(List.of()));
        Optional<Value> speed = block.get("speed-uncertainty");
        boolean isShare = speed.isPresent() && !speed.get().isBlock() && !speed.get().isList() && speed.get().text().endsWith("%");
        return new Current(file, profiles,
                isShare ? 0 : block.quantity("speed-uncertainty", Kind.SPEED).orElse(0),
                isShare ? block.quantity("speed-uncertainty", Kind.SHARE).orElse(0) : 0,
                direction(block));
    }

    /** Twice a right angle is no knowledge of the direction at all. */
    private static double direction(Block block) {
        double deg = block.quantity("direction-uncertainty", Kind.ANGLE).orElse(0);
        if (deg > 180) {
            block.get("direction-uncertainty").get().problem("direction-uncertainty is more than 180 deg to either side;"
                    + " write for example \"15 deg\"");
        }
        return deg;
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
