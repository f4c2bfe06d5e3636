package org.seacairn.cli;

import java.util.ArrayList;
import java.util.List;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.KeepOff;

/** What a review under a plan does not check, or takes on trust: one line each. */
final class Unchecked {
    private Unchecked() {}

    static List<String> of(SitingPlan plan) {
        List<String> lines = new ArrayList<>();
        missing(lines, plan.limits().shallowestM().isEmpty(), "the least depth: the plan has no limits: depth");
        missing(lines, plan.limits().clearanceAboveM().isEmpty(), "the water over the module: no limits: clearance-above");
        missing(lines, plan.limits().heightShare().isEmpty(), "the module's share of the depth: no limits: height-share");
        missing(lines, plan.limits().steepestDeg().isEmpty(), "the slope: no limits: slope");
        missing(lines, plan.bottom().isEmpty(), "the bottom type: the plan names no bottom layer");
        missing(lines, plan.inside().isEmpty(), "the permit area: the plan names no layer under inside");
        missing(lines, plan.reefs().isEmpty(), "the distance to existing reefs: the plan names no reefs");
        missing(lines, plan.keepOff().isEmpty(), "any clearance: the plan names no keep-off layer");
        missing(lines, plan.bathymetry().uncertainty() == SitingPlan.Uncertainty.NONE,
                "the survey's uncertainty: none is stated, and none is allowed for");
        missing(lines, plan.module().landingRadiusM().orElse(1) == 0, "the scatter of landings: the landing radius is 0");
        for (KeepOff layer : plan.keepOff()) {
            missing(lines, layer.coverage().isEmpty(), "where the layer \"" + layer.source().label()
                    + "\" ends: no coverage is stated, and it is taken to be complete");
            missing(lines, !layer.confirmed(), "the text of the rule for \"" + layer.source().label() + "\": "
                    + (layer.ruleSource().isEmpty() ? "the plan names no source" : "its source is not confirmed"));
        }
        plan.reefs().filter(reefs -> !reefs.confirmed()).ifPresent(reefs -> lines.add("the text of the rule for existing reefs: "
                + (reefs.ruleSource().isEmpty() ? "the plan names no source" : "its source is not confirmed")));
        plan.depthAreas().filter(areas -> !areas.confirmed()).ifPresent(areas -> lines.add("the charted depth areas: "
                + (areas.ruleSource().isEmpty() ? "the plan names no source" : "their source is not confirmed")));
        lines.add("anything that is in no layer: wrecks and cables not charted, traffic, fishing rights, archaeology, habitat");
        return List.copyOf(lines);
    }

    private static void missing(List<String> lines, boolean isMissing, String line) {
        if (isMissing) {
            lines.add(line);
        }
    }
}
