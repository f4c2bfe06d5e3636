package org.seacairn.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleBiFunction;
import org.seacairn.cli.PlainFigure.Nearest;
import org.seacairn.cli.PlainFigure.Piece;
import org.seacairn.cli.ReviewScene.Rule;
import org.seacairn.cli.ReviewScene.Site;

/**
 * The review of a scene, written from the rules of the command alone: one site and one rule after another, nothing shared
 * with the program. Where a measure lies so near a threshold that rounding may decide, the verdict is in doubt.
 */
final class PlainReview {
    static final double DISTANCE_DOUBT_M = 0.002;
    private static final double SLOPE_DOUBT_DEG = 0.002;
    private static final double RUGGEDNESS_DOUBT = 3e-6;
    private static final double CELL_DOUBT_M = 1e-5;
    private static final double FAR_M = 100_000;

    /** One row of the table that is expected; NaN for an empty figure. */
    static final class Row {
        final Site site;
        final String rule;
        /** {@code m}, {@code deg} or {@code vrm}. */
        String unit = "m";
        boolean atMost;
        double required = Double.NaN;
        double measured = Double.NaN;
        double allowance = Double.NaN;
        String verdict;
        /** Whether the verdict is too near to call. */
        boolean inDoubt;
        /** Whether the figures are not told, and only the verdict is. */
        boolean verdictOnly;
        /** Whether nothing but the row's being there can be told. */
        boolean aside;
        /** Null where several are as near, or the name is not told. */
        String nearest;
        /** What the nearest position must lie on, or null. */
        List<Piece> nearestOn;
        /** Source of the rule, null where it is not told. */
        String source;
        /** {@code rhumb-line} or {@code geodesic}, null where it is not told. */
        String edges;

        Row(Site site, String rule) {
            this.site = site;
            this.rule = rule;
        }

        Row figures(double required, double measured, double allowance) {
            this.required = required;
            this.measured = measured;
            this.allowance = allowance;
            return this;
        }

        /** The verdict by figures rounded to the millimetre; in doubt within so much of a threshold. */
        Row judge(double doubt) {
            double step = unit.equals("vrm") ? 1e6 : 1e3;
            double margin = (Math.round(measured * step) - Math.round(required * step)) * (atMost ? -1 : 1) - Math.round(allowance * step);
            double bare = margin + Math.round(allowance * step);
            verdict = margin >= 0 ? "pass" : bare >= 0 ? "marginal" : "fail";
            inDoubt |= Math.abs(margin / step) < doubt || Math.abs(bare / step) < doubt;
            return this;
        }

        /** No data, unless the row fails on what there is. */
        void unlessFail(boolean missing) {
            if (missing && !"fail".equals(verdict)) {
                verdict = "no data";
            }
        }

        @Override
        public String toString() {
            return site.name() + ", " + rule + ": required " + required + ", measured " + measured + ", allowance " + allowance
                    + ", " + verdict + (inDoubt ? " (in doubt)" : "") + ", nearest " + nearest;
        }
    }

    /**
     * The cells that a site is judged on.
     *
     * @param own column and row of those in the site itself
     * @param all those and every one of the landing circle
     * @param sure whether no other reading of the rule gives other cells
     */
    private record Cells(List<List<Integer>> own, Set<List<Integer>> all, boolean sure) {}

    final List<Row> rows = new ArrayList<>();
    private final ReviewScene scene;
    private final List<Piece> insideOutline;
    private final List<Piece> bottomOutline;
    private final List<PlainFigure> never = new ArrayList<>();
    private final List<String> neverClass = new ArrayList<>();
    private final List<List<Piece>> coverageOutlines = new ArrayList<>();

    PlainReview(ReviewScene scene) {
        this.scene = scene;
        insideOutline = scene.inside == null ? null : PlainFigure.outline(scene.inside);
        bottomOutline = scene.bottom == null ? null : PlainFigure.outline(scene.bottom.figures());
        for (int i = 0; scene.bottom != null && i < scene.bottom.figures().size(); i++) {
            if (scene.classes.get(scene.bottom.kinds().get(i)).isNaN()) {
                never.add(scene.bottom.figures().get(i));
                neverClass.add(scene.bottom.kinds().get(i));
            }
        }
        for (Rule rule : scene.keepOff) {
            coverageOutlines.add(rule.coverage() == null ? null : PlainFigure.outline(rule.coverage()));
        }
        scene.sites.forEach(this::review);
    }

    private Row row(Site site, String rule) {
        Row row = new Row(site, rule);
        rows.add(row);
        return row;
    }

