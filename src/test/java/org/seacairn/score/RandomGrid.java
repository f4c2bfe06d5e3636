package org.seacairn.score;

import java.util.Random;

/**
 * Where a small random grid lies: UTM zone 17 north or a southern zone, its corner on no round figure.
 *
 * @param zone of UTM on WGS 84, negative in the south
 * @param centre longitude and latitude of its middle
 */
record RandomGrid(int zone, double west, double north, double cellM, int cols, int rows, double[] centre) {
    private static final double[] CELLS_M = {10, 12.5, 16, 20, 25};

    static RandomGrid of(Random random) {
        int zone = random.nextInt(3) > 0 ? 17 : -33;
        return about(random, zone, 6 * Math.abs(zone) - 183 + 5.6 * (random.nextDouble() - 0.5));
    }

    /** In the southern half of zone 1, a little of it beyond 180 degrees. */
    static RandomGrid acrossTheAntimeridian(Random random) {
        return about(random, -1, -180);
    }

    private static RandomGrid about(Random random, int zone, double lon) {
        double[] middle = PlainMap.utm(zone, lon, Math.copySign(5 + 60 * random.nextDouble(), zone));
        double cellM = CELLS_M[random.nextInt(CELLS_M.length)];
        int cols = 17 + random.nextInt(30);
        int rows = 9 + random.nextInt(20);
        // A tenth of the grid lies west of the place.
        double west = Math.rint(100 * (middle[0] - 0.1 * cols * cellM)) / 100;
        double north = Math.rint(100 * middle[1]) / 100;
        return new RandomGrid(zone, west, north, cellM, cols, rows,
                PlainMap.lonLat(zone, west + cols * cellM / 2, north - rows * cellM / 2));
    }

    double widthM() {
        return cols * cellM;
    }

    double heightM() {
        return rows * cellM;
    }

    double[] cellLonLat(int col, int row) {
        return PlainMap.lonLat(zone, west + (col + 0.5) * cellM, north - (row + 0.5) * cellM);
    }
}
