package org.seacairn.geodesy;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.locationtech.jts.geom.Coordinate;

/** Places laid out in metres about another, by GeographicLib. */
public final class PlaceFrom {
    private static final Geodesic WGS84 = Geodesic.WGS84;

    private PlaceFrom() {}

    /** A point some metres east and north of a place, by GeographicLib. */
    public static Coordinate place(double lon, double lat, double eastM, double northM) {
        GeodesicData end = WGS84.Direct(lat, lon, Math.toDegrees(Math.atan2(eastM, northM)), Math.hypot(eastM, northM));
        return new Coordinate(end.lon2, end.lat2);
    }
}
