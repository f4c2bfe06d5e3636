package org.seacairn.score;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seacairn.InputException;
import org.seacairn.criterion.BottomCriterion;
import org.seacairn.criterion.ClearanceCriterion;
import org.seacairn.criterion.Criterion;
import org.seacairn.criterion.DepthCriterion;
import org.seacairn.criterion.DepthUncertainty;
import org.seacairn.criterion.EmbedmentRule;
import org.seacairn.criterion.PermitArea;
import org.seacairn.criterion.Reasons;
import org.seacairn.criterion.RuggednessCriterion;
import org.seacairn.criterion.Rule;
import org.seacairn.criterion.SlopeCriterion;
import org.seacairn.criterion.SpacingCriterion;
import org.seacairn.criterion.StabilityRule;
import org.seacairn.criterion.Tile;
import org.seacairn.drop.LandingRadius;
import org.seacairn.drop.ModuleDrop;
import org.seacairn.grid.Disc;
import org.seacairn.grid.GridGeometry;
import org.seacairn.grid.PatchFrames;
import org.seacairn.grid.Window;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Curve;
import org.seacairn.plan.SitingPlan.Measure;

/**
 * Scores any window of the working grid. A cell scores the same in whatever window it is asked for.
 * Immutable after construction; safe for several threads at once.
 */
public final class ScoreEngine {
    /** Cells scored at a time: their suitabilities stay in the processor's cache. */
    private static final int CHUNK = 2048;
    /** A border wider than this would make a tile's work many times its size. */
    private static final int MOST_LANDING_CELLS = 1000;

    private final WorkingDepth depth;
    private final GridGeometry grid;
    private final PatchFrames frames;
    private final Reasons reasons;
    private final int landingRoom;
    private final Optional<ModuleDrop> drop;
    private final LandingRadius landingRadius;
    private final Disc landing;
    private final int terrainHalo;
    private final Optional<BottomCriterion> bottom;
    private final Optional<SpacingCriterion> spacing;
    private final ClearanceCriterion clearance;
    /** Every rule of the plan, scored or not. */
    private final List<Rule> rules = new ArrayList<>();
    /** The criteria that score, in the plan's order. */
    private final Map<Measure, Criterion> scored = new LinkedHashMap<>();
    private final Combiner combiner;

    /** @throws org.seacairn.InputException if a bottom polygon has a class that the plan does not name */
    public ScoreEngine(SitingPlan plan, WorkingDepth depth, WorkingLayers layers) {
        this.depth = depth;
        this.grid = depth.grid();
        this.frames = new PatchFrames(grid);
        this.reasons = Reasons.of(plan);
        this.landingRoom = reasons.bit(Reasons.LANDING_ROOM);
        this.drop = ModuleDrop.of(plan);
        this.landingRadius = LandingRadius.of(plan, drop);
        if (landingRadius.largestM() > MOST_LANDING_CELLS * grid.cellM()) {
            throw new InputException(plan.file().getFileName() + ": the module's landing radius spans more than "
                    + MOST_LANDING_CELLS + " cells; check its unit, or state a larger cell");
        }
        this.landing = new Disc(landingRadius.largestM(), grid.cellM());
        Map<Measure, Criterion> built = new LinkedHashMap<>();
        built.put(Measure.DEPTH, new DepthCriterion(plan, reasons, curve(plan, Measure.DEPTH)));
        if (uses(plan, Measure.SLOPE) || plan.limits().steepestDeg().isPresent() || plan.limits().stability().isPresent()) {
            built.put(Measure.SLOPE, new SlopeCriterion(plan.limits().steepestDeg(), reasons, curve(plan, Measure.SLOPE)));
        }
        boolean ruggedness = uses(plan, Measure.RUGGEDNESS) || plan.limits().roughest().isPresent();
        if (ruggedness) {
            built.put(Measure.RUGGEDNESS, new RuggednessCriterion(plan.limits().roughest(),
                    plan.ruggednessWindowCells(), reasons, curve(plan, Measure.RUGGEDNESS)));
        }
        this.terrainHalo = ruggedness ? 1 + plan.ruggednessWindowCells() / 2 : 1;
        layers.inside().ifPresent(areas -> rules.add(new PermitArea(areas, grid, reasons)));
        this.bottom = layers.bottom().map(b -> new BottomCriterion(plan.bottom().orElseThrow(), b, grid, reasons));
        bottom.ifPresent(b -> built.put(Measure.BOTTOM, b));
        this.spacing = layers.reefs().map(reefs -> new SpacingCriterion(
                plan, landingRadius, plan.reefs().orElseThrow(), reefs, grid, reasons, curve(plan, Measure.SPACING)));
        spacing.ifPresent(s -> built.put(Measure.SPACING, s));
        this.clearance = new ClearanceCriterion(plan, landingRadius, layers.keepOff(), grid, reasons);
        built.put(Measure.CLEARANCE, clearance);
        rules.addAll(built.values());
        // A plan with these limits was refused where what they rest on is not stated.
        plan.limits().embedmentM().ifPresent(most -> bottom.ifPresent(b -> rules.add(
                new EmbedmentRule(b, plan.bottom().orElseThrow(), most, drop.orElseThrow(), reasons))));
        plan.limits().stability().ifPresent(factor -> rules.add(new StabilityRule(factor, drop.orElseThrow(), reasons)));
        plan.criteria().forEach(c -> scored.put(c.measure(), built.get(c.measure())));
        this.combiner = new Combiner(plan.combine(), plan.criteria().stream().mapToDouble(SitingPlan.Criterion::weight).toArray());
    }

