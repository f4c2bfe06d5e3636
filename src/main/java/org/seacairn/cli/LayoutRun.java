package org.seacairn.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Future;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.Progress;
import org.seacairn.export.FeatureTable;
import org.seacairn.export.GeoJsonWriter;
import org.seacairn.export.GeoPackageWriter;
import org.seacairn.export.KeepOffBuffer;
import org.seacairn.export.KmlWriter;
import org.seacairn.export.OutputFolder;
import org.seacairn.export.Run;
import org.seacairn.export.RunJson;
import org.seacairn.grid.GridGeometry;
import org.seacairn.place.Pick;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan;
import org.seacairn.report.DropPage;
import org.seacairn.report.MapSection;
import org.seacairn.report.Page;
import org.seacairn.report.ReducedRasters;
import org.seacairn.report.RunMap;
import org.seacairn.review.ProposedSite;
import org.seacairn.review.Review;
import org.seacairn.review.SiteReview;
import org.seacairn.review.Verdict;
import org.seacairn.score.ScoreEngine;
import org.seacairn.score.ScoreRun;
import org.seacairn.score.ScoreTotals;
import org.seacairn.score.WorkingDepth;
import org.seacairn.score.WorkingLayers;

/** What {@code infill}, {@code ring} and {@code areas} share: from the plan to an engine, and from what was chosen to the output folder. */
final class LayoutRun {
    /** How often a layout is chosen anew without the cells that a review found marginal. */
    static final int MOST_ROUNDS = 12;

    /** What the map's legend calls a table. */
    private static final Map<String, String> MAP_TITLES = Map.of("keep_off_buffers", "Keep-off distances", "landing_circles", "Landing circles, 95 %",
            "release_points", "Release points", "chains", "Gaps of the chain", "rings", "Ring", "areas", "Candidate areas", "capacity", "Room for modules");

    /** What the sites of a layout are to its reader. */
    enum Laid { MODULES, TARGET }

    private final Settings settings;
    private final SitingPlan plan;
    private final WorkingDepth depth;
    private final WorkingLayers layers;
    private final ScoreEngine engine;
    private final OutputFolder output;
    private final Aside aside;
    private final Future<List<Run.InputFile>> hashes;
    private final Stages stages;
    private final Future<List<KeepOffBuffer>> buffers;
    private Function<ProposedSite, SiteReview> review;
    private ReducedRasters rasters;

    /**
     * @param command as it stands in {@code run.json}
     * @param progress is told of every stage
     */
    record Settings(PlanInputs inputs, Path outFolder, int threads, ReportFiles report, String command, Progress progress) {}

    private LayoutRun(Settings settings, SitingPlan plan, WorkingDepth depth, OutputFolder output, Aside aside,
            Future<List<Run.InputFile>> hashes, Stages stages) {
        this.settings = settings;
        this.plan = plan;
        this.depth = depth;
        this.output = output;
        this.aside = aside;
        this.hashes = hashes;
        this.stages = stages;
        this.layers = WorkingLayers.load(plan, depth.grid());
        this.buffers = aside.begin(() -> KeepOffBuffers.of(plan, layers, depth.grid()));
        this.engine = new ScoreEngine(plan, depth, layers);
    }

    /**
     * Opens the plan and its layers, has a layout chosen and written, and moves the output into place.
     *
     * @param layout chooses, and calls {@link #write} once
     */
    static <T> T of(Settings settings, Function<LayoutRun, T> layout) {
        return settings.inputs.during(() -> laid(settings, layout));
    }

    private static <T> T laid(Settings settings, Function<LayoutRun, T> layout) {
        Stages stages = new Stages(settings.progress, "layers");
        try (Aside aside = new Aside(settings.threads)) {
            aside.openEpsg();
            SitingPlan plan = settings.inputs.read();
            Future<List<Run.InputFile>> hashes = aside.begin(settings.inputs::hashed);
            try (WorkingDepth depth = WorkingDepth.open(plan); OutputFolder output = OutputFolder.stage(settings.outFolder)) {
                LayoutRun run = new LayoutRun(settings, plan, depth, output, aside, hashes, stages);
                T result = layout.apply(run);
                settings.inputs.requireUnchanged();
                output.commit();
                return result;
            }
        }
    }

    SitingPlan plan() {
        return plan;
    }

    GridGeometry grid() {
        return depth.grid();
    }

    WorkingDepth depth() {
        return depth;
    }

    WorkingLayers layers() {
        return layers;
    }

    ScoreEngine engine() {
        return engine;
    }

    int threads() {
        return settings.threads;
    }

    Path outFolder() {
        return settings.outFolder;
    }

