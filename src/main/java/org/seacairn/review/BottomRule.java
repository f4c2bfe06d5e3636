package org.seacairn.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.criterion.BottomCriterion;
import org.seacairn.drop.LandingRadius;
import org.seacairn.layer.Feature;
import org.seacairn.plan.SitingPlan.Bottom;
import org.seacairn.plan.SitingPlan.BottomClass;

/**
 * The bottom under the landing circle: the distance to the nearest ground that is not suitable, against
 * the landing radius. Not suitable is a polygon of a class that is never allowed and, where the plan
 * excludes it, ground in no polygon. Negative where the place itself is such ground: how far it is to the
 * way out.
 */
final class BottomRule implements ReviewRule {
    private static final String UNMAPPED = "unmapped";
    /** Farther off than this it is not worth telling. */
    private static final double FAR_M = 100_000;
    /** Unmapped ground is looked for this far: the map of a coast may have ten thousand polygons. */
    private static final double FAR_UNMAPPED_M = 5_000;

    private final RuleText rule;
    private final WorkingMap map;
    private final LandingRadius landing;
    private final Bottom bottom;
    private final Optional<Cover> never;
    private final Cover mapped;

    /**
     * @param polygons longitude and latitude; those that state no class map nothing
     * @param sites that will be judged; none: they are not known yet
     */
    BottomRule(RuleText rule, WorkingMap map, LandingRadius landing, Bottom bottom, List<Feature> polygons, List<ProposedSite> sites) {
        this.rule = rule;
        this.map = map;
        this.landing = landing;
        this.bottom = bottom;
        Geodesic geodesic = map.grid().crs().geodesic();
        List<Feature> stated = polygons.stream().filter(f -> f.geometry().getDimension() == 2 && !className(f).isEmpty()).toList();
        List<Feature> unsuitable = stated.stream().filter(f -> suitability(f) < 0).toList();
        this.never = unsuitable.isEmpty() ? Optional.empty() : Optional.of(Cover.bordered(unsuitable, geodesic));
        this.mapped = sites.isEmpty() ? new Cover(stated, geodesic)
                : Cover.about(sites.stream().map(ProposedSite::geometry).toList(), FAR_UNMAPPED_M + landing.largestM(), stated, geodesic);
    }

    private String className(Feature feature) {
        return BottomCriterion.className(bottom, feature.attributes());
    }

    /** Of the feature's class; -1 for never. */
    private double suitability(Feature feature) {
        return bottom.classes().stream().filter(c -> c.name().equals(className(feature))).findFirst()
                .map(BottomClass::suitability).orElseThrow().orElse(-1);
    }

    /** Some unsuitable ground: how far, and what. */
    private record Unsuitable(double distanceM, double azimuthDeg, double placeLongitudeDeg, double placeLatitudeDeg,
            double longitudeDeg, double latitudeDeg, String what) {}