    private void review(Site site) {
        Cells cells = site.isPoint() ? cellsOfPoint(site.point()) : cellsOfPolygon(site.figure());
        int first = rows.size();
        depthRules(site, cells);
        terrainRules(site, cells);
        for (Row row : rows.subList(first, rows.size())) {
            row.aside = !cells.sure;
        }
        if (scene.bottom != null) {
            bottom(row(site, "bottom"));
        }
        if (scene.inside != null) {
            inside(row(site, "inside"));
        }
        double depthM = cells.own.stream().mapToDouble(this::depthM).filter(d -> !Double.isNaN(d)).max().orElse(0);
        if (scene.reefs != null) {
            keepOff(site, scene.reefs, null, depthM, cells.sure);
        }
        for (int k = 0; k < scene.keepOff.size(); k++) {
            keepOff(site, scene.keepOff.get(k), coverageOutlines.get(k), depthM, cells.sure);
        }
        others(site);
    }

    // Cells

    private Cells cellsOfPoint(double[] lonLat) {
        double[] xy = scene.onMap(lonLat);
        double col = (xy[0] - scene.west) / scene.cellM;
        double row = (scene.north - xy[1]) / scene.cellM;
        double edgeM = scene.cellM * Math.min(Math.abs(col - Math.rint(col)), Math.abs(row - Math.rint(row)));
        List<Integer> own = List.of((int) Math.floor(col), (int) Math.floor(row));
        Set<List<Integer>> all = new HashSet<>(List.of(own));
        boolean sure = circle(col, row, own, all) && edgeM > CELL_DOUBT_M;
        // Off the grid there is no data, and where a cell of the landing circle fails it fails: it is not told which counts.
        sure &= isOnGrid(own) || all.stream().allMatch(cell -> Double.isNaN(depthM(cell)));
        return new Cells(List.of(own), all, sure);
    }

    /** Adds the cells whose centres lie within the landing radius of a place, in columns and rows; false where one is too near to call. */
    private boolean circle(double col, double row, List<Integer> about, Set<List<Integer>> all) {
        boolean sure = true;
        int reach = (int) (scene.landingRadiusM / scene.cellM) + 2;
        for (int r = about.get(1) - reach; r <= about.get(1) + reach; r++) {
            for (int c = about.get(0) - reach; c <= about.get(0) + reach; c++) {
                double awayM = scene.cellM * Math.hypot(c + 0.5 - col, r + 0.5 - row);
                if (awayM <= scene.landingRadiusM) {
                    all.add(List.of(c, r));
                }
                sure &= Math.abs(awayM - scene.landingRadiusM) > CELL_DOUBT_M || about.equals(List.of(c, r));
            }
        }
        return sure;
    }

    private Cells cellsOfPolygon(PlainFigure polygon) {
        int[] box = {Integer.MAX_VALUE, Integer.MAX_VALUE, Integer.MIN_VALUE, Integer.MIN_VALUE};
        Set<List<Integer>> touched = new HashSet<>();
        for (Piece piece : polygon.pieces) {
            double[] xy = scene.onMap(piece.path().at(piece.from()));
            int col = (int) Math.floor((xy[0] - scene.west) / scene.cellM);
            int row = (int) Math.floor((scene.north - xy[1]) / scene.cellM);
            touched.add(List.of(col, row));
            box = new int[] {Math.min(box[0], col), Math.min(box[1], row), Math.max(box[2], col), Math.max(box[3], row)};
        }
        List<List<Integer>> own = new ArrayList<>();
        boolean sure = true;
        for (int row = box[1] - 1; row <= box[3] + 1; row++) {
            for (int col = box[0] - 1; col <= box[2] + 1; col++) {
                double[] xy = scene.plane.of(scene.cellCentre(col, row));
                if (polygon.holds(xy)) {
                    own.add(List.of(col, row));
                }
                sure &= polygon.roughEdgeM(xy) > DISTANCE_DOUBT_M;
            }
        }
        // Nor is it told what a polygon is that reaches over the edge of the grid.
        sure &= touched.stream().allMatch(this::isOnGrid);
        if (own.isEmpty()) {
            // Which interior point is meant is not told.
            own.addAll(touched);
            sure &= touched.size() == 1;
        }
        Set<List<Integer>> all = new HashSet<>(own);
        for (List<Integer> cell : own) {
            sure &= circle(cell.get(0) + 0.5, cell.get(1) + 0.5, cell, all);
        }
        return new Cells(own, all, sure);
    }

    private boolean isOnGrid(List<Integer> cell) {
        return cell.get(0) >= 0 && cell.get(1) >= 0 && cell.get(0) < scene.cols && cell.get(1) < scene.rows;
    }

