package org.seacairn.plan;

import java.util.ArrayList;
import java.util.List;
import org.seacairn.plan.SitingPlan.Criterion;
import org.seacairn.plan.SitingPlan.Curve;
import org.seacairn.plan.SitingPlan.KeepOff;
import org.seacairn.plan.SitingPlan.Limits;
import org.seacairn.plan.SitingPlan.Measure;
import org.seacairn.plan.SitingPlan.ReefModule;
import org.seacairn.plan.SitingPlan.Uncertainty;

/** Looks at the keys of a plan side by side: what each allows and all together make doubtful. */
final class CrossChecks {
    private final List<String> warnings = new ArrayList<>();
    private final SitingPlan plan;

    private CrossChecks(SitingPlan plan) {
        this.plan = plan;
    }

    /** One line each. */
    static List<String> warnings(SitingPlan plan) {
        CrossChecks checks = new CrossChecks(plan);
        checks.depthCurve();
        checks.heightOfModule();
        checks.reefs();
        plan.keepOff().forEach(checks::keepOff);
        return checks.warnings;
    }

    private void depthCurve() {
        Limits limits = plan.limits();
        for (Criterion criterion : plan.criteria()) {
            if (criterion.measure() != Measure.DEPTH) {
                continue;
            }
            Curve curve = criterion.curve().orElseThrow();
            if (curve.a() < limits.shallowestM().orElse(0)) {
                warnings.add("criteria: the depth curve begins at " + Shown.metres(curve.a())
                        + ", limits allow no less than " + Shown.metres(limits.shallowestM().orElse(0)));
            }
            if (curve.d() > limits.deepestM().orElse(Double.POSITIVE_INFINITY)) {
                warnings.add("criteria: the depth curve ends at " + Shown.metres(curve.d())
                        + ", limits allow no more than " + Shown.metres(limits.deepestM().getAsDouble()));
            }
        }
    }

    private void heightOfModule() {
        Limits limits = plan.limits();
        if (limits.deepestM().isEmpty()) {
            return;
        }
        double heightM = plan.module().heightM();
        double deepestM = limits.deepestM().getAsDouble();
        if (limits.heightShare().isPresent() && heightM > limits.heightShare().getAsDouble() * deepestM) {
            warnings.add("module: a height of " + Shown.metres(heightM) + " is over the height-share "
                    + Shown.number(limits.heightShare().getAsDouble()) + " at every depth down to the limit of "
                    + Shown.metres(deepestM) + "; no place can take it");
        }
        if (plan.bathymetry().uncertainty().cells().isPresent()) {
            return;
        }
        double waterOverM = deepestM - plan.bathymetry().uncertainty().verticalM(deepestM) - heightM;
        if (limits.clearanceAboveM().isPresent() && waterOverM < limits.clearanceAboveM().getAsDouble()) {
            warnings.add("module: even at the depth limit of " + Shown.metres(deepestM) + " only "
                    + Shown.metres(waterOverM) + " of water are left over it, clearance-above asks for "
                    + Shown.metres(limits.clearanceAboveM().getAsDouble()) + "; no place can take it");
        }
    }

    private void reefs() {
        plan.reefs().ifPresent(reefs -> shorterThanLanding("reefs", reefs.keepOffM()));
    }

    private void keepOff(KeepOff layer) {
        String rule = "keep-off \"" + layer.source().label() + "\"";
        shorterThanLanding(rule, layer.distanceM());
        if (plan.criteria().stream().noneMatch(criterion -> criterion.measure() == Measure.CLEARANCE)) {
            return;
        }
        if (layer.comfortableM().isEmpty()) {
            warnings.add(rule + ": no comfortable distance is given; more distance than required earns nothing");
            return;
        }
        double requiredM = leastRequiredM(layer);
        if (layer.comfortableM().getAsDouble() <= requiredM) {
            warnings.add(rule + ": the comfortable distance " + Shown.metres(layer.comfortableM().getAsDouble())
                    + " lies within the required " + Shown.metres(requiredM)
                    + " (distance and uncertainties); more distance than required earns nothing");
        }
    }

    /** Required distance where the bathymetry is surest of its place: at the shallowest depth allowed. */
    private double leastRequiredM(KeepOff layer) {
        Uncertainty uncertainty = plan.bathymetry().uncertainty();
        ReefModule module = plan.module();
        double horizontalM = uncertainty.horizontalM(plan.limits().shallowestM().orElse(0));
        return layer.distanceM() + Math.hypot(Math.hypot(layer.positionUncertaintyM(), horizontalM), module.landingRadiusM().orElse(0));
    }

    private void shorterThanLanding(String rule, double distanceM) {
        if (distanceM < plan.module().landingRadiusM().orElse(0)) {
            warnings.add(rule + ": the distance " + Shown.metres(distanceM) + " is less than the landing radius "
                    + Shown.metres(plan.module().landingRadiusM().getAsDouble()));
        }
    }
}
