package org.seacairn.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.export.Cautions;
import org.seacairn.geodesy.CoordinateText;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.review.Figures;
import org.seacairn.review.Figures.Unit;
import org.seacairn.review.Finding;
import org.seacairn.review.SiteReview;
import org.seacairn.review.Verdict;

/** What {@code review} says at its end: one screen or one page for people, or JSON for programs. */
final class ReviewSummary {
    private static final int TIGHTEST = 3;
    private static final int SITES_ON_SCREEN = 5;
    private static final int UNCHECKED_ON_SCREEN = 3;
    private static final int SITES_ON_PAGE = 40;
    private static final int LONGEST_NAME = 40;
    private static final double METRES_PER_FOOT = 0.3048;
    private static final List<Verdict> WORST_FIRST = List.of(Verdict.FAIL, Verdict.NO_DATA, Verdict.MARGINAL, Verdict.PASS);

    private final ReviewRun.Result result;
    private final StringBuilder text = new StringBuilder();

    private ReviewSummary(ReviewRun.Result result) {
        this.result = result;
    }

    /** For standard output. */
    static String text(ReviewRun.Result result) {
        ReviewSummary summary = new ReviewSummary(result);
        summary.head();
        summary.sites(SITES_ON_SCREEN, summary::briefly);
        summary.unchecked(UNCHECKED_ON_SCREEN);
        summary.line("%s", Lines.files(result.outFolder()));
        Cautions.LINES.forEach(summary::line);
        return summary.text.toString();
    }

    /** For {@code summary.txt}: the same with room for more sites, and the rules with their sources. */
    static String page(ReviewRun.Result result) {
        ReviewSummary summary = new ReviewSummary(result);
        Cautions.LINES.forEach(summary::line);
        summary.line("");
        summary.head();
        summary.sites(SITES_ON_PAGE, summary::inFull);
        summary.unchecked(Integer.MAX_VALUE);
        summary.rules();
        return summary.text.toString();
    }

    private void head() {
        line("Review of %s under %s (%s)", result.proposal().getFileName(), result.plan().file().getFileName(), result.plan().title());
        line("%d sites, %s.", result.reviews().size(), counts(result::count));
        line("Answer: %s", answer());
        line("");
        line("Tightest margins (what is left after requirement and allowance):");
        tightest(result).forEach(f -> line("  %-12s %-24s %10s   measured %s, required %s, allowance %s%s", shown(f.site()), shown(f.rule().name()),
                shown(f.figures().unit(), f.figures().margin()), shown(f.figures().unit(), f.figures().measured()),
                shown(f.figures().unit(), f.figures().required()), shown(f.figures().unit(), f.figures().allowance()),
                f.nearestFeature().isEmpty() ? "" : "; " + shown(f.nearestFeature())));
        line("");
    }

    private void unchecked(int most) {
        List<String> unchecked = result.unchecked();
        line("Not checked, or taken on trust:");
        unchecked.stream().limit(most).forEach(one -> line("  - %s", one));
        if (unchecked.size() > most) {
            line("  and %d more in summary.txt", unchecked.size() - most);
        }
        line("");
    }

    private String answer() {
        Verdict worst = result.worst();
        if (worst == Verdict.PASS) {
            return "every rule is met at every site";
        }
        if (worst == Verdict.MARGINAL) {
            return SiteReview.marginal(result.reviews()) + (result.marginalOk() ? " (accepted by --marginal-ok)" : "");
        }
        return worst == Verdict.FAIL ? "no: a rule is broken" : "it cannot be told: data is missing";
    }

    private interface Counter {
        long of(Verdict verdict);
    }

    private static String counts(Counter counter) {
        return Arrays.stream(Verdict.values()).filter(v -> counter.of(v) > 0)
                .map(v -> counter.of(v) + " " + v).collect(Collectors.joining(", "));
    }

    private void sites(int most, Consumer<SiteReview> told) {
        List<SiteReview> open = result.reviews().stream().filter(r -> r.verdict() != Verdict.PASS)
                .sorted(Comparator.comparing(SiteReview::verdict).reversed()).toList();
        if (!open.isEmpty()) {
            line("Sites that do not pass, worst first:");
        }
        open.stream().limit(most).forEach(told);
        if (open.size() > most) {
            line("  and %d more in review.csv", open.size() - most);
        }
        line("%d of %d sites pass every rule.", result.reviews().size() - open.size(), result.reviews().size());
        line("");
    }

    /** In one line: what counts most against a site. */
    private void briefly(SiteReview review) {
        line("  %-12s %-9s %s", shown(review.site().name()), review.verdict(), review.findings().stream()
                .filter(f -> f.verdict() == review.verdict()).map(f -> shown(f.rule().name())).distinct().collect(Collectors.joining(", ")));
    }

