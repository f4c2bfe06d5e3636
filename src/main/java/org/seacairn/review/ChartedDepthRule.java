package org.seacairn.review;

import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import net.sf.geographiclib.GeodesicData;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Limits;
import org.seacairn.plan.SitingPlan.Uncertainty;
import org.seacairn.review.ChartedAreas.Charted;
import org.seacairn.review.ChartedDepthFinding.Kind;
import org.seacairn.review.Figures.Unit;

/**
 * The depth against the chart: each of the site's cells against the charted depth area that holds its centre (the shoalest of
 * several). A depth beyond the area's range by more than the bathymetry's uncertainty is a contradiction, and marginal: chart or
 * bathymetry is wrong, and which cannot be told from here. A cell without depth has the chart's word only: it fails where all of
 * the range breaks a limit of the plan, and is marginal otherwise. What no area holds is {@code no data}.
 *
 * <p>An area that the site's ground meets between the centres of its cells may be a charted shoal that is smaller than a cell: it is
 * held against the nine cells about a place in it, one of which must agree, so that a slope beside its contour is no contradiction.
 */
final class ChartedDepthRule implements ReviewRule {
    static final String NAME = "charted-depth";
    /** A landing circle as a polygon; inscribed, it leaves out 0.12 % of the radius. */
    private static final int CORNERS = 64;
    /** A landing circle without a radius still lies somewhere. */
    private static final double LEAST_RADIUS_M = 0.1;

    private final RuleText rule;
    private final WorkingMap map;
    private final ChartedAreas areas;
    private final Uncertainty uncertainty;
    /** What the limits and the module ask for; 0 where they ask for nothing. */
    private final double leastDepthM;
    private final double greatestDepthM;

    ChartedDepthRule(RuleText rule, WorkingMap map, SitingPlan plan, ChartedAreas areas) {
        this.rule = rule;
        this.map = map;
        this.areas = areas;
        this.uncertainty = plan.bathymetry().uncertainty();
        Limits limits = plan.limits();
        double heightM = plan.module().heightM();
        double clearM = limits.clearanceAboveM().isPresent() ? limits.clearanceAboveM().getAsDouble() + heightM : 0;
        double shareM = limits.heightShare().isPresent() ? heightM / limits.heightShare().getAsDouble() : 0;
        this.leastDepthM = Math.max(limits.shallowestM().orElse(0), Math.max(clearM, shareM));
        this.greatestDepthM = limits.deepestM().orElse(Double.POSITIVE_INFINITY);
    }

    @Override
    public List<Finding> judge(int index, ProposedSite site, Optional<SiteCells> cells) {
        ChartedDepthFinding found = new ChartedDepthFinding(site, rule, map);
        if (cells.isEmpty()) {
            return List.of(found.offTheGrid());
        }
        Map<GeodesicArea, Charted> held = new IdentityHashMap<>();
        cells.get().forEach((col, row, depthM) -> {
            Coordinate centre = map.lonLat(col, row);
            List<Charted> holding = areas.holding(centre.x, centre.y);
            holding.forEach(charted -> held.put(charted.polygon(), charted));
            if (holding.isEmpty()) {
                found.addOutside(centre);
            } else if (Double.isNaN(depthM)) {
                addUnsurveyed(found, centre, holding.get(0));
            } else {
                Figures figures = figures(depthM, holding.get(0));
                found.add(kind(figures), figures, centre, holding.get(0));
            }
        });
        betweenCentres(found, site, cells.get(), held);
        return List.of(found.finding(cells.get().partlyOff()));
    }

    /** A depth against the nearer end of the range, which the uncertainty widens. */
    private Figures figures(double depthM, Charted charted) {
        double allowedM = uncertainty.verticalM(depthM);
        Figures shallow = Figures.metresAtLeast(charted.depth().shallowM() - allowedM, depthM, 0);
        Figures deep = new Figures(Unit.METRES, charted.depth().deepM() + allowedM, depthM, 0, false);
        return Double.isNaN(charted.depth().deepM()) || shallow.margin() <= deep.margin() ? shallow : deep;
    }

