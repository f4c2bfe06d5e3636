package org.seacairn.sample;

import org.locationtech.jts.geom.Coordinate;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;

/** Where the invented coast is laid: an arbitrary spot of open ocean in UTM zone 17 north. */
final class SampleFrame {
    static final int EPSG = 32617;
    static final int COLS = 1200;
    static final int ROWS = 900;
    static final double CELL_M = 20;
    static final double WIDTH_M = COLS * CELL_M;
    static final double HEIGHT_M = ROWS * CELL_M;
    static final double WEST_M = 652_000;
    static final double SOUTH_M = 3_255_000;
    static final double NORTH_M = SOUTH_M + HEIGHT_M;

    private static final CoordinateTransform TO_LONGITUDE_LATITUDE = Crs.ofEpsg(EPSG).to(Crs.WGS84);

    private SampleFrame() {}

    /** The centre of a cell; row 0 is the northernmost. */
    static Coordinate centre(int col, int row) {
        return new Coordinate((col + 0.5) * CELL_M, (ROWS - row - 0.5) * CELL_M);
    }

    /** Longitude and latitude in degrees, rounded to 1e-7 degrees (about a centimetre). */
    static Coordinate longitudeLatitude(double x, double y) {
        Coordinate degrees = TO_LONGITUDE_LATITUDE.apply(WEST_M + x, SOUTH_M + y);
        return new Coordinate(rounded(degrees.x, 1e7), rounded(degrees.y, 1e7));
    }

    /** A number rounded to {@code 1 / perUnit}. */
    static double rounded(double value, double perUnit) {
        return StrictMath.floor(value * perUnit + 0.5) / perUnit;
    }
}
