package org.seacairn.drop;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;

/**
 * Where a module must leave the deck to land on a target, in one current.
 *
 * @param profile name of the current's profile, or empty text: the plan has one without a name
 * @param releaseLongitudeDeg on the target's datum
 * @param bearingDeg true direction from the target to the release point; NaN where they are one
 * @param touchdown at the target; its drift leads from the release point to the target
 */
public record PlannedDrop(
        String profile, double releaseLongitudeDeg, double releaseLatitudeDeg, double bearingDeg,
        Touchdown touchdown, LandingParts landing) {

    /** The release point is as far up-current of the target as the module drifts. */
    static PlannedDrop of(String profile, double longitudeDeg, double latitudeDeg, Touchdown touchdown, LandingParts landing, Geodesic geodesic) {
        double bearingDeg = Math.toDegrees(Math.atan2(-touchdown.driftEastM(), -touchdown.driftNorthM()));
        GeodesicData release = geodesic.Direct(latitudeDeg, longitudeDeg, bearingDeg, touchdown.driftM());
        return new PlannedDrop(profile, release.lon2, release.lat2,
                touchdown.driftM() == 0 ? Double.NaN : (bearingDeg + 360) % 360, touchdown, landing);
    }
}
