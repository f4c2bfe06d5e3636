package org.seacairn.review;

import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.drop.LandingRadius;

/**
 * The permit area: how far inside it the site lies, against the landing radius, so that the whole
 * landing circle is inside where it passes.
 */
final class InsideRule implements ReviewRule {
    private final RuleText rule;
    private final WorkingMap map;
    private final LandingRadius landing;
    private final Cover areas;

    InsideRule(RuleText rule, WorkingMap map, LandingRadius landing, Cover areas) {
        this.rule = rule;
        this.map = map;
        this.landing = landing;
        this.areas = areas;
    }

    @Override
    public List<Finding> judge(int index, ProposedSite site, Optional<SiteCells> cells) {
        Coordinate at = site.geometry().getCoordinate();
        Cover.Margin margin = site.isPoint() ? areas.at(at.x, at.y) : areas.of(site.geometry());
        Figures figures = Figures.metresAtLeast(0, margin.distanceM(),
                cells.map(SiteCells::landingM).orElse(landing.largestM()));
        Verdict verdict = figures.verdict();
        String feature = "#" + areas.nearestFeature(margin.placeLongitudeDeg(), margin.placeLatitudeDeg()).id();
        Coordinate place = map.wgs84(margin.placeLongitudeDeg(), margin.placeLatitudeDeg());
        Coordinate border = map.wgs84(margin.longitudeDeg(), margin.latitudeDeg());
        return List.of(new Finding(site.name(), rule, figures, verdict, feature, border.x, border.y, margin.azimuthDeg(),
                place.x, place.y, verdict == Verdict.MARGINAL ? "the landing circle reaches over the edge" : ""));
    }
}
