package org.seacairn.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Future;
import org.seacairn.Progress;
import org.seacairn.export.GeoPackageWriter;
import org.seacairn.export.OutputFile;
import org.seacairn.export.OutputFolder;
import org.seacairn.export.ReviewTables;
import org.seacairn.export.Run;
import org.seacairn.export.RunJson;
import org.seacairn.grid.GridGeometry;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.report.MapSection;
import org.seacairn.report.ReviewPage;
import org.seacairn.report.RunMap;
import org.seacairn.review.Proposal;
import org.seacairn.review.Review;
import org.seacairn.review.SiteReview;
import org.seacairn.review.Verdict;
import org.seacairn.score.ScoreRun;
import org.seacairn.score.WorkingDepth;
import org.seacairn.score.WorkingLayers;

/** A review from plan and proposal to output folder. */
final class ReviewRun {
    private final PlanInputs inputs;
    private final LayerFile source;
    private final Optional<String> nameAttribute;
    private final Path outFolder;
    private final int threads;
    private final ReportFiles report;
    private final Optional<Display> display;
    private final boolean marginalOk;
    private final Progress progress;
    private final Stages stages;

    ReviewRun(PlanInputs inputs, LayerFile source, Optional<String> nameAttribute, Path outFolder,
            int threads, ReportFiles report, Optional<Display> display, boolean marginalOk, Progress progress) {
        this.inputs = inputs;
        this.source = source;
        this.nameAttribute = nameAttribute;
        this.outFolder = outFolder;
        this.threads = threads;
        this.report = report;
        this.display = display;
        this.marginalOk = marginalOk;
        this.progress = progress;
        this.stages = new Stages(progress, "plan");
    }

    /** What there is to tell of a finished review. */
    record Result(SitingPlan plan, Path proposal, Display display, boolean marginalOk, List<SiteReview> reviews,
            List<String> unchecked, List<String> warnings, Path outFolder) {
        Verdict worst() {
            return reviews.stream().map(SiteReview::verdict).max(Comparator.naturalOrder()).orElseThrow();
        }

        long count(Verdict verdict) {
            return reviews.stream().mapToLong(review -> review.count(verdict)).sum();
        }
    }

    Result run() {
        return inputs.during(this::reviewed);
    }

    private Result reviewed() {
        try (Aside aside = new Aside(threads)) {
            aside.openEpsg();
            SitingPlan plan = inputs.read();
            Future<List<Run.InputFile>> hashes = aside.begin(inputs::hashed);
            stages.next("bathymetry");
            try (WorkingDepth depth = WorkingDepth.open(plan); OutputFolder output = OutputFolder.stage(outFolder)) {
                GridGeometry grid = depth.grid();
                stages.next("layers");
                WorkingLayers layers = WorkingLayers.load(plan, grid);
                stages.next("proposal");
                Proposal proposal = Proposal.read(source, nameAttribute, grid);
                stages.next("review");
                List<SiteReview> reviews = Review.of(plan, depth, layers, proposal, threads, progress);
                stages.next("writing");
                List<String> warnings = warnings(plan, depth, layers, proposal);
                Result result = new Result(plan, source.file(), display.orElse(plan.display()), marginalOk, reviews,
                        Unchecked.of(plan), warnings, outFolder);
                List<String> layerStyles = List.of("approaches", "proposed_points", "proposed_polygons", "review");
                aside.all(
                        () -> GeoPackageWriter.write(output.resolve("review.gpkg"), ReviewTables.of(reviews)),
                        () -> ReviewTables.writeCsv(output.resolve("review.csv"), reviews),
                        () -> OutputFile.text(output.resolve("summary.txt"), out -> out.write(ReviewSummary.page(result))),
                        () -> report.styles().copyTo(output.path(), layerStyles));
                List<Run.InputFile> hashed = ScoreRun.result(hashes);
                stages.next("report");
                Run run = new Run(Version.text(), "review" + (marginalOk ? " --marginal-ok" : ""), plan, hashed,
                        Run.WorkingCrs.of(grid.crs()), Run.WorkingGrid.of(grid), depth.largestScaleError(), counts(result), warnings,
                        stages.timingsS());
                report.write(ReviewPage.of(run, source.file().getFileName().toString(), result.display, marginalOk, reviews, result.unchecked,
                        Optional.of(map(plan, depth, layers, result))), result.display, output::resolve);
                stages.end();
                RunJson.write(output.resolve(RunJson.FILE_NAME), run);
                inputs.requireUnchanged();
                output.commit();
                return result;
            }
        }
    }

    private MapSection map(SitingPlan plan, WorkingDepth depth, WorkingLayers layers, Result result) {
        return new RunMap(MapSink.ofDepth(depth, threads, progress), report.styles()).addPlan(plan, layers).addReviews(result.reviews).section(plan, result.display);
    }

    private static List<String> warnings(SitingPlan plan, WorkingDepth depth, WorkingLayers layers, Proposal proposal) {
        List<String> warnings = new ArrayList<>(plan.warnings());
        warnings.addAll(depth.notes());
        warnings.addAll(layers.warnings());
        proposal.notes().forEach(note -> warnings.add(proposal.file().getFileName() + ": " + note));
        return List.copyOf(warnings);
    }

    private static Run.ReviewCounts counts(Result result) {
        return new Run.ReviewCounts(result.reviews().size(),
                result.reviews().stream().mapToLong(review -> review.findings().size()).sum(), result.count(Verdict.PASS),
                result.count(Verdict.MARGINAL), result.count(Verdict.NO_DATA), result.count(Verdict.FAIL));
    }
}
