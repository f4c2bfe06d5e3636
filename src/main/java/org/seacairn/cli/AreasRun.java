package org.seacairn.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.seacairn.Progress;
import org.seacairn.export.AreaTables;
import org.seacairn.export.AreaTables.Candidate;
import org.seacairn.export.FeatureTable;
import org.seacairn.export.GpxWriter;
import org.seacairn.export.GpxWriter.Route;
import org.seacairn.export.GpxWriter.RoutePoint;
import org.seacairn.export.Run;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.place.Area;
import org.seacairn.place.AreaRequest;
import org.seacairn.place.AreaScan;
import org.seacairn.place.Packing;
import org.seacairn.plan.SitingPlan;
import org.seacairn.report.AreasPage;
import org.seacairn.review.Finding;
import org.seacairn.review.ProposedSite;
import org.seacairn.review.Review;
import org.seacairn.review.SiteReview;
import org.seacairn.review.Verdict;
import org.seacairn.score.ScoreTotals;

/** Candidate permit areas, from plan to output folder. */
final class AreasRun {
    /** Candidates; some milliseconds each. */
    private static final int MOST_REFUSED = 1000;

    private final AreaRequest request;
    private final String turn;

    /** @param turn as it was asked for */
    AreasRun(AreaRequest request, String turn) {
        this.request = request;
        this.turn = turn;
    }

    /**
     * What there is to tell of a finished run.
     *
     * @param refusedBy candidates that a review would not pass, by the first rule that they fail
     */
    record Result(SitingPlan plan, AreaRequest request, String turn, List<Candidate> areas, ScoreTotals totals,
            Map<String, Integer> refusedBy, List<String> warnings, Path outFolder) {}

    Result run(LayoutRun.Settings settings) {
        return LayoutRun.of(settings, this::run);
    }

    private Result run(LayoutRun run) {
        run.next("scoring");
        List<Candidate> areas = new ArrayList<>();
        Judge judge = new Judge(run);
        ScoreTotals totals;
        try (AreaScan scan = new AreaScan(run.engine(), request, run.threads())) {
            totals = run.score(scan);
            run.next("choosing");
            run.progress().expect(request.count(), "areas");
            try {
                scan.choose(judge);
            } catch (EnoughRefused e) {
                judge.ended = true;
            }
            run.next("capacity");
            run.progress().expect(judge.accepted.size(), "areas");
            for (int i = 0; i < judge.accepted.size(); i++) {
                areas.add(candidate(run, scan, judge.accepted.get(i), judge.reviews.get(i)));
                run.progress().done(1);
            }
        }
        List<String> warnings = run.warnings();
        warnings.addAll(ReviewedSites.open(judge.reviews, "areas.geojson"));
        if (judge.ended) {
            warnings.add("areas: the search ended after " + MOST_REFUSED + " candidates that a review does not pass; ask for smaller areas,"
                    + " or for a smaller blemish");
        } else if (areas.size() < request.count() && !areas.isEmpty()) {
            warnings.add("areas: only " + areas.size() + " of " + request.count() + " were found; no other place has room for one");
        }
        Result result = new Result(run.plan(), request, turn, List.copyOf(areas), totals, judge.refusedBy, List.copyOf(warnings), run.outFolder());
        write(run, result);
        return result;
    }

    /** Accepts what a review passes. */
    private final class Judge implements Predicate<Area> {
        private final Progress progress;
        private final CoordinateTransform toLonLat;
        private final Function<ProposedSite, SiteReview> review;
        private final List<Area> accepted = new ArrayList<>();
        private final List<SiteReview> reviews = new ArrayList<>();
        private final Map<String, Integer> refusedBy = new LinkedHashMap<>();
        private int refused;
        private boolean ended;

        Judge(LayoutRun run) {
            this.progress = run.progress();
            this.toLonLat = run.grid().crs().to(run.grid().crs().geographic());
            this.review = Review.oneByOne(run.plan(), run.depth(), run.layers());
        }

        @Override
        public boolean test(Area area) {
            SiteReview found = review.apply(proposed(area));
            Optional<String> failed = found.findings().stream().filter(this::refuses).map(f -> f.rule().name()).findFirst();
            if (failed.isPresent()) {
                refusedBy.merge(failed.get(), 1, Integer::sum);
                if (++refused == MOST_REFUSED) {
                    throw new EnoughRefused();
                }
                return false;
            }
            accepted.add(area);
            progress.done(1);
            reviews.add(found);
            return true;
        }

        private ProposedSite proposed(Area area) {
            List<Coordinate> ring = new ArrayList<>(area.corners().stream().map(c -> toLonLat.apply(c.x, c.y)).toList());
            ring.add(ring.get(0).copy());
            return new ProposedSite("A" + (accepted.size() + 1), new GeometryFactory().createPolygon(ring.toArray(Coordinate[]::new)));
        }

        /** A blemish that is allowed explains what the ground itself fails by, but no distance and no boundary. */
        private boolean refuses(Finding finding) {
            String rule = finding.rule().name();
            return (finding.verdict() == Verdict.FAIL || finding.verdict() == Verdict.MARGINAL && request.blemish() == 0)
                    && (request.blemish() == 0 || rule.startsWith("keep-off:") || rule.equals("reefs") || rule.equals("inside"));
        }
    }

    /** Ends a search that a review refuses again and again: the choice itself knows no end but the grid's. */
    private static final class EnoughRefused extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    private static Candidate candidate(LayoutRun run, AreaScan scan, Area area, SiteReview review) {
        Packing packing = scan.capacity(area, run.plan().sites().apartM());
        CoordinateTransform toWgs84 = run.grid().crs().to(Crs.WGS84);
        List<Coordinate> modules = packing.places().stream().map(area::at).map(c -> toWgs84.apply(c.x, c.y)).toList();
        return new Candidate(review.site().name(), area, area.cornersLonLat(run.grid().crs()), modules, packing.upperBound(), review.findings());
    }

    private static void write(LayoutRun run, Result result) {
        List<FeatureTable<?>> tables = List.of(AreaTables.areas(result.plan, result.areas), AreaTables.capacity(result.areas));
        ScoreTotals totals = result.totals;
        run.write(LayoutRun.Laid.MODULES, tables, new Run.AreaCounts(totals.cells(), totals.withDepth(), totals.scored(), result.areas.size(),
                result.refusedBy.values().stream().mapToLong(Integer::longValue).sum(),
                result.areas.stream().mapToLong(a -> a.modules().size()).sum()), result.warnings,
                (written, map) -> AreasPage.of(written, result.request, result.turn, result.areas, totals, result.refusedBy, Optional.of(map)),
                () -> AreaTables.writeCsv(run.file("areas.csv"), result.plan, result.areas),
                () -> AreaTables.writeCapacity(run.file("capacity.csv"), result.areas),
                () -> GpxWriter.write(run.file("areas.gpx"), result.plan.title(), List.of(),
                        result.areas.stream().map(AreasRun::outline).toList()));
    }

    /** Round the corners and back to the first. */
    private static Route outline(Candidate area) {
        List<RoutePoint> points = new ArrayList<>();
        for (int i = 0; i <= area.corners().size(); i++) {
            int corner = i % area.corners().size();
            Coordinate at = area.corners().get(corner);
            points.add(new RoutePoint(area.name() + "-" + (corner + 1), at.x, at.y));
        }
        return new Route(area.name(), points);
    }
}
