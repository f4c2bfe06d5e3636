package org.seacairn.sample;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;

/**
 * The invented sea floor: a shelf that falls eastward over a meandering edge, drowned shorelines as
 * ledges, a river channel from lower sea level that cuts the edge, gullies below it, sand waves above
 * it, and one patch of pinnacles. Depths in metres, positive down.
 */
final class SampleTerrain {
    /** A drowned shoreline: a step down, at this depth of the smooth shelf. */
    record Ledge(double depthM, double stepM) {}

    static final List<Ledge> LEDGES = List.of(
            new Ledge(42, 1.2), new Ledge(58, 1.8), new Ledge(77, 3.0), new Ledge(96, 2.4), new Ledge(118, 1.6));

    /** Centre of the patch of pinnacles. */
    static final Coordinate PINNACLES = new Coordinate(13_350, 12_650);

    private static final long SEED = 20_260_101;
    /** The edge leans this far east for each metre north: about 20 degrees, north by north-east. */
    private static final double LEAN = 0.36;

    private final GradientNoise broad = new GradientNoise(SEED);
    private final GradientNoise middle = new GradientNoise(SEED + 1);
    private final GradientNoise fine = new GradientNoise(SEED + 2);
    private final GradientNoise along = new GradientNoise(SEED + 3);
    private final List<double[]> pinnacles = pinnacles();

    /** Depth with everything on it. */
    double depthM(double x, double y) {
        double seaward = seawardOfEdge(x, y);
        double shelf = shelfM(seaward);
        double channel = channelM(x, y, seaward);
        // Where the river cut more than a ledge is high, the ledge is gone.
        double ledges = ledgesM(x, y, seaward) / (1 + channel * channel);
        return softFloor(shelf + ledges + channel + gulliesM(x, y, seaward)
                + sandWavesM(x, y, seaward) + roughnessM(x, y) - pinnaclesM(x, y));
    }

    /** Depth of the smooth shelf alone: what the bands of bottom types and the ledges follow. */
    double shelfM(double x, double y) {
        return shelfM(seawardOfEdge(x, y));
    }

    /** How far a place lies seaward of the shelf edge, in metres; negative on the shelf. */
    double seawardOfEdge(double x, double y) {
        double edge = 12_300 + LEAN * (y - SampleFrame.HEIGHT_M / 2)
                + 900 * wave(y, 11_300, 0.6) + 380 * wave(y, 4_900, 2.1);
        return (x - edge) / StrictMath.hypot(1, LEAN)
                + 700 * broad.at(x / 5_200, y / 5_200) + 260 * middle.at(x / 1_700, y / 1_700)
                + 120 * fine.at(x / 640, y / 640 + 70);
    }

    private static double shelfM(double seaward) {
        return 55 + 0.0021 * seaward + 70 * (1 + StrictMath.tanh((seaward - 3_200) / 3_500));
    }

    /** Share of its full step that a ledge has at this place along the shelf, 0..1: ledges come and go. */
    double ledgeStrength(int ledge, double y) {
        return ramp(along.at(y / 2_300, 10.5 + 7 * ledge), -0.18, 0.12);
    }

    private double ledgesM(double x, double y, double shelfSeaward) {
        double shelf = shelfM(shelfSeaward);
        double fall = (shelfM(shelfSeaward + 5) - shelfM(shelfSeaward - 5)) / 10;
        double sum = 0;
        for (int i = 0; i < LEDGES.size(); i++) {
            Ledge ledge = LEDGES.get(i);
            double seaward = (shelf - ledge.depthM()) / fall;
            if (StrictMath.abs(seaward) > 1_250) {
                continue;
            }
            seaward += 30 * fine.at(x / 160 + 50 * i, y / 160);
            // A step whose height is given back over a kilometre to either side.
            double step = ramp(seaward, -22, 22) - ramp(seaward, -1_200, 1_200);
            double lip = 0.3 * StrictMath.exp(-(seaward + 70) * (seaward + 70) / (2 * 45 * 45));
            sum += ledge.stepM() * ledgeStrength(i, y) * (step - lip);
        }
        return sum;
    }

    /** Northing of the channel's centre line. */
    static double channelY(double x) {
        return 6_700 + 0.07 * (x - 12_000) + 620 * wave(x, 8_600, 0.4) + 260 * wave(x, 3_300, 1.2);
    }

