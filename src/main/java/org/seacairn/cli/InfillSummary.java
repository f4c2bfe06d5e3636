package org.seacairn.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.export.Cautions;
import org.seacairn.export.ChainTables;
import org.seacairn.place.Chain;
import org.seacairn.place.DriftCheck;
import org.seacairn.place.Pick;
import org.seacairn.place.Site;
import org.seacairn.place.Unbridged;

/** What {@code infill} prints at its end: one screen for people, or JSON for programs. */
final class InfillSummary {
    private static final int SITES_SHOWN = 10;

    private final InfillRun.Result result;
    private final Lines lines;

    private InfillSummary(InfillRun.Result result) {
        this.result = result;
        this.lines = new Lines(result.plan().display());
    }

    static String text(InfillRun.Result result) {
        return new InfillSummary(result).text();
    }

    private String text() {
        lines.add("%s", result.plan().title());
        lines.add("Gaps of %s to %s, within %s of the line %s.", lines.length(result.gaps().leastM()), lines.length(result.gaps().mostM()),
                lines.length(result.request().corridorM()), result.request().along()
                        .map(file -> "in " + file.getFileName()).orElse("from reef to reef"));
        result.legs().forEach(this::leg);
        sites();
        if (result.drift().isPresent()) {
            drift(result.drift().get());
        } else if (!result.sites().isEmpty()) {
            lines.add("No drift was checked: the plan has no current, and no --heading is given.");
        }
        lines.written(result.outFolder());
        Cautions.LINES.forEach(line -> lines.add("%s", line));
        return lines.text();
    }

    private void leg(InfillRun.Leg leg) {
        lines.add("%s to %s, %s apart:", leg.from(), leg.to(), lines.length(leg.corridor().axis().stonesApartM()));
        leg.found().unbridged().ifPresent(gap -> unbridged(leg, gap));
        if (leg.found().unbridged().isEmpty() && leg.chosen().isEmpty()) {
            lines.add("  There is no chain%s; %s.", asked(leg), others(leg));
        }
        for (Chain chain : leg.found().chains()) {
            lines.add("  %s %2d module%s  %s%s", leg.chosen().filter(c -> c == chain).isPresent() ? "*" : " ", chain.modules().size(),
                    chain.modules().size() == 1 ? " " : "s",
                    chain.modules().isEmpty() ? "none is needed" : String.format(Locale.ROOT, "mean score %.3f, total %.3f", chain.meanScore(),
                            chain.meanScore() * chain.modules().size()),
                    chain.proven() ? "" : String.format(Locale.ROOT, " (the best has a mean of at most %.3f)", chain.boundScore()));
        }
        if (!leg.found().undecided().isEmpty()) {
            lines.add("  Not decided within the limits of the search: chains of %s modules.", leg.found().undecided());
        }
    }

    private String asked(InfillRun.Leg leg) {
        int modules = result.request().modules().orElse(-1);
        return modules < 0 ? " that keeps all modules apart" : leg.found().undecided().contains(modules)
                ? " of " + modules + " modules that was found" : " of " + modules + " modules";
    }

    private static String others(InfillRun.Leg leg) {
        return leg.found().chains().isEmpty() ? "widen the gap or the corridor" : "these are there";
    }

    private void unbridged(InfillRun.Leg leg, Unbridged gap) {
        if (gap.lengthM() == 0) {
            lines.add("  There is no chain: the ground would do, but no sequence of feasible cells keeps every gap in the range.");
            return;
        }
        lines.add("  There is no chain: %s cannot be bridged, from %s to %s along the line,", lines.length(gap.lengthM()),
                lines.length(gap.fromAlongM()), lines.length(gap.toAlongM()));
        lines.add("  from %s", end(gap.from(), leg.from()));
        lines.add("  to   %s", end(gap.to(), leg.to()));
        List<String> shares = new ArrayList<>(ReasonShares.lines(result.reasons(), gap.cellsByReason(), gap.cells()));
        lines.add("  %d cells lie between, %d of them feasible%s. Ruled out by: %s.", gap.cells(), gap.freeCells(),
                gap.takenCells() == 0 ? "" : ", " + gap.takenCells() + " too near modules of an earlier leg",
                shares.isEmpty() ? "nothing" : String.join(", ", shares));
    }

    private String end(Optional<Pick> cell, String reef) {
        return cell.map(pick -> {
            Coordinate at = result.toWgs84().apply(pick.longitudeDeg(), pick.latitudeDeg());
            return Lines.place(at.x, at.y);
        }).orElse(reef);
    }

