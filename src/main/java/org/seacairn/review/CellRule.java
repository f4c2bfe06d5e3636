package org.seacairn.review;

import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;
import org.locationtech.jts.geom.Coordinate;

/**
 * A rule about the sea floor itself: the worst of the site's cells decides. Where a cell has no measure
 * the verdict is {@code no data}, unless another cell fails.
 */
final class CellRule implements ReviewRule {
    private final RuleText rule;
    private final WorkingMap map;
    private final int halo;
    private final SiteCells.Measure measure;
    private final FiguresOf figures;
    private final DoublePredicate failsAnyway;

    /** The figures of the worst cell, by its measure and its depth in metres; of NaN where there is none. */
    interface FiguresOf {
        Figures of(double least, double depthM);
    }

    /**
     * @param halo how many cells beyond a cell its measure looks
     * @param measure least at the worst cell
     * @param figures of the cell that measures least
     * @param failsAnyway whether that least fails whatever the figures say
     */
    CellRule(RuleText rule, WorkingMap map, int halo, SiteCells.Measure measure, FiguresOf figures, DoublePredicate failsAnyway) {
        this.rule = rule;
        this.map = map;
        this.halo = halo;
        this.measure = measure;
        this.figures = figures;
        this.failsAnyway = failsAnyway;
    }

    @Override
    public List<Finding> judge(int index, ProposedSite site, Optional<SiteCells> cells) {
        if (cells.isEmpty()) {
            return List.of(unknown(site, "off the grid of the bathymetry"));
        }
        SiteCells.Least least = cells.get().least(halo, measure);
        if (least.missing() == least.cells()) {
            return List.of(unknown(site, "no-data in all of its cells (" + least.cells() + ")"));
        }
        Figures found = figures.of(least.value(), least.depthM());
        Verdict verdict = failsAnyway.test(least.value()) ? Verdict.FAIL : found.verdict();
        String note = least.cells() == 1 ? "" : "worst of " + least.cells() + " cells";
        if (verdict != Verdict.FAIL && (least.missing() > 0 || cells.get().partlyOff())) {
            verdict = Verdict.NO_DATA;
            note = cells.get().partlyOff() ? "part of it lies off the grid of the bathymetry"
                    : "no-data in " + least.missing() + " of " + least.cells() + " cells; the figures are of the others";
        }
        Coordinate lonLat = map.lonLat(least.col(), least.row());
        return List.of(finding(site, lonLat, found, verdict, note));
    }

    private Finding unknown(ProposedSite site, String note) {
        return finding(site, site.geometry().getCoordinate(), figures.of(Double.NaN, Double.NaN), Verdict.NO_DATA, note);
    }

    private Finding finding(ProposedSite site, Coordinate lonLat, Figures found, Verdict verdict, String note) {
        Coordinate place = map.wgs84(lonLat.x, lonLat.y);
        return new Finding(site.name(), rule, found, verdict, "", Double.NaN, Double.NaN, Double.NaN, place.x, place.y, note);
    }
}
