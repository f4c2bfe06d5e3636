package org.seacairn.place;

import org.locationtech.jts.geom.Geometry;

/**
 * What a ring is asked for.
 *
 * @param stone in longitude and latitude on the working CRS's datum; edges are geodesics
 * @param innerM least ground distance of a module to the nearest point of the stone
 * @param outerM largest such distance
 * @param modules how many, at least 1; more than {@value #MOST_MODULES} never fit
 * @param apartM least ground distance between any two modules
 */
public record RingRequest(Geometry stone, double innerM, double outerM, int modules, double apartM) {
    /** A module for each degree: more are no ring. */
    public static final int MOST_MODULES = 360;

    public RingRequest {
        if (stone.isEmpty() || !(innerM >= 0) || !(outerM > innerM) || !Double.isFinite(outerM) || modules < 1 || !(apartM >= 0)) {
            throw new IllegalArgumentException(modules + " modules from " + innerM + " m to " + outerM + " m about "
                    + stone.getGeometryType() + ", " + apartM + " m apart");
        }
    }
}
