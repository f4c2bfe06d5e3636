package org.seacairn.place;

import java.util.stream.IntStream;
import org.seacairn.InputException;

/**
 * How rectangles may be turned. A turn is the true bearing of the long side at the rectangle's centre,
 * in degrees from 0 up to 180; for a square it is that of a side.
 */
public final class AreaTurns {
    /** Turns tried over half a circle. */
    static final int STEPS = 12;
    static final double STEP_DEG = 180.0 / STEPS;

    /** Sides along true north and east, the long side along either. */
    public static final AreaTurns NORTH = new AreaTurns(false, Double.NaN);
    /** Every 15 degrees, the best one kept. */
    public static final AreaTurns ANY = new AreaTurns(false, Double.NaN);
    /** Of the turns every 15 degrees the one nearest to the isobath. */
    public static final AreaTurns ISOBATH = new AreaTurns(true, Double.NaN);

    private final boolean alongIsobath;
    private final double bearingDeg;

    private AreaTurns(boolean alongIsobath, double bearingDeg) {
        this.alongIsobath = alongIsobath;
        this.bearingDeg = bearingDeg;
    }

    /** The long side at one true bearing in degrees. */
    public static AreaTurns fixed(double bearingDeg) {
        if (!(Math.abs(bearingDeg) <= 360)) {
            throw new InputException("a turn of " + bearingDeg + " degrees is no bearing; write 0 to 360");
        }
        double half = bearingDeg % 180;
        return new AreaTurns(false, half < 0 ? half + 180 : half + 0.0);
    }

    /** Whether each place has one turn only, that of its isobath. */
    boolean alongIsobath() {
        return alongIsobath;
    }

    /** The turns of a size that are different rectangles, ascending. */
    double[] of(AreaSize size) {
        if (!Double.isNaN(bearingDeg)) {
            return new double[] {bearingDeg};
        }
        if (this == NORTH) {
            return size.isSquare() ? new double[] {0} : new double[] {0, 90};
        }
        int turns = size.isSquare() ? STEPS / 2 : STEPS;
        return IntStream.range(0, turns).mapToDouble(i -> i * STEP_DEG).toArray();
    }
}
