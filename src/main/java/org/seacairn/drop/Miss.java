package org.seacairn.drop;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;

/**
 * From where a module was planned to where it was surveyed.
 *
 * @param eastM metres east
 * @param northM metres north
 */
public record Miss(double eastM, double northM) {
    /** Along the geodesic on WGS 84, in its direction at the planned place. Degrees. */
    static Miss between(double plannedLongitudeDeg, double plannedLatitudeDeg, double surveyedLongitudeDeg, double surveyedLatitudeDeg) {
        GeodesicData line = Geodesic.WGS84.Inverse(plannedLatitudeDeg, plannedLongitudeDeg, surveyedLatitudeDeg, surveyedLongitudeDeg);
        double bearing = Math.toRadians(line.azi1);
        return new Miss(line.s12 * Math.sin(bearing), line.s12 * Math.cos(bearing));
    }

    Miss over(double depthM) {
        return new Miss(eastM / depthM, northM / depthM);
    }
}
