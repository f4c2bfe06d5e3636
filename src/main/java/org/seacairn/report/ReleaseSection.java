package org.seacairn.report;

import java.util.List;
import org.seacairn.drop.LandingDraws;
import org.seacairn.export.DropTables.Case;
import org.seacairn.plan.SitingPlan.Display;

/**
 * Release points of one target, and how the module comes down there.
 *
 * @param draws a second opinion on the landing radius, for each of the first cases
 */
record ReleaseSection(Display display, List<Case> cases, List<LandingDraws> draws) implements Section {
    @Override
    public String id() {
        return DropPage.TARGET_ID;
    }

    @Override
    public String heading() {
        return "Release and landing";
    }

    @Override
    public void write(Html html) {
        Units units = new Units(display);
        new PageTable<Case>("Release points, in " + units.length())
                .name("Day", c -> c.drop().profile().isEmpty() ? "the plan's current" : c.drop().profile())
                .text("Current", Case::current)
                .cell("Release point (WGS 84)", (h, c) -> Places.write(h, c.drop().releaseLongitudeDeg(), c.drop().releaseLatitudeDeg()))
                .figure("From the target", c -> units.length(c.drop().touchdown().driftM()))
                .figure("Bearing (deg true)", c -> Units.number(0, c.drop().bearingDeg()))
                .figure("Sinks (s)", c -> Units.number(0, c.drop().touchdown().timeS()))
                .figure("Tilt (deg, at most)", c -> DropFigures.tilt(c.standing().tiltDeg()))
                .figure("Embedment", c -> DropFigures.embedment(units, c.standing().embedment()))
                .figure("Factor against overturning", c -> DropFigures.factor(c.standing().stability()))
                .write(html, cases);
        new PageTable<Case>("Landing circle that holds 95 %, in " + units.length() + ": the root of the squares of its parts")
                .name("Day", c -> c.drop().profile().isEmpty() ? "the plan's current" : c.drop().profile())
                .text("Current", Case::current)
                .figure("Radius", c -> units.length(c.drop().landing().radiusM()))
                .figure("Scatter", c -> units.length(c.drop().landing().scatterM()))
                .figure("Current off", c -> units.length(c.drop().landing().driftM()))
                .figure("Drag off", c -> units.length(c.drop().landing().dragM()))
                .figure("Barge off", c -> units.length(c.drop().landing().bargeM()))
                .figure("May glide by", c -> units.length(c.glideM()))
                .write(html, cases);
        for (int i = 0; i < draws.size(); i++) {
            Case drawn = cases.get(i);
            LandingDraws opinion = draws.get(i);
            String day = drawn.drop().profile().isEmpty() ? "" : " (" + Html.cut(drawn.drop().profile(), Html.LONGEST_NAME) + ")";
            html.open("p", "class", "note").line("Of " + opinion.draws() + " landings drawn at random" + day + " 95 % fall within "
                    + units.lengthText(opinion.radiusM()) + " of the target: of the radius above, " + opinion.opinionOf(drawn.drop().landing()) + ".")
                    .close("p").newLine();
        }
        html.element("p", "The scatter stands for the gliding of a module that leans on its way down; it is told for comparison and not added.",
                "class", "note").newLine();
    }
}
