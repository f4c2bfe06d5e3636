package org.seacairn.report;

import java.util.OptionalDouble;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.BottomClass;
import org.seacairn.plan.SitingPlan.CurrentLevel;
import org.seacairn.plan.SitingPlan.Limits;

/** What the plan says of limits, module, survey, bottom and current. */
record PlanSection(SitingPlan plan) implements Section {
    private static final String NONE = "no limit";

    @Override
    public String id() {
        return "plan";
    }

    @Override
    public String heading() {
        return "The plan";
    }

    @Override
    public void write(Html html) {
        Units units = new Units(plan.display());
        Limits limits = plan.limits();
        html.element("h3", "Limits").newLine();
        new Facts(html)
                .add("Depth", length(units, "from ", limits.shallowestM()) + ", " + length(units, "to ", limits.deepestM()))
                .add("Slope", limits.steepestDeg().isPresent() ? "at most " + Shown.number(limits.steepestDeg().getAsDouble()) + " deg" : NONE)
                .add("Ruggedness", limits.roughest().isPresent() ? "at most " + Shown.number(limits.roughest().getAsDouble()) : NONE)
                .add("Water over the module", length(units, "at least ", limits.clearanceAboveM()))
                .add("Height of the module", limits.heightShare().isPresent()
                        ? "at most " + Shown.number(100 * limits.heightShare().getAsDouble()) + " % of the depth" : NONE)
                .add("Embedment", length(units, "at most ", limits.embedmentM()))
                .add("Safety against overturning", limits.stability().isPresent()
                        ? "at least " + Shown.number(limits.stability().getAsDouble()) : NONE)
                .add("Between modules", "at least " + units.lengthText(plan.sites().apartM()))
                .end();
        html.element("h3", "Module, survey and current").newLine();
        Facts facts = new Facts(html)
                .name("Module", plan.module().name())
                .add("Its height", units.lengthText(plan.module().heightM()))
                .add("Landing radius", plan.module().landingRadiusM().isPresent()
                        ? units.lengthText(plan.module().landingRadiusM().getAsDouble()) + ", stated" : "computed from the sinking")
                .name("Bathymetry", plan.bathymetry().source().file().getFileName() + ", in " + plan.bathymetry().unit()
                        + plan.bathymetry().datum().map(datum -> " below " + datum).orElse(", datum not stated") + datumOffset(units))
                .name("Its uncertainty", plan.bathymetry().uncertainty().source());
        plan.inside().ifPresent(inside -> facts.name("Only within", inside.file().getFileName().toString()));
        plan.depthAreas().ifPresent(areas -> facts.name("Charted depth areas", areas.source().file().getFileName()
                + areas.source().table().map(table -> ", " + table).orElse("") + ", in " + areas.unit() + "; "
                + areas.ruleSource().map(source -> source + (areas.confirmed() ? "" : " (not confirmed)")).orElse("the plan names no source")));
        plan.current().ifPresent(current -> {
            CurrentLevel surface = current.profiles().get(0).levels().get(0);
            facts.name("Current", current.profiles().size() + (current.profiles().size() == 1 ? " profile" : " profiles")
                    + "; the first, at " + units.lengthText(surface.depthM()) + ": " + Units.number(1, surface.speedMPerS() * 3600 / 1852)
                    + " kn toward " + Units.number(0, surface.towardDeg()) + " deg");
        });
        facts.end();
        bottom(html);
    }

    private String datumOffset(Units units) {
        double offsetM = plan.bathymetry().datumOffsetM();
        return offsetM == 0 ? "" : "; " + units.lengthText(Math.abs(offsetM)) + (offsetM < 0 ? " taken off" : " added to")
                + " the file's depths to come to it (datum-offset)";
    }

    private void bottom(Html html) {
        plan.bottom().ifPresent(bottom -> {
            new PageTable<BottomClass>("Bottom classes")
                    .name("Class", BottomClass::name)
                    .text("Suitability", c -> c.suitability().isPresent() ? Shown.number(c.suitability().getAsDouble()) : "never")
                    .figure("Shear strength (kPa)", c -> kilo(c.shearStrengthPa()))
                    .figure("Its gradient (kPa/m)", c -> kilo(c.strengthGradientPaPerM()))
                    .write(html, bottom.classes());
            html.element("p", "Where nothing is mapped: " + (bottom.unmappedSuitability().isPresent() ? "suitability "
                    + Shown.number(bottom.unmappedSuitability().getAsDouble()) : "excluded") + ".", "class", "note").newLine();
        });
    }

    private static String kilo(OptionalDouble value) {
        return value.isPresent() ? Shown.number(value.getAsDouble() / 1000) : "–";
    }

    private static String length(Units units, String before, OptionalDouble metres) {
        return metres.isPresent() ? before + units.lengthText(metres.getAsDouble()) : NONE;
    }
}
