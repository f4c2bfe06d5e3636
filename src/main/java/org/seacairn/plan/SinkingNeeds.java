package org.seacairn.plan;

import java.util.Optional;
import org.seacairn.plan.SitingPlan.Current;
import org.seacairn.plan.SitingPlan.CurrentProfile;
import org.seacairn.plan.SitingPlan.Limits;
import org.seacairn.plan.SitingPlan.ReefModule;

/** What a plan must state where a rule of it rests on how the module sinks: a module, a current, a deepest depth. */
final class SinkingNeeds {
    private SinkingNeeds() {}

    static void check(Block plan, Limits limits, ReefModule module, Optional<Current> current) {
        String why = module.landingRadiusM().isEmpty() ? "the module states no landing-radius, so it is computed"
                : limits.embedmentM().isPresent() ? "limits: embedment rests on how the module sinks"
                : limits.stability().isPresent() ? "limits: stability rests on how the module sinks" : "";
        if (why.isEmpty()) {
            return;
        }
        Value at = plan.get("module").orElseThrow();
        String or = module.landingRadiusM().isEmpty() ? ", or state for example \"landing-radius: 25 m\"" : ", or leave the limit out";
        if (!module.missing().isEmpty()) {
            at.problem(why + ", and for that the module lacks " + String.join(", ", module.missing()) + "; add it"
                    + module.file().map(file -> " to " + file.getFileName()).orElse("") + or);
        }
        if (current.isEmpty()) {
            at.problem(why + ", and that needs a current; add \"current: {file: current.csv}\"" + or);
        }
        if (limits.deepestM().isEmpty()) {
            at.problem(why + " down to the deepest depth allowed; add for example \"limits: {depth: [60 m, 150 m]}\"" + or);
        } else {
            current.stream().flatMap(c -> c.profiles().stream())
                    .filter(profile -> !profile.levels().isEmpty() && deepestM(profile) < limits.deepestM().getAsDouble())
                    .findFirst().ifPresent(profile -> plan.get("current").orElseThrow().problem("the current"
                            + named(profile) + " stops at " + Shown.metres(deepestM(profile)) + ", limits allow depths down to "
                            + Shown.metres(limits.deepestM().getAsDouble()) + "; add a level at the bottom"));
        }
    }

    private static double deepestM(CurrentProfile profile) {
        return profile.levels().get(profile.levels().size() - 1).depthM();
    }

    private static String named(CurrentProfile profile) {
        return profile.name().isEmpty() ? "" : " profile " + Shown.quoted(profile.name());
    }
}
