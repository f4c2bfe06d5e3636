package org.seacairn.drop;

import java.util.List;
import org.seacairn.plan.ModuleBody;

/**
 * A reef module as the water sees it: weight in water, centres, drag areas and added mass. Heights count from the
 * underside of the base along the module's axis; axial is along it, lateral across. Immutable.
 */
public final class SinkingBody {
    private final ModuleBody parts;
    private final double heightM;
    private final SeaWater water;
    private final DragCoefficients drag;
    private final AddedMassCoefficients added;

    private SinkingBody(ModuleBody parts, double heightM, SeaWater water, DragCoefficients drag, AddedMassCoefficients added) {
        this.parts = parts;
        this.heightM = heightM;
        this.water = water;
        this.drag = drag;
        this.added = added;
    }

    /** In {@link SeaWater#USUAL}. */
    public static SinkingBody of(ModuleBody parts, double heightM) {
        return of(parts, heightM, SeaWater.USUAL);
    }

    /**
     * @param heightM from the underside of the base to the top of the pole
     * @throws IllegalArgumentException if the module floats in that water
     */
    public static SinkingBody of(ModuleBody parts, double heightM, SeaWater water) {
        SinkingBody body = new SinkingBody(parts, heightM, water, DragCoefficients.of(parts), AddedMassCoefficients.of(parts));
        if (!(body.submergedWeightN() > 0)) {
            throw new IllegalArgumentException("the module floats: submerged weight " + body.submergedWeightN() + " N");
        }
        return body;
    }

    /** The same module with every drag coefficient multiplied. */
    public SinkingBody withDragScaled(double factor) {
        return new SinkingBody(parts, heightM, water, drag.scaled(factor), added);
    }

    public double heightM() {
        return heightM;
    }

    public SeaWater water() {
        return water;
    }

    /** What it was made from. */
    public ModuleBody parts() {
        return parts;
    }

    /** In air, without the water that floods it. */
    public double massKg() {
        return parts.base().massKg() + parts.pole().massKg();
    }

    /** Of the solid, which is what buoyancy acts on. */
    public double volumeM3() {
        return parts.base().volumeM3() + parts.pole().volumeM3();
    }

    /** Weight less buoyancy. */
    public double submergedWeightN() {
        return (massKg() - water.densityKgPerM3() * volumeM3()) * water.gravityMPerS2();
    }

    /** Height of the centre of mass. */
    public double centreOfMassM() {
        return (parts.base().massKg() * baseMiddleM() + parts.pole().massKg() * poleMiddleM()) / massKg();
    }

    /** Height of the centre of buoyancy. */
    public double centreOfBuoyancyM() {
        return (parts.base().volumeM3() * baseMiddleM() + parts.pole().volumeM3() * poleMiddleM()) / volumeM3();
    }

    /** Plan of the base less its openings. */
    public double solidPlanAreaM2() {
        return drag.baseAxial().reference();
    }

    /** Side view of the base, of its longer side. */
    public double edgeAreaM2() {
        return drag.baseLateral().reference();
    }

    /** Drag coefficient times area, motion along the axis. */
    public double axialDragAreaM2() {
        return drag.baseAxial().product() + drag.poleAxial().product();
    }

    /** Drag coefficient times area, motion across the axis. */
    public double lateralDragAreaM2() {
        return baseLateralDragAreaM2() + poleLateralDragAreaM2();
    }

    public double baseLateralDragAreaM2() {
        return drag.baseLateral().product();
    }

    public double poleLateralDragAreaM2() {
        return drag.poleLateral().product();
    }

    /** Water that moves along with the module along its axis. */
    public double axialAddedMassKg() {
        return water.densityKgPerM3() * added.axialM3();
    }

    /** Water that moves along with the module across its axis. */
    public double lateralAddedMassKg() {
        return water.densityKgPerM3() * (added.baseLateralM3() + added.poleLateralM3());
    }

    /** Upright, in still water: where drag carries the submerged weight. Infinite without drag. */
    public double terminalSpeedMPerS() {
        return Math.sqrt(2 * submergedWeightN() / (water.densityKgPerM3() * axialDragAreaM2()));
    }

    /** What drag and added mass were computed with, each with its source, drag first. */
    public List<Coefficient> coefficients() {
        return List.of(drag.baseAxial(), drag.baseLateral(), drag.poleAxial(), drag.poleLateral(),
                added.baseAxial(), added.baseLateral(), added.poleLateral());
    }

    double baseMiddleM() {
        return parts.base().heightM() / 2;
    }

    double poleMiddleM() {
        return heightM - parts.pole().lengthM() / 2;
    }

    DragCoefficients drag() {
        return drag;
    }

    AddedMassCoefficients added() {
        return added;
    }
}
