package org.seacairn.report;

import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.export.AreaTables.Candidate;
import org.seacairn.place.LeastWater;
import org.seacairn.plan.SitingPlan;

/** A block for each candidate area: its corners for the chart, its ground, and what a review says of it. */
record AreaBlocksSection(SitingPlan plan, List<Candidate> areas) implements Section {
    private record Corner(int number, Coordinate at) {}

    @Override
    public String id() {
        return "area-by-area";
    }

    @Override
    public String heading() {
        return "Area by area";
    }

    @Override
    public void write(Html html) {
        Bounds.first(areas, Bounds.BLOCKS).forEach(area -> block(html, area));
        Bounds.rest(html, areas, Bounds.BLOCKS, "areas", "areas.csv");
    }

    private void block(Html html, Candidate area) {
        Units units = new Units(plan.display());
        String id = FeatureId.of(area);
        html.open("article", "class", "block", "id", id, "data-feature", id, "aria-labelledby", "heading-" + id).newLine();
        html.open("h3", "id", "heading-" + id).name(area.name()).text(" ")
                .element("span", "mean score " + Units.score(area.area().meanScore()), "class", "beside").close("h3").newLine();
        Facts facts = new Facts(html)
                .add("Sides", units.length(area.area().size().lengthM()) + " x " + units.lengthText(area.area().size().widthM()))
                .add("Depth", units.length(area.area().depthM().least()) + " to " + units.lengthText(area.area().depthM().most()))
                .add("Least water over a module", units.down(LeastWater.overM(plan, area.area())) + " " + units.length())
                .add("Slope", Units.degrees(area.area().slopeDeg().least()) + " to " + Units.degrees(area.area().slopeDeg().most()) + " deg")
                .add("Room for", area.modules().size() + " modules " + units.lengthText(plan.sites().apartM()) + " apart, no more than "
                        + area.capacityBound());
        if (!area.bottomShares().isEmpty()) {
            facts.name("Bottom", area.bottomShares());
        }
        facts.end();
        new PageTable<Corner>("Corners of " + area.name() + ", clockwise, WGS 84")
                .text("Corner", corner -> Integer.toString(corner.number()))
                .figure("Latitude", corner -> Places.latitude(corner.at().y))
                .figure("Longitude", corner -> Places.longitude(corner.at().x))
                .write(html, IntStream.range(0, area.corners().size()).mapToObj(i -> new Corner(i + 1, area.corners().get(i))).toList());
        new FindingTable(plan.display(), false, "Review of " + area.name()).write(html, area.findings());
        html.close("article").newLine();
    }
}
