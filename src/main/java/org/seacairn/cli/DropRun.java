package org.seacairn.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.InputException;
import org.seacairn.drop.LandingDraws;
import org.seacairn.drop.Miss;
import org.seacairn.drop.ModuleDrop;
import org.seacairn.drop.PastLandings;
import org.seacairn.drop.PlannedDrop;
import org.seacairn.drop.Standing;
import org.seacairn.drop.StandingTable;
import org.seacairn.export.DropPlots;
import org.seacairn.export.DropTables;
import org.seacairn.export.DropTables.Case;
import org.seacairn.export.FeatureTable;
import org.seacairn.export.GpxWriter;
import org.seacairn.export.OutputFolder;
import org.seacairn.export.ReleaseTable;
import org.seacairn.export.Run;
import org.seacairn.export.RunJson;
import org.seacairn.grid.GridGeometry;
import org.seacairn.layer.LandingsCsv;
import org.seacairn.place.Clearance;
import org.seacairn.place.Pick;
import org.seacairn.place.Site;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;
import org.seacairn.report.DropPage;
import org.seacairn.score.CellDetail;

/** A module's way to the bottom: what it can stand anywhere, and, for one target, where to release it and how it lands. */
final class DropRun {
    private static final double KNOT_M_PER_S = 1852.0 / 3600;
    static final String FASTER = "1 kn more";
    private static final String PAST = "past_landings.csv";

    private final Request request;
    /** Read before anything else, since it is told at once if it is wrong. */
    private Optional<PastLandings> past = Optional.empty();
    private List<LandingsCsv.Row> earlier = List.of();

    DropRun(Request request) {
        this.request = request;
    }

    /**
     * @param at target, or empty: none
     * @param sites file in which a target's name is looked up
     * @param landings earlier drops, or empty
     * @param draws landings to draw at random
     */
    record Request(Optional<String> at, Path sites, Optional<Path> landings, int draws, long seed) {}

    /**
     * One target.
     *
     * @param ruledOutBy reasons against its cell, or empty text
     * @param cases as stated, profile by profile, then the same in a current of 1 kn more
     * @param draws a second opinion on the landing radius, profile by profile
     */
    record Target(Site site, String ruledOutBy, List<Case> cases, List<LandingDraws> draws) {
        /** The planned case: the first profile, as stated. */
        Case planned() {
            return cases.get(0);
        }
    }

    /** What there is to tell of a finished run. */
    record Result(SitingPlan plan, ModuleDrop drop, Optional<Target> target, Optional<PastLandings> past, List<String> warnings, Path outFolder) {
        /** What speaks against the drop, one clause each; empty where nothing does. */
        List<String> objections() {
            List<String> objections = new ArrayList<>();
            for (int i = 0; i < drop.profiles().size(); i++) {
                if (!drop.attitude(i).rightsItself()) {
                    objections.add("it may not right itself");
                    break;
                }
            }
            target.ifPresent(t -> DropRun.object(plan, t, objections));
            return List.copyOf(objections);
        }
    }

    private static void object(SitingPlan plan, Target target, List<String> objections) {
        double embedmentM = target.planned().standing().embedment().depthM();
        if (Double.isInfinite(embedmentM)) {
            objections.add("the bottom never bears its weight");
        }
        plan.limits().embedmentM().ifPresent(most -> {
            if (embedmentM > most && !Double.isInfinite(embedmentM)) {
                objections.add("it sinks in deeper than the limit of " + Shown.metres(most));
            }
        });
        double leastFactor = plan.limits().stability().orElse(1);
        if (target.planned().standing().stability() < leastFactor) {
            objections.add(plan.limits().stability().isPresent()
                    ? "its factor against overturning is under the limit of " + Shown.number(leastFactor) : "it would tip over");
        }
        target.site().releaseClearances().stream().filter(Clearance::isTooNear)
                .forEach(c -> objections.add("its release point is too near \"" + c.layer() + "\""));
        if (!target.ruledOutBy().isEmpty()) {
            objections.add("the place is ruled out by " + target.ruledOutBy());
        }
    }

    Result run(LayoutRun.Settings settings) {
        return settings.inputs().during(() -> dropped(settings));
    }

    private Result dropped(LayoutRun.Settings settings) {
        earlier = request.landings.map(LandingsCsv::read).orElse(List.of());
        past = request.landings.map(file -> PastLandings.of(file.getFileName().toString(), earlier.stream().map(DropRun::drop).toList()));
        return request.at.isPresent() ? LayoutRun.of(settings, this::atTarget) : withoutTarget(settings);
    }