    @Override
    public List<Finding> judge(int index, ProposedSite site, Optional<SiteCells> cells) {
        double landingM = cells.map(SiteCells::landingM).orElse(landing.largestM());
        List<Unsuitable> grounds = new ArrayList<>();
        ofNever(site).ifPresent(grounds::add);
        boolean mapMatters = bottom.unmappedSuitability().isEmpty();
        Cover.Margin onMap = site.isPoint() ? mapped.at(lon(site), lat(site)) : mapped.of(site.geometry());
        if (mapMatters) {
            grounds.add(new Unsuitable(onMap.distanceM(), onMap.azimuthDeg(), onMap.placeLongitudeDeg(),
                    onMap.placeLatitudeDeg(), onMap.longitudeDeg(), onMap.latitudeDeg(), UNMAPPED));
        }
        grounds.removeIf(g -> g.distanceM > (g.what.equals(UNMAPPED) ? FAR_UNMAPPED_M + landingM : FAR_M));
        String own = "worst class here: " + worstClass(site, onMap.distanceM() < 0);
        Optional<Unsuitable> nearest = grounds.stream().min(Comparator.comparingDouble(Unsuitable::distanceM));
        if (nearest.isEmpty()) {
            Coordinate place = map.wgs84(lon(site), lat(site));
            return List.of(new Finding(site.name(), rule, Figures.metresAtLeast(0, Double.NaN, landingM), Verdict.PASS, "",
                    Double.NaN, Double.NaN, Double.NaN, place.x, place.y, own));
        }
        // A class that is never allowed is known; that outweighs what is not known.
        boolean onNever = grounds.stream().anyMatch(g -> !g.what.equals(UNMAPPED)
                && Figures.metresAtLeast(0, g.distanceM, landingM).verdict() == Verdict.FAIL);
        Unsuitable worst = !onNever ? nearest.get() : grounds.get(0);
        Figures figures = Figures.metresAtLeast(0, worst.distanceM, landingM);
        Verdict verdict = figures.verdict() == Verdict.FAIL && !onNever ? Verdict.NO_DATA : figures.verdict();
        Coordinate place = map.wgs84(worst.placeLongitudeDeg, worst.placeLatitudeDeg);
        Coordinate there = map.wgs84(worst.longitudeDeg, worst.latitudeDeg);
        return List.of(new Finding(site.name(), rule, figures, verdict, worst.what, there.x, there.y, worst.azimuthDeg,
                place.x, place.y, own));
    }

    private static double lon(ProposedSite site) {
        return site.geometry().getCoordinate().x;
    }

    private static double lat(ProposedSite site) {
        return site.geometry().getCoordinate().y;
    }

    private Optional<Unsuitable> ofNever(ProposedSite site) {
        if (never.isEmpty()) {
            return Optional.empty();
        }
        if (site.isPoint()) {
            EllipsoidalDistance.Nearest nearest = never.get().polygons().nearest(lon(site), lat(site));
            if (!Double.isNaN(nearest.azimuthDeg())) {
                return Optional.of(new Unsuitable(nearest.distanceM(), nearest.azimuthDeg(), lon(site), lat(site),
                        nearest.longitudeDeg(), nearest.latitudeDeg(), className(nearest.feature())));
            }
            Cover.Margin in = never.get().within(lon(site), lat(site)).orElseThrow();
            return Optional.of(new Unsuitable(-in.distanceM(), in.azimuthDeg(), lon(site), lat(site), in.longitudeDeg(),
                    in.latitudeDeg(), className(nearest.feature())));
        }
        NearestApproach approach = NearestApproach.of(
                EllipsoidalDistance.of(List.of(new Feature(0, site.geometry(), Map.of())), map.grid().crs().geodesic()),
                never.get().polygons());
        String what = className(approach.feature());
        return Optional.of(never.get().deepest(site.geometry())
                .map(in -> new Unsuitable(-in.distanceM(), in.azimuthDeg(), in.placeLongitudeDeg(), in.placeLatitudeDeg(),
                        in.longitudeDeg(), in.latitudeDeg(), what))
                .orElseGet(() -> new Unsuitable(approach.distanceM(), approach.azimuthDeg(), approach.placeLongitudeDeg(),
                        approach.placeLatitudeDeg(), approach.longitudeDeg(), approach.latitudeDeg(), what)));
    }

    /** The least suitable class that holds the place, or some of the polygon. */
    private String worstClass(ProposedSite site, boolean unmapped) {
        List<Feature> here = site.isPoint() ? mapped.holding(lon(site), lat(site)) : mapped.meeting(site.geometry());
        Optional<String> worst = here.stream().min(Comparator.comparingDouble(this::suitability)).map(this::className);
        return worst.isEmpty() ? UNMAPPED : unmapped && bottom.unmappedSuitability().isEmpty()
                ? worst.get() + ", and some of it is unmapped" : worst.get();
    }
}
