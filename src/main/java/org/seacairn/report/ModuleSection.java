package org.seacairn.report;

import org.seacairn.drop.Coefficient;
import org.seacairn.drop.ModuleDrop;
import org.seacairn.drop.SinkingBody;
import org.seacairn.plan.SitingPlan;

/** The module in the water: weights, centres, and the coefficients with what they rest on. */
record ModuleSection(SitingPlan plan, ModuleDrop drop) implements Section {
    @Override
    public String id() {
        return "module";
    }

    @Override
    public String heading() {
        return "The module in the water";
    }

    @Override
    public void write(Html html) {
        Units units = new Units(plan.display());
        SinkingBody body = drop.body();
        new Facts(html)
                .name("Module", plan.module().name())
                .add("Mass in air", units.massText(body.massKg()))
                .add("Weight in sea water", Units.number(0, body.submergedWeightN() / 1000) + " kN, at "
                        + Units.number(0, body.water().densityKgPerM3()) + " kg/m³")
                .add("Centre of mass", units.tenth(body.centreOfMassM()) + " " + units.length() + " above the underside")
                .add("Centre of buoyancy", units.tenth(body.centreOfBuoyancyM()) + " " + units.length() + " above the underside")
                .add("Terminal speed, upright", units.speedText(body.terminalSpeedMPerS()))
                .add("Angle of scatter", Units.degrees(drop.scatter().angleDeg()) + " deg, "
                        + (body.parts().scatterDeg().isPresent() ? "stated" : "DNV-RP-F107 by mass"))
                .add("Tilt on leaving the deck", Units.number(0, body.parts().releaseTiltDeg()) + " deg")
                .end();
        new PageTable<Coefficient>("Coefficients of drag and added mass")
                .text("Coefficient", Coefficient::name)
                .figure("Value", c -> Units.number(2, c.value()))
                .figure("times", c -> Units.number(2, c.reference()) + " " + c.referenceUnit().replace("m2", "m²").replace("m3", "m³"))
                .cell("Source", (h, c) -> h.line(c.source()))
                .write(html, body.coefficients());
    }
}
