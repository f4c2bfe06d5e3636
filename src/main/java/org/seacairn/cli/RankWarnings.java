package org.seacairn.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import org.seacairn.criterion.BottomCriterion;
import org.seacairn.criterion.Reasons;
import org.seacairn.criterion.WorkingLayer;
import org.seacairn.place.Site;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Bottom;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.score.ScoreTotals;
import org.seacairn.score.WorkingDepth;
import org.seacairn.score.WorkingLayers;

/** What a careful reader should know of a ranking before relying on it, one line each. */
final class RankWarnings {
    /** Ten times what a UTM zone comes to at its edges. */
    private static final double LARGE_SCALE_ERROR = 0.01;

    private final SitingPlan plan;
    private final List<String> warnings = new ArrayList<>();

    private RankWarnings(SitingPlan plan) {
        this.plan = plan;
    }

    static List<String> of(SitingPlan plan, WorkingDepth depth, WorkingLayers layers, ScoreTotals totals, List<Site> sites) {
        RankWarnings found = new RankWarnings(plan);
        found.warnings.addAll(ofInputs(plan, depth, layers));
        if (sites.isEmpty()) {
            found.depthOfAll(totals, Reasons.TOO_SHALLOW);
            found.depthOfAll(totals, Reasons.TOO_DEEP);
        } else if (sites.size() < plan.sites().count()) {
            found.warnings.add("sites: only " + sites.size() + " of " + plan.sites().count() + " fit; every other feasible"
                    + " cell is nearer than " + Shown.metres(plan.sites().apartM()) + " (apart) to one of them");
        }
        sites.forEach(site -> found.warnings.addAll(SiteDrops.warnings(site.name(), site.releaseClearances())));
        return List.copyOf(found.warnings);
    }

    /** What there is to know of the plan, its bathymetry and its layers, whatever is chosen. */
    static List<String> ofInputs(SitingPlan plan, WorkingDepth depth, WorkingLayers layers) {
        RankWarnings found = new RankWarnings(plan);
        found.warnings.addAll(plan.warnings());
        found.warnings.addAll(depth.notes());
        found.stretched(depth);
        found.warnings.addAll(layers.warnings());
        plan.bottom().ifPresent(bottom -> found.unlabelled(bottom, layers.bottom().orElseThrow()));
        plan.reefs().ifPresent(reefs -> found.unnamed(reefs.source(), reefs.nameAttribute(), layers.reefs().orElseThrow()));
        for (int i = 0; i < plan.keepOff().size(); i++) {
            SitingPlan.KeepOff rule = plan.keepOff().get(i);
            found.unnamed(rule.source(), rule.nameAttribute(), layers.keepOff().get(i));
        }
        return List.copyOf(found.warnings);
    }

    private void stretched(WorkingDepth depth) {
        if (depth.largestScaleError() > LARGE_SCALE_ERROR) {
            warnings.add("crs: lengths on the map of " + depth.grid().crs().label() + " are off by up to "
                    + String.format(Locale.ROOT, "%.0f", Math.ceil(100 * depth.largestScaleError())) + " % here; distances are"
                    + " corrected for it, slopes, areas and landing room are not; name the UTM zone of the place, or leave crs out");
        }
    }

    private void unlabelled(Bottom bottom, WorkingLayer layer) {
        Predicate<WorkingLayer.Piece> unlabelled =
                piece -> BottomCriterion.className(bottom, piece.feature().attributes()).isEmpty();
        long count = layer.pieces().stream().filter(unlabelled).map(piece -> piece.feature().id()).distinct().count();
        if (count > 0) {
            warnings.add(bottom.source().file().getFileName() + ": " + count + " polygons on the grid state no class (attribute "
                    + bottom.classAttribute() + ") and are taken as unmapped");
        }
    }

    private void unnamed(LayerFile source, Optional<String> nameAttribute, WorkingLayer layer) {
        nameAttribute.flatMap(layer::withoutAttribute).ifPresent(problem -> warnings.add(source.file().getFileName() + ", name of \""
                + source.label() + "\" (line " + source.line() + " of the plan): " + problem
                + (problem.endsWith("?") ? " " : "; ") + "its features are told by number"));
    }

    /** The mark of a file read upside down or in another unit. */
    private void depthOfAll(ScoreTotals totals, String reason) {
        long cells = totals.byReason().stream().filter(c -> c.reason().equals(reason)).mapToLong(ScoreTotals.Count::cells).sum();
        if (cells >= totals.withDepth()) {
            warnings.add("bathymetry: every cell is " + reason + "; if that is unexpected, check values ("
                    + plan.bathymetry().values().name().toLowerCase(Locale.ROOT) + ") and unit (" + plan.bathymetry().unit() + ") in the plan");
        }
    }
}
