package org.seacairn.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seacairn.drop.ModuleDrop;
import org.seacairn.drop.Scatter;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Current;

/** What a careful reader should know of a computed sinking before relying on it, one line each. */
final class DropWarnings {
    /** What an unstated uncertainty of drag may well be (common practice, no source). */
    private static final double LIKELY_DRAG_UNCERTAINTY = 0.2;

    private DropWarnings() {}

    static List<String> of(SitingPlan plan, ModuleDrop drop) {
        List<String> warnings = new ArrayList<>();
        Current current = plan.current().orElseThrow();
        if (plan.module().landingRadiusM().isEmpty()) {
            if (current.speedUncertaintyMPerS() == 0 && current.speedUncertaintyShare() == 0 && current.directionUncertaintyDeg() == 0) {
                warnings.add("current: no uncertainty is stated, and the landing radius allows for none; state speed-uncertainty and direction-uncertainty");
            }
            if (plan.bargeUncertaintyM() == 0) {
                warnings.add("barge: no position-uncertainty is stated, and the landing radius allows for none");
            }
            if (drop.body().parts().drag().uncertainty() == 0) {
                warnings.add(String.format(Locale.ROOT, "module: no uncertainty of its drag is stated, and the landing radius allows for none; a"
                        + " fifth more drag would carry it %s farther in %s of water", Shown.metres(Math.round(fartherM(drop))),
                        Shown.metres(Math.round(drop.deepestM()))));
            }
            if (drop.body().parts().scatterDeg().isEmpty()) {
                Scatter.nearStep(drop.body().massKg()).ifPresent(near -> warnings.add("module: " + near
                        + "; state scatter-angle to be sure of it"));
            }
        }
        for (int i = 0; i < drop.profiles().size(); i++) {
            if (!drop.attitude(i).rightsItself()) {
                warnings.add("module: it may not right itself above " + Shown.metres(Math.round(drop.deepestM())) + named(drop.profiles().get(i))
                        + "; it leaves the deck tilted by " + Shown.number(drop.body().parts().releaseTiltDeg()) + " degrees");
            }
        }
        double glideM = drop.glideM(drop.deepestM());
        double scatterM = drop.scatter().radius95M(drop.deepestM());
        if (plan.module().landingRadiusM().isEmpty() && glideM > scatterM) {
            warnings.add("module: leaning on its way down it may glide by " + Shown.metres(Math.round(glideM)) + " in " + Shown.metres(Math.round(
                    drop.deepestM())) + " of water, more than the scatter of " + Shown.metres(Math.round(scatterM))
                    + " that the landing radius allows for; state a larger scatter-angle");
        }
        plan.limits().deepestM().ifPresent(deepest -> {
            if (deepest > drop.deepestM()) {
                warnings.add("current: it stops at " + Shown.metres(drop.deepestM()) + "; deeper sites have no release point");
            }
        });
        plan.limits().embedmentM().ifPresent(limit -> plan.bottom().ifPresent(bottom -> {
            List<String> unknown = bottom.classes().stream().filter(c -> c.suitability().isPresent() && c.shearStrengthPa().isEmpty())
                    .map(c -> c.name()).toList();
            if (!unknown.isEmpty()) {
                warnings.add("limits: embedment is not judged on " + String.join(", ", unknown)
                        + ", which state no shear-strength; sinking into sand and gravel is not modelled");
            }
        }));
        return List.copyOf(warnings);
    }

    /** That of a plan, where it tells how its module sinks. */
    static List<String> of(SitingPlan plan, Optional<ModuleDrop> drop) {
        return drop.map(d -> of(plan, d)).orElse(List.of());
    }

    private static double fartherM(ModuleDrop drop) {
        return drop.touchdown(0, drop.deepestM()).driftM() * (Math.sqrt(1 + LIKELY_DRAG_UNCERTAINTY) - 1);
    }

    private static String named(String profile) {
        return profile.isEmpty() ? "" : " in the current of " + Shown.quoted(profile);
    }
}
