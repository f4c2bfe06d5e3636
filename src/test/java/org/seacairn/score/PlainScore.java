package org.seacairn.score;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seacairn.score.PlainShape.Place;
import org.seacairn.score.RandomScene.Patch;
import org.seacairn.score.RandomScene.Rule;
import org.seacairn.score.RandomScene.Scored;

/**
 * Reasons and scores of a scene, written from the design page alone: one cell after another, nothing
 * shared with the engine. Where a measure lies so near a threshold that rounding may decide, the reason
 * is in {@code doubt}; scores come as the range that such measures allow.
 */
final class PlainScore {
    private static final double DISTANCE_DOUBT_M = 0.005;
    private static final double DEPTH_DOUBT_M = 1e-4;
    private static final double SLOPE_DOUBT_DEG = 1e-4;
    private static final double RUGGEDNESS_DOUBT = 1e-6;
    private static final double EDGE_DOUBT_M = 0.002;

    /** Bits in the order of the design page. */
    final List<String> names = new ArrayList<>(List.of("no-depth", "no-terrain", "outside-area", "too-shallow", "too-tall",
            "too-deep", "too-steep", "too-rough", "bottom-unsuitable", "bottom-unmapped", "near-reef"));
    final int[] reasons;
    final int[] doubt;
    final double[] lowest;
    final double[] highest;
    final double[] slopeDeg;
    final double[] ruggedness;
    /** The class of the bottom at each cell, empty where none, null where two are equally unsuitable or an edge is near. */
    final String[] bottom;
    /** By cell and keep-off layer. */
    final double[][] keepOffM;
    final double[] reefM;

    final RandomScene scene;
    private final RandomGrid grid;
    private final double[] bottomSuitability;

    PlainScore(RandomScene scene) {
        this.scene = scene;
        this.grid = scene.grid;
        scene.keepOff.forEach(rule -> names.add(rule.reason()));
        names.add("landing-room");
        int cells = grid.cols() * grid.rows();
        reasons = new int[cells];
        doubt = new int[cells];
        lowest = new double[cells];
        highest = new double[cells];
        slopeDeg = new double[cells];
        ruggedness = new double[cells];
        bottom = new String[cells];
        bottomSuitability = new double[cells];
        keepOffM = new double[cells][scene.keepOff.size()];
        reefM = new double[cells];
        for (int i = 0; i < cells; i++) {
            slopeDeg[i] = slope(i);
        }
        for (int i = 0; i < cells; i++) {
            ruggedness[i] = ruggedness(i);
            rules(i, Place.of(grid.cellLonLat(i % grid.cols(), i / grid.cols()), grid.centre()));
        }
        landingRoom();
        for (int i = 0; i < cells; i++) {
            score(i);
        }
    }

    private int bit(String name) {
        return 1 << names.indexOf(name);
    }

    /** @param margin how far the wrong side of the limit the measure is; at 0 it is allowed */
    private void judge(int cell, String reason, double margin, double doubtful) {
        if (margin > 0) {
            reasons[cell] |= bit(reason);
        }
        if (Math.abs(margin) < doubtful) {
            doubt[cell] |= bit(reason);
        }
    }

    private void rules(int cell, Place place) {
        double depth = scene.depthM[cell];
        if (Double.isNaN(depth)) {
            reasons[cell] |= bit("no-depth");
        } else {
            depthRules(cell, depth);
            terrainRules(cell);
        }
        if (scene.hasInside) {
            boolean in = scene.inside.stream().anyMatch(shape -> shape.holds(place));
            double edgeM = scene.inside.stream().mapToDouble(shape -> shape.edgeDistanceM(place)).min().orElse(1);
            judge(cell, "outside-area", in ? -edgeM : edgeM, EDGE_DOUBT_M);
        }
        bottomRule(cell, place);
        double horizontal = scene.uncertainty[2] + scene.uncertainty[3] * (Double.isNaN(depth) ? 0 : Math.max(0, depth));
        for (int k = 0; k < scene.keepOff.size(); k++) {
            Rule rule = scene.keepOff.get(k);
            keepOffM[cell][k] = distance(rule, place);
            judge(cell, rule.reason(), requiredM(rule, horizontal) - keepOffM[cell][k], DISTANCE_DOUBT_M);
        }
        if (scene.reefs != null) {
            reefM[cell] = distance(scene.reefs, place);
            judge(cell, "near-reef", requiredM(scene.reefs, horizontal) - reefM[cell], DISTANCE_DOUBT_M);
        }
    }

    private static double distance(Rule rule, Place place) {
        return rule.shapes().stream().mapToDouble(shape -> shape.distanceM(place)).min().orElse(Double.POSITIVE_INFINITY);
    }

    private double requiredM(Rule rule, double horizontalM) {
        double landing = scene.landingRadiusM;
        return rule.keepOffM() + Math.sqrt(rule.positionM() * rule.positionM() + horizontalM * horizontalM + landing * landing);
    }

