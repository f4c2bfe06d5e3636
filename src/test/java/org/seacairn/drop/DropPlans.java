package org.seacairn.drop;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seacairn.plan.ModuleBody;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Bottom;
import org.seacairn.plan.SitingPlan.BottomClass;
import org.seacairn.plan.SitingPlan.Current;
import org.seacairn.plan.SitingPlan.CurrentLevel;
import org.seacairn.plan.SitingPlan.CurrentProfile;
import org.seacairn.plan.SitingPlan.Limits;
import org.seacairn.plan.SitingPlan.ReefModule;
import org.seacairn.plan.SitingPlan.Sites;

/** Plans with what sinking depends on, and nothing else. */
final class DropPlans {
    static final BottomClass MUD = new BottomClass("mud", OptionalDouble.of(0.5), OptionalDouble.of(4000), OptionalDouble.of(1500));
    static final BottomClass SAND = new BottomClass("sand", OptionalDouble.of(1), OptionalDouble.empty(), OptionalDouble.empty());

    /** The module of the sample: 8.5 short tons of base, 25 ft high. */
    static final ModuleBody MODULE = new ModuleBody(
            new ModuleBody.Base(ModuleBody.Shape.SQUARE, 2.4384, 2.4384, 0.6096, 7711, 3.19, 0.12),
            new ModuleBody.Pole(0.219, 7.0104, 299, 0.038),
            new ModuleBody.Drag(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), 0.2),
            new ModuleBody.AddedMass(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty()),
            OptionalDouble.of(5), 90);

    static final CurrentProfile STRONG = profile("strong", 0, 2, 12, 40, 1.5, 15, 160, 0.4, 30);
    static final CurrentProfile BACK = profile("back", 0, 0.5, 190, 60, 0.2, 180, 160, 0.1, 20);

    private DropPlans() {}

    /** @param levels depth, speed, direction of each */
    static CurrentProfile profile(String name, double... levels) {
        List<CurrentLevel> found = new ArrayList<>();
        for (int i = 0; i < levels.length; i += 3) {
            found.add(new CurrentLevel(levels[i], levels[i + 1], levels[i + 2]));
        }
        return new CurrentProfile(name, found);
    }

    static SitingPlan plan(ModuleBody body, double speedShare, double directionDeg, double bargeM, CurrentProfile... profiles) {
        return plan(body, OptionalDouble.empty(), speedShare, directionDeg, bargeM, profiles);
    }

    static SitingPlan plan(ModuleBody body, OptionalDouble landingRadiusM, double speedShare, double directionDeg, double bargeM,
            CurrentProfile... profiles) {
        OptionalDouble none = OptionalDouble.empty();
        return new SitingPlan(null, "", SitingPlan.Display.METRIC, Optional.empty(), none, null,
                Optional.of(new Bottom(null, "kind", none, List.of(MUD, SAND, new BottomClass("rock", none, none, none)))),
                Optional.empty(), Optional.empty(), Optional.empty(), List.of(),
                new Limits(OptionalDouble.of(60), OptionalDouble.of(150), none, none, none, none, none, OptionalDouble.of(1.5)),
                new ReefModule(Optional.empty(), "module", 7.62, landingRadiusM, Optional.ofNullable(body), List.of()),
                profiles.length == 0 ? Optional.empty() : Optional.of(new Current(Optional.empty(), List.of(profiles), 0, speedShare, directionDeg)),
                bargeM, 3, List.of(), Optional.empty(), SitingPlan.Combination.WEIGHTED_MEAN, new Sites(1, 100), List.of());
    }
}
