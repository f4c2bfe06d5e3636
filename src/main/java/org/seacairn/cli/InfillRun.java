package org.seacairn.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.seacairn.InputException;
import org.seacairn.cli.NamedReefs.Reef;
import org.seacairn.export.ChainTables;
import org.seacairn.export.FeatureTable;
import org.seacairn.export.GpxWriter;
import org.seacairn.export.GpxWriter.Route;
import org.seacairn.export.GpxWriter.RoutePoint;
import org.seacairn.export.ReleaseTable;
import org.seacairn.export.Run;
import org.seacairn.export.SitesCsv;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.layer.GeometryCheck;
import org.seacairn.layer.VectorLayer;
import org.seacairn.layer.VectorLayers;
import org.seacairn.place.Axis;
import org.seacairn.place.Chain;
import org.seacairn.place.ChainSearch;
import org.seacairn.place.Corridor;
import org.seacairn.place.DriftCheck;
import org.seacairn.place.Gaps;
import org.seacairn.place.Pick;
import org.seacairn.place.Site;
import org.seacairn.place.Stone;
import org.seacairn.place.Unbridged;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.report.ChainPage;

/** A chain from reef to reef, from plan to output folder. */
final class InfillRun {
    private final Request request;

    InfillRun(Request request) {
        this.request = request;
    }

    /**
     * @param reefs names, at least two
     * @param gap least and largest, or empty: from the plan's apart to twice that
     * @param corridorM to each side of the line
     * @param along file with the line to follow, or empty: the geodesic
     * @param modules exactly so many, or empty: the fewest
     * @param headingDeg of the drift, or empty: that of the plan's current at the surface
     */
    record Request(List<String> reefs, Optional<LengthRange> gap, double corridorM, Optional<Path> along, OptionalInt modules,
            double sightM, Optional<Double> headingDeg) {}

    /**
     * One leg and what was found for it.
     *
     * @param chosen empty: there is no chain, or none of the asked number
     */
    record Leg(Corridor corridor, ChainSearch.Result found, Optional<Chain> chosen) {
        String from() {
            return corridor.axis().from().name();
        }

        String to() {
            return corridor.axis().to().name();
        }
    }

    /**
     * What there is to tell of a finished run.
     *
     * @param legs up to the first without a chain
     * @param reasons names of the reasons, in the order of their bits
     * @param drift empty: no heading is known, or there is no module
     */
    record Result(SitingPlan plan, Request request, Gaps gaps, List<Leg> legs, List<Site> sites, List<ChainTables.Gap> gapRows,
            Optional<DriftCheck> drift, List<String> reasons, CoordinateTransform toWgs84, List<String> warnings, Path outFolder) {
        boolean complete() {
            return legs.size() == request.reefs().size() - 1 && legs.stream().allMatch(leg -> leg.chosen().isPresent());
        }
    }

    Result run(LayoutRun.Settings settings) {
        return LayoutRun.of(settings, this::run);
    }

    private Result run(LayoutRun run) {
        run.next("choosing");
        SitingPlan plan = run.plan();
        NamedReefs named = new NamedReefs(plan, run.layers(), "--from");
        List<Reef> reefs = new ArrayList<>();
        for (int i = 0; i < request.reefs.size(); i++) {
            reefs.add(named.find(i == 0 ? "--from" : i == request.reefs.size() - 1 ? "--to" : "--via", request.reefs.get(i)));
        }
        NamedReefs.requireDistinct(reefs);
        List<String> warnings = run.warnings();
        Gaps gaps = gaps(plan, warnings);
        List<Leg> legs = legs(run, reefs, gaps);
        List<Pick> picks = legs.stream().flatMap(leg -> leg.chosen.stream()).flatMap(chain -> chain.modules().stream()).toList();
        List<Site> sites = run.sites(picks, "C", warnings);
        CoordinateTransform toWgs84 = run.grid().crs().geographic().to(Crs.WGS84);
        Optional<DriftCheck> drift = drift(run, legs, picks);
        List<ChainTables.Gap> rows = rows(legs, sites, drift, toWgs84);
        Result result = new Result(plan, request, gaps, legs, sites, rows, drift, run.engine().reasons().names(), toWgs84,
                List.copyOf(warnings), run.outFolder());
        write(run, result);
        return result;
    }

