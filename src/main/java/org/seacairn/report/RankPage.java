package org.seacairn.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seacairn.criterion.Reasons;
import org.seacairn.drop.StandingTable;
import org.seacairn.export.ReasonCount;
import org.seacairn.export.Run;
import org.seacairn.place.Selection;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan;

/** The page of a ranking. */
public final class RankPage {
    private static final int REASONS_NAMED = 3;

    private RankPage() {}

    /**
     * @param run whose counts are {@link Run.Counts}
     * @param sites as they are written to {@code sites.csv}
     * @param standing what the module can stand, or empty: the plan does not tell
     * @param map empty: none was drawn
     */
    public static Page of(Run run, Selection selection, List<Site> sites, Optional<List<StandingTable.Row>> standing, Optional<MapSection> map) {
        SitingPlan plan = run.plan();
        Run.Counts counts = (Run.Counts) run.counts();
        List<Section> sections = new ArrayList<>();
        sections.add(summary(run, counts, selection, sites));
        sections.add(new WarningsSection(run.warnings()));
        map.ifPresent(sections::add);
        sections.add(new SitesSection(plan, "Ranked sites", "Ranked sites, best first", sites));
        sections.add(new ReasonsSection(plan.display(), "the grid", counts.cells(), counts.reasons(), true));
        if (!sites.isEmpty()) {
            sections.add(new SiteBlocksSection(plan, sites));
        }
        standing.ifPresent(rows -> sections.add(new StandingSection(plan, rows)));
        sections.addAll(Closing.sections(run));
        return new Page(plan.title(), "Ranked sites", run.version(), sections);
    }

    private static SummarySection summary(Run run, Run.Counts counts, Selection selection, List<Site> sites) {
        SitingPlan plan = run.plan();
        Units units = new Units(plan.display());
        double cellM2 = run.grid().cellM() * run.grid().cellM();
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Sites", sites.size() + " of " + plan.sites().count() + " asked, at least " + units.lengthText(plan.sites().apartM()) + " apart");
        if (!sites.isEmpty()) {
            facts.put("Total score", Units.score(selection.total()) + "; no selection of that size can exceed " + Units.score(selection.upperBound()));
        }
        facts.put("Ground with depth", units.area(counts.withDepth() * cellM2) + " " + units.area());
        facts.put("Feasible", units.area(counts.scored() * cellM2) + " " + units.area() + ", "
                + Units.percent((double) counts.scored() / counts.withDepth()) + " % of it");
        facts.put("Ruled out most", most(counts));
        return new SummarySection(lines(sites), facts);
    }

    private static List<String> lines(List<Site> sites) {
        if (sites.isEmpty()) {
            return List.of("No place is feasible: each is ruled out by one reason or several.");
        }
        Site best = sites.get(0);
        return List.of("The best site is " + best.name() + " at " + Places.text(best.longitudeDeg(), best.latitudeDeg()) + ", with a score of "
                + Units.score(best.score()) + " of 1.");
    }

    /** Landing room follows from the other reasons and is left aside. */
    private static String most(Run.Counts counts) {
        List<String> named = counts.reasons().stream().filter(r -> r.cells() > 0 && !r.reason().equals(Reasons.LANDING_ROOM))
                .sorted(Comparator.comparingLong(ReasonCount::cells).reversed()).limit(REASONS_NAMED)
                .map(r -> Html.cut(r.reason(), Html.LONGEST_NAME) + " " + Units.percent((double) r.cells() / counts.cells()) + " %").toList();
        return named.isEmpty() ? "nothing" : String.join(", ", named) + " of the grid";
    }
}