    private void inFull(SiteReview review) {
        Coordinate at = review.site().isPoint() ? review.wgs84().getCoordinate() : review.wgs84().getCentroid().getCoordinate();
        line("  %-12s %s  %s", shown(review.site().name()), CoordinateText.formatLatitudeDdm(at.y),
                CoordinateText.formatLongitudeDdm(at.x - 360 * Math.rint(at.x / 360)));
        for (Verdict verdict : WORST_FIRST.subList(0, 3)) {
            String rules = named(review.findings().stream().filter(f -> f.verdict() == verdict).toList());
            if (!rules.isEmpty()) {
                line("      %-9s %s", verdict, rules);
            }
        }
    }

    /** The rules of findings, those with the same note together. */
    private static String named(List<Finding> findings) {
        Map<String, List<String>> byNote = new LinkedHashMap<>();
        for (Finding finding : findings) {
            String note = finding.note().startsWith("worst") ? "" : " (" + finding.note() + ")";
            byNote.computeIfAbsent(finding.note().isEmpty() ? "" : note, k -> new ArrayList<>()).add(finding.rule().name());
        }
        return byNote.entrySet().stream().map(e -> String.join(", ", e.getValue()) + e.getKey()).collect(Collectors.joining("; "));
    }

    private void rules() {
        line("Rules, and where they come from:");
        result.reviews().stream().flatMap(r -> r.findings().stream())
                .map(f -> String.format(Locale.ROOT, "  %-24s %12s   %s%s%s", f.rule().name(),
                        Double.isNaN(f.figures().required()) ? "" : shown(f.figures().unit(), f.figures().required()), f.rule().source(),
                        f.rule().confirmed().filter(confirmed -> !confirmed).isPresent() ? " [not confirmed]" : "",
                        f.rule().edges().isEmpty() ? "" : "; edges: " + f.rule().edges()))
                .distinct().forEach(this::line);
    }

    /** A name from somebody's file: on one line, and no longer than a line can bear. */
    private static String shown(String name) {
        String printable = Shown.printable(name);
        return printable.length() <= LONGEST_NAME ? printable : printable.substring(0, LONGEST_NAME - 1) + "…";
    }

    private static List<Finding> tightest(ReviewRun.Result result) {
        return result.reviews().stream().flatMap(r -> r.findings().stream())
                .filter(f -> f.verdict() != Verdict.NO_DATA)
                .filter(f -> f.figures().unit() == Unit.METRES && Double.isFinite(f.figures().margin()))
                .filter(f -> !f.rule().name().equals("duplicate") && !f.rule().name().equals("overlap"))
                .sorted(Comparator.comparingDouble(f -> f.figures().margin())).limit(TIGHTEST).toList();
    }

    private String shown(Unit unit, double value) {
        if (Double.isNaN(value)) {
            return "unknown";
        }
        return switch (unit) {
            case METRES -> result.display() == Display.US
                    ? String.format(Locale.ROOT, "%.1f ft", value / METRES_PER_FOOT + 0.0) : String.format(Locale.ROOT, "%.1f m", value + 0.0);
            case DEGREES -> String.format(Locale.ROOT, "%.1f deg", value);
            case FACTOR -> String.format(Locale.ROOT, "%.2f", value);
            case VRM -> String.format(Locale.ROOT, "%.6f", value);
        };
    }

    static String json(ReviewRun.Result result) {
        return JsonText.of(json -> {
            json.writeStringField("title", result.plan().title());
            json.writeStringField("proposal", result.proposal().getFileName().toString());
            json.writeStringField("out", result.outFolder().toString());
            json.writeNumberField("sites", result.reviews().size());
            json.writeStringField("verdict", result.worst().toString());
            for (Verdict verdict : Verdict.values()) {
                json.writeNumberField(verdict.toString().replace(' ', '_'), result.count(verdict));
            }
            json.writeArrayFieldStart("tightest_margins");
            for (Finding finding : tightest(result)) {
                Figures figures = finding.figures();
                json.writeStartObject();
                json.writeStringField("site", finding.site());
                json.writeStringField("rule", finding.rule().name());
                json.writeNumberField("required_m", figures.required());
                json.writeNumberField("measured_m", figures.measured());
                json.writeNumberField("allowance_m", figures.allowance());
                json.writeNumberField("margin_m", figures.margin());
                json.writeStringField("verdict", finding.verdict().toString());
                json.writeStringField("nearest_feature", finding.nearestFeature());
                json.writeEndObject();
            }
            json.writeEndArray();
            JsonText.array(json, "not_checked", result.unchecked());
            json.writeArrayFieldStart("by_site");
            for (SiteReview review : result.reviews()) {
                json.writeStartObject();
                json.writeStringField("site", review.site().name());
                json.writeStringField("verdict", review.verdict().toString());
                for (Verdict verdict : Verdict.values()) {
                    json.writeNumberField(verdict.toString().replace(' ', '_'), review.count(verdict));
                }
                json.writeEndObject();
            }
            json.writeEndArray();
            JsonText.array(json, "warnings", result.warnings());
            JsonText.array(json, "cautions", Cautions.LINES);
        });
    }

    private void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values).stripTrailing()).append('\n');
    }

    private void line(String plain) {
        text.append(plain.stripTrailing()).append('\n');
    }
}