    private Gaps gaps(SitingPlan plan, List<String> warnings) {
        double apartM = plan.sites().apartM();
        LengthRange asked = request.gap.orElse(new LengthRange(apartM, 2 * apartM));
        if (asked.mostM() <= apartM) {
            throw new InputException("--gap ends at " + Shown.metres(asked.mostM()) + ", and the plan's modules stand at least "
                    + Shown.metres(apartM) + " apart; widen the gap, or lower sites: apart");
        }
        if (asked.leastM() < apartM) {
            warnings.add("--gap begins at " + Shown.metres(asked.leastM()) + " and is raised to " + Shown.metres(apartM)
                    + ", the distance that the plan keeps sites apart");
        }
        return new Gaps(Math.max(asked.leastM(), apartM), asked.mostM(), apartM);
    }

    private List<Leg> legs(LayoutRun run, List<Reef> reefs, Gaps gaps) {
        List<Stone> stones = reefs.stream().map(reef -> Stone.of(reef.name(), reef.feature().geometry(), run.grid())).toList();
        Optional<VectorLayer> drift = request.along.map(InfillRun::line);
        List<Leg> legs = new ArrayList<>();
        List<Pick> placed = new ArrayList<>();
        for (int i = 1; i < stones.size(); i++) {
            Stone from = stones.get(i - 1);
            Stone to = stones.get(i);
            Axis axis = drift.map(layer -> Axis.along(layer.file().getFileName().toString(), lonLat(layer, run), from, to, run.grid()))
                    .orElseGet(() -> Axis.between(from, to, run.grid()));
            Corridor corridor = Corridor.of(run.engine(), axis, request.corridorM, run.threads(), run.progress());
            Leg leg = leg(placed.isEmpty() ? corridor : corridor.clearOf(placed, gaps.apartM()), gaps, run);
            legs.add(leg);
            if (leg.chosen.isEmpty()) {
                break;
            }
            placed.addAll(leg.chosen.get().modules());
        }
        return List.copyOf(legs);
    }

    /**
     * The best leg all of whose modules pass a review, where one of as many modules is found by leaving out the cells
     * that do not; else the best leg, whose marginal modules are warned of.
     */
    private Leg leg(Corridor corridor, Gaps gaps, LayoutRun run) {
        Leg first = search(corridor, gaps, run);
        Leg leg = first;
        Corridor left = corridor;
        for (int round = 0; round < LayoutRun.MOST_ROUNDS && sameCount(leg, first); round++) {
            List<Pick> marginal = run.marginal(leg.chosen.map(Chain::modules).orElse(List.of()));
            if (marginal.isEmpty()) {
                return leg;
            }
            left = left.clearOf(marginal, 0);
            leg = search(left, gaps, run);
        }
        return first;
    }

    private static boolean sameCount(Leg a, Leg b) {
        return a.chosen.map(chain -> chain.modules().size()).equals(b.chosen.map(chain -> chain.modules().size()));
    }

    private Leg search(Corridor corridor, Gaps gaps, LayoutRun run) {
        ChainSearch.Result found = request.modules.isPresent()
                ? ChainSearch.exactly(corridor, gaps, request.modules.getAsInt(), run.threads(), run.progress())
                : ChainSearch.fewest(corridor, gaps, run.threads(), run.progress());
        found.unbridged().ifPresent(gap -> requireReachable(corridor, gaps, gap, run));
        Optional<Chain> chosen = found.chains().stream()
                .filter(chain -> request.modules.isEmpty() || chain.modules().size() == request.modules.getAsInt()).findFirst();
        return new Leg(corridor, found, chosen);
    }

