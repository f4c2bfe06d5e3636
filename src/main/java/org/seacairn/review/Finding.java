package org.seacairn.review;

/**
 * What one rule says of one proposed site. Longitudes and latitudes in degrees on WGS 84.
 *
 * @param nearestFeature name of the nearest feature, or empty text
 * @param nearestLongitudeDeg nearest point of that feature, or NaN
 * @param bearingDeg true, at the place, towards that point, 0 to 360; NaN where there is none
 * @param longitudeDeg the place where it was measured: the point, the worst cell, or a polygon's worst point
 * @param note what the figures do not say, or empty text
 */
public record Finding(
        String site, RuleText rule, Figures figures, Verdict verdict,
        String nearestFeature, double nearestLongitudeDeg, double nearestLatitudeDeg, double bearingDeg,
        double longitudeDeg, double latitudeDeg, String note) {}