    private void depthRules(int cell, double depth) {
        judge(cell, "too-shallow", depth <= 0 ? 1 : -1, DEPTH_DOUBT_M);
        if (!Double.isNaN(scene.shallowestM)) {
            judge(cell, "too-shallow", scene.shallowestM - depth, DEPTH_DOUBT_M);
            judge(cell, "too-deep", depth - scene.deepestM, DEPTH_DOUBT_M);
        }
        if (!Double.isNaN(scene.clearanceAboveM)) {
            double vertical = Math.sqrt(Math.pow(scene.uncertainty[0], 2) + Math.pow(scene.uncertainty[1] * depth, 2));
            judge(cell, "too-shallow", scene.clearanceAboveM - (depth - vertical - scene.heightM), DEPTH_DOUBT_M);
        }
        if (!Double.isNaN(scene.heightShare)) {
            judge(cell, "too-tall", scene.heightM - scene.heightShare * depth, DEPTH_DOUBT_M);
        }
    }

    private void terrainRules(int cell) {
        boolean limitsSlope = !Double.isNaN(scene.steepestDeg);
        boolean limitsRuggedness = !Double.isNaN(scene.roughest);
        boolean noSlope = (limitsSlope || scene.scores("slope")) && Double.isNaN(slopeDeg[cell]);
        boolean noRuggedness = (limitsRuggedness || scene.scores("ruggedness")) && Double.isNaN(ruggedness[cell]);
        if (noSlope || noRuggedness) {
            reasons[cell] |= bit("no-terrain");
        }
        if (limitsSlope) {
            judge(cell, "too-steep", slopeDeg[cell] - scene.steepestDeg, SLOPE_DOUBT_DEG);
        }
        if (limitsRuggedness) {
            judge(cell, "too-rough", ruggedness[cell] - scene.roughest, RUGGEDNESS_DOUBT);
        }
    }

    private void bottomRule(int cell, Place place) {
        bottom[cell] = "";
        if (!scene.hasBottom) {
            return;
        }
        double worst = Double.POSITIVE_INFINITY;
        double edgeM = Double.POSITIVE_INFINITY;
        for (Patch patch : scene.bottom) {
            edgeM = Math.min(edgeM, patch.shape().edgeDistanceM(place));
            if (patch.shape().holds(place)) {
                double suitability = Double.isNaN(patch.suitability()) ? -1 : patch.suitability();
                if (suitability < worst) {
                    worst = suitability;
                    bottom[cell] = patch.kind();
                }
            }
        }
        if (worst == Double.POSITIVE_INFINITY) {
            if (Double.isNaN(scene.unmapped)) {
                reasons[cell] |= bit("bottom-unmapped");
            }
            worst = scene.unmapped;
        }
        if (worst < 0) {
            reasons[cell] |= bit("bottom-unsuitable");
        }
        bottomSuitability[cell] = worst;
        if (edgeM < EDGE_DOUBT_M) {
            doubt[cell] |= bit("bottom-unsuitable") | bit("bottom-unmapped");
            bottom[cell] = null;
        }
    }

    /** Every cell whose centre lies within the landing radius of this one's must be free of every other reason. */
    private void landingRoom() {
        int room = bit("landing-room");
        int reach = (int) (scene.landingRadiusM / grid.cellM()) + 1;
        int[] own = reasons.clone();
        int[] ownDoubt = doubt.clone();
        for (int i = 0; i < own.length; i++) {
            boolean taken = false;
            boolean doubtful = false;
            for (int row = -reach; row <= reach; row++) {
                for (int col = -reach; col <= reach; col++) {
                    double square = grid.cellM() * grid.cellM() * (row * row + col * col);
                    if (square > scene.landingRadiusM * scene.landingRadiusM) {
                        continue;
                    }
                    int c = i % grid.cols() + col;
                    int r = i / grid.cols() + row;
                    boolean on = c >= 0 && r >= 0 && c < grid.cols() && r < grid.rows();
                    int at = r * grid.cols() + c;
                    taken |= !on || (own[at] & ~ownDoubt[at]) != 0;
                    doubtful |= on && ownDoubt[at] != 0;
                }
            }
            reasons[i] |= taken ? room : 0;
            doubt[i] |= !taken && doubtful ? room : 0;
        }
    }

    private double slope(int cell) {
        double[] g = gradient(cell);
        return g == null ? Double.NaN : Math.toDegrees(Math.atan(Math.hypot(g[0], g[1])));
    }

