package org.seacairn.review;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.layer.Feature;

/**
 * Keeping off a layer: the geodesic distance to its nearest feature, 0 inside a polygon. A place inside
 * a polygon fails whatever the distance. Where the layer's coverage does not hold all the ground that
 * the rule is about, the verdict is {@code no data}, unless what is known already fails.
 */
final class DistanceRule implements ReviewRule {
    private final RuleText rule;
    private final WorkingMap map;
    private final double requiredM;
    private final DoubleUnaryOperator allowanceM;
    private final EllipsoidalDistance layer;
    private final Optional<String> nameAttribute;
    private final Optional<Cover> coverage;

    /** @param allowanceM at a depth in metres; NaN for an unknown one */
    DistanceRule(RuleText rule, WorkingMap map, double requiredM, DoubleUnaryOperator allowanceM,
            EllipsoidalDistance layer, Optional<String> nameAttribute, Optional<Cover> coverage) {
        this.rule = rule;
        this.map = map;
        this.requiredM = requiredM;
        this.allowanceM = allowanceM;
        this.layer = layer;
        this.nameAttribute = nameAttribute;
        this.coverage = coverage;
    }

    @Override
    public List<Finding> judge(int index, ProposedSite site, Optional<SiteCells> cells) {
        double depthM = cells.map(SiteCells::ownDepthM).orElse(Double.NaN);
        NearestApproach found = approach(site);
        Figures figures = Figures.metresAtLeast(requiredM, found.distanceM(), allowanceM.applyAsDouble(depthM));
        boolean inside = Double.isNaN(found.azimuthDeg());
        Verdict verdict = inside ? Verdict.FAIL : figures.verdict();
        String note = inside ? site.isPoint() ? "inside it" : "they meet" : "";
        if (coverage.isPresent()) {
            double coveredM = site.isPoint()
                    ? coverage.get().at(site.geometry().getCoordinate().x, site.geometry().getCoordinate().y).distanceM()
                    : coverage.get().of(site.geometry()).distanceM();
            if (verdict != Verdict.FAIL && coveredM < figures.required() + figures.allowance()) {
                verdict = Verdict.NO_DATA;
                note = coveredM < 0 ? "outside the layer's coverage"
                        : "the layer's coverage ends within the distance that the rule is about";
            }
        }
        Coordinate place = map.wgs84(found.placeLongitudeDeg(), found.placeLatitudeDeg());
        Coordinate nearest = map.wgs84(found.longitudeDeg(), found.latitudeDeg());
        return List.of(new Finding(site.name(), rule, figures, verdict, found.feature().name(nameAttribute), nearest.x, nearest.y,
                found.azimuthDeg(), place.x, place.y, note));
    }

    private NearestApproach approach(ProposedSite site) {
        if (!site.isPoint()) {
            return NearestApproach.of(EllipsoidalDistance.of(
                    List.of(new Feature(0, site.geometry(), Map.of())), layer.geodesic()), layer);
        }
        Coordinate at = site.geometry().getCoordinate();
        EllipsoidalDistance.Nearest nearest = layer.nearest(at.x, at.y);
        return new NearestApproach(nearest.distanceM(), nearest.azimuthDeg(), at.x, at.y, nearest.longitudeDeg(),
                nearest.latitudeDeg(), nearest.feature());
    }
}
