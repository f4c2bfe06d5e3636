package org.seacairn.place;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seacairn.score.ScoreEngine;

/** Looks for the best {@link Ring} about a stone, or else for how many modules would fit. */
public final class RingSearch {
    /** Cells looked at in all; a few seconds. */
    static final long MOST_WORK = 1_500_000_000L;

    private final RingCells cells;
    private final int modules;
    private long left;

    RingSearch(RingCells cells, int modules, long mostWork) {
        this.cells = cells;
        this.modules = modules;
        this.left = mostWork;
    }

    /** The best ring of the asked number of modules. */
    public static RingResult of(ScoreEngine engine, RingRequest asked) {
        Annulus annulus = new Annulus(engine, asked);
        RingCells cells = annulus.cells(asked.apartM());
        RingSearch search = new RingSearch(cells, asked.modules(), MOST_WORK);
        Optional<Ring> ring = search.ring();
        return new RingResult(ring, ring.isPresent() ? Optional.empty() : Optional.of(search.fit()),
                annulus.allCells(), cells.size(), annulus.reasons());
    }

    /** The best ring, or the best found before the work ran out; empty: none was. */
    Optional<Ring> ring() {
        if (modules > RingFit.atMost(cells)) {
            return Optional.empty();
        }
        int bound = -1;
        for (int evenness = mostEvenRelaxed(); evenness >= 0; evenness--) {
            RingSolver solver = new RingSolver(cells, modules, evenness);
            RingSolver.Found found = solver.best(left / 2);
            left -= solver.work();
            if (bound < 0 && found.bound() >= 0) {
                bound = evenness;
            }
            if (found.best() != null) {
                return Optional.of(ring(found.best().cells(), found, bound));
            }
        }
        undecided = bound >= 0;
        return Optional.empty();
    }

    private boolean undecided;
    public String toString() { return "left " + left; }

    /** How many modules fit where the asked number does not, or was not found to. */
    RingFit fit() {
        return RingFit.below(cells, undecided ? modules + 1 : modules, left);
    }

    /** The largest evenness of a ring when only neighbours must keep their distance, -1: there is none. */
    private int mostEvenRelaxed() {
        int feasible = -1;
        int infeasible = 360 / modules + 1;
        while (infeasible - feasible > 1) {
            int middle = (feasible + infeasible) / 2;
            RingRelaxation relaxation = new RingRelaxation(cells, modules, middle);
            if (relaxation.feasible()) {
                feasible = middle;
            } else {
                infeasible = middle;
            }
            left -= relaxation.work();
        }
        return feasible;
    }

    private Ring ring(int[] path, RingSolver.Found found, int evennessBound) {
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
