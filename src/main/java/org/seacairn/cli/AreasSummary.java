package org.seacairn.cli;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.criterion.Reasons;
import org.seacairn.export.AreaTables.Candidate;
import org.seacairn.export.Cautions;
import org.seacairn.place.Area;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.review.Figures.Unit;
import org.seacairn.review.Finding;
import org.seacairn.score.ScoreTotals;
import org.seacairn.score.ScoreTotals.Count;

/** What {@code areas} prints at its end: one screen for people, or JSON for programs. */
final class AreasSummary {
    private static final int SHOWN = 3;

    private final AreasRun.Result result;
    private final Lines lines;

    private AreasSummary(AreasRun.Result result) {
        this.result = result;
        this.lines = new Lines(result.plan().display());
    }

    static String text(AreasRun.Result result) {
        return new AreasSummary(result).text();
    }

    private String text() {
        lines.add("%s", result.plan().title());
        lines.add("Areas of %s, turned: %s; at most %s of the cells ruled out.", result.request().sizes().stream()
                .map(size -> lines.length(size.lengthM()) + " x " + lines.length(size.widthM())).collect(Collectors.joining(" or ")),
                result.turn(), Shown.number(100 * result.request().blemish()) + " %");
        if (result.areas().isEmpty()) {
            none();
        } else {
            lines.add("%d of %d asked, best first:", result.areas().size(), result.request().count());
            result.areas().stream().limit(SHOWN).forEach(this::area);
            if (result.areas().size() > SHOWN) {
                lines.add("  and %d more in areas.csv", result.areas().size() - SHOWN);
            }
        }
        lines.written(result.outFolder());
        Cautions.LINES.forEach(line -> lines.add("%s", line));
        return lines.text();
    }

    private void none() {
        ScoreTotals totals = result.totals();
        lines.add("There is no such area.%s", result.refusedBy().isEmpty() ? "" : " What the grid has was refused by a review: "
                + result.refusedBy().entrySet().stream().map(e -> e.getKey() + " " + e.getValue() + " times").collect(Collectors.joining(", ")) + ".");
        List<String> shares = ReasonShares.lines(totals.byReason().stream().map(Count::reason).toList(),
                totals.byReason().stream().map(Count::cells).toList(), totals.cells());
        lines.add("Of the grid %s is feasible. Ruled out by: %s.", Shown.percent(totals.scored(), totals.cells()), String.join(", ", shares));
    }

    private void area(Candidate a) {
        Area area = a.area();
        lines.add("%s  mean score %.3f, lowest %.3f; %s; long side %.0f deg; room for %d modules %s apart (no more than %d)", a.name(),
                area.meanScore(), area.lowestScore(), size(a), area.turnDeg(), a.modules().size(),
                lines.length(result.plan().sites().apartM()), a.capacityBound());
        for (int i = 0; i < a.corners().size(); i += 2) {
            Coordinate one = a.corners().get(i);
            Coordinate two = a.corners().get(i + 1);
            lines.add("    %d  %s    %d  %s", i + 1, Lines.place(one.x, one.y), i + 2, Lines.place(two.x, two.y));
        }
        lines.add("    depth %s to %s, slope %.1f to %.1f deg%s%s", lines.length(area.depthM().least()), lines.length(area.depthM().most()),
                area.slopeDeg().least(), area.slopeDeg().most(), a.bottomShares().isEmpty() ? "" : "; " + a.bottomShares(),
                area.ruledOutCells() == 0 ? "" : "; ruled out " + Shown.percent(area.ruledOutCells(), area.cells()));
        String nearest = a.findings().stream().filter(f -> f.rule().name().startsWith(Reasons.keepOff("")) || f.rule().name().equals("reefs"))
                .filter(f -> f.figures().unit() == Unit.METRES && Double.isFinite(f.figures().measured()))
                .map(f -> f.rule().name().replaceFirst("^keep-off:", "") + " " + lines.length(f.figures().measured()) + name(f))
                .collect(Collectors.joining(", "));
        if (!nearest.isEmpty()) {
            lines.add("    nearest: %s", nearest);
        }
    }

    private static String name(Finding finding) {
        return finding.nearestFeature().isEmpty() ? "" : " (" + finding.nearestFeature() + ")";
    }

    private String size(Candidate a) {
        return result.plan().display() == Display.US ? String.format(Locale.ROOT, "%.4f nmi2, %.1f acres", a.nmi2(), a.acres())
                : String.format(Locale.ROOT, "%.4f km2", a.km2());
    }

    static String json(AreasRun.Result result) {
        return JsonText.of(json -> {
            json.writeStringField("title", result.plan().title());
            json.writeStringField("out", result.outFolder().toString());
            json.writeNumberField("areas_asked", result.request().count());
            json.writeNumberField("cells", result.totals().cells());
            json.writeNumberField("cells_scored", result.totals().scored());
            json.writeArrayFieldStart("areas");
            for (Candidate a : result.areas()) {
                json.writeStartObject();
                json.writeStringField("area", a.name());
                json.writeArrayFieldStart("corners");
                for (Coordinate corner : a.corners()) {
                    json.writeStartArray();
                    json.writeNumber(corner.x);
                    json.writeNumber(corner.y);
                    json.writeEndArray();
                }
                json.writeEndArray();
                json.writeNumberField("area_m2", a.area().areaM2());
                json.writeNumberField("length_m", a.area().size().lengthM());
                json.writeNumberField("width_m", a.area().size().widthM());
                json.writeNumberField("turn_deg", a.area().turnDeg());
                json.writeNumberField("mean_score", a.area().meanScore());
                json.writeNumberField("lowest_score", a.area().lowestScore());
                json.writeNumberField("ruled_out_share", a.area().ruledOutShare());
                json.writeNumberField("capacity", a.modules().size());
                json.writeNumberField("capacity_bound", a.capacityBound());
                json.writeStringField("review", a.verdict().toString());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeObjectFieldStart("refused_by_review");
            for (Map.Entry<String, Integer> refused : result.refusedBy().entrySet()) {
                json.writeNumberField(refused.getKey(), refused.getValue());
            }
            json.writeEndObject();
            JsonText.array(json, "warnings", result.warnings());
            JsonText.array(json, "cautions", Cautions.LINES);
        });
    }
}