    /** Half the width of the channel between the middles of its walls. */
    static double channelHalfWidthM(double seaward) {
        return 190 + 280 * ramp(seaward, -4_000, 3_500);
    }

    private double channelM(double x, double y, double seaward) {
        double h = 10;
        double bend = (channelY(x + h) - channelY(x - h)) / (2 * h);
        double aside = (y - channelY(x)) / StrictMath.hypot(1, bend) + 60 * fine.at(x / 420, y / 420 + 90);
        double cut = 3.2 + 24 * ramp(seaward, -4_200, 1_200);
        double main = cut * (1 - ramp(seaward, 3_500, 11_000)) * trough(aside / channelHalfWidthM(seaward));
        // A tributary from the south-west joins the channel at x = 8,200.
        double tributary = y - channelY(8_200) + 0.85 * (8_200 - x) - 210 * wave(x, 2_600, 0);
        return main + 2.6 * ramp(x, 1_000, 4_500) * (1 - ramp(x, 7_900, 8_300)) * trough(tributary / 1.31 / 150);
    }

    private static double trough(double share) {
        double squared = share * share;
        return 1 / (1 + squared * squared * squared);
    }

    /** Gullies run straight down the slope; their heads lie at different depths. */
    private double gulliesM(double x, double y, double seaward) {
        double across = (y - 0.5 * LEAN * x) / 1_250 + 0.22 * broad.at(x / 1_900 + 8, y / 1_900);
        double valley = 1 - 2.6 * StrictMath.abs(middle.at(across + 31, seaward / 7_000));
        double head = 2_000 + 3_600 * (along.at(across * 0.9, 55.5) + 0.5);
        double cut = ramp(seaward, head, head + 2_400) * (1 - ramp(seaward, 6_500, 11_500));
        return valley <= 0 ? 0 : 6.5 * cut * valley * valley;
    }

    private double sandWavesM(double x, double y, double seaward) {
        double field = ramp(broad.at(x / 3_300 + 17, y / 3_300), 0.02, 0.25)
                * ramp(seaward, -9_500, -8_000) * (1 - ramp(seaward, -2_200, -900));
        double phase = 2 * StrictMath.PI * ((0.35 * x + 0.94 * y) / 330 + 0.8 * fine.at(x / 1_100, y / 1_100));
        return -0.45 * field * (StrictMath.sin(phase) + 0.25 * StrictMath.sin(2 * phase));
    }

    private double roughnessM(double x, double y) {
        return 0.9 * middle.at(x / 820 + 5, y / 820) + 0.35 * fine.at(x / 300, y / 300 + 40);
    }

    private static List<double[]> pinnacles() {
        List<double[]> all = new ArrayList<>();
        for (int i = 0; i < 46; i++) {
            double angle = 2 * StrictMath.PI * GradientNoise.uniform(SEED, 4 * i);
            double away = 620 * StrictMath.sqrt(GradientNoise.uniform(SEED, 4 * i + 1));
            all.add(new double[] {
                PINNACLES.x + 0.8 * away * StrictMath.cos(angle), PINNACLES.y + 1.25 * away * StrictMath.sin(angle),
                2 + 4.5 * GradientNoise.uniform(SEED, 4 * i + 2), 30 + 28 * GradientNoise.uniform(SEED, 4 * i + 3)});
        }
        return all;
    }

    private double pinnaclesM(double x, double y) {
        if (StrictMath.abs(x - PINNACLES.x) > 900 || StrictMath.abs(y - PINNACLES.y) > 1_100) {
            return 0;
        }
        double highest = 0;
        for (double[] p : pinnacles) {
            double away2 = (x - p[0]) * (x - p[0]) + (y - p[1]) * (y - p[1]);
            highest = StrictMath.max(highest, p[2] * StrictMath.exp(-away2 / (2 * p[3] * p[3])));
        }
        return highest;
    }

    /** Lets nothing rise above 30 m without a kink. */
    private static double softFloor(double depth) {
        return depth >= 36 ? depth : 30 + 6 * StrictMath.exp((depth - 36) / 6);
    }

    private static double wave(double along, double length, double phase) {
        return StrictMath.sin(2 * StrictMath.PI * along / length + phase);
    }

    /** 0 up to {@code from}, 1 from {@code to} on, smooth between. */
    static double ramp(double value, double from, double to) {
        double t = StrictMath.min(1, StrictMath.max(0, (value - from) / (to - from)));
        return t * t * (3 - 2 * t);
    }
}
