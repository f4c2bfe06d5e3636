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

    /** What it means that the worst verdict of all sites is marginal, as the end of a sentence. */
    public static String marginal(List<SiteReview> reviews) {
        List<Boolean> byChart = reviews.stream().flatMap(review -> review.findings.stream()).filter(f -> f.verdict() == Verdict.MARGINAL)
                .map(f -> f.rule().name().equals(ChartedDepthRule.NAME)).distinct().toList();
        String chart = "at some places the depth contradicts the chart";
        return byChart.equals(List.of(true)) ? "every rule is kept, but " + chart
                : "every distance is kept, but not everywhere with the uncertainty allowance" + (byChart.size() > 1 ? ", and " + chart : "");
    }

    /** How many findings have a verdict. */
    public int count(Verdict verdict) {
        return (int) findings.stream().filter(f -> f.verdict() == verdict).count();
    }
}
