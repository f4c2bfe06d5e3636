package org.seacairn.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import net.sf.geographiclib.Geodesic;
import org.seacairn.criterion.ChartedCells;
import org.seacairn.criterion.WorkingLayer;
import org.seacairn.drop.LandingRadius;
import org.seacairn.drop.ModuleDrop;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.DepthAreas;
import org.seacairn.plan.SitingPlan.KeepOff;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.plan.SitingPlan.Limits;
import org.seacairn.plan.SitingPlan.Reefs;
import org.seacairn.review.Figures.Unit;
import org.seacairn.score.WorkingDepth;
import org.seacairn.score.WorkingLayers;

/** Every rule of a plan, in the order in which a site is judged. */
final class ReviewRules {
    private static final SiteCells.Measure DEPTH = (ground, i) -> ground.depthM()[i];
    private static final SiteCells.Measure HEIGHT = (ground, i) -> -ground.depthM()[i];
    /** The depth that there is at least, as far as it is known. */
    private static final SiteCells.Measure SURE_DEPTH =
            (ground, i) -> ground.depthM()[i] - ground.uncertainty().atM(i, ground.depthM()[i]);
    /** Nothing turns over a module with more; a figure that is infinite could not be printed. */
    private static final double MOST_FACTOR = 99;
    private static final DoublePredicate NEVER = value -> false;

    private final SitingPlan plan;
    private final LandingRadius landing;
    private final WorkingMap map;
    private final Geodesic geodesic;
    private final List<ReviewRule> rules = new ArrayList<>();

    private ReviewRules(SitingPlan plan, LandingRadius landing, WorkingMap map) {
        this.plan = plan;
        this.landing = landing;
        this.map = map;
        this.geodesic = map.grid().crs().geodesic();
    }

    static List<ReviewRule> of(SitingPlan plan, LandingRadius landing, WorkingDepth depth, WorkingLayers layers, WorkingMap map,
            List<ProposedSite> sites) {
        List<ReviewRule> rules = new ArrayList<>(ofOne(plan, landing, depth, layers, map, sites));
        ReviewRules made = new ReviewRules(plan, landing, map);
        rules.add(new OthersRule(made.own("apart", "sites: apart"),
                new RuleText("overlap", "proposed polygons share no ground", Optional.empty(), ""),
                new RuleText("duplicate", "no site is proposed twice", Optional.empty(), ""),
                plan.sites().apartM(), map, sites));
        return List.copyOf(rules);
    }

    /** The rules that look at one site alone. */
    static List<ReviewRule> ofOne(SitingPlan plan, LandingRadius landing, WorkingDepth depth, WorkingLayers layers, WorkingMap map,
            List<ProposedSite> sites) {
        ReviewRules made = new ReviewRules(plan, landing, map);
        made.depth();
        plan.depthAreas().ifPresent(areas -> made.chartedDepth(areas, layers.depthAreas().orElseThrow()));
        made.terrain(depth.grid().cellM());
        ModuleDrop.of(plan).ifPresent(drop -> made.landing(drop, depth.grid().cellM(), layers));
        plan.bottom().ifPresent(bottom -> made.rules.add(new BottomRule(made.own("bottom", "bottom: classes"), map,
                landing, bottom, layers.bottom().orElseThrow().lonLat(), sites)));
        plan.inside().ifPresent(inside -> made.rules.add(new InsideRule(
                new RuleText("inside", made.planKey("inside: " + inside.file().getFileName()), Optional.empty(), edges(inside)),
                map, landing, new Cover(layers.inside().orElseThrow().lonLat(), made.geodesic))));
        plan.reefs().ifPresent(reefs -> made.reefs(reefs, layers.reefs().orElseThrow()));
        for (int i = 0; i < plan.keepOff().size(); i++) {
            made.keepOff(plan.keepOff().get(i), layers.keepOff().get(i), layers.coverage().get(i));
        }
        return List.copyOf(made.rules);
    }

    private void depth() {
        Limits limits = plan.limits();
        double heightM = plan.module().heightM();
        OptionalDouble shallowest = limits.shallowestM();
        // Dry land is too shallow whatever the plan says.
        rules.add(new CellRule(shallowest.isPresent() ? own("depth-least", "limits: depth")
                : new RuleText("depth-least", "water at all (the plan has no least depth)", Optional.empty(), ""), map, 0, DEPTH,
                (d, depthM) -> Figures.metresAtLeast(shallowest.orElse(0), d, 0), d -> d <= 0));
        limits.deepestM().ifPresent(deepest -> rules.add(new CellRule(own("depth-greatest", "limits: depth"), map, 0, HEIGHT,
                (h, depthM) -> new Figures(Unit.METRES, deepest, -h, 0, false), NEVER)));
        limits.clearanceAboveM().ifPresent(above -> rules.add(new CellRule(own("clearance-above", "limits: clearance-above"), map, 0,
                SURE_DEPTH, (sure, depthM) -> Figures.metresAtLeast(above, depthM - heightM, depthM - sure), NEVER)));
        limits.heightShare().ifPresent(share -> rules.add(new CellRule(own("height-share", "limits: height-share"), map, 0,
                DEPTH, (d, depthM) -> Figures.metresAtLeast(heightM / share, d, 0), NEVER)));
    }

