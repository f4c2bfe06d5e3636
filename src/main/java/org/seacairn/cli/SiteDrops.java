package org.seacairn.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.drop.ModuleDrop;
import org.seacairn.drop.PlannedDrop;
import org.seacairn.drop.Standing;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.place.Clearance;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.BottomClass;
import org.seacairn.plan.SitingPlan.KeepOff;
import org.seacairn.review.EllipsoidalDistance;
import org.seacairn.score.CellDetail;

/**
 * Release points of sites and how the module stands there, and whether the barge at the release point keeps off the
 * layers that hold at the surface too: their distance, and the uncertainties of their position and the barge's.
 */
final class SiteDrops {
    private final SitingPlan plan;
    private final Optional<ModuleDrop> drop;
    private final Geodesic geodesic;
    private final CoordinateTransform toWgs84;
    private final List<Surface> surface = new ArrayList<>();

    private record Surface(KeepOff rule, double requiredM, EllipsoidalDistance exact) {}

    /** What there is to say of one target. */
    record Found(List<PlannedDrop> drops, List<Clearance> releaseClearances, Optional<Standing> standing) {
        private static final Found NOTHING = new Found(List.of(), List.of(), Optional.empty());
    }

    /** @param keepOff the plan's layers in its order */
    SiteDrops(SitingPlan plan, Optional<ModuleDrop> drop, Crs crs, List<EllipsoidalDistance> keepOff) {
        this.plan = plan;
        this.drop = drop;
        this.geodesic = crs.geodesic();
        this.toWgs84 = crs.geographic().to(Crs.WGS84);
        for (int i = 0; i < keepOff.size(); i++) {
            KeepOff rule = plan.keepOff().get(i);
            if (rule.surface()) {
                double requiredM = rule.distanceM() + Math.hypot(rule.positionUncertaintyM(), plan.bargeUncertaintyM());
                surface.add(new Surface(rule, requiredM, keepOff.get(i)));
            }
        }
    }

    /**
     * @param longitudeDeg of the target, on the working CRS's datum, as {@code latitudeDeg}
     * @return release points on WGS 84; nothing where the plan does not tell how the module sinks, or not as deep
     */
    Found at(double longitudeDeg, double latitudeDeg, CellDetail cell) {
        if (drop.isEmpty() || !(cell.depthM() > 0 && cell.depthM() <= drop.get().deepestM())) {
            return Found.NOTHING;
        }
        List<PlannedDrop> drops = drop.get().drops(longitudeDeg, latitudeDeg, cell.depthM(), geodesic);
        List<Clearance> clearances = surface.stream().map(layer -> clearance(layer, drops.get(0))).toList();
        Optional<BottomClass> bottom = plan.bottom().flatMap(b ->
                b.classes().stream().filter(c -> c.name().equals(cell.bottom())).findFirst());
        return new Found(drops.stream().map(this::onWgs84).toList(), clearances,
                Optional.of(drop.get().standing(cell.depthM(), cell.slopeDeg(), bottom)));
    }

    private PlannedDrop onWgs84(PlannedDrop d) {
        Coordinate wgs84 = toWgs84.apply(d.releaseLongitudeDeg(), d.releaseLatitudeDeg());
        return new PlannedDrop(d.profile(), wgs84.x, wgs84.y, d.bearingDeg(), d.touchdown(), d.landing());
    }

    private Clearance clearance(Surface layer, PlannedDrop drop) {
        EllipsoidalDistance.Nearest nearest = layer.exact.nearest(drop.releaseLongitudeDeg(), drop.releaseLatitudeDeg());
        Coordinate wgs84 = toWgs84.apply(nearest.longitudeDeg(), nearest.latitudeDeg());
        return new Clearance(layer.rule.source().label(), nearest.distanceM(), layer.requiredM,
                nearest.feature().name(layer.rule.nameAttribute()), wgs84.x, wgs84.y);
    }

    /** One line for each release point that is too near a layer at the surface. */
    static List<String> warnings(String site, List<Clearance> releaseClearances) {
        return releaseClearances.stream().filter(Clearance::isTooNear)
                .map(c -> site + ": at its release point the barge lies " + (c.distanceM() == 0 ? "inside " : Shown.metres(Math.round(c.distanceM())) + " from ")
                        + c.nearest() + " of \"" + c.layer() + "\", where " + Shown.metres(Math.ceil(c.requiredM()))
                        + " are required at the surface; choose another site, or ask the coast guard for the day of the drop").toList();
    }
}
