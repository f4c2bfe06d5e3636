package org.seacairn.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.seacairn.export.Cautions;
import org.seacairn.place.Ring;
import org.seacairn.place.RingFit;
import org.seacairn.place.RingModule;
import org.seacairn.place.RingResult;
import org.seacairn.place.Site;

/** What {@code ring} prints at its end: one screen for people, or JSON for programs. */
final class RingSummary {
    private static final int SITES_SHOWN = 14;

    private final RingRun.Result result;
    private final Lines lines;

    private RingSummary(RingRun.Result result) {
        this.result = result;
        this.lines = new Lines(result.plan().display());
    }

    static String text(RingRun.Result result) {
        return new RingSummary(result).text();
    }

    private String text() {
        RingResult found = result.found();
        lines.add("%s", result.plan().title());
        lines.add("Around %s, %s to %s from it, modules %s apart: %d of %d cells are feasible.", result.reef(),
                lines.length(result.radius().leastM()), lines.length(result.radius().mostM()),
                lines.length(result.plan().sites().apartM()), found.scoredCells(), found.cells());
        if (found.ring().isPresent()) {
            ring(found.ring().get());
        } else {
            RingFit fit = found.fit().orElseThrow();
            lines.add("%s", answer(fit, result.modules()));
            List<String> shares = shares(found);
            lines.add("Ruled out by: %s.", shares.isEmpty() ? "nothing; the distance apart takes the room" : String.join(", ", shares));
        }
        lines.written(result.outFolder());
        Cautions.LINES.forEach(line -> lines.add("%s", line));
        return lines.text();
    }

    private static String answer(RingFit fit, int asked) {
        if (fit.atMost() >= asked) {
            return String.format(Locale.ROOT, "No ring of %d modules was found within the limits of the search; %d fit, and no more than %d.",
                    asked, fit.atLeast(), fit.atMost());
        }
        if (asked == 1) {
            return "Not one module fits.";
        }
        return fit.atLeast() == fit.atMost() ? String.format(Locale.ROOT, "%d modules do not fit; %d do.", asked, fit.atMost())
                : String.format(Locale.ROOT, "%d modules do not fit; %d do, and no more than %d.", asked, fit.atLeast(), fit.atMost());
    }

    private static List<String> shares(RingResult found) {
        List<String> names = new ArrayList<>(found.reasons().keySet());
        return ReasonShares.lines(names, names.stream().map(found.reasons()::get).toList(), found.cells());
    }

    private void ring(Ring ring) {
        lines.add("%s; total score %.3f. %s", ring.modules().size() == 1 ? "1 module" : String.format(Locale.ROOT,
                "%d modules, neighbours at least %.1f deg apart", ring.modules().size(), ring.leastStepDeg()), ring.total(), ring.exact() ? "No ring is more even, and none as even"
                        + (result.passedOver() ? " all of whose modules pass a review" : "") + " has a higher total."
                        : String.format(Locale.ROOT, "The search ended early: no ring is more even than %d deg, none as even exceeds %.3f.",
                                ring.evennessBoundDeg(), ring.totalBound()));
        for (int i = 0; i < Math.min(SITES_SHOWN, result.sites().size()); i++) {
            Site site = result.sites().get(i);
            RingModule module = ring.modules().get(i);
            lines.add("  %-4s %03.0f deg %7s  %s  %8s  %-12s score %.3f%s", site.name(), module.bearingDeg(), lines.length(module.distanceM()),
                    Lines.place(site.longitudeDeg(), site.latitudeDeg()), lines.length(site.depthM()), site.bottom(), site.score(),
                    ring.gapsM().isEmpty() ? "" : "  next " + lines.length(ring.gapsM().get(i)));
        }
        if (result.sites().size() > SITES_SHOWN) {
            lines.add("  and %d more in ring.csv", result.sites().size() - SITES_SHOWN);
        }
    }

    static String json(RingRun.Result result) {
        return JsonText.of(json -> {
            json.writeStringField("title", result.plan().title());
            json.writeStringField("out", result.outFolder().toString());
            json.writeStringField("around", result.reef());
            json.writeNumberField("modules_asked", result.modules());
            json.writeBooleanField("fits", result.found().ring().isPresent());
            json.writeNumberField("cells", result.found().cells());
            json.writeNumberField("feasible_cells", result.found().scoredCells());
            if (result.found().ring().isPresent()) {
                Ring ring = result.found().ring().get();
                json.writeNumberField("least_step_deg", ring.leastStepDeg());
                json.writeNumberField("evenness_bound_deg", ring.evennessBoundDeg());
                json.writeNumberField("total_score", ring.total());
                json.writeNumberField("bound_total_score", ring.totalBound());
                json.writeBooleanField("proven_best", ring.exact());
            } else {
                RingFit fit = result.found().fit().orElseThrow();
                json.writeNumberField("modules_that_fit", fit.atLeast());
                json.writeNumberField("modules_at_most", fit.atMost());
            }
            json.writeObjectFieldStart("cells_by_reason");
            for (Map.Entry<String, Long> reason : result.found().reasons().entrySet()) {
                json.writeNumberField(reason.getKey(), reason.getValue());
            }
            json.writeEndObject();
            JsonText.sites(json, result.sites());
            JsonText.array(json, "warnings", result.warnings());
            JsonText.array(json, "cautions", Cautions.LINES);
        });
    }
}