    /** What no ground could mend is a fault of the request. */
    private static void requireReachable(Corridor corridor, Gaps gaps, Unbridged unbridged, LayoutRun run) {
        String between = "\"" + corridor.axis().from().name() + "\" and \"" + corridor.axis().to().name() + "\"";
        if (unbridged.fewestByDistance() > unbridged.mostInLine()) {
            int tooFew = unbridged.fewestByDistance();
            throw new InputException(String.format(Locale.ROOT, "--gap cannot reach: %s are %.1f m apart, ", between, unbridged.stonesApartM())
                    + (tooFew == 0 ? String.format(Locale.ROOT, "nearer than the least gap of %.1f m; lower it", gaps.leastM())
                    : String.format(Locale.ROOT, "too far for %d gap%s of %.1f m and too near for %d of %.1f m; widen the range", tooFew,
                            tooFew == 1 ? "" : "s", gaps.mostM(), tooFew + 1, gaps.leastM())));
        }
        if (corridor.scoredCells() == 0) {
            List<String> reasons = ReasonShares.lines(run.engine().reasons().names(), unbridged.cellsByReason(), unbridged.cells());
            throw new InputException("--corridor: no cell within " + Shown.metres(corridor.halfWidthM()) + " of the line between "
                    + between + " is feasible" + (reasons.isEmpty() ? "" : " (" + String.join(", ", reasons) + ")")
                    + "; widen the corridor, or name other reefs");
        }
    }

