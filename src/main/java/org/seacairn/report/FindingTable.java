package org.seacairn.report;

import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.review.Figures;
import org.seacairn.review.Finding;
import org.seacairn.review.Verdict;

/**
 * What rules say of places. Every column tells its own kind of figure: lengths in display units, and beside them the
 * unit, for the few rules that are not about a length.
 */
final class FindingTable {
    private final Units units;
    private final boolean namesSite;
    private final String caption;

    /** @param namesSite whether the rows are of several sites */
    FindingTable(Display display, boolean namesSite, String caption) {
        this.units = new Units(display);
        this.namesSite = namesSite;
        this.caption = caption;
    }

    void write(Html html, List<Finding> findings) {
        PageTable<Finding> table = new PageTable<>(caption);
        if (namesSite) {
            table.name("Site", Finding::site);
        }
        table.name("Rule", finding -> finding.rule().name())
                .cell("Verdict", (h, finding) -> verdict(h, finding.verdict()))
                .text("Unit", finding -> unit(finding.figures()))
                .figure("Required", finding -> shown(finding, Figures::required, units::tenth))
                .figure("Measured", finding -> shown(finding, Figures::measured, units::tenth))
                .figure("Allowance", finding -> shown(finding, Figures::allowance, units::tenth))
                .figure("Margin", finding -> shown(finding, Figures::margin, units::down))
                .cell("Nearest, and remarks", FindingTable::remarks)
                .write(html, findings);
    }

    /** In words, and heavier the worse it is: never by colour alone. */
    static void verdict(Html html, Verdict verdict) {
        html.element(verdict == Verdict.PASS ? "span" : "strong", verdict.toString(),
                "class", "verdict " + verdict.toString().replace(' ', '-'));
    }

    private String unit(Figures figures) {
        if (Double.isNaN(figures.required()) && Double.isNaN(figures.measured())) {
            return "–";
        }
        return switch (figures.unit()) {
            case METRES -> units.length();
            case DEGREES -> "deg";
            case VRM -> "VRM";
            case FACTOR -> "factor";
        };
    }

    private static String shown(Finding finding, ToDoubleFunction<Figures> figure, DoubleFunction<String> length) {
        double value = figure.applyAsDouble(finding.figures());
        if (Double.isNaN(value)) {
            return "–";
        }
        return switch (finding.figures().unit()) {
            case METRES -> length.apply(value);
            case DEGREES, VRM, FACTOR -> Units.number(finding.figures().unit().decimals(), value);
        };
    }

    private static void remarks(Html html, Finding finding) {
        boolean nearest = !finding.nearestFeature().isEmpty();
        if (nearest) {
            html.name(finding.nearestFeature());
            if (Double.isFinite(finding.bearingDeg())) {
                html.text(", toward " + Units.number(0, finding.bearingDeg()) + " deg");
            }
        }
        if (!finding.note().isEmpty()) {
            html.text(nearest ? "; " : "").line(finding.note());
        }
    }
}