    private Result atTarget(LayoutRun run) {
        run.next("sinking");
        SitingPlan plan = run.plan();
        ModuleDrop drop = required(plan, run.engine().drop());
        DropTarget target = DropTarget.of(request.at.orElseThrow(), request.sites, run.grid());
        Pick place = place(run.grid(), target);
        CellDetail cell = run.engine().detail(place.col(), place.row());
        requireDepth(plan, drop, target, cell);
        Site site = new CheckedSites(plan, run.engine(), run.layers()).at(place, target.name());
        List<Case> cases = new ArrayList<>(cases("as stated", site, site.drops(), site.standing().orElseThrow(), drop));
        ModuleDrop inFaster = drop.inFasterCurrent(KNOT_M_PER_S);
        SiteDrops.Found faster = new SiteDrops(plan, Optional.of(inFaster), run.grid().crs(), List.of())
                .at(target.longitudeDeg(), target.latitudeDeg(), cell);
        cases.addAll(cases(FASTER, site, faster.drops(), faster.standing().orElseThrow(), inFaster));
        run.progress().expect((long) drop.profiles().size() * request.draws, "landings");
        List<LandingDraws> draws = IntStream.range(0, drop.profiles().size())
                .mapToObj(i -> LandingDraws.of(drop, i, site.depthM(), request.draws, request.seed, run.progress())).toList();
        List<String> warnings = run.warnings();
        warnings.addAll(DropWarnings.of(plan, drop));
        warnings.addAll(SiteDrops.warnings(site.name(), site.releaseClearances()));
        Result result = new Result(plan, drop, Optional.of(new Target(site, run.engine().reasons().describe(cell.reasons()), cases, draws)),
                past, List.copyOf(warnings), run.outFolder());
        List<StandingTable.Row> standing = StandingTable.of(plan, drop);
        List<ReleaseTable.Release> releases = ReleaseTable.releases(List.of(site));
        List<DropTables.Step> steps = DropTables.descent(drop, site.depthM());
        List<Runnable> files = new ArrayList<>(ofModule(run::file, result, standing));
        files.add(() -> DropTables.writeDescent(run.file("descent.csv"), steps));
        files.add(() -> DropPlots.write(run.file("descent.svg"), DropPlots.descent(site.name(), steps)));
        files.add(() -> DropTables.writeCases(run.file("drop.csv"), cases));
        files.add(() -> GpxWriter.writeReleases(run.file("release_points.gpx"), plan.title(), releases));
        run.write(LayoutRun.Laid.TARGET, List.of(ReleaseTable.of(releases), FeatureTable.sites(plan, List.of(site)), FeatureTable.landingCircles(List.of(site))),
                new Run.DropCounts(drop.profiles().size(), request.draws, request.seed), warnings,
                (told, map) -> DropPage.of(told, drop, standing, Optional.of(new DropPage.Target(site, cases, draws, steps, Optional.of(map))), result.past,
                        result.objections()),
                files.toArray(Runnable[]::new));
        return result;
    }

    /** What is known without a target; no layer is opened. */
    private Result withoutTarget(LayoutRun.Settings settings) {
        Stages stages = new Stages(settings.progress(), "plan");
        SitingPlan plan = settings.inputs().read();
        stages.next("sinking");
        ModuleDrop drop = required(plan, ModuleDrop.of(plan));
        List<String> warnings = new ArrayList<>(plan.warnings());
        warnings.addAll(DropWarnings.of(plan, drop));
        Result result = new Result(plan, drop, Optional.empty(), past, List.copyOf(warnings), settings.outFolder());
        List<StandingTable.Row> standing = StandingTable.of(plan, drop);
        stages.next("writing");
        try (OutputFolder output = OutputFolder.stage(settings.outFolder())) {
            ofModule(output::resolve, result, standing).forEach(Runnable::run);
            stages.next("report");
            Run run = new Run(Version.text(), settings.command(), plan, settings.inputs().hashed(), null, null, 0,
                    new Run.DropCounts(drop.profiles().size(), 0, request.seed), warnings, stages.timingsS());
            settings.report().write(DropPage.of(run, drop, standing, Optional.empty(), result.past, result.objections()), plan.display(), output::resolve);
            stages.end();
            RunJson.write(output.resolve(RunJson.FILE_NAME), run);
            settings.inputs().requireUnchanged();
            output.commit();
        }
        return result;
    }

