package org.seacairn.review;

import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Geometry;

/**
 * A proposed site and what every rule says of it.
 *
 * @param wgs84 its geometry, longitude and latitude in degrees on WGS 84
 * @param findings in the order of the rules, at least one
 */
public record SiteReview(ProposedSite site, Geometry wgs84, List<Finding> findings) {
    /** The worst verdict of all. */
    public Verdict verdict() {
        return findings.stream().map(Finding::verdict).max(Comparator.naturalOrder()).orElseThrow();
    }

    /** How many findings have a verdict. */
    public int count(Verdict verdict) {
        return (int) findings.stream().filter(f -> f.verdict() == verdict).count();
    }
}
