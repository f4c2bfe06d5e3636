package org.seacairn.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.Progress;
import org.seacairn.place.Pick;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan;
import org.seacairn.review.Finding;
import org.seacairn.review.Proposal;
import org.seacairn.review.ProposedSite;
import org.seacairn.review.Review;
import org.seacairn.review.SiteReview;
import org.seacairn.review.Verdict;
import org.seacairn.score.WorkingDepth;
import org.seacairn.score.WorkingLayers;

/**
 * What a review says of sites that were just chosen. The grid looks at cell centres, a review at the whole
 * landing circle and at what a layer covers, so a site may be marginal or without data; a failure is a fault
 * of Seacairn.
 */
final class ReviewedSites {
    /** Two ways to the same figure differ by less. */
    private static final double TOLERANCE = 0.02;
    private static final int NAMED = 5;

    private ReviewedSites() {}

    /**
     * One line for each rule that is not met in full.
     *
     * @throws IllegalStateException if a site fails by more than rounding
     */
    static List<String> warnings(SitingPlan plan, WorkingDepth depth, WorkingLayers layers, List<Pick> picks, List<Site> sites, int threads,
            Progress progress) {
        if (sites.isEmpty()) {
            return List.of();
        }
        List<ProposedSite> proposed = new ArrayList<>();
        for (int i = 0; i < picks.size(); i++) {
            proposed.add(new ProposedSite(sites.get(i).name(), new GeometryFactory().createPoint(
                    new Coordinate(picks.get(i).longitudeDeg(), picks.get(i).latitudeDeg()))));
        }
        List<SiteReview> reviews = Review.of(plan, depth, layers, new Proposal(plan.file(), proposed, List.of()), threads, progress);
        reviews.stream().flatMap(review -> review.findings().stream()).forEach(ReviewedSites::refuseFailure);
        return open(reviews, "sites.csv");
    }

    /**
     * One line for each rule that is not met in full.
     *
     * @param file that holds what was reviewed, for a review of its own
     */
    static List<String> open(List<SiteReview> reviews, String file) {
        Map<String, List<String>> open = new LinkedHashMap<>();
        for (SiteReview review : reviews) {
            for (Finding finding : review.findings()) {
                if (finding.verdict() != Verdict.PASS) {
                    open.computeIfAbsent(finding.rule().name() + ": " + finding.verdict() + " in a review at ", k -> new ArrayList<>())
                            .add(finding.site());
                }
            }
        }
        return open.entrySet().stream().map(e -> e.getKey() + named(e.getValue()) + " (run review on " + file + " for the figures)").toList();
    }

    private static String named(List<String> sites) {
        return String.join(", ", sites.subList(0, Math.min(NAMED, sites.size())))
                + (sites.size() > NAMED ? " and " + (sites.size() - NAMED) + " more" : "");
    }

    private static void refuseFailure(Finding finding) {
        double shortOf = -(finding.figures().margin() + finding.figures().allowance());
        if (finding.verdict() == Verdict.FAIL && !(shortOf <= TOLERANCE)) {
            throw new IllegalStateException(String.format(Locale.ROOT, "site %s was chosen and fails a review by %s: required %.3f,"
                    + " measured %.3f, %s", finding.site(), finding.rule().name(), finding.figures().required(),
                    finding.figures().measured(), finding.note()));
        }
    }
}
