package org.seacairn.drop;

/**
 * What a base meets as it goes down into a cohesive bottom: {@code Q(z) = Nc (su0 + k z) A}, with Nc of
 * {@link BearingFactor} and the undrained strength at the level of the underside. Friction on the sides, overburden
 * and the rate of strain are left out, all of which would hold it higher (safe side).
 *
 * @param widthM of the base's outline, one side or the diameter
 * @param lengthM of the base's outline, the other side or the diameter again
 * @param areaM2 of the base's plan that bears, openings left out
 * @param strengthPa undrained strength at the bottom's surface, 0 or more; NaN where it is not known
 * @param gradientPaPerM its growth with depth, 0 or more; NaN where it is not known
 */
public record Bearing(double widthM, double lengthM, double areaM2, double strengthPa, double gradientPaPerM) {
    /** @throws IllegalArgumentException if a measure of the base is not above 0, or a strength is negative */
    public Bearing {
        boolean base = widthM > 0 && lengthM > 0 && areaM2 > 0;
        if (!base || strengthPa < 0 || gradientPaPerM < 0) {
            throw new IllegalArgumentException("no bearing of base " + widthM + " x " + lengthM + " m, " + areaM2
                    + " m2, strength " + strengthPa + " Pa and " + gradientPaPerM + " Pa/m");
        }
    }

    /** Depth from which the bearing factor stays the same, in metres. */
    double deepFromM() {
        return BearingFactor.DEEPEST * Math.min(widthM, lengthM);
    }

    /** Q in newtons at a depth of the underside of 0 or more, infinity included. */
    public double resistanceN(double depthM) {
        // Without growth the strength far down is that of the surface; 0 times infinity would be NaN.
        double strength = gradientPaPerM == 0 ? strengthPa : strengthPa + gradientPaPerM * depthM;
        return BearingFactor.of(depthM, widthM, lengthM) * strength * areaM2;
    }

    /** Integral of Q from 0 down to a finite depth, in joules; exact, since Q is a polynomial above and below {@link #deepFromM}. */
    public double workJ(double depthM) {
        double deep = deepFromM();
        double z = Math.min(depthM, deep);
        double perM = BearingFactor.PER_WIDTH / Math.min(widthM, lengthM);
        double surface = BearingFactor.atSurface(widthM, lengthM) * areaM2;
        double upper = surface * z * (strengthPa + z * ((gradientPaPerM + perM * strengthPa) / 2 + z * perM * gradientPaPerM / 3));
        return depthM <= deep ? upper : upper + (depthM - deep) * (resistanceN(deep) + resistanceN(depthM)) / 2;
    }
}
