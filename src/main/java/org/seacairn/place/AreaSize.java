package org.seacairn.place;

import java.util.Locale;
import org.seacairn.InputException;

/**
 * The sides of a rectangle on the ground.
 *
 * @param lengthM the longer side, whichever was given first
 * @param widthM the shorter side
 */
public record AreaSize(double lengthM, double widthM) {
    private static final double ROUNDING = 1e-9;

    public AreaSize {
        if (!(lengthM > 0 && widthM > 0) || Double.isInfinite(lengthM) || Double.isInfinite(widthM)) {
            throw new InputException("an area of " + text(lengthM, widthM) + " has no sides; ask for two lengths above 0");
        }
        double longer = Math.max(lengthM, widthM);
        widthM = Math.min(lengthM, widthM);
        lengthM = longer;
    }

    /** Whether a quarter turn leaves it as it is. */
    public boolean isSquare() {
        return lengthM - widthM <= ROUNDING * lengthM;
    }

    double diagonalM() {
        return Math.hypot(lengthM, widthM);
    }

    /** As {@code 463 m x 463 m}. */
    public String text() {
        return text(lengthM, widthM);
    }

    private static String text(double a, double b) {
        return String.format(Locale.ROOT, "%.0f m x %.0f m", a, b);
    }
}