    private static Kind kind(Figures figures) {
        return figures.margin() >= 0 ? Kind.AGREES : figures.atLeast() ? Kind.SHOALER : Kind.DEEPER;
    }

    private void addUnsurveyed(ChartedDepthFinding found, Coordinate at, Charted charted) {
        double shallowM = charted.depth().shallowM();
        double deepM = charted.depth().deepM();
        Figures deepest = Figures.metresAtLeast(leastDepthM, deepM, 0);
        if (deepest.verdict() == Verdict.FAIL || deepM <= 0) {
            found.add(Kind.TOO_SHALLOW, deepest, at, charted);
        } else if (shallowM > greatestDepthM) {
            found.add(Kind.TOO_DEEP, new Figures(Unit.METRES, greatestDepthM, shallowM, 0, false), at, charted);
        } else {
            found.add(Kind.UNSURVEYED, Figures.metresAtLeast(leastDepthM, shallowM, 0), at, charted);
        }
    }

    private void betweenCentres(ChartedDepthFinding found, ProposedSite site, SiteCells cells, Map<GeodesicArea, Charted> held) {
        double reachM = site.isPoint() ? Math.max(cells.landingM(), LEAST_RADIUS_M) : 0;
        SharedGround ground = null;
        for (Charted charted : areas.near(site.geometry().getEnvelopeInternal(), reachM)) {
            if (held.containsKey(charted.polygon()) || site.isPoint() && isBeyond(charted, site.geometry().getCoordinate(), reachM)) {
                continue;
            }
            ground = ground != null ? ground
                    : new SharedGround(site.isPoint() ? circle(site.geometry().getCoordinate(), reachM) : site.geometry(), map.grid().crs().geodesic());
            Geometry shared = ground.with(charted.polygon().polygon());
            if (!shared.isEmpty()) {
                Coordinate at = ground.plane().toLonLat(shared.getInteriorPoint().getCoordinate());
                betweenCentres(found, cells, at, charted);
            }
        }
    }

    private void betweenCentres(ChartedDepthFinding found, SiteCells cells, Coordinate at, Charted charted) {
        List<Charted> holding = areas.holding(at.x, at.y);
        Optional<Coordinate> onMap = map.onMap(at.x, at.y);
        if (onMap.isEmpty() || holding.isEmpty() || holding.get(0) != charted) {
            return; // A shoaler area lies over it and counts.
        }
        int col = (int) Math.floor((onMap.get().x - map.grid().west()) / map.grid().cellM());
        int row = (int) Math.floor((map.grid().north() - onMap.get().y) / map.grid().cellM());
        float[] nine = cells.depthsAbout(col, row);
        IntStream.range(0, nine.length).mapToObj(i -> nine[i]).filter(depthM -> !Float.isNaN(depthM))
                .map(depthM -> figures(depthM, charted)).max(Comparator.comparingDouble(Figures::margin))
                .ifPresent(best -> found.add(kind(best), best, at, charted));
    }

    private static boolean isBeyond(Charted charted, Coordinate at, double reachM) {
        return !charted.polygon().contains(at.x, at.y) && charted.polygon().nearestEdge(at.x, at.y).distanceM() > reachM;
    }

    private Geometry circle(Coordinate at, double radiusM) {
        Coordinate[] ring = new Coordinate[CORNERS + 1];
        for (int i = 0; i < CORNERS; i++) {
            GeodesicData end = map.grid().crs().geodesic().Direct(at.y, at.x, 360.0 * i / CORNERS, radiusM);
            ring[i] = new Coordinate(at.x + Math.IEEEremainder(end.lon2 - at.x, 360), end.lat2);
        }
        ring[CORNERS] = ring[0].copy();
        return new GeometryFactory().createPolygon(ring);
    }
}
