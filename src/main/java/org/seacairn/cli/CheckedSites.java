package org.seacairn.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import net.sf.geographiclib.Geodesic;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.criterion.RequiredDistance;
import org.seacairn.criterion.WorkingLayer;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.place.Clearance;
import org.seacairn.place.Pick;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.KeepOff;
import org.seacairn.plan.SitingPlan.Reefs;
import org.seacairn.review.EllipsoidalDistance;
import org.seacairn.review.SiteCheck;
import org.seacairn.score.CellDetail;
import org.seacairn.score.ScoreEngine;
import org.seacairn.score.WorkingLayers;

/**
 * Makes sites of chosen cells, with their distances measured again on the ellipsoid against the
 * original geometries, by code that shares nothing with the raster path. A disagreement beyond the
 * tolerance stops the run: it is a fault of Seacairn, and no one should place anything by its result.
 */
final class CheckedSites {
    /** The tolerance: 2 cm, and 5 millionths of the reach of a layer for the map's strain over distance. */
    private static final double TOLERANCE_M = 0.02;
    private static final double TOLERANCE_SHARE = 5e-6;

    private final SitingPlan plan;
    private final ScoreEngine engine;
    private final Geodesic geodesic;
    private final CoordinateTransform toWgs84;
    private final List<Layer> keepOff = new ArrayList<>();
    private final Optional<Layer> reefs;
    private final SiteDrops drops;

    /** A layer, its rule, and the exact measuring of it. */
    private record Layer(WorkingLayer layer, Optional<String> nameAttribute, RequiredDistance required,
            EllipsoidalDistance exact) {}

    CheckedSites(SitingPlan plan, ScoreEngine engine, WorkingLayers layers) {
        this.plan = plan;
        this.engine = engine;
        Crs crs = engine.grid().crs();
        this.geodesic = crs.geodesic();
        this.toWgs84 = crs.geographic().to(Crs.WGS84);
        for (int i = 0; i < plan.keepOff().size(); i++) {
            KeepOff rule = plan.keepOff().get(i);
            keepOff.add(layer(layers.keepOff().get(i), rule.nameAttribute(), rule.distanceM(), rule.positionUncertaintyM()));
        }
        this.drops = new SiteDrops(plan, engine.drop(), crs, keepOff.stream().map(Layer::exact).toList());
        this.reefs = plan.reefs().map((Reefs r) ->
                layer(layers.reefs().orElseThrow(), r.nameAttribute(), r.keepOffM(), r.positionUncertaintyM()));
    }

    private Layer layer(WorkingLayer layer, Optional<String> name, double distanceM, double positionM) {
        return new Layer(layer, name, new RequiredDistance(plan, engine.landingRadius(), distanceM, positionM),
                EllipsoidalDistance.of(layer.lonLat(), geodesic));
    }

    /**
     * @param letter that names begin with: S01, S02 and so on
     * @throws IllegalStateException if the two ways of measuring disagree
     */
    List<Site> of(List<Pick> picks, String letter) {
        int digits = Math.max(2, Integer.toString(picks.size()).length());
        List<Site> sites = new ArrayList<>();
        for (int i = 0; i < picks.size(); i++) {
            sites.add(site(picks.get(i), i + 1, String.format(Locale.ROOT, letter + "%0" + digits + "d", i + 1)));
        }
        check(picks, sites);
        return List.copyOf(sites);
    }

    /** One place, which need not be the centre of its cell; nothing is compared with the grid. */
    Site at(Pick place, String name) {
        return site(place, 1, name);
    }

    private Site site(Pick pick, int rank, String name) {
        CellDetail cell = engine.detail(pick.col(), pick.row());
        Coordinate wgs84 = toWgs84.apply(pick.longitudeDeg(), pick.latitudeDeg());
        SiteDrops.Found found = drops.at(pick.longitudeDeg(), pick.latitudeDeg(), cell);
        List<Clearance> clearances = keepOff.stream().map(layer -> clearance(layer, pick, cell.depthM())).toList();
        return new Site(rank, name, pick.col(), pick.row(), pick.x(), pick.y(), wgs84.x, wgs84.y, cell.depthM(), cell.depthUncertaintyM(),
                cell.slopeDeg(), cell.bottom(), cell.score(), cell.suitability(), clearances,
                reefs.map(layer -> clearance(layer, pick, cell.depthM())), engine.landingRadius().atM(cell.depthM()),
                found.drops(), found.releaseClearances(), found.standing());
    }

    private Clearance clearance(Layer layer, Pick pick, double depthM) {
        EllipsoidalDistance.Nearest nearest = layer.exact.nearest(pick.longitudeDeg(), pick.latitudeDeg());
        Coordinate wgs84 = toWgs84.apply(nearest.longitudeDeg(), nearest.latitudeDeg());
        return new Clearance(layer.layer.label(), nearest.distanceM(), layer.required.atDepth(depthM),
                nearest.feature().name(layer.nameAttribute), wgs84.x, wgs84.y);
    }

    private void check(List<Pick> picks, List<Site> sites) {
        List<SiteCheck.Site> places = new ArrayList<>();
        for (int i = 0; i < picks.size(); i++) {
            places.add(new SiteCheck.Site(sites.get(i).name(), picks.get(i).longitudeDeg(), picks.get(i).latitudeDeg()));
        }
        List<SiteCheck.Disagreement> found =
                new ArrayList<>(SiteCheck.check(places, List.of(), plan.sites().apartM(), 0, geodesic));
        for (int k = 0; k < keepOff.size(); k++) {
            int layer = k;
            check(places, keepOff.get(k), picks.stream()
                    .mapToDouble(p -> engine.keepOffDistancesM(p.col(), p.row())[layer]).toArray(),
                    sites.stream().mapToDouble(s -> s.clearances().get(layer).requiredM()).toArray(), found);
        }
        reefs.ifPresent(layer -> check(places, layer,
                picks.stream().mapToDouble(p -> engine.reefDistanceM(p.col(), p.row())).toArray(),
                sites.stream().mapToDouble(s -> s.stone().orElseThrow().requiredM()).toArray(), found));
        if (!found.isEmpty()) {
            SiteCheck.Disagreement first = found.get(0);
            throw new IllegalStateException(String.format(Locale.ROOT,
                    "%d distances of chosen sites differ between the grid and the ellipsoid; the first: site %s, %s,"
                    + " %.4f m on the grid, %.4f m on the ellipsoid", found.size(), first.site(), first.rule(),
                    first.rasterM(), first.ellipsoidM()));
        }
    }

    private void check(List<SiteCheck.Site> places, Layer layer, double[] rasterM, double[] requiredM,
            List<SiteCheck.Disagreement> found) {
        double reachM = layer.layer.reachM();
        List<SiteCheck.Claim> claims = new ArrayList<>();
        for (int i = 0; i < rasterM.length; i++) {
            // Beyond its reach the raster path makes no claim: a nearer feature may have been left out.
            claims.add(new SiteCheck.Claim(rasterM[i] <= reachM ? rasterM[i] : Double.NaN, requiredM[i]));
        }
        found.addAll(SiteCheck.check(places, List.of(new SiteCheck.Rule(layer.layer.label(), layer.layer.lonLat(), claims)),
                0, TOLERANCE_M + TOLERANCE_SHARE * reachM, geodesic));
    }
}