    private void sites() {
        int shown = 0;
        for (ChainTables.Gap gap : result.gapRows()) {
            Optional<Site> site = result.sites().stream().filter(s -> s.name().equals(gap.to())).findFirst();
            if (shown++ < SITES_SHOWN) {
                lines.add("  %7s at %03.0f deg to %-4s%s", lines.length(gap.distanceM()), gap.bearingDeg(), gap.to(), site.map(s ->
                        String.format(Locale.ROOT, " %s  %8s  %-12s score %.3f", Lines.place(s.longitudeDeg(), s.latitudeDeg()),
                                lines.length(s.depthM()), s.bottom(), s.score())).orElse(""));
            }
        }
        if (shown > SITES_SHOWN) {
            lines.add("  and %d more gaps in chains.csv", shown - SITES_SHOWN);
        }
    }

    private void drift(DriftCheck drift) {
        double largest = drift.missM().stream().mapToDouble(Math::abs).max().orElse(0);
        double parallel = drift.missFromOffsetM().stream().mapToDouble(Math::abs).max().orElse(0);
        lines.add("A straight drift from %s at %.0f deg (%s)", result.legs().get(0).from(), drift.headingDeg(),
                result.request().headingDeg().isPresent() ? "--heading" : "the plan's current at the surface");
        lines.add("  %s within %s of every module: it misses by up to %s, the best parallel drift by %s.",
                drift.seesAll() ? "passes" : drift.seesAllFromOffset() ? "does not pass, but a parallel drift does,"
                        : "does not pass", lines.length(drift.sightM()), lines.length(largest), lines.length(parallel));
    }

    static String json(InfillRun.Result result) {
        return JsonText.of(json -> {
            json.writeStringField("title", result.plan().title());
            json.writeStringField("out", result.outFolder().toString());
            json.writeBooleanField("complete", result.complete());
            json.writeNumberField("gap_least_m", result.gaps().leastM());
            json.writeNumberField("gap_most_m", result.gaps().mostM());
            json.writeArrayFieldStart("tradeoff");
            for (ChainTables.Tradeoff row : InfillRun.tradeoff(result.legs())) {
                json.writeStartObject();
                json.writeNumberField("leg", row.leg());
                json.writeNumberField("modules", row.modules());
                JsonText.number(json, "mean_score", row.meanScore());
                JsonText.number(json, "bound_mean_score", row.boundScore());
                json.writeBooleanField("chosen", row.chosen());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayFieldStart("unbridged");
            for (InfillRun.Leg leg : result.legs()) {
                if (leg.found().unbridged().isPresent()) {
                    Unbridged gap = leg.found().unbridged().get();
                    json.writeStartObject();
                    json.writeStringField("from", leg.from());
                    json.writeStringField("to", leg.to());
                    json.writeNumberField("from_along_m", gap.fromAlongM());
                    json.writeNumberField("to_along_m", gap.toAlongM());
                    json.writeNumberField("length_m", gap.lengthM());
                    json.writeNumberField("cells", gap.cells());
                    json.writeNumberField("feasible_cells", gap.freeCells());
                    json.writeObjectFieldStart("cells_by_reason");
                    for (int i = 0; i < result.reasons().size(); i++) {
                        json.writeNumberField(result.reasons().get(i), gap.cellsByReason().get(i));
                    }
                    json.writeEndObject();
                    json.writeEndObject();
                }
            }
            json.writeEndArray();
            json.writeArrayFieldStart("gaps");
            for (ChainTables.Gap gap : result.gapRows()) {
                json.writeStartObject();
                json.writeNumberField("leg", gap.leg());
                json.writeStringField("from", gap.from());
                json.writeStringField("to", gap.to());
                json.writeNumberField("gap_m", gap.distanceM());
                json.writeNumberField("bearing_deg", gap.bearingDeg());
                JsonText.number(json, "drift_miss_m", gap.driftMissM());
                JsonText.number(json, "parallel_drift_miss_m", gap.parallelMissM());
                json.writeEndObject();
            }
            json.writeEndArray();
            JsonText.sites(json, result.sites());
            json.writeFieldName("drift");
            if (result.drift().isPresent()) {
                DriftCheck drift = result.drift().get();
                json.writeStartObject();
                json.writeNumberField("heading_deg", drift.headingDeg());
                json.writeNumberField("sight_m", drift.sightM());
                json.writeBooleanField("sees_all", drift.seesAll());
                json.writeBooleanField("parallel_sees_all", drift.seesAllFromOffset());
                json.writeEndObject();
            } else {
                json.writeNull();
            }
            JsonText.array(json, "warnings", result.warnings());
            JsonText.array(json, "cautions", Cautions.LINES);
        });
    }
}
