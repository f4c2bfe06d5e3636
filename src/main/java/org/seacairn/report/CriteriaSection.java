package org.seacairn.report;

import java.util.Locale;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Combination;
import org.seacairn.plan.SitingPlan.Criterion;
import org.seacairn.plan.SitingPlan.Curve;
import org.seacairn.plan.SitingPlan.Measure;

/** The criteria: what each is worth, and how much it weighs. */
record CriteriaSection(SitingPlan plan) implements Section {
    @Override
    public String id() {
        return "weights";
    }

    @Override
    public String heading() {
        return "Criteria and weights";
    }

    @Override
    public void write(Html html) {
        double sum = plan.criteria().stream().mapToDouble(Criterion::weight).sum();
        new PageTable<Criterion>("Criteria of the score, combined as " + name(plan.combine()))
                .text("Criterion", criterion -> name(criterion.measure()))
                .figure("Weight", criterion -> Shown.number(criterion.weight()))
                .figure("Share (%)", criterion -> Units.percent(criterion.weight() / sum))
                .cell("Of all", (h, criterion) -> Bar.share(h, criterion.weight() / sum))
                .text("Worth", this::worth)
                .write(html, plan.criteria());
        plan.pairwise().ifPresent(pairwise -> html.element("p", "The weights follow from pairwise comparisons: consistency ratio "
                + Units.number(3, pairwise.consistencyRatio()) + ", random indices of " + pairwise.randomIndexList() + ".",
                "class", "note").newLine());
    }

    static String name(Measure measure) {
        return measure.name().toLowerCase(Locale.ROOT);
    }

    static String name(Combination combination) {
        return switch (combination) {
            case WEIGHTED_MEAN -> "weighted mean";
            case WEIGHTED_GEOMETRIC -> "weighted geometric mean";
            case LIMITING -> "limiting: the least suitability decides";
        };
    }

    private String worth(Criterion criterion) {
        return switch (criterion.measure()) {
            case BOTTOM -> "the suitability of the bottom class";
            case CLEARANCE -> "0 at the required distance, 1 from the comfortable one; the least over the layers";
            case DEPTH, SLOPE, RUGGEDNESS, SPACING -> criterion.curve().map(curve -> worth(criterion.measure(), curve)).orElse("");
        };
    }

    private String worth(Measure measure, Curve curve) {
        String fullFrom = curve.a() == curve.b() ? "" : "0 up to " + shown(measure, curve.a()) + ", ";
        String fullTo = curve.c() == curve.d() ? "" : ", 0 from " + shown(measure, curve.d());
        return fullFrom + "1 " + (curve.b() == curve.c() ? "at " + shown(measure, curve.b())
                : "from " + shown(measure, curve.b()) + " to " + shown(measure, curve.c())) + fullTo;
    }

    private String shown(Measure measure, double value) {
        return switch (measure) {
            case SLOPE -> Shown.number(value) + " deg";
            case RUGGEDNESS -> Shown.number(value);
            default -> new Units(plan.display()).lengthText(value);
        };
    }
}
