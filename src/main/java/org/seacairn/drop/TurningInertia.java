package org.seacairn.drop;

import org.seacairn.plan.ModuleBody.Base;
import org.seacairn.plan.ModuleBody.Pole;
import org.seacairn.plan.ModuleBody.Shape;

/**
 * What resists a module's motion in a plane: its mass, the water that moves along, and how both lie along the axis.
 *
 * @param axialKg added mass along the axis
 * @param lateralKg added mass across it
 * @param firstKgM first moment about the underside of mass and lateral added mass
 * @param secondKgM2 second moment likewise, with the base's own
 * @param baseMunkKg the base's added mass along the axis less that across
 */
record TurningInertia(
        double massKg, double axialKg, double lateralKg, double firstKgM, double secondKgM2, double baseMunkKg) {

    static TurningInertia of(SinkingBody body) {
        Base base = body.parts().base();
        Pole pole = body.parts().pole();
        AddedMassCoefficients added = body.added();
        double rho = body.water().densityKgPerM3();
        double baseLateralKg = rho * added.baseLateralM3();
        double poleLateralKg = rho * added.poleLateralM3();
        double baseKg = base.massKg() + baseLateralKg;
        double poleKg = pole.massKg() + poleLateralKg;
        double baseM = body.baseMiddleM();
        double poleM = body.poleMiddleM();
        double rodM2 = pole.lengthM() * pole.lengthM() / 12;
        return new TurningInertia(body.massKg(), body.axialAddedMassKg(), baseLateralKg + poleLateralKg,
                baseKg * baseM + poleKg * poleM,
                baseKg * baseM * baseM + poleKg * (poleM * poleM + rodM2)
                        + base.massKg() * ownM2(base) + rho * added.perforation() * plateM5(base),
                rho * (added.axialM3() - added.waterInPoleM3()) - baseLateralKg);
    }

    /** Of a box or a cylinder about its middle, for each kilogram; the shorter side lies in the plane. */
    private static double ownM2(Base base) {
        double acrossM2 = base.widthM() * base.widthM() / (base.shape() == Shape.ROUND ? 16 : 12);
        return acrossM2 + base.heightM() * base.heightM() / 12;
    }

    /**
     * Water that a thin disc takes along as it turns about a diameter, 16/45 r^5 (Lamb, Hydrodynamics); a square plate
     * as the disc of its area, a longer one as so many of them.
     */
    private static double plateM5(Base base) {
        double radiusM = base.shape() == Shape.ROUND ? base.widthM() / 2 : base.widthM() / Math.sqrt(Math.PI);
        return 16.0 / 45 * Math.pow(radiusM, 5) * base.lengthM() / base.widthM();
    }

    /** Kinetic energy of module and added mass, in joules, from speeds relative to the water and the rate of turning. */
    double kineticJ(double alongMPerS, double acrossMPerS, double turnPerS) {
        return ((massKg + axialKg) * alongMPerS * alongMPerS + (massKg + lateralKg) * acrossMPerS * acrossMPerS
                + secondKgM2 * turnPerS * turnPerS) / 2 + firstKgM * acrossMPerS * turnPerS;
    }
}
