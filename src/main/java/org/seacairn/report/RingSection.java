package org.seacairn.report;

import java.util.List;
import java.util.stream.IntStream;
import org.seacairn.place.Ring;
import org.seacairn.place.RingModule;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan.Display;

/** Where each module of a ring stands about the reef. */
record RingSection(Display display, String reef, Ring ring, List<Site> sites) implements Section {
    private record Row(Site site, RingModule module, double gapM) {}

    @Override
    public String id() {
        return "ring";
    }

    @Override
    public String heading() {
        return "The ring";
    }

    @Override
    public void write(Html html) {
        Units units = new Units(display);
        String length = " (" + units.length() + ")";
        new PageTable<Row>("Modules about " + Html.cut(reef, Html.LONGEST_NAME) + ", clockwise from north")
                .name("Site", row -> row.site().name())
                .figure("Bearing (deg true)", row -> Units.number(1, row.module().bearingDeg()))
                .figure("From the reef" + length, row -> units.length(row.module().distanceM()))
                .figure("To the next" + length, row -> Double.isNaN(row.gapM()) ? "–" : units.length(row.gapM()))
                .feature(row -> FeatureId.of(row.site()))
                .write(html, IntStream.range(0, sites.size()).mapToObj(i -> new Row(sites.get(i), ring.modules().get(i),
                        ring.gapsM().isEmpty() ? Double.NaN : ring.gapsM().get(i))).toList());
    }
}
