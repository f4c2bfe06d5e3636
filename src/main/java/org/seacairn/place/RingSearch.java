package org.seacairn.place;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.seacairn.Progress;
import org.seacairn.place.RingSolver.Found;
import org.seacairn.score.ScoreEngine;

/**
 * Looks for the best {@link Ring} about a stone, or else for how many modules would fit.
 *
 * <p>Halving finds the largest evenness that neighbours alone allow; from there on down the first
 * evenness with a ring is the best there is, and {@link RingSolver} finds its best ring. Work is counted in
 * cells looked at, so that the same scene gives the same answer on every machine. When it runs out before an
 * evenness is decided, the most even ring that is found by halving stands with its bounds.
 */
public final class RingSearch {
    /** Cells looked at in all; one to two seconds of one core. */
    static final long MOST_WORK = 400_000_000L;
    /** The part of what is left of the work that goes into one question of several. */
    private static final int PART = 8;

    private final RingCells cells;
    private final int modules;
    private final Progress progress;
    private long left;
    private boolean undecided;

    RingSearch(RingCells cells, int modules, long mostWork) {
        this(cells, modules, mostWork, Progress.NONE);
    }

    private RingSearch(RingCells cells, int modules, long mostWork, Progress progress) {
        this.cells = cells;
        this.modules = modules;
        this.left = mostWork;
        this.progress = progress;
    }

    /** The best ring of the asked number of modules. */
    static RingResult of(ScoreEngine engine, RingRequest asked) {
        return of(engine, asked, Set.of(), Progress.NONE);
    }

    /**
     * The best ring without some cells.
     *
     * @param barred no module stands on one of these
     * @param progress counts cells looked at
     */
    public static RingResult of(ScoreEngine engine, RingRequest asked, Set<Pick> barred, Progress progress) {
        progress.expect(0, "cells");
        Annulus annulus = new Annulus(engine, asked);
        RingCells cells = annulus.cells(asked.apartM(), barred);
        RingSearch search = new RingSearch(cells, asked.modules(), MOST_WORK, progress);
        Optional<Ring> ring = search.ring();
        return new RingResult(ring, ring.isPresent() ? Optional.empty() : Optional.of(search.fit()),
                annulus.allCells(), annulus.scoredCells(), annulus.reasons());
    }

    /** The best ring, or the best found before the work ran out; empty: none was. */
    Optional<Ring> ring() {
        if (modules > RingFit.atMost(cells)) {
            return Optional.empty();
        }
        for (int evenness = mostEvenNeighbours(); evenness >= 0; evenness--) {
            RingSolver solver = new RingSolver(cells, modules, evenness);
            Found found = solver.best(left / 2);
            spend(solver.work());
            if (found.best() != null) {
                return Optional.of(ring(found, evenness));
            }
            if (found.bound() >= 0) {
                undecided = true;
                return lessEven(evenness);
            }
        }
        return Optional.empty();
    }

    private void spend(long work) {
        left -= work;
        progress.done(work);
    }

    /** How many modules fit where no ring of the asked number was found. */
    RingFit fit() {
        return RingFit.below(cells, undecided ? modules + 1 : modules, left);
    }

    /** Of the work that was granted, what has not been used. */
    long workLeft() {
        return left;
    }

    /** No ring is more even than this: the largest evenness at which neighbours alone may keep their distance; -1: there is none. */
    private int mostEvenNeighbours() {
        int feasible = -1;
        int infeasible = 360 / modules + 1;
        while (infeasible - feasible > 1) {
            int middle = (feasible + infeasible) / 2;
            RingRelaxation relaxation = new RingRelaxation(cells, modules, middle);
            if (relaxation.mayHaveRing(left / PART)) {
                feasible = middle;
            } else {
                infeasible = middle;
            }
            spend(relaxation.work());
        }
        return feasible;
    }

    /** The most even ring that is found when the work does not reach to decide whether there is one of {@code bound}. */
    private Optional<Ring> lessEven(int bound) {
        RingCells outward = cells.outward();
        int found = -1;
        int missed = bound + 1;
        Found ring = null;
        while (missed - found > 1) {
            int middle = (found + missed) / 2;
            RingSolver solver = new RingSolver(outward, modules, middle);
            Found any = solver.any(left / PART);
            spend(solver.work());
            if (any.best() != null) {
                found = middle;
                ring = any;
            } else {
                missed = middle;
            }
        }
        if (ring == null) {
            return thinned(bound);
        }
        RingSolver solver = new RingSolver(cells, modules, found);
        Found best = solver.best(left);
        spend(solver.work());
        return Optional.of(ring(best.best() == null ? new Found(cells.path(ring.best().cells()), best.bound()) : best, bound));
    }

    /** Of as many modules as a plain walk finds room for, the asked number. */
    private Optional<Ring> thinned(int bound) {
        int[] all = RingFit.sweep(cells);
        if (all.length < modules) {
            return Optional.empty();
        }
        int[] some = new int[modules];
        for (int k = 0; k < modules; k++) {
            some[k] = all[(int) ((long) k * all.length / modules)];
        }
        return Optional.of(ring(new Found(cells.path(some), new RingSolver(cells, modules, 0).any(0).bound()), bound));
    }

    private Ring ring(Found found, int evennessBound) {
        int[] path = found.best().cells();
        List<RingModule> on = new ArrayList<>();
        List<Double> gaps = new ArrayList<>();
        double leastStep = 360;
        for (int k = 0; k < path.length; k++) {
            int cell = path[k];
            int next = path[(k + 1) % path.length];
            on.add(new RingModule(cells.cell(cell).pick(), cells.bearingDeg(cell), cells.cell(cell).distanceM()));
            if (path.length > 1) {
                gaps.add(cells.metres(cell, next));
                leastStep = Math.min(leastStep, cells.stepDeg(cell, next));
            }
        }
        return new Ring(List.copyOf(on), leastStep, List.copyOf(gaps), RingCells.score(found.best().worth()),
                RingCells.score(found.bound()), evennessBound);
    }
}
