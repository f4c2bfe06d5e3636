package org.seacairn.plan;

import java.util.OptionalDouble;

/**
 * What the reef module is made of, as far as its sinking and standing depend on it. The base lies flat from the
 * module's underside up; the pole's top is the module's top.
 *
 * @param scatterDeg angular deviation of landings from the vertical, or empty: by mass
 * @param releaseTiltDeg tilt of the module as it leaves the deck: 0 upright, 90 on its side
 */
public record ModuleBody(
        Base base, Pole pole, Drag drag, AddedMass addedMass, OptionalDouble scatterDeg, double releaseTiltDeg) {
    /** Density that buoyancy is reckoned with (common practice, no source: 1020 to 1030 by salt and warmth). */
    public static final double SEA_WATER_KG_PER_M3 = 1025;

    /** Plan of a base. */
    public enum Shape { SQUARE, RECTANGLE, ROUND }

    /**
     * @param widthM the shorter side, or the diameter
     * @param lengthM the longer side; the width where the plan has only one
     * @param volumeM3 of its solid, openings left out
     * @param openShare share of the plan that is let through by openings, 0..1
     */
    public record Base(
            Shape shape, double widthM, double lengthM, double heightM, double massKg, double volumeM3, double openShare) {

        /** Area of the plan within its outline, openings and all, in square metres. */
        public double planM2() {
            return widthM * lengthM * (shape == Shape.ROUND ? Math.PI / 4 : 1);
        }
    }

    /** @param volumeM3 of its solid: what floods a hollow pole does not count */
    public record Pole(double diameterM, double lengthM, double massKg, double volumeM3) {}

    /**
     * Drag coefficients that the module file states; an empty one is that of the shape. Axial is along the pole,
     * lateral across it.
     *
     * @param uncertainty of the coefficients at 95 %, as a share of them
     */
    public record Drag(
            OptionalDouble baseAxial, OptionalDouble baseLateral, OptionalDouble poleAxial, OptionalDouble poleLateral,
            double uncertainty) {}

    /** Added-mass coefficients that the module file states; an empty one is that of the shape. */
    public record AddedMass(OptionalDouble baseAxial, OptionalDouble baseLateral, OptionalDouble poleLateral) {}
}
