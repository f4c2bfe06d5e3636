package org.seacairn.review;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.Progress;
import org.seacairn.drop.LandingRadius;
import org.seacairn.geodesy.CoordinateTransform;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan;
import org.seacairn.score.ScoreRun;
import org.seacairn.score.WorkingDepth;
import org.seacairn.score.WorkingLayers;

/**
 * Checks proposed sites against every rule of a plan, on the ellipsoid and against the original
 * geometries. The depths are those of the working grid; nothing else is shared with the way sites are
 * ranked. A site's findings depend on the proposal and the plan alone, not on the number of threads.
 */
public final class Review {
    /** Sites that a thread takes at a time. */
    private static final int BATCH = 64;
    /** Sites are visited square by square, so that each block of the bathymetry is read once. */
    private static final int SQUARE_CELLS = 512;

    private Review() {}

    /**
     * Reviews every site.
     *
     * @param progress counts sites
     * @return one for each site, in the proposal's order
     * @throws org.seacairn.InputException if a proposed polygon holds far too many cells
     */
    public static List<SiteReview> of(SitingPlan plan, WorkingDepth depth, WorkingLayers layers, Proposal proposal, int threads,
            Progress progress) {
        WorkingMap map = new WorkingMap(depth.grid());
        LandingRadius landing = LandingRadius.of(plan);
        List<ReviewRule> rules = ReviewRules.of(plan, landing, depth, layers, map, proposal.sites());
        CoordinateTransform toWgs84 = depth.grid().crs().geographic().to(Crs.WGS84);
        SiteReview[] reviews = new SiteReview[proposal.sites().size()];
        int[] order = order(proposal.sites(), map);
        progress.expect(order.length, "sites");
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<?>> batches = new ArrayList<>();
            for (int from = 0; from < order.length; from += BATCH) {
                int[] batch = Arrays.copyOfRange(order, from, Math.min(order.length, from + BATCH));
                batches.add(pool.submit(() -> {
                    for (int i : batch) {
                        ProposedSite site = proposal.sites().get(i);
                        reviews[i] = new SiteReview(site, toWgs84.apply(site.geometry()),
                                findings(i, site, rules, SiteCells.of(site, depth, map, landing)));
                        progress.done(1);
                    }
                }));
            }
            batches.forEach(ScoreRun::result);
        } finally {
            pool.shutdownNow();
        }
        return List.of(reviews);
    }

    /**
     * A review of one site at a time, without the rules between sites (apart, overlap, duplicate). The layers are
     * prepared once, so that many candidates can be asked about. For one thread.
     */
    public static Function<ProposedSite, SiteReview> oneByOne(SitingPlan plan, WorkingDepth depth, WorkingLayers layers) {
        WorkingMap map = new WorkingMap(depth.grid());
        LandingRadius landing = LandingRadius.of(plan);
        List<ReviewRule> rules = ReviewRules.ofOne(plan, landing, depth, layers, map, List.of());
        CoordinateTransform toWgs84 = depth.grid().crs().geographic().to(Crs.WGS84);
        return site -> new SiteReview(site, toWgs84.apply(site.geometry()),
                findings(0, site, rules, SiteCells.of(site, depth, map, landing)));
    }

    private static List<Finding> findings(int index, ProposedSite site, List<ReviewRule> rules, Optional<SiteCells> cells) {
        List<Finding> findings = new ArrayList<>();
        for (ReviewRule rule : rules) {
            findings.addAll(rule.judge(index, site, cells));
        }
        return List.copyOf(findings);
    }

    /** The sites' numbers, those of one square of the grid together; those off it first. */
    private static int[] order(List<ProposedSite> sites, WorkingMap map) {
        double squareM = SQUARE_CELLS * map.grid().cellM();
        long[] squares = new long[sites.size()];
        for (int i = 0; i < squares.length; i++) {
            Coordinate at = sites.get(i).geometry().getCoordinate();
            squares[i] = map.onMap(at.x, at.y).filter(p -> map.isOnGrid(at.x, at.y))
                    .map(p -> (long) ((map.grid().north() - p.y) / squareM) << 32 | (long) ((p.x - map.grid().west()) / squareM))
                    .orElse(-1L);
        }
        return IntStream.range(0, squares.length).boxed().sorted(Comparator.comparingLong(i -> squares[i]))
                .mapToInt(i -> i).toArray();
    }
}
