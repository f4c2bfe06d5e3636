package org.seacairn.report;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.seacairn.export.AreaTables;
import org.seacairn.export.AreaTables.Candidate;
import org.seacairn.export.Column;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Display;

/** The candidate areas, one row each: the columns of {@code areas.csv} that fit a page. */
record AreasSection(SitingPlan plan, List<Candidate> areas) implements Section {
    @Override
    public String id() {
        return "areas";
    }

    @Override
    public String heading() {
        return "Candidate areas";
    }

    @Override
    public void write(Html html) {
        if (areas.isEmpty()) {
            html.element("p", "There is none.").newLine();
            return;
        }
        Units units = new Units(plan.display());
        String length = " (" + units.length() + ")";
        Map<String, Column<Candidate>> columns = AreaTables.areas(plan, areas).columns().stream()
                .collect(Collectors.toMap(Column::name, Function.identity()));
        PageTable<Candidate> table = new PageTable<Candidate>("Candidate areas, best first")
                .name("Area", Candidate::name)
                .figure("Mean score", columns.get("mean_score"), Units::score)
                .figure("Lowest score", columns.get("lowest_score"), Units::score);
        if (plan.display() == Display.US) {
            table.figure("Size (nmi²)", columns.get("area_nmi2"), value -> Units.number(4, value))
                    .figure("Size (acres)", columns.get("area_acres"), value -> Units.number(1, value));
        } else {
            table.figure("Size (km²)", columns.get("area_km2"), value -> Units.number(4, value));
        }
        table.figure("Long side (deg true)", columns.get("turn_deg"), value -> Units.number(0, value))
                .figure("Room for modules", columns.get("capacity"), value -> Units.number(0, value))
                .figure("No more than", columns.get("capacity_bound"), value -> Units.number(0, value))
                .figure("Least depth" + length, columns.get("depth_least_m"), units::length)
                .figure("Most depth" + length, columns.get("depth_most_m"), units::length)
                .figure("Ruled out (%)", columns.get("ruled_out_share"), Units::percent)
                .cell("Review", (h, area) -> FindingTable.verdict(h, area.verdict())).sortedBy(area -> Integer.toString(area.verdict().ordinal()))
                .feature(FeatureId::of).sortable().write(html, Bounds.first(areas, Bounds.ROWS));
        Bounds.rest(html, areas, Bounds.ROWS, "areas", "areas.csv");
    }
}
