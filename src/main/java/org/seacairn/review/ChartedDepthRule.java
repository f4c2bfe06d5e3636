package org.seacairn.review;

import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import net.sf.geographiclib.GeodesicData;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.criterion.ChartedCells;
import org.seacairn.criterion.ChartedDepth;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Limits;
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
    private final ChartedCells cellsOnChart;
    private final ChartedAreas areas;
    /** What the limits and the module ask for; 0 where they ask for nothing. */
    private final double leastDepthM;
    /** Infinite where nothing limits it. */
    private final double greatestDepthM;

    ChartedDepthRule(RuleText rule, WorkingMap map, SitingPlan plan, ChartedCells cellsOnChart) {
        this.rule = rule;
        this.map = map;
        this.cellsOnChart = cellsOnChart;
        this.areas = new ChartedAreas(cellsOnChart.areas(), map.grid().crs().geodesic());
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
        Set<ChartedDepth.Area> held = Collections.newSetFromMap(new IdentityHashMap<>());
        cells.get().forEach(cellsOnChart, (col, row, depthM, uncertaintyM, area) -> {
            if (area == ChartedCells.NONE) {
                found.addOutside(() -> map.lonLat(col, row));
                return;
            }
            ChartedDepth.Area charted = cellsOnChart.areas().get(area);
            held.add(charted);
            if (Double.isNaN(depthM)) {
                addUnsurveyed(found, () -> map.lonLat(col, row), charted);
            } else {
                Figures figures = figures(depthM, uncertaintyM, charted.depth());
                found.add(kind(figures), figures, () -> map.lonLat(col, row), charted);
            }
        });
        betweenCentres(found, site, cells.get(), held);
        return List.of(found.finding(cells.get().partlyOff()));
    }

    /** A depth against the nearer end of the range, which the uncertainty widens; one that is not known does not. */
    private static Figures figures(double depthM, double uncertaintyM, ChartedDepth charted) {
        double allowedM = Double.isNaN(uncertaintyM) ? 0 : uncertaintyM;
        Figures shallow = Figures.metresAtLeast(charted.shallowM() - allowedM, depthM, 0);
        Figures deep = new Figures(Unit.METRES, charted.deepM() + allowedM, depthM, 0, false);
        return Double.isNaN(charted.deepM()) || shallow.margin() <= deep.margin() ? shallow : deep;
    }

    private static Kind kind(Figures figures) {
        return figures.margin() >= 0 ? Kind.AGREES : figures.atLeast() ? Kind.SHOALER : Kind.DEEPER;
    }

    private void addUnsurveyed(ChartedDepthFinding found, Supplier<Coordinate> at, ChartedDepth.Area charted) {
        ChartedDepth depth = charted.depth();
        Figures deepest = Figures.metresAtLeast(leastDepthM, depth.deepM(), 0);
        Figures shoalest = new Figures(Unit.METRES, greatestDepthM, depth.shallowM(), 0, false);
        if (deepest.verdict() == Verdict.FAIL || depth.deepM() <= 0) {
            found.add(Kind.TOO_SHALLOW, deepest, at, charted);
        } else if (shoalest.verdict() == Verdict.FAIL) {
            found.add(Kind.TOO_DEEP, shoalest, at, charted);
        } else {
            found.add(Kind.UNSURVEYED, Figures.metresAtLeast(leastDepthM, depth.shallowM(), 0), at, charted);
        }
    }

    private void betweenCentres(ChartedDepthFinding found, ProposedSite site, SiteCells cells, Set<ChartedDepth.Area> held) {
        double reachM = site.isPoint() ? Math.max(cells.landingM(), LEAST_RADIUS_M) : 0;
        SharedGround ground = null;
        for (Charted charted : areas.near(site.geometry().getEnvelopeInternal(), reachM)) {
            if (charted.alone() && held.contains(charted.area()) || site.isPoint() && isBeyond(charted, site.geometry().getCoordinate(), reachM)) {
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
        int col = map.grid().colAt(onMap.get().x);
        int row = map.grid().rowAt(onMap.get().y);
        SiteCells.Ground about = cells.about(col, row);
        IntStream.range(0, about.depthM().length).filter(i -> !Float.isNaN(about.depthM()[i]))
                .mapToObj(i -> figures(about.depthM()[i], about.uncertainty().atM(i, about.depthM()[i]), charted.depth())).max(Comparator.comparingDouble(Figures::margin))
                .ifPresent(best -> found.add(kind(best), best, () -> at, charted.area()));
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
