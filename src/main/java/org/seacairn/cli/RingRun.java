package org.seacairn.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.seacairn.cli.NamedReefs.Reef;
import org.seacairn.export.FeatureTable;
import org.seacairn.export.GpxWriter;
import org.seacairn.export.GpxWriter.Route;
import org.seacairn.export.GpxWriter.RoutePoint;
import org.seacairn.export.RingTables;
import org.seacairn.export.ReleaseTable;
import org.seacairn.export.Run;
import org.seacairn.export.SitesCsv;
import org.seacairn.place.Pick;
import org.seacairn.place.Ring;
import org.seacairn.place.RingFit;
import org.seacairn.place.RingModule;
import org.seacairn.place.RingRequest;
import org.seacairn.place.RingResult;
import org.seacairn.place.RingSearch;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan;
import org.seacairn.report.RingPage;

/** A ring about a reef, from plan to output folder. */
final class RingRun {
    private final String around;
    private final LengthRange radius;
    private final int modules;

    RingRun(String around, LengthRange radius, int modules) {
        this.around = around;
        this.radius = radius;
        this.modules = modules;
    }

    /**
     * What there is to tell of a finished run.
     *
     * @param passedOver whether a ring as even with a higher total was left for one that a review passes
     * @param sites empty where there is no ring
     */
    record Result(SitingPlan plan, String reef, LengthRange radius, int modules, RingResult found, boolean passedOver, List<Site> sites,
            List<String> warnings, Path outFolder) {}

    Result run(LayoutRun.Settings settings) {
        return LayoutRun.of(settings, this::run);
    }

    private Result run(LayoutRun run) {
        run.next("choosing");
        SitingPlan plan = run.plan();
        Reef reef = new NamedReefs(plan, run.layers(), "--around").find("--around", around);
        RingRequest asked = new RingRequest(reef.feature().geometry(), radius.leastM(), radius.mostM(),
                modules, plan.sites().apartM());
        RingResult best = RingSearch.of(run.engine(), asked, Set.of(), run.progress());
        RingResult found = passing(run, asked, best);
        List<String> warnings = run.warnings();
        List<Pick> picks = found.ring().map(RingRun::picks).orElse(List.of());
        List<Site> sites = run.sites(picks, "R", warnings);
        Result result = new Result(plan, reef.name(), radius, modules, found, found != best, sites, List.copyOf(warnings), run.outFolder());
        write(run, result);
        return result;
    }

    /**
     * The best ring all of whose modules pass a review, where one as even is found by leaving out the cells that do not;
     * else the best ring, whose marginal modules are warned of.
     */
    private static RingResult passing(LayoutRun run, RingRequest asked, RingResult best) {
        RingResult found = best;
        Set<Pick> barred = new HashSet<>();
        for (int round = 0; round < LayoutRun.MOST_ROUNDS && evenness(found).equals(evenness(best)); round++) {
            List<Pick> marginal = run.marginal(found.ring().map(RingRun::picks).orElse(List.of()));
            if (marginal.isEmpty()) {
                return found;
            }
            barred.addAll(marginal);
            found = RingSearch.of(run.engine(), asked, barred, run.progress());
        }
        return best;
    }

    private static Optional<Integer> evenness(RingResult result) {
        return result.ring().map(Ring::evennessDeg);
    }

    private static List<Pick> picks(Ring ring) {
        return ring.modules().stream().map(RingModule::pick).toList();
    }

    private void write(LayoutRun run, Result result) {
        List<Site> sites = result.sites;
        Optional<RingTables.AroundReef> ring = result.found.ring().map(r -> new RingTables.AroundReef(result.reef, r, sites));
        List<ReleaseTable.Release> releases = ReleaseTable.releases(sites);
        List<FeatureTable<?>> tables = List.of(FeatureTable.sites(result.plan, sites), FeatureTable.landingCircles(sites),
                ReleaseTable.of(releases),
                RingTables.rings(ring.stream().toList()));
        int atMost = result.found.fit().map(RingFit::atMost).orElse(sites.size());
        run.write(LayoutRun.Laid.MODULES, tables, new Run.RingCounts(sites.size(), result.found.cells(), result.found.scoredCells(), atMost, result.found.reasons()),
                result.warnings,
                (written, map) -> RingPage.of(written, result.reef, radius.leastM(), radius.mostM(), modules, result.found, result.passedOver, sites,
                        Optional.of(map)),
                () -> SitesCsv.write(run.file("sites.csv"), result.plan, sites),
                () -> RingTables.writeCsv(run.file("ring.csv"), ring),
                () -> GpxWriter.write(run.file("sites.gpx"), result.plan.title(), sites, routes(result)),
                () -> GpxWriter.writeReleases(run.file("release_points.gpx"), result.plan.title(), releases));
    }

    /** Round and back to the first. */
    private static List<Route> routes(Result result) {
        Optional<Ring> ring = result.found.ring();
        if (ring.isEmpty() || result.sites.size() < 2) {
            return List.of();
        }
        List<RoutePoint> points = new ArrayList<>();
        result.sites.forEach(site -> points.add(new RoutePoint(site.name(), site.longitudeDeg(), site.latitudeDeg())));
        points.add(points.get(0));
        return List.of(new Route("Around " + result.reef, points));
    }
}