    private void chartedDepth(DepthAreas areas, WorkingLayer layer) {
        RuleText text = new RuleText(ChartedDepthRule.NAME, areas.ruleSource().orElse(planKey("depth-areas (names no source)")),
                Optional.of(areas.confirmed()), edges(areas.source()));
        rules.add(new ChartedDepthRule(text, map, plan, new ChartedCells(areas, layer, map.grid())));
    }

    private void terrain(double cellM) {
        SeabedSlope slope = new SeabedSlope(cellM);
        int side = plan.ruggednessWindowCells();
        plan.limits().steepestDeg().ifPresent(steepest -> rules.add(new CellRule(own("slope", "limits: slope"), map, 1,
                (ground, i) -> -slope.degrees(ground.depthM(), ground.cols(), i),
                (s, depthM) -> new Figures(Unit.DEGREES, steepest, -s, 0, false), NEVER)));
        plan.limits().roughest().ifPresent(roughest -> rules.add(new CellRule(own("ruggedness", "limits: ruggedness"), map,
                1 + side / 2, (ground, i) -> -slope.ruggedness(ground.depthM(), ground.cols(), i, side),
                (r, depthM) -> new Figures(Unit.VRM, roughest, -r, 0, false), NEVER)));
    }

    private void landing(ModuleDrop drop, double cellM, WorkingLayers layers) {
        plan.limits().embedmentM().ifPresent(most -> plan.bottom().ifPresent(bottom -> rules.add(new EmbedmentRule(
                own("embedment", "limits: embedment"), map, most, drop, bottom, layers.bottom().orElseThrow().lonLat()))));
        SeabedSlope slope = new SeabedSlope(cellM);
        plan.limits().stability().ifPresent(least -> rules.add(new CellRule(own("stability", "limits: stability"), map, 1,
                (ground, i) -> Math.min(MOST_FACTOR, drop.stability(
                        Math.max(0, Math.min(ground.depthM()[i], drop.deepestM())), slope.degrees(ground.depthM(), ground.cols(), i))),
                (f, depthM) -> new Figures(Unit.FACTOR, least, f, 0, true), NEVER)));
    }

    private void reefs(Reefs reefs, WorkingLayer layer) {
        rules.add(new DistanceRule(rule("reefs", reefs.source(), reefs.ruleSource(), reefs.confirmed()), map, reefs.keepOffM(),
                depthM -> allowanceM(depthM, reefs.positionUncertaintyM()), EllipsoidalDistance.of(layer.lonLat(), geodesic),
                reefs.nameAttribute(), Optional.empty()));
    }

    private void keepOff(KeepOff keepOff, WorkingLayer layer, Optional<WorkingLayer> coverage) {
        rules.add(new DistanceRule(rule("keep-off:" + keepOff.source().label(), keepOff.source(), keepOff.ruleSource(),
                keepOff.confirmed()), map, keepOff.distanceM(),
                depthM -> allowanceM(depthM, keepOff.positionUncertaintyM()), EllipsoidalDistance.of(layer.lonLat(), geodesic),
                keepOff.nameAttribute(), coverage.map(c -> new Cover(c.lonLat(), geodesic))));
    }

    /**
     * Independent errors at 95 %: the root of the sum of their squares. An unknown depth counts as 0, and as
     * the deepest allowed for the landing.
     */
    private double allowanceM(double depthM, double positionM) {
        double horizontalM = plan.bathymetry().uncertainty().horizontalM(Double.isNaN(depthM) ? 0 : depthM);
        double landingM = Double.isNaN(depthM) ? landing.largestM() : landing.atM(depthM);
        return Math.hypot(Math.hypot(positionM, horizontalM), landingM);
    }

    private String planKey(String key) {
        return plan.file().getFileName() + ", " + key;
    }

    private RuleText own(String name, String key) {
        return new RuleText(name, planKey(key), Optional.empty(), "");
    }

    private RuleText rule(String name, LayerFile layer, Optional<String> source, boolean confirmed) {
        return new RuleText(name, source.orElse(planKey(name.replaceFirst(":", ": ") + " (names no source)")),
                Optional.of(confirmed), edges(layer));
    }

    private static String edges(LayerFile layer) {
        return layer.edges().name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
