package org.seacairn.drop;

import static java.lang.Double.POSITIVE_INFINITY;

import java.util.OptionalDouble;
import org.seacairn.plan.ModuleBody;
import org.seacairn.plan.ModuleBody.Base;
import org.seacairn.plan.ModuleBody.Pole;
import org.seacairn.plan.ModuleBody.Shape;

/**
 * Water that moves along with base and pole, as coefficients on volumes: stated, or those of the shape in ideal
 * flow. Beside it stands the water that the openings and the flooded pole hold.
 *
 * @param perforation what openings leave of the base's axial added mass, 0..1
 * @param waterInBaseM3 carried along across the axis only; along it, it passes through
 * @param waterInPoleM3 carried along both ways
 */
record AddedMassCoefficients(
        Coefficient baseAxial, Coefficient baseLateral, Coefficient poleLateral,
        double perforation, double waterInBaseM3, double waterInPoleM3) {
    private static final String N103 = "DNVGL-RP-N103";

    /** Flat rectangular plate moving face-on, by length over width, on pi/4 width^2 length. Table A-2, second-hand. */
    private static final RatioTable PLATE = new RatioTable(1, 0.579, 1.25, 0.642, 1.5, 0.690, 2, 0.757, 2.5, 0.801,
            3, 0.830, 4, 0.872, 5, 0.897, 6.25, 0.917, 8, 0.934, 10, 0.947, POSITIVE_INFINITY, 1);
    /** Endless rectangular bar, by its height (across the motion) over its width (along it), on pi/4 height^2. */
    private static final RatioTable BAR = new RatioTable(0.1, 2.23, 0.2, 1.98, 0.5, 1.70, 1, 1.51, 2, 1.36,
            5, 1.21, 10, 1.14, POSITIVE_INFINITY, 1);
    /** Cylinder moving broadside, by length over diameter, on its own volume. */
    private static final RatioTable CYLINDER = new RatioTable(1.2, 0.62, 2.5, 0.78, 5, 0.90, 9, 0.96, POSITIVE_INFINITY, 1);
    /** Exact for a thin disc in ideal flow: 8/3 r^3, on the sphere about it. */
    private static final double DISC = 2 / Math.PI;

    static AddedMassCoefficients of(ModuleBody body) {
        Base base = body.base();
        Pole pole = body.pole();
        double envelopeM3 = base.planM2() * base.heightM();
        double poleM3 = Math.PI / 4 * pole.diameterM() * pole.diameterM() * pole.lengthM();
        boolean round = base.shape() == Shape.ROUND;
        double flat = round ? DISC : PLATE.at(base.lengthM() / base.widthM());
        return new AddedMassCoefficients(
                added("base, axial", body.addedMass().baseAxial(), flat * thickness(base), plateVolumeM3(base),
                        (round ? "thin disc in ideal flow" : N103 + ", table A-2, rectangular plate (second-hand)")
                                + ", raised for its height by " + N103 + ", 4.6.3 (second-hand)"),
                added("base, lateral", body.addedMass().baseLateral(), BAR.at(base.heightM() / base.widthM()),
                        Math.PI / 4 * base.heightM() * base.heightM() * base.lengthM(),
                        N103 + ", table A-1, rectangular bar (second-hand)"),
                added("pole, lateral", body.addedMass().poleLateral(), CYLINDER.at(pole.lengthM() / pole.diameterM()),
                        poleM3, "DNV-RP-C205, cylinder broadside (from memory)"),
                perforation(base.openShare()),
                Math.max(0, Math.min(base.openShare() * base.planM2() * base.heightM(), envelopeM3 - base.volumeM3())),
                Math.max(0, poleM3 - pole.volumeM3()));
    }

    double axialM3() {
        return baseAxial.product() * perforation + waterInPoleM3;
    }

    double baseLateralM3() {
        return baseLateral.product() + waterInBaseM3;
    }

    double poleLateralM3() {
        return poleLateral.product() + waterInPoleM3;
    }

    /** On which the coefficient of a plate, or disc, stands. */
    static double plateVolumeM3(Base base) {
        double w = base.widthM();
        return base.shape() == Shape.ROUND ? Math.PI / 6 * w * w * w : Math.PI / 4 * w * w * base.lengthM();
    }

    /**
     * Share of the axial added mass that a perforated plate keeps: DNVGL-RP-N103 section 4.6.4, second-hand.
     *
     * @param openShare share of the plan that is open, 0..1
     */
    static double perforation(double openShare) {
        double percent = 100 * openShare;
        if (percent <= 5) {
            return 1;
        }
        return percent < 34 ? 0.7 + 0.3 * Math.cos(Math.PI * (percent - 5) / 34) : Math.exp((10 - percent) / 28);
    }

    /** Added mass of a body with upright sides over that of its plan as a flat plate: DNVGL-RP-N103 section 4.6.3, second-hand. */
    static double thickness(Base base) {
        double side = Math.sqrt(base.planM2());
        double lambda = side / (base.heightM() + side);
        return 1 + Math.sqrt((1 - lambda * lambda) / (2 * (1 + lambda * lambda)));
    }

    private static Coefficient added(String name, OptionalDouble stated, double usual, double volumeM3, String source) {
        return new Coefficient(name + " added mass", stated.orElse(usual), volumeM3, "m3",
                stated.isPresent() ? Coefficient.STATED : source);
    }
}
