package org.seacairn.drop;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;

/**
 * What a current turns a standing module by about its underside: drag of the base at half its height and of the pole
 * spread along it, {@code 1/2 rho [D_base U(h/2)^2 h/2 + D_pole / l integral U(s)^2 s ds]}, with s the height above the bottom.
 * The module is taken as upright and not sunk in (safe side).
 *
 * @param baseDragAreaM2 lateral drag coefficient times area of the base
 * @param baseHeightM height of the base
 * @param poleDragAreaM2 lateral drag coefficient times diameter times length of the pole
 * @param poleFromM height of the pole's lower end above the underside
 * @param poleToM height of its upper end, not below the lower
 * @param densityKgPerM3 of the water
 */
public record CurrentMoment(
        double baseDragAreaM2, double baseHeightM, double poleDragAreaM2, double poleFromM, double poleToM, double densityKgPerM3) {
    /** Panels of a stretch without a bend. */
    private static final int PANELS = 32;

    /** Where Gauss and Legendre's rule of two points looks, in half panels from the middle; exact to the third power. */
    private static final double GAUSS = Math.sqrt(1.0 / 3);

    /**
     * @param speedMPerS of the current at a height above the bottom in metres
     * @param bendsM heights at which the current's profile bends, in any order. Between bends each component is linear and the
     *     integrand a cubic, so the result is exact; a bend that is not told costs less than a thousandth (see the test)
     * @return newton metres, 0 or more
     */
    public double aboutUndersideNm(DoubleUnaryOperator speedMPerS, double... bendsM) {
        double arm = baseHeightM / 2;
        double turning = baseDragAreaM2 * square(speedMPerS.applyAsDouble(arm)) * arm;
        if (poleToM > poleFromM) {
            turning += poleDragAreaM2 / (poleToM - poleFromM) * integral(s -> square(speedMPerS.applyAsDouble(s)) * s, bendsM);
        }
        return densityKgPerM3 / 2 * turning;
    }

    private double integral(DoubleUnaryOperator f, double[] bendsM) {
        double[] ends = DoubleStream.concat(DoubleStream.of(poleFromM, poleToM),
                Arrays.stream(bendsM).filter(bend -> bend > poleFromM && bend < poleToM)).sorted().toArray();
        double sum = 0;
        for (int i = 1; i < ends.length; i++) {
            double half = (ends[i] - ends[i - 1]) / PANELS / 2;
            for (int panel = 0; panel < PANELS; panel++) {
                double middle = ends[i - 1] + (2 * panel + 1) * half;
                sum += half * (f.applyAsDouble(middle - GAUSS * half) + f.applyAsDouble(middle + GAUSS * half));
            }
        }
        return sum;
    }

    private static double square(double v) {
        return v * v;
    }
}
