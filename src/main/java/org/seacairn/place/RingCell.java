package org.seacairn.place;

import java.util.Comparator;

/**
 * A scored cell about a stone.
 *
 * @param distanceM on the ground to the nearest point of the stone
 * @param azimuthDeg of the geodesic from the stone's centre, -180..180
 * @param centreM its length
 */
record RingCell(Pick pick, double distanceM, double azimuthDeg, double centreM) {
    /** By bearing from north, then the nearer to the stone, the more northern, the more western. */
    static final Comparator<RingCell> FROM_NORTH = Comparator.comparingDouble(RingCell::bearingDeg)
            .thenComparingDouble(RingCell::distanceM)
            .thenComparingInt((RingCell c) -> c.pick.row()).thenComparingInt(c -> c.pick.col());

    /** 0 up to but not 360. */
    double bearingDeg() {
        double bearing = azimuthDeg < 0 ? azimuthDeg + 360 : azimuthDeg;
        // The smallest of angles west of north rounds up to a whole turn; -0 is north too.
        return bearing >= 360 || bearing == 0 ? 0 : bearing;
    }
}
