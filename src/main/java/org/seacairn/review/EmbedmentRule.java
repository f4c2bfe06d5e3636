package org.seacairn.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.criterion.BottomCriterion;
import org.seacairn.drop.ModuleDrop;
import org.seacairn.layer.Feature;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan.Bottom;
import org.seacairn.plan.SitingPlan.BottomClass;

/**
 * How deep the module sinks into the bottom: the deepest over the classes that hold the place, or that a polygon meets, at
 * the site's depth. Classes without a strength are not judged; where there is no other, there is no figure, and the rule
 * passes with a note.
 */
final class EmbedmentRule implements ReviewRule {
    /** Printed where the bottom never bears the module: no base goes deeper. */
    private static final double ENDLESS_M = 999;

    private final RuleText rule;
    private final WorkingMap map;
    private final double mostM;
    private final ModuleDrop drop;
    private final Bottom bottom;
    private final Cover mapped;

    EmbedmentRule(RuleText rule, WorkingMap map, double mostM, ModuleDrop drop, Bottom bottom, List<Feature> polygons) {
        this.rule = rule;
        this.map = map;
        this.mostM = mostM;
        this.drop = drop;
        this.bottom = bottom;
        this.mapped = new Cover(polygons.stream().filter(f -> f.geometry().getDimension() == 2
                && !BottomCriterion.className(bottom, f.attributes()).isEmpty()).toList(), map.grid().crs().geodesic());
    }

    @Override
    public List<Finding> judge(int index, ProposedSite site, Optional<SiteCells> cells) {
        double depthM = cells.map(SiteCells::ownDepthM).orElse(Double.NaN);
        if (Double.isNaN(depthM)) {
            return List.of(finding(site, Double.NaN, Verdict.NO_DATA, "no depth to sink through"));
        }
        Coordinate at = site.geometry().getCoordinate();
        Set<String> names = (site.isPoint() ? mapped.holding(at.x, at.y) : mapped.meeting(site.geometry())).stream()
                .map(f -> BottomCriterion.className(bottom, f.attributes())).collect(Collectors.toSet());
        double deepest = Double.NaN;
        String softest = "";
        List<String> unknown = new ArrayList<>();
        for (BottomClass bottomClass : bottom.classes()) {
            if (!names.contains(bottomClass.name())) {
                continue;
            }
            // As deep as the plan allows; a deeper place fails by its depth.
            double embedmentM = drop.embedment(Math.max(0, Math.min(depthM, drop.deepestM())), Optional.of(bottomClass)).depthM();
            if (Double.isNaN(embedmentM)) {
                unknown.add(bottomClass.name());
            } else if (!(embedmentM <= deepest)) {
                deepest = Math.min(ENDLESS_M, embedmentM);
                softest = bottomClass.name();
            }
        }
        String note = (softest.isEmpty() ? "" : "into " + softest + (unknown.isEmpty() ? "" : "; "))
                + (unknown.isEmpty() ? "" : "not modelled on " + Shown.printable(String.join(", ", unknown)));
        return List.of(softest.isEmpty() ? finding(site, Double.NaN, Verdict.PASS, note.isEmpty() ? "no class with a strength here" : note)
                : finding(site, deepest, null, note));
    }

    /** @param verdict null: that of the figures */
    private Finding finding(ProposedSite site, double measuredM, Verdict verdict, String note) {
        Figures figures = new Figures(Figures.Unit.METRES, mostM, measuredM, 0, false);
        Coordinate lonLat = site.geometry().getCoordinate();
        Coordinate place = map.wgs84(lonLat.x, lonLat.y);
        return new Finding(site.name(), rule, figures, verdict == null ? figures.verdict() : verdict, "", Double.NaN, Double.NaN,
                Double.NaN, place.x, place.y, note);
    }
}
