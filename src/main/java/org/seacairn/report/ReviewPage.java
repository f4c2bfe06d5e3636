package org.seacairn.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.seacairn.export.Run;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.review.SiteReview;
import org.seacairn.review.Verdict;

/** The page of a review. */
public final class ReviewPage {
    /** @param feature joins it with the map */
    record Judged(SiteReview review, String feature) {}

    private ReviewPage() {}

    /**
     * @param proposal file name
     * @param display of the review, which the command line may state
     * @param marginalOk whether marginal verdicts are let through
     * @param reviews in the order of the proposal, as they are written to {@code review.csv}
     * @param unchecked one line each
     * @param map empty: none was drawn
     */
    public static Page of(Run run, String proposal, Display display, boolean marginalOk, List<SiteReview> reviews, List<String> unchecked,
            Optional<MapSection> map) {
        List<Judged> worstFirst = IntStream.range(0, reviews.size()).mapToObj(i -> new Judged(reviews.get(i), FeatureId.proposed(i)))
                .sorted(Comparator.comparing((Judged j) -> j.review().verdict()).reversed()).toList();
        List<Section> sections = new ArrayList<>();
        sections.add(summary(run, proposal, marginalOk, reviews));
        sections.add(new WarningsSection(run.warnings()));
        map.ifPresent(sections::add);
        sections.add(new VerdictsSection(worstFirst));
        sections.add(new TightestSection(display, reviews));
        sections.add(new TrustSection(unchecked));
        sections.add(new FindingsSection(display, worstFirst));
        sections.addAll(Closing.sections(run));
        return new Page(run.plan().title(), "Review of " + Html.cut(proposal, Html.LONGEST_NAME), run.version(), sections);
    }

    private static SummarySection summary(Run run, String proposal, boolean marginalOk, List<SiteReview> reviews) {
        Verdict worst = reviews.stream().map(SiteReview::verdict).max(Comparator.naturalOrder()).orElseThrow();
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Proposal", proposal);
        facts.put("Plan", run.plan().file().getFileName().toString());
        facts.put("Sites", reviews.size() + ", " + counted(v -> reviews.stream().filter(r -> r.verdict() == v).count()));
        facts.put("Findings", reviews.stream().mapToLong(r -> r.findings().size()).sum() + ", "
                + counted(v -> reviews.stream().mapToLong(r -> r.count(v)).sum()));
        return new SummarySection(List.of(answer(worst, marginalOk, reviews)), facts);
    }

    private interface Counter {
        long of(Verdict verdict);
    }

    private static String counted(Counter counter) {
        return Arrays.stream(Verdict.values()).filter(v -> counter.of(v) > 0).map(v -> counter.of(v) + " " + v).collect(Collectors.joining(", "));
    }

    private static String answer(Verdict worst, boolean marginalOk, List<SiteReview> reviews) {
        return switch (worst) {
            case PASS -> "Yes: every rule is met at every site.";
            case MARGINAL -> "Marginal: " + SiteReview.marginal(reviews) + (marginalOk ? " (accepted by --marginal-ok)." : ".");
            case NO_DATA -> "It cannot be told: data is missing.";
            case FAIL -> "No: a rule is broken.";
        };
    }
}
