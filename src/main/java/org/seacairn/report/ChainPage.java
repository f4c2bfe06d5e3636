package org.seacairn.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.seacairn.export.ChainTables;
import org.seacairn.export.ReasonCount;
import org.seacairn.export.Run;
import org.seacairn.place.DriftCheck;
import org.seacairn.place.Gaps;
import org.seacairn.place.Site;
import org.seacairn.place.Unbridged;
import org.seacairn.plan.SitingPlan;

/** The page of a chain. */
public final class ChainPage {
    private ChainPage() {}

    /**
     * One leg of a chain.
     *
     * @param apartM geodesic distance of its stones
     * @param modules of the chain that was chosen, or empty: there is none
     * @param unbridged why there is none, or empty
     */
    public record Leg(String from, String to, double apartM, Optional<Integer> modules, Optional<Unbridged> unbridged) {}

    /**
     * @param reasonNames in the order of their bits
     * @param sites as they are written to {@code sites.csv}
     * @param gapRows as they are written to {@code chains.csv}
     * @param map empty: none was drawn
     */
    public static Page of(Run run, List<Leg> legs, Gaps gaps, double corridorM, List<Site> sites, List<ChainTables.Gap> gapRows,
            List<ChainTables.Tradeoff> tradeoff, Optional<DriftCheck> drift, List<String> reasonNames, Optional<MapSection> map) {
        SitingPlan plan = run.plan();
        List<Section> sections = new ArrayList<>();
        sections.add(summary(plan, legs, gaps, corridorM, sites, drift));
        sections.add(new WarningsSection(run.warnings()));
        map.ifPresent(sections::add);
        sections.add(new GapsSection(plan.display(), gapRows));
        sections.add(new SitesSection(plan, "Modules", "Modules in the order of the chain", sites));
        if (!tradeoff.isEmpty()) {
            sections.add(new TradeoffSection(tradeoff));
        }
        legs.stream().flatMap(leg -> leg.unbridged().stream()).filter(gap -> gap.cells() > 0).findFirst()
                .ifPresent(gap -> sections.add(reasons(run, gap, reasonNames)));
        if (!sites.isEmpty()) {
            sections.add(new SiteBlocksSection(plan, sites));
        }
        sections.addAll(Closing.sections(run));
        return new Page(plan.title(), "A chain of modules from " + Html.cut(legs.get(0).from(), Html.LONGEST_NAME) + " to "
                + Html.cut(legs.get(legs.size() - 1).to(), Html.LONGEST_NAME), run.version(), sections);
    }

    private static ReasonsSection reasons(Run run, Unbridged gap, List<String> names) {
        double km2 = run.grid().cellM() * run.grid().cellM() / 1e6;
        return new ReasonsSection(run.plan().display(), "the stretch that cannot be bridged", gap.cells(),
                IntStream.range(0, names.size()).mapToObj(i -> new ReasonCount(names.get(i), 1L << i, gap.cellsByReason().get(i),
                        gap.cellsByReason().get(i) * km2, 0)).toList(), false);
    }

    private static SummarySection summary(SitingPlan plan, List<Leg> legs, Gaps gaps, double corridorM, List<Site> sites,
            Optional<DriftCheck> drift) {
        Units units = new Units(plan.display());
        List<String> lines = new ArrayList<>();
        for (Leg leg : legs) {
            lines.add(Html.cut(leg.from(), Html.LONGEST_NAME) + " to " + Html.cut(leg.to(), Html.LONGEST_NAME) + ", "
                    + units.lengthText(leg.apartM()) + " apart: " + told(units, leg));
        }
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Gaps allowed", units.length(gaps.leastM()) + " to " + units.lengthText(gaps.mostM()));
        facts.put("Corridor", units.lengthText(corridorM) + " to each side of the line");
        if (!sites.isEmpty()) {
            facts.put("Mean score", Units.score(sites.stream().mapToDouble(Site::score).average().orElseThrow()));
        }
        drift.ifPresent(check -> facts.put("A straight drift at " + Units.number(0, check.headingDeg()) + " deg", drift(units, check)));
        return new SummarySection(lines, facts);
    }

    private static String told(Units units, Leg leg) {
        if (leg.modules().isPresent()) {
            int modules = leg.modules().get();
            return modules == 0 ? "no module is needed." : modules + (modules == 1 ? " module." : " modules.");
        }
        return leg.unbridged().filter(gap -> gap.lengthM() > 0).map(gap -> "there is no chain. " + units.lengthText(gap.lengthM())
                + " cannot be bridged, from " + units.length(gap.fromAlongM()) + " to " + units.lengthText(gap.toAlongM())
                + " along the line; " + gap.freeCells() + " of the " + gap.cells() + " cells between are feasible.")
                .orElse("there is no chain: no sequence of feasible cells keeps every gap in the range and all modules apart.");
    }

    private static String drift(Units units, DriftCheck check) {
        double largest = check.missM().stream().mapToDouble(Math::abs).max().orElse(0);
        double parallel = check.missFromOffsetM().stream().mapToDouble(Math::abs).max().orElse(0);
        return (check.seesAll() ? "passes" : check.seesAllFromOffset() ? "does not pass, but a parallel drift does," : "does not pass")
                + " within " + units.lengthText(check.sightM()) + " of every module: it misses by up to " + units.lengthText(largest)
                + ", the best parallel drift by " + units.lengthText(parallel);
    }
}
