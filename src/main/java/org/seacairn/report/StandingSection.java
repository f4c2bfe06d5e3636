package org.seacairn.report;

import java.util.List;
import org.seacairn.drop.StandingTable;
import org.seacairn.export.Cautions;
import org.seacairn.export.DropPlots;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;

/** What the module can stand, as a plot and, in the current as stated, as a table. */
record StandingSection(SitingPlan plan, List<StandingTable.Row> rows) implements Section {
    @Override
    public String id() {
        return "standing";
    }

    @Override
    public String heading() {
        return "What the module can stand";
    }

    @Override
    public void write(Html html) {
        Units units = new Units(plan.display());
        double factor = StandingTable.factor(plan);
        Cautions.DROP_LINES.forEach(line -> html.element("p", line, "class", "note").newLine());
        html.open("figure", "class", "plot").newLine().ready(DropPlots.standing(plan.module().name(), rows, factor)).newLine().close("figure").newLine();
        new PageTable<StandingTable.Row>("In the current as stated, in " + units.length() + "; slopes up to which a factor of "
                + Shown.number(factor) + " against overturning is kept")
                .name("Bottom", row -> row.bottom().isEmpty() ? "not planned" : row.bottom())
                .figure("Depth", row -> units.length(row.depthM()))
                .figure("Drift", row -> units.length(row.touchdown().driftM()))
                .figure("Landing radius", row -> units.length(row.landingRadiusM()))
                .figure("Embedment", row -> DropFigures.embedment(units, row.embedment()))
                .figure("Bearing over weight", row -> DropFigures.factor(row.embedment().bearingFactor()))
                .figure("Steepest slope (deg)", row -> Double.isNaN(row.steepestDeg()) ? "none" : Units.number(0, Math.floor(row.steepestDeg())))
                .write(html, rows.stream().filter(StandingTable.Row::asStated).toList());
        html.element("p", "standing.csv has the other currents. Where a bottom states no strength its embedment is not modelled.", "class", "note").newLine();
    }
}
