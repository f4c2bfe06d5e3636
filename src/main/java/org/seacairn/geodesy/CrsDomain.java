package org.seacairn.geodesy;

import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.InputException;

/**
 * Where the coordinates of a CRS are places on Earth: longitudes within ±360 and latitudes within ±90 degrees; of a projected CRS
 * what comes back from such a place to within {@value #RETURN_M} m. Inverse projections answer any coordinates with some place: a
 * northing of 10^9 m in a UTM zone with the pole.
 */
public final class CrsDomain {
    /** Far above what projections lose within their area of use (under 1 cm), and far below any keep-off distance. */
    private static final double RETURN_M = 1;
    /** Files count longitudes from -180, from 0, and on past the antimeridian. */
    private static final double WIDEST_LONGITUDE_DEG = 360;
    private static final double WIDEST_LATITUDE_DEG = 90;

    /** Both are null for longitude and latitude. */
    private final CoordinateTransform toLonLat;
    private final CoordinateTransform back;
    private final double returnUnits;

    private CrsDomain(Crs crs) {
        // On its own datum, so that no datum shift is asked for its limits.
        this.toLonLat = crs.isGeographic() ? null : crs.to(crs.geographic());
        this.back = crs.isGeographic() ? null : crs.geographic().to(crs);
        this.returnUnits = RETURN_M / crs.metresPerUnit();
    }

    /** The places of a CRS, in its own units. */
    public static CrsDomain of(Crs crs) {
        return new CrsDomain(crs);
    }

    /** Whether numbers can be degrees of longitude and latitude. */
    public static boolean isLonLat(double x, double y) {
        return Math.abs(x) <= WIDEST_LONGITUDE_DEG && Math.abs(y) <= WIDEST_LATITUDE_DEG;
    }

    /** The first vertex that is no place, in the order of the geometry's vertices. */
    public Optional<Coordinate> firstOutside(Geometry geometry) {
        for (Coordinate c : geometry.getCoordinates()) {
            if (!holds(c.x, c.y)) {
                return Optional.of(c);
            }
        }
        return Optional.empty();
    }

    /** Whether coordinates are a place; numbers that are none or infinite never are. */
    public boolean holds(double x, double y) {
        if (toLonLat == null) {
            return isLonLat(x, y);
        }
        if (!Double.isFinite(x) || !Double.isFinite(y)) {
            return false;
        }
        try {
            double[] xy = {x, y};
            toLonLat.apply(xy);
            if (!isLonLat(xy[0], xy[1])) {
                return false;
            }
            back.apply(xy);
            return Math.abs(xy[0] - x) <= returnUnits && Math.abs(xy[1] - y) <= returnUnits;
        } catch (InputException e) {
            return false;
        }
    }
}
