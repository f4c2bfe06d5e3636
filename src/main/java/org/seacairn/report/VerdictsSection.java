package org.seacairn.report;

import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.review.Verdict;

/** Every proposed site with its worst verdict, the worst first. */
record VerdictsSection(List<ReviewPage.Judged> judged) implements Section {
    @Override
    public String id() {
        return "sites";
    }

    @Override
    public String heading() {
        return "Proposed sites";
    }

    @Override
    public void write(Html html) {
        PageTable<ReviewPage.Judged> table = new PageTable<ReviewPage.Judged>("Proposed sites, worst verdict first; how many rules said what")
                .name("Site", j -> j.review().site().name())
                .cell("Verdict", (h, j) -> FindingTable.verdict(h, j.review().verdict())).sortedBy(j -> Integer.toString(j.review().verdict().ordinal()))
                .figure("Latitude", j -> Places.latitude(at(j).y)).sortedBy(j -> Double.toString(at(j).y))
                .figure("Longitude", j -> Places.longitude(at(j).x)).sortedBy(j -> Double.toString(at(j).x));
        for (Verdict verdict : Verdict.values()) {
            String text = verdict.toString();
            table.figure(text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1),
                    j -> Integer.toString(j.review().count(verdict)));
        }
        table.feature(ReviewPage.Judged::feature).sortable().write(html, Bounds.first(judged, Bounds.ROWS));
        Bounds.rest(html, judged, Bounds.ROWS, "sites", "review.csv");
    }

    /** The point, or the middle of a polygon. */
    static Coordinate at(ReviewPage.Judged judged) {
        Geometry wgs84 = judged.review().wgs84();
        return judged.review().site().isPoint() ? wgs84.getCoordinate() : wgs84.getCentroid().getCoordinate();
    }
}
