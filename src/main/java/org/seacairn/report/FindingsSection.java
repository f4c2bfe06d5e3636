package org.seacairn.report;

import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.review.Finding;

/** A block for each proposed site with what every rule says of it: the worst site first, and in it the worst verdict. */
record FindingsSection(Display display, List<ReviewPage.Judged> judged) implements Section {
    @Override
    public String id() {
        return "findings";
    }

    @Override
    public String heading() {
        return "Findings by site";
    }

    @Override
    public void write(Html html) {
        Bounds.first(judged, Bounds.BLOCKS).forEach(one -> block(html, one));
        Bounds.rest(html, judged, Bounds.BLOCKS, "sites", "review.csv");
    }

    private void block(Html html, ReviewPage.Judged one) {
        String id = one.feature();
        String name = one.review().site().name();
        Coordinate at = VerdictsSection.at(one);
        html.open("article", "class", "block", "id", id, "data-feature", id, "aria-labelledby", "heading-" + id).newLine();
        html.open("h3", "id", "heading-" + id).name(name).text(" ").open("span", "class", "beside");
        FindingTable.verdict(html, one.review().verdict());
        html.text(" · " + (one.review().site().isPoint() ? "" : "polygon about "));
        Places.write(html, at.x, at.y);
        html.close("span").close("h3").newLine();
        List<Finding> worstFirst = one.review().findings().stream()
                .sorted(Comparator.comparing(Finding::verdict).reversed()).toList();
        new FindingTable(display, false, "Findings at " + Html.cut(name, Html.LONGEST_NAME) + ", worst first").write(html, worstFirst);
        html.close("article").newLine();
    }
}