    private static boolean uses(SitingPlan plan, Measure measure) {
        return plan.criteria().stream().anyMatch(c -> c.measure() == measure);
    }

    private static Curve curve(SitingPlan plan, Measure measure) {
        return plan.criteria().stream().filter(c -> c.measure() == measure)
                .map(SitingPlan.Criterion::curve).flatMap(Optional::stream).findFirst().orElse(null);
    }

    public GridGeometry grid() {
        return grid;
    }

    public Reasons reasons() {
        return reasons;
    }

    public LandingRadius landingRadius() {
        return landingRadius;
    }

    /** How the module sinks and stands; empty where the plan does not state enough. */
    public Optional<ModuleDrop> drop() {
        return drop;
    }

    /** How many cells beyond a window its scores depend on. */
    public int halo() {
        return landing.reach() + terrainHalo;
    }

    /** Scores a window that lies on the grid. */
    public ScoredWindow score(Window window) {
        Tile tile = tile(window);
        int[] outerReasons = ruled(tile);
        int[] masks = withLandingRoom(window, tile, outerReasons);
        float[] score = new float[window.cells()];
        Arrays.fill(score, Float.NaN);
        int[] free = new int[CHUNK];
        int[] target = new int[CHUNK];
        int count = 0;
        for (int r = 0; r < window.rows(); r++) {
            int outerStart = tile.outer().index(window.col(), window.row() + r);
            for (int c = 0; c < window.cols(); c++) {
                int i = r * window.cols() + c;
                if (masks[i] == 0) {
                    free[count] = outerStart + c;
                    target[count++] = i;
                    if (count == CHUNK) {
                        score(tile, free, target, count, score);
                        count = 0;
                    }
                }
            }
        }
        score(tile, free, target, count, score);
        return new ScoredWindow(window, depths(window, tile), score, masks);
    }

    private static float[] depths(Window window, Tile tile) {
        float[] depths = new float[window.cells()];
        for (int r = 0; r < window.rows(); r++) {
            System.arraycopy(tile.depth(), tile.outer().index(window.col(), window.row() + r), depths, r * window.cols(), window.cols());
        }
        return depths;
    }

    private void score(Tile tile, int[] free, int[] target, int count, float[] score) {
        if (count == 0) {
            return;
        }
        double[] scores = new double[count];
        combiner.score(suitability(tile, free, count), count, scores);
        for (int i = 0; i < count; i++) {
            score[target[i]] = (float) scores[i];
        }
    }