    private List<Runnable> ofModule(Function<String, Path> file, Result result, List<StandingTable.Row> standing) {
        List<Runnable> files = new ArrayList<>(List.of(() -> ModuleFiles.write(result.plan, result.drop, standing, file)));
        if (result.past.isPresent()) {
            files.add(() -> DropTables.writePast(file.apply(PAST), missed()));
        }
        return files;
    }

    private static List<Case> cases(String current, Site site, List<PlannedDrop> drops, Standing standing, ModuleDrop in) {
        return drops.stream().map(drop -> new Case(site.name(), current, drop, standing, in.glideM(site.depthM()))).toList();
    }

    /** @throws InputException if the plan does not tell how its module sinks to the deepest depth that it allows */
    private static ModuleDrop required(SitingPlan plan, Optional<ModuleDrop> drop) {
        List<String> missing = new ArrayList<>();
        if (!plan.module().missing().isEmpty()) {
            missing.add("the module's " + String.join(", ", plan.module().missing()));
        }
        if (plan.current().isEmpty()) {
            missing.add("a current (current: {file: current.csv})");
        } else if (drop.isEmpty() && plan.module().missing().isEmpty()) {
            missing.add("a current below the surface (a level at the bottom)");
        }
        if (!missing.isEmpty()) {
            throw new InputException(plan.file().getFileName() + ": to tell how the module sinks, the plan must also state "
                    + String.join(", and ", missing) + "; add it");
        }
        double deepestM = plan.limits().deepestM().orElse(0);
        if (deepestM > drop.orElseThrow().deepestM()) {
            throw new InputException(plan.file().getFileName() + ": the current stops at " + Shown.metres(drop.get().deepestM())
                    + ", limits allow depths down to " + Shown.metres(deepestM) + "; add a level at the bottom");
        }
        return drop.get();
    }

    private static Pick place(GridGeometry grid, DropTarget target) {
        Optional<Coordinate> found = onMap(grid, target);
        int col = found.map(p -> grid.colAt(p.x)).orElse(-1);
        int row = found.map(p -> grid.rowAt(p.y)).orElse(-1);
        if (col < 0 || row < 0 || col >= grid.cols() || row >= grid.rows()) {
            throw new InputException(target.name() + ": the place lies off the grid of the bathymetry; check longitude (it comes first, west is"
                    + " negative) and latitude");
        }
        return new Pick(col, row, found.get().x, found.get().y, target.longitudeDeg(), target.latitudeDeg(), Double.NaN);
    }

    private static Optional<Coordinate> onMap(GridGeometry grid, DropTarget target) {
        try {
            return Optional.of(grid.crs().geographic().to(grid.crs()).apply(target.longitudeDeg(), target.latitudeDeg()));
        } catch (InputException e) {
            return Optional.empty(); // So far off that the map makes no sense of it.
        }
    }

    private static void requireDepth(SitingPlan plan, ModuleDrop drop, DropTarget target, CellDetail cell) {
        String bathymetry = plan.bathymetry().source().file().getFileName() + ", " + target.name() + ": ";
        if (Double.isNaN(cell.depthM())) {
            throw new InputException(bathymetry + "the bathymetry has no depth there; choose another place");
        }
        if (!(cell.depthM() > 0)) {
            throw new InputException(bathymetry + "the place is dry land (depth " + Shown.metres(cell.depthM()) + "); check longitude and latitude");
        }
        if (cell.depthM() > drop.deepestM()) {
            throw new InputException(bathymetry + "the depth is " + Shown.metres(cell.depthM()) + ", deeper than the "
                    + Shown.metres(drop.deepestM()) + " that the plan allows or its current is known to; choose another place, or extend"
                    + " limits: depth and the current");
        }
    }

    private List<DropTables.Missed> missed() {
        return earlier.stream().map(row -> {
            Miss miss = drop(row).miss();
            return new DropTables.Missed(row, miss.eastM(), miss.northM());
        }).toList();
    }

    private static PastLandings.Drop drop(LandingsCsv.Row row) {
        return new PastLandings.Drop(row.plannedLongitudeDeg(), row.plannedLatitudeDeg(), row.surveyedLongitudeDeg(),
                row.surveyedLatitudeDeg(), row.depthM());
    }
}
