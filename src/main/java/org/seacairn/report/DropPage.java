package org.seacairn.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seacairn.drop.LandingDraws;
import org.seacairn.drop.ModuleDrop;
import org.seacairn.drop.PastLandings;
import org.seacairn.drop.StandingTable;
import org.seacairn.export.Cautions;
import org.seacairn.export.DropPlots;
import org.seacairn.export.DropTables;
import org.seacairn.export.Run;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan;

/** The page of a drop. */
public final class DropPage {
    /** Where the map's mark of the target leads. */
    public static final String TARGET_ID = "release";

    private DropPage() {}

    /**
     * What is told of one target.
     *
     * @param cases release points, as stated and in a faster current
     * @param draws a second opinion on the landing radius of the first of them
     * @param map empty: none was drawn
     */
    public record Target(Site site, List<DropTables.Case> cases, List<LandingDraws> draws, List<DropTables.Step> steps, Optional<MapSection> map) {}

    /**
     * @param standing what the module can stand
     * @param target empty: none was asked for
     * @param objections what speaks against the drop, one clause each
     */
    public static Page of(Run run, ModuleDrop drop, List<StandingTable.Row> standing, Optional<Target> target, Optional<PastLandings> past, List<String> objections) {
        SitingPlan plan = run.plan();
        List<Section> sections = new ArrayList<>();
        sections.add(summary(plan, target, past, objections));
        sections.add(new WarningsSection(run.warnings()));
        target.ifPresent(t -> {
            t.map.ifPresent(sections::add);
            sections.add(new ReleaseSection(plan.display(), t.cases, t.draws));
            sections.add(new DrawingSection("descent", "The way down", List.of(new DrawingSection.Drawing("Drift, speed and tilt by depth",
                    DropPlots.descent(t.site.name(), t.steps), html -> {}))));
        });
        sections.add(new StandingSection(plan, standing));
        sections.add(new ModuleSection(plan, drop));
        sections.addAll(Closing.sections(run));
        return new Page(plan.title(), target.map(t -> "A drop at " + Html.cut(t.site.name(), Html.LONGEST_NAME)).orElse("What the module can stand"),
                run.version(), sections);
    }

    private static SummarySection summary(SitingPlan plan, Optional<Target> target, Optional<PastLandings> past, List<String> objections) {
        Units units = new Units(plan.display());
        List<String> lines = new ArrayList<>();
        lines.add(objections.isEmpty() ? "Nothing computed here speaks against the drop." : "Against the drop: " + String.join("; ", objections) + ".");
        lines.addAll(Cautions.DROP_LINES);
        Map<String, String> facts = new LinkedHashMap<>();
        target.ifPresent(t -> {
            facts.put("Target", t.site.name() + " at " + Places.text(t.site.longitudeDeg(), t.site.latitudeDeg()));
            facts.put("Water", units.lengthText(t.site.depthM()) + " deep, slope " + Units.degrees(t.site.slopeDeg()) + " deg, "
                    + (t.site.bottom().isEmpty() ? "bottom not mapped" : t.site.bottom()));
            facts.put("Landing radius that the plan goes by", units.lengthText(t.site.landingRadiusM())
                    + (plan.module().landingRadiusM().isPresent() ? ", as the module file states" : ""));
        });
        past.ifPresent(p -> {
            facts.put("Earlier drops", p.drops() + ", off by " + units.lengthText(p.bias().lengthM()) + " toward " + Units.number(0, p.bias().bearingDeg())
                    + " deg on average" + (p.bias().zeroWithin() ? " (no sign of a bias)" : " (more than chance)") + "; scatter "
                    + units.lengthText(p.scatterM().value()) + " along any line, 95 % sure " + units.lengthText(p.scatterM().lower()) + " to "
                    + units.lengthText(p.scatterM().upper()));
            facts.put("By them alone 95 % land within", units.lengthText(p.radius95M()) + " of the target, or " + units.lengthText(p.radius95UpperM())
                    + " with 95 % confidence" + (p.tooFew() ? "; so few drops tell little" : ""));
        });
        return new SummarySection(lines, facts);
    }
}
