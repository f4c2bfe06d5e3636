package org.seacairn.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seacairn.export.ReasonCount;
import org.seacairn.export.Run;
import org.seacairn.place.Ring;
import org.seacairn.place.RingFit;
import org.seacairn.place.RingResult;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan;

/** The page of a ring. */
public final class RingPage {
    private RingPage() {}

    /**
     * @param leastM nearest to the reef that a module may stand
     * @param mostM farthest
     * @param asked number of modules
     * @param passedOver whether a ring as even with a higher total was left for one that a review passes
     * @param sites as they are written to {@code sites.csv}; empty where there is no ring
     * @param map empty: none was drawn
     */
    public static Page of(Run run, String reef, double leastM, double mostM, int asked, RingResult found, boolean passedOver, List<Site> sites,
            Optional<MapSection> map) {
        SitingPlan plan = run.plan();
        List<Section> sections = new ArrayList<>();
        sections.add(summary(plan, leastM, mostM, asked, found, passedOver));
        sections.add(new WarningsSection(run.warnings()));
        map.ifPresent(sections::add);
        found.ring().ifPresent(ring -> sections.add(new RingSection(plan.display(), reef, ring, sites)));
        sections.add(new SitesSection(plan, "Modules", "Modules, clockwise from north", sites));
        double km2 = run.grid().cellM() * run.grid().cellM() / 1e6;
        sections.add(new ReasonsSection(plan.display(), "the ground between the two distances", found.cells(), found.reasons().entrySet().stream()
                .map(e -> new ReasonCount(e.getKey(), 0, e.getValue(), e.getValue() * km2, 0)).toList(), false));
        if (!sites.isEmpty()) {
            sections.add(new SiteBlocksSection(plan, sites));
        }
        sections.addAll(Closing.sections(run));
        return new Page(plan.title(), "A ring of modules about " + Html.cut(reef, Html.LONGEST_NAME), run.version(), sections);
    }

    private static SummarySection summary(SitingPlan plan, double leastM, double mostM, int asked, RingResult found, boolean passedOver) {
        Units units = new Units(plan.display());
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Asked", asked + (asked == 1 ? " module, " : " modules, ") + units.length(leastM) + " to " + units.lengthText(mostM)
                + " from the reef, " + units.lengthText(plan.sites().apartM()) + " apart");
        facts.put("Feasible", found.scoredCells() + " of " + found.cells() + " cells between the two distances");
        found.ring().ifPresent(ring -> facts.put("Total score", Units.score(ring.total())));
        return new SummarySection(List.of(found.ring().map(ring -> told(ring, passedOver)).orElseGet(() -> told(found.fit().orElseThrow(), asked))),
                facts);
    }

    private static String told(Ring ring, boolean passedOver) {
        String modules = ring.modules().size() == 1 ? "1 module. " : ring.modules().size() + " modules, neighbours at least "
                + Units.number(1, ring.leastStepDeg()) + " deg apart. ";
        return modules + (ring.exact() ? "No ring is more even, and none as even" + (passedOver ? " all of whose modules pass a review" : "")
                + " has a higher total." : "The search ended early: no ring is more even than " + ring.evennessBoundDeg()
                + " deg, none as even exceeds " + Units.score(ring.totalBound()) + ".");
    }

    private static String told(RingFit fit, int asked) {
        if (fit.atMost() >= asked) {
            return "No ring of " + asked + " modules was found within the limits of the search; " + fit.atLeast() + " fit, and no more than "
                    + fit.atMost() + ".";
        }
        return asked == 1 ? "Not one module fits." : asked + " modules do not fit; " + fit.atLeast()
                + (fit.atLeast() == fit.atMost() ? " do." : " do, and no more than " + fit.atMost() + ".");
    }
}