    private double depthM(List<Integer> cell) {
        return scene.depthM(cell.get(0), cell.get(1));
    }

    // Depth

    private void depthRules(Site site, Cells cells) {
        boolean missing = cells.all.stream().anyMatch(cell -> Double.isNaN(depthM(cell)));
        double[] known = cells.all.stream().mapToDouble(this::depthM).filter(d -> !Double.isNaN(d)).toArray();
        double least = Arrays.stream(known).min().orElse(Double.NaN);
        double greatest = Arrays.stream(known).max().orElse(Double.NaN);
        boolean limited = !Double.isNaN(scene.shallowestM);

        Row shallow = depthRow(site, "depth-least", limited ? scene.shallowestM : 0, least, 0, missing);
        shallow.inDoubt |= Math.abs(least) < 1e-3;
        if (least <= 0) {
            shallow.verdict = "fail";
        }
        if (limited) {
            depthRow(site, "depth-greatest", -scene.deepestM, -greatest, 0, missing);
        }
        if (!Double.isNaN(scene.clearanceAboveM)) {
            double vertical = Math.sqrt(Math.pow(scene.uncertainty[0], 2) + Math.pow(scene.uncertainty[1] * least, 2));
            depthRow(site, "clearance-above", scene.clearanceAboveM, least - scene.heightM, vertical, missing);
        }
        if (!Double.isNaN(scene.heightShare)) {
            depthRow(site, "height-share", scene.heightM / scene.heightShare, least, 0, missing);
        }
    }

    /** @param required negative where it is the most that is allowed, and the measure then likewise */
    private Row depthRow(Site site, String rule, double required, double measured, double allowance, boolean missing) {
        Row row = row(site, rule);
        row.atMost = required < 0;
        row.figures(Math.abs(required), row.atMost ? -measured : measured, allowance);
        row.source = required == 0 ? null : "plan.yaml";
        if (Double.isNaN(measured)) {
            row.verdict = "no data";
        } else {
            boolean halfway = halfway(row.measured) || halfway(row.required) || halfway(row.allowance);
            row.judge(halfway ? DISTANCE_DOUBT_M : 0);
            row.unlessFail(missing);
        }
        return row;
    }

    /** Whether the last bits of a figure may decide which millimetre it is rounded to. */
    private static boolean halfway(double m) {
        double mm = m * 1000;
        return Math.abs(mm - Math.floor(mm) - 0.5) < 0.02;
    }

    // Terrain

    private void terrainRules(Site site, Cells cells) {
        if (!Double.isNaN(scene.steepestDeg)) {
            terrainRow(site, cells, "slope", "deg", scene.steepestDeg, this::slopeDeg, SLOPE_DOUBT_DEG);
        }
        if (!Double.isNaN(scene.roughest)) {
            terrainRow(site, cells, "ruggedness", "vrm", scene.roughest, this::ruggedness, RUGGEDNESS_DOUBT);
        }
    }

    private void terrainRow(Site site, Cells cells, String rule, String unit, double limit, ToDoubleBiFunction<Integer, Integer> measure, double doubt) {
        double[] all = cells.all.stream().mapToDouble(cell -> measure.applyAsDouble(cell.get(0), cell.get(1))).toArray();
        boolean missing = Arrays.stream(all).anyMatch(Double::isNaN);
        Row row = row(site, rule);
        row.unit = unit;
        row.atMost = true;
        row.source = "plan.yaml";
        row.figures(limit, Arrays.stream(all).filter(m -> !Double.isNaN(m)).max().orElse(Double.NaN), 0);
        if (Double.isNaN(row.measured)) {
            row.verdict = "no data";
        } else {
            row.judge(doubt).unlessFail(missing);
        }
    }

    private double slopeDeg(int col, int row) {
        double[] g = gradient(col, row);
        return g == null ? Double.NaN : Math.toDegrees(Math.atan(Math.hypot(g[0], g[1])));
    }

