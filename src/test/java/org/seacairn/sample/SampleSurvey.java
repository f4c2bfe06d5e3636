package org.seacairn.sample;

import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;

/**
 * The sea floor as an echo sounder would have left it: cells where lines were run, none elsewhere.
 * Lines run north and south, end raggedly, leave one gap between two of them and one larger hole.
 */
final class SampleSurvey {
    static final float NO_DATA = -9999;

    private static final long SEED = 42;
    private static final double LINE_SPACING_M = 180;

    private final SampleTerrain terrain = new SampleTerrain();
    private final GradientNoise noise = new GradientNoise(SEED);

    /** Elevations in metres, negative below chart datum, to 5 cm; row by row from the north-west. */
    float[] elevations() {
        float[] values = new float[SampleFrame.COLS * SampleFrame.ROWS];
        IntStream.range(0, SampleFrame.ROWS).parallel().forEach(row -> {
            for (int col = 0; col < SampleFrame.COLS; col++) {
                Coordinate at = SampleFrame.centre(col, row);
                values[row * SampleFrame.COLS + col] = covered(at.x, at.y)
                        ? (float) -SampleFrame.rounded(terrain.depthM(at.x, at.y), 20) : NO_DATA;
            }
        });
        return values;
    }

    private boolean covered(double x, double y) {
        long line = (long) StrictMath.floor(x / LINE_SPACING_M);
        double toSouth = 90 + 300 * GradientNoise.uniform(SEED, 2 * line) + 350 * (noise.at(x / 2_500, 0.5) + 0.5);
        double toNorth = 90 + 300 * GradientNoise.uniform(SEED, 2 * line + 1) + 350 * (noise.at(x / 2_500, 9.5) + 0.5);
        double toWest = 70 + 160 * noise.at(3.5, y / 700);
        double toEast = 260 + 700 * (noise.at(7.5, y / 3_000) + 0.3) + 240 * noise.at(5.5, y / 420);
        boolean inside = x > toWest && x < SampleFrame.WIDTH_M - toEast
                && y > toSouth && y < SampleFrame.HEIGHT_M - toNorth;
        return inside && !hole(x, y) && !lineGap(x, y);
    }

    /** Where the weather turned: about 900 by 600 m. */
    private boolean hole(double x, double y) {
        double away = StrictMath.hypot((x - 11_250) / 450, (y - 4_350) / 300);
        return away < 1 + 0.6 * noise.at(x / 260, y / 260 + 50);
    }

    /** Two lines run too far apart. */
    private static boolean lineGap(double x, double y) {
        double middle = 14_940 + 12 * StrictMath.sin(y / 400);
        return StrictMath.abs(x - middle) < 26 && y > 9_800 && y < 11_900;
    }
}
