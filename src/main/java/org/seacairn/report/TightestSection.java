package org.seacairn.report;

import java.util.Comparator;
import java.util.List;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.review.Figures.Unit;
import org.seacairn.review.Finding;
import org.seacairn.review.SiteReview;
import org.seacairn.review.Verdict;

/** Where least is left over, or most is missing. */
record TightestSection(Display display, List<SiteReview> reviews) implements Section {
    private static final int SHOWN = 10;

    @Override
    public String id() {
        return "tightest";
    }

    @Override
    public String heading() {
        return "Tightest margins";
    }

    @Override
    public void write(Html html) {
        List<Finding> tightest = reviews.stream().flatMap(review -> review.findings().stream())
                .filter(f -> f.verdict() != Verdict.NO_DATA && f.figures().unit() == Unit.METRES && Double.isFinite(f.figures().margin()))
                // Whether two sites are one is no question of metres.
                .filter(f -> !f.rule().name().equals("duplicate") && !f.rule().name().equals("overlap"))
                .sorted(Comparator.comparingDouble(f -> f.figures().margin())).limit(SHOWN).toList();
        if (tightest.isEmpty()) {
            html.element("p", "No length was measured.").newLine();
            return;
        }
        new FindingTable(display, true, "Least left over after requirement and allowance").write(html, tightest);
        html.element("p", "Margin: what is left of the measured after the required and the allowance for uncertainty, rounded down; below 0 it"
                + " is missing.", "class", "note").newLine();
    }
}
