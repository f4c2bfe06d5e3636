package org.seacairn.drop;

/**
 * How a module would come down on a bottom and stand there. Screening figures: they rank and warn, they certify nothing.
 *
 * @param impactSpeedMPerS downward, as the base touches
 * @param impactEnergyJ with the water that moves along
 * @param tiltDeg of the module against the vertical as it comes down, the worst of the profiles
 * @param embedment into the bottom; NaN where no strength of it is stated
 * @param reliefM height of the module that stands above the bottom; NaN with the embedment
 * @param stability factor of safety against overturning on the slope, with that tilt, in the current there; infinite
 *     where nothing turns it over, NaN where the slope is not known
 */
public record Standing(
        double impactSpeedMPerS, double impactEnergyJ, double tiltDeg, Embedment embedment, double reliefM, double stability) {}
