package org.seacairn.place;

import java.util.ArrayList;
import java.util.List;

/**
 * Improves a selection by swaps: one or two sites make way for one or two cells that fit in their
 * place, as long as the total rises. Of a full selection the second site to leave is its lowest. The
 * order of trials is fixed, so the result is too. Not exact: the upper bound says how far it can be
 * from the best.
 */
final class SiteExchange {
    private static final double LEAST_GAIN = 1e-9;
    private static final int MOST_ROUNDS = 1000;

    private final Rivals rivals;
    private final Spacing spacing;
    private final int count;

    SiteExchange(Rivals rivals, Spacing spacing, int count) {
        this.rivals = rivals;
        this.spacing = spacing;
        this.count = count;
    }

    /** A selection with a total no lower than that of {@code start}, best site first. */
    List<Pick> improve(List<Pick> start) {
        List<Pick> sites = new ArrayList<>(start);
        sites.sort(Rivals.BEST_FIRST);
        for (int round = 0; round < MOST_ROUNDS; round++) {
            List<Pick> better = oneSwap(sites);
            if (better == null) {
                break;
            }
            better.sort(Rivals.BEST_FIRST);
            sites = better;
        }
        return sites;
    }

    private List<Pick> oneSwap(List<Pick> sites) {
        for (int j = sites.size() - 1; j >= 0; j--) {
            List<Pick> rest = new ArrayList<>(sites);
            Pick leaving = rest.remove(j);
            List<Pick> better = refill(rest, leaving.score(), spacing(leaving));
            if (better == null && sites.size() == count && !rest.isEmpty()) {
                Pick lowest = rest.remove(rest.size() - 1);
                better = refill(rest, leaving.score() + lowest.score(), spacing(leaving, lowest));
            }
            if (better != null) {
                return better;
            }
        }
        return null;
    }

    /** The places that a swap frees. */
    private static List<Pick> spacing(Pick... leaving) {
        return List.of(leaving);
    }

    /** The rest with the best one or two cells that fit about the freed places, or null: no gain. */
    private List<Pick> refill(List<Pick> rest, double lost, List<Pick> freed) {
        List<Pick> fit = new ArrayList<>();
        for (Pick cell : rivals.cells()) {
            if (spacing.tooNearAny(cell, freed) && !spacing.tooNearAny(cell, rest)) {
                fit.add(cell);
            }
        }
        boolean roomForTwo = rest.size() + 2 <= count;
        double best = lost + LEAST_GAIN;
        Pick first = null;
        Pick second = null;
        for (int a = 0; a < fit.size(); a++) {
            Pick one = fit.get(a);
            if (one.score() > best) {
                best = one.score();
                first = one;
                second = null;
            }
            // Best first: no later partner can make up for a first cell this low.
            if (!roomForTwo || 2 * one.score() <= best) {
                break;
            }
            for (int b = a + 1; b < fit.size() && one.score() + fit.get(b).score() > best; b++) {
                if (!spacing.tooNear(one, fit.get(b))) {
                    best = one.score() + fit.get(b).score();
                    first = one;
                    second = fit.get(b);
                    break;
                }
            }
        }
        if (first == null) {
            return null;
        }
        List<Pick> better = new ArrayList<>(rest);
        better.add(first);
        if (second != null) {
            better.add(second);
        }
        return better;
    }
}
