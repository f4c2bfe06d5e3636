package org.seacairn.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Future;
import org.seacairn.InputException;
import org.seacairn.Progress;
import org.seacairn.drop.StandingTable;
import org.seacairn.export.FeatureTable;
import org.seacairn.export.GeoJsonWriter;
import org.seacairn.export.GeoPackageWriter;
import org.seacairn.export.GpxWriter;
import org.seacairn.export.KeepOffBuffer;
import org.seacairn.export.KmlWriter;
import org.seacairn.export.OutputFolder;
import org.seacairn.export.ReasonCount;
import org.seacairn.export.ReasonsCsv;
import org.seacairn.export.ReleaseTable;
import org.seacairn.export.Run;
import org.seacairn.export.RunJson;
import org.seacairn.export.SitesCsv;
import org.seacairn.grid.GridGeometry;
import org.seacairn.place.Selection;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan;
import org.seacairn.report.MapSection;
import org.seacairn.report.RankPage;
import org.seacairn.report.ReducedRasters;
import org.seacairn.report.RunMap;
import org.seacairn.score.ScoreEngine;
import org.seacairn.score.ScoreRun;
import org.seacairn.score.ScoreTotals;
import org.seacairn.score.WorkingDepth;
import org.seacairn.score.WorkingLayers;

/** The main job from plan to output folder. */
final class RankRun {
    private final PlanInputs inputs;
    private final Path outFolder;
    private final int threads;
    private final ReportFiles report;
    private final boolean exchange;
    private final Progress progress;
    private final Stages stages;

    RankRun(PlanInputs inputs, Path outFolder, int threads, ReportFiles report, boolean exchange,
            Progress progress) {
        this.inputs = inputs;
        this.outFolder = outFolder;
        this.threads = threads;
        this.report = report;
        this.exchange = exchange;
        this.progress = progress;
        this.stages = new Stages(progress, "plan");
    }

    /** What there is to tell of a finished run. */
    record Result(SitingPlan plan, GridGeometry grid, ScoreTotals totals, Selection selection, List<Site> sites,
            List<String> warnings, Path outFolder, Map<String, Double> timingsS) {}

    Result run() {
        return inputs.during(this::ranked);
    }

    private Result ranked() {
        try (Aside aside = new Aside(threads)) {
            aside.openEpsg();
            SitingPlan plan = inputs.read();
            Future<List<Run.InputFile>> hashes = aside.begin(inputs::hashed);
            stages.next("bathymetry");
            return ranked(plan, aside, hashes);
        }
    }

    private Result ranked(SitingPlan plan, Aside aside, Future<List<Run.InputFile>> hashes) {
        try (WorkingDepth depth = WorkingDepth.open(plan);
                OutputFolder output = OutputFolder.stage(outFolder)) {
            GridGeometry grid = depth.grid();
            stages.next("layers");
            WorkingLayers layers = WorkingLayers.load(plan, grid);
            stages.next("scoring");
            Future<List<KeepOffBuffer>> buffersAside = aside.begin(() -> KeepOffBuffers.of(plan, layers, grid));
            ScoreEngine engine = new ScoreEngine(plan, depth, layers);
            ScoreTotals totals;
            ReducedRasters reduced;
            try (RasterSink rasters = new RasterSink(output, engine)) {
                MapSink<RasterSink.Encoded> forMap = new MapSink<>(grid, rasters);
                totals = ScoreRun.run(engine, threads, progress, forMap);
                rasters.finish();
                reduced = forMap.rasters();
            }
            stages.next("choosing");
            requireDepth(plan, totals);
            Selection selection = Selection.of(engine, totals.blocks(), plan.sites(), depth.largestScaleError(), exchange);
            stages.next("checking");
            List<Site> sites = new CheckedSites(plan, engine, layers).of(selection.picks(), "S");
            List<String> reviewed = ReviewedSites.warnings(plan, depth, layers, selection.picks(), sites, threads, progress);
            stages.next("buffers");
            List<KeepOffBuffer> buffers = ScoreRun.result(buffersAside);
            stages.next("writing");
            List<String> warnings = new ArrayList<>(RankWarnings.of(plan, depth, layers, totals, sites));
            warnings.addAll(DropWarnings.of(plan, engine.drop()));
            warnings.addAll(reviewed);
            write(aside, output, plan, sites, buffers, totals, grid);
            Optional<List<StandingTable.Row>> standing = engine.drop().map(drop -> StandingTable.of(plan, drop));
            standing.ifPresent(rows -> ModuleFiles.write(plan, engine.drop().orElseThrow(), rows, output::resolve));
            List<Run.InputFile> hashed = ScoreRun.result(hashes);
            stages.next("report");
            Run run = new Run(Version.text(), command(), plan, hashed, Run.WorkingCrs.of(grid.crs()), Run.WorkingGrid.of(grid),
                    depth.largestScaleError(), counts(totals, sites, grid), warnings, stages.timingsS());
            report.write(RankPage.of(run, selection, sites, standing, Optional.of(map(reduced, plan, layers, sites, buffers))),
                    plan.display(), output::resolve);
            stages.end();
            RunJson.write(output.resolve(RunJson.FILE_NAME), run);
            inputs.requireUnchanged();
            output.commit();
            return new Result(plan, grid, totals, selection, sites, warnings, outFolder, stages.timingsS());
        }
    }

