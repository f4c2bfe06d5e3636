package org.seacairn.report;

import java.util.ArrayList;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;
import org.seacairn.place.Clearance;
import org.seacairn.place.LeastWater;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan;

/** A block for each site: what there is, how its score came about, and what room it has. */
record SiteBlocksSection(SitingPlan plan, List<Site> sites) implements Section {
    /** From here on the nearest other site is not looked for: every site against every other. */
    private static final int MOST_PAIRED = 2000;

    @Override
    public String id() {
        return "site-by-site";
    }

    @Override
    public String heading() {
        return "Site by site";
    }

    @Override
    public void write(Html html) {
        Units units = new Units(plan.display());
        Bounds.first(sites, Bounds.BLOCKS).forEach(site -> block(html, units, site));
        Bounds.rest(html, sites, Bounds.BLOCKS, "sites", "sites.csv");
    }

    private void block(Html html, Units units, Site site) {
        String id = FeatureId.of(site);
        html.open("article", "class", "block", "id", id, "data-feature", id, "aria-labelledby", "heading-" + id).newLine();
        html.open("h3", "id", "heading-" + id).name(site.name()).text(" ")
                .element("span", "score " + Units.score(site.score()), "class", "beside").close("h3").newLine();
        facts(html, units, site);
        html.open("div", "class", "pair").newLine();
        score(html, site);
        clearances(html, units, site);
        html.close("div").newLine();
        html.close("article").newLine();
    }

    private void facts(Html html, Units units, Site site) {
        Facts facts = new Facts(html)
                .add("Position (WGS 84)", h -> Places.write(h, site.longitudeDeg(), site.latitudeDeg()))
                .add("Depth", units.lengthText(site.depthM()))
                .add("Least water over the module", withUnit(units.down(LeastWater.overM(plan, site)), units.length()))
                .add("Slope", withUnit(Units.degrees(site.slopeDeg()), "deg"))
                .add("Landing radius (95 %)", units.lengthText(site.landingRadiusM()));
        if (plan.bottom().isPresent()) {
            facts.name("Bottom", site.bottom().isEmpty() ? "not mapped" : site.bottom());
        }
        site.stone().ifPresent(stone -> facts.add("Nearest stone",
                h -> h.name(stone.nearest()).text(", " + units.lengthText(stone.distanceM()))));
        nearestOther(html, facts, units, site);
        DropFigures.releases(facts, units, site.drops());
        site.standing().ifPresent(standing -> DropFigures.standing(facts, units, standing));
        facts.end();
    }

    private void nearestOther(Html html, Facts facts, Units units, Site site) {
        if (sites.size() > MOST_PAIRED) {
            return;
        }
        Site nearest = null;
        double leastM = Double.POSITIVE_INFINITY;
        for (Site other : sites) {
            double distanceM = other == site ? Double.POSITIVE_INFINITY : Geodesic.WGS84.Inverse(site.latitudeDeg(), site.longitudeDeg(),
                    other.latitudeDeg(), other.longitudeDeg(), GeodesicMask.DISTANCE).s12;
            if (distanceM < leastM) {
                leastM = distanceM;
                nearest = other;
            }
        }
        if (nearest != null) {
            String text = nearest.name() + ", " + units.lengthText(leastM);
            facts.add("Nearest other site here", text);
        }
    }

    private static String withUnit(String figure, String unit) {
        return figure.equals(Units.UNKNOWN) ? figure : figure + " " + unit;
    }

    private void score(Html html, Site site) {
        new PageTable<ScorePart>("How the score of " + site.name() + " came about (" + CriteriaSection.name(plan.combine()) + ")")
                .text("Criterion", part -> CriteriaSection.name(part.measure()))
                .figure("Weight (%)", part -> Units.percent(part.weightShare()))
                .figure("Suitability", part -> Units.score(part.suitability()))
                .cell("0 to 1", (h, part) -> Bar.share(h, part.suitability()))
                .figure(ScorePart.effectHeading(plan.combine()), part -> part.effectText(plan.combine()))
                .write(html, ScorePart.of(plan, site));
    }

    private void clearances(Html html, Units units, Site site) {
        List<Clearance> all = new ArrayList<>(site.clearances());
        site.stone().ifPresent(all::add);
        if (all.isEmpty()) {
            return;
        }
        new PageTable<Clearance>("Distances of " + site.name() + ", in " + units.length() + "; bars up to 3 times the required")
                .name("Layer", Clearance::layer)
                .figure("Distance", clearance -> units.tenth(clearance.distanceM()))
                .figure("Required", clearance -> units.tenth(clearance.requiredM()))
                .figure("Margin", clearance -> units.down(clearance.marginM()))
                .cell("Against it", (h, clearance) -> Bar.against(h, clearance.distanceM(), clearance.requiredM()))
                .name("Nearest", Clearance::nearest)
                .write(html, all);
    }
}
