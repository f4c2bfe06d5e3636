package org.seacairn.place;

/**
 * Geodesic distance from a site to the nearest feature of one layer.
 *
 * @param layer the layer's label
 * @param distanceM to the nearest point of the geometry, 0 inside a polygon
 * @param requiredM keep-off with its uncertainty allowance at this site
 * @param nearest name of the nearest feature, or {@code #id}
 * @param nearestLongitudeDeg nearest point, WGS 84
 * @param nearestLatitudeDeg nearest point, WGS 84
 */
public record Clearance(
        String layer, double distanceM, double requiredM, String nearest,
        double nearestLongitudeDeg, double nearestLatitudeDeg) {

    /** Whether the place is inside the layer, or nearer than required. */
    public boolean isTooNear() {
        return distanceM == 0 || marginM() < 0;
    }

    /** What is left over, in metres; negative when the site is too near. */
    public double marginM() {
        return distanceM - requiredM;
    }
}