    /** Where to write a file of the output. */
    Path file(String name) {
        return output.resolve(name);
    }

    Progress progress() {
        return settings.progress;
    }

    /** Ends a stage of the work and begins the next. */
    void next(String stage) {
        stages.next(stage);
    }

    /**
     * Sites of what was chosen, measured again and reviewed.
     *
     * @param letter that their names begin with
     * @param warnings take what a review does not pass in full
     * @throws IllegalStateException if a review fails one
     */
    List<Site> sites(List<Pick> picks, String letter, List<String> warnings) {
        next("checking");
        List<Site> sites = new CheckedSites(plan, engine, layers).of(picks, letter);
        warnings.addAll(ReviewedSites.warnings(plan, depth, layers, picks, sites, settings.threads, settings.progress));
        return sites;
    }

    /**
     * Those of some cells at which a review finds a rule met, but not with its allowance: the landing circle reaches
     * over a border that the cell's centre keeps clear of.
     */
    List<Pick> marginal(List<Pick> picks) {
        if (review == null) {
            review = Review.oneByOne(plan, depth, layers);
        }
        return picks.stream().filter(pick -> review.apply(new ProposedSite("", new GeometryFactory().createPoint(
                new Coordinate(pick.longitudeDeg(), pick.latitudeDeg())))).count(Verdict.MARGINAL) > 0).toList();
    }

    /** What the reader of any output of this plan should know. */
    List<String> warnings() {
        return new ArrayList<>(RankWarnings.ofInputs(plan, depth, layers));
    }

    /** Shows the scores that a sink takes on the report's map too; without this it has depths alone. */
    <T> ScoreTotals score(ScoreRun.Sink<T> sink) {
        MapSink<T> forMap = new MapSink<>(grid(), sink);
        ScoreTotals totals = ScoreRun.run(engine, settings.threads, settings.progress, forMap);
        rasters = forMap.rasters();
        return totals;
    }

    /** Of the whole grid where all of it was scored, else of the ground about what was laid. */
    private MapSection map(Laid laid, List<FeatureTable<?>> tables, FeatureTable<KeepOffBuffer> keptOff) {
        RunMap map = new RunMap(rasters == null ? MapSink.ofDepth(depth, CloseUp.of(tables, grid()), settings.threads, settings.progress)
                : rasters, settings.report.styles());
        map.add(keptOff, MAP_TITLES.get(keptOff.name())).addPlan(plan, layers);
        // The first table lies on top.
        for (int i = tables.size() - 1; i >= 0; i--) {
            FeatureTable<?> table = tables.get(i);
            if (!table.name().equals("sites")) {
                map.add(table, MAP_TITLES.get(table.name()));
            } else if (laid == Laid.TARGET) {
                map.add(table, "Target", (row, any) -> DropPage.TARGET_ID);
            } else {
                map.add(table, "Modules");
            }
        }
        return map.section(plan, plan.display());
    }

    /**
     * Writes the tables and what else there is.
     *
     * @param laid what the sites are
     * @param tables the first gives its name to the GeoJSON and KML files
     * @param page of the run
     * @param others write files of their own
     */
    void write(Laid laid, List<FeatureTable<?>> tables, Record counts, List<String> warnings, BiFunction<Run, MapSection, Page> page, Runnable... others) {
        next("writing");
        List<FeatureTable<?>> all = new ArrayList<>(tables);
        FeatureTable<KeepOffBuffer> keptOff = FeatureTable.keepOffBuffers(ScoreRun.result(buffers));
        all.add(keptOff);
        String name = tables.get(0).name();
        List<Runnable> works = new ArrayList<>(List.of(others));
        works.add(() -> GeoPackageWriter.write(file("seacairn.gpkg"), all));
        works.add(() -> KmlWriter.write(file(name + ".kml"), plan.title(), all));
        works.add(() -> GeoJsonWriter.write(file(name + ".geojson"), tables.get(0)));
        works.add(() -> settings.report.styles().copyTo(output.path(), all.stream().map(FeatureTable::name).toList()));
        aside.all(works.toArray(Runnable[]::new));
        List<Run.InputFile> hashed = ScoreRun.result(hashes);
        next("report");
        GridGeometry grid = grid();
        Run run = new Run(Version.text(), settings.command, plan, hashed, Run.WorkingCrs.of(grid.crs()), Run.WorkingGrid.of(grid),
                depth.largestScaleError(), counts, warnings, stages.timingsS());
        settings.report.write(page.apply(run, map(laid, tables, keptOff)), plan.display(), this::file);
        stages.end();
        RunJson.write(file(RunJson.FILE_NAME), run);
    }
}
