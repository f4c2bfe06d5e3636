package org.seacairn.drop;

import java.util.Locale;
import java.util.Optional;
import org.apache.commons.math3.special.Erf;

/**
 * How landings scatter about where the current alone would take them: normally, each way alike, with a deviation of
 * {@code delta = d tan(alpha)} along any line at depth d (DNV-RP-F107, Risk assessment of pipeline protection, section 5).
 * 68 % of landings lie within delta <em>along a line</em>; in the plane a circle of that radius holds only 39 %, and that of
 * 95 % has 2.4477 delta.
 *
 * @param angleDeg alpha, 0 to below 90
 */
public record Scatter(double angleDeg) {
    /** Deviations that the radius of 95 % has in the plane: {@code sqrt(-2 ln 0.05)}, 2.4477. */
    public static final double RADIUS_95 = Math.sqrt(-2 * Math.log(0.05));

    /** Where the angle of the table steps, in kilograms. */
    private static final double[] STEPS_KG = {2000, 8000};
    private static final double[] ANGLES_DEG = {15, 9, 5};

    /** A mass is seldom known better than this (judgement). */
    private static final double NEAR = 0.05;

    /** @throws IllegalArgumentException if the angle is out of range */
    public Scatter {
        if (!(angleDeg >= 0 && angleDeg < 90)) {
            throw new IllegalArgumentException("no angle of scatter: " + angleDeg);
        }
    }

    /**
     * Flat or long-shaped objects of DNV-RP-F107 (October 2010, table 10): 15 degrees under 2 t, 9 from 2 to 8 t, 5 over 8 t.
     *
     * @param massKg in air
     */
    public static Scatter ofMass(double massKg) {
        if (massKg < STEPS_KG[0]) {
            return new Scatter(ANGLES_DEG[0]);
        }
        return new Scatter(massKg <= STEPS_KG[1] ? ANGLES_DEG[1] : ANGLES_DEG[2]);
    }

    /** A clause for a reader where the mass is within 5 % of a step of the table, such as "7.90 t is near 8 t, where ...". */
    public static Optional<String> nearStep(double massKg) {
        for (int i = 0; i < STEPS_KG.length; i++) {
            // A relative share, so that 7600 kg is still near 8000 in spite of rounding.
            if (Math.abs(massKg - STEPS_KG[i]) <= NEAR * STEPS_KG[i] * (1 + 1e-12)) {
                return Optional.of(String.format(Locale.ROOT, "%.2f t is near %.0f t, where the angle of scatter steps from %.0f to %.0f degrees",
                        massKg / 1000, STEPS_KG[i] / 1000, ANGLES_DEG[i], ANGLES_DEG[i + 1]));
            }
        }
        return Optional.empty();
    }

    /** Deviation along a line, delta, in metres. */
    public double deviationM(double depthM) {
        return depthM * Math.tan(Math.toRadians(angleDeg));
    }

    /** Share of landings within a distance either way <em>along a line</em>, as DNV-RP-F107 counts them: {@code erf(r / (delta sqrt 2))}. */
    public double shareAlongLine(double distanceM, double depthM) {
        return distanceM == 0 ? 0 : Erf.erf(distanceM / (deviationM(depthM) * Math.sqrt(2)));
    }

    /** Radius in the plane that holds 95 % of landings, in metres. */
    public double radius95M(double depthM) {
        return RADIUS_95 * deviationM(depthM);
    }
}