    private static void requireDepth(SitingPlan plan, ScoreTotals totals) {
        if (totals.withDepth() == 0) {
            throw new InputException(plan.bathymetry().source().file().getFileName() + ": no cell of the working grid has a"
                    + " depth, all are no-data; check the file, its no-data value, and the cell that the plan states");
        }
    }

    private String command() {
        return "rank" + (exchange ? " --exchange" : "");
    }

    private void write(Aside aside, OutputFolder output, SitingPlan plan, List<Site> sites,
            List<KeepOffBuffer> buffers, ScoreTotals totals, GridGeometry grid) {
        FeatureTable<Site> siteTable = FeatureTable.sites(plan, sites);
        FeatureTable<Site> circles = FeatureTable.landingCircles(sites);
        FeatureTable<KeepOffBuffer> bufferTable = FeatureTable.keepOffBuffers(buffers);
        List<ReleaseTable.Release> releases = ReleaseTable.releases(sites);
        List<FeatureTable<?>> tables = List.of(siteTable, circles, ReleaseTable.of(releases), bufferTable);
        aside.all(
                () -> GeoPackageWriter.write(output.resolve("seacairn.gpkg"), tables),
                () -> KmlWriter.write(output.resolve("sites.kml"), plan.title(), tables),
                () -> GeoJsonWriter.write(output.resolve("buffers.geojson"), bufferTable),
                () -> GeoJsonWriter.write(output.resolve("sites.geojson"), siteTable),
                () -> SitesCsv.write(output.resolve("sites.csv"), plan, sites),
                () -> GpxWriter.write(output.resolve("sites.gpx"), plan.title(), sites, List.of()),
                () -> GpxWriter.writeReleases(output.resolve("release_points.gpx"), plan.title(), releases),
                () -> ReasonsCsv.write(output.resolve("reasons.csv"), reasonCounts(totals, grid)),
                () -> report.styles().copyTo(output.path(),
                        List.of("keep_off_buffers", "landing_circles", "reasons", "release_points", "score", "sites")));
    }

    private MapSection map(ReducedRasters reduced, SitingPlan plan, WorkingLayers layers, List<Site> sites, List<KeepOffBuffer> buffers) {
        return new RunMap(reduced, report.styles()).add(FeatureTable.keepOffBuffers(buffers), "Keep-off distances").addPlan(plan, layers)
                .add(FeatureTable.landingCircles(sites), "Landing circles, 95 %")
                .add(ReleaseTable.of(ReleaseTable.releases(sites)), "Release points").add(FeatureTable.sites(plan, sites), "Ranked sites")
                .section(plan, plan.display());
    }

    private static List<ReasonCount> reasonCounts(ScoreTotals totals, GridGeometry grid) {
        double km2 = grid.cellM() * grid.cellM() / 1e6;
        return totals.byReason().stream()
                .map(c -> new ReasonCount(c.reason(), c.bit(), c.cells(), c.cells() * km2, c.aloneCells())).toList();
    }

    private static Run.Counts counts(ScoreTotals totals, List<Site> sites, GridGeometry grid) {
        return new Run.Counts(totals.cells(), totals.withDepth(), totals.scored(), sites.size(), reasonCounts(totals, grid));
    }
}