    /** How one cell scored, measure by measure. */
    public CellDetail detail(int col, int row) {
        Window one = new Window(col, row, 1, 1);
        ScoredWindow scoredCell = score(one);
        Tile tile = tile(one);
        int centre = tile.outer().index(col, row);
        Map<Measure, Double> suitability = new LinkedHashMap<>();
        if (scoredCell.reasons()[0] == 0) {
            double[][] values = suitability(tile, new int[] {centre}, 1);
            int k = 0;
            for (Measure measure : scored.keySet()) {
                suitability.put(measure, values[k++][0]);
            }
        }
        return new CellDetail(tile.depth()[centre], tile.uncertainty().atM(centre, tile.depth()[centre]), SlopeCriterion.degrees(tile.slopeTangent()[centre]),
                bottom.map(b -> b.classAt(col, row)).orElse(""), scoredCell.reasons()[0], scoredCell.score()[0], suitability);
    }

    /** Raster distance of a cell to each keep-off layer in metres, in the plan's order; infinite beyond reach. */
    public double[] keepOffDistancesM(int col, int row) {
        return clearance.distancesM(col, row, frames);
    }

    /** Raster distance of a cell to the nearest existing reef in metres; infinite beyond reach or without reefs. */
    public double reefDistanceM(int col, int row) {
        return spacing.map(s -> s.distanceM(col, row, frames)).orElse(Double.POSITIVE_INFINITY);
    }

    /** Depths of any window in metres, positive down, row by row; NaN for none and off the grid. */
    public float[] depth(Window window) {
        float[] depths = new float[window.cells()];
        depth.read(window, depths);
        return depths;
    }

    /** Depths of any window less their vertical uncertainty (95 %), in metres; NaN where either is not known. */
    public double[] sureDepth(Window window) {
        float[] depths = depth(window);
        DepthUncertainty uncertainty = depth.uncertainty().over(window);
        double[] sure = new double[depths.length];
        for (int i = 0; i < sure.length; i++) {
            sure[i] = depths[i] - uncertainty.atM(i, depths[i]);
        }
        return sure;
    }

    /** Bottom classes of a window on the grid, empty text where none is mapped; empty without a bottom layer. */
    public Optional<String[]> bottom(Window window) {
        return bottom.map(b -> b.classes(window));
    }

    private Tile tile(Window window) {
        Window outer = window.grown(landing.reach());
        Window wide = outer.grown(terrainHalo);
        float[] depths = new float[wide.cells()];
        depth.read(wide, depths);
        return new Tile(outer, terrainHalo, depths, depth.uncertainty().over(outer), grid.cellM(), frames);
    }

    private int[] ruled(Tile tile) {
        int[] masks = new int[tile.outer().cells()];
        for (Rule rule : rules) {
            rule.rule(tile, masks);
        }
        return masks;
    }

    private int[] withLandingRoom(Window window, Tile tile, int[] outerMasks) {
        Window outer = tile.outer();
        boolean[] bad = new boolean[outerMasks.length];
        boolean anyBad = false;
        for (int i = 0; i < bad.length; i++) {
            bad[i] = outerMasks[i] != 0;
            anyBad |= bad[i];
        }
        boolean[] noRoom = new boolean[window.cells()];
        if (anyBad && landingRadius.isComputed()) {
            landing.touches(bad, outer.cols(), outer.rows(), landingRadiiM(window, tile), noRoom);
        } else if (anyBad) {
            landing.touches(bad, outer.cols(), outer.rows(), noRoom);
        }
        int[] masks = new int[window.cells()];
        for (int r = 0; r < window.rows(); r++) {
            int outerStart = outer.index(window.col(), window.row() + r);
            for (int c = 0; c < window.cols(); c++) {
                int i = r * window.cols() + c;
                masks[i] = outerMasks[outerStart + c] | (noRoom[i] ? landingRoom : 0);
            }
        }
        return masks;
    }

    private double[] landingRadiiM(Window window, Tile tile) {
        double[] radii = new double[window.cells()];
        for (int i = 0; i < radii.length; i++) {
            radii[i] = landingRadius.atM(tile.depth()[tile.outer().index(
                    window.col() + i % window.cols(), window.row() + i / window.cols())]);
        }
        return radii;
    }

    private double[][] suitability(Tile tile, int[] cells, int count) {
        double[][] suitability = new double[scored.size()][count];
        int k = 0;
        for (Criterion criterion : scored.values()) {
            criterion.suitability(tile, cells, count, suitability[k++]);
        }
        return suitability;
    }
}
