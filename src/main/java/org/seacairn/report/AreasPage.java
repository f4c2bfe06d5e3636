package org.seacairn.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.seacairn.export.AreaTables.Candidate;
import org.seacairn.export.ReasonCount;
import org.seacairn.export.Run;
import org.seacairn.place.AreaRequest;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;
import org.seacairn.score.ScoreTotals;

/** The page of candidate areas. */
public final class AreasPage {
    private AreasPage() {}

    /**
     * @param turn as it was asked for
     * @param areas as they are written to {@code areas.csv}
     * @param refusedBy candidates that a review would not pass, by the first rule that they fail
     * @param map empty: none was drawn
     */
    public static Page of(Run run, AreaRequest request, String turn, List<Candidate> areas, ScoreTotals totals, Map<String, Integer> refusedBy,
            Optional<MapSection> map) {
        SitingPlan plan = run.plan();
        List<Section> sections = new ArrayList<>();
        sections.add(summary(plan, request, turn, areas, totals, refusedBy));
        sections.add(new WarningsSection(run.warnings()));
        map.ifPresent(sections::add);
        sections.add(new AreasSection(plan, areas));
        double km2 = run.grid().cellM() * run.grid().cellM() / 1e6;
        sections.add(new ReasonsSection(plan.display(), "the grid", totals.cells(), totals.byReason().stream()
                .map(c -> new ReasonCount(c.reason(), c.bit(), c.cells(), c.cells() * km2, c.aloneCells())).toList(), true));
        if (!areas.isEmpty()) {
            sections.add(new AreaBlocksSection(plan, areas));
        }
        sections.addAll(Closing.sections(run));
        return new Page(plan.title(), "Candidate permit areas", run.version(), sections);
    }

    private static SummarySection summary(SitingPlan plan, AreaRequest request, String turn, List<Candidate> areas, ScoreTotals totals,
            Map<String, Integer> refusedBy) {
        Units units = new Units(plan.display());
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Sizes", request.sizes().stream().map(size -> units.length(size.lengthM()) + " x " + units.lengthText(size.widthM()))
                .collect(Collectors.joining(" or ")));
        facts.put("Turned", turn);
        facts.put("May be ruled out", "at most " + Shown.number(100 * request.blemish()) + " % of an area");
        facts.put("Feasible", Shown.percent(totals.scored(), totals.cells()) + " of the grid");
        facts.put("Refused by a review", refusedBy.isEmpty() ? "none" : refusedBy.entrySet().stream()
                .map(e -> Html.cut(e.getKey(), Html.LONGEST_NAME) + " " + e.getValue() + " times").collect(Collectors.joining(", ")));
        return new SummarySection(List.of(areas.isEmpty() ? "There is no such area." : areas.size() + " of " + request.count() + " asked were found."),
                facts);
    }
}