    private static VectorLayer line(Path file) {
        VectorLayer layer = VectorLayers.read(new LayerFile("--along", file, Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), 0, Edges.GEODESIC));
        GeometryCheck.requireValid(layer);
        Geometry only = layer.features().get(0).geometry();
        if (layer.features().size() != 1 || !(only.getGeometryType().endsWith(Geometry.TYPENAME_LINESTRING)) || only.getNumGeometries() != 1) {
            throw new InputException(file.getFileName() + ": --along takes a layer with one line, and this has "
                    + layer.features().size() + " features, the first a " + only.getGeometryType() + "; leave one line in it");
        }
        return layer;
    }

    private static LineString lonLat(VectorLayer layer, LayoutRun run) {
        return (LineString) layer.crs().to(run.grid().crs().geographic()).apply(layer.features().get(0).geometry().getGeometryN(0));
    }

    private Optional<DriftCheck> drift(LayoutRun run, List<Leg> legs, List<Pick> picks) {
        Optional<Double> heading = request.headingDeg;
        if (heading.isEmpty() && run.plan().current().isPresent()) {
            heading = Optional.of(run.plan().current().get().profiles().get(0).levels().get(0).towardDeg());
        }
        if (heading.isEmpty() || picks.isEmpty()) {
            return Optional.empty();
        }
        Chain.Gap first = legs.get(0).chosen.orElseThrow().gaps().get(0);
        return Optional.of(DriftCheck.of(run.grid().crs().geodesic(), new Coordinate(first.fromLongitudeDeg(), first.fromLatitudeDeg()),
                picks, heading.get(), request.sightM));
    }

    private static List<ChainTables.Gap> rows(List<Leg> legs, List<Site> sites, Optional<DriftCheck> drift, CoordinateTransform toWgs84) {
        List<ChainTables.Gap> rows = new ArrayList<>();
        int next = 0;
        for (int l = 0; l < legs.size(); l++) {
            Leg leg = legs.get(l);
            List<Chain.Gap> gaps = leg.chosen.map(Chain::gaps).orElse(List.of());
            String from = leg.from();
            for (int i = 0; i < gaps.size(); i++) {
                Chain.Gap gap = gaps.get(i);
                boolean last = i == gaps.size() - 1;
                int module = next;
                String to = last ? leg.to() : sites.get(module).name();
                OptionalDouble miss = last || drift.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(drift.get().missM().get(module));
                Coordinate start = toWgs84.apply(gap.fromLongitudeDeg(), gap.fromLatitudeDeg());
                Coordinate end = toWgs84.apply(gap.toLongitudeDeg(), gap.toLatitudeDeg());
                rows.add(new ChainTables.Gap(l + 1, from, to, gap.distanceM(), gap.bearingDeg(), miss.orElse(Double.NaN),
                        miss.isPresent() ? miss.getAsDouble() - drift.get().offsetM() : Double.NaN, start.x, start.y, end.x, end.y));
                from = to;
                next += last ? 0 : 1;
            }
        }
        return List.copyOf(rows);
    }

    private static void write(LayoutRun run, Result result) {
        List<Site> sites = result.sites;
        List<ReleaseTable.Release> releases = ReleaseTable.releases(sites);
        List<FeatureTable<?>> tables = List.of(FeatureTable.sites(result.plan, sites), FeatureTable.landingCircles(sites),
                ReleaseTable.of(releases),
                ChainTables.chains(result.gapRows));
        double unbridgedM = result.legs.stream().flatMap(leg -> leg.found.unbridged().stream()).mapToDouble(Unbridged::lengthM).sum();
        double mean = sites.stream().mapToDouble(Site::score).average().orElse(Double.NaN);
        run.write(LayoutRun.Laid.MODULES, tables, new Run.ChainCounts(sites.size(), result.legs.size(), mean, unbridgedM), result.warnings,
                (written, map) -> ChainPage.of(written, result.legs.stream().map(InfillRun::told).toList(), result.gaps, result.request.corridorM, sites,
                        result.gapRows, tradeoff(result.legs), result.drift, result.reasons, Optional.of(map)),
                () -> SitesCsv.write(run.file("sites.csv"), result.plan, sites),
                () -> ChainTables.writeCsv(run.file("chains.csv"), result.gapRows),
                () -> ChainTables.writeTradeoff(run.file("tradeoff.csv"), tradeoff(result.legs)),
                () -> GpxWriter.write(run.file("sites.gpx"), result.plan.title(), sites, routes(result)),
                () -> GpxWriter.writeReleases(run.file("release_points.gpx"), result.plan.title(), releases));
    }

    private static ChainPage.Leg told(Leg leg) {
        return new ChainPage.Leg(leg.from(), leg.to(), leg.corridor.axis().stonesApartM(), leg.chosen.map(chain -> chain.modules().size()),
                leg.found.unbridged());
    }

    /** The table of what more modules would bring. */
    static List<ChainTables.Tradeoff> tradeoff(List<Leg> legs) {
        List<ChainTables.Tradeoff> rows = new ArrayList<>();
        for (int l = 0; l < legs.size(); l++) {
            Leg leg = legs.get(l);
            for (Chain chain : leg.found.chains()) {
                rows.add(new ChainTables.Tradeoff(l + 1, leg.from(), leg.to(), chain.modules().size(), chain.meanScore(),
                        chain.boundScore(), leg.chosen.isPresent() && leg.chosen.get() == chain));
            }
        }
        return List.copyOf(rows);
    }

    private static List<Route> routes(Result result) {
        List<Route> routes = new ArrayList<>();
        for (int l = 1; l <= result.legs.size(); l++) {
            int leg = l;
            List<RoutePoint> points = new ArrayList<>();
            for (ChainTables.Gap gap : result.gapRows.stream().filter(row -> row.leg() == leg).toList()) {
                if (points.isEmpty()) {
                    points.add(new RoutePoint(gap.from(), gap.fromLongitudeDeg(), gap.fromLatitudeDeg()));
                }
                points.add(new RoutePoint(gap.to(), gap.toLongitudeDeg(), gap.toLatitudeDeg()));
            }
            if (!points.isEmpty()) {
                routes.add(new Route(result.legs.get(l - 1).from() + " to " + result.legs.get(l - 1).to(), points));
            }
        }
        return routes;
    }
}