    /** Horn (1981): rise toward the east and toward the south, or null where one of the nine cells is missing. */
    private double[] gradient(int cell) {
        int c = cell % grid.cols();
        int r = cell / grid.cols();
        if (c == 0 || r == 0 || c == grid.cols() - 1 || r == grid.rows() - 1) {
            return null;
        }
        double[][] z = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                z[i][j] = scene.depthM[(r - 1 + i) * grid.cols() + c - 1 + j];
                if (Double.isNaN(z[i][j])) {
                    return null;
                }
            }
        }
        double east = z[0][2] + 2 * z[1][2] + z[2][2] - z[0][0] - 2 * z[1][0] - z[2][0];
        double south = z[2][0] + 2 * z[2][1] + z[2][2] - z[0][0] - 2 * z[0][1] - z[0][2];
        return new double[] {east / (8 * grid.cellM()), south / (8 * grid.cellM())};
    }

    /**
     * Sappington et al. (2007), from slope and aspect as the paper has it. Cells of the window without a
     * slope are left out, and a cell without a slope has no ruggedness.
     */
    private double ruggedness(int cell) {
        if (gradient(cell) == null) {
            return Double.NaN;
        }
        double x = 0;
        double y = 0;
        double z = 0;
        int n = 0;
        int reach = scene.ruggednessWindow / 2;
        for (int r = cell / grid.cols() - reach; r <= cell / grid.cols() + reach; r++) {
            for (int c = cell % grid.cols() - reach; c <= cell % grid.cols() + reach; c++) {
                double[] g = r < 0 || c < 0 || r >= grid.rows() || c >= grid.cols() ? null : gradient(r * grid.cols() + c);
                if (g != null) {
                    double slope = Math.atan(Math.hypot(g[0], g[1]));
                    double aspect = Math.atan2(g[0], g[1]);
                    x += Math.sin(slope) * Math.sin(aspect);
                    y += Math.sin(slope) * Math.cos(aspect);
                    z += Math.cos(slope);
                    n++;
                }
            }
        }
        return 1 - Math.sqrt(x * x + y * y + z * z) / n;
    }

    private void score(int cell) {
        lowest[cell] = Double.NaN;
        highest[cell] = Double.NaN;
        if (reasons[cell] != 0 || doubt[cell] != 0) {
            return;
        }
        Map<Scored, double[]> ranges = new LinkedHashMap<>();
        scene.criteria.forEach(c -> ranges.put(c, range(c, cell)));
        lowest[cell] = combined(ranges, 0);
        highest[cell] = combined(ranges, 1);
    }

    /** Least and greatest suitability that the rounding of the measure allows. */
    private double[] range(Scored criterion, int cell) {
        return switch (criterion.measure()) {
            case "depth" -> range(criterion.curve(), scene.depthM[cell], 1e-5);
            case "slope" -> range(criterion.curve(), slopeDeg[cell], 1e-5);
            case "ruggedness" -> range(criterion.curve(), ruggedness[cell], 2e-7);
            case "bottom" -> new double[] {bottomSuitability[cell], bottomSuitability[cell]};
            case "spacing" -> range(criterion.curve(), reefM[cell], 0.001 + 1e-6 * reefM[cell]);
            default -> clearance(cell);
        };
    }

    private double[] clearance(int cell) {
        double[] least = {1, 1};
        double horizontal = scene.uncertainty[2] + scene.uncertainty[3] * scene.depthM[cell];
        for (int k = 0; k < scene.keepOff.size(); k++) {
            Rule rule = scene.keepOff.get(k);
            double required = requiredM(rule, horizontal);
            double comfortable = rule.comfortableM();
            if (comfortable > required) {
                double[] own = range(new double[] {required, comfortable, 1e9, 1e9}, keepOffM[cell][k],
                        0.001 + 1e-6 * keepOffM[cell][k]);
                least[0] = Math.min(least[0], own[0]);
                least[1] = Math.min(least[1], own[1]);
            }
        }
        return least;
    }

    private static double[] range(double[] curve, double measure, double doubtful) {
        double from = measure - doubtful;
        double to = measure + doubtful;
        double least = Math.min(suitability(curve, from), suitability(curve, to));
        double most = Math.max(suitability(curve, from), suitability(curve, to));
        return new double[] {least, to >= curve[1] && from <= curve[2] ? 1 : most};
    }

    private static double suitability(double[] curve, double x) {
        if (x <= curve[0] || x >= curve[3]) {
            return 0;
        }
        if (x >= curve[1] && x <= curve[2]) {
            return 1;
        }
        return x < curve[1] ? (x - curve[0]) / (curve[1] - curve[0]) : (curve[3] - x) / (curve[3] - curve[2]);
    }

    private double combined(Map<Scored, double[]> ranges, int end) {
        double sum = 0;
        double mean = 0;
        double product = 1;
        double least = 1;
        for (Scored c : ranges.keySet()) {
            sum += c.weight();
        }
        for (Map.Entry<Scored, double[]> e : ranges.entrySet()) {
            double s = e.getValue()[end];
            mean += e.getKey().weight() * s / sum;
            product *= Math.pow(s, e.getKey().weight() / sum);
            least = Math.min(least, s);
        }
        return switch (scene.combine) {
            case "weighted-mean" -> mean;
            case "weighted-geometric" -> product;
            default -> least;
        };
    }
}
