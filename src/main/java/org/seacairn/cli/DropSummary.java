package org.seacairn.cli;

import java.util.List;
import java.util.Locale;
import org.seacairn.drop.LandingDraws;
import org.seacairn.drop.LandingParts;
import org.seacairn.drop.ModuleDrop;
import org.seacairn.drop.PastLandings;
import org.seacairn.drop.PlannedDrop;
import org.seacairn.drop.SinkingBody;
import org.seacairn.drop.Standing;
import org.seacairn.drop.StandingTable;
import org.seacairn.drop.Touchdown;
import org.seacairn.export.Cautions;
import org.seacairn.export.DropTables.Case;
import org.seacairn.place.Site;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan.Display;

/** What {@code drop} prints at its end: one screen for people, or JSON for programs. */
final class DropSummary {
    private static final double METRES_PER_FOOT = 0.3048;
    private static final double KG_PER_SHORT_TON = 2000 * 0.45359237;

    private final DropRun.Result result;
    private final Lines lines;

    private DropSummary(DropRun.Result result) {
        this.result = result;
        this.lines = new Lines(result.plan().display());
    }

    static String text(DropRun.Result result) {
        return new DropSummary(result).text();
    }

    private String text() {
        lines.add("%s: %s", result.plan().title(), result.plan().module().name());
        module();
        if (result.target().isPresent()) {
            target(result.target().get());
        } else {
            byDepth();
        }
        result.past().ifPresent(this::past);
        List<String> objections = result.objections();
        lines.add("%s", objections.isEmpty() ? "Nothing computed here speaks against the drop." : "Against it: " + String.join("; ", objections) + ".");
        lines.written(result.outFolder());
        Cautions.DROP_LINES.forEach(line -> lines.add("%s", line));
        return lines.text();
    }

    private void module() {
        SinkingBody body = result.drop().body();
        lines.add("Mass %s, %.0f kN in sea water; centre of mass %s above its underside, of buoyancy %s; terminal speed %s.",
                mass(body.massKg()), body.submergedWeightN() / 1000, lines.fineLength(body.centreOfMassM()),
                lines.fineLength(body.centreOfBuoyancyM()), speed(body.terminalSpeedMPerS()));
    }

    private void target(DropRun.Target target) {
        Site site = target.site();
        Standing standing = target.planned().standing();
        lines.add("Target %s: %s, %s of water, slope %s, %s.", site.name(), Lines.place(site.longitudeDeg(), site.latitudeDeg()),
                lines.length(site.depthM()), Double.isNaN(site.slopeDeg()) ? "not known" : String.format(Locale.ROOT, "%.1f deg", site.slopeDeg()),
                site.bottom().isEmpty() ? "bottom not mapped" : site.bottom());
        for (int i = 0; i < target.cases().size(); i++) {
            release(target.cases().get(i));
            if (i < target.draws().size()) {
                circle(target.cases().get(i).drop().landing(), target.draws().get(i));
            }
        }
        if (result.plan().module().landingRadiusM().isPresent()) {
            lines.add("The module file states a landing radius of %s, which holds in the plan instead.", lines.length(site.landingRadiusM()));
        }
        attitude(standing, site.depthM());
        standing(standing);
        lines.add("With 1 kn more: its factor against overturning is %s.",
                factor(target.cases().get(target.cases().size() - 1).standing().stability()));
    }

    private void release(Case drop) {
        PlannedDrop planned = drop.drop();
        Touchdown down = planned.touchdown();
        lines.add("Release%s, %s: %s%s; sinks %.0f s.", planned.profile().isEmpty() ? "" : " (" + Shown.printable(planned.profile()) + ")",
                drop.current(), Lines.place(planned.releaseLongitudeDeg(), planned.releaseLatitudeDeg()),
                Double.isNaN(planned.bearingDeg()) ? ", over the target" : String.format(Locale.ROOT, ", %s from the target, bearing %03.0f deg true",
                        lines.length(down.driftM()), planned.bearingDeg()), down.timeS());
    }

    private void circle(LandingParts parts, LandingDraws draws) {
        lines.add("  Landing circle (95 %%) %s: scatter %s, current %s, drag %s, barge %s. %d draws: %s; %s.", lines.length(parts.radiusM()),
                lines.length(parts.scatterM()), lines.length(parts.driftM()), lines.length(parts.dragM()), lines.length(parts.bargeM()),
                draws.draws(), lines.length(draws.radiusM()), draws.opinionOf(parts));
    }

    private void attitude(Standing standing, double depthM) {
        ModuleDrop drop = result.drop();
        double settledM = 0;
        for (int i = 0; i < drop.profiles().size(); i++) {
            settledM = Math.max(settledM, drop.attitude(i).settledDepthM().orElse(Double.NaN));
        }
        lines.add("Leaves the deck tilted by %s deg; %s; comes down within %.0f deg of upright. Leaning, it may glide by %s, which the scatter stands for.", Shown.number(drop.body().parts().releaseTiltDeg()),
                Double.isNaN(settledM) ? "does not settle under 5 deg" : "stays under 5 deg from " + lines.length(settledM) + " down",
                Math.max(1, Math.ceil(standing.tiltDeg())), lines.length(drop.glideM(depthM)));
    }

