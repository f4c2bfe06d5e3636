package org.seacairn.cli;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.seacairn.criterion.Reasons;
import org.seacairn.geodesy.CoordinateText;
import org.seacairn.place.Site;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.score.ScoreTotals;
import org.seacairn.score.ScoreTotals.Count;

/** What {@code rank} prints at its end: one screen for people, or JSON for programs. */
final class RankSummary {
    private static final int SITES_SHOWN = 5;
    private static final int REASONS_SHOWN = 5;
    private static final double METRES_PER_FOOT = 0.3048;
    private static final double KM_PER_NAUTICAL_MILE = 1.852;

    private RankSummary() {}

    static String text(RankRun.Result result) {
        StringBuilder text = new StringBuilder();
        ScoreTotals totals = result.totals();
        line(text, "%s", result.plan().title());
        line(text, "Grid: %d x %d cells of %s, %s; %s with depth, %s feasible (%.1f %%).",
                result.grid().cols(), result.grid().rows(), Shown.metres(result.grid().cellM()), result.grid().crs().label(),
                area(result, totals.withDepth()), area(result, totals.scored()), 100.0 * totals.scored() / totals.withDepth());
        if (result.sites().isEmpty()) {
            line(text, "No cell is feasible: each is ruled out by one reason or several. All reasons are in reasons.csv.");
        } else {
            sites(text, result);
        }
        reasons(text, result);
        line(text, "%s", Lines.files(result.outFolder()));
        line(text, "Screening aid: not for navigation, no permit. The permitting authority, the coast guard's notice"
                + " and local codes decide.");
        return text.toString();
    }

    private static String area(RankRun.Result result, long cells) {
        double km2 = cells * result.grid().cellM() * result.grid().cellM() / 1e6;
        return result.plan().display() == Display.US
                ? String.format(Locale.ROOT, "%.2f nmi2", km2 / (KM_PER_NAUTICAL_MILE * KM_PER_NAUTICAL_MILE))
                : String.format(Locale.ROOT, "%.2f km2", km2);
    }

    private static void sites(StringBuilder text, RankRun.Result result) {
        boolean us = result.plan().display() == Display.US;
        List<Site> sites = result.sites();
        line(text, "Sites: %d of %d asked; total score %.3f, no selection can exceed %.3f.", sites.size(),
                result.plan().sites().count(), result.selection().total(), result.selection().upperBound());
        for (Site site : sites.subList(0, Math.min(SITES_SHOWN, sites.size()))) {
            line(text, "  %-4s %s  %s  %5.0f %s  slope %.1f deg  %-12s score %.3f", site.name(),
                    CoordinateText.formatLatitudeDdm(site.latitudeDeg()), CoordinateText.formatLongitudeDdm(site.longitudeDeg()),
                    us ? site.depthM() / METRES_PER_FOOT : site.depthM(), us ? "ft" : "m", site.slopeDeg(),
                    site.bottom(), site.score());
        }
        if (sites.size() > SITES_SHOWN) {
            line(text, "  and %d more in sites.csv", sites.size() - SITES_SHOWN);
        }
    }

    private static void reasons(StringBuilder text, RankRun.Result result) {
        ScoreTotals totals = result.totals();
        line(text, "Ruled out most, as a share of the grid (and by that reason alone):");
        totals.byReason().stream().filter(c -> c.cells() > 0 && (!isLandingRoom(c) || result.sites().isEmpty() && c.aloneCells() > 0))
                .sorted(Comparator.comparingLong(Count::cells).reversed()).limit(REASONS_SHOWN)
                .forEach(c -> line(text, "  %-28s %5.1f %%  (%.1f %%)", c.reason(),
                        100.0 * c.cells() / totals.cells(), 100.0 * c.aloneCells() / totals.cells()));
    }

    /** A consequence of the other reasons, and news only where it took the last cells. */
    private static boolean isLandingRoom(Count count) {
        return count.reason().equals(Reasons.LANDING_ROOM);
    }

    static String json(RankRun.Result result) {
        return JsonText.of(json -> {
            json.writeStringField("title", result.plan().title());
            json.writeStringField("out", result.outFolder().toString());
            json.writeNumberField("cells", result.totals().cells());
            json.writeNumberField("cells_with_depth", result.totals().withDepth());
            json.writeNumberField("cells_scored", result.totals().scored());
            json.writeNumberField("sites_asked", result.plan().sites().count());
            json.writeNumberField("total_score", result.selection().total());
            json.writeNumberField("greedy_total_score", result.selection().greedyTotal());
            json.writeNumberField("upper_bound", result.selection().upperBound());
            JsonText.sites(json, result.sites());
            json.writeArrayFieldStart("reasons");
            for (Count count : result.totals().byReason()) {
                json.writeStartObject();
                json.writeStringField("reason", count.reason());
                json.writeNumberField("cells", count.cells());
                json.writeNumberField("alone_cells", count.aloneCells());
                json.writeEndObject();
            }
            json.writeEndArray();
            JsonText.array(json, "warnings", result.warnings());
        });
    }

    private static void line(StringBuilder text, String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values).stripTrailing()).append('\n');
    }
}
