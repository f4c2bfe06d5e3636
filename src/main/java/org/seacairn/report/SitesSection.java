package org.seacairn.report;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.seacairn.export.Column;
import org.seacairn.export.FeatureTable;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan;

/** The chosen sites, one row each: the columns of {@code sites.csv} that fit a page, in display units. */
record SitesSection(SitingPlan plan, String heading, String caption, List<Site> sites) implements Section {
    @Override
    public String id() {
        return "sites";
    }

    @Override
    public void write(Html html) {
        if (sites.isEmpty()) {
            html.element("p", "There is none.").newLine();
            return;
        }
        Units units = new Units(plan.display());
        String length = " (" + units.length() + ")";
        FeatureTable<Site> file = FeatureTable.sites(plan, sites);
        Map<String, Column<Site>> columns = file.columns().stream().collect(Collectors.toMap(Column::name, Function.identity()));
        PageTable<Site> table = new PageTable<Site>(caption + (plan.display() == SitingPlan.Display.US ? "; depths and lengths in feet" : ""))
                .name("Site", Site::name)
                .figure("Rank", columns.get("rank"), rank -> Units.number(0, rank))
                .figure("Score", columns.get("score"), Units::score)
                .figure("Latitude", columns.get("latitude_deg"), Places::latitude)
                .figure("Longitude", columns.get("longitude_deg"), Places::longitude)
                .figure("Depth" + length, columns.get("depth_m"), units::length)
                .figure("Least water over it" + length, columns.get("least_water_m"), units::down)
                .figure("Slope (deg)", columns.get("slope_deg"), Units::degrees)
                .name("Bottom", Site::bottom)
                .figure("Landing radius" + length, columns.get("landing_radius_m"), units::length);
        if (plan.reefs().isPresent()) {
            table.name("Nearest stone", site -> columns.get("nearest_stone").text(site))
                    .figure("Distance to it" + length, columns.get("stone_distance_m"), units::length);
        }
        table.feature(FeatureId::of).targetsFrom(Bounds.BLOCKS).sortable().write(html, Bounds.first(sites, Bounds.ROWS));
        Bounds.rest(html, sites, Bounds.ROWS, "sites", "sites.csv");
        html.element("p", "Positions: degrees and decimal minutes, WGS 84. Least water over it: depth less the survey's vertical"
                + " uncertainty (95 %) less the module's height, at the target, rounded down"
                + plan.bathymetry().datum().map(datum -> "; depths are below " + Html.cut(datum, Html.LONGEST_NAME)).orElse("")
                + ". Every figure in metres, and more of them: sites.csv.", "class", "note").newLine();
    }
}