    private void standing(Standing standing) {
        double embedmentM = standing.embedment().depthM();
        String embedment = Double.isNaN(embedmentM) ? "embedment not modelled (the bottom's class states no shear-strength)"
                : Double.isInfinite(embedmentM) ? "the bottom never bears its weight"
                : String.format(Locale.ROOT, "sinks in %s, %s stand above the bottom, which bears %s times its weight", lines.fineLength(embedmentM),
                        lines.fineLength(standing.reliefM()), factor(standing.embedment().bearingFactor()));
        lines.add("Touches down at %s with %.0f kJ; %s; factor against overturning %s.", speed(standing.impactSpeedMPerS()),
                standing.impactEnergyJ() / 1000, embedment, factor(standing.stability()));
    }

    private void byDepth() {
        ModuleDrop drop = result.drop();
        lines.add("%8s  %8s  %8s  %14s  %14s", "depth", "sinks", "drift", "landing circle", "steepest slope");
        for (double depthM : StandingTable.depths(result.plan(), drop)) {
            double slopeDeg = drop.steepestSlopeDeg(depthM, StandingTable.factor(result.plan()));
            lines.add("%8s  %6.0f s  %8s  %14s  %14s", lines.length(depthM), drop.touchdown(0, depthM).timeS(),
                    lines.length(drop.touchdown(0, depthM).driftM()), lines.length(drop.landing(depthM).radiusM()),
                    Double.isNaN(slopeDeg) ? "none" : slopeDeg >= 89 ? "any" : String.format(Locale.ROOT, "%.0f deg", Math.floor(slopeDeg)));
        }
        lines.add("The slope is that of a factor of %s against overturning; standing.csv tells it by bottom and current.",
                Shown.number(StandingTable.factor(result.plan())));
    }

    private void past(PastLandings past) {
        lines.add("%d earlier drops missed by %s toward %03.0f deg on average%s; scatter %s (95 %% sure: %s to %s) along any line%s.",
                past.drops(), lines.length(past.bias().lengthM()), past.bias().bearingDeg(),
                past.bias().zeroWithin() ? ", which is no sign of a bias" : ", more than chance: look for its cause",
                lines.length(past.scatterM().value()), lines.length(past.scatterM().lower()), lines.length(past.scatterM().upper()),
                past.scatterDeg().map(a -> String.format(Locale.ROOT, ", as an angle %.1f deg (%.1f to %.1f); to plan with it, state for example"
                        + " \"scatter-angle: %.1f deg\"", a.value(), a.lower(), a.upper(), past.tooFew() ? a.upper() : a.value())).orElse(""));
        lines.add("  By them alone 95 %% land within %s of the target, or within %s with 95 %% confidence.%s", lines.length(past.radius95M()), lines.length(past.radius95UpperM()),
                past.tooFew() ? " So few drops tell little: take the upper figures, and 10 or more." : "");
    }

    private String mass(double kg) {
        return result.plan().display() == Display.US ? String.format(Locale.ROOT, "%.1f short tons", kg / KG_PER_SHORT_TON)
                : String.format(Locale.ROOT, "%.1f t", kg / 1000);
    }

    private String speed(double mPerS) {
        return result.plan().display() == Display.US ? String.format(Locale.ROOT, "%.0f ft/s", mPerS / METRES_PER_FOOT)
                : String.format(Locale.ROOT, "%.1f m/s", mPerS);
    }

    private static String factor(double factor) {
        return Double.isNaN(factor) ? "not known" : factor > 10 ? "over 10" : String.format(Locale.ROOT, "%.1f", factor);
    }

    static String json(DropRun.Result result) {
        return JsonText.of(json -> {
            json.writeStringField("title", result.plan().title());
            json.writeStringField("out", result.outFolder().toString());
            json.writeStringField("module", result.plan().module().name());
            JsonText.number(json, "terminal_speed_m_s", result.drop().body().terminalSpeedMPerS());
            if (result.target().isPresent()) {
                Site site = result.target().get().site();
                json.writeStringField("site", site.name());
                JsonText.number(json, "longitude_deg", site.longitudeDeg());
                JsonText.number(json, "latitude_deg", site.latitudeDeg());
                JsonText.number(json, "depth_m", site.depthM());
                json.writeArrayFieldStart("drops");
                for (Case drop : result.target().get().cases()) {
                    json.writeStartObject();
                    json.writeStringField("profile", drop.drop().profile());
                    json.writeStringField("current", drop.current());
                    JsonText.number(json, "release_longitude_deg", drop.drop().releaseLongitudeDeg());
                    JsonText.number(json, "release_latitude_deg", drop.drop().releaseLatitudeDeg());
                    JsonText.number(json, "release_bearing_deg", drop.drop().bearingDeg());
                    JsonText.number(json, "release_distance_m", drop.drop().touchdown().driftM());
                    JsonText.number(json, "sink_time_s", drop.drop().touchdown().timeS());
                    JsonText.number(json, "landing_radius_computed_m", drop.drop().landing().radiusM());
                    JsonText.number(json, "embedment_m", drop.standing().embedment().depthM());
                    JsonText.number(json, "stability", drop.standing().stability());
                    json.writeEndObject();
                }
                json.writeEndArray();
            }
            JsonText.array(json, "against", result.objections());
            JsonText.array(json, "warnings", result.warnings());
            JsonText.array(json, "cautions", Cautions.DROP_LINES);
        });
    }
}