    /** Horn (1981): rise toward the east and toward the south, or null where one of the nine cells is missing. */
    private double[] gradient(int col, int row) {
        double[][] z = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < 3; k++) {
                z[i][k] = scene.depthM(col - 1 + k, row - 1 + i);
                if (Double.isNaN(z[i][k])) {
                    return null;
                }
            }
        }
        double east = z[0][2] + 2 * z[1][2] + z[2][2] - z[0][0] - 2 * z[1][0] - z[2][0];
        double south = z[2][0] + 2 * z[2][1] + z[2][2] - z[0][0] - 2 * z[0][1] - z[0][2];
        return new double[] {east / (8 * scene.cellM), south / (8 * scene.cellM)};
    }

    /** Sappington et al. (2007), from slope and aspect as the paper has it; cells of the window without a slope are left out. */
    private double ruggedness(int col, int row) {
        if (gradient(col, row) == null) {
            return Double.NaN;
        }
        double[] sum = new double[3];
        int n = 0;
        int reach = scene.ruggednessWindow / 2;
        for (int r = row - reach; r <= row + reach; r++) {
            for (int c = col - reach; c <= col + reach; c++) {
                double[] g = gradient(c, r);
                if (g != null) {
                    double slope = Math.atan(Math.hypot(g[0], g[1]));
                    double aspect = Math.atan2(g[0], g[1]);
                    sum[0] += Math.sin(slope) * Math.sin(aspect);
                    sum[1] += Math.sin(slope) * Math.cos(aspect);
                    sum[2] += Math.cos(slope);
                    n++;
                }
            }
        }
        return 1 - Math.sqrt(sum[0] * sum[0] + sum[1] * sum[1] + sum[2] * sum[2]) / n;
    }

    // Distances

    private Nearest nearest(Site site, List<PlainFigure> figures) {
        return site.isPoint() ? PlainFigure.nearest(site.point(), onPlane(site), figures) : site.figure().approach(figures);
    }

    private double[] onPlane(Site site) {
        return scene.plane.of(site.point());
    }

    /** How far a site is from the border of some polygons. */
    private double borderM(Site site, List<Piece> outline) {
        return site.isPoint() ? PlainFigure.edgeM(site.point(), onPlane(site), outline) : PlainFigure.approachM(site.figure().pieces, outline);
    }

    /**
     * Whether polygons cover all of a site.
     *
     * @param outline the border of their cover
     */
    private boolean covered(Site site, List<PlainFigure> polygons, List<Piece> outline) {
        return site.isPoint() ? PlainFigure.anyHolds(polygons, onPlane(site))
                : PlainFigure.approachM(site.figure().pieces, outline) > 0
                && site.figure().pieces.stream().allMatch(piece -> PlainFigure.anyHolds(polygons, piece.a()))
                // A hole of the cover may lie within the site, untouched by its edges.
                && outline.stream().noneMatch(piece -> site.figure().holds(piece.a()));
    }

    private void keepOff(Site site, Rule rule, List<Piece> coverage, double depthM, boolean sureOfDepth) {
        Row row = row(site, rule.name());
        Nearest nearest = nearest(site, rule.figures());
        double horizontal = scene.uncertainty[2] + scene.uncertainty[3] * Math.max(0, depthM);
        double allowance = Math.sqrt(rule.positionM() * rule.positionM() + horizontal * horizontal + scene.landingRadiusM * scene.landingRadiusM);
        row.figures(rule.distanceM(), nearest.distanceM(), allowance).judge(DISTANCE_DOUBT_M);
        row.source = rule.source().isEmpty() ? null : rule.source();
        row.edges = rule.rhumb() ? "rhumb-line" : "geodesic";
        row.aside = !sureOfDepth && scene.uncertainty[3] > 0;
        nearestOf(row, nearest);
        doubtAtEdges(row, site, rule.figures());
        if (coverage != null) {
            double reach = rule.distanceM() + allowance;
            double borderM = borderM(site, coverage);
            boolean covered = covered(site, rule.coverage(), coverage);
            row.unlessFail(!covered || borderM < reach);
            row.inDoubt |= covered && Math.abs(borderM - reach) < DISTANCE_DOUBT_M || borderM < DISTANCE_DOUBT_M && site.isPoint();
        }
    }

    private static void nearestOf(Row row, Nearest nearest) {
        row.nearest = nearest.otherM() - nearest.distanceM() > 0.005 ? nearest.figure().name : null;
        row.nearestOn = nearest.figure().pieces;
    }

    /** A point within 2 mm of a polygon's edge may be held to be inside or not. */
    private void doubtAtEdges(Row row, Site site, List<PlainFigure> figures) {
        row.inDoubt |= site.isPoint() && PlainFigure.roughEdgeM(onPlane(site), figures) < DISTANCE_DOUBT_M;
    }

    private void inside(Row row) {
        Site site = row.site;
        row.edges = scene.insideRhumb ? "rhumb-line" : "geodesic";
        double measured;
        if (covered(site, scene.inside, insideOutline)) {
            measured = borderM(site, insideOutline);
            row.nearestOn = insideOutline;
        } else if (site.isPoint()) {
            Nearest nearest = nearest(site, scene.inside);
            measured = -nearest.distanceM();
            nearestOf(row, nearest);
            // The plan names no attribute with their names.
            row.nearest = row.nearest == null ? null : "#" + (scene.inside.indexOf(nearest.figure()) + 1);
        } else {
            WorstPlace worst = new WorstPlace(site.figure(), scene.inside);
            measured = -worst.distanceM;
            row.aside = !worst.sure;
        }
        row.figures(0, measured, scene.landingRadiusM).judge(DISTANCE_DOUBT_M);
        row.inDoubt |= Math.abs(measured) < DISTANCE_DOUBT_M;
    }

    /** Unsuitable is what lies in a class of {@code never}, and, where the plan excludes it, what lies in no polygon. */
    private void bottom(Row row) {
        Site site = row.site;
        List<PlainFigure> all = scene.bottom.figures();
        Nearest nearest = never.isEmpty() ? null : nearest(site, never);
        double neverM = nearest == null ? Double.POSITIVE_INFINITY : nearest.distanceM();
        double unmappedM = scene.excludesUnmapped ? borderM(site, bottomOutline) : Double.POSITIVE_INFINITY;
        boolean unmapped = scene.excludesUnmapped && !covered(site, all, bottomOutline);
        double least = Math.min(neverM, unmappedM);
        row.figures(0, least > FAR_M ? Double.NaN : least, scene.landingRadiusM);
        row.inDoubt = site.isPoint() && (PlainFigure.roughEdgeM(onPlane(site), never) < DISTANCE_DOUBT_M || unmappedM < DISTANCE_DOUBT_M);
        if (neverM == 0) {
            row.verdict = "fail";
            depthInNever(row);
        } else if (unmapped) {
            row.verdict = "no data";
            row.measured = site.isPoint() ? -nearest(site, all).distanceM() : Double.NaN;
            row.verdictOnly = !site.isPoint();
        } else if (Double.isNaN(row.measured)) {
            row.verdict = "pass";
        } else {
            row.judge(0);
            row.inDoubt |= Math.abs(least - scene.landingRadiusM) < DISTANCE_DOUBT_M;
            boolean both = Math.abs(neverM - unmappedM) < 0.005;
            boolean alone = neverM > unmappedM || nearest.otherM() - neverM > 0.005;
            row.nearest = both || !alone ? null : unmappedM < neverM ? "unmapped" : neverClass.get(never.indexOf(nearest.figure()));
            row.nearestOn = both ? null : unmappedM < neverM ? bottomOutline : nearest.figure().pieces;
        }
    }

    /** Minus the distance to the edge of the polygon that holds a point; of several, or of a polygon, it is not told which. */
    private void depthInNever(Row row) {
        List<PlainFigure> holding = row.site.isPoint() ? never.stream().filter(f -> f.holds(onPlane(row.site))).toList() : List.of();
        row.verdictOnly = holding.size() != 1;
        if (!row.verdictOnly) {
            row.measured = -PlainFigure.edgeM(row.site.point(), onPlane(row.site), holding.get(0).pieces);
            row.nearest = neverClass.get(never.indexOf(holding.get(0)));
        }
    }

    // The other sites

    private void others(Site site) {
        List<Site> kin = scene.sites.stream().filter(other -> other != site && other.isPoint() == site.isPoint()).toList();
        Nearest nearest = kin.isEmpty() ? null : nearest(site, kin.stream().map(Site::figure).toList());
        if (!kin.isEmpty() && site.isPoint()) {
            Row row = row(site, "apart").figures(scene.apartM, nearest.distanceM(), 0).judge(DISTANCE_DOUBT_M);
            nearestOf(row, nearest);
            row.source = "plan.yaml";
        } else if (!kin.isEmpty()) {
            Row row = row(site, "overlap").figures(0, nearest.distanceM(), 0);
            nearestOf(row, nearest);
            row.verdict = kin.stream().anyMatch(other -> site.figure().sharesGroundWith(other.figure())) ? "fail" : "pass";
        }
        if (scene.sites.size() > 1) {
            Row row = row(site, "duplicate");
            row.measured = nearest == null ? Double.NaN : nearest.distanceM();
            boolean sameName = scene.sites.stream().anyMatch(other -> other != site && other.name().equals(site.name()));
            boolean samePlace = site.isPoint() && nearest != null && nearest.distanceM() <= 1;
            row.verdict = sameName || samePlace ? "fail" : "pass";
            row.inDoubt = site.isPoint() && nearest != null && Math.abs(nearest.distanceM() - 1) < DISTANCE_DOUBT_M;
        }
    }
}
